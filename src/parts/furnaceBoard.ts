import { z } from 'zod';
import { GOOD_CONTACT_OHMS, has } from './modes.ts';
import { definePart, type Site } from './part.ts';
import { differs } from './state.ts';

/** Steps of a heating call; typical of an induced-draft furnace with hot-surface ignition, no source. */
const PHASE = { idle: 0, proving: 1, prePurge: 2, warming: 3, trial: 4, running: 5, postPurge: 6, lockout: 7, refused: 8 } as const;
const SECONDS = {
  proving: 30,
  prePurge: 15,
  warming: 20,
  trial: 5,
  blowerOn: 30,
  postPurge: 15,
  blowerOff: 90,
  coolOff: 60,
  lockout: 3600,
} as const;
const TRIALS = 3;
/** A flame proves from here up, DC amps. */
const FLAME_AMPS = 0.5e-6;
/** Volts at which the logic lives and an input reads as called. */
const LOGIC_VOLTS = 16;
const INPUT_VOLTS = 12;

const INPUT_OHMS = 1200;
const SENSE_OHMS = 1500;

/** Branches by name; the order is that of `branches` below. */
const BRANCH = {
  W: 0,
  Y: 1,
  G: 2,
  logic: 3,
  limitFeed: 4,
  limitSense: 5,
  pressureFeed: 6,
  pressureSense: 7,
  gas: 8,
  gasReturn: 9,
  inducer: 10,
  igniter: 11,
  heat: 12,
  cool: 13,
  flame: 14,
} as const;

/** Which printed terminal really serves a function: two may have been printed the wrong way round. */
const MISPRINTS: Readonly<Record<string, readonly [string, string]>> = {
  labelsSwappedWG: ['W', 'G'],
  labelsSwappedYG: ['Y', 'G'],
  labelsSwappedWY: ['W', 'Y'],
};

function serves(site: Site, printed: 'W' | 'Y' | 'G'): string {
  const pair = site.fault ? MISPRINTS[site.fault.mode] : undefined;
  if (!pair) return printed;
  return printed === pair[0] ? pair[1] : printed === pair[1] ? pair[0] : printed;
}

function called(site: Site, wanted: 'W' | 'G'): boolean {
  if (has(site, wanted === 'W' ? 'heatInputDead' : 'fanInputDead')) return false;
  const printed = (['W', 'Y', 'G'] as const).find((terminal) => serves(site, terminal) === wanted) ?? wanted;
  return site.volts(printed, 'C') >= INPUT_VOLTS;
}

type State = {
  due: number;
  alive: number;
  phase: number;
  phaseDue: number;
  tries: number;
  gas: number;
  inducer: number;
  igniter: number;
  /** Blower relays, and when they are to change. */
  heat: number;
  heatDue: number;
  cool: number;
  coolDue: number;
  safeties: number;
  light: number;
};

/** What the light tells, by place; the numbers of flashes are this project's own, and a rig may print others. */
const LIGHTS = ['off', 'steady', 'heating', 'pressureEarly', 'noFlame', 'safetiesOpen', 'pressureLate', 'strayFlame'] as const;
type Light = (typeof LIGHTS)[number];
const CODES = { heating: 1, pressureEarly: 2, noFlame: 4, safetiesOpen: 5, pressureLate: 6, strayFlame: 7 } as const;

function enter(site: Site, state: State, phase: number): void {
  state.phase = phase;
  const seconds: Record<number, number> = {
    [PHASE.proving]: SECONDS.proving,
    [PHASE.prePurge]: SECONDS.prePurge,
    [PHASE.warming]: SECONDS.warming,
    [PHASE.trial]: SECONDS.trial,
    [PHASE.postPurge]: SECONDS.postPurge,
    [PHASE.lockout]: SECONDS.lockout,
  };
  state.phaseDue = site.now + (seconds[phase] ?? Number.POSITIVE_INFINITY);
  state.inducer = phase >= PHASE.proving && phase <= PHASE.postPurge ? 1 : 0;
  state.igniter = phase === PHASE.warming || phase === PHASE.trial ? 1 : 0;
  state.gas = phase === PHASE.trial || phase === PHASE.running ? 1 : 0;
}

