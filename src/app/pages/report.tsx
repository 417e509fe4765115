import '../css/debrief.css';
import '../css/pages.css';
import '../css/print.css';
import '../css/report.css';
import { MOST_WORDS } from '../keeping/records.ts';
import { findTicket, rigOf } from '../library.ts';
import { OwnWords } from '../report/own-words.tsx';
import { ReportSheet } from '../report/sheet.tsx';
import { useReport } from '../report/use-report.ts';
import { hrefOf } from '../router.ts';
import { PageHead, useTitle } from '../shell.tsx';
import { keepWords } from '../storage.ts';
import { titleOf } from '../ticket-words.ts';
import { number, t } from '../words.ts';

type Ticket = NonNullable<ReturnType<typeof findTicket>>;

interface PageProps {
  readonly ticket: string;
  readonly number?: number;
}

/** What a technician leaves after the job: of the last finished attempt at the ticket, or of the one with this number. */
export function ReportPage({ ticket: id, number: at }: PageProps) {
  const ticket = findTicket(id);
  return ticket === undefined ? null : <Opened ticket={ticket} at={at} />;
}

function Opened({ ticket, at }: { readonly ticket: Ticket; readonly at: number | undefined }) {
  const result = useReport(ticket, rigOf(ticket), at);
  useTitle(t('report:title'));
  return (
    <div class="paper">
      <PageHead>
        <a class="back" href={hrefOf('debrief', ticket.id, at)}>
          {t('report:back')}
        </a>
      </PageHead>
      <main class="report">
        <div class="report-head">
          <div>
            <h1 tabIndex={-1}>{t('report:title')}</h1>
            <p>
              {titleOf(ticket.id)}
              {at !== undefined && ` · ${t('report:attempt', { number: number(at) })}`}
            </p>
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
            <Words at={result.reported.number} words={result.reported.words} />
          </ReportSheet>
        ) : (
          <p role="status">{t(`report:${result.state}`)}</p>
        )}
      </main>
    </div>
  );
}

function Words({ at, words }: { readonly at: number | undefined; readonly words: string }) {
  return <OwnWords words={words} most={MOST_WORDS} keep={at === undefined ? undefined : (next) => keepWords(at, next)} />;
}
