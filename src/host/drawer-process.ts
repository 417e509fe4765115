/** The process that draws exercises, and grades answers to them with what it has drawn. The room never waits for it. */
import type { Answers } from '../classroom/answers.ts';
import type { Assignment } from '../classroom/assignment.ts';
import { digestOf } from '../classroom/digest.ts';
import { createPaperGrader, type GradedAnswers } from '../classroom/gradeAnswers.ts';
import type { QuestionFace } from '../classroom/paperProtocol.ts';
import { type Paper, rigsOf } from '../classroom/papers.ts';
import { type Bank, createBank } from '../drills/draw.ts';
import type { Item } from '../drills/item.ts';
import { DRILL_KINDS } from '../drills/kinds.ts';
import { type Draw, itemOf, itemsOf } from '../drills/paper.ts';
import type { Library } from '../scenario/library.ts';
import { answerHost } from './answering.ts';
import { questionFaceOf } from './paper-face.ts';

export type DrawerQuestion =
  | {
      readonly kind: 'draw';
      /** The paper's. */
      readonly digest: string;
      readonly place: number;
      /** The drill kind's id. */
      readonly drill: string;
      readonly draws: readonly [Draw, ...Draw[]];
    }
  | {
      readonly kind: 'grade';
      readonly assignment: Assignment;
      readonly trainees: readonly string[];
      readonly submission: Answers;
    };

export type DrawerAnswer =
  /** Null: the question's systems have nothing to ask. */
  { readonly face: QuestionFace | null } | { readonly graded: GradedAnswers } | { readonly failed: true };

/** Forms whose items are kept: some assignments of eight. */
const MOST_FORMS = 48;

const forms = new Map<string, Map<number, Item | null>>();
let bank: Bank | undefined;
let grader: { readonly key: string; readonly grade: (submission: Answers) => GradedAnswers } | undefined;

function itemAt(library: Library, digest: string, place: number, drill: string, draws: readonly [Draw, ...Draw[]]): Item | null {
  const form = forms.get(digest) ?? new Map<number, Item | null>();
  forms.delete(digest);
  forms.set(digest, form);
  const [oldest] = forms.keys();
  if (forms.size > MOST_FORMS && oldest !== undefined) forms.delete(oldest);
  const known = form.get(place);
  if (known !== undefined) return known;
  bank ??= createBank(rigsOf(library).flatMap((id) => library.rigs.get(id) ?? []));
  const kind = DRILL_KINDS.find(({ id }) => id === drill);
  if (!kind) throw new Error(`no kind ${drill}`);
  const item = itemOf(bank, { kind, draws }) ?? null;
  form.set(place, item);
  return item;
}

function graderOf(library: Library, assignment: Assignment, trainees: readonly string[]): (submission: Answers) => GradedAnswers {
  const key = digestOf({ assignment, trainees });
  const drawn = ({ digest, questions }: Paper) =>
    itemsOf(questions, ({ kind, draws }, place) => itemAt(library, digest, place, kind.id, draws) ?? undefined);
  if (grader?.key !== key) grader = { key, grade: createPaperGrader(assignment, library, trainees, drawn) };
  return grader.grade;
}

answerHost<DrawerQuestion, DrawerAnswer>(
  (question, library) => {
    if (question.kind === 'grade')
      return { graded: graderOf(library, question.assignment, question.trainees)(question.submission) };
    const item = itemAt(library, question.digest, question.place, question.drill, question.draws);
    return { face: item && questionFaceOf(item) };
  },
  () => {
    // A house that broke off half way is of no use to the next.
    bank = undefined;
    return { failed: true };
  },
);
