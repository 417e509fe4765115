import { CATALOGUE } from '../parts/catalogue.ts';
import type { Section } from '../parts/part.ts';
import type { RigData, RigWire } from './schema.ts';

/** One thing that is wrong: which part or wire, how, and how much where the mode has a magnitude. */
export interface Fault {
  readonly target: string;
  readonly mode: string;
  readonly magnitude: number;
}

/** A way for the rig to be wrong, before anything is known: a mode with all its member severities. */
export interface PossibleFault {
  readonly section: Section;
  readonly target: string;
  readonly mode: string;
  readonly weight: number;
  /** At least one; a mode without a magnitude has a single member. */
  readonly members: readonly Fault[];
}

/** Ohms of a conductor that is badly made or rubbed: enough to sag under load. Common practice, no source. */
const POOR_JOINT_OHMS = [40, 200] as const;

/** What can befall a wire, with how common it is; common practice, no source. */
const WEIGHTS = {
  open: 0.6,
  loose: 0.5,
  poor: 0.3,
  toEarth: 0.3,
  short: 0.15,
  swap: 0.12,
  landed: 0.1,
  harness: 0.12,
  pin: 0.15,
  intermittent: 0.3,
} as const;

/** `shortTo:other` and the like: a wire's mode that names a second wire, or the terminal that it is landed on (`landedTo:W2`). */
export function splitMode(mode: string): { readonly base: string; readonly other: string | undefined } {
  const at = mode.indexOf(':');
  return at < 0 ? { base: mode, other: undefined } : { base: mode.slice(0, at), other: mode.slice(at + 1) };
}

function plain(target: string, mode: string): readonly Fault[] {
  return [{ target, mode, magnitude: 0 }];
}

function samePart(a: string, b: string): boolean {
  return a.split('.')[0] === b.split('.')[0];
}

function conductorFaults(rig: RigData, wire: RigWire, section: Section): PossibleFault[] {
  const weighted = (mode: string, weight: number, members = plain(wire.id, mode)): PossibleFault => ({
    section,
    target: wire.id,
    mode,
    weight: weight * wire.weight,
    members,
  });
  const faults = [
    weighted('open', WEIGHTS.open),
    weighted('looseFrom', WEIGHTS.loose),
    weighted('looseTo', WEIGHTS.loose),
    weighted(
      'poor',
      WEIGHTS.poor,
      POOR_JOINT_OHMS.map((ohms) => ({ target: wire.id, mode: 'poor', magnitude: ohms })),
    ),
    weighted('toEarth', WEIGHTS.toEarth),
  ];
  const after = rig.wires.slice(rig.wires.indexOf(wire) + 1).filter((other) => other.cable === wire.cable);
  for (const other of after) {
    faults.push(weighted(`shortTo:${other.id}`, WEIGHTS.short));
    if (samePart(wire.from, other.from)) faults.push(weighted(`swappedFrom:${other.id}`, WEIGHTS.swap));
    if (samePart(wire.to, other.to)) faults.push(weighted(`swappedTo:${other.id}`, WEIGHTS.swap));
  }
  for (const [mode, end] of [
    ['landedFrom', 'from'],
    ['landedTo', 'to'],
  ] as const) {
    for (const terminal of vacantBeside(rig, wire[end])) faults.push(weighted(`${mode}:${terminal}`, WEIGHTS.landed));
  }
  return faults;
}

/** Terminals in the same row of screws on which nothing is landed. */
function vacantBeside(rig: RigData, point: string): string[] {
  const [id = '', own = ''] = point.split('.');
  const strip = CATALOGUE.get(rig.parts.find((part) => part.id === id)?.kind ?? '')?.strip ?? [];
  if (!strip.includes(own)) return [];
  const taken = new Set(rig.wires.filter((wire) => !wire.pin).flatMap((wire) => [wire.from, wire.to]));
  return strip.filter((terminal) => !taken.has(`${id}.${terminal}`));
}

/** Seconds for which an intermittent conductor makes contact after somebody stirred it; common practice, no source. */
export const STIRRED_SECONDS = 300;

/**
 * Every single fault that a rig can have: each part's declared modes, and the ways of its wires.
 * @param intermittents too, what comes and goes: parts that open when warm, and conductors that make contact only for a while after they
 *   are stirred
 */
export function possibleFaults(rig: RigData, intermittents = false): PossibleFault[] {
  const faults: PossibleFault[] = [];
  for (const part of rig.parts) {
    const kind = CATALOGUE.get(part.kind);
    for (const mode of kind?.modes ?? []) {
      if (mode.intermittent === true && !intermittents) continue;
      faults.push({
        section: kind?.section ?? 'equipment',
        target: part.id,
        mode: mode.id,
        weight: mode.weight * part.weight,
        members: mode.magnitudes
          ? mode.magnitudes.map((magnitude) => ({ target: part.id, mode: mode.id, magnitude }))
          : plain(part.id, mode.id),
      });
    }
  }
  for (const wire of rig.wires) {
    if (wire.fixed || wire.weight === 0) continue;
    if (wire.cable !== undefined) faults.push(...conductorFaults(rig, wire, 'cable'));
    else if (wire.pin)
      faults.push({
        section: 'thermostat',
        target: wire.id,
        mode: 'pinBent',
        weight: WEIGHTS.pin * wire.weight,
        members: plain(wire.id, 'pinBent'),
      });
    else
      faults.push({
        section: 'equipment',
        target: wire.id,
        mode: 'open',
        weight: WEIGHTS.harness * wire.weight,
        members: plain(wire.id, 'open'),
      });
  }
  if (intermittents) {
    for (const wire of rig.wires) {
      if (wire.fixed || wire.pin) continue;
      faults.push({
        section: wire.cable === undefined ? 'equipment' : 'cable',
        target: wire.id,
        mode: 'intermittent',
        weight: (wire.cable === undefined ? WEIGHTS.harness : WEIGHTS.intermittent) * wire.weight,
        members: plain(wire.id, 'intermittent'),
      });
    }
  }
  return faults.filter((fault) => fault.weight > 0);
}
