/** Which pin is where, against the faces that the bench draws. */
import { describe, expect, it } from 'vitest';
import { viewOf } from '../../src/attempt/attempt.ts';
import { createBank } from '../../src/drills/draw.ts';
import { pinBehind } from '../../src/drills/kinds/pinBehind.ts';
import type { Said } from '../../src/drills/said.ts';
import { FACES } from '../../src/stage/faces.ts';
import { library, start } from '../scenario/shipped.ts';
import { MANY } from './worlds.ts';

const COUNT = process.env.BELLWIRE_FULL === undefined ? 120 : MANY;
const STRIDE = process.env.BELLWIRE_FULL === undefined ? 7 : 1;

const bank = createBank([...library.rigs.values()]);
const items = Array.from({ length: COUNT }, (_, index) => bank.item(pinBehind, index * STRIDE)).filter(
  (item) => item !== undefined,
);
const anyPart = viewOf(start('fanButNoCooling')).parts[0]!;

/** Pins left to right as the bench draws a body of this kind that is turned over. */
const drawn = (kind: string): string[] =>
  Object.entries(FACES[kind]!.shape({ ...anyPart, kind, body: 'turned' }).terminals)
    .sort(([, a], [, b]) => a.x - b.x)
    .map(([id]) => id);

const terminal = (said: Said | undefined): string => (said?.is === 'point' ? (said.point.split('.')[1] ?? '') : '');
const number = (said: Said | undefined): number => (said?.is === 'number' ? said.value : Number.NaN);

describe('a pin seen from behind', () => {
  it('is where the bench draws it, and no wrong choice is', () => {
    expect(items.length).toBeGreaterThan(COUNT / 2);
    for (const { number: at, scene, ask, choices, right } of items) {
      const body = ask.values.part;
      const kind = library.rigs.get(scene.rig)!.parts.find(({ id }) => body?.is === 'part' && id === body.part)!.kind;
      const pins = drawn(kind);
      const [pin, place] = [pins.indexOf(terminal(ask.values.pin)), number(ask.values.place)];
      const answer = {
        fromLeft: pins[place - 1],
        fromRight: pins.at(-place),
        leftOf: pins[pin - 1],
        rightOf: pins[pin + 1],
        where: pin + 1,
      }[ask.key];
      choices.forEach(({ said }, index) => {
        const says = ask.key === 'where' ? number(said) : terminal(said);
        if (index === right) expect(says, `${at}`).toBe(answer);
        else expect(says, `${at}`).not.toBe(answer);
      });
    }
  });

  it('is asked in every way and of every body that comes off', () => {
    expect(new Set(items.map(({ ask }) => ask.key))).toEqual(new Set(['fromLeft', 'fromRight', 'leftOf', 'rightOf', 'where']));
    const removable = [...library.rigs.values()].filter(({ wires }) => wires.some(({ pin }) => pin)).map(({ id }) => id);
    expect(new Set(items.map(({ scene }) => scene.rig))).toEqual(new Set(removable));
  });
});
