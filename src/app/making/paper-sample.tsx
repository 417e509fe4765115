import '../css/drills.css';
import { useEffect, useMemo, useState } from 'preact/hooks';
import type { Assignment, PaperSetting } from '../../classroom/assignment.ts';
import { papersOf } from '../../classroom/papers.ts';
import type { Item } from '../../drills/item.ts';
import { Dialog } from '../bench/dialog.tsx';
import { drawQuestion } from '../drills/draw-question.ts';
import { ItemView } from '../drills/item-view.tsx';
import { library } from '../library.ts';
import { paperTitle } from '../paper-words.ts';
import { t } from '../words.ts';

interface Props {
  readonly assignment: Assignment;
  readonly setting: PaperSetting;
  readonly onDone: () => void;
}

/** Questions as somebody may get them, with their answers, for whoever sets them. */
export function PaperSample({ assignment, setting, onDone }: Props) {
  const questions = useMemo(
    () => papersOf({ ...assignment, items: [], papers: [setting] }, 'sample', library)[0]?.questions ?? [],
    [assignment, setting],
  );
  const [at, setAt] = useState(0);
  const [item, setItem] = useState<Item | 'failed'>();
  const [chosen, setChosen] = useState<number>();
  const question = questions[at];
  useEffect(() => {
    if (question === undefined) return undefined;
    let current = true;
    setItem(undefined);
    setChosen(undefined);
    drawQuestion(question).then(
      (drawn) => current && (drawn === null ? setAt((before) => before + 1) : setItem(drawn)),
      () => current && setItem('failed'),
    );
    return () => {
      current = false;
    };
  }, [question]);
  const next = () => (at + 1 < questions.length ? setAt(at + 1) : onDone());
  return (
    <Dialog title={paperTitle(setting)} onDone={onDone}>
      <p>{t('builder:papers.sample')}</p>
      {item === 'failed' ? (
        <p role="alert">{t('drill:page.failed')}</p>
      ) : item === undefined ? (
        <p role="status">{question === undefined ? t('builder:papers.over') : t('drill:page.drawing')}</p>
      ) : (
        <div class="drills">
          <ItemView
            key={`${item.kind} ${item.number}`}
            item={item}
            chosen={chosen}
            onChoose={(choice) => setChosen((before) => before ?? choice)}
            onNext={next}
          />
        </div>
      )}
    </Dialog>
  );
}
