import { z } from 'zod';
import { GOOD_CONTACT_OHMS, has, magnitude } from './modes.ts';
import { definePart, type Site } from './part.ts';
import { differs } from './state.ts';

const MODES = ['off', 'heat', 'cool'] as const;
/** Half of the differential of the snap contact, °F at the bimetal; typical, no source. */
const HALF_DIFFERENTIAL = 0.75;
/** Watts that the anticipator gives off when it is set to the current that flows through it; typical, no source. */
const HEATER_WATTS = 0.24;
/** What that warms the bimetal by in the end, °F, and how slowly, seconds; typical, no source. */
const RISE_PER_WATT = 1.9 / HEATER_WATTS;
const TAU_SECONDS = 400;
/** Half °F and °C alike have a mark of their own. */
const SETTING_STEP = 0.5;

/** The anticipator's scale, amps, by the name of the position. */
export const ANTICIPATOR_AMPS = {
  a010: 0.1,
  a015: 0.15,
  a020: 0.2,
  a030: 0.3,
  a040: 0.4,
  a060: 0.6,
  a080: 0.8,
  a120: 1.2,
} as const;
const POSITIONS = Object.keys(ANTICIPATOR_AMPS) as (keyof typeof ANTICIPATOR_AMPS)[];

/**
 * Ohms of the anticipator at a setting: such that its heat is the same whatever the load, as long as it is set to the load's current.
 * Typical, no source: 1.5 Ω at 0.4 A, 6 Ω at 0.2 A.
 * @param amps 0.1…1.2
 */
export function anticipatorOhms(amps: number): number {
  return HEATER_WATTS / (amps * amps);
}

/** Whole cycles shorter or longer than this are heard as such, seconds; our choice, no source. */
const SHORT_SECONDS = 420;
const LONG_SECONDS = 1080;

type Params = { anticipatorAmps: 0.2 | 0.3 | 0.4 | 0.6 };
type State = {
  due: number;
  mode: number;
  fan: number;
  setHeat: number;
  setCool: number;
  /** Contacts as the bimetal and the switches hold them. */
  w: number;
  y: number;
  g: number;
  /** Place of the anticipator's pointer on its scale. */
  pointer: number;
  /** °F by which the anticipator warmed the bimetal at `since`, and where that goes. */
  rise: number;
  target: number;
  since: number;
  /** When heat was last called for, and how long the cycle before took, seconds; below 0 while not known. */
  called: number;
  cycle: number;
};

function pointerAt(amps: number): number {
  return POSITIONS.findIndex((position) => Math.abs(ANTICIPATOR_AMPS[position] - amps) < 0.001);
}

function ohmsOf(state: State): number {
  return anticipatorOhms(ANTICIPATOR_AMPS[POSITIONS[state.pointer] ?? 'a040']);
}

/** What its bimetal makes of the room, °F, with the anticipator's warmth as it is now. */
function felt(site: Site<Params>, state: State): number {
  return site.roomFahrenheit + state.rise + magnitude(site, 'outOfLevel', 0);
}

function warm(site: Site<Params>, state: State): void {
  if (site.now > state.since) {
    state.rise = state.target + (state.rise - state.target) * Math.exp((state.since - site.now) / TAU_SECONDS);
    state.since = site.now;
  }
  state.target = site.amps(1) ** 2 * ohmsOf(state) * RISE_PER_WATT;
}

/** Begins a heating call, and learns how long the cycle before took. */
function call(state: State, now: number): void {
  state.cycle = state.called >= 0 ? now - state.called : -1;
  state.called = now;
}

function rhythm(state: State): 'short' | 'usual' | 'long' {
  return state.cycle < SHORT_SECONDS ? 'short' : state.cycle > LONG_SECONDS ? 'long' : 'usual';
}

/**
 * A snap-action mechanical thermostat: a bimetal with a contact for heat and one for cooling, switches for system and fan, and no power of
 * its own. In series with the heating contact a heater of a few ohms, the anticipator, warms the bimetal by I²R through a small thermal
 * mass, so that the contact opens before the room has overshot: set to more amps than the load draws it warms less, and the cycles grow long;
 * set to fewer, they grow short and the room stays cold. `heatContactPitted` is ohms, `anticipatorSetWrongly` is the setting ÷ the right one,
 * `outOfLevel` is °F that it reads too high.
 */
