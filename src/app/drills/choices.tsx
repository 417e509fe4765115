import type { BenchView } from '../../attempt/view.ts';
import type { Item } from '../../drills/item.ts';
import type { Said } from '../../drills/said.ts';
import { number, t } from '../words.ts';
import { saidText, stepsText } from './said-text.ts';

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
                <ChoiceText view={view} said={choice.said} />
                {mark !== '' && <b class="drill-mark">{t(mark === 'right' ? 'drill:page.isRight' : 'drill:page.wrong')}</b>}
              </span>
            </button>
          </li>
        );
      })}
    </ol>
  );
}

/** What a choice says; steps one after another stand under one another. */
function ChoiceText({ view, said }: { readonly view: BenchView; readonly said: Said }) {
  const steps = stepsText(view, said);
  if (steps === undefined) return <span>{saidText(view, said)}</span>;
  return (
    <>
      {steps.map((step, index) => (
        <span key={step + index} class="drill-step">
          {number(index + 1)}. {step}{' '}
        </span>
      ))}
    </>
  );
}
