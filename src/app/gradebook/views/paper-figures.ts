/** The figures of exercises and exams as the views show them. Pure, so that tests can hold them to the gradebook. */

import type { AnswerResult } from '../../../classroom/gradeAnswers.ts';
import type { PaperAnalysis } from '../../../classroom/paperAnalysis.ts';
import { DRILL_SKILLS, type DrillSkill } from '../../../drills/item.ts';

/** How often something was right or shown, of how often it was asked for. */
export interface Shown {
  readonly shown: number;
  readonly asked: number;
}

/** A skill in the whole class, and by trainee in the order of the rows. */
export interface SkillColumn extends Shown {
  readonly skill: string;
  readonly trainees: readonly Shown[];
}

const sum = (all: readonly Shown[]): Shown => ({
  shown: all.reduce((most, { shown }) => most + shown, 0),
  asked: all.reduce((most, { asked }) => most + asked, 0),
});

/** One trainee's answers by what they ask for; a skill that none asks for is left out. */
export function answersBySkill(
  answers: readonly Pick<AnswerResult, 'skill' | 'right'>[],
): (Shown & { readonly skill: DrillSkill })[] {
  return DRILL_SKILLS.flatMap((skill) => {
    const own = answers.filter((each) => each.skill === skill);
    return own.length === 0 ? [] : [{ skill, shown: own.filter(({ right }) => right).length, asked: own.length }];
  });
}

/** The class's answers at all papers together, by skill. @param trainees how many rows there are */
export function questionSkills(papers: readonly PaperAnalysis[], trainees: number): SkillColumn[] {
  return DRILL_SKILLS.flatMap((skill) => {
    const own = papers.flatMap(({ skills }) => skills.filter((each) => each.skill === skill));
    if (own.length === 0) return [];
    const each = Array.from({ length: trainees }, (_, row) =>
      sum(own.map((paper) => ({ shown: paper.trainees[row]?.right ?? 0, asked: paper.trainees[row]?.asked ?? 0 }))),
    );
    return [{ skill, ...sum(each), trainees: each }];
  });
}
