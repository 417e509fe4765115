import { useEffect, useMemo } from 'preact/hooks';
import '../css/pages.css';
import '../css/gradebook.css';
import { gradebookOf } from '../../classroom/gradebook.ts';
import { Intake } from '../gradebook/intake.tsx';
import { Keep } from '../gradebook/keep.tsx';
import { Problems, Progress } from '../gradebook/progress.tsx';
import { goOn, pause, useBook } from '../gradebook/store.ts';
import { ClassViews } from '../gradebook/views/class-views.tsx';
import { hrefOf } from '../router.ts';
import { PageHead, useTitle } from '../shell.tsx';
import { t } from '../words.ts';

/** A class's grades: replayed from what was handed in, with every doubt named. */
export function GradebookPage() {
  const { book, work } = useBook();
  const { assignment, entries, overrules, counts } = book;
  useTitle(t('gradebook:title'));
  useEffect(() => {
    if (work !== 'stopped') void goOn();
    return pause;
  }, []);
  const gradebook = useMemo(
    () => assignment && gradebookOf({ assignment, entries: [...entries.values()], overrules, counts }),
    [assignment, entries, overrules, counts],
  );
  return (
    <>
      <PageHead>
        <a class="back" href={hrefOf('home')}>
          {t('app:toTickets')}
        </a>
        <a class="back" href={hrefOf('assign')}>
          {t('builder:toAssign')}
        </a>
      </PageHead>
      <main class="sheet book">
        <h1 tabIndex={-1}>{t('gradebook:title')}</h1>
        <section class="slip" aria-labelledby="book-title">
          <h2 id="book-title">{assignment?.title ?? t('gradebook:take.title')}</h2>
          {assignment === undefined && <p>{t('gradebook:take.what')}</p>}
          <Intake isSmall={assignment !== undefined} />
          <Progress />
          <Problems />
          {gradebook !== undefined && <Keep gradebook={gradebook} />}
          <p class="book-privacy">{t('gradebook:privacy')}</p>
        </section>
        {gradebook !== undefined && <ClassViews gradebook={gradebook} />}
      </main>
    </>
  );
}
