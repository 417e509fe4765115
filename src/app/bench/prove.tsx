import { useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks';
import { SECTIONS } from '../../parts/part.ts';
import { namingsOf } from '../../suspects/hypotheses.ts';
import { useMarks } from '../guided/marks.ts';
import type { Bench } from '../use-attempt.ts';
import { namingText, t, thingName } from '../words.ts';

/** After the naming: what is still to do, and the part or wire to put right. */
export function ProveBar({ bench }: { readonly bench: Bench }) {
  const { view, options, rig } = bench;
  const { intermittents } = bench.naming;
  const { next, does } = useMarks();
  const title = useRef<HTMLHeadingElement>(null);
  useLayoutEffect(() => title.current?.focus(), []);
  const named = view.steps.findLast((step) => step.action.name === 'name')?.action;
  const targets = options.flatMap((each) => (each.name === 'replace' ? [each.target] : []));
  const first = named?.name === 'name' ? named.target : '';
  const [target, setTarget] = useState(first);
  const sections = useMemo(
    () => new Map(namingsOf(rig, { intermittents }).map((each) => [each.target, each.section])),
    [rig, intermittents],
  );
  if (named?.name !== 'name') return null;
  const offered = [...new Set([first, ...targets])].sort((a, b) => thingName(a).localeCompare(thingName(b)));
  // What cannot fail by itself belongs to the equipment it stands in.
  const groups = SECTIONS.map((section) => ({
    section,
    things: offered.filter((each) => (sections.get(each) ?? 'equipment') === section),
  })).filter((each) => each.things.length > 0);
  const replaced = view.steps.flatMap((step) => (step.action.name === 'replace' ? [thingName(step.action.target)] : []));
  return (
    <section class="prove" aria-labelledby="prove-title">
      <div>
        <h2 id="prove-title" ref={title} tabIndex={-1} title={t('app:prove.title', { fault: namingText(named) })}>
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
          {groups.map(({ section, things }) => (
            <optgroup key={section} label={t(`app:section.${section}`)}>
              {things.map((each) => (
                <option key={each} value={each}>
                  {thingName(each)}
                </option>
              ))}
            </optgroup>
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
