/** The settings of the profile at work: read, changed, and in force at once. */
import { useEffect, useState } from 'preact/hooks';
import { MORE_CONTRAST } from '../stage/tokens.ts';
import { takeUpLanguage } from './language.ts';
import { defaultsFor, legalOr, SETTINGS, type SettingName, type SettingValue } from './setting-values.ts';
import { forgetHabit, habit, keepHabit } from './storage.ts';
import { applyTokens } from './tokens-css.ts';
import { measureIn } from './units.ts';

const watchers = new Set<() => void>();

export function setting<Name extends SettingName>(name: Name): SettingValue<Name> {
  return legalOr(name, habit(name, ''), defaultsFor(navigator.languages)[name]);
}

/** Calls back after any setting has changed, here or in another tab. @returns ends it */
export function watchSettings(changed: () => void): () => void {
  watchers.add(changed);
  return () => watchers.delete(changed);
}

export function choose<Name extends SettingName>(name: Name, value: SettingValue<Name>): void {
  keepHabit(name, value);
  takeUpSettings();
}

/** Everything as it is for somebody who never chose, the language too. */
export async function resetSettings(): Promise<void> {
  for (const name of ['language', ...Object.keys(SETTINGS)]) forgetHabit(name);
  takeUpSettings();
  await takeUpLanguage();
}

/** The setting's value, fresh after each change, and how to change it. */
export function useSetting<Name extends SettingName>(
  name: Name,
): readonly [SettingValue<Name>, (value: SettingValue<Name>) => void] {
  const [value, setValue] = useState(() => setting(name));
  useEffect(() => watchSettings(() => setValue(() => setting(name))), [name]);
  return [value, (next) => choose(name, next)];
}

const asks = (query: string): boolean => matchMedia(query).matches;

/** Whether things shall keep still: as the trainee chose, else as the system asks. CSS asks the same by `data-motion` on the root. */
export const lessMotion = (): boolean => document.documentElement.dataset.motion === 'less';

/** Puts the settings in force, on the page as it stands and for what comes. */
export function takeUpSettings(): void {
  const root = document.documentElement;
  measureIn({ degrees: setting('degrees'), lengths: setting('lengths') });
  root.style.setProperty('--text-scale', String(Number(setting('text')) / 100));
  const motion = setting('motion');
  const still = motion === 'system' ? asks('(prefers-reduced-motion: reduce)') : motion === 'less';
  root.dataset.motion = still ? 'less' : 'full';
  const contrast = setting('contrast');
  const more = contrast === 'system' ? asks('(prefers-contrast: more)') : contrast === 'more';
  applyTokens(root, more ? MORE_CONTRAST : {});
  for (const changed of watchers) changed();
}

/** Puts the settings in force and keeps them so when the system or another tab changes its mind. Before the first paint. */
export function startSettings(): void {
  takeUpSettings();
  for (const query of ['(prefers-reduced-motion: reduce)', '(prefers-contrast: more)'])
    matchMedia(query).addEventListener('change', takeUpSettings);
  addEventListener('storage', takeUpSettings);
}
