import { describe, expect, test } from 'vitest';
import { type Attempt, perform, viewOf } from '../../src/attempt/attempt.ts';
import { type Grip, press, putLead } from '../../src/stage/hand.ts';
import { sceneOf } from '../../src/stage/layout.ts';
import { grown, leadAt, nearestSpot, REST, regionsOf } from '../../src/stage/targets.ts';
import { start, take } from '../scenario/shipped.ts';
import { ALL_STANDS } from './rigs.ts';

const HAND: Grip = { tool: 'hand', lead: undefined, clip: undefined };
const EMPTY_WALL = { x: 300, y: 240 };

function pulled(): Attempt {
  const attempt = start('fanButNoCooling');
  take(attempt, { name: 'pull', part: 'thermostat' });
  return attempt;
}

function pressAt(attempt: Attempt, grip: Grip, spot: { x: number; y: number }, unit = 1) {
  const view = viewOf(attempt);
  return press(grip, sceneOf(view), view, spot, unit);
}

function terminal(attempt: Attempt, point: string) {
  return sceneOf(viewOf(attempt)).terminals.get(point)!;
}

describe('leads', () => {
  test('a press on a lead at rest takes it in hand; a press on a screw then puts it there', () => {
    const attempt = pulled();
    const taken = pressAt(attempt, HAND, { x: REST.red.x + 40, y: REST.red.y });
    expect(taken).toEqual({ kind: 'grip', grip: { ...HAND, lead: 'red' } });
    const put = pressAt(attempt, { ...HAND, lead: 'red' }, terminal(attempt, 'subbase.Y'));
    expect(put).toEqual({ kind: 'act', action: { name: 'probe', lead: 'red', at: 'subbase.Y' }, grip: HAND });
  });

  test('let go on the bare wall, a placed lead comes off and a free one goes back to rest', () => {
    const attempt = pulled();
    const let_ = () => putLead({ ...HAND, lead: 'black' }, sceneOf(viewOf(attempt)), viewOf(attempt), EMPTY_WALL, 1);
    expect(let_()).toEqual({ kind: 'grip', grip: HAND });
    take(attempt, { name: 'probe', lead: 'black', at: 'subbase.C' });
    expect(let_()).toEqual({ kind: 'act', action: { name: 'probe', lead: 'black', at: null }, grip: HAND });
  });

  test('a placed lead can be taken up again by its handle', () => {
    const attempt = pulled();
    take(attempt, { name: 'probe', lead: 'red', at: 'subbase.R' });
    const view = viewOf(attempt);
    const { tip, way, rested } = leadAt(sceneOf(view), view, 'red');
    expect(rested).toBe(false);
    expect(pressAt(attempt, HAND, { x: tip.x + way.x * 40, y: tip.y + way.y * 40 })).toEqual({
      kind: 'grip',
      grip: { ...HAND, lead: 'red' },
    });
  });

  test('a press on a screw with nothing in hand says to pick a lead', () => {
    const attempt = pulled();
    expect(pressAt(attempt, HAND, terminal(attempt, 'subbase.W'))).toEqual({ kind: 'say', key: 'stage:say.pickLead' });
  });
});

