import { readFileSync } from 'node:fs';
import type { Action } from '../../src/attempt/actions.ts';
import { type Attempt, viewOf } from '../../src/attempt/attempt.ts';
import type { Words } from '../../src/stage/face.ts';
import { start, take } from '../scenario/shipped.ts';

/** Ways to come to every place and, in it, to what stands open. */
const covers = (...ids: string[]): Action[] => ids.map((cover) => ({ name: 'cover', cover, open: true }));
const RUNNING: Action[] = [
  { name: 'operate', part: 'doorSwitch', control: 'plunger', position: 'held' },
  { name: 'wait', seconds: 15 },
];
const BENCHES: Readonly<Record<string, readonly Action[]>> = {
  'hallway, thermostat seated': [],
  'hallway, thermostat pulled': [{ name: 'pull', part: 'thermostat' }],
  'hallway, thermostat turned': [
    { name: 'pull', part: 'thermostat' },
    { name: 'turn', part: 'thermostat' },
  ],
  'mat, thermostat on it': [
    { name: 'pull', part: 'thermostat' },
    { name: 'mat', part: 'thermostat' },
  ],
  'furnace, closed': [{ name: 'walk', to: 'furnace' }],
  'furnace, upper door off': [{ name: 'walk', to: 'furnace' }, ...covers('burnerDoor')],
  'furnace, lower door off': [{ name: 'walk', to: 'furnace' }, ...covers('blowerDoor')],
  'furnace, open': [{ name: 'walk', to: 'furnace' }, ...covers('burnerDoor', 'blowerDoor')],
  'furnace, open and running': [{ name: 'walk', to: 'furnace' }, ...covers('burnerDoor', 'blowerDoor'), ...RUNNING],
  'furnace, a wire lifted': [
    { name: 'walk', to: 'furnace' },
    ...covers('burnerDoor', 'blowerDoor'),
    { name: 'lift', wire: 'statY', end: 'from' },
  ],
  'outdoor, closed': [{ name: 'walk', to: 'outdoor' }],
  'outdoor, disconnect open': [{ name: 'walk', to: 'outdoor' }, ...covers('disconnectCover')],
  'outdoor, unit open': [{ name: 'walk', to: 'outdoor' }, ...covers('outdoorPanel')],
  'outdoor, open': [{ name: 'walk', to: 'outdoor' }, ...covers('disconnectCover', 'outdoorPanel')],
  'panel, closed': [{ name: 'walk', to: 'panel' }],
  'panel, open': [{ name: 'walk', to: 'panel' }, ...covers('panelFront')],
};

export const BENCH_NAMES = Object.keys(BENCHES);

/** An attempt that stands at one of the benches. */
export function benchAt(name: string): Attempt {
  const attempt = start('fanButNoCooling');
  take(attempt, ...(BENCHES[name] ?? []));
  return attempt;
}

export const viewAt = (name: string) => viewOf(benchAt(name));

/** The stage's words in a language, read from its files; throws on a key without words. */
export function wordsIn(language: string): Words {
  const files = new Map<string, Record<string, unknown>>();
  return (key, values = {}) => {
    const [space = '', path = ''] = key.split(':');
    const data =
      files.get(space) ?? JSON.parse(readFileSync(new URL(`../../locales/${language}/${space}.json`, import.meta.url), 'utf8'));
    files.set(space, data);
    const found = path.split('.').reduce<unknown>((at, step) => (at as Record<string, unknown> | undefined)?.[step], data);
    if (typeof found !== 'string') throw new Error(`no words for ${key} in ${language}`);
    return found.replace(/\{\{(\w+)\}\}/g, (_, name: string) => String(values[name] ?? ''));
  };
}
