/** An assignment's exercises and exams as one trainee gets them. */
import { paperOf } from '../drills/exam.ts';
import { DRILL_KINDS } from '../drills/kinds.ts';
import { type Question, questionsOf } from '../drills/paper.ts';
import { dataError } from '../rig/errors.ts';
import type { Library } from '../scenario/library.ts';
import type { Assignment, PaperSetting } from './assignment.ts';
import { digestOf, hashOf } from './digest.ts';
import { lotOf } from './draw.ts';

/** Parallel forms of a paper: neighbours rarely have the same one, and a class is still graded without drawing a paper for everybody. */
export const FORMS = 8;

/** One paper of an assignment as one trainee gets it. */
export interface Paper {
  /** Place after the assignment's items: the first paper comes after the last of them. */
  readonly item: number;
  readonly setting: PaperSetting;
  readonly questions: readonly Question[];
  /** Minutes by the clock for one attempt; undefined where nothing limits it. */
  readonly minutes: number | undefined;
  /** Equal for the same questions. */
  readonly digest: string;
}

/** Minutes by the clock for a paper: the exam's own or the assignment's, whichever are over first. */
export function minutesFor({ minutes }: Pick<Assignment, 'minutes'>, setting: PaperSetting): number | undefined {
  const own = setting.kind === 'exam' ? setting.exam.minutes : undefined;
  return own === undefined || minutes === undefined ? (own ?? minutes) : Math.min(own, minutes);
}

/** Ids of the rigs that papers are drawn over, in the order in which everybody draws them. */
export const rigsOf = (library: Library): string[] => [...library.rigs.keys()].sort();

/**
 * The papers that a trainee is given: the same whenever, and wherever, it is asked for.
 * @throws DataError where a kind of exercise is not there
 */
export function papersOf(assignment: Assignment, trainee: string, library: Library): Paper[] {
  const rigs = rigsOf(library);
  return (assignment.papers ?? []).map((setting, index) => {
    const item = assignment.items.length + index;
    const first =
      Number.parseInt(hashOf(`${assignment.id} ${assignment.seed} paper ${item}`).slice(0, 8), 16) % (1_000_000 - FORMS);
    const lot = first + Math.floor(lotOf(assignment, trainee, item) * FORMS);
    const questions = questionsFor(setting, rigs, lot, `papers[${index}]`);
    const digest = digestOf(questions.map(({ kind, draws }) => [kind.id, draws]));
    return { item, setting, questions, minutes: minutesFor(assignment, setting), digest };
  });
}

function questionsFor(setting: PaperSetting, rigs: readonly string[], lot: number, path: string): Question[] {
  if (setting.kind === 'exam')
    return paperOf({ ...setting.exam, format: 'bellwire-exam', version: 1 }, { kinds: DRILL_KINDS, rigs }, lot);
  const kinds = [...new Set(setting.drills)].map((id, place) => {
    const found = DRILL_KINDS.find((kind) => kind.id === id);
    if (!found) throw dataError('classroom.noKind', `${path}.drills[${place}]`, { kind: id });
    return found;
  });
  return questionsOf([{ kinds, count: setting.count }], rigs, lot);
}
