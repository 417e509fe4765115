import type { BenchView, StepView } from '../../attempt/view.ts';

/** Steps that do nothing to the circuit: a display that stays as it was is no news after them. */
const IDLE: ReadonlySet<string> = new Set(['wait', 'watch', 'look', 'tug', 'name']);

/** Steps whose reading is worth a line: all that measured something, but for idle ones after which the display was the same. */
export function readingsOf(view: BenchView): readonly StepView[] {
  const kept: StepView[] = [];
  for (const step of view.steps) {
    if (step.reading === undefined || step.reading.kind === 'blank') continue;
    if (IDLE.has(step.action.name) && sameReading(kept.at(-1), step)) continue;
    kept.push(step);
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
