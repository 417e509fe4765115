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

/** Acts that show something even where nothing new is noticed: a wire that holds, a conductor on its own letter. */
const SHOWS: ReadonlySet<string> = new Set(['walk', 'cover', 'pull', 'turn', 'mat', 'look', 'tug', 'wait', 'watch']);

/** Steps that may prove something: those that read, and those that looked, listened or pulled at something. */
export function findingsOf(told: readonly StepTold[]): readonly StepTold[] {
  const readings = new Set(readingsOf(told));
  return told.filter((each) => readings.has(each) || each.noticed.length > 0 || SHOWS.has(each.step.action.name));
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
