import '../css/pages.css';
import '../css/gradebook.css';
import { Intake } from '../gradebook/intake.tsx';
import { Keep } from '../gradebook/keep.tsx';
import { Problems, Progress } from '../gradebook/progress.tsx';
import { useGradebook } from '../gradebook/use-gradebook.ts';
import { ClassViews } from '../gradebook/views/class-views.tsx';
import { hrefOf } from '../router.ts';
import { PageHead, useTitle } from '../shell.tsx';
import { t } from '../words.ts';

/** A class's grades: replayed from what was handed in, with every doubt named. */
export function GradebookPage() {
  const { book, gradebook } = useGradebook();
  const { assignment } = book;
  useTitle(t('gradebook:title'));
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
