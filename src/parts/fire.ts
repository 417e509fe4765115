import { z } from 'zod';
import { has, magnitude } from './modes.ts';
import { coldJoint, OPENS_WARM, partedWarm, warmJoint } from './opensWarm.ts';
import { definePart } from './part.ts';

const none = z.strictObject({});
const AB = [
  { id: 'a', label: '' },
  { id: 'b', label: '' },
] as const;

/** Seconds at 120 V until a hot-surface igniter lights gas; typical, no source. */
const GLOW_SECONDS = 15;

/** A hot-surface igniter: a brittle 60 Ω element. */
export const igniter = definePart({
  kind: 'igniter',
  section: 'equipment',
  parameters: none,
  terminals: AB,
  branches: [['a', 'b']],
  modes: [{ id: 'cracked', weight: 1.5 }],
  lineVoltage: true,
  replaceMinutes: 20,
  initial: () => ({ due: Number.POSITIVE_INFINITY, glow: 0 }),
  conduct(site, _state, stamp) {
    if (has(site, 'cracked')) stamp.open(0);
    else stamp.resistor(0, 60);
  },
  react(site, state) {
    if (site.amps(0) < 1.2) {
      state.due = Number.POSITIVE_INFINITY;
      if (state.glow === 0) return false;
      state.glow = 0;
      return true;
    }
    if (state.glow === 1) return false;
    if (state.due === Number.POSITIVE_INFINITY) state.due = site.now + GLOW_SECONDS;
    if (site.now < state.due) return false;
    state.due = Number.POSITIVE_INFINITY;
    state.glow = 1;
    return true;
  },
  drive: (_site, state) => state.glow,
  signs: (_site, state) => [{ key: 'glow', value: state.glow, sense: 'see', through: true }],
});

/** How slowly its coils warm and cool; typical, no source. */
export const GAS_VALVE_TAU_SECONDS = 300;

/** A 24 V gas valve, two coils in series of function, 10 VA, with a hand lever. */
export const gasValve = definePart({
  kind: 'gasValve',
  sounds: { strikes: { click: { '1': 'gasValve' } } },
  section: 'equipment',
  parameters: none,
  terminals: AB,
  branches: [['a', 'b']],
  modes: [{ id: 'coilOpen', weight: 0.8 }, { id: 'stuckShut', weight: 0.5 }, { id: 'leverOff', weight: 0.8 }, OPENS_WARM],
  controls: [{ id: 'lever', positions: ['off', 'on'] }],
  gas: true,
  replaceMinutes: 60,
  initial: (_params, fault) => ({
    due: Number.POSITIVE_INFINITY,
    energised: 0,
    lever: fault?.mode === 'leverOff' ? 0 : 1,
    ...coldJoint(),
  }),
  conduct(site, state, stamp) {
    if (has(site, 'coilOpen') || partedWarm(site, state)) stamp.open(0);
    else stamp.coil(0, 40, 0.11);
  },
  react(site, state) {
    const volts = site.volts('a', 'b');
    const turned = warmJoint(site, state, volts / 24, GAS_VALVE_TAU_SECONDS);
    state.due = state.turns;
    const energised = !has(site, 'coilOpen') && !partedWarm(site, state) && volts >= 18 ? 1 : 0;
    if (energised === state.energised) return turned;
    state.energised = energised;
    return true;
  },
  drive: (site, state) => (state.energised === 1 && state.lever === 1 && !has(site, 'stuckShut') ? 1 : 0),
  signs: (_site, state) => [
    { key: 'click', value: state.energised, sense: 'hear' },
    { key: 'lever', value: state.lever === 1 ? 'on' : 'off', sense: 'see' },
  ],
  reads: (state) => (state.lever === 1 ? 'on' : 'off'),
  operate(_site, state, _control, value) {
    state.lever = value === 'on' ? 1 : 0;
  },
});

/** The burners: lit while there is gas, once something lit them. */
export const burner = definePart({
  kind: 'burner',
  section: 'equipment',
  parameters: z.strictObject({ outputBtuPerHour: z.number().min(5000).max(200_000).default(48_000) }),
  terminals: [],
  branches: [],
  modes: [],
  links: ['gas', 'ignition'],
  replaceMinutes: 60,
  initial: () => ({ due: Number.POSITIVE_INFINITY, lit: 0 }),
  conduct() {},
  react(site, state) {
    const gas = site.link('gas') >= 0.5;
    const lit = gas && (state.lit === 1 || site.link('ignition') >= 0.5) ? 1 : 0;
    if (lit === state.lit) return false;
    state.lit = lit;
    return true;
  },
  drive: (_site, state) => state.lit,
  heat: (site, state) => state.lit * site.params.outputBtuPerHour,
  signs: (_site, state) => [{ key: 'flame', value: state.lit, sense: 'see', through: true }],
});

/**
 * A flame rod. The flame rectifies: towards earth it is a DC source of 12 V behind 3 MΩ, so that a clean rod gives about 3 µA into the
 * board's 1 MΩ. A coat on the rod adds ohms in series (the mode's magnitude). Typical; no source.
 */
export const flameSensor = definePart({
  kind: 'flameSensor',
  section: 'equipment',
  microamps: true,
  parameters: none,
  terminals: [{ id: 'rod', label: '' }],
  inner: ['tip'],
  branches: [
    ['rod', 'tip'],
    ['tip', 'earth'],
    ['rod', 'earth'],
  ],
  modes: [
    { id: 'coated', weight: 1.5, magnitudes: [3e7, 6e7] },
    { id: 'rodOpen', weight: 0.4 },
    { id: 'toEarth', weight: 0.4 },
  ],
  links: ['flame'],
  replaceMinutes: 15,
  initial: () => ({ due: Number.POSITIVE_INFINITY, flame: 0 }),
  conduct(site, state, stamp) {
    if (has(site, 'rodOpen')) stamp.open(0);
    else stamp.resistor(0, magnitude(site, 'coated', 100));
    if (state.flame === 1) stamp.source(1, 3e6, 0, 12);
    else stamp.open(1);
    if (has(site, 'toEarth')) stamp.resistor(2, 50);
    else stamp.open(2);
  },
  react(site, state) {
    const flame = site.link('flame') >= 0.5 ? 1 : 0;
    if (flame === state.flame) return false;
    state.flame = flame;
    return true;
  },
  signs: (site) => [{ key: 'rod', value: has(site, 'coated') ? 'coated' : 'clean', sense: 'inspect' }],
});
