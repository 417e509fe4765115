import { describe, expect, test } from 'vitest';
import { viewOf } from '../../src/attempt/attempt.ts';
import type { RigData } from '../../src/rig/schema.ts';
import { LANDING_ORDER, subbase } from '../../src/stage/faces/subbase.ts';
import { BACK, batteryThermostat } from '../../src/stage/faces/thermostat.ts';
import { drawModes } from '../../src/stage/faces/thermostatFront.ts';
import { FACES } from '../../src/stage/faces.ts';
import { sceneOf } from '../../src/stage/layout.ts';
import type { Box } from '../../src/stage/pen.ts';
import { SCENE, SIZES } from '../../src/stage/tokens.ts';
import { SHIPPED_KINDS } from '../parts/kinds.ts';
import { start } from '../scenario/shipped.ts';
import { recorder } from './recorder.ts';
import { OPEN_STANDS } from './rigs.ts';

test('every kind of part in the catalogue has a face of its own', () => {
  expect(Object.keys(FACES).sort()).toEqual([...SHIPPED_KINDS].sort());
});

test('a thermostat turned over shows its pins mirrored left to right (common practice, no source)', () => {
  const part = viewOf(start('fanButNoCooling')).parts[0]!;
  const pins = Object.entries(batteryThermostat.shape({ ...part, body: 'turned' }).terminals).sort(([, a], [, b]) => a.x - b.x);
  expect(LANDING_ORDER).toEqual(['R', 'W', 'Y', 'G', 'C']);
  expect(pins.map(([id]) => id)).toEqual(['C', 'G', 'Y', 'W', 'R']);
  const screws = subbase.shape(part).terminals;
  for (const [id, pin] of pins) expect(pin.x - BACK.x).toBe(BACK.width - (screws[id]?.x ?? Number.NaN));
});

test('a thermostat whose display is dead still shows where its slides stand', () => {
  const seated = viewOf(start('fanButNoCooling')).parts.find(({ kind }) => kind === 'batteryThermostat')!;
  const drawn = (mode: string) => {
    const { pen, strokes } = recorder();
    const controls = seated.controls.map((each) => (each.id === 'mode' ? { ...each, value: mode } : each));
    drawModes(pen, { ...seated, signs: { display: 'blank' }, controls }, String, STOPS);
    return strokes;
  };
  expect(drawn('heat')).not.toEqual(drawn('cool'));
  expect(drawn('heat').length).toBe(drawn('cool').length);
});
const STOPS = Object.fromEntries(
  ['off', 'heat', 'cool'].map((each, index) => [each, { x: 60 * index, y: 0, width: 60, height: 44 }]),
) as Readonly<Record<'off' | 'heat' | 'cool', Box>>;

/** Terminals inside a body that what rides in it presses on: no probe gets between them. */
function innerTwins(rig: RigData): string[] {
  const rides = new Map(rig.parts.map((part) => [part.id, part.rides]));
  return rig.wires.flatMap(({ fixed, from, to }) => {
    const [part = '', body] = [from, to].map((point) => point.split('.')[0]);
    return fixed && rides.get(part) === body ? [to] : [];
  });
}

describe.each(OPEN_STANDS)('$name', ({ rig, attempt }) => {
  const view = viewOf(attempt);
  const scene = sceneOf(view);

  test('shows every terminal that a probe reaches there, save the twins of what rides inside a body', () => {
    const reachable = view.parts.flatMap((part) =>
      part.terminals.filter((terminal) => terminal.reachable).map((terminal) => terminal.point),
    );
    const missing = reachable.filter((point) => !scene.terminals.has(point));
    const twins = innerTwins(rig);
    expect(missing.filter((point) => !twins.includes(point))).toEqual([]);
  });

  test(`keeps terminals a thumb apart: ${String(SIZES.target)} px`, () => {
    const spots = [...scene.terminals.values()];
    const close = spots.flatMap((a, index) =>
      spots
        .slice(index + 1)
        .filter((b) => Math.hypot(a.x - b.x, a.y - b.y) < SIZES.target)
        .map((b) => `${a.point} ${b.point}`),
    );
    expect(close).toEqual([]);
  });

  test('stands inside the scene, clear of the leads at its foot', () => {
    for (const { part, x, y, shape } of scene.parts) {
      if (part.body !== undefined) continue;
      expect(x, part.id).toBeGreaterThanOrEqual(0);
      expect(y, part.id).toBeGreaterThanOrEqual(0);
      expect(x + shape.width, part.id).toBeLessThanOrEqual(SCENE.width);
      expect(y + shape.height, part.id).toBeLessThanOrEqual(600);
    }
  });

  test('lets no face lie on another, save a fuse on its board, a body on its base and what rides in it', () => {
    const rides = new Set(rig.parts.flatMap((part) => (part.rides === undefined ? [] : part.id)));
    const faces = scene.parts.filter(({ part }) => part.body === undefined && part.pulledOut === undefined && !rides.has(part.id));
    for (const [index, a] of faces.entries()) {
      for (const b of faces.slice(index + 1)) {
        const apart =
          a.x + a.shape.width <= b.x + 14 ||
          b.x + b.shape.width <= a.x + 14 ||
          a.y + a.shape.height <= b.y + 14 ||
          b.y + b.shape.height <= a.y + 14;
        expect(apart, `${a.part.id} and ${b.part.id}`).toBe(true);
      }
    }
  });
});
