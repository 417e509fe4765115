/** A class's grades, worked out from graded submissions: nothing in here is kept that is not worked out anew from them. */
import { SKILLS, type Skill } from '../scenario/skills.ts';
import { type Assignment, placesOf } from './assignment.ts';
import { type Doubt, doubt } from './doubts.ts';
import { type Entry, pointsIn } from './entry.ts';
import type { Result } from './grade.ts';
import { groupBy } from './group.ts';
import { type Analysis, analysesOf, type Taken } from './itemAnalysis.ts';
import { type Overrule, overruleFor } from './overrules.ts';
import { type PaperAnalysis, paperAnalysis } from './paperAnalysis.ts';
import { sameAnswersDoubts } from './sameAnswers.ts';
import { sameLogDoubts } from './sameLog.ts';
import { totalOf, weightsOf } from './weights.ts';

export const COUNTS = ['best', 'last'] as const;
/** Which of a trainee's attempts at an item counts: the one with most points (of those without a doubt, where there is one), or the last. */
export type Counts = (typeof COUNTS)[number];

/** One trainee's grade at one item. */
export interface Cell {
  readonly item: number;
  /** The attempt that counts; undefined where nothing was handed in. */
  readonly entry: Entry | undefined;
  readonly result: Result | undefined;
  /** Attempts handed in. */
  readonly attempts: number;
  /** Of 100: the overrule's, else what the replay came to; undefined where there is neither. */
  readonly points: number | undefined;
  readonly overrule: Overrule | undefined;
  /** About any of the attempts handed in. */
  readonly doubts: readonly { readonly doubt: Doubt; readonly entry: Entry }[];
  /** There are doubts, and nobody has settled them. */
  readonly open: boolean;
}

export interface Row {
  readonly trainee: Entry['trainee'];
  /** One for each of the assignment's items, then one for each of its papers. */
  readonly cells: readonly Cell[];
  /** Mean of the points over all of the assignment's items and papers by their weights, 0…100; an item without points counts as nothing. */
  readonly total: number;
}

/** Skill by trainee: at how many of the tickets that ask for it it was shown. */
export interface SkillRow {
  readonly skill: Skill;
  /** In the order of the rows. */
  readonly trainees: readonly { readonly shown: number; readonly asked: number }[];
  readonly shown: number;
  readonly asked: number;
}

export interface Gradebook {
  readonly assignment: Assignment;
  readonly counts: Counts;
  /** In order of the trainees' codes. */
  readonly rows: readonly Row[];
  readonly skills: readonly SkillRow[];
  readonly analyses: readonly Analysis[];
  /** One for each of the assignment's papers. */
  readonly papers: readonly PaperAnalysis[];
  /** Cells with doubts that nobody has settled. */
  readonly openDoubts: number;
}

export interface GradebookParts {
  readonly assignment: Assignment;
  readonly entries: readonly Entry[];
  readonly overrules?: readonly Overrule[];
  readonly counts?: Counts;
}

export function gradebookOf({ assignment, entries, overrules = [], counts = 'best' }: GradebookParts): Gradebook {
  const all = withDoubtsBetween(entries);
  const weights = weightsOf(assignment);
  const trainees = groupBy(all, (entry) => entry.trainee.code);
  for (const { trainee } of overrules) if (!trainees.has(trainee)) trainees.set(trainee, []);
  const rows = [...trainees]
    .sort(([a], [b]) => a.localeCompare(b, 'en', { numeric: true }))
    .map(([code, own]): Row => {
      const cells = Array.from({ length: placesOf(assignment) }, (_, item) =>
        cellOf(own, item, overruleFor(overrules, code, item), counts),
      );
      const points = cells.map((cell) => cell.points);
      const name = own.find((entry) => entry.trainee.name !== '')?.trainee.name ?? '';
      return { trainee: { code, name }, cells, total: totalOf(points, weights) };
    });
  return {
    assignment,
    counts,
    rows,
    skills: skillRows(rows),
    analyses: assignment.items.flatMap((_, item) => analysesOf(item, takenAt(rows, item, weights))),
    papers: (assignment.papers ?? []).map((setting, index) => paperAnalysis(assignment.items.length + index, setting, rows)),
    openDoubts: rows.flatMap(({ cells }) => cells).filter(({ open }) => open).length,
  };
}

/** The same file twice is one; two files that say they are the same attempt are each doubted, and so are two trainees' same logs. */
function withDoubtsBetween(entries: readonly Entry[]): Entry[] {
  const placeOf = ({ trainee, item, attempt }: Entry) => `${trainee.code} ${item} ${attempt}`;
  const once = [...new Map(entries.map((entry) => [`${placeOf(entry)} ${entry.seal} ${entry.actions.join()}`, entry])).values()];
  const places = groupBy(once, placeOf);
  const same = sameLogDoubts(once);
  const alike = sameAnswersDoubts(once);
  return once.map((entry) => {
    const others = places.get(placeOf(entry))?.filter((each) => each !== entry) ?? [];
    const twice = others.map(({ file }) => doubt('handedInTwice', undefined, { file }));
    return { ...entry, doubts: [...entry.doubts, ...twice, ...(same.get(entry) ?? []), ...(alike.get(entry) ?? [])] };
  });
}

function cellOf(own: readonly Entry[], item: number, overrule: Overrule | undefined, counts: Counts): Cell {
  const entries = own.filter((entry) => entry.item === item).sort((a, b) => a.attempt - b.attempt);
  const replayed = entries.filter((each) => pointsIn(each) !== undefined);
  const sound = replayed.filter(({ doubts }) => doubts.length === 0);
  const best = (sound.length > 0 ? sound : replayed).reduce<Entry | undefined>(
    (most, each) => ((pointsIn(each) ?? 0) > ((most && pointsIn(most)) ?? -1) ? each : most),
    undefined,
  );
  const entry = (counts === 'best' ? best : undefined) ?? entries.at(-1);
  const doubts = entries.flatMap((each) => each.doubts.map((one) => ({ doubt: one, entry: each })));
  const points = overrule?.points ?? (entry && pointsIn(entry));
  const open = doubts.length > 0 && overrule === undefined;
  return { item, entry, result: entry?.result, attempts: entries.length, points, overrule, doubts, open };
}

/** What says something about an item: what replays and is not in doubt. Points are the replay's: an overrule is about the person. */
function takenAt(rows: readonly Row[], item: number, weights: readonly number[]): Taken[] {
  return rows.flatMap(({ trainee, cells }) => {
    const cell = cells[item];
    if (!cell?.entry || !cell.result || cell.entry.doubts.length > 0) return [];
    const rest = cells.filter((each) => each.item !== item);
    const points = rest.map(({ entry }) => entry && pointsIn(entry));
    return [
      {
        trainee: trainee.code,
        ticket: cell.entry.ticket,
        result: cell.result,
        rest: rest.length === 0 ? undefined : totalOf(points, weights.toSpliced(item, 1)),
      },
    ];
  });
}

function skillRows(rows: readonly Row[]): SkillRow[] {
  return SKILLS.flatMap((skill) => {
    const trainees = rows.map(({ cells }) => {
      const asking = cells.flatMap(({ result }) => (result?.asked.includes(skill) ? [result] : []));
      return { shown: asking.filter(({ skills }) => skills.includes(skill)).length, asked: asking.length };
    });
    const sum = (which: 'shown' | 'asked') => trainees.reduce((all, each) => all + each[which], 0);
    return sum('asked') === 0 ? [] : [{ skill, trainees, shown: sum('shown'), asked: sum('asked') }];
  });
}
