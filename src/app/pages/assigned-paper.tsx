import { useCallback } from 'preact/hooks';
import '../css/pages.css';
import '../css/drills.css';
import '../css/take.css';
import type { Paper } from '../../classroom/papers.ts';
import { paperTitle } from '../paper-words.ts';
import { assignedHref, go } from '../router.ts';
import { BackHead, useTitle } from '../shell.tsx';
import { Countdown } from '../taking/countdown.tsx';
import { Opening } from '../taking/opening.tsx';
import type { KeptPaper } from '../taking/records.ts';
import { isAt } from '../taking/sheet.ts';
import { firstOpen, SheetView } from '../taking/sheet-view.tsx';
import { readTaken, type Taken } from '../taking/use-assigned.ts';
import { useItems } from '../taking/use-items.ts';
import { useSheet } from '../taking/use-sheet.ts';
import { t } from '../words.ts';

/**
 * The questions of a running attempt at exercises or an exam; without one, back to the assignment. One tab at a time.
 * @param ticket id of the kept assignment, a slash, and the place of the paper
 */
export function AssignedPaperPage({ ticket: of }: { readonly ticket: string }) {
  const [id = '', item = ''] = of.split('/');
  return (
    <Opening id={id} item={Number(item)} open={open}>
      {(opened) => <AtWork opened={opened} />}
    </Opening>
  );
}

interface Opened {
  readonly taken: Taken;
  readonly paper: Paper;
  readonly kept: KeptPaper;
}

/** @throws where other questions are asked by now, or the browser denies its storage */
async function open(id: string, item: number): Promise<Opened | undefined> {
  const taken = await readTaken(id);
  const paper = taken?.papers.find((each) => each.item === item);
  const kept = taken?.keptPapers.find((each) => each.item === item && each.ended === undefined);
  if (taken === undefined || paper === undefined || kept === undefined) return undefined;
  if (!isAt(kept, paper)) throw new Error('other questions');
  return { taken, paper, kept };
}

function AtWork({ opened }: { readonly opened: Opened }) {
  const { taken, paper, kept } = opened;
  const { sheet, stored, deadline, open, choose, flag, end } = useSheet(taken, paper, kept);
  const items = useItems(paper, firstOpen(kept.choices));
  const title = paperTitle(paper.setting);
  const home = assignedHref(taken.assigned.id);
  useTitle(title);
  const finish = useCallback(
    async (how: 'closed' | 'timeOver') => {
      // What the browser would not keep is not called over: the page says so, and it may be tried again.
      if ((await end(how)) === 'kept') go(home, true);
    },
    [end, home],
  );
  const onOver = useCallback(() => void finish('timeOver'), [finish]);
  return (
    <>
      <BackHead />
      <main class="sheet drills exams take-paper">
        <h1 tabIndex={-1}>{title}</h1>
        {stored !== 'kept' && <p role="alert">{t(stored === 'full' ? 'keeping:full' : 'app:notKept')}</p>}
        <SheetView
          items={items}
          choices={sheet.choices}
          flagged={sheet.flagged}
          open={open}
          clock={deadline !== undefined && <dl>{<Countdown deadline={deadline} onOver={onOver} />}</dl>}
          onChoose={choose}
          onFlag={flag}
          onEnd={() => void finish('closed')}
        />
        <p>
          <a class="button" href={home}>
            {t('take:back')}
          </a>
        </p>
      </main>
    </>
  );
}
