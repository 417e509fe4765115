import { z } from 'zod';
import { has, magnitude } from './modes.ts';
import { coilFahrenheit } from './outdoorCoil.ts';
import { definePart, type Site } from './part.ts';
import { differs } from './state.ts';

/** °F of the coil under which a defrost may begin, and from which it ends; typical, no source. */
const BEGINS_BELOW = 32;
const ENDS_FROM = 60;
/** A defrost ends after ten minutes whatever the coil says; common practice, no source. */
const LONGEST_SECONDS = 600;
/** How often it asks its sensor while it defrosts. */
const ASK_SECONDS = 10;
/** Volts at which the logic lives and an input reads as called. */
const LOGIC_VOLTS = 16;
const INPUT_VOLTS = 12;

const BRANCH = { logic: 0, Y: 1, trace: 2, valve: 3, valveDefrost: 4, auxiliary: 5, fan: 6 } as const;

/** What the light tells, by place; the numbers of flashes are this project's own, and a rig may print others. */
const LIGHTS = ['off', 'steady', 'compressorCalled', 'defrosting', 'defrostTooLong'] as const;
const CODES = { compressorCalled: 1, defrosting: 2, defrostTooLong: 3 } as const;

type Parameters = { valve: 'O' | 'B'; intervalMinutes: number };

type State = {
  due: number;
  alive: number;
  called: number;
  /** Seconds of calling since the last defrost, as they stood at `since`. */
  counted: number;
  since: number;
  defrost: number;
  began: number;
  /** The last defrost was ended by the clock. */
  tooLong: number;
  light: number;
};

/** What its sensor makes of the coil, °F. */
function felt(site: Site<Parameters>): number {
  return coilFahrenheit(site.link('coil')) + magnitude(site, 'sensorDrift', 0);
}

/** Its defrost relays, pulled in or stuck so. */
function defrosts(site: Site<Parameters>, state: State): boolean {
  return state.defrost === 1 || has(site, 'defrostStuckOn');
}

function begin(site: Site<Parameters>, state: State): void {
  state.counted = 0;
  state.since = site.now;
  if (has(site, 'defrostNever')) return;
  state.defrost = 1;
  state.began = site.now;
}

function end(site: Site<Parameters>, state: State, tooLong: boolean): void {
  state.defrost = 0;
  state.tooLong = tooLong ? 1 : 0;
  state.counted = 0;
  state.since = site.now;
}

/** Counts the compressor's time and moves in and out of defrost; sets `due`. */
function step(site: Site<Parameters>, state: State, called: boolean): void {
  if (called !== (state.called === 1)) {
    if (state.called === 1) state.counted += site.now - state.since;
    state.called = called ? 1 : 0;
    state.since = site.now;
  }
  const interval = site.params.intervalMinutes * 60;
  if (state.defrost === 1) {
    const asked = site.now - state.began;
    if (!called) end(site, state, false);
    // Asks by its own clock alone: how often anybody else looks must not matter.
    else if (asked > 0 && site.now >= state.due - 1e-6) {
      if (felt(site) >= ENDS_FROM) end(site, state, false);
      else if (asked >= LONGEST_SECONDS - 1e-6) end(site, state, true);
    }
  } else if (called && state.counted + site.now - state.since >= interval - 1e-6) {
    if (felt(site) < BEGINS_BELOW) begin(site, state);
    else {
      state.counted = 0;
      state.since = site.now;
    }
  }
  if (state.defrost === 1) state.due = state.began + ASK_SECONDS * (Math.floor((site.now - state.began) / ASK_SECONDS + 1e-6) + 1);
  else state.due = called ? state.since + interval - state.counted : Number.POSITIVE_INFINITY;
}

/**
 * A heat pump's defrost control. After so many minutes of calling for the compressor it asks its coil sensor, and if the coil is cold turns
 * the reversing valve to cooling, stops the outdoor fan and calls for auxiliary heat, until the coil is warm or ten minutes are over.
 * `valve` is what its valve is energised for. `sensorDrift` is °F.
 */
