import { z } from 'zod';
import { has, SWITCH_MODES } from './modes.ts';
import { definePart } from './part.ts';

const none = z.strictObject({});
const AB = [
  { id: 'a', label: '' },
  { id: 'b', label: '' },
] as const;

/** A door or panel that a switch leans on: home, or not quite. */
export const panelDoor = definePart({
  kind: 'panelDoor',
  section: 'equipment',
  parameters: none,
  terminals: [],
  branches: [],
  modes: [{ id: 'ajar', weight: 1 }],
  replaceMinutes: 1,
  initial: (_params, fault) => ({ due: Number.POSITIVE_INFINITY, open: 0, ajar: fault?.mode === 'ajar' ? 1 : 0 }),
  conduct() {},
  drive: (_site, state) => (state.open === 1 || state.ajar === 1 ? 0 : 1),
  operate(_site, state, _control, value) {
    state.open = value === 'open' ? 1 : 0;
    state.ajar = 0;
  },
  signs: (_site, state) => (state.open === 1 ? [] : [{ key: 'seat', value: state.ajar === 1 ? 'ajar' : 'home', sense: 'inspect' }]),
});

/** The blower door's interlock: closed while the door is home, or while a hand or a strap holds the plunger in. */
export const doorSwitch = definePart({
  kind: 'doorSwitch',
  section: 'equipment',
  parameters: none,
  terminals: AB,
  branches: [['a', 'b']],
  modes: SWITCH_MODES,
  links: ['door'],
  controls: [{ id: 'plunger', positions: ['out', 'held'] }],
  bypass: { control: 'plunger', on: 'held', off: 'out' },
  lineVoltage: true,
  replaceMinutes: 15,
  initial: () => ({ due: Number.POSITIVE_INFINITY, held: 0, in: 1 }),
  conduct(site, state, stamp) {
    stamp.contact(0, has(site, 'stuckClosed') || (state.in === 1 && !has(site, 'stuckOpen')));
  },
  react(site, state) {
    const into = state.held === 1 || site.link('door') === 1 ? 1 : 0;
    if (into === state.in) return false;
    state.in = into;
    return true;
  },
  signs: (_site, state) => [{ key: 'plunger', value: state.held === 1 ? 'held' : state.in === 1 ? 'in' : 'out', sense: 'see' }],
  reads: (state) => (state.held === 1 ? 'held' : 'out'),
  operate(_site, state, _control, value) {
    state.held = value === 'held' ? 1 : 0;
  },
  bypassed: (state) => state.held === 1,
});

/** The secondary drain pan under the coil: dry, or full because the drain is blocked. */
export const drainPan = definePart({
  kind: 'drainPan',
  section: 'equipment',
  parameters: none,
  terminals: [],
  branches: [],
  modes: [{ id: 'full', weight: 1 }],
  replaceMinutes: 10,
  initial: () => ({ due: Number.POSITIVE_INFINITY }),
  conduct() {},
  drive: (site) => (has(site, 'full') ? 1 : 0),
  signs: (site) => [{ key: 'water', value: has(site, 'full') ? 'full' : 'dry', sense: 'inspect' }],
});

/** A float in the pan: lifts and opens R to the thermostat when water comes. */
export const floatSwitch = definePart({
  kind: 'floatSwitch',
  section: 'equipment',
  parameters: none,
  terminals: AB,
  branches: [['a', 'b']],
  modes: SWITCH_MODES,
  links: ['water'],
  replaceMinutes: 15,
  initial: () => ({ due: Number.POSITIVE_INFINITY, up: 0 }),
  conduct(site, state, stamp) {
    stamp.contact(0, has(site, 'stuckClosed') || (state.up === 0 && !has(site, 'stuckOpen')));
  },
  react(site, state) {
    const up = site.link('water') >= 0.5 ? 1 : 0;
    if (up === state.up) return false;
    state.up = up;
    return true;
  },
  signs: (_site, state) => [{ key: 'float', value: state.up === 1 ? 'up' : 'down', sense: 'inspect' }],
});

/** °F of the air over the heat exchanger, as a limit feels it: rises to `target` with a time constant of 90 s. Typical; no source. */
const LIMIT_TAU_SECONDS = 90;
const LIMIT_OPENS = 130;
const LIMIT_CLOSES = 60;
const FULL_AIR_RISE = 55;
const RISE_CEILING = 300;

