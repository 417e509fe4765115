import { useEffect, useState } from 'preact/hooks';
import '../css/debrief.css';
import '../css/pages.css';
import '../css/print.css';
import '../css/report.css';
import { findTicket } from '../library.ts';
import { OwnWords } from '../report/own-words.tsx';
import { ReportSheet } from '../report/sheet.tsx';
import { type Reported, reportedOf } from '../report/use-report.ts';
import { assignedHref } from '../router.ts';
import { PageHead, useTitle } from '../shell.tsx';
import { MOST_WORDS } from '../taking/records.ts';
import { amendWork } from '../taking/store.ts';
import { guestFor, readTaken } from '../taking/use-assigned.ts';
import { titleOf } from '../ticket-words.ts';
import { number, t } from '../words.ts';

type Result = { readonly state: 'working' | 'none' | 'failed' } | { readonly state: 'ready'; readonly reported: Reported };

/** @throws where the kept log does not replay, or the browser denies its storage */
async function read(id: string, item: number, at: number): Promise<Result> {
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
  const [result, setResult] = useState<Result>({ state: 'working' });
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
    <div class="paper">
      <PageHead>
        <a class="back" href={assignedHref(id)}>
          {t('take:back')}
        </a>
      </PageHead>
      <main class="report">
        <div class="report-head">
          <div>
            <h1 tabIndex={-1}>{t('report:title')}</h1>
            {result.state === 'ready' && (
              <p>
                {titleOf(result.reported.ticket.id)} · {t('report:attempt', { number: number(at) })}
              </p>
            )}
          </div>
          {result.state === 'ready' && (
            <button type="button" class="button act" onClick={() => print()}>
              {t('settings:print')}
            </button>
          )}
        </div>
        <p class="report-caution">{t('report:caution')}</p>
        {result.state === 'ready' ? (
          <ReportSheet reported={result.reported}>
            <OwnWords
              words={result.reported.words}
              most={MOST_WORDS}
              keep={(words) => amendWork(id, { item: Number(item), number: at }, { words, saved: false })}
            />
          </ReportSheet>
        ) : (
          <p role="status">{t(`report:${result.state}`)}</p>
        )}
      </main>
    </div>
  );
}
