/** What a class shows about a paper: which kinds of question and which skills are hard, and what wrong choices come from. */
import { mean } from 'simple-statistics';
import { DRILL_SKILLS, type DrillSkill, type Misconception } from '../drills/item.ts';
import type { PaperSetting } from './assignment.ts';
import type { Entry } from './entry.ts';
import type { AnswerResult } from './gradeAnswers.ts';
import { groupBy } from './group.ts';
import { type RestCorrelation, restCorrelation } from './restCorrelation.ts';

export interface Share {
  readonly right: number;
  readonly asked: number;
}

export interface PaperAnalysis {
  /** Place in the assignment. */
  readonly item: number;
  readonly setting: PaperSetting;
  /** Trainees whose sheet is in no doubt. */
  readonly count: number;
  /** Who reached the exam's mark; undefined for exercises. */
  readonly passedCount: number | undefined;
  /** Mean share of right answers, 0 (none) to 1; undefined without anybody. */
  readonly difficulty: number | undefined;
  /** The hardest first, each with how it goes with the rest of the paper. */
  readonly kinds: readonly (Share & RestCorrelation & { readonly kind: string })[];
  /** In the skills' own order; in the order of the rows for each trainee. */
  readonly skills: readonly (Share & { readonly skill: DrillSkill; readonly trainees: readonly Share[] })[];
  /** What wrong choices come from, the commonest first. */
  readonly misconceptions: readonly {
    readonly misconception: Misconception;
    readonly answers: number;
    readonly trainees: number;
  }[];
}

const shareOf = (answers: readonly AnswerResult[]): Share => ({
  right: answers.filter(({ right }) => right).length,
  asked: answers.length,
});

/** What counts for one trainee, by place in the assignment. */
interface Counting {
  readonly cells: readonly { readonly entry: Entry | undefined }[];
}

/** @param rows everybody's; a sheet that is in doubt says nothing about the paper */
export function paperAnalysis(item: number, setting: PaperSetting, rows: readonly Counting[]): PaperAnalysis {
  const sheets = rows.map(({ cells }) => {
    const entry = cells[item]?.entry;
    return entry && entry.doubts.length === 0 ? entry.paper : undefined;
  });
  const sound = sheets.filter((sheet) => sheet !== undefined);
  const eachOnes = sound.map((sheet) => sheet.answers);
  const answers = eachOnes.flat();
  const told = sheets.flatMap((sheet, row) =>
    (sheet?.answers ?? []).flatMap(({ misconception }) => (misconception === undefined ? [] : [{ misconception, row }])),
  );
  return {
    item,
    setting,
    count: sound.length,
    passedCount: setting.kind === 'exam' ? sound.filter(({ passed }) => passed).length : undefined,
    difficulty: sound.length === 0 ? undefined : mean(sound.map(({ right, asked }) => (asked === 0 ? 0 : right / asked))),
    kinds: [...groupBy(answers, ({ kind }) => kind)]
      .map(([kind, own]) => ({ kind, ...shareOf(own), ...restCorrelation(kind, eachOnes) }))
      .sort((a, b) => a.right / a.asked - b.right / b.asked || (a.kind < b.kind ? -1 : 1)),
    skills: DRILL_SKILLS.flatMap((skill) => {
      const own = (all: readonly AnswerResult[]) => all.filter((each) => each.skill === skill);
      if (own(answers).length === 0) return [];
      return [{ skill, ...shareOf(own(answers)), trainees: sheets.map((sheet) => shareOf(own(sheet?.answers ?? []))) }];
    }),
    misconceptions: [...groupBy(told, ({ misconception }) => misconception)]
      .map(([misconception, all]) => ({ misconception, answers: all.length, trainees: new Set(all.map(({ row }) => row)).size }))
      .sort((a, b) => b.answers - a.answers || (a.misconception < b.misconception ? -1 : 1)),
  };
}