/** One move of the heating sequence; leaves the state alone when nothing calls for a move. */
function step(site: Site, state: State, call: boolean, safeties: boolean, pressure: boolean, flame: boolean): void {
  const over = site.now >= state.phaseDue;
  const failed = (): void => {
    state.tries += 1;
    enter(site, state, state.tries >= TRIALS ? PHASE.lockout : PHASE.postPurge);
  };
  const phase = state.phase;
  if (phase === PHASE.idle) {
    if (call && safeties) enter(site, state, pressure ? PHASE.refused : PHASE.proving);
  } else if (phase === PHASE.refused) {
    if (!call || !pressure) enter(site, state, PHASE.idle);
  } else if (phase === PHASE.lockout) {
    if (!call || over) {
      state.tries = 0;
      enter(site, state, PHASE.idle);
    }
  } else if (phase === PHASE.postPurge) {
    if (over) {
      if (!call) state.tries = 0;
      enter(site, state, PHASE.idle);
    }
  } else if (!call) enter(site, state, PHASE.postPurge);
  else if (!safeties) enter(site, state, PHASE.postPurge);
  else if (phase === PHASE.proving) {
    // The inducer goes on trying; the light tells that it did not prove.
    if (pressure) enter(site, state, PHASE.prePurge);
    else if (over) state.phaseDue = Number.POSITIVE_INFINITY;
  } else if (!pressure) enter(site, state, PHASE.proving);
  else if (phase === PHASE.prePurge) {
    if (over) enter(site, state, PHASE.warming);
  } else if (phase === PHASE.warming) {
    if (over) enter(site, state, PHASE.trial);
  } else if (phase === PHASE.trial) {
    if (over) {
      if (flame) enter(site, state, PHASE.running);
      else failed();
    }
  } else if (phase === PHASE.running && !flame) failed();
}

function lightOf(state: State, call: boolean, safeties: boolean, flame: boolean): Light {
  if (!safeties) return 'safetiesOpen';
  if (state.phase === PHASE.lockout) return 'noFlame';
  if (state.phase === PHASE.refused) return 'pressureEarly';
  if (state.phase === PHASE.proving && state.phaseDue === Number.POSITIVE_INFINITY) return 'pressureLate';
  if (flame && state.gas === 0) return 'strayFlame';
  return call && state.phase !== PHASE.idle ? 'heating' : 'steady';
}

