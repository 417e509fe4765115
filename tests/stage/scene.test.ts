import { describe, expect, test } from 'vitest';
import { viewOf } from '../../src/attempt/attempt.ts';
import { shaftMotion } from '../../src/stage/faces/shaft.ts';
import { lightMotion } from '../../src/stage/faces/statusLight.ts';
import { sceneOf, spotOf } from '../../src/stage/layout.ts';
import { isLit, poseOf } from '../../src/stage/moving.ts';
import { isSoftware } from '../../src/stage/renderer.ts';
import { shortestJoin } from '../../src/stage/runs.ts';
import {
  floored,
  hostBox,
  isWhole,
  kept,
  nearer,
  opening,
  paintedBounds,
  panned,
  resized,
  type Sight,
  sceneSpot,
  toggled,
  whole,
  wholeUnit,
  zoomed,
} from '../../src/stage/sight.ts';
import { distanceTo, leadCurve, PROBE_LENGTH, pointOn, probeWay, sampled, wireCurve } from '../../src/stage/wires.ts';
import { start, take } from '../scenario/shipped.ts';

describe('a scene', () => {
  test('hides the sub-base behind a seated thermostat and shows it when that is pulled', () => {
    const attempt = start('fanButNoCooling');
    const ids = () => sceneOf(viewOf(attempt)).parts.map(({ part }) => part.id);
    expect(ids()).toEqual(['thermostat']);
    take(attempt, { name: 'pull', part: 'thermostat' });
    expect(ids()).toEqual(['subbase', 'thermostat']);
  });

  test('draws the five conductors of the cable to the sub-base, and no pin of the thermostat', () => {
    const attempt = start('fanButNoCooling');
    take(attempt, { name: 'pull', part: 'thermostat' });
    const { runs } = sceneOf(viewOf(attempt));
    expect(runs.map((run) => run.wire).sort()).toEqual(['statC', 'statG', 'statR', 'statW', 'statY']);
  });

  test('moves a lifted end off its screw and puts a probe on the bare copper there', () => {
    const attempt = start('fanButNoCooling');
    take(attempt, { name: 'pull', part: 'thermostat' });
    const screw = sceneOf(viewOf(attempt)).terminals.get('subbase.Y')!;
    take(attempt, { name: 'lift', wire: 'statY', end: 'to' });
    const bare = spotOf(sceneOf(viewOf(attempt)), 'statY@to')!;
    expect(Math.hypot(bare.x - screw.x, bare.y - screw.y)).toBeGreaterThan(30);
  });

  test('gives no terminal of a part behind a closed cover', () => {
    const attempt = start('fanButNoCooling');
    take(attempt, { name: 'walk', to: 'furnace' }, { name: 'cover', cover: 'burnerDoor', open: true });
    const { terminals, behind } = sceneOf(viewOf(attempt));
    expect(terminals.has('limit.a')).toBe(true);
    expect(terminals.has('board.R')).toBe(false);
    expect(behind.map(({ part }) => part.id)).toContain('board');
  });

  test('turns a conduit so that each wire enters on its own side', () => {
    const join = { from: { x: 0, y: 0 }, to: { x: 100, y: 0 } };
    expect(shortestJoin([join], { x: 110, y: 5 }, { x: -10, y: 5 })).toEqual({ from: join.to, to: join.from });
    expect(shortestJoin([], { x: 0, y: 0 }, { x: 1, y: 1 })).toBeUndefined();
  });
});

describe('curves', () => {
  test('a wire leaves its screw downward and ends on the other screw', () => {
    const curve = wireCurve({ x: 0, y: 0 }, 'down', { x: 100, y: 0 }, 'down');
    expect(pointOn(curve, 0.02).y).toBeGreaterThan(0);
    expect(pointOn(curve, 1)).toEqual({ x: 100, y: 0 });
    expect(distanceTo(sampled(curve), { x: 50, y: 0 })).toBeGreaterThan(10);
    expect(distanceTo(sampled(curve), pointOn(curve, 0.4))).toBeLessThan(2);
  });

  test('a lead hangs with slack: it falls below both its probe and where it leaves', () => {
    const curve = leadCurve({ x: 400, y: 300 }, { x: 0, y: 1 }, { x: 806, y: 560 });
    const lowest = Math.max(...Array.from({ length: 50 }, (_, step) => pointOn(curve, step / 49).y));
    expect(lowest).toBeGreaterThan(560);
  });

  test('a probe near the foot of the scene leans over, so that its handle stays in sight', () => {
    expect(probeWay({ x: 100, y: 100 }, 628).y).toBeCloseTo(1);
    for (const y of [480, 540, 580, 600]) expect(y + probeWay({ x: 100, y }, 628).y * PROBE_LENGTH).toBeLessThan(648);
  });
});

