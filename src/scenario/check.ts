import { complaintHolds, createBench } from '../attempt/bench.ts';
import type { Control } from '../parts/part.ts';
import { assemble } from '../rig/assemble.ts';
import { dataError } from '../rig/errors.ts';
import { possibleFaults } from '../rig/faults.ts';
import type { RigData } from '../rig/schema.ts';
import { sameNaming } from '../suspects/hypotheses.ts';
import { stateOf } from '../world/world.ts';
import type { Ticket } from './ticket.ts';

/**
 * Checks a ticket against its rig: all that it names is there, its fault can be, and the complaint reproduces.
 * @throws DataError with the path inside the ticket
 */
export function checkTicket(ticket: Ticket, rig: RigData): void {
  if (ticket.rig !== rig.id) throw dataError('ticket.rig', 'rig', { rig: ticket.rig });
  const possible = possibleFaults(rig, ticket.suspects?.intermittents);
  const listed = [
    ...ticket.faults.map((fault, index) => ({ fault, path: `faults[${index}]` })),
    ...(ticket.suspects?.pairs ?? []).map((fault, index) => ({ fault, path: `suspects.pairs[${index}]` })),
  ];
  if (ticket.faults.length > 1 && !ticket.suspects?.pairs?.some((pair) => ticket.faults.some((fault) => sameNaming(fault, pair)))) {
    throw dataError('ticket.pair', 'faults', {});
  }
  listed.forEach(({ fault, path }) => {
    if (!possible.some((each) => each.target === fault.target))
      throw dataError('ticket.target', `${path}.target`, { target: fault.target });
    const found = possible.find((each) => each.target === fault.target && each.mode === fault.mode);
    if (!found) throw dataError('ticket.mode', `${path}.mode`, { target: fault.target, mode: fault.mode });
    if (!found.members.some((member) => member.magnitude === fault.magnitude)) {
      throw dataError('ticket.magnitude', `${path}.magnitude`, {
        possible: found.members.map((member) => member.magnitude).join(', '),
      });
    }
  });
  const assembly = assemble(rig);
  ticket.complaint.history.forEach((act, index) => {
    if (act.name === 'wait') return;
    const path = `complaint.history[${index}]`;
    const part = assembly.partById.get(act.part);
    if (!part) throw dataError('ticket.part', `${path}.part`, { part: act.part });
    const control = part.kind.controls?.find((each) => each.id === act.control);
    if (!control) throw dataError('ticket.control', `${path}.control`, { control: act.control });
    if (act.name === 'operate' && !control.positions?.includes(act.position))
      throw dataError('ticket.position', `${path}.position`, { position: act.position });
    if (act.name === 'set' && !inRange(control.range, act.value)) {
      throw dataError('ticket.value', `${path}.value`, { value: act.value });
    }
  });
  for (const list of ['observed', 'works'] as const) {
    ticket.complaint[list].forEach(({ part: id }, index) => {
      const part = assembly.partById.get(id);
      if (!part) throw dataError('ticket.part', `complaint.${list}[${index}].part`, { part: id });
    });
  }
  const bench = createBench(assembly, ticket.faults, ticket);
  const sound = createBench(assembly, [], ticket);
  ticket.complaint.works.forEach(({ part: id, sign, is }, index) => {
    const part = assembly.partById.get(id);
    const site = part && sound.world.sites[part.index];
    const found = part && site && part.kind.signs(site, stateOf(sound.world, part)).find((each) => each.key === sign);
    if (found?.value !== is)
      throw dataError('ticket.works', `complaint.works[${index}]`, { part: id, sign, found: found?.value ?? 'none' });
  });
  if (complaintHolds(sound, ticket)) throw dataError('ticket.noComplaint', 'complaint.observed', {});
  ticket.complaint.observed.forEach((observed, index) => {
    if (!complaintHolds(bench, { complaint: { ...ticket.complaint, observed: [observed] } })) {
      throw dataError('ticket.complaint', `complaint.observed[${index}]`, {
        part: observed.part,
        sign: observed.sign,
        is: observed.is,
      });
    }
  });
}

function inRange(range: Control['range'], value: number): boolean {
  return range !== undefined && value >= range.from && value <= range.to && Number.isInteger((value - range.from) / range.step);
}
