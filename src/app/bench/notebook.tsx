import { useEffect, useRef } from 'preact/hooks';
import type { BenchView } from '../../attempt/view.ts';
import { placeName, readingText, readingWords, t } from '../words.ts';
import { readingsOf } from './readings.ts';

/** Every reading of the job, newest last, as a technician would jot it down. */
export function Notebook({ view }: { readonly view: BenchView }) {
  const list = useRef<HTMLOListElement>(null);
  const readings = readingsOf(view);
  useEffect(() => {
    list.current?.lastElementChild?.scrollIntoView?.({ block: 'nearest' });
  }, [readings.length]);
  return (
    <section class="notebook" aria-labelledby="notebook-title">
      <h2 id="notebook-title">{t('app:notebook.title')}</h2>
      {readings.length === 0 ? (
        <p class="quiet">{t('app:notebook.empty')}</p>
      ) : (
        <ol ref={list}>
          {readings.map((step) => (
            <li key={step.number}>
              <span class="notebook-what">
                {readingWords(view, step)}
                <small>{t('app:notebook.where', { place: placeName(step.place), step: step.number })}</small>
              </span>
              <span class="notebook-reading">{step.reading !== undefined && readingText(step.reading)}</span>
            </li>
          ))}
        </ol>
      )}
    </section>
  );
}
