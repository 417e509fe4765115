import { useEffect, useRef } from 'preact/hooks';
import type { Action } from '../../attempt/actions.ts';
import { useMarks } from '../guided/marks.ts';
import { noticedShort, readingWords, type StepTold } from '../step-words.ts';
import type { Bench } from '../use-attempt.ts';
import { readingText, t } from '../words.ts';

const SHOWN = 24;

const WAITS: readonly { readonly key: string; readonly action: Action }[] = [
  { key: 'wait15', action: { name: 'wait', seconds: 15 } },
  { key: 'wait300', action: { name: 'wait', seconds: 300 } },
  { key: 'watch', action: { name: 'watch', seconds: 0 } },
];

interface Props {
  readonly bench: Bench;
  readonly onHint: () => void;
}

/** The last steps with what they read, the way to a hint where there is one, and the ways to let time pass. */
export function Strip({ bench, onHint }: Props) {
  const { told } = bench;
  const marks = useMarks();
  const list = useRef<HTMLOListElement>(null);
  useEffect(() => {
    if (list.current !== null) list.current.scrollLeft = list.current.scrollWidth;
  }, [told.length]);
  const last = told.at(-1);
  return (
    <footer class="strip">
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by the keyboard */}
      <ol class="strip-steps" ref={list} aria-label={t('app:strip.steps')} tabIndex={0}>
        {told.slice(-SHOWN).map((each) => (
          <li key={each.step.number} class={each === last ? 'last' : undefined}>
            <StepChip told={each} />
          </li>
        ))}
      </ol>
      {bench.whole !== undefined && bench.whole.mode !== 'graded' && bench.view.phase === 'working' && !bench.free && (
        <button type="button" class="button strip-hint" onClick={onHint}>
          {t('app:hint.open')}
        </button>
      )}
      <fieldset class="strip-waits" aria-label={t('app:strip.waits')}>
        {WAITS.map(({ key, action }) => (
          <button key={key} type="button" class="button" data-marked={marks.does(action)} onClick={() => bench.act(action)}>
            {t(`app:strip.${key}`)}
          </button>
        ))}
      </fieldset>
    </footer>
  );
}

function StepChip({ told }: { readonly told: StepTold }) {
  const { step, done, measured } = told;
  const seen = noticedShort(told, 1);
  if (measured === '' || step.reading === undefined) {
    const words = seen === '' ? done : t('app:strip.noticed', { done, noticed: seen });
    return <span title={words}>{words}</span>;
  }
  const words = readingWords(told);
  return (
    <>
      <span title={words}>{words}:</span> <b>{readingText(step.reading)}</b>
    </>
  );
}
