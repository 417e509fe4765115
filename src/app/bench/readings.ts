import type { StepView } from '../../attempt/view.ts';
import type { StepTold } from '../step-words.ts';

/** Steps that do nothing to the circuit: a display that stays as it was is no news after them. */
const IDLE: ReadonlySet<string> = new Set(['wait', 'watch', 'look', 'tug', 'name', 'hint']);

/** Steps whose reading is worth a line: all that measured something, but for idle ones after which the display was the same. */
export function readingsOf(told: readonly StepTold[]): readonly StepTold[] {
  const kept: StepTold[] = [];
  for (const each of told) {
    if (each.measured === '') continue;
    if (IDLE.has(each.step.action.name) && sameReading(kept.at(-1)?.step, each.step)) continue;
    kept.push(each);
  }
  return kept;
}

function sameReading(last: StepView | undefined, step: StepView): boolean {
  const [a, b] = [last?.reading, step.reading];
  if (a === undefined || b === undefined) return false;
  return (
    last?.red === step.red &&
    last?.black === step.black &&
    a.fn === b.fn &&
    a.kind === b.kind &&
    a.text === b.text &&
    a.prefix === b.prefix
  );
}
