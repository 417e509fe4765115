import type { Ticket } from '../scenario/ticket.ts';
import { board } from './board.ts';
import { guestOf, wordsIdOf } from './guests.ts';
import { hasWords, t } from './words.ts';

const toldOf = (id: string) => (board.find((ticket) => ticket.id === id) ?? guestOf(id)?.ticket)?.told;

/** What a ticket is called; one that nobody wrote goes by its symptom. A host's ticket comes with `told`: it is on no list here. */
export function titleOf(id: string, told: Ticket['told'] = toldOf(id)): string {
  if (told !== undefined) return t(`ticket:made.title.${told.symptom}`);
  const key = `ticket:${wordsIdOf(id)}.title`;
  return hasWords(key) ? t(key) : t('lab:own.title');
}

/** Where it is. */
export function siteOf(id: string, told: Ticket['told'] = toldOf(id)): string {
  if (told !== undefined) return t('ticket:made.site', { job: told.job });
  const key = `ticket:${wordsIdOf(id)}.site`;
  return hasWords(key) ? t(key) : t('lab:own.site');
}
