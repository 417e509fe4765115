import { expect, test } from 'vitest';
import { byPart, byWords, leftAfter } from '../../src/app/debrief/groups.ts';
import { debriefOf } from '../../src/score/score.ts';
import { start, take } from '../scenario/shipped.ts';
import { SOLUTIONS } from '../score/solutions.ts';

const ID = 'fanButNoCooling';

function debrief() {
  const solution = SOLUTIONS[ID];
  if (solution === undefined) throw new Error('no solution');
  const attempt = start(ID);
  take(attempt, ...solution.search, { name: 'name', ...solution.name, evidence: [] }, ...solution.after);
  return debriefOf(attempt);
}

test('what a step could not rule out is as many faults as the debrief counts, the truth always among them', () => {
  const found = debrief();
  for (const step of found.steps) {
    const left = leftAfter(found, step.number);
    expect(left.length, `step ${step.number}`).toBe(step.left);
    expect(left.some((each) => each.target === found.truth.target && each.mode === found.truth.mode)).toBe(true);
    for (const gone of step.ruledOut)
      expect(left.some((each) => each.target === gone.target && each.mode === gone.mode)).toBe(false);
  }
  expect(leftAfter(found, 0)).toHaveLength(found.suspectsAtStart);
});

test('faults are grouped by part and by what they would have shown, none lost and none twice', () => {
  const ruledOut = debrief().steps.flatMap((step) => step.ruledOut);
  const groups = byPart(ruledOut);
  expect(new Set(groups.map((group) => group.target)).size).toBe(groups.length);
  expect(groups.flatMap((group) => group.faults)).toHaveLength(ruledOut.length);
  expect(groups.length).toBeLessThan(ruledOut.length);
  const rows = byWords(ruledOut, (fault) => fault.would.kind);
  expect([...rows.values()].flat()).toHaveLength(ruledOut.length);
  for (const [kind, faults] of rows) for (const fault of faults) expect(fault.would.kind).toBe(kind);
});
