import type { Bench } from '../use-attempt.ts';
import { listed, namingText, t, thingName } from '../words.ts';

/** Over the circuit of a debrief: what is wrong with it, and what may be done about that. */
export function FreeBar({ bench, onRestart }: { readonly bench: Bench; readonly onRestart: () => void }) {
  const { view } = bench;
  const faults = bench.whole?.faults ?? [];
  const right = new Set(view.steps.flatMap((step) => (step.action.name === 'replace' ? [step.action.target] : [])));
  return (
    <section class="prove" aria-labelledby="free-title">
      <div>
        <h2 id="free-title">
          {faults.length === 0 ? t('app:live.sound') : t('app:live.fault', { fault: listed(faults.map(namingText)) })}
        </h2>
        <p>{t('app:live.text')}</p>
      </div>
      <div class="prove-do">
        {faults
          .filter((fault) => !right.has(fault.target))
          .map((fault) => (
            <button
              key={fault.target}
              type="button"
              class="button"
              onClick={() => bench.act({ name: 'replace', target: fault.target })}
            >
              {t('app:live.right', { target: thingName(fault.target) })}
            </button>
          ))}
        <button type="button" class="button" onClick={onRestart}>
          {t('app:live.afresh')}
        </button>
      </div>
    </section>
  );
}
