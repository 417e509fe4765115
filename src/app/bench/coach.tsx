import { useEffect } from 'preact/hooks';
import type { Section } from '../../parts/part.ts';
import { SECTIONS } from '../../parts/part.ts';
import type { StillPossible } from '../../suspects/possible.ts';
import { useAnswer } from '../engine/use-answer.ts';
import type { Bench } from '../use-attempt.ts';
import { listed, number, t, thingName } from '../words.ts';

interface SectionLeft {
  readonly section: Section;
  readonly count: number;
  readonly parts: readonly StillPossible[];
}

/** What the coach knows after the last step; undefined where nobody is coached, and once the fault is named. */
export interface Coach {
  readonly sections: readonly SectionLeft[];
  /** Faults still possible; undefined until the first answer. */
  readonly count: number | undefined;
  readonly state: 'busy' | 'ready' | 'failed';
  readonly retry: () => void;
}

/** Asks after each step what is still possible. The page does not wait for it. */
export function useCoach(bench: Bench): Coach | undefined {
  const { view, whole, rig } = bench;
  const { answer, state, ask } = useAnswer(whole, rig, 'possible');
  const coached = whole?.mode === 'coached' && !bench.free;
  const searching = view.phase === 'working';
  const retry = () => void ask({ actions: view.steps.map((step) => step.action) });
  useEffect(() => {
    if (coached && searching) retry();
  }, [coached, searching, view.steps.length, ask]);
  // What is still possible is no question any more once the fault has been named.
  if (!coached || !searching) return undefined;
  const sections = SECTIONS.map((section): SectionLeft => {
    const parts = (answer ?? []).filter((each) => each.section === section);
    return { section, parts, count: parts.reduce((sum, each) => sum + each.count, 0) };
  });
  const count = answer?.reduce((sum, each) => sum + each.count, 0);
  return { sections, count, state: state === 'idle' ? 'busy' : state, retry };
}

/** Where the fault may still be, by section and by part. It never says what may be wrong there. */
export function CoachPanel({ coach }: { readonly coach: Coach }) {
  const { sections, count, state } = coach;
  return (
    <section class="coach" aria-labelledby="coach-title" aria-busy={state === 'busy'} data-testid="coach">
      <h2 id="coach-title">
        {t('app:coach.title')}
        {state === 'busy' && <span class="coach-busy">{t('app:coach.busy')}</span>}
      </h2>
      {state === 'failed' && (
        <div role="alert" class="coach-failed">
          <p>{t('app:coach.failed')}</p>
          <button type="button" class="button small" onClick={coach.retry}>
            {t('app:coach.retry')}
          </button>
        </div>
      )}
      {count !== undefined && state !== 'failed' && (
        <ul class="coach-sections">
          {sections.map((each) => (
            <SectionRow key={each.section} left={each} of={count} />
          ))}
        </ul>
      )}
      {count === 1 && state === 'ready' && <p class="quiet">{t('app:coach.settled')}</p>}
      <p class="unseen" role="status">
        {state === 'ready' && count !== undefined && saidText(sections, count)}
      </p>
    </section>
  );
}

function SectionRow({ left, of }: { readonly left: SectionLeft; readonly of: number }) {
  const row = (
    <>
      <span>{t(`app:section.${left.section}`)}</span>
      <span class="coach-bar" aria-hidden="true">
        <span style={{ width: `${(100 * left.count) / Math.max(1, of)}%` }} />
      </span>
      <b>{number(left.count)}</b>
    </>
  );
  if (left.count === 0)
    return (
      <li class="coach-row coach-none" data-section={left.section}>
        {row}
      </li>
    );
  return (
    <li data-section={left.section}>
      <details>
        <summary class="coach-row">{row}</summary>
        <ul class="coach-parts">
          {left.parts.map((part) => (
            <li key={part.target}>
              <span>{thingName(part.target)}</span>
              <b>{number(part.count)}</b>
            </li>
          ))}
        </ul>
      </details>
    </li>
  );
}

function saidText(sections: readonly SectionLeft[], count: number): string {
  const named = sections
    .filter((each) => each.count > 0)
    .map((each) => t('app:coach.saidSection', { section: t(`app:section.${each.section}`), count: each.count }));
  return t('app:coach.said', { count, sections: listed(named) });
}
