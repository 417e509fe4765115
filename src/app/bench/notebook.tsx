import { useEffect, useRef } from 'preact/hooks';
import { readingWords, type StepTold } from '../step-words.ts';
import { placeName, readingText, t } from '../words.ts';
import { readingsOf } from './readings.ts';

/** Every reading of the job, newest last, as a technician would jot it down. */
export function Notebook({ told }: { readonly told: readonly StepTold[] }) {
  const list = useRef<HTMLOListElement>(null);
  const readings = readingsOf(told);
  useEffect(() => {
    // Only the list itself: the map beside it must stay where it is.
    if (list.current !== null) list.current.scrollTop = list.current.scrollHeight;
  }, [readings.length]);
  return (
    <section class="notebook" aria-labelledby="notebook-title">
      <h2 id="notebook-title">{t('app:notebook.title')}</h2>
      {readings.length === 0 ? (
        <p class="quiet">{t('app:notebook.empty')}</p>
      ) : (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by the keyboard
        <ol ref={list} tabIndex={0} aria-labelledby="notebook-title">
          {readings.map((each) => (
            <li key={each.step.number}>
              <span class="notebook-what">
                {readingWords(each)}
                <small>{t('app:notebook.where', { place: placeName(each.step.place), step: each.step.number })}</small>
              </span>
              <span class="notebook-reading">{each.step.reading !== undefined && readingText(each.step.reading)}</span>
            </li>
          ))}
        </ol>
      )}
    </section>
  );
}
