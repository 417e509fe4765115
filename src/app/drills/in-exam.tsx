import type { ComponentChildren } from 'preact';
import { useEffect } from 'preact/hooks';
import { hrefOf } from '../router.ts';
import { useTitle } from '../shell.tsx';
import { titleOf } from '../ticket-words.ts';
import { t } from '../words.ts';
import { useExamTickets } from './exam-tickets.ts';

interface Props {
  readonly ticket: string;
  readonly children: ComponentChildren;
}

/** What is told of a ticket and done with it outside an exam: nothing as long as the exam under way sets it. */
export function OutsideExam({ ticket, children }: Props) {
  const tickets = useExamTickets();
  // Until it is known, the page stands as ever: nothing of it tells within that moment.
  return tickets?.has(ticket) ? <InExam ticket={ticket} /> : children;
}

function InExam({ ticket }: { readonly ticket: string }) {
  useTitle(titleOf(ticket));
  useEffect(() => document.querySelector<HTMLElement>('h1')?.focus(), []);
  return (
    <main class="waiting">
      <h1 tabIndex={-1}>{titleOf(ticket)}</h1>
      <p role="alert">{t('keeping:inExam')}</p>
      <a class="button act" href={hrefOf('exams')}>
        {t('drill:exam.bench.back')}
      </a>
      <a class="button" href={hrefOf('home')}>
        {t('app:home.tickets')}
      </a>
    </main>
  );
}