describe('the sight', () => {
  test('opens on the whole scene, and on a phone close enough to read about what matters', () => {
    for (const [width, height] of [
      [800, 648],
      [1400, 700],
      [640, 520],
    ] as const) {
      const sight = opening(width, height);
      expect(sight.unit).toBeCloseTo(wholeUnit(width, height));
      const [topLeft, bottomRight] = [sceneSpot(sight, { x: 0, y: 0 }), sceneSpot(sight, { x: width, y: height })];
      expect(topLeft.x).toBeLessThanOrEqual(0.001);
      expect(bottomRight.x).toBeGreaterThanOrEqual(799.999);
      expect(bottomRight.y).toBeGreaterThanOrEqual(647.999);
    }
    const phone = opening(390, 555, { x: 580, y: 150 });
    expect(phone.unit).toBeCloseTo(555 / 648);
    expect(sceneSpot(phone, { x: 195, y: 0 }).x).toBeCloseTo(572.3, 0);
  });

  test('keeps the spot under two fingers where it is while they spread', () => {
    const before = zoomed(opening(390, 500), 2, { x: 200, y: 250 }, 390, 500);
    const about = { x: 150, y: 200 };
    const after = zoomed(before, 1.3, about, 390, 500);
    expect(sceneSpot(after, about).x).toBeCloseTo(sceneSpot(before, about).x, 5);
    expect(sceneSpot(after, about).y).toBeCloseTo(sceneSpot(before, about).y, 5);
  });

  test('never leaves what is painted and never shrinks below the whole', () => {
    const bounds = paintedBounds(390, 500);
    const far = panned(zoomed(opening(390, 500), 2, { x: 0, y: 0 }, 390, 500), -99_999, -99_999, 390, 500);
    expect(far.left + 390 / far.unit).toBeCloseTo(bounds.x + bounds.width);
    expect(kept({ unit: 0.01, left: 0, top: 0 }, 390, 500).unit).toBeCloseTo(wholeUnit(390, 500));
  });

  test('all of the scene can be panned clear of the button over the foot, and no farther than is painted', () => {
    for (const [width, height] of [
      [390, 400],
      [798, 648],
    ] as const) {
      const lowest = panned(zoomed(whole(width, height), 1.8, { x: 0, y: 0 }, width, height), 0, -99_999, width, height);
      const foot = hostBox(lowest, { x: 0, y: 648, width: 0, height: 0 }).y;
      expect(height - foot).toBeGreaterThanOrEqual(52);
      const ground = floored(width, height);
      expect(lowest.top + height / lowest.unit).toBeLessThanOrEqual(ground.y + ground.height + 0.001);
    }
  });

  test('stays where it is on the page while bars come and go, and keeps its middle when the width changes', () => {
    const [high, low] = [
      { width: 390, height: 480, top: 100 },
      { width: 390, height: 300, top: 280 },
    ];
    const before = panned(opening(390, 480), -60, -25, 390, 480);
    const onPage = (sight: Sight, { top }: { top: number }): number =>
      top + hostBox(sight, { x: 0, y: 400, width: 0, height: 0 }).y;
    const during = resized(before, high, low);
    expect(during.unit).toBe(before.unit);
    expect(onPage(during, low)).toBeCloseTo(onPage(before, high));
    const after = resized(during, low, high);
    expect([after.left, after.top]).toEqual([expect.closeTo(before.left), expect.closeTo(before.top)]);
    const wide = resized(before, high, { width: 420, height: 480, top: 100 });
    expect(sceneSpot(wide, { x: 210, y: 240 }).x).toBeCloseTo(sceneSpot(before, { x: 195, y: 240 }).x);
    const all = resized(whole(798, 648), { width: 798, height: 648, top: 0 }, { width: 798, height: 500, top: 148 });
    expect(all).toEqual(whole(798, 500));
  });

  test('a press that misses on a screen too small to hit comes closer about its spot, and not on a large one', () => {
    const small = whole(390, 555);
    const about = { x: 120, y: 300 };
    const close = nearer(small, about, 390, 555);
    expect(isWhole(small, 390, 555)).toBe(true);
    expect(close !== undefined && isWhole(close, 390, 555)).toBe(false);
    expect(close?.unit).toBeGreaterThan(1);
    expect(nearer(whole(798, 648), about, 798, 648)).toBeUndefined();
  });

  test('a double press reads closer, the next one shows the whole again', () => {
    const close = toggled(whole(390, 500), { x: 100, y: 200 }, 390, 500);
    expect(close.unit).toBeGreaterThanOrEqual(1);
    expect(toggled(close, { x: 100, y: 200 }, 390, 500)).toEqual(whole(390, 500));
  });
});

describe('what moves', () => {
  test('a status light flashes its number, then pauses', () => {
    const rises = (count: number): number => {
      const hundredths = Math.round((count * 0.6 + 1.6) * 100);
      const lit = Array.from({ length: hundredths }, (_, index) => isLit(count, (index + 0.5) / 100));
      return lit.filter((on, index) => on && lit[(index + hundredths - 1) % hundredths] === false).length;
    };
    for (const count of [1, 2, 4, 7]) expect(rises(count)).toBe(count);
    expect(lightMotion('5')).toEqual({ kind: 'flash', count: 5 });
    expect(lightMotion('steady')).toEqual({ kind: 'flash', count: 0 });
    expect(lightMotion('off')).toBeUndefined();
    expect(lightMotion(undefined)).toBeUndefined();
  });

  test('a motor that hums shakes and does not turn', () => {
    expect(shaftMotion('run', 2)).toEqual({ kind: 'spin', turnsPerSecond: 2 });
    expect(shaftMotion('hum', 2)?.kind).toBe('shake');
    expect(shaftMotion('off', 2)).toBeUndefined();
    expect(shaftMotion(undefined, 2)).toBeUndefined();
    const shaken = poseOf({ kind: 'shake', reach: 4 }, 0.31);
    expect(Math.abs(shaken.dy)).toBeGreaterThan(0);
    expect(Math.abs(shaken.dy)).toBeLessThanOrEqual(4);
    expect(shaken.angle).toBe(0);
  });
});

test('software renderers and hidden names are told from a graphics card', () => {
  expect(isSoftware('ANGLE (Google, Vulkan 1.3.0 (SwiftShader Device (Subzero)), SwiftShader driver)')).toBe(true);
  expect(isSoftware('llvmpipe (LLVM 15.0.7, 256 bits)')).toBe(true);
  expect(isSoftware(undefined)).toBe(true);
  expect(isSoftware('ANGLE (Intel, Mesa Intel(R) UHD Graphics 620, OpenGL 4.6)')).toBe(false);
});
