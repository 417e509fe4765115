/**
 * Two trainees with the same answers to the same form. What is right is the same for everybody who knows it, so only wrong choices count:
 * two sheets are doubted where they agree at every question and at least {@link SURE_WRONG} of those choices are wrong. That shared errors
 * tell of copying, and shared right answers do not, is how answer sheets are compared (error similarity analysis; from memory, no source at hand).
 */
import { type Doubt, doubt } from './doubts.ts';
import type { Entry } from './entry.ts';
import { groupBy } from './group.ts';

/** Of three wrong choices each, once in six thousand pairs that went wrong at the very same questions. */
export const SURE_WRONG = 8;

/** The doubts of entries about whose answers they are. */
export function sameAnswersDoubts(entries: readonly Entry[]): ReadonlyMap<Entry, readonly Doubt[]> {
  const wrong = ({ paper }: Entry) => paper?.answers.filter(({ right, choice }) => !right && choice !== null).length ?? 0;
  const sheets = entries.filter((entry) => wrong(entry) >= SURE_WRONG);
  const alike = groupBy(
    sheets,
    ({ item, ticket, paper }) => `${item} ${ticket} ${paper?.answers.map(({ choice }) => choice).join()}`,
  );
  const doubts = new Map<Entry, Doubt[]>();
  for (const group of alike.values())
    for (const entry of group)
      for (const other of group)
        if (other.trainee.code !== entry.trainee.code)
          doubts.set(entry, [
            ...(doubts.get(entry) ?? []),
            doubt('sameAnswers', undefined, { trainee: other.trainee.code, wrong: wrong(entry) }),
          ]);
  return doubts;
}
