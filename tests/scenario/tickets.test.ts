import { describe, expect, it } from 'vitest';
import { complaintHolds, createBench } from '../../src/attempt/bench.ts';
import { assemble } from '../../src/rig/assemble.ts';
import { possibleFaults } from '../../src/rig/faults.ts';
import { checkTicket } from '../../src/scenario/check.ts';
import { library, rigOf } from './shipped.ts';

/** Faults that a first shelf of tickets has to have among them. */
const WANTED = {
  'an open conductor': ({ target, mode }: Told) => /^stat|^out/.test(target) && mode === 'open',
  'a failed thermostat relay': ({ target, mode }: Told) => target === 'thermostat' && /Relay(StuckOpen|Welded)$/.test(mode),
  'a mislabelled board terminal': ({ mode }: Told) => mode.startsWith('labelsSwapped'),
  'a fuse blown by a rubbed-through conductor': ({ mode }: Told) => mode === 'toEarth',
  'a corroded splice': ({ mode }: Told) => mode === 'corroded',
  'a raised float switch': ({ target, mode }: Told) => target === 'drainPan' && mode === 'full',
  'weak cells': ({ target, mode }: Told) => target === 'cells' && mode === 'weak',
  'a door left ajar': ({ mode }: Told) => mode === 'ajar',
};
type Told = { readonly target: string; readonly mode: string };

describe('the tickets', () => {
  it('are at least eight, no two on one rig alike', () => {
    expect(library.tickets.length).toBeGreaterThanOrEqual(8);
    expect(new Set(library.tickets.map((ticket) => ticket.id)).size).toBe(library.tickets.length);
    const faults = library.tickets.map((ticket) => JSON.stringify([ticket.rig, ticket.faults]));
    expect(new Set(faults).size).toBe(faults.length);
  });

  it.each(Object.entries(WANTED))('have %s among them', (_, is) => {
    expect(library.tickets.some((ticket) => ticket.faults.some(is))).toBe(true);
  });
});

describe.each(library.tickets.map((ticket) => [ticket.id, ticket] as const))('%s', (_, ticket) => {
  const rig = rigOf(ticket);
  const assembly = assemble(rig);

  it('stands: its names are on the rig, its complaint reproduces, and a sound system does not make it', () => {
    expect(() => checkTicket(ticket, rig)).not.toThrow();
    expect(complaintHolds(createBench(assembly, ticket.faults, ticket), ticket)).toBe(true);
    expect(complaintHolds(createBench(assembly, [], ticket), ticket)).toBe(false);
  });

  it('is no ticket with one suspect alone: another fault tells the same story', () => {
    const isTruth = ({ target, mode }: Told) => ticket.faults.some((each) => each.target === target && each.mode === mode);
    const another = possibleFaults(rig).some(
      (fault) => !isTruth(fault) && fault.members.some((member) => complaintHolds(createBench(assembly, [member], ticket), ticket)),
    );
    expect(another).toBe(true);
  });

  it('is over when the fault is put right: then the call works as the ticket says it should', () => {
    const sound = createBench(assembly, [], ticket);
    expect(complaintHolds(sound, { complaint: { ...ticket.complaint, observed: ticket.complaint.works } })).toBe(true);
  });
});
