import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import type { Item } from '../../drills/item.ts';
import { Ending } from '../drills/ending.tsx';
import { ItemView } from '../drills/item-view.tsx';
import { PlacesNav } from '../drills/places-nav.tsx';
import { TurnBar } from '../drills/turn-bar.tsx';
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
  const undone = items.filter((each, place) => each !== null && choices[place] === null).length;
  const places = choices.map((choice, place) => ({
    words: number(place + 1),
    done: choice !== null,
    flagged: flagged.includes(place),
  }));
  return (
    <div class="exam-paper">
      <div class="drill-bar exam-bar">
        <p>{t('drill:exam.place', { at: number(at + 1), of: number(items.length) })}</p>
        {props.clock}
        <button type="button" class="button" onClick={() => setEnding(true)}>
          {t('take:paper.end')}
        </button>
      </div>
      {ending ? (
        <Ending title={t('take:paper.sure')} questions={undone} onGoOn={() => setEnding(false)} onEnd={props.onEnd} />
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
      <TurnBar
        at={at}
        places={items.length}
        flagged={flagged.includes(at)}
        main={!open}
        onFlag={() => props.onFlag(at)}
        onGo={turnTo}
      />
      <PlacesNav places={places} at={at} onGo={turnTo} />
    </div>
  );
}
