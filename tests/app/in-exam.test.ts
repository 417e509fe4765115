/** A ticket that the exam under way sets is shut outside of it. */
import { expect, test } from 'vitest';
import core from '../../scenarios/exams/controlsCore.json' with { type: 'json' };
import { ticketsSet } from '../../src/app/drills/exam-under-way.ts';

const BEGAN = 1e12;
const running = { blueprint: 'controlsCore', lot: 7, began: BEGAN, used: 0, answers: [null], flagged: [] };
const kept = { sittings: [], running: { ...running, bench: [{ ticket: 'blankWall' }, { ticket: 'humsOutside' }] } };
const isShut = (ticket: string, after: number, of = kept) => ticketsSet(of, BEGAN + after * 1000).has(ticket);

test('a ticket of the exam under way is shut, and others are not', () => {
  expect(isShut('humsOutside', 60)).toBe(true);
  expect(isShut('quietAfterTheStorm', 60)).toBe(false);
  for (const none of [{ sittings: [] }, { sittings: [], running }, undefined, 'damaged'])
    expect(ticketsSet(none, BEGAN)).toEqual(new Set());
});

test('until the time of the exam is over, come back or not, by the clock or by what was used', () => {
  const seconds = core.minutes * 60;
  expect(isShut('humsOutside', seconds - 1)).toBe(true);
  expect(isShut('humsOutside', seconds)).toBe(false);
  expect(isShut('humsOutside', 1, { ...kept, running: { ...kept.running, used: seconds } })).toBe(false);
});

test('an exam that is no longer there shuts nothing', () => {
  expect(isShut('humsOutside', 60, { ...kept, running: { ...kept.running, blueprint: 'gone' } })).toBe(false);
});
