/**
 * What somebody has practised, and what comes next. Every family of items (a kind on a rig) is a card of the FSRS scheduler (ts-fsrs), so that what was
 * wrong comes back soon and what is known comes back late; skill and difficulty are estimated by Elo's model from every answer.
 */
import { type CardInput, fsrs, type Grade, Rating, State } from 'ts-fsrs';
import { z } from 'zod';
import { DRILL_SKILLS, type DrillKind, type DrillSkill } from './item.ts';

/** A kind on a rig, as `kind rig`. */
export type Family = string;

export const familyOf = (kind: string, rig: string): Family => `${kind} ${rig}`;

const instant = z.number().min(0).max(8.64e15);

const cardSchema = z.strictObject({
  /** When it should be asked again, milliseconds since 1970. */
  due: instant,
  stability: z.number().min(0).max(1e6),
  difficulty: z.number().min(0).max(10),
  elapsed_days: z.number().min(0).max(1e6),
  scheduled_days: z.number().min(0).max(1e6),
  learning_steps: z.int().min(0).max(100),
  reps: z.int().min(0).max(1e6),
  lapses: z.int().min(0).max(1e6),
  state: z.int().min(0).max(3),
  last_review: instant.optional(),
});

const rating = z.number().min(-4000).max(4000);

export const practiceSchema = z.strictObject({
  /** Lot by which this person's items differ from another's. */
  lot: z.int().min(0).max(10_000),
  families: z
    .record(
      z.string().regex(/^[A-Za-z]{1,40} [A-Za-z0-9]{1,40}$/),
      z.strictObject({
        card: cardSchema,
        /** Items of it that were asked: the next one is another. */
        asked: z.int().min(0).max(1e6),
        /** How hard it is for this person, by Elo's model. */
        rating,
        /** Whether the last answer was right; left out by what was kept before this was. */
        right: z.boolean().optional(),
      }),
    )
    .default({}),
  skills: z
    .partialRecord(
      z.enum(DRILL_SKILLS),
      z.strictObject({
        asked: z.int().min(0).max(1e7),
        right: z.int().min(0).max(1e7),
        /** Right answers in a row, up to the last. */
        streak: z.int().min(0).max(1e7),
        rating,
      }),
    )
    .default({}),
});
/** Everything that is kept of somebody's practice: it starts with a lot. */
export type Practice = z.infer<typeof practiceSchema>;

const SCHEDULER = fsrs({ enable_fuzz: false });

/** Elo's scale and step, as in chess: a difference of 400 is ten to one. */
const ELO_SCALE = 400;
const ELO_STEP = 32;

/** Chance of a right answer, 0…1, by Elo's model. */
export const expectedRight = (skill: number, difficulty: number): number => 1 / (1 + 10 ** ((difficulty - skill) / ELO_SCALE));

/**
 * Practice of two places together: of each family and skill what was asked more often, so that reading the same in twice changes nothing.
 * The lot stays the first one's.
 */
export function joinPractice(here: Practice, there: Practice): Practice {
  const fuller = <T extends { readonly asked: number }>(
    a: Readonly<Record<string, T>>,
    b: Readonly<Record<string, T>>,
  ): Record<string, T> => {
    const joined: Record<string, T> = { ...a };
    for (const [key, value] of Object.entries(b)) if ((joined[key]?.asked ?? -1) < value.asked) joined[key] = value;
    return joined;
  };
  return { lot: here.lot, families: fuller(here.families, there.families), skills: fuller(here.skills, there.skills) };
}

/** An answer is quick below the first and slow above the second, seconds; common practice, no source. */
const QUICK_SECONDS = 15;
const SLOW_SECONDS = 90;

export interface Answered {
  readonly kind: DrillKind;
  readonly rig: string;
  readonly right: boolean;
  /** From the question to the answer. */
  readonly seconds: number;
  /** When, milliseconds since 1970. */
  readonly now: number;
}

/** The practice after an answer. */
export function answered(practice: Practice, { kind, rig, right, seconds, now }: Answered): Practice {
  const family = familyOf(kind.id, rig);
  const before = practice.families[family];
  const skill = practice.skills[kind.skill] ?? { asked: 0, right: 0, streak: 0, rating: 0 };
  const difficulty = before?.rating ?? 0;
  const surprise = ELO_STEP * ((right ? 1 : 0) - expectedRight(skill.rating, difficulty));
  return {
    ...practice,
    families: {
      ...practice.families,
      [family]: {
        card: nextCard(before?.card, gradeOf(right, seconds), now),
        asked: (before?.asked ?? 0) + 1,
        rating: bounded(difficulty - surprise),
        right,
      },
    },
    skills: {
      ...practice.skills,
      [kind.skill]: {
        asked: skill.asked + 1,
        right: skill.right + (right ? 1 : 0),
        streak: right ? skill.streak + 1 : 0,
        rating: bounded(skill.rating + surprise),
      },
    },
  };
}

const bounded = (value: number): number => Math.max(-4000, Math.min(4000, value));

function gradeOf(right: boolean, seconds: number): Grade {
  if (!right) return Rating.Again;
  if (seconds > SLOW_SECONDS) return Rating.Hard;
  return seconds < QUICK_SECONDS ? Rating.Easy : Rating.Good;
}

type Card = z.infer<typeof cardSchema>;

function nextCard(card: Card | undefined, grade: Grade, now: number): Card {
  const { due, last_review, ...rest } = SCHEDULER.next(card ? inputOf(card) : { ...NEW, due: now }, now, grade).card;
  return { ...rest, due: due.getTime(), ...(last_review ? { last_review: last_review.getTime() } : {}) };
}

