/** No press on the drawn bench is without an answer: it acts, takes something in hand, or says why not. */
import { describe, expect, test } from 'vitest';
import type { Action } from '../../src/attempt/actions.ts';
import { viewOf } from '../../src/attempt/attempt.ts';
import type { BenchView } from '../../src/attempt/view.ts';
import { press } from '../../src/stage/hand.ts';
import { sceneOf } from '../../src/stage/layout.ts';
import { STAGE_TOOLS } from '../../src/stage/targets.ts';
import { SCENE } from '../../src/stage/tokens.ts';
import { start, take } from '../scenario/shipped.ts';
import { mat, open, pull, walk } from '../score/solutions.ts';
import { wordKeys } from '../tools/locale-keys.ts';
import { OPEN_STANDS } from './rigs.ts';

const STANDS: Readonly<Record<string, readonly Action[]>> = {
  hallway: [],
  'hallway, thermostat pulled': [pull('thermostat')],
  'empty mat': [walk('mat')],
  mat: [pull('thermostat'), mat('thermostat')],
  'furnace shut': [walk('furnace')],
  'furnace open': [walk('furnace'), open('burnerDoor'), open('blowerDoor')],
  'outdoor shut': [walk('outdoor')],
  'outdoor open': [walk('outdoor'), open('outdoorPanel'), open('disconnectCover')],
  'panel shut': [walk('panel')],
  'panel open': [walk('panel'), open('panelFront')],
};
const ACROSS = 10;
const DOWN = 8;

const views: readonly (readonly [string, () => BenchView])[] = [
  ...Object.entries(STANDS).map(([name, actions]) => {
    const view = (): BenchView => {
      const attempt = start('humsOutside');
      take(attempt, ...actions);
      return viewOf(attempt);
    };
    return [name, view] as const;
  }),
  ...OPEN_STANDS.filter(({ rig }) => rig.id !== 'furnaceAndCondenser').map(
    ({ name, attempt }) => [name, () => viewOf(attempt)] as const,
  ),
];
const keys = wordKeys('.', 'en');

describe.each(views)('%s', (_, viewOfIt) => {
  test.each(STAGE_TOOLS)('eighty presses with %s all answer', (tool) => {
    const view = viewOfIt();
    const scene = sceneOf(view);
    const grip = { tool, lead: undefined, clip: undefined };
    for (let x = 0; x < ACROSS; x += 1)
      for (let y = 0; y < DOWN; y += 1) {
        const at = { x: ((x + 0.5) * SCENE.width) / ACROSS, y: ((y + 0.5) * SCENE.height) / DOWN };
        const outcome = press(grip, scene, view, at, 1);
        if (outcome.kind === 'grip') expect(outcome.grip).not.toEqual(grip);
        if (outcome.kind === 'say') expect(keys).toContain(outcome.key);
      }
  });
});
