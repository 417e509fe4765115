import { t } from '../words.ts';
import { CAUTIONS, type Caution } from './use-cautions.ts';

interface Props {
  readonly caution: Caution;
  readonly onRead: () => void;
}

/** One caution in the rail of wide screens, beside the work. Nothing waits for it. */
export function CautionCard({ caution, onRead }: Props) {
  return (
    <section class="caution caution-card" aria-labelledby="caution-card" data-caution={caution}>
      <div class="caution-words" role="status">
        <h2 id="caution-card">{t(`cautions:${caution}.title`)}</h2>
        <CautionText caution={caution} />
      </div>
      <Read onRead={onRead} />
    </section>
  );
}

/** The same on small screens: a line over the work, that opens to be read and then goes. */
export function CautionStrip({ caution, onRead }: Props) {
  return (
    <details key={caution} class="caution caution-strip" data-caution={caution}>
      <summary>
        <span role="status">{t(`cautions:${caution}.title`)}</span>
      </summary>
      <CautionText caution={caution} />
      <Read onRead={onRead} />
    </details>
  );
}

function Read({ onRead }: Pick<Props, 'onRead'>) {
  return (
    <button type="button" class="button small" onClick={onRead}>
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
