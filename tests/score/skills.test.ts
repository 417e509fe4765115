/** A ticket says which skills it exercises: where a skill shows in what the hand does, its short way must do it. */
import { expect, test } from 'vitest';
import type { Action } from '../../src/attempt/actions.ts';
import { ticket } from '../scenario/shipped.ts';
import { SOLUTIONS } from './solutions.ts';

/** Which action shows a skill. The others show in what is concluded, and nothing here can tell. */
const SHOWN_BY: Readonly<Record<string, (action: Action) => boolean>> = {
  safeIsolation: (action) =>
    action.name === 'operate' &&
    action.part !== 'thermostat' &&
    ['off', 'out'].includes(action.position) &&
    action.control !== 'plunger',
  flameCurrent: (action) => action.name === 'meter' && action.fn === 'microampsDc',
  proveTheRepair: (action) => action.name === 'close',
};

test.each(Object.entries(SOLUTIONS))('%s asks for what its short way does', (id, { search, after }) => {
  const actions = [...search, ...after];
  for (const [skill, shows] of Object.entries(SHOWN_BY))
    expect(ticket(id).skills?.includes(skill), skill).toBe(actions.some(shows));
});
