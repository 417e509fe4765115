/** The worker's part in making tickets: whether one stands, how hard it is, and drawing them. */
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import type { Action } from '../../attempt/actions.ts';
import { type Bench, createBench } from '../../attempt/bench.ts';
import type { Observed } from '../../attempt/job.ts';
import { signsOf } from '../../attempt/notices.ts';
import { assemble } from '../../rig/assemble.ts';
import { type DataError, dataError, isDataError } from '../../rig/errors.ts';
import { layHouse } from '../../rig/house.ts';
import type { RigData } from '../../rig/schema.ts';
import { checkTicket } from '../../scenario/check.ts';
import { type Draw, drawTickets, type Rejection, sameness } from '../../scenario/generate.ts';
import type { Grade } from '../../scenario/grade.ts';
import { GOOD_TOTAL, type Measured, measureTicket } from '../../scenario/measure.ts';
import { plainSigns } from '../../scenario/population.ts';
import type { Skill } from '../../scenario/skills.ts';
import { symptomOf } from '../../scenario/symptom.ts';
import { loadTicket, type Ticket } from '../../scenario/ticket.ts';
import { yardstickFor } from '../../score/score.ts';

/** A data error as it crosses from the worker. */
export type Fault = Pick<DataError, 'code' | 'path' | 'values'>;

/** A sign that the customer could tell: what it is with the fault, and on a sound system; undefined where it is not there at all. */
export interface Offer {
  readonly part: string;
  readonly sign: string;
  readonly faulty: Observed['is'] | undefined;
  readonly sound: Observed['is'] | undefined;
  /** Told by living there; else only by whoever looks at the equipment. */
  readonly plain: boolean;
}

export interface Examined {
  /** The first thing that does not stand; none: the ticket does. */
  readonly error: Fault | undefined;
  readonly offers: readonly Offer[];
  readonly told: Pick<NonNullable<Ticket['told']>, 'symptom' | 'heard'> | undefined;
}

export interface Survey {
  readonly measured: Measured;
  readonly actions: readonly Action[];
  /** Why the solved ticket would be refused as one to ship: it cannot be told apart, or scores poorly. */
  readonly error: Fault | undefined;
}

/** What tickets to draw, and by which lot. */
export interface Recipe {
  readonly rig: string;
  readonly skill?: Skill | undefined;
  readonly grade?: Grade | undefined;
  readonly seed: number;
}

export type Drawn =
  | { readonly made: { readonly ticket: Ticket; readonly seconds: number } }
  | { readonly rejected: Rejection | 'twice' };

const faultOf = (error: unknown): Fault => {
  if (!isDataError(error)) throw error;
  return { code: error.code, path: error.path, values: error.values };
};

function attempted(run: () => void): Fault | undefined {
  try {
    run();
    return undefined;
  } catch (error) {
    return faultOf(error);
  }
}

/** Stands where nothing was observed yet: a sign that no part has, so that the check comes as far as it, and no farther. */
const nothingYet = (rig: RigData): Observed => ({ part: rig.parts[0]?.id ?? 'none', sign: 'nothingYet', is: 0 });

/** A draft with something in its lists of signs, so that the rest of it can be looked at. */
function withSigns(json: unknown, rig: RigData): unknown {
  const draft = json as { readonly complaint?: { readonly observed?: unknown[]; readonly works?: unknown[] } } | null;
  if (typeof draft?.complaint !== 'object' || draft.complaint === null) return json;
  const filled = (list: unknown[] | undefined) => (list?.length === 0 ? [nothingYet(rig)] : list);
  const { complaint } = draft;
  return { ...draft, complaint: { ...complaint, observed: filled(complaint.observed), works: filled(complaint.works) } };
}

