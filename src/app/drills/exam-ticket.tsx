import { useEffect, useRef } from 'preact/hooks';
import { findTicket } from '../library.ts';
import { examBenchHref } from '../router.ts';
import { siteOf, titleOf } from '../ticket-words.ts';
import { complaintText, t } from '../words.ts';
import { type ExamWork, isClosed } from './exam-keep.ts';

// keys: drill:exam.bench.state.*

export const stateOf = (work: ExamWork): 'open' | 'underWay' | 'closed' =>
  isClosed(work) ? 'closed' : work.log === undefined ? 'open' : 'underWay';

interface Props {
  readonly work: ExamWork;
  /** From 1. */
  readonly number: number;
}

/** A ticket among an exam's questions: what the customer says, how far it is, and the way to its bench. */
export function ExamTicket({ work, number }: Props) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), [work.ticket]);
  const ticket = findTicket(work.ticket);
  const state = stateOf(work);
  return (
    <article class="slip exam-ticket" aria-labelledby="exam-ticket-title">
      <h2 id="exam-ticket-title" tabIndex={-1} ref={heading}>
        {titleOf(work.ticket)}
      </h2>
      <p class="drill-where">
        {siteOf(work.ticket)}
        {ticket !== undefined && ` · ${t(`rig:name.${ticket.rig}`)}`}
      </p>
      {ticket !== undefined && <p class="complaint">{complaintText(ticket)}</p>}
      <p data-testid="ticket-state">{t(`drill:exam.bench.state.${state}`)}</p>
      {state !== 'closed' && (
        <p>
          <a class="button act" href={examBenchHref(number)}>
            {t(state === 'open' ? 'drill:exam.bench.begin' : 'drill:exam.bench.resume')}
          </a>
        </p>
      )}
      <p>{t('drill:exam.bench.rule')}</p>
    </article>
  );
}
