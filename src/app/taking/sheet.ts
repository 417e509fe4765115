/** An attempt at a paper, and what a choice makes of it. No browser in here. */
import { secondsOf } from '../../classroom/instant.ts';
import type { Paper } from '../../classroom/papers.ts';
import type { KeptPaper } from './records.ts';

/** An attempt at which nothing is chosen yet. @param began by the clock on the wall */
export function begunPaper({ item, digest, questions }: Paper, number: number, began: string): KeptPaper {
  const none = questions.map(() => null);
  return { item, number, began, paper: digest, choices: none, stamps: none, flagged: [] };
}

/** Whether an attempt is at these very questions; another version of Bellwire may ask others. */
export const isAt = (kept: KeptPaper, paper: Paper): boolean =>
  kept.paper === paper.digest && kept.choices.length === paper.questions.length;

/**
 * The attempt with a choice made now; a clock that was set back does not put it before others.
 * @param now seconds since 1970
 * @param final whether a choice that was made stays
 */
export function withChoice(kept: KeptPaper, place: number, choice: number, now: number, final: boolean): KeptPaper {
  const before = kept.choices[place];
  if (before === undefined || before === choice || (final && before !== null)) return kept;
  // Tenths say enough, and a learning system keeps few characters.
  const since = Math.round((now - secondsOf(kept.began)) * 10) / 10;
  const stamp = Math.max(0, since, ...kept.stamps.map((each) => each ?? 0));
  const put = <Value>(all: readonly Value[], value: Value) => all.map((each, at) => (at === place ? value : each));
  return { ...kept, choices: put(kept.choices, choice), stamps: put(kept.stamps, stamp) };
}

/** The attempt with a question flagged, or not any more. */
export function withFlag(kept: KeptPaper, place: number): KeptPaper {
  const { flagged } = kept;
  return { ...kept, flagged: flagged.includes(place) ? flagged.filter((each) => each !== place) : [...flagged, place] };
}
