import '../css/pages.css';
import '../css/progress.css';
import '../css/take.css';
import { BackHead, useTitle } from '../shell.tsx';
import { ItemSlip } from '../taking/item-slip.tsx';
import { KeptHere } from '../taking/kept-here.tsx';
import { PaperSlip } from '../taking/paper-slip.tsx';
import { Rules } from '../taking/rules.tsx';
import { type Taken, useNow, useTaken } from '../taking/use-assigned.ts';
import { usePaperScores } from '../taking/use-paper-scores.ts';
import { useScores } from '../taking/use-scores.ts';
import { t } from '../words.ts';

/** A kept assignment: its items and how far they are, handing in, and what is kept. */
export function AssignedPage({ ticket: id }: { readonly ticket: string }) {
  const { result, again } = useTaken(id);
  useTitle(result.state === 'ready' ? result.taken.assigned.assignment.title : t('take:title'));
  return (
    <>
      <BackHead />
      <main class="sheet progress take">
        {result.state === 'ready' ? (
          <Read taken={result.taken} onChange={again} />
        ) : (
          <>
            <h1 tabIndex={-1}>{t('take:title')}</h1>
            <p role="status">
              {t(result.state === 'working' ? 'app:loading' : result.state === 'none' ? 'take:none' : 'keeping:denied')}
            </p>
            <p>
              <a class="button" href="#/take">
                {t('take:file.title')}
              </a>
            </p>
          </>
        )}
      </main>
    </>
  );
}

function Read({ taken, onChange }: { readonly taken: Taken; readonly onChange: () => Promise<void> }) {
  const now = useNow();
  const { assignment, trainee } = taken.assigned;
  useScores(taken, now, onChange);
  usePaperScores(taken, now, onChange);
  return (
    <>
      <h1 tabIndex={-1}>{assignment.title}</h1>
      <p>
        {trainee.name === ''
          ? t('take:who.isCode', { code: trainee.code })
          : t('take:who.is', { code: trainee.code, name: trainee.name })}
      </p>
      <Rules assignment={assignment} now={now} />
      {taken.works.length > 0 && (
        <section aria-labelledby="items-title" class="take-items">
          <h2 id="items-title">{t('take:items')}</h2>
          {taken.works.map((work) => (
            <ItemSlip key={work.item} taken={taken} work={work} now={now} onChange={onChange} />
          ))}
        </section>
      )}
      {taken.papers.length > 0 && (
        <section aria-labelledby="papers-title" class="take-items">
          <h2 id="papers-title">{t('take:paper.title')}</h2>
          {taken.papers.map((paper) => (
            <PaperSlip key={paper.item} taken={taken} paper={paper} now={now} onChange={onChange} />
          ))}
        </section>
      )}
      <KeptHere taken={taken} onChange={onChange} />
    </>
  );
}
