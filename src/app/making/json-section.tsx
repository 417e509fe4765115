import { useEffect, useState } from 'preact/hooks';
import { t } from '../words.ts';
import { whyNot } from './error-text.ts';
import { Slip } from './fields.tsx';

/** Longest text that is read, characters. */
export const MOST_CHARACTERS = 1_000_000;

interface Props {
  readonly json: object;
  /** Takes over what was typed. @throws DataError where it does not stand */
  readonly onText: (text: string) => void;
}

/** The data themselves, to be edited: everything that a file can say. */
export function JsonSection({ json, onText }: Props) {
  const now = JSON.stringify(json, null, 2);
  const [text, setText] = useState(now);
  const [said, setSaid] = useState('');
  useEffect(() => {
    setText(now);
    setSaid('');
  }, [now]);
  return (
    <Slip title={t('builder:json.title')} folded>
      <p>{t('builder:json.text')}</p>
      <textarea
        class="make-json"
        aria-label={t('builder:json.title')}
        spellcheck={false}
        rows={18}
        value={text}
        onInput={(event) => setText(event.currentTarget.value)}
      />
      <div class="make-buttons">
        <button
          type="button"
          class="button"
          disabled={text === now}
          onClick={() => {
            try {
              onText(text);
              setSaid(t('builder:json.taken'));
            } catch (error) {
              setSaid(whyNot(error));
            }
          }}
        >
          {t('builder:json.take')}
        </button>
      </div>
      <p role="status">{said}</p>
    </Slip>
  );
}
