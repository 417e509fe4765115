import { expect, test } from 'vitest';
import type { Action } from '../../src/attempt/actions.ts';
import { viewOf } from '../../src/attempt/attempt.ts';
import { hazardsInSight, hazardsOf } from '../../src/attempt/hazards.ts';
import { CATALOGUE } from '../../src/parts/catalogue.ts';
import { start, take } from '../scenario/shipped.ts';
import { close, open, operate, pull, walk } from '../score/solutions.ts';

/** What is in sight after these steps. */
function after(...actions: readonly Action[]): readonly string[] {
  const attempt = start('humsOutside');
  take(attempt, ...actions);
  return hazardsInSight(viewOf(attempt));
}

test('at the thermostat there is nothing but 24 V, on its base or off', () => {
  expect(after()).toEqual([]);
  expect(after(pull('thermostat'))).toEqual([]);
});

test('the furnace switch on the wall holds line voltage without any cover opened; the gas shows when the burner door is off', () => {
  expect(after(walk('furnace'))).toEqual(['lineVoltage']);
  expect(after(walk('furnace'), open('blowerDoor'))).toEqual(['lineVoltage']);
  expect(after(walk('furnace'), open('burnerDoor'))).toEqual(['lineVoltage', 'gas']);
});

test('the capacitor is in sight with the outdoor panel off, and charged whatever the disconnect says', () => {
  expect(after(walk('outdoor'))).toEqual([]);
  expect(after(walk('outdoor'), open('outdoorPanel'))).toEqual(['lineVoltage', 'charge']);
  expect(after(walk('outdoor'), open('outdoorPanel'), operate('disconnect', 'position', 'out'))).toContain('charge');
});

test('a cover put back, or a walk away, takes a hazard out of sight', () => {
  expect(after(walk('outdoor'), open('outdoorPanel'), close('outdoorPanel'))).toEqual([]);
  expect(after(walk('furnace'), open('burnerDoor'), walk('hallway'))).toEqual([]);
});

test('of every kind in the catalogue, only the valves hold gas and only the run capacitor keeps a charge', () => {
  const having = (hazard: string) => [...CATALOGUE.values()].filter((kind) => hazardsOf(kind).some((each) => each === hazard));
  expect(having('gas').map((kind) => kind.kind)).toEqual(['gasValve', 'standingPilotValve']);
  expect(having('charge').map((kind) => kind.kind)).toEqual(['dualCapacitor']);
});
