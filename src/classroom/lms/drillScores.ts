/** What a learning system is told of a paper besides its score: right of asked by skill. */
import { DRILL_SKILLS, type DrillSkill } from '../../drills/item.ts';
import type { AnswerResult } from '../gradeAnswers.ts';

export interface DrillScore {
  readonly skill: DrillSkill;
  readonly right: number;
  /** At least one. */
  readonly asked: number;
}

/** Answers by the skill that they ask for, in the skills' own order; a skill that was not asked for is left out. */
export function drillScores(answers: readonly Pick<AnswerResult, 'skill' | 'right'>[]): DrillScore[] {
  return DRILL_SKILLS.flatMap((skill) => {
    const own = answers.filter((each) => each.skill === skill);
    return own.length === 0 ? [] : [{ skill, right: own.filter(({ right }) => right).length, asked: own.length }];
  });
}

/** The name by which a learning system keeps a drill's skill: what tickets show has names of its own. */
export const drillName = (skill: DrillSkill): string => `drill-${skill}`;

/** A share of right answers, 0…1, to so many places as learning systems keep (SCORM 2004: real(10,7)). */
export const scaledOf = ({ right, asked }: DrillScore): number => Number((right / asked).toFixed(7));
