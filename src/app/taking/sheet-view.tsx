import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import type { Item } from '../../drills/item.ts';
import { ItemView } from '../drills/item-view.tsx';
import { number, t } from '../words.ts';

interface Props {
  /** By question; null where there is nothing to ask, undefined while it is drawn. */
  readonly items: readonly (Item | null | undefined)[];
  /** By question; null where nothing is chosen. */
  readonly choices: readonly (number | null)[];
  readonly flagged: readonly number[];
  /** Whether each answer is told at once. */
  readonly open: boolean;
  /** What is left of the time. */
  readonly clock: ComponentChildren;
  readonly onChoose: (place: number, choice: number) => void;
  readonly onFlag: (place: number) => void;
  readonly onEnd: () => void;
  /** Another question is on the screen. */
  readonly onTurn?: (place: number) => void;
}

/** The place where one goes on: the first question without an answer. */
export const firstOpen = (choices: Props['choices']): number => Math.max(0, choices.indexOf(null));

/** The questions of a paper, one at a time, each with its place below. */
export function SheetView(props: Props) {
  const { items, choices, flagged, open, onChoose } = props;
  const [at, setAt] = useState(() => firstOpen(choices));
  const [ending, setEnding] = useState(false);
  const item = items[at];
  const last = items.length - 1;
  const turnTo = (to: number) => {
    const place = Math.max(0, Math.min(last, to));
    setEnding(false);
    setAt(place);
    props.onTurn?.(place);
  };
  return (
    <>
      <div class="drill-bar exam-bar">
        <p>{t('drill:exam.place', { at: number(at + 1), of: number(items.length) })}</p>
        {props.clock}
        <button type="button" class="button" onClick={() => setEnding(true)}>
          {t('take:paper.end')}
        </button>
      </div>
      {ending ? (
        <Ending items={items} choices={choices} onEnd={props.onEnd} onBack={() => setEnding(false)} />
      ) : item === undefined ? (
        <p role="status">{t('drill:page.drawing')}</p>
      ) : item === null ? (
        <p class="slip">{t('drill:exam.nothing')}</p>
      ) : (
        <ItemView
          key={`${item.kind} ${item.number}`}
          item={item}
          chosen={choices[at] ?? undefined}
          onChoose={(choice) => onChoose(at, choice)}
          onNext={() => (at === last ? setEnding(true) : turnTo(at + 1))}
          quiet={!open}
        />
      )}
      <div class="drill-do">
        <button type="button" class="button" disabled={at === 0} onClick={() => turnTo(at - 1)}>
          {t('drill:exam.before')}
        </button>
        <button type="button" class="button" aria-pressed={flagged.includes(at)} onClick={() => props.onFlag(at)}>
          {t('drill:exam.flag')}
        </button>
        <button type="button" class={open ? 'button' : 'button act'} disabled={at === last} onClick={() => turnTo(at + 1)}>
          {t('take:paper.next')}
        </button>
      </div>
      <Places choices={choices} flagged={flagged} at={at} onTurn={turnTo} />
    </>
  );
}

type EndingProps = Pick<Props, 'items' | 'choices' | 'onEnd'> & { readonly onBack: () => void };

function Ending({ items, choices, onEnd, onBack }: EndingProps) {
  const left = items.filter((each, place) => each !== null && choices[place] === null).length;
  return (
    <section class="slip" aria-labelledby="ending-title">
      <h2 id="ending-title">{t('take:paper.sure')}</h2>
      <p>{left === 0 ? t('drill:exam.allAnswered') : t('drill:exam.open', { count: left })}</p>
      <div class="drill-do">
        <button type="button" class="button act" onClick={onEnd}>
          {t('take:paper.endIt')}
        </button>
        <button type="button" class="button" onClick={onBack}>
          {t('drill:exam.goOn')}
        </button>
      </div>
    </section>
  );
}

type PlacesProps = Pick<Props, 'choices' | 'flagged'> & { readonly at: number; readonly onTurn: (place: number) => void };

function Places({ choices, flagged, at, onTurn }: PlacesProps) {
  return (
    <nav aria-label={t('drill:exam.questions')}>
      <ol class="exam-places">
        {choices.map((choice, place) => {
          const state = choice === null ? 'open' : 'answered';
          const isFlagged = flagged.includes(place);
          return (
            <li key={place}>
              <button
                type="button"
                class="button"
                aria-current={place === at ? 'true' : undefined}
                data-state={state}
                onClick={() => onTurn(place)}
              >
                {number(place + 1)}
                {isFlagged && <span aria-hidden="true"> ⚑</span>}
                <span class="unseen">
                  {t(`drill:exam.state.${state}`)}
                  {isFlagged && ` ${t('drill:exam.state.flagged')}`}
                </span>
              </button>
            </li>
          );
        })}
      </ol>
    </nav>
  );
}
