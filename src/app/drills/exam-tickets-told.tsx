import { enrol, findTicket } from '../library.ts';
import { go, hrefOf } from '../router.ts';
import { keepClosed } from '../storage.ts';
import { siteOf, titleOf } from '../ticket-words.ts';
import { number, t } from '../words.ts';
import { type ExamWork, examined } from './exam-keep.ts';
import { stateOf } from './exam-ticket.tsx';
import { type ExamTold, leaveResult } from './result-left.ts';

/** What each ticket of an exam came to, and the way to its debrief. */
export function ExamTicketsTold({ told }: { readonly told: ExamTold }) {
  const { running } = told;
  if (running.bench === undefined || running.bench.length === 0) return null;
  return (
    <section class="slip exam-tickets" aria-labelledby="exam-tickets-title">
      <h2 id="exam-tickets-title">{t('drill:exam.bench.title')}</h2>
      <p>{t('drill:exam.bench.what')}</p>
      <ul>
        {running.bench.map((work) => (
          <TicketTold key={work.ticket} told={told} work={work} />
        ))}
      </ul>
    </section>
  );
}

function TicketTold({ told, work }: { readonly told: ExamTold; readonly work: ExamWork }) {
  const { sitting, running } = told;
  const benched = sitting.bench?.find(({ ticket }) => ticket === work.ticket);
  const ticket = findTicket(work.ticket);
  const debrief = async () => {
    if (ticket === undefined) return;
    const guest = enrol(examined(ticket), { key: `exam ${running.lot} ${running.began}`, home: hrefOf('exams') });
    await keepClosed(guest, { mode: 'graded', log: { ...work.log, ticket: guest } });
    leaveResult(told);
    go(hrefOf('debrief', guest));
  };
  const state = stateOf(work);
  return (
    <li data-testid={`ticket-${work.ticket}`}>
      <p>
        <b>{titleOf(work.ticket)}</b> <span class="drill-where">{siteOf(work.ticket)}</span>
      </p>
      <p>
        {benched === undefined ? (
          t('drill:exam.bench.fellOut')
        ) : (
          <>
            <b>{t(benched.right ? 'drill:exam.isRight' : 'drill:exam.isWrong')}</b>
            {benched.points !== null && ` · ${t('drill:exam.bench.points', { points: number(benched.points), of: number(100) })}`}
            {state !== 'closed' && ` · ${t(`drill:exam.bench.state.${state}`)}`}
          </>
        )}
      </p>
      {work.log === undefined ? (
        <a class="button no-print" href={hrefOf('ticket', work.ticket)} onClick={() => leaveResult(told)}>
          {t('drill:exam.bench.practise')}
        </a>
      ) : (
        <button type="button" class="button no-print" onClick={() => void debrief()}>
          {t('drill:exam.bench.debrief')}
        </button>
      )}
    </li>
  );
}
