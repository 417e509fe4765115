import { has, magnitude } from './modes.ts';
import type { Control, Mode, PartKind, Sign, Site, Stamp } from './part.ts';

/** What thermostats with a display and relays do alike: when they call, how they guard the compressor, when the fan contact follows. */

export const MODES = ['off', 'heat', 'cool'] as const;

/** At least five minutes of off time guard a compressor from short cycling; common practice, no source. */
export const GUARD_SECONDS = 300;
/** The fan contact comes a moment after the key; common practice, no source. */
const FAN_PAUSE_SECONDS = 3;
/** Half of the differential with which it begins, and what it may become, °F; typical, no source. */
const HALF_DIFFERENTIAL = 0.5;
const LEAST_HALF = 0.05;
const MOST_HALF = 1.5;
/** Fine enough that each half °C has a setting of its own: half a degree of Celsius is 0.9 °F. */
const SETTING_STEP = 0.5;

/** What it keeps in mind. Relays are 1 when they are driven. */
export type Controller = {
  due: number;
  mode: number;
  fan: number;
  setHeat: number;
  setCool: number;
  alive: number;
  w: number;
  y: number;
  g: number;
  /** When the compressor's contact last opened, seconds. */
  yOpened: number;
  fanAt: number;
  /** Half of the differential, °F. */
  half: number;
  /** When the call last began or ended by itself, and how long the stretch before that was, seconds; −1 and 0 while not known. */
  turned: number;
  stretch: number;
};

export function startController(): Controller {
  return {
    due: Number.POSITIVE_INFINITY,
    mode: 0,
    fan: 0,
    setHeat: 68,
    setCool: 76,
    alive: 0,
    w: 0,
    y: 0,
    g: 0,
    yOpened: -1e9,
    fanAt: Number.POSITIVE_INFINITY,
    half: HALF_DIFFERENTIAL,
    turned: -1,
    stretch: 0,
  };
}

/** What its sensor makes of the room, °F. */
export function felt(site: Site): number {
  return site.roomFahrenheit + magnitude(site, 'sensorDrift', 0);
}

/** What it would have on now, and whether only the guard keeps the compressor from it. */
function wants(site: Site, state: Controller): { heat: boolean; cool: boolean; waiting: boolean } {
  const room = felt(site);
  const mode = MODES[state.mode];
  const heat = mode === 'heat' && (state.w === 1 ? room < state.setHeat + state.half : room <= state.setHeat - state.half);
  const call = mode === 'cool' && (state.y === 1 ? room > state.setCool - state.half : room >= state.setCool + state.half);
  const waiting = call && state.y === 0 && site.now < state.yOpened + GUARD_SECONDS;
  return { heat, cool: call && !waiting, waiting };
}

/**
 * Learns its differential from the last whole cycle, so that it cycles `most` times an hour at half load whatever the house: it widens or
 * narrows until the shortest stretch, on or off, would be a quarter of an hour / `most`. From that N = 4·most·x·(1−x) follows.
 */
function learn(state: Controller, now: number, most: number): void {
  if (state.turned >= 0 && now > state.turned) {
    const seconds = now - state.turned;
    const shortest = 3600 / (4 * most);
    if (state.stretch > 0) {
      const wider = state.half * shortest * (1 / seconds + 1 / state.stretch);
      state.half = Math.min(MOST_HALF, Math.max(LEAST_HALF, wider));
    }
    state.stretch = seconds;
  }
  state.turned = now;
}

/** All relays let go because its power went; the guard starts over. */
export function letGo(state: Controller, now: number): void {
  if (state.y === 1) state.yOpened = now;
  state.w = 0;
  state.y = 0;
  state.g = 0;
  state.fanAt = Number.POSITIVE_INFINITY;
  state.due = Number.POSITIVE_INFINITY;
  state.turned = -1;
  state.stretch = 0;
}

/** How a thermostat of one stage each way is set up. */
interface OneStage {
  /** Electric heat: the fan contact closes with heat. */
  readonly fanWithHeat: boolean;
  /** Most cycles an hour, at half load; a differential that stays as it is where left out. */
  readonly heatCycles?: number;
  readonly coolCycles?: number;
}

/** Drives the relays of a thermostat of one stage each way that has power, and sets `due`. */
export function oneStage(site: Site, state: Controller, { fanWithHeat, heatCycles, coolCycles }: OneStage): void {
  const { heat, cool, waiting } = wants(site, state);
  state.due = waiting ? state.yOpened + GUARD_SECONDS : Number.POSITIVE_INFINITY;
  if (state.y === 1 && !cool) state.yOpened = site.now;
  if (heatCycles !== undefined && heat !== (state.w === 1)) learn(state, site.now, heatCycles);
  if (coolCycles !== undefined && cool !== (state.y === 1)) learn(state, site.now, coolCycles);
  state.w = heat ? 1 : 0;
  state.y = cool ? 1 : 0;
  const follows = cool || (heat && fanWithHeat);
  if (state.fan === 0) {
    state.fanAt = Number.POSITIVE_INFINITY;
    state.g = follows ? 1 : 0;
    return;
  }
  if (state.g === 0 && state.fanAt === Number.POSITIVE_INFINITY) state.fanAt = site.now + FAN_PAUSE_SECONDS;
  if (state.g === 0 && !follows && site.now < state.fanAt) state.due = Math.min(state.due, state.fanAt);
  else state.g = 1;
}

