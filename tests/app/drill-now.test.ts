/** What is seen and heard at the moment that an exercise asks about, against the bench's own view of the same moment. */
import { beforeAll, describe, expect, test } from 'vitest';
import { writtenOn } from '../../src/app/diagrams/part-figure.tsx';
import { marksOf, sizeOf, widthOf } from '../../src/app/diagrams/states.ts';
import { layWiring } from '../../src/app/diagrams/wiring-layout.ts';
import { perceivedIn, perceivedText } from '../../src/app/drills/perceived.ts';
import { loadedFrom } from '../../src/app/drills/scene.ts';
import { itemOfFace } from '../../src/app/lab/paper-item.ts';
import { viewOf } from '../../src/attempt/attempt.ts';
import { createBank } from '../../src/drills/draw.ts';
import { nextEvent } from '../../src/drills/kinds/nextEvent.ts';
import { questionFaceOf } from '../../src/host/paper-face.ts';
import { assemble } from '../../src/rig/assemble.ts';
import { overlaps } from '../../src/stage/boxes.ts';
import { library } from '../scenario/shipped.ts';
import { speakEnglish } from './english.ts';

beforeAll(speakEnglish);

/** Numbers of one house: its furnace has a status light, its condenser a contactor. */
const NUMBERS = [101, 105, 107, 108, 110, 115, 116, 118];

const RIGS = [...library.rigs.values()].filter(({ id }) => process.env.BELLWIRE_FULL !== undefined || id === 'furnaceAndCondenser');

describe('at the moment before the next event', () => {
  const bank = createBank([...library.rigs.values()]);
  const asked = NUMBERS.flatMap((number) => {
    const item = bank.item(nextEvent, number);
    const attempt = item && loadedFrom(item.scene)!.loaded.attempt;
    return attempt ? [{ item, attempt, now: perceivedIn(item.given) }] : [];
  });
  const flat = (now: ReturnType<typeof perceivedIn>) =>
    now.flatMap(({ part, signs }) => signs.map(({ key, value }) => `${part}.${key}=${value}`));

  test('whoever stands there is told of the light, and of what runs and burns, as the bench shows it', () => {
    const told = new Set<string>();
    for (const { attempt, now } of asked) {
      const view = viewOf(attempt);
      const here = view.parts.filter(({ place }) => place === view.place);
      const shown = here.flatMap(({ id, signs }) =>
        ['light', 'running', 'flame', 'glow', 'armature'].flatMap((key) =>
          signs[key] === undefined ? [] : [`${id}.${key}=${signs[key]}`],
        ),
      );
      expect(shown.length).toBeGreaterThan(1);
      expect(flat(now)).toEqual(expect.arrayContaining(shown));
      // Nothing from another place, and nothing that the bench would not show.
      const all = here.flatMap(({ id, signs }) => Object.entries(signs).map(([key, value]) => `${id}.${key}=${value}`));
      expect(all).toEqual(expect.arrayContaining(flat(now)));
      for (const each of flat(now)) told.add(each);
    }
    expect([...told].filter((each) => each.startsWith('board.light')).length).toBeGreaterThan(1);
    expect(told).toContain('blower.running=off');
  });

  test('on a lab host it is the same: there the page has a house in which nothing is wrong, and no steps', () => {
    for (const { item, now } of asked)
      expect(perceivedIn(itemOfFace(questionFaceOf(item), 0).given), `${item.number}`).toEqual(now);
  });

  test('it does not say what comes next, nor a click that is over', () => {
    for (const { item, now } of asked) {
      const said = flat(now);
      const right = item.choices[item.right]?.said;
      const next = right?.is === 'notice' ? right.notice : undefined;
      expect(said, `${item.number}`).not.toContain(`${next?.part}.${next?.key}=${next?.value}`);
      expect(said.filter((each) => each.includes('.click=') || each.includes('.thump='))).toEqual([]);
    }
  });

  test('it has words for every part', () => {
    for (const { now } of asked) for (const each of now) expect(perceivedText(each)).not.toBe('');
    expect(perceivedText({ part: 'board', signs: [{ key: 'light', value: '2', sense: 'see' }] })).toBe(
      'control board: status light: 2 flashes',
    );
  });
});

describe('the mark of a state', () => {
  test('has as many flashes as the light gives, and a shaft that turns is another than one that hums or stands', () => {
    const mark = (key: string, value: string | number) => marksOf([{ key, value }])[0];
    expect(mark('light', '4')).toEqual({ is: 'lamp', flashes: 4 });
    expect(mark('light', 'off')).toEqual({ is: 'lamp', flashes: 0 });
    expect(widthOf(mark('light', '4')!) - widthOf(mark('light', '2')!)).toBe(
      widthOf(mark('light', '3')!) - widthOf(mark('light', '1')!),
    );
    expect(mark('running', 'cool')).toEqual({ is: 'shaft', on: true });
    expect(mark('running', 'off')).toEqual({ is: 'shaft', on: false });
    expect(mark('running', 0)).toEqual({ is: 'shaft', on: false });
    expect(mark('running', 'hum')).toEqual({ is: 'hum', on: true });
    expect(mark('chatter', 0)).toBeUndefined();
  });

  test.each(RIGS.map((rig) => [rig.id, assemble(rig)] as const))('stands on nothing that is written in %s', (_, assembly) => {
    for (const { id: place } of assembly.rig.places) {
      const parts = assembly.parts.filter(({ data }) => data.place === place);
      const size = sizeOf(marksOf([{ key: 'light', value: '7' }]));
      const layout = layWiring(assembly, place, { states: parts.map(({ id }) => ({ part: id, ...size })) });
      const written = [...layout.scene.parts.flatMap(writtenOn), ...layout.flags.map(({ box }) => box)];
      const boxes = [...layout.states.values()];
      boxes.forEach((box, index) => {
        expect([...written, ...boxes.slice(index + 1)].some((each) => overlaps(each, box, 0))).toBe(false);
      });
      expect(boxes.length).toBeGreaterThanOrEqual(Math.floor(layout.scene.parts.length * 0.8));
    }
  });
});
