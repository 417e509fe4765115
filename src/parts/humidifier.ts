import { z } from 'zod';
import { has, SWITCH_MODES } from './modes.ts';
import { definePart } from './part.ts';

const AB = [
  { id: 'a', label: '' },
  { id: 'b', label: '' },
] as const;

/** Per cent at which its dial can stand; the wrong one is the first. */
const DIAL = ['off', '25', '35', '45'] as const;
const USUAL = DIAL.indexOf('35');
/** The house whose air it feels, °F, how damp the air outside is, and what living in it adds, points; typical, no source. */
const HOUSE_FAHRENHEIT = 68;
const OUTSIDE_SHARE = 0.8;
const LIVING_POINTS = 10;

/** Pressure of saturated vapour by Magnus' formula, up to a factor (coefficients of Alduchov and Eskridge 1996, from memory). */
function saturated(fahrenheit: number): number {
  const celsius = (fahrenheit - 32) / 1.8;
  return Math.exp((17.625 * celsius) / (celsius + 243.04));
}

/** Relative humidity of a house at 68 °F whose air comes from outside, per cent. */
export function indoorPercent(outdoorFahrenheit: number): number {
  const fromOutside = (100 * OUTSIDE_SHARE * saturated(outdoorFahrenheit)) / saturated(HOUSE_FAHRENHEIT);
  return Math.min(100, fromOutside + LIVING_POINTS);
}

/** A humidistat in the return duct: closes while the air is drier than its dial, and only while air moves past it. */
export const humidistat = definePart({
  kind: 'humidistat',
  section: 'equipment',
  parameters: z.strictObject({}),
  terminals: AB,
  branches: [['a', 'b']],
  modes: [...SWITCH_MODES, { id: 'setWrongly', weight: 0.8 }],
  links: ['air'],
  controls: [{ id: 'percent', positions: DIAL }],
  replaceMinutes: 15,
  initial: (_params, fault) => ({
    due: Number.POSITIVE_INFINITY,
    dial: fault?.mode === 'setWrongly' ? 0 : USUAL,
    closed: 0,
  }),
  conduct(site, state, stamp) {
    stamp.contact(0, has(site, 'stuckClosed') || (state.closed === 1 && !has(site, 'stuckOpen')));
  },
  react(site, state) {
    const dry = indoorPercent(site.outdoorFahrenheit) < Number(DIAL[state.dial] === 'off' ? 0 : DIAL[state.dial]);
    const closed = dry && site.link('air') >= 0.1 ? 1 : 0;
    if (closed === state.closed) return false;
    state.closed = closed;
    return true;
  },
  signs: (_site, state) => [{ key: 'percent', value: DIAL[state.dial] ?? 'off', sense: 'see' }],
  reads: (state) => DIAL[state.dial] ?? 'off',
  operate(_site, state, _control, value) {
    state.dial = Math.max(0, DIAL.indexOf(value as (typeof DIAL)[number]));
  },
});

/** Volts at which the solenoid lifts. */
const LIFTS_VOLTS = 18;

/** The humidifier's water valve: a 24 V solenoid of 10 VA (20 Ω at direct current; typical, no source) behind a tap. */
export const humidifierValve = definePart({
  kind: 'humidifierValve',
  section: 'equipment',
  parameters: z.strictObject({}),
  terminals: AB,
  branches: [['a', 'b']],
  modes: [
    { id: 'coilOpen', weight: 0.8 },
    { id: 'stuckShut', weight: 0.5 },
    { id: 'tapShut', weight: 0.8 },
  ],
  controls: [{ id: 'tap', positions: ['off', 'on'] }],
  replaceMinutes: 25,
  initial: (_params, fault) => ({ due: Number.POSITIVE_INFINITY, lifted: 0, tap: fault?.mode === 'tapShut' ? 0 : 1 }),
  conduct(site, _state, stamp) {
    if (has(site, 'coilOpen')) stamp.open(0);
    else stamp.coil(0, 20, 0.143);
  },
  react(site, state) {
    const lifted = !has(site, 'coilOpen') && site.volts('a', 'b') >= LIFTS_VOLTS ? 1 : 0;
    if (lifted === state.lifted) return false;
    state.lifted = lifted;
    return true;
  },
  drive: (site, state) => (state.lifted === 1 && state.tap === 1 && !has(site, 'stuckShut') ? 1 : 0),
  signs: (site, state) => [
    { key: 'drip', value: state.lifted === 1 && state.tap === 1 && !has(site, 'stuckShut') ? 'runs' : 'none', sense: 'see' },
    { key: 'tap', value: state.tap === 1 ? 'on' : 'off', sense: 'see' },
  ],
  reads: (state) => (state.tap === 1 ? 'on' : 'off'),
  operate(_site, state, _control, value) {
    state.tap = value === 'on' ? 1 : 0;
  },
});
