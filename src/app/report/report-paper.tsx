import type { ComponentChildren } from 'preact';
import { PageHead } from '../shell.tsx';
import { titleOf } from '../ticket-words.ts';
import { number, t } from '../words.ts';
import { ReportSheet } from './sheet.tsx';
import type { Reported, ReportState } from './use-report.ts';

interface Props {
  /** Where one came from, and in what words. */
  readonly back: { readonly href: string; readonly words: string };
  /** Undefined while it is not known. */
  readonly ticket: string | undefined;
  /** Which attempt, where there may be several. */
  readonly at: number | undefined;
  readonly result: ReportState;
  /** The trainee's own words, on the sheet. */
  readonly own: (reported: Reported) => ComponentChildren;
}

/** The page of a service report: its heading, the caution, the sheet, and the button that prints it. */
export function ReportPaper({ back, ticket, at, result, own }: Props) {
  return (
    <div class="paper">
      <PageHead>
        <a class="back" href={back.href}>
          {back.words}
        </a>
      </PageHead>
      <main class="report">
        <div class="report-head">
          <div>
            <h1 tabIndex={-1}>{t('report:title')}</h1>
            {ticket !== undefined && (
              <p>
                {titleOf(ticket)}
                {at !== undefined && ` · ${t('report:attempt', { number: number(at) })}`}
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
          <ReportSheet reported={result.reported}>{own(result.reported)}</ReportSheet>
        ) : (
          <p role="status">{t(`report:${result.state}`)}</p>
        )}
      </main>
    </div>
  );
}
