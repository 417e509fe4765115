import { hrefOf } from '../router.ts';
import { titleOf } from '../ticket-words.ts';
import { number, t } from '../words.ts';
import type { Finished, Result } from './records.ts';

interface Props {
  readonly results: readonly (Finished & { readonly result: Result })[];
}

/** What the chart shows, as a table: every attempt, with its debrief and its report. */
export function ResultsTable({ results }: Props) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what may scroll must be reached by the keyboard
    <section class="results-scroll" tabIndex={0} aria-label={t('keeping:table.caption')}>
      <table class="results" data-testid="results">
        <caption class="unseen">{t('keeping:table.caption')}</caption>
        <thead>
          <tr>
            {(['number', 'ticket', 'points', 'steps', 'minutes', 'fault', 'open'] as const).map((each) => (
              <th key={each} scope="col">
                {t(`keeping:table.column.${each}`)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {results.map(({ number: at, ticket, result }) => {
            const title = titleOf(ticket);
            return (
              <tr key={at}>
                <td>{number(at)}</td>
                <th scope="row">
                  <a href={hrefOf('ticket', ticket)}>{title}</a>
                </th>
                <td data-column={t('keeping:table.column.points')}>{number(result.total)}</td>
                <td data-column={t('keeping:table.column.steps')}>{number(result.steps)}</td>
                <td data-column={t('keeping:table.column.minutes')}>{number(Math.max(1, Math.round(result.minutes)))}</td>
                <td data-column={t('keeping:table.column.fault')} class={result.right ? undefined : 'results-missed-word'}>
                  {t(result.right ? 'keeping:table.foundShort' : 'keeping:table.missedShort')}
                </td>
                <td>
                  {(['debrief', 'report'] as const).map((page) => (
                    <a
                      key={page}
                      href={hrefOf(page, ticket, at)}
                      aria-label={t(`keeping:table.${page}Of`, { number: number(at), title })}
                    >
                      {t(page === 'debrief' ? 'app:debrief.title' : 'keeping:table.report')}
                    </a>
                  ))}
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </section>
  );
}
