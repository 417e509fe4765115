/** Tickets in a mock exam: which ones a lot gives, and when the work on one is right. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Action } from '../../src/attempt/actions.ts';
import { isRight, type Posted, ticketCount, ticketsOf } from '../../src/drills/examBench.ts';
import type { Grade } from '../../src/scenario/grade.ts';
import { debriefOf, yardstickFor } from '../../src/score/score.ts';
import { library, rigOf, start, take, ticket } from '../scenario/shipped.ts';
import { closeTicket, open, replace, SOLUTIONS } from '../score/solutions.ts';

const measures: Record<string, { grade: Grade }> = JSON.parse(readFileSync('src/app/measures.json', 'utf8'));
const posted: Posted[] = library.tickets.map(({ id, rig, skills }) => ({ id, rig, skills, grade: measures[id]?.grade }));
const found = (id: string) => posted.find((each) => each.id === id)!;
const none = new Set<string>();
const some = { tickets: { journeyman: 3, apprentice: 2 } };

describe('the tickets of a lot', () => {
  it('are as many of each grade as was asked for, the easier first, each once and each on a rig of its own', () => {
    for (let lot = 0; lot < 50; lot++) {
      const ids = ticketsOf(some, posted, none, lot);
      expect(ids.map((id) => found(id).grade)).toEqual(['apprentice', 'apprentice', 'journeyman', 'journeyman', 'journeyman']);
      expect(new Set(ids).size).toBe(ticketCount(some));
      expect(new Set(ids.map((id) => found(id).rig)).size).toBe(5);
      expect(ticketsOf(some, posted, none, lot)).toEqual(ids);
    }
  });

  it('are every ticket of the grades asked for, sooner or later', () => {
    const met = new Set(
      Array.from({ length: 400 }, (_, lot) => ticketsOf({ tickets: { apprentice: 2 } }, posted, none, lot)).flat(),
    );
    const all = posted.filter(({ grade }) => grade === 'apprentice').map(({ id }) => id);
    expect(all.length).toBeGreaterThan(20);
    expect([...met].sort()).toEqual(all.sort());
  });

  it('are known ones only where no other is left, and two of one rig only where no other rig is', () => {
    const one = (id: string, rig: string): Posted => ({ id, rig, grade: 'apprentice' });
    const few = [one('a', 'x'), one('b', 'x'), one('c', 'y'), one('d', 'z')];
    for (let lot = 0; lot < 20; lot++) {
      const draw = (count: number, known: readonly string[]) =>
        ticketsOf({ tickets: { apprentice: count } }, few, new Set(known), lot);
      // What is not known comes first, although it hangs on one rig.
      expect(draw(2, ['c', 'd']).sort()).toEqual(['a', 'b']);
      expect(draw(3, ['c', 'd']).slice(0, 2).sort()).toEqual(['a', 'b']);
      // Of what is left, a rig that was not met yet.
      expect(draw(2, ['a', 'b', 'c', 'd']).filter((id) => id === 'a' || id === 'b').length).toBeLessThan(2);
      expect(draw(3, []).filter((id) => id === 'a' || id === 'b').length).toBe(1);
      expect(draw(9, []).sort()).toEqual(['a', 'b', 'c', 'd']);
    }
  });

  it('ask for one of the skills that are named, where some are', () => {
    const asked = {
      tickets: { apprentice: 5 },
      skills: ['safeIsolation', 'jumperAtTheBoard'] as ('safeIsolation' | 'jumperAtTheBoard')[],
    };
    for (let lot = 0; lot < 20; lot++) {
      const ids = ticketsOf(asked, posted, none, lot);
      expect(ids.length).toBeGreaterThan(0);
      for (const id of ids) expect(asked.skills.some((skill) => found(id).skills?.includes(skill))).toBe(true);
    }
  });
});

describe('the work on a ticket', () => {
  const ID = 'quietAfterTheStorm';
  const yardstick = yardstickFor(ticket(ID), rigOf(ticket(ID)));
  const { search, name, after } = SOLUTIONS[ID]!;
  /** The same search, and then what is given. */
  function right(named: { readonly target: string; readonly mode: string }, ...then: readonly Action[]): boolean {
    const attempt = start(ID);
    take(attempt, ...search, { name: 'name', ...named, evidence: [] }, ...then);
    return isRight(debriefOf(attempt, undefined, yardstick));
  }

  it('is right with the fault named, nothing unsafe, and nothing sound replaced', () => {
    expect(right(name, ...after)).toBe(true);
    // What was not proved costs points, and is still right.
    expect(right(name, closeTicket)).toBe(true);
  });

  it('is not right with another fault named, a sound part replaced, or something unsafe left', () => {
    expect(right({ target: 'floatSwitch', mode: 'open' }, ...after)).toBe(false);
    expect(right(name, replace('floatSwitch'), ...after)).toBe(false);
    expect(right(name, open('blowerDoor'), closeTicket)).toBe(false);
  });
});
