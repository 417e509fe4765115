import { useEffect, useRef, useState } from 'preact/hooks';
import { useMarks } from '../guided/marks.ts';
import type { Bench } from '../use-attempt.ts';
import { namingText, t, thingName } from '../words.ts';

/** After the naming: what is still to do, and the part or wire to put right. */
export function ProveBar({ bench }: { readonly bench: Bench }) {
  const { view, options } = bench;
  const { next, does } = useMarks();
  const title = useRef<HTMLHeadingElement>(null);
  useEffect(() => title.current?.focus(), []);
  const named = view.steps.findLast((step) => step.action.name === 'name')?.action;
  const targets = options.flatMap((each) => (each.name === 'replace' ? [each.target] : []));
  const first = named?.name === 'name' ? named.target : '';
  const [target, setTarget] = useState(first);
  if (named?.name !== 'name') return null;
  const offered = [...new Set([first, ...targets])].sort((a, b) => thingName(a).localeCompare(thingName(b)));
  const replaced = view.steps.flatMap((step) => (step.action.name === 'replace' ? [thingName(step.action.target)] : []));
  return (
    <section class="prove" aria-labelledby="prove-title">
      <div>
        <h2 id="prove-title" ref={title} tabIndex={-1}>
          {t('app:prove.title', { fault: namingText(named) })}
        </h2>
        <p>{replaced.length === 0 ? t('app:prove.repair') : t('app:prove.run', { parts: replaced.join(', ') })}</p>
      </div>
      <div class="prove-do">
        <label for="prove-target" class="unseen">
          {t('app:prove.which')}
        </label>
        <select
          id="prove-target"
          value={target}
          data-marked={(next?.name === 'replace' && next.target !== target) || undefined}
          onChange={(event) => setTarget(event.currentTarget.value)}
        >
          {offered.map((each) => (
            <option key={each} value={each}>
              {thingName(each)}
            </option>
          ))}
        </select>
        <button
          type="button"
          class={replaced.length === 0 ? 'button act' : 'button'}
          data-marked={does({ name: 'replace', target })}
          onClick={() => bench.act({ name: 'replace', target })}
        >
          {t('app:prove.replace')}
        </button>
      </div>
    </section>
  );
}
