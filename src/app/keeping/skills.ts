/** From results to skills, and from skills to what to practise next. All of it can be followed with a pencil. */
import type { Ticket } from '../../scenario/ticket.ts';
import type { ScoreItem } from '../../score/debrief.ts';
import type { Finished, Result } from './records.ts';

/** Attempts that say how a skill stands: the latest so many at tickets that ask for it. */
export const LATEST = 3;
/** From here up a skill is sound, as a share of its points. Our choice, no source. */
export const SOUND = 0.8;

/** Lines of the score that tell of a skill; the others are about finding the fault without detours. */
const TOLD_BY: Readonly<Record<string, readonly ScoreItem[]>> = { safeIsolation: ['safety'], proveTheRepair: ['proof'] };
const FINDING: readonly ScoreItem[] = ['isolation', 'economy'];

type Asking = Pick<Ticket, 'id' | 'skills'>;
type Scored = Finished & { readonly result: Result };

export interface Skill {
  readonly id: string;
  /** Share of the points got, 0 to 1; undefined before the first attempt. */
  readonly level: number | undefined;
  /** Attempts it is worked out from, at most LATEST. */
  readonly attempts: number;
  readonly points: number;
  readonly of: number;
  readonly tickets: readonly string[];
}

export const scored = (finished: readonly Finished[]): readonly Scored[] =>
  finished.filter((each): each is Scored => each.result !== undefined);

/** Every skill that a ticket asks for, in the order of the tickets. `finished` is in the order in which they were finished. */
export function skillsOf(tickets: readonly Asking[], finished: readonly Finished[]): readonly Skill[] {
  const ids = [...new Set(tickets.flatMap((ticket) => ticket.skills ?? []))];
  return ids.map((id) => {
    const asking = tickets.filter((ticket) => ticket.skills?.includes(id)).map((ticket) => ticket.id);
    const latest = scored(finished)
      .filter((each) => asking.includes(each.ticket))
      .slice(-LATEST);
    const lines = latest.flatMap(({ result }) => (TOLD_BY[id] ?? FINDING).map((item) => result.items[item]));
    const points = lines.reduce((sum, line) => sum + line.points, 0);
    const of = lines.reduce((sum, line) => sum + line.of, 0);
    return { id, level: of === 0 ? undefined : points / of, attempts: latest.length, points, of, tickets: asking };
  });
}

export interface Next {
  readonly ticket: string;
  /** Why: a plain ticket to begin with, the weakest skill, one never tried, or nothing weak and the ticket longest ago. */
  readonly why: 'first' | 'weakest' | 'untried' | 'longest';
  readonly skill: Skill | undefined;
  /** The ticket's latest result; undefined when it was never finished. */
  readonly latest: Result | undefined;
}

/**
 * What to practise next. The weakest skill comes first while it is not sound, at a ticket for it that was never finished, else at
 * the one that went worst the last time; then skills never tried; then whatever was tried longest ago.
 * @param tickets from the plainest to the hardest: of those that stand alike, the plainest is taken
 * @param barred tickets that are not suggested, whatever they tell of a skill
 */
export function nextOf(
  tickets: readonly Asking[],
  finished: readonly Finished[],
  barred: ReadonlySet<string> = new Set(),
): Next | undefined {
  const results = scored(finished);
  const lastAt = (ticket: string) => results.findLastIndex((each) => each.ticket === ticket);
  const latestOf = (ticket: string) => results[lastAt(ticket)]?.result;
  const least = (among: readonly string[], measure: (ticket: string) => number) =>
    among.reduce((best, each) => (measure(each) < measure(best) ? each : best), among[0] ?? '');
  const give = (ticket: string, why: Next['why'], skill?: Skill): Next => ({ ticket, why, skill, latest: latestOf(ticket) });
  const open = tickets.filter(({ id }) => !barred.has(id));
  const first = open[0];
  if (first === undefined) return undefined;
  if (results.length === 0) return give(first.id, 'first');
  const skills = skillsOf(tickets, finished).flatMap((skill) => {
    const left = skill.tickets.filter((ticket) => !barred.has(ticket));
    return left.length === 0 ? [] : [{ ...skill, tickets: left }];
  });
  const tried = skills.filter((skill) => skill.level !== undefined);
  const weakest = tried.reduce<Skill | undefined>(
    (low, each) => (low === undefined || (each.level ?? 1) < (low.level ?? 1) ? each : low),
    undefined,
  );
  if (weakest !== undefined && (weakest.level ?? 1) < SOUND)
    return give(
      least(weakest.tickets, (ticket) => latestOf(ticket)?.total ?? -1),
      'weakest',
      weakest,
    );
  const untried = skills.find((skill) => skill.level === undefined);
  if (untried !== undefined) return give(least(untried.tickets, lastAt), 'untried', untried);
  return give(
    least(
      open.map((each) => each.id),
      lastAt,
    ),
    'longest',
  );
}
