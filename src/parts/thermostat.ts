import { z } from 'zod';
import { has, magnitude } from './modes.ts';
import { definePart, type Site } from './part.ts';
import { differs } from './state.ts';

const MODES = ['off', 'heat', 'cool'] as const;
/** Cells below this stop the relays and blank the display; typical, no source. */
const MINIMUM_CELL_VOLTS = 2.4;
/** At least five minutes of off time guard a compressor from short cycling; common practice, no source. */
export const GUARD_SECONDS = 300;
/** The fan contact comes a moment after the key; common practice, no source. */
export const FAN_PAUSE_SECONDS = 3;
const DIFFERENTIAL = 0.5;
/** Fine enough that each half °C has a setting of its own: half a degree of Celsius is 0.9 °F. */
const SETTING_STEP = 0.5;

type State = {
  due: number;
  mode: number;
  fan: number;
  setHeat: number;
  setCool: number;
  alive: number;
  /** Relays as latched. */
  w: number;
  y: number;
  g: number;
  /** When the compressor's contact last opened, seconds. */
  yOpened: number;
  fanAt: number;
};

function wants(site: Site, state: State): { heat: boolean; cool: boolean; waiting: boolean } {
  const room = felt(site);
  const mode = MODES[state.mode];
  const heat = mode === 'heat' && (state.w === 1 ? room < state.setHeat + DIFFERENTIAL : room <= state.setHeat - DIFFERENTIAL);
  const call = mode === 'cool' && (state.y === 1 ? room > state.setCool - DIFFERENTIAL : room >= state.setCool + DIFFERENTIAL);
  const waiting = call && state.y === 0 && site.now < state.yOpened + GUARD_SECONDS;
  return { heat, cool: call && !waiting, waiting };
}

/** What its sensor makes of the room, °F. */
function felt(site: Site): number {
  return site.roomFahrenheit + magnitude(site, 'sensorDrift', 0);
}

/**
 * A battery-electronic thermostat: three latching relays from R, run by two cells. Conventional cooling closes R–Y and R–G together, so
 * Y–G reads closed too; gas heat closes R–W and leaves G to the furnace. `pitted` is contact ohms, `sensorDrift` is °F.
 */
