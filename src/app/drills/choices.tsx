import type { BenchView } from '../../attempt/view.ts';
import type { Item } from '../../drills/item.ts';
import { t } from '../words.ts';
import { saidText } from './said-text.ts';

interface Props {
  readonly item: Item;
  readonly view: BenchView;
  readonly chosen: number | undefined;
  /** Which was right is told. */
  readonly told: boolean;
  readonly onChoose: (choice: number) => void;
}

/** The choices, under one another; once told, the right one and the wrong one that was chosen are marked in words and by their frames. */
export function Choices({ item, view, chosen, told, onChoose }: Props) {
  return (
    <ol class="drill-choices">
      {item.choices.map((choice, place) => {
        const mark = !told ? '' : place === item.right ? 'right' : place === chosen ? 'wrong' : '';
        return (
          <li key={saidText(view, choice.said)}>
            <button
              type="button"
              class="drill-choice"
              data-mark={mark}
              aria-pressed={place === chosen}
              disabled={told && mark === ''}
              onClick={() => onChoose(place)}
            >
              <span class="drill-key" aria-hidden="true">
                {mark === 'right' ? '✓' : mark === 'wrong' ? '✕' : place + 1}
              </span>
              <span class="drill-said">
                <span>{saidText(view, choice.said)}</span>
                {mark !== '' && <b class="drill-mark">{t(mark === 'right' ? 'drill:page.isRight' : 'drill:page.wrong')}</b>}
              </span>
            </button>
          </li>
        );
      })}
    </ol>
  );
}
