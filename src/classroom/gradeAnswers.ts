/** Grading a paper is drawing it anew: which choice is right comes from the models, not from the file. */
import { createBank } from '../drills/draw.ts';
import type { DrillSkill, Item, Misconception } from '../drills/item.ts';
import { itemOf, itemsOf } from '../drills/paper.ts';
import type { Library } from '../scenario/library.ts';
import { type Answers, sealAnswers } from './answers.ts';
import type { Assignment } from './assignment.ts';
import { digestOf } from './digest.ts';
import { type Doubt, doubt, timeDoubts } from './doubts.ts';
import { FORMS, type Paper, papersOf, rigsOf } from './papers.ts';
import { RULES } from './seal.ts';

export interface AnswerResult {
  readonly kind: string;
  readonly skill: DrillSkill;
  readonly right: boolean;
  /** Null where nothing was chosen. */
  readonly choice: number | null;
  /** What the wrong choice comes from. */
  readonly misconception: Misconception | undefined;
}

/** What the answers to a paper were worth. */
export interface PaperResult {
  /** Of 100, to the tenth. */
  readonly total: number;
  readonly right: number;
  readonly asked: number;
  /** By the exam's mark; undefined for exercises. */
  readonly passed: boolean | undefined;
  /** In the paper's order; a question that its system has nothing to ask for is left out. */
  readonly answers: readonly AnswerResult[];
}

export interface GradedAnswers {
  readonly submission: Answers;
  readonly doubts: readonly Doubt[];
  readonly result: undefined;
  /** Undefined where it is not this trainee's paper. */
  readonly paper: PaperResult | undefined;
}

/** What choices at these items come to. */
export function paperResult(
  setting: Paper['setting'],
  items: readonly (Item | null | undefined)[],
  choices: readonly (number | null)[],
): PaperResult {
  const answers = items.flatMap((item, place): AnswerResult[] => {
    if (!item) return [];
    const choice = choices[place] ?? null;
    const right = choice === item.right;
    const misconception = choice === null || right ? undefined : item.choices[choice]?.misconception;
    return [{ kind: item.kind, skill: item.skill, right, choice, misconception }];
  });
  const right = answers.filter((each) => each.right).length;
  const asked = answers.length;
  const share = asked === 0 ? 0 : right / asked;
  const passed = setting.kind === 'exam' ? share >= setting.exam.pass : undefined;
  return { total: Math.round(share * 1000) / 10, right, asked, passed, answers };
}

/** Draws papers here, each form once. */
function drawingOver(library: Library): (paper: Paper) => readonly (Item | undefined)[] {
  const bank = createBank(rigsOf(library).flatMap((id) => library.rigs.get(id) ?? []));
  const drawn = new Map<string, readonly (Item | undefined)[]>();
  return ({ digest, questions }) => {
    const found = drawn.get(digest) ?? itemsOf(questions, (question) => itemOf(bank, question));
    drawn.delete(digest);
    drawn.set(digest, found);
    const [oldest] = drawn.keys();
    if (drawn.size > FORMS && oldest !== undefined) drawn.delete(oldest);
    return found;
  };
}

/**
 * Grades one answer sheet after another of one assignment; of each form its items are drawn once.
 * @param itemsIn a paper's items by question, where somebody has drawn them already
 */
export function createPaperGrader(
  assignment: Assignment,
  library: Library,
  trainees: readonly string[],
  itemsIn: (paper: Paper) => readonly (Item | undefined)[] = drawingOver(library),
): (submission: Answers) => GradedAnswers {
  const assignmentDigest = digestOf(assignment);
  const papers = new Map<string, readonly Paper[]>();

  function paperFor(trainee: string, item: number): Paper | undefined {
    const own = papers.get(trainee) ?? papersOf(assignment, trainee, library);
    papers.set(trainee, own);
    return own.find((each) => each.item === item);
  }

  /** Another trainee for whom the sheet was sealed. */
  const ownerOf = (submission: Answers): string | undefined =>
    trainees.find((code) => code !== submission.trainee.code && sealAnswers(submission, code) === submission.seal);

  return (submission) => {
    const { trainee, item, choices, stamps } = submission;
    const doubts: Doubt[] = [];
    if (submission.rules !== RULES) doubts.push(doubt('otherRules', undefined, { rules: submission.rules, here: RULES }));
    if (submission.assignment.id !== assignment.id || submission.assignment.digest !== assignmentDigest)
      doubts.push(doubt('otherAssignment', undefined, { assignment: submission.assignment.id }));
    const paper = paperFor(trainee.code, item);
    const told = (more: Doubt): GradedAnswers => ({ submission, doubts: [...doubts, more], result: undefined, paper: undefined });
    if (!paper) return told(doubt('noItem', undefined, { item: item + 1 }));
    const sealed = sealAnswers(submission) === submission.seal;
    const owner = sealed ? undefined : ownerOf(submission);
    if (owner !== undefined) doubts.push(doubt('othersLog', undefined, { trainee: owner }));
    if (submission.paper !== paper.digest) return told(doubt('otherPaper'));
    const shape = choices.length === paper.questions.length && stamps.length === choices.length;
    if (!shape || choices.some((choice, place) => (choice === null) !== (stamps[place] === null)))
      return told(doubt('brokenAnswers'));

    const times = stamps.filter((stamp) => stamp !== null).sort((a, b) => a - b);
    const limits = { ...assignment, minutes: paper.minutes };
    doubts.push(...timeDoubts({ ...submission, stamps: times }, limits, times.length));
    const result = paperResult(paper.setting, itemsIn(paper), choices);
    if (submission.shown !== undefined && submission.shown !== result.total)
      doubts.push(doubt('scoreEdited', undefined, { shown: submission.shown, total: result.total }));
    if (doubts.length === 0 && !sealed) doubts.push(doubt('edited'));
    return { submission, doubts, result: undefined, paper: result };
  };
}
