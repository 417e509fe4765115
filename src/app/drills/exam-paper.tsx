import { useState } from 'preact/hooks';
import type { Blueprint } from '../../drills/exam.ts';
import { clock, number, t } from '../words.ts';
import type { RunningExam } from './exam-keep.ts';
import { ItemView } from './item-view.tsx';
import { useExam } from './use-exam.ts';

interface Props {
  readonly blueprint: Blueprint;
  readonly start: RunningExam;
  readonly onOver: Parameters<typeof useExam>[2];
}

/** The questions, one at a time; each may be answered anew, flagged and come back to until the end. */
export function ExamPaper({ blueprint, start, onOver }: Props) {
  const exam = useExam(blueprint, start, onOver);
  const { items, running, left } = exam;
  const [at, setAt] = useState(0);
  const [ending, setEnding] = useState(false);
  const item = items[at];
  const open = items.filter((each, place) => each !== null && running.answers[place] === null).length;
  const drawn = items.every((each) => each !== undefined);
  const turn = (by: number) => setAt((now) => Math.max(0, Math.min(items.length - 1, now + by)));
  return (
    <>
      <div class="drill-bar exam-bar">
        <p>{t('drill:exam.place', { at: number(at + 1), of: number(items.length) })}</p>
        <p class="exam-clock">
          {t('drill:exam.left')} <b data-testid="time-left">{clock(Math.ceil(left))}</b>
        </p>
        <button type="button" class="button" onClick={() => setEnding(true)}>
          {t('drill:exam.end')}
        </button>
      </div>
      {exam.kept !== 'kept' && <p role="alert">{t(exam.kept === 'full' ? 'keeping:full' : 'app:notKept')}</p>}
      {ending && (
        <section class="slip" aria-labelledby="ending-title">
          <h2 id="ending-title">{t('drill:exam.sure')}</h2>
          <p>{open === 0 ? t('drill:exam.allAnswered') : t('drill:exam.open', { count: open })}</p>
          {!drawn && <p role="status">{t('drill:page.drawing')}</p>}
          <div class="drill-do">
            <button type="button" class="button act" disabled={!drawn} onClick={exam.finish}>
              {t('drill:exam.handIn')}
            </button>
            <button type="button" class="button" onClick={() => setEnding(false)}>
              {t('drill:exam.goOn')}
            </button>
          </div>
        </section>
      )}
      {item === undefined ? (
        <p role="status">{t('drill:page.drawing')}</p>
      ) : item === null ? (
        <p class="slip">{t('drill:exam.nothing')}</p>
      ) : (
        <ItemView
          key={`${item.kind} ${item.number}`}
          item={item}
          chosen={running.answers[at] ?? undefined}
          onChoose={(choice) => exam.answer(at, choice)}
          onNext={() => turn(1)}
          quiet
        />
      )}
      <div class="drill-do">
        <button type="button" class="button" disabled={at === 0} onClick={() => turn(-1)}>
          {t('drill:exam.before')}
        </button>
        <button type="button" class="button" aria-pressed={running.flagged.includes(at)} onClick={() => exam.flag(at)}>
          {t('drill:exam.flag')}
        </button>
        <button type="button" class="button act" disabled={at === items.length - 1} onClick={() => turn(1)}>
          {t('drill:page.next')}
        </button>
      </div>
      <nav aria-label={t('drill:exam.questions')}>
        <ol class="exam-places">
          {items.map((_, place) => {
            const state = running.answers[place] === null ? 'open' : 'answered';
            const flagged = running.flagged.includes(place);
            return (
              <li key={place}>
                <button
                  type="button"
                  class="button"
                  aria-current={place === at ? 'true' : undefined}
                  data-state={state}
                  onClick={() => setAt(place)}
                >
                  {number(place + 1)}
                  {flagged && <span aria-hidden="true"> ⚑</span>}
                  <span class="unseen">
                    {t(`drill:exam.state.${state}`)}
                    {flagged && ` ${t('drill:exam.state.flagged')}`}
                  </span>
                </button>
              </li>
            );
          })}
        </ol>
      </nav>
    </>
  );
}
