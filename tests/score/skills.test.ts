/** A ticket says which skills it exercises: where a skill shows in what the hand does, its short way must do it. */
import { expect, test } from 'vitest';
import type { Action } from '../../src/attempt/actions.ts';
import { library } from '../scenario/shipped.ts';
import { SOLUTIONS } from './solutions.ts';

/** Which action shows a skill. The others show in what is concluded, and nothing here can tell. */
const SHOWN_BY: Readonly<Record<string, (action: Action) => boolean>> = {
  safeIsolation: (action) =>
    action.name === 'operate' &&
    action.part !== 'thermostat' &&
    ['off', 'out'].includes(action.position) &&
    action.control !== 'plunger',
  benchTestTheThermostat: (action) => action.name === 'mat',
  flameCurrent: (action) => action.name === 'meter' && action.fn === 'microampsDc',
  proveTheRepair: (action) => action.name === 'close',
};

test.each(library.tickets.map((each) => [each.id, each] as const))('%s asks for what its short way does', (id, ticket) => {
  const solution = SOLUTIONS[id];
  if (solution === undefined) throw new Error(`no solution of ${id}`);
  const actions = [...solution.search, ...solution.after];
  for (const [skill, shows] of Object.entries(SHOWN_BY)) expect(ticket.skills?.includes(skill), skill).toBe(actions.some(shows));
});
