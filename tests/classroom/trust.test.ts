/** Whether a grade stands up: half of what is handed in is tampered with, in eleven ways. BELLWIRE_FULL=1 takes all 500. */
import { describe, expect, it } from 'vitest';
import { createGrader } from '../../src/classroom/grade.ts';
import { library } from '../scenario/shipped.ts';
import { classAssignment, codes, diceOf, honest } from './crowd.ts';
import { TAMPERINGS } from './tamper.ts';

const PAIRS = process.env.BELLWIRE_FULL === undefined ? 30 : 250;

describe('submissions, half of them tampered with in eleven ways', () => {
  it('every tampered one is named with its reason, every honest one passes with the same score to the bit', {
    timeout: 900_000,
  }, () => {
    const assignment = classAssignment();
    const trainees = codes(PAIRS);
    const grader = createGrader(assignment, library, trainees);
    const dice = diceOf(500);
    let named = 0;
    trainees.forEach((code, index) => {
      const submission = honest(assignment, code, index % assignment.items.length, dice);
      const { doubts, result } = grader.grade(JSON.parse(JSON.stringify(submission)));
      expect(doubts, code).toEqual([]);
      expect(result?.total, code).toBe(submission.shown);
      if (index < 3) expect(createGrader(assignment, library).grade(submission).result, code).toEqual(result);

      const tampering = TAMPERINGS[index % TAMPERINGS.length]!;
      const tampered = tampering.apply(submission, { assignment, classmates: trainees, dice });
      const found = grader.grade(JSON.parse(JSON.stringify(tampered))).doubts.map((each) => each.code);
      expect(
        tampering.reasons.some((reason) => found.includes(reason)),
        `${code} ${tampering.name}: ${found.join(' ')}`,
      ).toBe(true);
      named += 1;
    });
    expect(named).toBe(PAIRS);
  });
});
