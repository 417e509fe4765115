import { useEffect, useRef } from 'preact/hooks';
import { number, t } from '../words.ts';
import { CAUTIONS, type Caution, type DueCaution } from './use-cautions.ts';

interface Props {
  readonly due: DueCaution;
  readonly onRead: () => void;
}

/** One caution in the rail of wide screens, beside the work. Nothing waits for it. */
export function CautionCard({ due, onRead }: Props) {
  const { caution } = due;
  const words = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (words.current !== null) words.current.scrollTop = 0;
  }, [caution]);
  return (
    <section class="caution caution-card" aria-labelledby="caution-card" data-caution={caution} data-ready={due.ready}>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by the keyboard */}
      <div class="caution-words" role="status" tabIndex={0} ref={words}>
        <Count due={due} />
        <h2 id="caution-card">{t(`cautions:${caution}.title`)}</h2>
        <CautionText caution={caution} />
      </div>
      <Read ready={due.ready} onRead={onRead} />
    </section>
  );
}

/** The same on small screens: a line over the work, that opens to be read and then goes. */
export function CautionStrip({ due, onRead }: Props) {
  const { caution } = due;
  return (
    <section key={caution} class="caution-over" aria-label={t(`cautions:${caution}.title`)}>
      <details class="caution caution-strip" data-caution={caution} data-ready={due.ready}>
        <summary>
          <span role="status">
            {t(`cautions:${caution}.title`)} <Count due={due} />
          </span>
        </summary>
        <CautionText caution={caution} />
        <Read ready={due.ready} onRead={onRead} />
      </details>
    </section>
  );
}

/** Which of several it is; nothing for one alone. */
function Count({ due }: Pick<Props, 'due'>) {
  if (due.of < 2) return null;
  return <span class="caution-count">{t('cautions:count', { number: number(due.number), of: number(due.of) })}</span>;
}

function Read({ ready, onRead }: Pick<DueCaution, 'ready'> & Pick<Props, 'onRead'>) {
  return (
    <button type="button" class="button small" aria-disabled={!ready} onClick={onRead}>
      {t('cautions:read')}
    </button>
  );
}

function CautionText({ caution }: { readonly caution: Caution }) {
  return (
    <>
      <p>{t(`cautions:${caution}.text`)}</p>
      <p class="caution-source">{t(`cautions:${caution}.source`)}</p>
    </>
  );
}

/** All of them, to be read again. */
export function CautionList() {
  return (
    <section class="caution-list" aria-labelledby="cautions-again">
      <h3 id="cautions-again">{t('cautions:title')}</h3>
      {CAUTIONS.map((each) => (
        <div key={each}>
          <h4>{t(`cautions:${each}.title`)}</h4>
          <CautionText caution={each} />
        </div>
      ))}
    </section>
  );
}