/** The high limit: opens when flame warms air that does not move enough, closes by itself when cool. Rises are °F above the room. */
export const highLimit = definePart({
  kind: 'highLimit',
  section: 'equipment',
  parameters: none,
  terminals: AB,
  branches: [['a', 'b']],
  modes: SWITCH_MODES,
  links: ['flame', 'air'],
  replaceMinutes: 20,
  initial: () => ({ due: Number.POSITIVE_INFINITY, open: 0, rise: 0, target: 0, since: 0 }),
  conduct(site, state, stamp) {
    stamp.contact(0, has(site, 'stuckClosed') || (state.open === 0 && !has(site, 'stuckOpen')));
  },
  react(site, state) {
    state.rise = state.target + (state.rise - state.target) * Math.exp((state.since - site.now) / LIMIT_TAU_SECONDS);
    state.since = site.now;
    state.target = site.link('flame') > 0.5 ? Math.min(RISE_CEILING, FULL_AIR_RISE / Math.max(site.link('air'), 0.05)) : 0;
    const open = state.open === 1 ? (state.rise <= LIMIT_CLOSES + 1e-6 ? 0 : 1) : state.rise >= LIMIT_OPENS - 1e-6 ? 1 : 0;
    const changed = open !== state.open;
    state.open = open;
    const crossing = open === 1 ? LIMIT_CLOSES : LIMIT_OPENS;
    const part = (crossing - state.target) / (state.rise - state.target);
    const heading = open === 1 ? state.target < crossing : state.target > crossing;
    state.due = heading && part > 0 && part < 1 ? site.now - LIMIT_TAU_SECONDS * Math.log(part) : Number.POSITIVE_INFINITY;
    return changed;
  },
  signs: () => [],
});

/** The roll-out switch: opens once and stays open until its button is pressed. */
export const rollout = definePart({
  kind: 'rollout',
  section: 'equipment',
  parameters: none,
  terminals: AB,
  branches: [['a', 'b']],
  modes: [
    { id: 'tripped', weight: 0.6 },
    { id: 'stuckOpen', weight: 0.3 },
  ],
  controls: [{ id: 'button', positions: ['in'] }],
  replaceMinutes: 15,
  initial: (_params, fault) => ({ due: Number.POSITIVE_INFINITY, tripped: fault?.mode === 'tripped' ? 1 : 0 }),
  conduct(site, state, stamp) {
    stamp.contact(0, state.tripped === 0 && !has(site, 'stuckOpen'));
  },
  signs: (_site, state) => [{ key: 'button', value: state.tripped === 1 ? 'out' : 'in', sense: 'inspect' }],
  reads: (state) => (state.tripped === 1 ? 'out' : 'in'),
  operate(_site, state) {
    state.tripped = 0;
  },
});

/** Seconds between the inducer at speed and a pressure switch that makes; typical, no source. */
const PROVE_SECONDS = 3;

/** The draft pressure switch: makes a few seconds after the inducer draws. */
export const pressureSwitch = definePart({
  kind: 'pressureSwitch',
  section: 'equipment',
  parameters: none,
  terminals: AB,
  branches: [['a', 'b']],
  modes: [
    { id: 'stuckOpen', weight: 1 },
    { id: 'stuckClosed', weight: 0.4 },
    { id: 'hoseOff', weight: 0.8 },
  ],
  links: ['draft'],
  replaceMinutes: 20,
  initial: () => ({ due: Number.POSITIVE_INFINITY, made: 0 }),
  conduct(site, state, stamp) {
    stamp.contact(0, has(site, 'stuckClosed') || (state.made === 1 && !has(site, 'stuckOpen')));
  },
  react(site, state) {
    const draft = site.link('draft') >= 0.5 && !has(site, 'hoseOff');
    if (!draft) {
      state.due = Number.POSITIVE_INFINITY;
      if (state.made === 0) return false;
      state.made = 0;
      return true;
    }
    if (state.made === 1) return false;
    if (state.due === Number.POSITIVE_INFINITY) state.due = site.now + PROVE_SECONDS;
    if (site.now < state.due) return false;
    state.due = Number.POSITIVE_INFINITY;
    state.made = 1;
    return true;
  },
  signs: (site) => [{ key: 'hose', value: has(site, 'hoseOff') ? 'off' : 'on', sense: 'inspect' }],
});

/** Seconds of running without the condenser fan until the head pressure opens its switch, and until it falls again; typical, no source. */
const PRESSURE_RISE_SECONDS = 120;
const PRESSURE_FALL_SECONDS = 240;

/** The high-pressure switch in the outdoor unit: opens when the compressor runs without its fan. */
export const highPressureSwitch = definePart({
  kind: 'highPressureSwitch',
  section: 'equipment',
  parameters: none,
  terminals: AB,
  branches: [['a', 'b']],
  modes: [{ id: 'stuckOpen', weight: 0.7 }],
  links: ['compressor', 'fan'],
  replaceMinutes: 60,
  initial: () => ({ due: Number.POSITIVE_INFINITY, open: 0 }),
  conduct(site, state, stamp) {
    stamp.contact(0, state.open === 0 && !has(site, 'stuckOpen'));
  },
  react(site, state) {
    const rising = site.link('compressor') > 0.5 && site.link('fan') < 0.5;
    const turning = state.open === 1 ? !rising : rising;
    if (!turning) {
      state.due = Number.POSITIVE_INFINITY;
      return false;
    }
    if (state.due === Number.POSITIVE_INFINITY)
      state.due = site.now + (state.open === 1 ? PRESSURE_FALL_SECONDS : PRESSURE_RISE_SECONDS);
    if (site.now < state.due) return false;
    state.due = Number.POSITIVE_INFINITY;
    state.open = 1 - state.open;
    return true;
  },
  signs: () => [],
});