/** The furnace's control board: proves its safeties in order, lights the burners, runs the blower with its delays. */
export const furnaceBoard = definePart<Record<string, never>, State>({
  kind: 'furnaceBoard',
  strip: ['R', 'C', 'W', 'Y', 'G'],
  codes: CODES,
  section: 'equipment',
  parameters: z.strictObject({}),
  terminals: [
    { id: 'R', label: 'R' },
    { id: 'C', label: 'C' },
    { id: 'W', label: 'W' },
    { id: 'Y', label: 'Y' },
    { id: 'G', label: 'G' },
    { id: 'LIMOUT', label: 'LIM out' },
    { id: 'LIMIN', label: 'LIM in' },
    { id: 'PSOUT', label: 'PS out' },
    { id: 'PSIN', label: 'PS in' },
    { id: 'GV', label: 'GV' },
    { id: 'GVC', label: 'GV com' },
    { id: 'FS', label: 'flame' },
    { id: 'L1', label: 'L1' },
    { id: 'N', label: 'N' },
    { id: 'IND', label: 'inducer' },
    { id: 'IGN', label: 'igniter' },
    { id: 'HEAT', label: 'heat' },
    { id: 'COOL', label: 'cool' },
  ],
  branches: [
    ['W', 'C'],
    ['Y', 'C'],
    ['G', 'C'],
    ['R', 'C'],
    ['R', 'LIMOUT'],
    ['LIMIN', 'C'],
    ['LIMIN', 'PSOUT'],
    ['PSIN', 'C'],
    ['PSIN', 'GV'],
    ['GVC', 'C'],
    ['L1', 'IND'],
    ['L1', 'IGN'],
    ['L1', 'HEAT'],
    ['L1', 'COOL'],
    ['earth', 'FS'],
  ],
  modes: [
    { id: 'dead', weight: 0.5 },
    { id: 'heatInputDead', weight: 0.5 },
    { id: 'fanInputDead', weight: 0.5 },
    { id: 'inducerRelayOpen', weight: 0.5 },
    { id: 'igniterRelayOpen', weight: 0.5 },
    { id: 'gasRelayOpen', weight: 0.4 },
    { id: 'heatBlowerRelayOpen', weight: 0.5 },
    { id: 'coolBlowerRelayOpen', weight: 0.6 },
    { id: 'coolBlowerRelayWelded', weight: 0.3 },
    { id: 'flameCircuitDead', weight: 0.3 },
    { id: 'labelsSwappedWG', weight: 0.2 },
    { id: 'labelsSwappedYG', weight: 0.2 },
    { id: 'labelsSwappedWY', weight: 0.2 },
  ],
  lineVoltage: true,
  replaceMinutes: 45,
  initial: () => ({
    due: Number.POSITIVE_INFINITY,
    alive: 0,
    phase: PHASE.idle as number,
    phaseDue: Number.POSITIVE_INFINITY,
    tries: 0,
    gas: 0,
    inducer: 0,
    igniter: 0,
    heat: 0,
    heatDue: Number.POSITIVE_INFINITY,
    cool: 0,
    coolDue: Number.POSITIVE_INFINITY,
    safeties: 1,
    light: 0,
  }),
  conduct(site, state, stamp) {
    for (const printed of ['W', 'Y', 'G'] as const) {
      const served = serves(site, printed);
      const dead = (served === 'W' && has(site, 'heatInputDead')) || (served === 'G' && has(site, 'fanInputDead'));
      if (served === 'Y' || dead) stamp.open(BRANCH[printed]);
      else stamp.resistor(BRANCH[printed], INPUT_OHMS);
    }
    if (has(site, 'dead')) stamp.open(BRANCH.logic);
    else stamp.resistor(BRANCH.logic, 300);
    stamp.resistor(BRANCH.limitFeed, GOOD_CONTACT_OHMS);
    stamp.resistor(BRANCH.limitSense, SENSE_OHMS);
    stamp.resistor(BRANCH.pressureFeed, GOOD_CONTACT_OHMS);
    stamp.resistor(BRANCH.pressureSense, SENSE_OHMS);
    stamp.contact(BRANCH.gas, state.gas === 1 && !has(site, 'gasRelayOpen'));
    stamp.resistor(BRANCH.gasReturn, GOOD_CONTACT_OHMS);
    stamp.contact(BRANCH.inducer, state.inducer === 1 && !has(site, 'inducerRelayOpen'));
    stamp.contact(BRANCH.igniter, state.igniter === 1 && !has(site, 'igniterRelayOpen'));
    stamp.contact(BRANCH.heat, state.heat === 1 && state.cool === 0 && !has(site, 'heatBlowerRelayOpen'));
    stamp.contact(BRANCH.cool, (state.cool === 1 && !has(site, 'coolBlowerRelayOpen')) || has(site, 'coolBlowerRelayWelded'));
    stamp.source(BRANCH.flame, 1e6, state.alive === 1 ? 80 : 0, 0);
  },
  react(site, state) {
    const before = { ...state };
    state.alive = !has(site, 'dead') && site.volts('R', 'C') >= LOGIC_VOLTS ? 1 : 0;
    if (state.alive === 0) {
      if (state.phase !== PHASE.idle) enter(site, state, PHASE.idle);
      Object.assign(state, { tries: 0, heat: 0, cool: 0, heatDue: Number.POSITIVE_INFINITY, coolDue: Number.POSITIVE_INFINITY });
      state.light = 0;
      state.due = Number.POSITIVE_INFINITY;
      return differs(before, state);
    }
    const call = called(site, 'W');
    const safeties = site.volts('LIMIN', 'C') >= INPUT_VOLTS;
    const pressure = site.volts('PSIN', 'C') >= INPUT_VOLTS;
    const flame = !has(site, 'flameCircuitDead') && Math.abs(site.dcAmps(BRANCH.flame)) >= FLAME_AMPS;
    step(site, state, call, safeties, pressure, flame);

    // Heat speed follows the flame by 30 s and outlasts it by 90 s; an open safety runs it at once.
    state.safeties = safeties ? 1 : 0;
    const heatWanted = state.phase === PHASE.running || !safeties;
    if (heatWanted === (state.heat === 1)) state.heatDue = Number.POSITIVE_INFINITY;
    else {
      if (state.heatDue === Number.POSITIVE_INFINITY)
        state.heatDue = site.now + (heatWanted ? (safeties ? SECONDS.blowerOn : 0) : SECONDS.blowerOff);
      if (site.now >= state.heatDue) {
        state.heat = heatWanted ? 1 : 0;
        state.heatDue = Number.POSITIVE_INFINITY;
      }
    }
    const fan = called(site, 'G');
    if (fan) {
      state.cool = 1;
      state.coolDue = Number.POSITIVE_INFINITY;
    } else if (state.cool === 1) {
      if (state.coolDue === Number.POSITIVE_INFINITY) state.coolDue = site.now + SECONDS.coolOff;
      if (site.now >= state.coolDue) {
        state.cool = 0;
        state.coolDue = Number.POSITIVE_INFINITY;
      }
    }
    state.light = LIGHTS.indexOf(lightOf(state, call, safeties, flame));
    state.due = Math.min(state.phaseDue, state.heatDue, state.coolDue);
    return differs(before, state);
  },
  signs: ({ codes }, state) => {
    const light = LIGHTS[state.light] ?? 'off';
    return [{ key: 'light', value: String(codes[light] ?? light), sense: 'see', through: true }];
  },
});
