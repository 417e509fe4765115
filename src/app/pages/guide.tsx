import '../css/pages.css';
import '../css/guide.css';
import { METER_FUNCTIONS } from '../../meter/functions.ts';
import { BackHead, Cautions, useTitle } from '../shell.tsx';
import { t } from '../words.ts';

const LETTERS = ['R', 'C', 'W', 'Y', 'G', 'O', 'L'] as const;
const STEPS = ['1', '2', '3', '4', '5', '6'] as const;

/** One page to look things up on: what each function of the meter is for, what the letters mean, and the safe order of work. */
export function GuidePage() {
  useTitle(t('guide:title'));
  return (
    <>
      <BackHead />
      <main class="sheet guide">
        <h1 tabIndex={-1}>{t('guide:title')}</h1>
        <section class="slip" aria-labelledby="guide-meter">
          <h2 id="guide-meter">{t('guide:meter')}</h2>
          <dl class="guide-list">
            {METER_FUNCTIONS.filter((fn) => fn !== 'off').map((fn) => (
              <div key={fn}>
                <dt>{t(`meter:fn.${fn}`)}</dt>
                <dd>{t(`guide:fn.${fn}`)}</dd>
              </div>
            ))}
          </dl>
        </section>
        <section class="slip" aria-labelledby="guide-letters">
          <h2 id="guide-letters">{t('guide:terminals')}</h2>
          <dl class="guide-list guide-letters">
            {LETTERS.map((letter) => (
              <div key={letter}>
                <dt>{letter}</dt>
                <dd>{t(`guide:letter.${letter}`)}</dd>
              </div>
            ))}
          </dl>
          <p>{t('guide:facts')}</p>
        </section>
        <section class="slip" aria-labelledby="guide-safe">
          <h2 id="guide-safe">{t('guide:safe')}</h2>
          <ol>
            {STEPS.map((step) => (
              <li key={step}>{t(`guide:order.${step}`)}</li>
            ))}
          </ol>
          <p>{t('guide:sources')}</p>
        </section>
        <Cautions />
      </main>
    </>
  );
}
