import { useMemo } from 'preact/hooks';
import '../css/pages.css';
import '../css/debrief.css';
import '../css/gradebook.css';
import '../css/print.css';
import '../css/trainee-sheet.css';
import { Progress } from '../gradebook/progress.tsx';
import { useGradebook } from '../gradebook/use-gradebook.ts';
import { TraineeSheet } from '../gradebook/views/trainee-sheet.tsx';
import { useReviews } from '../gradebook/views/use-reviews.ts';
import { hrefOf } from '../router.ts';
import { PageHead, useTitle } from '../shell.tsx';
import { number, t } from '../words.ts';

/** Reports to print: of the whole class, or of the trainee whose code the address names. */
export function TraineeReportsPage({ ticket: code }: { readonly ticket: string }) {
  const { book, work, gradebook } = useGradebook();
  const { assignment } = book;
  useTitle(t('classview:report.title'));
  const rows = useMemo(() => gradebook?.rows.filter(({ trainee }) => code === '' || trainee.code === code), [gradebook, code]);
  const { found, done, all, isReady } = useReviews(assignment, work === 'grading' ? undefined : rows);
  return (
    <div class="paper">
      <PageHead>
        <a class="back" href={hrefOf('gradebook')}>
          {t('classview:report.back')}
        </a>
      </PageHead>
      <main class="trainee-reports">
        <div class="reports-head">
          <h1 tabIndex={-1}>{t('classview:report.title')}</h1>
          <Progress />
          <p role="status" data-testid="reports">
            {gradebook === undefined || rows?.length === 0
              ? t('classview:report.nobody')
              : isReady
                ? t('classview:report.ready', { count: rows?.length })
                : t('classview:report.working', { done: number(done), all: number(all) })}
          </p>
          {isReady && (
            <button type="button" class="button act" onClick={() => print()}>
              {t('settings:print')}
            </button>
          )}
        </div>
        {isReady &&
          gradebook &&
          rows?.map((row) => <TraineeSheet key={row.trainee.code} gradebook={gradebook} row={row} found={found} />)}
      </main>
    </div>
  );
}
