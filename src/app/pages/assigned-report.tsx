import { useEffect, useState } from 'preact/hooks';
import '../css/debrief.css';
import '../css/pages.css';
import '../css/print.css';
import '../css/report.css';
import { findTicket } from '../library.ts';
import { OwnWords } from '../report/own-words.tsx';
import { ReportPaper } from '../report/report-paper.tsx';
import { type ReportState, reportedOf } from '../report/use-report.ts';
import { assignedHref } from '../router.ts';
import { useTitle } from '../shell.tsx';
import { MOST_WORDS } from '../taking/records.ts';
import { amendWork } from '../taking/store.ts';
import { guestFor, readTaken } from '../taking/use-assigned.ts';
import { t } from '../words.ts';

/** @throws where the kept log does not replay, or the browser denies its storage */
async function read(id: string, item: number, at: number): Promise<ReportState> {
  const taken = await readTaken(id);
  const work = taken?.works[item];
  const kept = taken?.kept.find((each) => each.item === item && each.number === at && each.ended !== undefined);
  if (taken === undefined || work === undefined || kept === undefined) return { state: 'none' };
  const ticket = findTicket(guestFor(taken.assigned, work, at));
  if (ticket === undefined) return { state: 'none' };
  const { code, name } = taken.assigned.trainee;
  const reported = reportedOf(ticket, work.rig, kept.log);
  return { state: 'ready', reported: { ...reported, number: at, words: kept.words ?? '', name: name === '' ? code : name } };
}

interface PageProps {
  /** Id of the kept assignment, a slash, and the place of the item. */
  readonly ticket: string;
  /** Which attempt at it. */
  readonly number?: number;
}

/** What a technician leaves after the job, of an assigned attempt that is over: what was done and seen, neither points nor the truth. */
export function AssignedReportPage({ ticket: of, number: at = 1 }: PageProps) {
  const [id = '', item = ''] = of.split('/');
  const [result, setResult] = useState<ReportState>({ state: 'working' });
  useTitle(t('report:title'));
  useEffect(() => {
    let current = true;
    read(id, Number(item), at).then(
      (found) => current && setResult(found),
      () => current && setResult({ state: 'failed' }),
    );
    return () => {
      current = false;
    };
  }, [id, item, at]);
  return (
    <ReportPaper
      back={{ href: assignedHref(id), words: t('take:back') }}
      ticket={result.state === 'ready' ? result.reported.ticket.id : undefined}
      at={at}
      result={result}
      own={({ words: before }) => (
        <OwnWords
          words={before}
          most={MOST_WORDS}
          keep={(words) => amendWork(id, { item: Number(item), number: at }, { words, saved: false })}
        />
      )}
    />
  );
}