export const batteryThermostat = definePart<Record<string, never>, State>({
  kind: 'batteryThermostat',
  sounds: { strikes: { call: { '*': 'relay' } } },
  section: 'thermostat',
  parameters: z.strictObject({}),
  terminals: [
    { id: 'R', label: '' },
    { id: 'W', label: '' },
    { id: 'Y', label: '' },
    { id: 'G', label: '' },
    { id: 'C', label: 'C' },
    { id: 'BP', label: '+' },
    { id: 'BN', label: '−' },
  ],
  branches: [
    ['R', 'W'],
    ['R', 'Y'],
    ['R', 'G'],
    ['BP', 'BN'],
  ],
  modes: [
    { id: 'heatRelayStuckOpen', weight: 0.8 },
    { id: 'coolRelayStuckOpen', weight: 1 },
    { id: 'fanRelayStuckOpen', weight: 0.6 },
    { id: 'heatRelayWelded', weight: 0.4 },
    { id: 'coolRelayWelded', weight: 0.5 },
    { id: 'fanRelayWelded', weight: 0.3 },
    { id: 'coolRelayPitted', weight: 0.5, magnitudes: [25, 80] },
    { id: 'sensorDrift', weight: 0.4, magnitudes: [-9, 9] },
    { id: 'dead', weight: 0.4 },
  ],
  controls: [
    { id: 'mode', positions: MODES },
    { id: 'fan', positions: ['auto', 'on'] },
    { id: 'setHeat', range: { from: 45, to: 90, step: SETTING_STEP, press: 1 } },
    { id: 'setCool', range: { from: 50, to: 95, step: SETTING_STEP, press: 1 } },
  ],
  calls: [
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
  ],
  removable: true,
  replaceMinutes: 20,
  initial: () => ({
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
  }),
  conduct(site, state, stamp) {
    stamp.contact(0, (state.w === 1 && !has(site, 'heatRelayStuckOpen')) || has(site, 'heatRelayWelded'));
    stamp.contact(
      1,
      (state.y === 1 && !has(site, 'coolRelayStuckOpen')) || has(site, 'coolRelayWelded'),
      magnitude(site, 'coolRelayPitted', 0.03),
    );
    stamp.contact(2, (state.g === 1 && !has(site, 'fanRelayStuckOpen')) || has(site, 'fanRelayWelded'));
    stamp.resistor(3, 30_000);
  },
  react(site, state) {
    const alive = !has(site, 'dead') && site.dcVolts('BP', 'BN') >= MINIMUM_CELL_VOLTS ? 1 : 0;
    const before = { ...state };
    // Relays let go when their power goes, and the guard starts over when it comes back.
    if (alive === 0 && state.alive === 1 && state.y === 1) state.yOpened = site.now;
    state.alive = alive;
    state.due = Number.POSITIVE_INFINITY;
    if (alive === 0) {
      state.w = 0;
      state.y = 0;
      state.g = 0;
      state.fanAt = Number.POSITIVE_INFINITY;
      return differs(before, state);
    }
    const { heat, cool, waiting } = wants(site, state);
    if (waiting) state.due = state.yOpened + GUARD_SECONDS;
    if (state.y === 1 && !cool) state.yOpened = site.now;
    state.w = heat ? 1 : 0;
    state.y = cool ? 1 : 0;
    if (state.fan === 1) {
      if (state.g === 0 && state.fanAt === Number.POSITIVE_INFINITY) state.fanAt = site.now + FAN_PAUSE_SECONDS;
      if (state.g === 0 && !cool && site.now < state.fanAt) state.due = Math.min(state.due, state.fanAt);
      else state.g = 1;
    } else {
      state.fanAt = Number.POSITIVE_INFINITY;
      state.g = cool ? 1 : 0;
    }
    return differs(before, state);
  },
  watches(_site, state) {
    const shift = magnitude(_site, 'sensorDrift', 0);
    const at = (degrees: number) => [degrees - DIFFERENTIAL - shift, degrees + DIFFERENTIAL - shift];
    return MODES[state.mode] === 'heat' ? at(state.setHeat) : MODES[state.mode] === 'cool' ? at(state.setCool) : [];
  },
  signs(site, state) {
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
  },
  reads(state, control) {
    if (control === 'mode') return MODES[state.mode] ?? 'off';
    if (control === 'fan') return state.fan === 1 ? 'on' : 'auto';
    return control === 'setHeat' ? state.setHeat : state.setCool;
  },
  operate(_site, state, control, value) {
    if (control === 'mode') state.mode = Math.max(0, MODES.indexOf(value as (typeof MODES)[number]));
    else if (control === 'fan') state.fan = value === 'on' ? 1 : 0;
    else if (control === 'setHeat') state.setHeat = Number(value);
    else state.setCool = Number(value);
  },
});

/** The thermostat's sub-base: screws for the cable in front of the sockets. */
export const subbase = definePart({
  kind: 'subbase',
  section: 'thermostat',
  strip: ['R', 'W', 'Y', 'G', 'C'],
  parameters: z.strictObject({}),
  terminals: ['R', 'W', 'Y', 'G', 'C'].map((id) => ({ id, label: id })),
  branches: [],
  modes: [],
  replaceMinutes: 15,
  initial: () => ({ due: Number.POSITIVE_INFINITY }),
  conduct() {},
  signs: () => [],
});

/** Two cells in series. `weak` is their volts. */
export const cells = definePart({
  kind: 'cells',
  section: 'thermostat',
  parameters: z.strictObject({}),
  terminals: [
    { id: 'P', label: '+' },
    { id: 'N', label: '−' },
  ],
  branches: [['N', 'P']],
  modes: [{ id: 'weak', weight: 2, magnitudes: [1.6, 2.1] }],
  replaceMinutes: 2,
  initial: () => ({ due: Number.POSITIVE_INFINITY }),
  conduct(site, _state, stamp) {
    stamp.source(0, 0.6, 0, magnitude(site, 'weak', 3.1));
  },
  signs: () => [],
});
