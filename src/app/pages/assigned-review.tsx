import { useEffect, useState } from 'preact/hooks';
import '../css/pages.css';
import '../css/drills.css';
import '../css/take.css';
import type { Paper } from '../../classroom/papers.ts';
import { Reviewed } from '../drills/exam-outcome.tsx';
import { paperTitle } from '../paper-words.ts';
import { pointsText } from '../points-text.ts';
import { assignedHref, go } from '../router.ts';
import { BackHead, useTitle } from '../shell.tsx';
import type { KeptPaper } from '../taking/records.ts';
import { isAt } from '../taking/sheet.ts';
import { tellsDebrief } from '../taking/status.ts';
import { readTaken, wallClock } from '../taking/use-assigned.ts';
import { useItems } from '../taking/use-items.ts';
import { number, t } from '../words.ts';

interface Opened {
  readonly paper: Paper;
  readonly kept: KeptPaper;
}

/** An attempt that is over and whose answers may be told; undefined for any other. @throws when the browser denies its storage */
async function open(id: string, item: number, at: number): Promise<Opened | undefined> {
  const taken = await readTaken(id);
  const paper = taken?.papers.find((each) => each.item === item);
  const kept = taken?.keptPapers.find((each) => each.item === item && each.number === at && each.ended !== undefined);
  if (taken === undefined || paper === undefined || kept === undefined || !isAt(kept, paper)) return undefined;
  return tellsDebrief(taken.assigned.assignment, wallClock()) ? { paper, kept } : undefined;
}

interface PageProps {
  /** Id of the kept assignment, a slash, and the place of the paper. */
  readonly ticket: string;
  /** Which attempt at it. */
  readonly number?: number;
}

/** Every question of an attempt again, with the answer and its reason; where that may not be told, back to the assignment. */
export function AssignedReviewPage({ ticket: of, number: at = 1 }: PageProps) {
  const [id = '', item = ''] = of.split('/');
  const home = assignedHref(id);
  const [opened, setOpened] = useState<Opened>();
  useTitle(t('drill:exam.review'));
  useEffect(() => {
    let current = true;
    open(id, Number(item), at).then(
      (found) => {
        if (!current) return;
        if (found === undefined) go(home, true);
        else setOpened(found);
      },
      () => current && go(home, true),
    );
    return () => {
      current = false;
    };
  }, [id, item, at, home]);
  return (
    <>
      <BackHead />
      <main class="sheet drills exams take-paper">
        <h1 tabIndex={-1}>{t('drill:exam.review')}</h1>
        {opened === undefined ? <p role="status">{t('app:loading')}</p> : <Questions {...opened} />}
        <p>
          <a class="button" href={home}>
            {t('take:back')}
          </a>
        </p>
      </main>
    </>
  );
}

function Questions({ paper, kept }: Opened) {
  const items = useItems(paper, 0);
  return (
    <section aria-labelledby="review-of">
      <h2 id="review-of">
        {paperTitle(paper.setting)} · {t('take:ended.title', { number: number(kept.number) })}
      </h2>
      {kept.shown !== undefined && <p>{t('take:ended.score', { total: pointsText(kept.shown), of: number(100) })}</p>}
      {items.map((item, place) =>
        item ? (
          <Reviewed key={place} item={item} place={place} chosen={kept.choices[place] ?? undefined} />
        ) : (
          <p key={place}>
            {number(place + 1)}. {t(item === null ? 'drill:exam.nothing' : 'drill:page.drawing')}
          </p>
        ),
      )}
    </section>
  );
}
