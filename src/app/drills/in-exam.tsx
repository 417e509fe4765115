import type { ComponentChildren } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import type { Blueprint } from '../../drills/exam.ts';
import { hrefOf } from '../router.ts';
import { useTitle } from '../shell.tsx';
import { titleOf } from '../ticket-words.ts';
import { t } from '../words.ts';
import { blueprints } from './blueprints.ts';
import { type KeptExams, readExams, usedBy } from './exam-keep.ts';

/**
 * Whether the exam under way sets this ticket. One whose time is over sets nothing any more, whether or not anybody has come back to it.
 * @param now milliseconds since 1970
 */
export function isInExam({ running }: KeptExams, ticket: string, exams: readonly Blueprint[], now: number): boolean {
  const exam = exams.find(({ id }) => id === running?.blueprint);
  if (running === undefined || exam === undefined || usedBy(running, now) >= exam.minutes * 60) return false;
  return running.bench?.some((work) => work.ticket === ticket) === true;
}

interface Props {
  readonly ticket: string;
  readonly children: ComponentChildren;
}

/** What is told of a ticket and done with it outside an exam: nothing as long as the exam under way sets it. */
export function OutsideExam({ ticket, children }: Props) {
  // Until it is known, the page stands as ever: nothing of it tells within that moment.
  const [isSet, setIsSet] = useState(false);
  useEffect(() => {
    let current = true;
    readExams()
      .then((kept) => isInExam(kept, ticket, blueprints, Date.now()))
      .catch(() => false)
      .then((found) => current && setIsSet(found));
    return () => {
      current = false;
    };
  }, [ticket]);
  return isSet ? <InExam ticket={ticket} /> : children;
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
