/** What a browser may say to the lab host, and nothing else. */
import { describe, expect, it } from 'vitest';
import { begin, optionsOf, perform, viewOf } from '../../src/attempt/attempt.ts';
import { fromBrowserSchema, fromHostSchema, LONGEST_WORDS, signInSchema, wholeView } from '../../src/classroom/protocol.ts';
import { classSchema, extendSchema, instructorHelloSchema, rosterSchema, toInstructorSchema } from '../../src/classroom/room.ts';
import { rigFor } from '../../src/scenario/library.ts';
import { library } from '../scenario/shipped.ts';

const token = 'A'.repeat(43);

describe('the messages of the lab', () => {
  it('are taken as they are meant', () => {
    for (const message of [
      { kind: 'hello', token },
      { kind: 'open', assignment: 'week-9', item: 0 },
      { kind: 'open', assignment: 'week-9', item: 0, fresh: true },
      { kind: 'act', seq: 1, action: { name: 'look', part: 'board' } },
      { kind: 'words', text: '' },
      { kind: 'leave' },
    ])
      expect(fromBrowserSchema.parse(message)).toEqual(message);
    expect(signInSchema.parse({ class: ' ab12 ', trainee: 't1', pin: '0042' }).class).toBe('AB12');
    expect(rosterSchema.safeParse({ csv: 'code,name\nt1,Ana' }).success).toBe(true);
    expect(extendSchema.safeParse({ assignment: 'week-9', minutes: 10 }).success).toBe(true);
  });

  it('are refused when a field is too many, too long or of another kind', () => {
    for (const message of [
      { kind: 'hello', token, fault: true },
      { kind: 'hello', token: `${token}A` },
      { kind: 'open', assignment: '../week', item: 0 },
      { kind: 'open', assignment: 'week-9', item: -1 },
      { kind: 'act', seq: 0, action: { name: 'close' } },
      { kind: 'act', seq: 1, action: { name: 'close', also: 1 } },
      { kind: 'act', seq: 1, action: { name: 'reveal' } },
      { kind: 'words', text: 'x'.repeat(LONGEST_WORDS + 1) },
      { kind: 'room' },
      null,
      [],
    ])
      expect(fromBrowserSchema.safeParse(message).success, JSON.stringify(message)).toBe(false);
    expect(signInSchema.safeParse({ class: 'AB12', trainee: 't1', pin: 'abcd' }).success).toBe(false);
    expect(instructorHelloSchema.safeParse({ kind: 'hello', token: '' }).success).toBe(false);
  });

  it('carry a view that is put together again as the bench draws it', () => {
    const ticket = library.tickets[0]!;
    const attempt = begin(ticket, rigFor(library.rigs, ticket));
    perform(attempt, optionsOf(attempt)[0]!);
    const { steps, looks, places, ...view } = viewOf(attempt);
    const sent = JSON.parse(JSON.stringify({ kind: 'acted', seq: 1, step: steps[0], view, options: optionsOf(attempt) }));
    const acted = fromHostSchema.parse(sent);
    if (acted.kind !== 'acted') throw new Error('another message');
    expect(wholeView({ looks, places }, acted.view, [acted.step])).toEqual(JSON.parse(JSON.stringify(viewOf(attempt))));
    expect(fromHostSchema.safeParse({ ...sent, truth: [] }).success).toBe(false);
  });

  it('tell the instructor of seats and the class, and nothing besides', () => {
    const seat = { trainee: 't1', name: 'Ana', connected: true };
    expect(toInstructorSchema.safeParse({ kind: 'room', paused: false, seats: [seat] }).success).toBe(true);
    expect(toInstructorSchema.safeParse({ kind: 'room', paused: false, seats: [{ ...seat, pin: '1' }] }).success).toBe(false);
    expect(classSchema.safeParse({ code: 'AB12', addresses: [], paused: false, trainees: [], assignments: [] }).success).toBe(true);
  });
});
