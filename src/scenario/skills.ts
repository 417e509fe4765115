import type { Action } from '../attempt/actions.ts';
import type { Attempt, Step } from '../attempt/attempt.ts';
import type { Assembly } from '../rig/assemble.ts';
import { proofOf } from '../score/proof.ts';
import { KNOWN_SOURCE_VOLTS } from '../score/required.ts';
import { searchSteps } from '../suspects/follow.ts';

export const SKILLS = [
  'proveTheMeter',
  'readTheTicket',
  'supplyFirst',
  'benchTestTheThermostat',
  'isolateTheCable',
  'jumperAtTheBoard',
  'hopscotch',
  'loadAgainstNoLoad',
  'sequenceOfOperation',
  'currentByClamp',
  'flameCurrent',
  'safeIsolation',
  'proveTheRepair',
] as const;
/** Habits of the trade that a ticket exercises. */
export type Skill = (typeof SKILLS)[number];

/** Standing and watching for at least this long follows a sequence of operation, seconds; common practice, no source. */
const WATCHED_SECONDS = 60;
/** Readings in a row by which a lead hops along a circuit while the other stays. */
const HOPS = 3;
/** Suspects that the complaint itself rules out, as a share of all that can be wrong, where reading it is half the job. */
const TOLD_SHARE = 0.9;

/** Which skills an attempt shows, by what was done and nothing else. @param told share of all that can be wrong which the complaint rules out, 0…1 */
export function skillsShown(attempt: Attempt, told: number): Skill[] {
  const { assembly } = attempt;
  const search = searchSteps(attempt.steps);
  const did = (is: (action: Action) => boolean) => search.some(({ action }) => is(action));
  const shown: Readonly<Record<Skill, boolean>> = {
    proveTheMeter: proves(search),
    readTheTicket: told >= TOLD_SHARE && !did(({ name }) => name === 'probe' || name === 'clamp'),
    supplyFirst: did((action) => sectionOf(assembly, action) === 'supply'),
    benchTestTheThermostat: search.some(
      ({ view }) => view.reading !== undefined && onBody(assembly, view.red) && onBody(assembly, view.black),
    ),
    isolateTheCable: isolatesCable(assembly, search),
    jumperAtTheBoard: did((action) => action.name === 'jumper' && action.on),
    hopscotch: hops(search) >= HOPS,
    loadAgainstNoLoad: search.some(({ view }) => view.fn === 'voltsLoaded' && view.reading !== undefined),
    sequenceOfOperation: did((action) => (action.name === 'wait' || action.name === 'watch') && action.seconds >= WATCHED_SECONDS),
    currentByClamp: did((action) => action.name === 'clamp' && action.around !== null),
    flameCurrent: search.some(({ view }) => view.fn === 'microampsDc' && view.reading !== undefined),
    safeIsolation: attempt.steps.some(({ action }) => isolates(assembly, action)),
    proveTheRepair: proofOf(attempt).proved,
  };
  return SKILLS.filter((skill) => shown[skill]);
}

const volts = ({ view: { reading } }: Step): number | undefined =>
  reading?.kind === 'number' && (reading.unit === 'V~' || reading.unit === 'V=') ? Math.abs(reading.value) : undefined;

/** A live reading, and a dead one after it that is worth something because of it. */
function proves(search: readonly Step[]): boolean {
  const live = search.findIndex((step) => (volts(step) ?? 0) >= KNOWN_SOURCE_VOLTS);
  return live >= 0 && search.slice(live + 1).some((step) => (volts(step) ?? KNOWN_SOURCE_VOLTS) < KNOWN_SOURCE_VOLTS / 3);
}

/** The most readings of volts in a row with one lead where it was. */
function hops(search: readonly Step[]): number {
  let most = 0;
  let row = 0;
  let before: Step | undefined;
  for (const step of search) {
    if (volts(step) === undefined || step.action.name !== 'probe') continue;
    const stays = before !== undefined && (step.view.red === before.view.red) !== (step.view.black === before.view.black);
    row = stays ? row + 1 : 1;
    most = Math.max(most, row);
    before = step;
  }
  return most;
}

/** A conductor lifted off, or volts or ohms taken at both ends of one cable. */
function isolatesCable(assembly: Assembly, search: readonly Step[]): boolean {
  const inCable = assembly.wires.filter((wire) => wire.data.cable !== undefined);
  if (search.some(({ action }) => action.name === 'lift' && inCable.some((wire) => wire.id === action.wire))) return true;
  const touched = new Set(search.flatMap(({ view }) => (view.reading ? [view.red, view.black] : [])));
  return inCable.some(({ data }) => touched.has(data.from) && touched.has(data.to));
}

/** A terminal of a body's own, which no lead reaches while it sits on its base. */
function onBody(assembly: Assembly, point: string | undefined): boolean {
  return point !== undefined && assembly.partById.get(point.split('.')[0] ?? '')?.kind.removable === true;
}

function isolates(assembly: Assembly, action: Action): boolean {
  return action.name === 'operate' && action.position === assembly.partById.get(action.part)?.kind.isolator?.off;
}

/** Section of the part that an action looks at, works or touches. */
function sectionOf(assembly: Assembly, action: Action): string | undefined {
  const id =
    action.name === 'look' || action.name === 'operate' ? action.part : action.name === 'probe' ? action.at?.split('.')[0] : '';
  return assembly.partById.get(id ?? '')?.kind.section;
}
