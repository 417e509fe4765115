import { useEffect, useRef } from 'preact/hooks';
import type { BenchView, StepView } from '../../attempt/view.ts';
import type { Bench } from '../use-attempt.ts';
import { doneText, readingText, readingWords, t } from '../words.ts';

const SHOWN = 24;

/** The last steps with what they read, and the ways to let time pass. */
export function Strip({ bench }: { readonly bench: Bench }) {
  const { view } = bench;
  const list = useRef<HTMLOListElement>(null);
  useEffect(() => {
    if (list.current !== null) list.current.scrollLeft = list.current.scrollWidth;
  }, [view.steps.length]);
  const last = view.steps.at(-1);
  return (
    <footer class="strip">
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by the keyboard */}
      <ol class="strip-steps" ref={list} aria-label={t('app:strip.steps')} tabIndex={0}>
        {view.steps.slice(-SHOWN).map((step) => (
          <li key={step.number} class={step === last ? 'last' : undefined}>
            <StepChip view={view} step={step} />
          </li>
        ))}
      </ol>
      <fieldset class="strip-waits" aria-label={t('app:strip.waits')}>
        <button type="button" class="button" onClick={() => bench.act({ name: 'wait', seconds: 15 })}>
          {t('app:strip.wait15')}
        </button>
        <button type="button" class="button" onClick={() => bench.act({ name: 'wait', seconds: 300 })}>
          {t('app:strip.wait300')}
        </button>
        <button type="button" class="button" onClick={() => bench.act({ name: 'watch', seconds: 0 })}>
          {t('app:strip.watch')}
        </button>
      </fieldset>
    </footer>
  );
}

function StepChip({ view, step }: { readonly view: BenchView; readonly step: StepView }) {
  const talk = step.action.name === 'name' || step.action.name === 'close';
  const measured = !talk && step.reading !== undefined && step.reading.kind !== 'blank';
  return (
    <>
      {measured ? readingWords(view, step) : doneText(view, step.action)}
      {measured && ': '}
      {measured && <b>{readingText(step.reading)}</b>}
    </>
  );
}
