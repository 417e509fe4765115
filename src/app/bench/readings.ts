import type { BenchView, StepView } from '../../attempt/view.ts';

/**
 * Steps whose reading is worth a line: those that measured something, and of a run of steps in which neither the leads nor
 * the display moved, only the first.
 */
export function readingsOf(view: BenchView): readonly StepView[] {
  const kept: StepView[] = [];
  for (const step of view.steps) {
    if (step.reading === undefined || step.reading.kind === 'blank') continue;
    const last = kept.at(-1);
    const same =
      last?.reading !== undefined &&
      last.red === step.red &&
      last.black === step.black &&
      last.reading.fn === step.reading.fn &&
      last.reading.kind === step.reading.kind &&
      last.reading.text === step.reading.text &&
      last.reading.prefix === step.reading.prefix;
    if (!same) kept.push(step);
  }
  return kept;
}
