import { z } from 'zod';
import { has } from './modes.ts';
import { definePart, type Site } from './part.ts';
import { differs } from './state.ts';

/** Steps of the burner; typical of hot-surface ignition, no source. The pump runs beside them for as long as there is a call. */
const PHASE = { idle: 0, warming: 1, trial: 2, running: 3, rest: 4, lockout: 5 } as const;
const SECONDS: Readonly<Record<number, number>> = {
  [PHASE.warming]: 20,
  [PHASE.trial]: 5,
  [PHASE.rest]: 30,
  [PHASE.lockout]: 3600,
};
const TRIALS = 3;
/** A flame proves from here up, DC amps. */
const FLAME_AMPS = 0.5e-6;
/** Volts at which the logic lives and an input reads as called. */
const LOGIC_VOLTS = 16;
const INPUT_VOLTS = 12;
const INPUT_OHMS = 1200;

const BRANCH = {
  logic: 0,
  callFeed: 1,
  call: 2,
  limitFeed: 3,
  limitSense: 4,
  gas: 5,
  gasReturn: 6,
  circulator: 7,
  circulatorReturn: 8,
  igniter: 9,
  flame: 10,
} as const;

type State = {
  due: number;
  alive: number;
  phase: number;
  phaseDue: number;
  tries: number;
  circulator: number;
  light: number;
};

const LIGHTS = ['off', 'steady', 'burning', 'waterHot', 'noFlame', 'strayFlame'] as const;
/** Numbers of flashes are this project's own. */
const CODES = { burning: 1, waterHot: 2, noFlame: 4, strayFlame: 6 } as const;

function enter(site: Site, state: State, phase: number): void {
  state.phase = phase;
  state.phaseDue = site.now + (SECONDS[phase] ?? Number.POSITIVE_INFINITY);
}

const gasOn = (state: State) => state.phase === PHASE.trial || state.phase === PHASE.running;

function step(site: Site, state: State, wanted: boolean, flame: boolean): void {
  const over = site.now >= state.phaseDue;
  const failed = (): void => {
    state.tries += 1;
    enter(site, state, state.tries >= TRIALS ? PHASE.lockout : PHASE.rest);
  };
  if (state.phase === PHASE.idle) {
    if (wanted) enter(site, state, PHASE.warming);
  } else if (state.phase === PHASE.lockout) {
    if (over) enter(site, state, PHASE.idle);
  } else if (!wanted) enter(site, state, PHASE.idle);
  else if (state.phase === PHASE.warming) {
    if (over) enter(site, state, PHASE.trial);
  } else if (state.phase === PHASE.trial) {
    if (over) {
      if (flame) enter(site, state, PHASE.running);
      else failed();
    }
  } else if (state.phase === PHASE.rest) {
    if (over) enter(site, state, PHASE.idle);
  } else if (!flame) failed();
}

/**
 * A boiler's control with its relays: T–T closed (a thermostat's or an end switch's dry contact) runs the circulator and, through the aquastat,
 * lights the burner. Both stop with the call; while the water is hot the burner rests and the pump goes on.
 */
