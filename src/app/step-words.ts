import type { BenchView, Notice, StepView } from '../attempt/view.ts';
import type { Point } from '../rig/points.ts';
import { doneText } from './action-words.ts';
import { pairName, pointName, readingSpoken, readingText, signText, t, thingName } from './words.ts';

/** What a step measured, for the notebook: the pair of points or the wire in the clamp. */
function measuredName(view: BenchView, step: StepView): string {
  if (step.fn === 'ampsAc') {
    const around = clampAt(view, step.number);
    return around === undefined ? t('meter:fn.ampsAc') : t('app:point.clamped', { wire: thingName(around) });
  }
  if (step.red === undefined || step.black === undefined) return t('app:point.leadsFree');
  return pairName(view, step.red, step.black);
}

/** Steps that do nothing to what is measured: a display that stays as it was is no news after them. */
const IDLE: ReadonlySet<string> = new Set(['walk', 'cover', 'look', 'tug', 'wait', 'watch', 'name', 'close', 'hint']);

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

/** Whether a step measured: it read something, and was more than a look at a display that stood there before. */
function measures(view: BenchView, step: StepView): boolean {
  if (step.reading === undefined || step.reading.kind === 'blank') return false;
  return !(IDLE.has(step.action.name) && sameReading(view.steps[step.number - 2], step));
}

/** Whether a step's reading speaks for itself: the meter was moved, and nothing else. */
function isMeterMove(step: StepView): boolean {
  return step.action.name === 'probe' || step.action.name === 'meter' || step.action.name === 'clamp';
}

/**
 * A step in words as they stood when it was taken. Pins that are turned over change sides, and a part that is replaced takes
 * what was printed on it along: what was jotted down before stays as it was.
 */
export interface StepTold {
  readonly step: StepView;
  /** What was done. */
  readonly done: string;
  /** What was measured; empty when nothing was, or when the display only stood as before. */
  readonly measured: string;
  /** What was noticed, each thing once. */
  readonly noticed: readonly string[];
}

/** @param view as it is right after the step */
export function tellStep(view: BenchView, step: StepView): StepTold {
  return {
    step,
    done: doneText(view, step.action),
    measured: measures(view, step) ? measuredName(view, step) : '',
    noticed: noticedTexts(view, step),
  };
}

/** What a reading is of: what was measured, and what had been done to the circuit in that step. */
export function readingWords({ step, done, measured }: StepTold): string {
  return isMeterMove(step) ? measured : t('app:point.after', { measured, done });
}

/** A step in few words: what was measured and read when the meter was moved, else what was done. */
export function stepWords({ step, done, measured }: StepTold): string {
  return measured !== '' && isMeterMove(step) && step.reading !== undefined ? `${measured}: ${readingText(step.reading)}` : done;
}

/** So many noticed things stand beside a step; walking into a place shows a dozen. */
const MOST_NOTICED = 2;

/** What was noticed, the first things of it; empty when nothing was. */
export function noticedShort({ noticed }: StepTold, most = MOST_NOTICED): string {
  const rest = noticed.length - most;
  const more = rest > 0 ? [t('app:debrief.moreNoticed', { count: rest })] : [];
  return [...noticed.slice(0, most), ...more].join('; ');
}

/** What a step showed: its reading and the first things that were noticed, or that there was nothing new. */
export function findingText(told: StepTold): string {
  const { step, measured } = told;
  const reading = measured !== '' && step.reading !== undefined ? readingText(step.reading) : '';
  const found = [reading, noticedShort(told)].filter((words) => words !== '').join('; ');
  return found === '' ? t('app:naming.nothingNew') : found;
}

function clampAt(view: BenchView, number: number): string | undefined {
  for (let index = number - 1; index >= 0; index -= 1) {
    const action = view.steps[index]?.action;
    if (action?.name === 'clamp') return action.around ?? undefined;
  }
  return undefined;
}

/** A change that was seen or heard, in words; empty when it has none. */
export function noticeText(view: BenchView, notice: Notice): string {
  const landed = notice.key.startsWith('landed.') && typeof notice.value === 'string';
  const words = landed ? landedText(view, String(notice.value)) : signText(notice.key, notice.value);
  return words === '' ? '' : t('app:notice', { part: thingName(notice.part), words });
}

function landedText(view: BenchView, at: Point): string {
  return at.includes('@') ? t('app:landedHome') : t('app:landedOn', { point: pointName(view, at) });
}

/** What was noticed in a step, in words, each thing once and as it stood in the end. */
export function noticedTexts(view: BenchView, step: StepView): readonly string[] {
  const last = new Map(step.noticed.map((each) => [`${each.part}.${each.key}`, each]));
  return [...last.values()].map((each) => noticeText(view, each)).filter((words) => words !== '');
}

/** What a step brought, as it is announced: what was done, what was noticed, what the meter says. */
export function stepSpoken(view: BenchView, step: StepView): string {
  const noticed = noticedTexts(view, step);
  const reading = step.reading === undefined ? [] : [t('app:meterSays', { reading: readingSpoken(step.reading) })];
  return [doneText(view, step.action), ...noticed, ...reading].join('. ');
}
