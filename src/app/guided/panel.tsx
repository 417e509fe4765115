import { useEffect, useRef, useState } from 'preact/hooks';
import { t } from '../words.ts';
import type { Guide } from './ideas.ts';

interface Props {
  readonly guide: Guide;
  /** Whether what is marked may lie out of sight, in a list. */
  readonly far: boolean;
  /** The customer's words, for the first idea. */
  readonly complaint: string;
  /** Whether the trainee is at it: a sheet is open, or a lead in the hand. */
  readonly busy: boolean;
  /** Whether other bars stand over the work besides: the reason then waits to be asked for. */
  readonly crowded: boolean;
  /** Closes the sheet that lies over the work. */
  readonly onUncover: () => void;
  readonly onLeave: () => void;
}

/** What is marked and can be seen, first that in a window over the bench. */
function markedElement(): HTMLElement | undefined {
  const marked = [...document.querySelectorAll<HTMLElement>('dialog [data-marked], [data-marked]')];
  return marked.find((each) => each.checkVisibility());
}

/** Brings into sight what is marked inside an element, when anything is. */
export function showMarkedIn(selector: string): void {
  const marked = [...document.querySelectorAll<HTMLElement>(`${selector} [data-marked]`)];
  marked.find((each) => each.checkVisibility())?.scrollIntoView({ block: 'nearest' });
}

/** The guide: one idea at a time, what to do and why. It points, and does nothing. */
export function GuidePanel({ guide, far, complaint, busy, crowded, onUncover, onLeave }: Props) {
  const { id, action } = guide;
  const [unfolded, setUnfolded] = useUnfolded(id, busy, crowded);
  useEffect(() => {
    if (far) markedElement()?.scrollIntoView({ block: 'nearest' });
  }, [far, id, action]);
  const goThere = () => {
    const marked = markedElement();
    if (marked?.closest('.work') != null) onUncover();
    // What lies under a sheet takes no focus until the sheet is gone.
    requestAnimationFrame(() => marked?.focus());
  };
  return (
    <section class="guided" aria-labelledby="guided-title" data-testid="guide" data-idea={id} data-folded={!unfolded}>
      <div class="guided-words" aria-live="polite" aria-atomic="true">
        <h2 id="guided-title">
          {guide.number === undefined ? t('guided:title') : t('guided:count', { number: guide.number, of: guide.of })}
        </h2>
        {guide.number === 1 && <blockquote class="guided-customer">{t('guided:customer', { complaint })}</blockquote>}
        <GuideWords guide={guide} />
        {guide.number === 1 && <p class="guided-why guided-more">{t('guided:possible')}</p>}
      </div>
      <div class="guided-do">
        {far && action !== undefined && (
          <button type="button" class="button small" onClick={goThere}>
            {t('guided:goThere')}
          </button>
        )}
        <button type="button" class="button small guided-fold" aria-expanded={unfolded} onClick={() => setUnfolded(!unfolded)}>
          {t('guided:why')}
        </button>
        <button type="button" class="button small" onClick={onLeave}>
          {t('guided:leave')}
        </button>
      </div>
    </section>
  );
}

/** Whether the reason stands open on a small screen: with each new idea, until the trainee sets about it. */
function useUnfolded(id: string, busy: boolean, crowded: boolean) {
  const [unfolded, setUnfolded] = useState(true);
  const before = useRef({ id, busy });
  useEffect(() => {
    if (id !== before.current.id) setUnfolded(!crowded);
    else if (busy && !before.current.busy) setUnfolded(false);
    before.current = { id, busy };
  }, [id, busy, crowded]);
  return [unfolded, setUnfolded] as const;
}

/** The idea in words. */
export function GuideWords({ guide: { id, note } }: { readonly guide: Guide }) {
  return (
    <>
      {note !== undefined && <p class="guided-note">{t(`guided:note.${note}`)}</p>}
      <p class="guided-what">{t(`guided:idea.${id}.what`)}</p>
      <p class="guided-why">{t(`guided:idea.${id}.why`)}</p>
    </>
  );
}
