import { useState } from 'preact/hooks';
import { encodeShared } from '../sharing.ts';
import { t } from '../words.ts';
import { whyNot } from './error-text.ts';
import { isOnlyHere } from './reach.ts';
import { save } from './save.ts';

interface Props {
  /** What is handed on; undefined while it does not stand. */
  readonly json: object | undefined;
  readonly name: string;
  /** The page that a link opens it on. */
  readonly page: 'play' | 'take';
}

/** Saves it as a file, or makes a link of it. */
export function HandOn({ json, name, page }: Props) {
  const [link, setLink] = useState<{ readonly of: object; readonly href: string; readonly said: string }>();
  const shown = link?.of === json ? link : undefined;
  const make = async (of: object) => {
    try {
      const href = `${location.href.split('#')[0]}#/${page}/${encodeShared(of)}`;
      const copied = await navigator.clipboard?.writeText(href).then(
        () => true,
        () => false,
      );
      const how = copied === true ? 'copied' : 'made';
      setLink({ of, href, said: t(isOnlyHere(location) ? `builder:link.onlyHere.${how}` : `builder:link.${how}`) });
    } catch (error) {
      setLink({ of, href: '', said: whyNot(error) });
    }
  };
  return (
    <>
      <div class="make-buttons">
        <button
          type="button"
          class="button"
          disabled={json === undefined}
          onClick={() =>
            json && save(new Blob([`${JSON.stringify(json, null, 2)}\n`], { type: 'application/json' }), `${name}.json`)
          }
        >
          {t('builder:save')}
        </button>
        <button type="button" class="button" disabled={json === undefined} onClick={() => json && void make(json)}>
          {t('builder:link.make')}
        </button>
      </div>
      <p role="status">{shown?.said}</p>
      {shown !== undefined && shown.href !== '' && (
        <input
          class="make-link"
          readOnly
          aria-label={t('builder:link.label')}
          value={shown.href}
          onFocus={(event) => event.currentTarget.select()}
        />
      )}
    </>
  );
}
