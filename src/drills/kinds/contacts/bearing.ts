import { canLift } from '../../../attempt/access.ts';
import type { Action } from '../../../attempt/actions.ts';
import type { Bench } from '../../../attempt/bench.ts';
import type { HistoryAct } from '../../../attempt/job.ts';
import { idealBetween, prober } from '../../../attempt/measure.ts';
import { signsOf } from '../../../attempt/notices.ts';
import type { Reading } from '../../../meter/read.ts';
import type { AssembledPart } from '../../../rig/assemble.ts';
import type { Fault } from '../../../rig/faults.ts';
import { callersOf } from '../../../suspects/route.ts';
import { type Setting, takeAll } from '../../setting.ts';

/** Controls and how they stand. */
export type Settings = readonly { readonly control: string; readonly value: string | number }[];

/** Where a thermostat's contacts are asked for: on the mat, on its base under power, or on its wall with its wires lifted. */
export type Where = 'mat' | 'wall' | 'loose';

export interface Bearing {
  readonly part: AssembledPart;
  readonly where: Where;
  /** On the mat it still works: cells, or no power needed. */
  readonly ownPower: boolean;
  /** Its terminals that bring power, by the trade's letters: R, or Rh and Rc. */
  readonly sources: readonly string[];
  /** What its contacts could join to one of these. */
  readonly contacts: readonly string[];
  /** From the door to where it is asked, with these keys pressed on the way. */
  way(acts: readonly HistoryAct[]): readonly Action[];
}

/** A contact with an anticipator in series has less, with any load beside it more, ohms: the anticipator's scale ends at 24 Ω. */
const JOINED_OHMS = 30;
/** In a circuit loads lie beside the contact: none has less than this, and no closed contact more; typical, no source. */
const JOINED_UNDER_POWER_OHMS = 3;
/** Less than any load draws, and more than leaks through an open contact. */
const LEAST_AMPS = 0.001;
/** Longer than a compressor's guard, so that nothing waits for it. */
const REST_SECONDS = 400;

const known = new WeakMap<Setting, readonly Bearing[]>();

export function bearingsOf(setting: Setting): readonly Bearing[] {
  const found = known.get(setting);
  if (found) return found;
  const all = callersOf(setting.bench([])).flatMap((part): Bearing[] => {
    if (!part.kind.removable) return [bearingOf(setting, part, 'loose', true)];
    const mat = bearingOf(setting, part, 'mat', true);
    const calls = part.kind.calls ?? [];
    const ownPower = calls.some(({ acts }) =>
      mat.sources.some(
        (source) => joinedTo(setting, { at: mat, faults: [], acts: stepsOf(part.id, acts), seconds: 1 }, source)?.length,
      ),
    );
    return ownPower ? [mat] : [bearingOf(setting, part, 'wall', false), bearingOf(setting, part, 'mat', false)];
  });
  known.set(setting, all);
  return all;
}

/** @param ownPower as in `Bearing` */
export function bearingOf(setting: Setting, part: AssembledPart, where: Where, ownPower: boolean): Bearing {
  const { id, kind, data } = part;
  const sources = kind.terminals.map((terminal) => terminal.id).filter((terminal) => terminal.startsWith('R'));
  const off = stepsOf(id, kind.calls?.find((call) => call.id === 'off')?.acts ?? []);
  return {
    part,
    where,
    ownPower,
    sources,
    contacts: reachedFrom(part, sources),
    way: (acts) => {
      const steps: Action[] = data.place === setting.rig.start ? [] : [{ name: 'walk', to: data.place }];
      if (data.cover !== undefined) steps.push({ name: 'cover', cover: data.cover, open: true });
      steps.push(...off, { name: 'wait', seconds: REST_SECONDS }, ...acts);
      if (where === 'mat') steps.push({ name: 'pull', part: id }, { name: 'mat', part: id });
      if (where === 'loose') steps.push(...lifts(setting, part));
      return steps;
    },
  };
}