export const defrostControl = definePart<Parameters, State>({
  kind: 'defrostControl',
  sounds: { strikes: { relay: { '*': 'relay' } } },
  strip: ['R', 'C', 'Y', 'O', 'W2'],
  codes: CODES,
  section: 'equipment',
  parameters: z.strictObject({
    valve: z.enum(['O', 'B']).default('O'),
    intervalMinutes: z.union([z.literal(30), z.literal(60), z.literal(90)]).default(30),
  }),
  terminals: [
    { id: 'R', label: 'R' },
    { id: 'C', label: 'C' },
    { id: 'Y', label: 'Y' },
    { id: 'O', label: 'O' },
    { id: 'W2', label: 'W2' },
    { id: 'YOUT', label: 'CC' },
    { id: 'RV', label: 'RV' },
    { id: 'FANIN', label: 'fan in' },
    { id: 'FANOUT', label: 'fan out' },
  ],
  branches: [
    ['R', 'C'],
    ['Y', 'C'],
    ['Y', 'YOUT'],
    ['O', 'RV'],
    ['R', 'RV'],
    ['R', 'W2'],
    ['FANIN', 'FANOUT'],
  ],
  modes: [
    { id: 'dead', weight: 0.5 },
    { id: 'fanRelayStuckOpen', weight: 0.5 },
    { id: 'fanRelayWelded', weight: 0.4 },
    { id: 'auxiliaryRelayStuckOpen', weight: 0.4 },
    { id: 'defrostNever', weight: 0.7 },
    { id: 'defrostStuckOn', weight: 0.4 },
    { id: 'sensorDrift', weight: 0.8, magnitudes: [30, -30] },
  ],
  controls: [{ id: 'test', positions: ['pressed'] }],
  links: ['coil'],
  lineVoltage: true,
  replaceMinutes: 45,
  initial: () => ({
    due: Number.POSITIVE_INFINITY,
    alive: 0,
    called: 0,
    counted: 0,
    since: 0,
    defrost: 0,
    began: 0,
    tooLong: 0,
    light: 0,
  }),
  conduct(site, state, stamp) {
    const defrost = defrosts(site, state);
    if (has(site, 'dead')) stamp.open(BRANCH.logic);
    else stamp.resistor(BRANCH.logic, 400);
    stamp.resistor(BRANCH.Y, 1200);
    stamp.contact(BRANCH.trace, true);
    stamp.contact(BRANCH.valve, !defrost);
    stamp.contact(BRANCH.valveDefrost, defrost && site.params.valve === 'O');
    stamp.contact(BRANCH.auxiliary, defrost && !has(site, 'auxiliaryRelayStuckOpen'));
    stamp.contact(BRANCH.fan, (!defrost && !has(site, 'fanRelayStuckOpen')) || has(site, 'fanRelayWelded'));
  },
  react(site, state) {
    const before = { ...state };
    state.alive = !has(site, 'dead') && site.volts('R', 'C') >= LOGIC_VOLTS ? 1 : 0;
    if (state.alive === 1) step(site, state, site.volts('Y', 'C') >= INPUT_VOLTS);
    else Object.assign(state, { called: 0, counted: 0, defrost: 0, tooLong: 0, due: Number.POSITIVE_INFINITY });
    const light =
      state.alive === 0
        ? 'off'
        : state.defrost === 1
          ? 'defrosting'
          : state.tooLong === 1
            ? 'defrostTooLong'
            : state.called === 1
              ? 'compressorCalled'
              : 'steady';
    state.light = LIGHTS.indexOf(light);
    return differs(before, state);
  },
  signs(site, state) {
    const light = LIGHTS[state.light] ?? 'off';
    return [
      { key: 'light', value: String(site.codes[light] ?? light), sense: 'see', through: true },
      { key: 'relay', value: state.defrost, sense: 'hear' },
    ];
  },
  reads: () => 'released',
  operate(site, state) {
    if (state.alive === 1 && state.called === 1 && state.defrost === 0) begin(site, state);
  },
});
