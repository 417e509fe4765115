import type { Item } from '../../drills/item.ts';
import type { Perceived } from '../../drills/perceived.ts';
import { signText, t, thingName } from '../words.ts';

/** What a question says of how everything stands, by part. */
export function perceivedIn(given: Item['given']): readonly Perceived[] {
  const parts = new Map<string, Perceived['signs']>();
  for (const { key, values } of given)
    if (key === 'now' && values.notice?.is === 'notice') {
      const { part, ...sign } = values.notice.notice;
      parts.set(part, [...(parts.get(part) ?? []), sign]);
    }
  return [...parts].map(([part, signs]) => ({ part, signs }));
}

/** A part with all that is perceived of it, in words; empty where there are none. */
export function perceivedText({ part, signs }: Perceived): string {
  const words = signs.map(({ key, value }) => signText(key, value)).filter((each) => each !== '');
  return words.length === 0 ? '' : t('app:notice', { part: thingName(part), words: words.join(', ') });
}
