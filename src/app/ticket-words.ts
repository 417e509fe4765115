import { board } from './board.ts';
import { guestOf, wordsIdOf } from './guests.ts';
import { t } from './words.ts';

const toldOf = (id: string) => (board.find((ticket) => ticket.id === id) ?? guestOf(id)?.ticket)?.told;

/** What a ticket is called; one that nobody wrote goes by its symptom. */
export function titleOf(id: string): string {
  const told = toldOf(id);
  return told === undefined ? t(`ticket:${wordsIdOf(id)}.title`) : t(`ticket:made.title.${told.symptom}`);
}

/** Where it is. */
export function siteOf(id: string): string {
  const told = toldOf(id);
  return told === undefined ? t(`ticket:${wordsIdOf(id)}.site`) : t('ticket:made.site', { job: told.job });
}