/** The scheduler takes instants as numbers, too. */
const inputOf = ({ last_review, ...card }: Card): CardInput => ({ ...card, last_review: last_review ?? null });

const NEW = {
  stability: 0,
  difficulty: 0,
  elapsed_days: 0,
  scheduled_days: 0,
  learning_steps: 0,
  reps: 0,
  lapses: 0,
  state: 0,
  last_review: null,
};

/** What can be asked: every kind on every rig. */
export interface Shelf {
  readonly kinds: readonly DrillKind[];
  /** Rigs by id. */
  readonly rigs: readonly string[];
}

export interface Asked {
  readonly kind: DrillKind;
  readonly rig: string;
}

/**
 * So many families to ask next: first what is due, longest overdue first; then new ones of the weakest skill, and from then on of whichever is the
 * weakest if those are answered as its rating says. A rig that is not known yet comes last within a skill.
 */
export function setFor(practice: Practice, { kinds, rigs }: Shelf, now: number, count: number): Asked[] {
  const all = kinds.flatMap((kind) => rigs.map((rig): Asked => ({ kind, rig })));
  const family = ({ kind, rig }: Asked) => practice.families[familyOf(kind.id, rig)];
  const due = all
    .filter((each) => (family(each)?.card.due ?? Number.POSITIVE_INFINITY) <= now)
    .sort((a, b) => (family(a)?.card.due ?? 0) - (family(b)?.card.due ?? 0));
  const fresh = all.filter((each) => family(each) === undefined);
  const chosen = due.slice(0, count);
  const given = new Map<DrillSkill, number>();
  while (chosen.length < count && fresh.length > 0) {
    const weakest = Math.min(...fresh.map(({ kind }) => weight(practice, kind.skill, given)));
    const at = fresh.findIndex(({ kind }) => weight(practice, kind.skill, given) === weakest);
    const [next] = fresh.splice(mostApart(fresh, at, chosen), 1);
    if (!next) break;
    chosen.push(next);
    given.set(next.kind.skill, (given.get(next.kind.skill) ?? 0) + 1);
  }
  // What there is left: whatever is due soonest.
  const later = all
    .filter((each) => !chosen.includes(each) && family(each) !== undefined)
    .sort((a, b) => (family(a)?.card.due ?? 0) - (family(b)?.card.due ?? 0));
  return [...chosen, ...later].slice(0, count);
}

/** How weak a skill is beside others: its rating, and so much more for each of it that is in the set already. */
function weight(practice: Practice, skill: DrillSkill, given: ReadonlyMap<DrillSkill, number>): number {
  return (practice.skills[skill]?.rating ?? 0) + ELO_STEP * (given.get(skill) ?? 0);
}

/** Of the families of one skill, the first of a kind and a rig that the set has least of. */
function mostApart(fresh: readonly Asked[], at: number, chosen: readonly Asked[]): number {
  const skill = fresh[at]?.kind.skill;
  const times = ({ kind, rig }: Asked) =>
    4 * chosen.filter((each) => each.kind === kind).length + chosen.filter((each) => each.rig === rig).length;
  let best = at;
  fresh.forEach((each, index) => {
    const found = fresh[best];
    if (each.kind.skill === skill && found && times(each) < times(found)) best = index;
  });
  return best;
}

/** Chance that a family is still known, 0…1; 0 before it was ever asked, and after an answer that was not right. */
export function known(practice: Practice, { kind, rig }: Asked, now: number): number {
  const found = practice.families[familyOf(kind.id, rig)];
  if (!found || found.card.last_review === undefined || !lastRight(found)) return 0;
  return SCHEDULER.get_retrievability(inputOf(found.card), now, false);
}

/** Where it was not kept, the card tells: a wrong answer leaves it at the first step of learning. */
const lastRight = ({ right, card }: Practice['families'][Family]): boolean =>
  right ?? (card.state === State.Review || card.learning_steps > 0);

/** Share of a skill's families that are known, each by its chance, 0…1. */
export function mastery(practice: Practice, { kinds, rigs }: Shelf, skill: DrillSkill, now: number): number {
  const own = kinds
    .filter((kind) => kind.skill === skill)
    .flatMap((kind) => rigs.map((rig) => known(practice, { kind, rig }, now)));
  return own.length === 0 ? 0 : own.reduce((sum, each) => sum + each, 0) / own.length;
}

/** How hard a skill's families are for this person by Elo's model: the mean of those that were asked, on the scale of the skill's rating. */
export function difficulty(practice: Practice, { kinds, rigs }: Shelf, skill: DrillSkill): number | undefined {
  const own = kinds
    .filter((kind) => kind.skill === skill)
    .flatMap((kind) => rigs.flatMap((rig) => practice.families[familyOf(kind.id, rig)]?.rating ?? []));
  return own.length === 0 ? undefined : own.reduce((sum, each) => sum + each, 0) / own.length;
}

/** Numbers that share a house: see draw.ts. */
const ITEMS_PER_HOUSE = 6;

/** The number of the next item of a family for this person, and the step to the next one should that have none. */
export function numberFor(practice: Practice, { kind, rig }: Asked, rigs: readonly string[], perHouse: number): number {
  const asked = practice.families[familyOf(kind.id, rig)]?.asked ?? 0;
  const house = rigs.indexOf(rig) + rigs.length * (practice.lot + Math.floor(asked / ITEMS_PER_HOUSE));
  return house * perHouse + (asked % ITEMS_PER_HOUSE) * Math.floor(perHouse / ITEMS_PER_HOUSE);
}
