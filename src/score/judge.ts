import type { Attempt, Step } from '../attempt/attempt.ts';
import { differenceOf } from '../suspects/apart.ts';
import { survivors } from '../suspects/field.ts';
import { type Following, leftNow, searchSteps } from '../suspects/follow.ts';
import { neededLater } from '../suspects/setup.ts';
import type { JudgedStep, RuledOut, StepKind } from './debrief.ts';
import { isRequired } from './required.ts';

/** What each step of the search was. */
export function judgeSearch(attempt: Attempt, following: Following): StepKind[] {
  const search = searchSteps(attempt.steps);
  const required = search.map((_, index) => isRequired(attempt.assembly, search, index));
  return search.map((step, index): StepKind => {
    if (step.action.name === 'hint') return 'required';
    if ((following.columns[index]?.gainBits ?? 0) > 0) return 'informative';
    if (required[index] === true) return 'required';
    return neededLater(following, search, index, required) ? 'setUp' : 'wasted';
  });
}

/** Says of each step what it was, what it ruled out, and why it was wasted; the steps after the naming are `after`. */
export function judge(attempt: Attempt, following: Following): JudgedStep[] {
  const kinds = judgeSearch(attempt, following);
  return attempt.steps.map((step, index): JudgedStep => {
    const kind = kinds[index] ?? 'after';
    return {
      number: index + 1,
      kind,
      seconds: step.view.seconds - (attempt.steps[index - 1]?.view.seconds ?? 0),
      gainBits: following.columns[index]?.gainBits ?? 0,
      left: survivors(following.field, following.leftBefore[index + 1] ?? leftNow(following)).size,
      ruledOut: ruledOutBy(following, step, index),
      because: kind === 'wasted' ? deciders(following, index) : [],
      unsafe: step.unsafe,
    };
  });
}

/** The suspects that a step ruled out, each with what would have been seen if it were guilty. */
function ruledOutBy(following: Following, step: Step, index: number): RuledOut[] {
  const { field } = following;
  const before = following.leftBefore[index] ?? [];
  return (following.ruledOut[index] ?? []).flatMap((hypothesis) => {
    const naming = field.hypotheses[hypothesis];
    const twin = field.twins.findIndex((each, at) => each.hypothesis === hypothesis && before[at] === true);
    const predicted = following.columns[index]?.predicted[twin];
    return naming && predicted ? [{ ...naming, would: differenceOf(predicted, step.observation) }] : [];
  });
}

/**
 * The fewest earlier steps found that made an outcome certain: with what they showed, nobody is left who predicted otherwise. Read off the
 * match matrix: each of those others must have been ruled out by one of the steps, and at each turn the step that rules out most is taken.
 */
export function deciders(following: Following, index: number): number[] {
  const { field, arrival } = following;
  let others = field.twins.flatMap((_, twin) =>
    arrival.matched[twin] === true && following.columns[index]?.matched[twin] === false ? [twin] : [],
  );
  const numbers: number[] = [];
  while (others.length > 0) {
    let best = -1;
    let most = 0;
    for (let earlier = 0; earlier < index; earlier++) {
      const column = following.columns[earlier];
      const count = others.filter((twin) => column?.matched[twin] === false).length;
      if (count > most) {
        most = count;
        best = earlier;
      }
    }
    if (best < 0) break;
    const column = following.columns[best];
    others = others.filter((twin) => column?.matched[twin] !== false);
    numbers.push(best + 1);
  }
  return numbers.sort((a, b) => a - b);
}