export const boilerControl = definePart<Record<string, never>, State>({
  kind: 'boilerControl',
  sounds: { strikes: { pump: { '*': 'relay' } } },
  strip: ['R', 'C', 'T1', 'T2'],
  codes: CODES,
  section: 'equipment',
  parameters: z.strictObject({}),
  terminals: [
    { id: 'R', label: 'R' },
    { id: 'C', label: 'C' },
    { id: 'T1', label: 'T' },
    { id: 'T2', label: 'T' },
    { id: 'B1', label: 'B1' },
    { id: 'B2', label: 'B2' },
    { id: 'GV', label: 'GV' },
    { id: 'GVC', label: 'GV com' },
    { id: 'FS', label: 'flame' },
    { id: 'L1', label: 'L1' },
    { id: 'N', label: 'N' },
    { id: 'C1', label: 'C1' },
    { id: 'C2', label: 'C2' },
    { id: 'IGN', label: 'igniter' },
  ],
  branches: [
    ['R', 'C'],
    ['R', 'T1'],
    ['T2', 'C'],
    ['R', 'B1'],
    ['B2', 'C'],
    ['B2', 'GV'],
    ['GVC', 'C'],
    ['L1', 'C1'],
    ['C2', 'N'],
    ['L1', 'IGN'],
    ['earth', 'FS'],
  ],
  modes: [
    { id: 'dead', weight: 0.5 },
    { id: 'callInputDead', weight: 0.5 },
    { id: 'circulatorRelayOpen', weight: 0.7 },
    { id: 'circulatorRelayWelded', weight: 0.3 },
    { id: 'igniterRelayOpen', weight: 0.4 },
    { id: 'gasRelayOpen', weight: 0.4 },
    { id: 'flameCircuitDead', weight: 0.3 },
  ],
  lineVoltage: true,
  replaceMinutes: 45,
  initial: () => ({
    due: Number.POSITIVE_INFINITY,
    alive: 0,
    phase: PHASE.idle as number,
    phaseDue: Number.POSITIVE_INFINITY,
    tries: 0,
    circulator: 0,
    light: 0,
  }),
  conduct(site, state, stamp) {
    if (has(site, 'dead')) stamp.open(BRANCH.logic);
    else stamp.resistor(BRANCH.logic, 300);
    stamp.contact(BRANCH.callFeed, true);
    if (has(site, 'callInputDead')) stamp.open(BRANCH.call);
    else stamp.resistor(BRANCH.call, INPUT_OHMS);
    stamp.contact(BRANCH.limitFeed, true);
    stamp.resistor(BRANCH.limitSense, INPUT_OHMS);
    stamp.contact(BRANCH.gas, gasOn(state) && !has(site, 'gasRelayOpen'));
    stamp.contact(BRANCH.gasReturn, true);
    stamp.contact(
      BRANCH.circulator,
      (state.circulator === 1 && !has(site, 'circulatorRelayOpen')) || has(site, 'circulatorRelayWelded'),
    );
    stamp.contact(BRANCH.circulatorReturn, true);
    const glows = state.phase === PHASE.warming || state.phase === PHASE.trial;
    stamp.contact(BRANCH.igniter, glows && !has(site, 'igniterRelayOpen'));
    stamp.source(BRANCH.flame, 1e6, state.alive === 1 ? 80 : 0, 0);
  },
  react(site, state) {
    const before = { ...state };
    state.alive = !has(site, 'dead') && site.volts('R', 'C') >= LOGIC_VOLTS ? 1 : 0;
    if (state.alive === 0) {
      enter(site, state, PHASE.idle);
      Object.assign(state, { tries: 0, circulator: 0, light: 0, due: Number.POSITIVE_INFINITY });
      return differs(before, state);
    }
    const call = !has(site, 'callInputDead') && site.volts('T2', 'C') >= INPUT_VOLTS;
    const limit = site.volts('B2', 'C') >= INPUT_VOLTS;
    const flame = !has(site, 'flameCircuitDead') && Math.abs(site.dcAmps(BRANCH.flame)) >= FLAME_AMPS;
    if (!call) {
      state.tries = 0;
      if (state.phase === PHASE.lockout) enter(site, state, PHASE.idle);
    }
    step(site, state, call && limit, flame);
    state.circulator = call ? 1 : 0;
    state.light = LIGHTS.indexOf(
      state.phase === PHASE.lockout
        ? 'noFlame'
        : flame && !gasOn(state)
          ? 'strayFlame'
          : !call
            ? 'steady'
            : limit
              ? 'burning'
              : 'waterHot',
    );
    state.due = state.phaseDue;
    return differs(before, state);
  },
  signs: ({ codes }, state) => {
    const light = LIGHTS[state.light] ?? 'off';
    return [
      { key: 'light', value: String(codes[light] ?? light), sense: 'see', through: true },
      { key: 'pump', value: state.circulator, sense: 'hear' },
    ];
  },
});
