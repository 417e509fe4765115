import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import '../css/pages.css';
import '../css/settings.css';
import { hrefOf } from '../router.ts';
import { SETTINGS, type SettingName, type SettingValue } from '../setting-values.ts';
import { resetSettings, useSetting } from '../settings.ts';
import { LanguageChoice, PageHead, useTitle } from '../shell.tsx';
import { length, temperature } from '../units.ts';
import { percent, t } from '../words.ts';

/** How this profile has things: each takes hold at once, and is kept. */
export function SettingsPage() {
  const [reset, setReset] = useState(false);
  useTitle(t('settings:title'));
  return (
    <>
      <PageHead language={false}>
        <a class="back" href={hrefOf('home')}>
          {t('app:toTickets')}
        </a>
      </PageHead>
      <main class="sheet settings">
        <h1 tabIndex={-1}>{t('settings:title')}</h1>
        <p>{t('settings:kept')}</p>
        <section class="slip" aria-labelledby="settings-words">
          <h2 id="settings-words">{t('settings:words')}</h2>
          <div class="setting">
            <span>{t('app:language')}</span>
            <LanguageChoice />
          </div>
          <Choice name="degrees" words={(value) => t(`settings:degrees.${value}`)} note={<Sample />} />
          <Choice name="lengths" words={(value) => t(`settings:lengths.${value}`)} />
        </section>
        <section class="slip" aria-labelledby="settings-look">
          <h2 id="settings-look">{t('settings:look')}</h2>
          <Choice name="text" words={(value) => percent(Number(value) / 100)} />
          <Choice name="contrast" words={(value) => t(`settings:contrast.${value}`)} />
          <Choice name="motion" words={(value) => t(`settings:motion.${value}`)} />
        </section>
        <section class="slip" aria-labelledby="settings-sound">
          <h2 id="settings-sound">{t('settings:sound')}</h2>
          <Tick name="sound" words={t('app:sounds.on')} />
          <Volume />
        </section>
        <section class="slip" aria-labelledby="settings-bench">
          <h2 id="settings-bench">{t('app:head.bench')}</h2>
          <Choice name="bench" words={(value) => t(`app:head.kind.${value}`)} />
          <Tick name="keys" words={t('app:list.keys')} />
        </section>
        <div class="settings-reset">
          <button
            type="button"
            class="button"
            onClick={() => {
              void resetSettings();
              setReset(true);
            }}
          >
            {t('settings:reset')}
          </button>
          <p role="status">{reset && t('settings:resetDone')}</p>
        </div>
      </main>
    </>
  );
}

/** What temperatures and lengths look like now. */
function Sample() {
  useSetting('degrees');
  useSetting('lengths');
  // A house in summer, and the cable down to its furnace.
  return <>{t('settings:sample', { temperature: temperature(77), length: length(50) })}</>;
}

interface ChoiceProps<Name extends SettingName> {
  readonly name: Name;
  readonly words: (value: SettingValue<Name>) => string;
  readonly note?: ComponentChildren;
}

/** A setting that is one of a few. */
function Choice<Name extends SettingName>({ name, words, note }: ChoiceProps<Name>) {
  const [value, choose] = useSetting(name);
  const values: readonly SettingValue<Name>[] = SETTINGS[name];
  const title = `setting-${name}`;
  return (
    <div class="setting" role="radiogroup" aria-labelledby={title}>
      <span id={title}>{t(`settings:name.${name}`)}</span>
      <div class="setting-values">
        {values.map((each) => (
          <label key={each} class="choice">
            <input type="radio" name={name} checked={each === value} onChange={() => choose(each)} />
            {words(each)}
          </label>
        ))}
      </div>
      {note !== undefined && <p class="setting-note">{note}</p>}
    </div>
  );
}

/** A setting that is on or off. */
function Tick({ name, words }: { readonly name: 'sound' | 'keys'; readonly words: string }) {
  const [value, choose] = useSetting(name);
  return (
    <label class="choice">
      <input type="checkbox" checked={value === 'on'} onChange={(event) => choose(event.currentTarget.checked ? 'on' : 'off')} />
      {words}
    </label>
  );
}

function Volume() {
  const [value, choose] = useSetting('volume');
  return (
    <label class="setting">
      <span>{t('settings:name.volume')}</span>
      <input
        type="range"
        min="0"
        max="100"
        step="10"
        value={value}
        aria-valuetext={percent(Number(value) / 100)}
        onInput={(event) => choose(SETTINGS.volume.find((each) => each === event.currentTarget.value) ?? value)}
      />
      <span aria-hidden="true">{percent(Number(value) / 100)}</span>
    </label>
  );
}