export const mechanicalThermostat = definePart<Params, State>({
  kind: 'mechanicalThermostat',
  sounds: { strikes: { call: { '*': 'relay' } } },
  section: 'thermostat',
  parameters: z.strictObject({
    /** What the anticipator is to be set to: the amps of the load on W. */
    anticipatorAmps: z.union([z.literal(0.2), z.literal(0.3), z.literal(0.4), z.literal(0.6)]).default(0.4),
  }),
  terminals: ['R', 'W', 'Y', 'G'].map((id) => ({ id, label: id })),
  strip: ['R', 'W', 'Y', 'G'],
  inner: ['w'],
  branches: [
    ['R', 'w'],
    ['w', 'W'],
    ['R', 'Y'],
    ['R', 'G'],
  ],
  modes: [
    { id: 'heatContactOpen', weight: 0.5 },
    { id: 'heatContactPitted', weight: 1, magnitudes: [40, 150] },
    { id: 'heatContactWelded', weight: 0.3 },
    { id: 'coolContactOpen', weight: 0.5 },
    { id: 'coolContactWelded', weight: 0.3 },
    { id: 'fanSwitchOpen', weight: 0.4 },
    { id: 'anticipatorOpen', weight: 0.6 },
    { id: 'anticipatorSetWrongly', weight: 1, magnitudes: [0.5, 2] },
    { id: 'outOfLevel', weight: 0.6, magnitudes: [-6, 6] },
  ],
  controls: [
    { id: 'mode', positions: MODES, through: true },
    { id: 'fan', positions: ['auto', 'on'], through: true },
    { id: 'setHeat', through: true, range: { from: 45, to: 90, step: SETTING_STEP, press: 1 } },
    { id: 'setCool', through: true, range: { from: 50, to: 95, step: SETTING_STEP, press: 1 } },
    { id: 'anticipator', positions: POSITIONS },
  ],
  calls: [
    { id: 'off', acts: [switched('off'), { control: 'fan', value: 'auto' }] },
    { id: 'fan', acts: [switched('off'), { control: 'fan', value: 'on' }] },
    { id: 'heat', acts: [switched('heat'), { control: 'fan', value: 'auto' }, { control: 'setHeat', value: 90 }] },
    { id: 'cool', acts: [switched('cool'), { control: 'fan', value: 'auto' }, { control: 'setCool', value: 50 }] },
  ],
  replaceMinutes: 20,
  initial: ({ anticipatorAmps }, fault) => ({
    due: Number.POSITIVE_INFINITY,
    mode: 0,
    fan: 0,
    setHeat: 68,
    setCool: 76,
    w: 0,
    y: 0,
    g: 0,
    pointer: pointerAt(anticipatorAmps * (fault?.mode === 'anticipatorSetWrongly' ? fault.magnitude : 1)),
    rise: 0,
    target: 0,
    since: 0,
    called: -1,
    cycle: -1,
  }),
  conduct(site, state, stamp) {
    const heat = (state.w === 1 && !has(site, 'heatContactOpen')) || has(site, 'heatContactWelded');
    stamp.contact(0, heat, magnitude(site, 'heatContactPitted', GOOD_CONTACT_OHMS));
    if (has(site, 'anticipatorOpen')) stamp.open(1);
    else stamp.resistor(1, ohmsOf(state));
    stamp.contact(2, (state.y === 1 && !has(site, 'coolContactOpen')) || has(site, 'coolContactWelded'));
    stamp.contact(3, state.g === 1 && !has(site, 'fanSwitchOpen'));
  },
  react(site, state) {
    warm(site, state);
    const before = { ...state };
    const bimetal = felt(site, state);
    const half = HALF_DIFFERENTIAL;
    const mode = MODES[state.mode];
    const heat = mode === 'heat' && (state.w === 1 ? bimetal < state.setHeat + half : bimetal <= state.setHeat - half);
    const cool = mode === 'cool' && (state.y === 1 ? bimetal > state.setCool - half : bimetal >= state.setCool + half);
    if (heat && state.w === 0) call(state, site.now);
    state.w = heat ? 1 : 0;
    state.y = cool ? 1 : 0;
    state.g = cool || state.fan === 1 ? 1 : 0;
    return differs(before, state);
  },
  watches(site, state) {
    const set = MODES[state.mode] === 'heat' ? state.setHeat : MODES[state.mode] === 'cool' ? state.setCool : undefined;
    if (set === undefined) return [];
    const { rise, target } = state;
    const shift = magnitude(site, 'outOfLevel', 0);
    const at = (fahrenheit: number) => ({ fahrenheit, rise, target, tauSeconds: TAU_SECONDS });
    return [at(set - HALF_DIFFERENTIAL - shift), at(set + HALF_DIFFERENTIAL - shift)];
  },
  signs(site, state) {
    const mode = MODES[state.mode] ?? 'off';
    return [
      { key: 'mode', value: mode, sense: 'see', through: true },
      { key: 'fan', value: state.fan === 1 ? 'on' : 'auto', sense: 'see', through: true },
      { key: 'set', value: mode === 'cool' ? state.setCool : state.setHeat, sense: 'see', through: true },
      // The thermometer is a bimetal of its own, far from the anticipator.
      { key: 'room', value: Math.round(site.roomFahrenheit), sense: 'see', through: true, minor: true },
      { key: 'call', value: state.w === 1 ? 'heat' : state.y === 1 ? 'cool' : state.g === 1 ? 'fan' : 'none', sense: 'see' },
      ...(state.cycle >= 0 ? [{ key: 'rhythm', value: rhythm(state), sense: 'hear' } as const] : []),
      { key: 'anticipator', value: POSITIONS[state.pointer] ?? '', sense: 'inspect' },
      { key: 'level', value: has(site, 'outOfLevel') ? 'tilted' : 'level', sense: 'inspect' },
    ];
  },
  reads(state, control) {
    if (control === 'mode') return MODES[state.mode] ?? 'off';
    if (control === 'fan') return state.fan === 1 ? 'on' : 'auto';
    if (control === 'anticipator') return POSITIONS[state.pointer] ?? '';
    return control === 'setHeat' ? state.setHeat : state.setCool;
  },
  operate(_site, state, control, value) {
    if (control === 'mode') state.mode = Math.max(0, MODES.indexOf(value as (typeof MODES)[number]));
    else if (control === 'fan') state.fan = value === 'on' ? 1 : 0;
    else if (control === 'anticipator') state.pointer = Math.max(0, (POSITIONS as readonly string[]).indexOf(String(value)));
    else if (control === 'setHeat') state.setHeat = Number(value);
    else state.setCool = Number(value);
    // A hand on the settings: the cycle under way says nothing of the house.
    state.called = -1;
    state.cycle = -1;
  },
});

function switched(value: (typeof MODES)[number]) {
  return { control: 'mode', value };
}
