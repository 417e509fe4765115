import { useEffect, useMemo } from 'preact/hooks';
import { logOf, replay } from '../../attempt/attempt.ts';
import type { Ticket } from '../../scenario/ticket.ts';
import { MenuDialog } from '../bench/menu-dialog.tsx';
import { TimeLeft } from '../drills/exam-clock.tsx';
import { type ExamWork, examined } from '../drills/exam-keep.ts';
import type { Exam } from '../drills/use-exam.ts';
import { findTicket, rigOf } from '../library.ts';
import { retell } from '../retell.ts';
import { examBenchHref, go, hrefOf, rememberJob } from '../router.ts';
import { useTitle } from '../shell.tsx';
import { titleOf } from '../ticket-words.ts';
import { type Loaded, useAttempt } from '../use-attempt.ts';
import { t } from '../words.ts';
import { BenchScreen } from './bench.tsx';

/** The work on a ticket, from where it stands; begun anew where it no longer replays. */
function loadedFrom(ticket: Ticket, log: ExamWork['log']): Loaded {
  const job = examined(ticket);
  const rig = rigOf(ticket);
  const from = (actions: Parameters<typeof retell>[2], origin: Loaded['origin']): Loaded => ({
    ticket: job,
    ...retell(job, rig, actions),
    origin,
  });
  if (log === undefined) return from([], 'begun');
  try {
    const actions = replay(job, rig, log).steps.map(({ action }) => action);
    return from(actions, 'resumed');
  } catch {
    return from([], 'lost');
  }
}

interface Props {
  /** The functions of an exam stay the same ones. */
  readonly exam: Pick<Exam, 'left' | 'work'>;
  /** As it stands when the bench is entered. */
  readonly begun: ExamWork;
  /** Which of the exam's tickets, from 0. */
  readonly at: number;
}

/** The bench of an exam's ticket: graded, under the exam's clock, and back to its questions. */
export function ExamBench({ begun, ...props }: Props) {
  const ticket = findTicket(begun.ticket);
  return ticket === undefined ? null : <AtWork ticket={ticket} begun={begun} {...props} />;
}

function AtWork({ exam: { left, work }, begun, at, ticket }: Props & { readonly ticket: Ticket }) {
  // Its log grows with each step; the attempt that is on the bench goes on.
  const loaded = useMemo(() => loadedFrom(ticket, begun.log), [ticket]);
  const keeper = useMemo(
    () => ({
      loaded,
      isOver: () => left() === 0,
      keep: (attempt: Loaded['attempt']) => work(at, logOf(attempt)),
    }),
    [loaded, left, work, at],
  );
  const bench = useAttempt(loaded.ticket, rigOf(ticket), false, keeper);
  useTitle(titleOf(ticket.id));
  const phase = bench?.view.phase;
  const isThere = phase !== undefined && phase !== 'closed';
  useEffect(() => {
    if (isThere) document.querySelector<HTMLElement>('h1')?.focus();
  }, [isThere]);
  useEffect(() => {
    rememberJob(phase === 'closed' ? undefined : examBenchHref(at + 1));
    if (phase === 'closed') go(hrefOf('exams'), true);
  }, [phase, at]);
  if (bench === undefined || !isThere) return null;
  return (
    <BenchScreen
      bench={bench}
      beside={{
        count: (
          <div>
            <dt>{t('drill:exam.left')}</dt>
            <dd>
              <TimeLeft left={left} />
            </dd>
          </div>
        ),
        cover: null,
        menu: (onDone) => (
          <MenuDialog free={false} onDone={onDone}>
            <a class="button" href={hrefOf('exams')}>
              {t('drill:exam.bench.back')}
            </a>
          </MenuDialog>
        ),
      }}
    />
  );
}
