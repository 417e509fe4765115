import { expect, test } from 'vitest';
import type { Action } from '../../src/attempt/actions.ts';
import { refusalOf, viewOf } from '../../src/attempt/attempt.ts';
import { press } from '../../src/stage/hand.ts';
import { sceneOf } from '../../src/stage/layout.ts';
import { markOf } from '../../src/stage/mark.ts';
import { hostBox, opening, shown } from '../../src/stage/sight.ts';
import { start, take } from '../scenario/shipped.ts';
import { black, land, lift, look, meter, open, operate, pull, red, set, walk } from '../score/solutions.ts';

test('the middle of a mark, pressed with the right thing in hand, does what is marked', () => {
  const attempt = start('warmUpstairs');
  const marked: [tool: 'hand' | 'look' | 'lift', lead: 'red' | 'black' | undefined, action: Action][] = [
    ['hand', undefined, set('thermostat', 'setCool', 71)],
    ['hand', undefined, operate('thermostat', 'mode', 'off')],
    ['hand', undefined, pull('thermostat')],
    ['hand', 'red', red('subbase.R')],
    ['hand', 'black', black('subbase.Y')],
    ['lift', undefined, lift('statY', 'to')],
    ['lift', undefined, land('statY', 'to')],
  ];
  const doIt = ([tool, lead, action]: (typeof marked)[number]) => {
    const view = viewOf(attempt);
    const scene = sceneOf(view);
    const box = markOf(scene, view, action)!;
    const at = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
    expect(press({ tool, lead, clip: undefined }, scene, view, at, 1)).toMatchObject({ kind: 'act', action });
    take(attempt, action);
  };
  marked.forEach(doIt);
  take(attempt, walk('furnace'));
  doIt(['look', undefined, look('drainPan')]);
  doIt(['hand', undefined, open('blowerDoor')]);
});

test('what is done elsewhere or not from here has no mark on the scene', () => {
  const attempt = start('warmUpstairs');
  const view = viewOf(attempt);
  for (const action of [walk('furnace'), meter('ohms'), red('board.R'), look('board'), open('blowerDoor')]) {
    expect(markOf(sceneOf(view), view, action)).toBeUndefined();
    if (action.name !== 'walk' && action.name !== 'meter') expect(refusalOf(attempt, action)).toBeDefined();
  }
});

test('a mark on a small host is brought into it, large enough for a finger, and one that is shown moves nothing', () => {
  const [width, height] = [390, 420];
  const sight = opening(width, height);
  const far = { x: 8, y: 400, width: 44, height: 44 };
  expect(hostBox(sight, far).x).toBeLessThan(0);
  expect(hostBox(sight, far).width).toBeLessThan(44);
  const moved = shown(sight, far, width, height);
  const box = hostBox(moved, far);
  expect(box.x).toBeGreaterThanOrEqual(0);
  expect(box.y + box.height).toBeLessThanOrEqual(height);
  expect(box.width).toBeGreaterThanOrEqual(44);
  expect(shown(moved, far, width, height)).toEqual(moved);
});

test('where the whole scene can be read, a mark changes nothing', () => {
  const sight = opening(800, 600);
  expect(shown(sight, { x: 8, y: 400, width: 44, height: 44 }, 800, 600)).toEqual(sight);
});
