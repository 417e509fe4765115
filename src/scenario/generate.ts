import { isDataError } from '../rig/errors.ts';
import type { RigData } from '../rig/schema.ts';
import { parOf } from '../score/par.ts';
import { checkTicket } from './check.ts';
import { type Grade, gradeOf } from './grade.ts';
import { GOOD_TOTAL, type Measured, measureTicket } from './measure.ts';
import { type Group, type Population, populate } from './population.ts';
import { shuffled } from './random.ts';
import type { Skill } from './skills.ts';
import { loadTicket, type Ticket, VOICES } from './ticket.ts';
import { drawVariant, type Random, type Variant } from './variant.ts';

/** Why a draw is no ticket. */
export const REJECTIONS = [
  /** Nobody who arrives there has anything left to find out. */
  'oneSuspect',
  /** The complaint does not reproduce, or a sound system makes it too. */
  'complaint',
  /** Some other fault is left that a test would tell from it, or was left by the reference way. */
  'notSeparated',
  /** The reference way's solution scores less than it should. */
  'score',
  /** What should work again is not seen to within the time that a technician waits for it. */
  'notProved',
  'skill',
  'grade',
] as const;
export type Rejection = (typeof REJECTIONS)[number];

export interface Made {
  readonly ticket: Ticket;
  readonly measured: Measured;
}

export type Draw = { readonly made: Made } | { readonly rejected: Rejection };

export interface Wishes {
  readonly skill?: Skill | undefined;
  readonly grade?: Grade | undefined;
  /** Tickets from one house and story; more of them is faster, and more alike. */
  readonly perVariant: number;
}

const MOST_SKILLS = 6;

/**
 * Draws tickets for a rig without end: a house and a story, then faults of them. All faults of one house live the story once; those that end
 * alike share their suspects and what the reference way chooses.
 * @param name gives the id of a ticket by its number, from 1
 */
export function* drawTickets(rig: RigData, random: Random, wishes: Wishes, name: (job: number) => string): Generator<Draw> {
  let job = 0;
  for (;;) {
    const variant = drawVariant(rig, random);
    const population = populate(variant);
    for (const { group, twin } of drawFaults(population.groups, random).slice(0, wishes.perVariant)) {
      job += 1;
      yield make({ rig, variant, population, group, twin, wishes, id: name(job), job, voice: 1 + Math.floor(random() * VOICES) });
    }
  }
}

/** Every fault of every group, in an order by lot: a group of four times as many faults comes twice as often. */
function drawFaults(groups: readonly Group[], random: Random): { readonly group: Group; readonly twin: number }[] {
  const lots = groups.flatMap((group) =>
    shuffled(
      random,
      group.faults.map((_, twin) => twin),
    ).map((twin, turn) => ({ group, twin, turn: (turn + random()) / Math.sqrt(group.faults.length) })),
  );
  return lots.sort((a, b) => a.turn - b.turn);
}

interface Draft {
  readonly rig: RigData;
  readonly variant: Variant;
  readonly population: Population;
  readonly group: Group;
  readonly twin: number;
  readonly wishes: Wishes;
  readonly id: string;
  readonly job: number;
  readonly voice: number;
}

function make({ rig: plain, variant, population, group, twin, wishes, id, job, voice }: Draft): Draw {
  const { rig, house, weather, history, tools } = variant;
  const { ground, observed, works } = group;
  if (ground.field.hypotheses.length < 2) return { rejected: 'oneSuspect' };
  const draft = {
    format: 'bellwire-ticket',
    version: 1,
    id,
    rig: plain.id,
    mode: 'practice',
    order: 1000 + (job % 9000),
    faults: group.faults[twin],
    weather,
    house,
    ...(tools ? { tools } : {}),
    told: { ...group.told(twin), voice, job },
    complaint: { history, observed, works },
  };
  const ticket = checked(draft, rig);
  if (!ticket) return { rejected: 'complaint' };
  const par = parOf(ticket, rig, ground, group.choose);
  if (par.actions.length === 0) return { rejected: 'oneSuspect' };
  if (wishes.grade !== undefined && wishes.grade !== gradeOf(par)) return { rejected: 'grade' };
  const measured = measureTicket(ticket, rig, { ground, par }, population.count);
  if (measured.beside.length > 0) return { rejected: 'notSeparated' };
  if (measured.total < GOOD_TOTAL) return { rejected: 'score' };
  if (!measured.skills.includes('proveTheRepair')) return { rejected: 'notProved' };
  if (wishes.skill !== undefined && !measured.skills.includes(wishes.skill)) return { rejected: 'skill' };
  return { made: { ticket: { ...ticket, skills: measured.skills.slice(0, MOST_SKILLS) }, measured } };
}

/** The draft as a ticket; undefined when it does not stand. */
function checked(draft: object, rig: RigData): Ticket | undefined {
  try {
    const ticket = loadTicket(draft);
    checkTicket(ticket, rig);
    return ticket;
  } catch (error) {
    if (isDataError(error)) return undefined;
    throw error;
  }
}

/** Equal for tickets that play alike: all but their names. */
export function sameness({ ticket }: Made): string {
  const { rig, faults, house, weather, tools, complaint } = ticket;
  return JSON.stringify([rig, faults, house, weather, tools, complaint.history]);
}