/** @param rig as it left the factory; the draft's house is laid here */
export function examine({ json, rig: plain }: { readonly json: unknown; readonly rig: RigData }): Examined {
  try {
    const draft = loadTicket(withSigns(json, plain));
    const rig = layHouse(plain, draft.house);
    const before = attempted(() => checkTicket(draft, rig));
    if (before !== undefined && !/^complaint\.(observed|works)/.test(before.path))
      return { error: before, offers: [], told: undefined };
    const assembly = assemble(rig);
    const faulty = createBench(assembly, draft.faults, draft);
    const sound = createBench(assembly, [], draft);
    const offers = offersOf(faulty, sound);
    return {
      error: unnoticed(json, offers) ?? attempted(() => checkTicket(loadTicket(json), rig)),
      offers,
      told: symptomOf(faulty, sound),
    };
  } catch (error) {
    return { error: faultOf(error), offers: [], told: undefined };
  }
}

/** Why there is nothing to put into an empty list of signs: in this story the fault does nothing that a sound system does not do too. */
function unnoticed(json: unknown, offers: readonly Offer[]): Fault | undefined {
  const { complaint } = json as { readonly complaint: Ticket['complaint'] };
  const isOpen = complaint.observed?.length === 0 || complaint.works?.length === 0;
  if (!isOpen || offers.some(({ faulty, sound }) => faulty !== sound)) return undefined;
  return faultOf(dataError('ticket.noComplaint', 'complaint.observed'));
}

/** What can be told by living there, and what else differs for whoever looks. */
function offersOf(faulty: Bench, sound: Bench): Offer[] {
  return sound.world.assembly.parts.flatMap((part) => {
    const told = (bench: Bench) =>
      signsOf(bench, part).filter(({ minor, quiet, sense }) => !minor && !quiet && sense !== 'inspect');
    const [of, should] = [told(faulty), told(sound)];
    const plain = new Set([...plainSigns(faulty, part), ...plainSigns(sound, part)].map(({ key }) => key));
    return [...new Set([...of, ...should].map(({ key }) => key))]
      .map((sign) => ({
        part: part.id,
        sign,
        faulty: of.find(({ key }) => key === sign)?.value,
        sound: should.find(({ key }) => key === sign)?.value,
        plain: plain.has(sign),
      }))
      .filter((offer) => offer.plain || offer.faulty !== offer.sound);
  });
}

export function survey({ ticket, rig }: { readonly ticket: Ticket; readonly rig: RigData }): Survey {
  const yardstick = yardstickFor(ticket, rig);
  const measured = measureTicket(ticket, rig, yardstick);
  return { measured, actions: yardstick.par.actions, error: refusalOf(measured) };
}

function refusalOf({ beside: [beside], total }: Measured): Fault | undefined {
  if (beside) return faultOf(dataError('ticket.notSeparated', 'faults', { target: beside.target, mode: beside.mode }));
  return total < GOOD_TOTAL ? faultOf(dataError('ticket.poorScore', 'faults', { total })) : undefined;
}

/** Tickets of one house, in a pool that wants many houses: more are quicker, and more alike. */
const PER_HOUSE = 6;

/** The recipe that is being drawn from, and what it gave. */
let shelf: { readonly key: string; readonly draws: Generator<Draw>; readonly seen: Set<string> } | undefined;

/** The next draw. */
export function draw({ recipe, rig }: { readonly recipe: Recipe; readonly rig: RigData }): Drawn {
  const key = JSON.stringify(recipe);
  if (shelf?.key !== key) {
    const generator = xoroshiro128plus(recipe.seed);
    const name = (job: number) => `drawn${recipe.seed}${rig.id.slice(0, 16)}${job}`;
    const { skill, grade } = recipe;
    const draws = drawTickets(rig, () => uniformFloat64(generator), { skill, grade, perVariant: PER_HOUSE }, name);
    shelf = { key, draws, seen: new Set() };
  }
  const next: Draw = shelf.draws.next().value;
  if ('rejected' in next) return next;
  const same = sameness(next.made);
  if (shelf.seen.has(same)) return { rejected: 'twice' };
  shelf.seen.add(same);
  return { made: { ticket: next.made.ticket, seconds: next.made.measured.seconds } };
}
