import { useState } from 'preact/hooks';
import type { Kept } from '../storage.ts';
import { number, t } from '../words.ts';

interface Props {
  readonly words: string;
  /** The longest that are kept, characters. */
  readonly most: number;
  /** Keeps them; undefined where there is no record to keep them with. */
  readonly keep: ((words: string) => Promise<Kept>) | undefined;
}

/** What the trainee adds in their own words: kept with every letter, and on paper as much as there is of it. */
export function OwnWords({ words: before, most, keep }: Props) {
  const [words, setWords] = useState(before);
  const [kept, setKept] = useState<Kept>('kept');
  const write = (next: string) => {
    setWords(next);
    void keep?.(next).then(setKept);
  };
  return (
    <section aria-labelledby="report-words">
      <h2 id="report-words">{t('report:words.title')}</h2>
      <div class="report-writing">
        <p id="report-words-hint">{t('report:words.hint', { most: number(most) })}</p>
        <textarea
          aria-labelledby="report-words"
          aria-describedby="report-words-hint"
          rows={6}
          maxLength={most}
          value={words}
          onInput={(event) => write(event.currentTarget.value)}
        />
        <p class="report-count">{t('report:words.count', { used: number(words.length), most: number(most) })}</p>
        {keep === undefined && <p role="alert">{t('report:words.lost')}</p>}
        {kept !== 'kept' && <p role="alert">{t(kept === 'full' ? 'keeping:full' : 'keeping:denied')}</p>}
      </div>
      {/* A box for typing prints no more than it shows: on paper the words stand by themselves, or lines to write on. */}
      <p class={words.trim() === '' ? 'report-lines' : 'report-words'} aria-hidden="true">
        {words}
      </p>
    </section>
  );
}
