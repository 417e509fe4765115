import { useEffect, useMemo, useState } from 'preact/hooks';
import '../css/drills.css';
import '../css/take.css';
import type { QuestionFace } from '../../classroom/paperProtocol.ts';
import type { Item } from '../../drills/item.ts';
import { paperTitle } from '../paper-words.ts';
import { useTitle } from '../shell.tsx';
import { SheetView } from '../taking/sheet-view.tsx';
import { number, t } from '../words.ts';
import { failureText } from './api.ts';
import { PauseCover, TimeLeft } from './notices.tsx';
import { itemOfFace } from './paper-item.ts';
import { SeatHead } from './seat-head.tsx';
import type { OpenPaper, Seat, SeatState } from './seat-state.ts';
import { useStore } from './store.ts';

const titleOf = ({ assignments }: SeatState, { assignment, item }: OpenPaper): string => {
  const listed = assignments.find(({ id }) => id === assignment)?.papers.find((each) => each.item === item);
  return listed === undefined ? t('lab:title') : paperTitle(listed.setting);
};

/** Exercises or an exam whose questions the host asks; after the end, that it is handed in. */
export function LabPaper({ seat }: { readonly seat: Seat }) {
  const state = useStore(seat);
  const { paper, failed } = state;
  useTitle(t('lab:title'));
  if (paper === undefined) return null;
  return (
    <>
      <SeatHead seat={seat} />
      <main class="sheet drills lab-paper">
        <div class="lab-row">
          <h1 tabIndex={-1}>{titleOf(state, paper)}</h1>
          <button type="button" class="button" onClick={seat.leave}>
            {t('lab:toList')}
          </button>
        </div>
        <div role="alert">{failed !== undefined && <p class="lab-wrong">{failureText(failed)}</p>}</div>
        {paper.over === undefined ? (
          <Questions key={`${paper.assignment} ${paper.item} ${paper.number}`} seat={seat} paper={paper} />
        ) : (
          <Over paper={paper} how={paper.over} />
        )}
      </main>
      <PauseCover seat={seat} />
    </>
  );
}

function Over({ paper, how }: { readonly paper: OpenPaper; readonly how: 'closed' | 'timeOver' }) {
  const answered = paper.choices.filter((choice) => choice !== null).length;
  useEffect(() => document.querySelector<HTMLElement>('#paper-over')?.focus(), []);
  return (
    <section class="slip" aria-labelledby="paper-over">
      <h2 id="paper-over" tabIndex={-1}>
        {t(how === 'closed' ? 'lab:done.title' : 'lab:over.timeOver')}
      </h2>
      <p>{t('lab:paper.answered', { answered: number(answered), of: number(paper.choices.length) })}</p>
      <p>{t('lab:paper.withInstructor')}</p>
    </section>
  );
}

const drawn = new WeakMap<QuestionFace, Item>();

/** The same item for the same face: what is drawn of it stays. */
function itemFor(face: QuestionFace, place: number): Item {
  const known = drawn.get(face) ?? itemOfFace(face, place);
  drawn.set(face, known);
  return known;
}

function Questions({ seat, paper }: { readonly seat: Seat; readonly paper: OpenPaper }) {
  const [flagged, setFlagged] = useState<readonly number[]>([]);
  const { faces, choices, sent } = paper;
  const items = useMemo(() => faces.map((face, place) => face && itemFor(face, place)), [faces]);
  const shown = choices.map((choice, place) => (sent?.question === place ? sent.choice : choice));
  return (
    <SheetView
      items={items}
      choices={shown}
      flagged={flagged}
      open={false}
      clock={
        <dl class="exam-clock">
          <TimeLeft seat={seat} />
        </dl>
      }
      onChoose={seat.choose}
      onFlag={(place) => setFlagged((all) => (all.includes(place) ? all.filter((each) => each !== place) : [...all, place]))}
      onTurn={seat.turnTo}
      onEnd={seat.handIn}
    />
  );
}