describe('tools', () => {
  test('lift takes the wire under the finger off its screw, and lands it from there', () => {
    const attempt = pulled();
    const grip: Grip = { ...HAND, tool: 'lift' };
    const screw = terminal(attempt, 'subbase.G');
    const first = pressAt(attempt, grip, { x: screw.x, y: screw.y + 18 });
    expect(first).toMatchObject({ kind: 'act', action: { name: 'lift', wire: 'statG', end: 'to' } });
    take(attempt, { name: 'lift', wire: 'statG', end: 'to' });
    const bare = sceneOf(viewOf(attempt)).ends.find((end) => end.wire === 'statG')!;
    expect(pressAt(attempt, grip, bare)).toMatchObject({ kind: 'act', action: { name: 'land', wire: 'statG', end: 'to' } });
  });

  test('a jumper takes two presses, and one on its clip takes it off', () => {
    const attempt = pulled();
    const grip: Grip = { ...HAND, tool: 'jumper' };
    expect(pressAt(attempt, grip, terminal(attempt, 'subbase.R'))).toEqual({ kind: 'grip', grip: { ...grip, clip: 'subbase.R' } });
    const action = { name: 'jumper', from: 'subbase.R', to: 'subbase.Y', on: true } as const;
    expect(pressAt(attempt, { ...grip, clip: 'subbase.R' }, terminal(attempt, 'subbase.Y'))).toMatchObject({ kind: 'act', action });
    take(attempt, action);
    expect(pressAt(attempt, grip, terminal(attempt, 'subbase.Y'))).toMatchObject({ kind: 'act', action: { ...action, on: false } });
  });

  test('the clamp closes round the wire under it, tug tugs it, look looks at the part', () => {
    const attempt = pulled();
    const screw = terminal(attempt, 'subbase.R');
    const wire = { x: screw.x + 2, y: screw.y + 30 };
    expect(pressAt(attempt, { ...HAND, tool: 'clamp' }, wire)).toMatchObject({
      action: { name: 'clamp', around: 'statR', turns: 1 },
    });
    expect(pressAt(attempt, { ...HAND, tool: 'tug' }, wire)).toMatchObject({ action: { name: 'tug', wire: 'statR' } });
    expect(pressAt(attempt, { ...HAND, tool: 'look' }, wire)).toMatchObject({ action: { name: 'look', part: 'subbase' } });
    expect(pressAt(attempt, { ...HAND, tool: 'look' }, EMPTY_WALL)).toMatchObject({ kind: 'say' });
  });
});

describe('the hand', () => {
  test('works the keys and switches of the thermostat', () => {
    const attempt = start('fanButNoCooling');
    const view = viewOf(attempt);
    const found = (name: string) => regionsOf(sceneOf(view), view).find((region) => region.name === `stage:handle.${name}`);
    const set = view.parts.find((part) => part.id === 'thermostat')?.signs.set;
    expect(found('up')?.action).toEqual({ name: 'set', part: 'thermostat', control: 'setCool', value: Number(set) + 1 });
    expect(found('mode.heat')?.action).toEqual({ name: 'operate', part: 'thermostat', control: 'mode', position: 'heat' });
    expect(found('fan.on')?.action).toEqual({ name: 'operate', part: 'thermostat', control: 'fan', position: 'on' });
    expect(perform(attempt, found('up')!.action).ok).toBe(true);
  });

  test.each(ALL_STANDS)('a press in the middle of anything that can be worked does just that ($name)', ({ attempt }) => {
    const view = viewOf(attempt);
    const scene = sceneOf(view);
    const wholeCovers = new Set(scene.covers.map((cover) => cover.at.height));
    const regions = regionsOf(scene, view).filter((region) => !wholeCovers.has(region.box.height));
    for (const region of regions) {
      const middle = { x: region.box.x + region.box.width / 2, y: region.box.y + region.box.height / 2 };
      expect(press(HAND, scene, view, middle, 1), region.name).toMatchObject({ kind: 'act', action: region.action });
    }
  });

  test('a finger on a small screen still hits the nearest screw, and no control is smaller than a thumb', () => {
    const spots = [
      { x: 0, y: 0 },
      { x: 60, y: 0 },
    ];
    expect(nearestSpot(spots, { x: 40, y: 10 }, 0.49)).toEqual({ x: 60, y: 0 });
    expect(nearestSpot(spots, { x: 30, y: 40 }, 1)).toBeUndefined();
    const box = grown({ x: 10, y: 10, width: 20, height: 100 }, 0.5);
    expect([box.width * 0.5, box.height * 0.5]).toEqual([44, 50]);
  });
});
