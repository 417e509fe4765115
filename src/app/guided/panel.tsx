import { useEffect } from 'preact/hooks';
import { t } from '../words.ts';
import type { Guide } from './ideas.ts';

interface Props {
  readonly guide: Guide;
  /** Whether what is marked may lie out of sight, in a list. */
  readonly far: boolean;
  readonly onLeave: () => void;
}

/** What is marked and can be seen, first that in a window over the bench. */
function markedElement(): HTMLElement | undefined {
  const marked = [...document.querySelectorAll<HTMLElement>('dialog [data-marked], [data-marked]')];
  return marked.find((each) => each.checkVisibility());
}

/** The guide: one idea at a time, what to do and why. It points, and does nothing. */
export function GuidePanel({ guide, far, onLeave }: Props) {
  const { id, action } = guide;
  useEffect(() => {
    if (far) markedElement()?.scrollIntoView({ block: 'nearest' });
  }, [far, id, action]);
  return (
    <section class="guided" aria-labelledby="guided-title" data-testid="guide" data-idea={id}>
      <div class="guided-words" aria-live="polite" aria-atomic="true">
        <h2 id="guided-title">
          {guide.number === undefined ? t('guided:title') : t('guided:count', { number: guide.number, of: guide.of })}
        </h2>
        <GuideWords guide={guide} />
      </div>
      <div class="guided-do">
        {far && action !== undefined && (
          <button type="button" class="button small" onClick={() => markedElement()?.focus()}>
            {t('guided:goThere')}
          </button>
        )}
        <button type="button" class="button small" onClick={onLeave}>
          {t('guided:leave')}
        </button>
      </div>
    </section>
  );
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
