import { beforeAll, expect, test } from 'vitest';
import { guestOf } from '../../src/app/guests.ts';
import { enrol, findTicket, rigOf } from '../../src/app/library.ts';
import { siteOf, titleOf } from '../../src/app/ticket-words.ts';
import { complaintText } from '../../src/app/words.ts';
import { begin, logOf, perform, replay } from '../../src/attempt/attempt.ts';
import type { Ticket } from '../../src/scenario/ticket.ts';
import { ticket } from '../scenario/shipped.ts';
import { pull } from '../score/solutions.ts';
import { speakEnglish } from './english.ts';

beforeAll(speakEnglish);

const shipped = ticket('fanButNoCooling');
const found = (id: string): Ticket => {
  const there = findTicket(id);
  if (there === undefined) throw new Error(`no ${id}`);
  return there;
};

test('a shipped ticket that is assigned plays apart from itself and goes by its own words', () => {
  const id = enrol({ ...shipped, mode: 'graded' }, { key: 'class-1 0 1', home: '#/take/x' });
  expect(id).toMatch(/^guest[0-9a-f]{32}$/);
  expect(found(id)).toEqual({ ...shipped, mode: 'graded', id });
  expect(titleOf(id)).toBe(titleOf(shipped.id));
  expect(siteOf(id)).toBe(siteOf(shipped.id));
  expect(complaintText(found(id))).toBe(complaintText(shipped));
  expect(guestOf(id)?.home).toBe('#/take/x');
});

test('the same ticket and key are the same guest; another key or house is another', () => {
  const home = '#/build';
  const ids = [
    enrol(shipped, { home }),
    enrol({ ...shipped }, { home }),
    enrol(shipped, { key: 'second', home }),
    enrol({ ...shipped, weather: { outdoorFahrenheit: 99 } }, { home }),
  ];
  expect(ids[1]).toBe(ids[0]);
  expect(new Set(ids).size).toBe(3);
});

test('an own ticket for which nobody wrote words is told by what its customer can tell', () => {
  const [fault] = shipped.faults;
  const own: Ticket = { ...shipped, id: 'mine', faults: fault ? [fault] : [] };
  const guest = found(enrol(own, { home: '#/build' }));
  expect(guest.told).toEqual({ symptom: 'noCooling', heard: 'air', voice: 1, job: 1 });
  expect(titleOf(guest.id)).toBe('No cooling');
  expect(complaintText(guest)).not.toContain('ticket:');
});

test('a log of a guest replays on the ticket as it was, once the id is put back', () => {
  const guest = found(enrol(shipped, { key: 'log', home: '#/' }));
  const attempt = begin(guest, rigOf(guest));
  perform(attempt, pull('thermostat'));
  const log = { ...logOf(attempt), ticket: shipped.id };
  expect(replay(shipped, rigOf(shipped), log).steps).toHaveLength(1);
});

test('what no rig has is refused', () => {
  expect(() => enrol({ ...shipped, id: 'mine', rig: 'nowhere' }, { home: '#/' })).toThrow('ticket.noRig');
  expect(findTicket('guest0')).toBeUndefined();
});