/** Room temperatures at which it thinks again, °F. */
export function watched(site: Site, state: Controller): readonly number[] {
  const shift = magnitude(site, 'sensorDrift', 0);
  const at = (degrees: number) => [degrees - state.half - shift, degrees + state.half - shift];
  return MODES[state.mode] === 'heat' ? at(state.setHeat) : MODES[state.mode] === 'cool' ? at(state.setCool) : [];
}

/** What its display shows. */
export function displaySigns(site: Site, state: Controller): readonly Sign[] {
  if (state.alive === 0) return [{ key: 'display', value: 'blank', sense: 'see' }];
  const { waiting } = wants(site, state);
  const mode = MODES[state.mode] ?? 'off';
  return [
    { key: 'display', value: 'on', sense: 'see' },
    { key: 'mode', value: mode, sense: 'see' },
    { key: 'fan', value: state.fan === 1 ? 'on' : 'auto', sense: 'see' },
    { key: 'set', value: mode === 'heat' ? state.setHeat : state.setCool, sense: 'see' },
    { key: 'room', value: Math.round(felt(site)), sense: 'see', minor: true },
    {
      key: 'call',
      value: state.w === 1 ? 'heat' : state.y === 1 ? 'cool' : state.g === 1 ? 'fan' : waiting ? 'waiting' : 'none',
      sense: 'see',
    },
    { key: 'guard', value: waiting ? Math.ceil(state.yOpened + GUARD_SECONDS - site.now) : 0, sense: 'see', quiet: true },
  ];
}

export const SETTINGS: readonly Control[] = [
  { id: 'mode', positions: MODES },
  { id: 'fan', positions: ['auto', 'on'] },
  { id: 'setHeat', range: { from: 45, to: 90, step: SETTING_STEP, press: 1 } },
  { id: 'setCool', range: { from: 50, to: 95, step: SETTING_STEP, press: 1 } },
];

export const CALLS: NonNullable<PartKind['calls']> = [
  {
    id: 'off',
    acts: [
      { control: 'mode', value: 'off' },
      { control: 'fan', value: 'auto' },
    ],
  },
  {
    id: 'fan',
    acts: [
      { control: 'mode', value: 'off' },
      { control: 'fan', value: 'on' },
    ],
  },
  {
    id: 'heat',
    acts: [
      { control: 'mode', value: 'heat' },
      { control: 'fan', value: 'auto' },
      { control: 'setHeat', value: 90 },
    ],
  },
  {
    id: 'cool',
    acts: [
      { control: 'mode', value: 'cool' },
      { control: 'fan', value: 'auto' },
      { control: 'setCool', value: 50 },
    ],
  },
];

/** How its three relays, its sensor and its electronics fail. `coolRelayPitted` is contact ohms, `sensorDrift` °F. Weights: common practice, no source. */
export const RELAY_MODES: readonly Mode[] = [
  { id: 'heatRelayStuckOpen', weight: 0.8 },
  { id: 'coolRelayStuckOpen', weight: 1 },
  { id: 'fanRelayStuckOpen', weight: 0.6 },
  { id: 'heatRelayWelded', weight: 0.4 },
  { id: 'coolRelayWelded', weight: 0.5 },
  { id: 'fanRelayWelded', weight: 0.3 },
  { id: 'coolRelayPitted', weight: 0.5, magnitudes: [25, 80] },
  { id: 'sensorDrift', weight: 0.4, magnitudes: [-9, 9] },
  { id: 'dead', weight: 0.4 },
];

/** Stamps the contacts R–W, R–Y and R–G, which are the kind's first three branches. */
export function stampRelays(site: Site, state: Controller, stamp: Stamp): void {
  stamp.contact(0, (state.w === 1 && !has(site, 'heatRelayStuckOpen')) || has(site, 'heatRelayWelded'));
  stamp.contact(
    1,
    (state.y === 1 && !has(site, 'coolRelayStuckOpen')) || has(site, 'coolRelayWelded'),
    magnitude(site, 'coolRelayPitted', 0.03),
  );
  stamp.contact(2, (state.g === 1 && !has(site, 'fanRelayStuckOpen')) || has(site, 'fanRelayWelded'));
}

export function readSetting(state: Controller, control: string): string | number {
  if (control === 'mode') return MODES[state.mode] ?? 'off';
  if (control === 'fan') return state.fan === 1 ? 'on' : 'auto';
  return control === 'setHeat' ? state.setHeat : state.setCool;
}

export function operateSetting(state: Controller, control: string, value: string | number): void {
  if (control === 'mode') state.mode = Math.max(0, MODES.indexOf(value as (typeof MODES)[number]));
  else if (control === 'fan') state.fan = value === 'on' ? 1 : 0;
  else if (control === 'setHeat') state.setHeat = Number(value);
  else state.setCool = Number(value);
  // A hand on the settings: the cycle under way says nothing of the house.
  state.turned = -1;
  state.stretch = 0;
}
