/** A ticket that is being made: its data as a file has them, with lists that may still be empty. No browser in here. */
import type { HistoryAct, Observed } from '../../attempt/job.ts';
import type { Control } from '../../parts/part.ts';
import { type AssembledPart, assemble } from '../../rig/assemble.ts';
import type { Fault } from '../../rig/faults.ts';
import type { RigData } from '../../rig/schema.ts';
import { MOST_OBSERVED, MOST_WORKS } from '../../scenario/population.ts';
import type { Ticket } from '../../scenario/ticket.ts';
import { sameNaming } from '../../suspects/hypotheses.ts';
import type { Offer } from '../engine/making.ts';

/** °F that a customer asks for beyond what the room has, and how long ago; common practice, no source. */
const ASKED_FAHRENHEIT = 6;
const STORY_SECONDS = 900;

/** A ticket for a rig with a story, and no fault yet. */
export function newDraft(rig: RigData): Ticket {
  const caller = callersOf(rig)[0];
  const call = caller && fittingCall(rig, caller);
  return {
    format: 'bellwire-ticket',
    version: 1,
    id: 'ownTicket',
    rig: rig.id,
    mode: 'practice',
    order: 1000,
    faults: [],
    weather: {},
    complaint: { history: caller && call ? storyOf(rig, caller, call.acts) : [], observed: [], works: [] },
  };
}

/** Heat where it is colder outside than inside, else cooling; where nothing has degrees to set, the last call. */
function fittingCall(rig: RigData, { kind }: AssembledPart) {
  const { calls = [], controls } = kind;
  const cold = rig.outdoorFahrenheit < (rig.rooms[0]?.startFahrenheit ?? 68);
  const asks = (acts: (typeof calls)[number]['acts']) =>
    acts.flatMap(({ control, value }) => {
      const range = controls?.find((each) => each.id === control)?.range;
      return typeof value === 'number' && range !== undefined ? [value > (range.from + range.to) / 2] : [];
    });
  const asking = calls.filter(({ acts }) => asks(acts).length > 0);
  return asking.find(({ acts }) => asks(acts).includes(cold)) ?? asking[0] ?? calls.at(-1);
}

/** The parts that a customer calls with: a thermostat, or one in each zone. */
export const callersOf = (rig: RigData): readonly AssembledPart[] =>
  assemble(rig).parts.filter((part) => part.kind.calls !== undefined);

/** What a customer did to make a call, a quarter of an hour ago. A setting is some degrees beyond what the room has. */
export function storyOf(
  rig: RigData,
  caller: AssembledPart,
  acts: readonly { readonly control: string; readonly value: string | number }[],
): HistoryAct[] {
  const room = rig.rooms[0]?.startFahrenheit ?? 68;
  const done = acts.map(({ control, value }): HistoryAct => {
    if (typeof value === 'string') return { name: 'operate', part: caller.id, control, position: value };
    const range = caller.kind.controls?.find((each) => each.id === control)?.range;
    const way = range !== undefined && value < (range.from + range.to) / 2 ? -1 : 1;
    return { name: 'set', part: caller.id, control, value: within(room + way * ASKED_FAHRENHEIT, range) };
  });
  return [...done, { name: 'wait', seconds: STORY_SECONDS }];
}

/** The nearest setting that a control has. */
export function within(value: number, range: Control['range']): number {
  if (range === undefined) return value;
  const stepped = range.from + Math.round((value - range.from) / range.step) * range.step;
  return Math.min(range.to, Math.max(range.from, stepped));
}

/** The draft with these faults; where there are two, the second is among the pairs that must be thought of. */
export function withFaults(draft: Ticket, faults: readonly Fault[]): Ticket {
  const before = draft.faults[1];
  const kept = (draft.suspects?.pairs ?? []).filter((pair) => before === undefined || !sameNaming(pair, before));
  const second = faults[1];
  const pairs = second === undefined || kept.some((pair) => sameNaming(pair, second)) ? kept : [...kept, second];
  return withSuspects({ ...draft, faults: [...faults] }, { ...draft.suspects, pairs });
}

/** The draft with what else must be thought of; nothing of it is written where there is nothing. */
export function withSuspects(draft: Ticket, { intermittents, pairs = [] }: NonNullable<Ticket['suspects']>): Ticket {
  const suspects = { ...(intermittents === true ? { intermittents } : {}), ...(pairs.length > 0 ? { pairs } : {}) };
  const { suspects: _, ...rest } = draft;
  return Object.keys(suspects).length > 0 ? { ...rest, suspects } : rest;
}

export const isObserved = (list: readonly Observed[], { part, sign }: Pick<Offer, 'part' | 'sign'>): boolean =>
  list.some((each) => each.part === part && each.sign === sign);

/**
 * What the customer can tell that a sound system would not show, and a little of the rest; and what says that all works again. Where living
 * there tells nothing, what a look at the equipment tells.
 */
export function proposed(offers: readonly Offer[]): Pick<Ticket['complaint'], 'observed' | 'works'> {
  const all = offers.filter(({ faulty, sound }) => faulty !== sound);
  const plain = all.filter((offer) => offer.plain);
  const differing = plain.length > 0 ? plain : all;
  const alike = offers.filter(({ faulty, sound }) => faulty === sound);
  return {
    observed: [...differing, ...alike].flatMap(({ part, sign, faulty }) => asObserved(part, sign, faulty)).slice(0, MOST_OBSERVED),
    works: differing.flatMap(({ part, sign, sound }) => asObserved(part, sign, sound)).slice(0, MOST_WORKS),
  };
}

const asObserved = (part: string, sign: string, is: Observed['is'] | undefined): Observed[] =>
  is === undefined ? [] : [{ part, sign, is }];

/** A list of signs with one put in, or taken out. */
export function toggled(list: readonly Observed[], { part, sign }: Offer, is: Observed['is'] | undefined): Observed[] {
  const without = list.filter((each) => each.part !== part || each.sign !== sign);
  return isObserved(list, { part, sign }) ? without : [...without, ...asObserved(part, sign, is)];
}

/** A group of figures without those that are not said; undefined where nothing is said at all. */
export function said<T extends object>(figures: T): T | undefined {
  const given = Object.entries(figures).filter(([, value]) => value !== undefined && !(typeof value === 'object' && isBare(value)));
  return given.length === 0 ? undefined : (Object.fromEntries(given) as T);
}

const isBare = (value: object | null): boolean => value === null || Object.keys(value).length === 0;