/** Terminals with a branch to one of these, by way of inner nodes too; C brings power and is joined to nothing. */
function reachedFrom({ kind }: AssembledPart, sources: readonly string[]): readonly string[] {
  const reached = new Set<string>(sources);
  for (const node of reached) for (const [from, to] of kind.branches) if (from === node) reached.add(to);
  return kind.terminals.map(({ id }) => id).filter((id) => reached.has(id) && !sources.includes(id) && id !== 'C');
}

function lifts({ assembly }: Setting, part: AssembledPart): Action[] {
  return assembly.wires.filter(canLift).flatMap((wire): Action[] => {
    const end = wire.fromPart === part.index ? 'from' : wire.toPart === part.index ? 'to' : undefined;
    return end === undefined ? [] : [{ name: 'lift', wire: wire.id, end }];
  });
}

/** A thermostat, what is wrong with it, what it was set to after a rest, and how many seconds ago. */
export interface Moment {
  readonly at: Bearing;
  readonly faults: readonly Fault[];
  readonly acts: readonly HistoryAct[];
  readonly seconds: number;
}

/** The bench at that moment, and the steps that led there: what stands so already needs none. It is good until the next moment is asked for. */
export function standAt(
  setting: Setting,
  { at, faults, acts, seconds }: Moment,
): { readonly bench: Bench; readonly steps: readonly Action[] } {
  const bench = setting.bench(faults);
  const steps = [...at.way(acts), { name: 'wait', seconds } as const].filter((step) => takeAll(bench, [step]));
  return { bench, steps };
}

/** The terminals that a meter finds joined to a source then; undefined where what is joined behind the wall leaves it open. */
export function joinedTo(setting: Setting, moment: Moment, source: string): readonly string[] | undefined {
  const { at } = moment;
  const { bench } = standAt(setting, moment);
  const point = (terminal: string) => `${at.part.id}.${terminal}`;
  if (at.where !== 'wall') {
    const read = prober(bench);
    return at.contacts.filter((terminal) => isBelow(read('ohms', point(source), point(terminal)), JOINED_OHMS));
  }
  const isNear = (on: Bench, a: string, b: string) =>
    isBelow(idealBetween(on, 'ohms', point(a), point(b)), JOINED_UNDER_POWER_OHMS);
  const near = at.contacts.filter((terminal) => isNear(bench, source, terminal));
  const carries = (terminal: string): boolean => {
    const branch = at.part.kind.branches.findIndex(([from, to]) => from === source && to === terminal);
    return (bench.world.sites[at.part.index]?.amps(branch) ?? 0) > LEAST_AMPS;
  };
  const idle = near.filter((terminal) => !carries(terminal));
  if (idle.length === 0) return near;
  // Without a current a contact that is closed looks like one that is open, where another is joined to it outside.
  const off = standAt(setting, { at, faults: [], acts: [], seconds: 1 }).bench;
  const alone = (terminal: string) => !near.some((other) => other !== terminal && isNear(off, terminal, other));
  return idle.every(alone) ? near : undefined;
}

const isBelow = ({ kind, value }: Reading, ohms: number): boolean => kind === 'number' && value < ohms;

/** Whether something is held back for a while then, and the question would be about when. */
export function standsWaiting(setting: Setting, moment: Moment): boolean {
  const { bench } = standAt(setting, moment);
  return signsOf(bench, moment.at.part).some(({ value }) => value === 'waiting');
}

/** The room's temperature then, °F. */
export function roomAt(setting: Setting, moment: Moment): number {
  return Math.round(standAt(setting, moment).bench.world.sites[moment.at.part.index]?.roomFahrenheit ?? 0);
}

/** A call's controls as steps. */
export const stepsOf = (part: string, set: Settings): HistoryAct[] =>
  set.map(
    ({ control, value }): HistoryAct =>
      typeof value === 'number' ? { name: 'set', part, control, value } : { name: 'operate', part, control, position: value },
  );
