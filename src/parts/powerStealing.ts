import { z } from 'zod';
import { has, magnitude } from './modes.ts';
import { definePart, type Mode, type Site } from './part.ts';
import { differs } from './state.ts';
import {
  CALLS,
  type Controller,
  displaySigns,
  letGo,
  MODES,
  oneStage,
  operateSetting,
  readSetting,
  SETTINGS,
  startController,
  watched,
} from './thermostatLogic.ts';

/** What it needs to live, amps; typical, no source. */
const NEED_AMPS = 0.0028;
/** The trickle's path round an open switch, ohms, while it steals there and while it does not (the switch's own leak); typical, no source. */
const TRICKLE_OHMS = 6200;
const LEAK_OHMS = 33_000;
/** A closed switch, ohms, with the small drop from which it steals meanwhile; one that has failed to a short drops nothing to steal from. */
const CLOSED_OHMS = 1.5;
const SHORTED_OHMS = 0.3;
/** The most that it takes from one switch, amps. */
const MOST_AMPS = 0.005;
/** A solid-state switch fires with this across it, volts, and lets go below its holding current, amps; typical, no source. */
const FIRING_VOLTS = 18;
const HOLDING_AMPS = 0.004;
/** With C wired it lives from there instead. */
const COMMON_OHMS = 5600;
const COMMON_VOLTS = 16;
/** How long a full store lasts with nothing coming in, seconds, and how full it is when a blank display comes back; typical, no source. */
const STORE_SECONDS = 600;
const STORE_COULOMBS = NEED_AMPS * STORE_SECONDS;
const BOOT_SHARE = 0.3;
/** Full and empty are not met to the last bit. */
const SLACK = 1e-6;

/** Its three switches, in the order of the branches: terminal, how their modes begin, and whether it is heat's or cooling's. */
const SWITCHES = [
  { terminal: 'W', name: 'heat' },
  { terminal: 'Y', name: 'cool' },
  { terminal: 'G', name: 'fan' },
] as const;
type Switch = 0 | 1 | 2;
const ALL: readonly Switch[] = [0, 1, 2];

type State = Controller & {
  /** Switches as they conduct: a solid-state switch needs a supply and a load to fire and to hold. */
  wOn: number;
  yOn: number;
  gOn: number;
  /** Share of its store that is left, as of `since`, and how that changes, per second. */
  charge: number;
  rate: number;
  since: number;
};

const driven = (state: State, which: Switch): boolean => [state.w, state.y, state.g][which] === 1;
const conducts = (state: State, which: Switch): boolean => [state.wOn, state.yOn, state.gOn][which] === 1;
const isShorted = (site: Site, which: Switch): boolean => has(site, `${SWITCHES[which].name}SwitchShorted`);

/** Whether it steals through this switch: that of its mode; heat's and cooling's while it is off or has to wake up. */
function steals(state: State, which: Switch): boolean {
  if (SWITCHES[which].name === 'fan') return false;
  const mode = MODES[state.mode];
  return state.alive === 0 || mode === 'off' || mode === SWITCHES[which].name;
}

/** Whether a driven switch conducts, from what is across it while it is open and through it while it is closed. */
function fires(site: Site, state: State, which: Switch): 0 | 1 {
  const { terminal, name } = SWITCHES[which];
  if (!driven(state, which) || has(site, `${name}SwitchOpen`)) return 0;
  const fed = conducts(state, which) ? site.amps(which) >= HOLDING_AMPS : site.volts('R', terminal) >= FIRING_VOLTS;
  return fed ? 1 : 0;
}

/** Amps that come in now. */
function income(site: Site, state: State): number {
  if (site.volts('R', 'C') >= COMMON_VOLTS) return MOST_AMPS;
  const from = ALL.filter((which) => steals(state, which) && !isShorted(site, which));
  return from.reduce<number>((sum, which) => sum + Math.min(site.amps(which), MOST_AMPS), 0);
}

/** Takes its store on to now, and lets it live or die by that. */
function keepAlive(site: Site, state: State): void {
  state.charge = Math.min(1, Math.max(0, state.charge + state.rate * (site.now - state.since)));
  state.since = site.now;
  const was = state.alive;
  if (has(site, 'dead') || state.charge <= SLACK) state.alive = 0;
  else if (state.charge >= BOOT_SHARE - SLACK) state.alive = 1;
  // It cannot know when the compressor stopped: a restart is guarded from the moment that the display comes back.
  if (was === 0 && state.alive === 1) state.yOpened = site.now;
}

/** When its store will be empty, or full enough to come back, seconds; Infinity: never, as things are. */
function turnOf(site: Site, state: State): number {
  const need = (state.alive === 1 ? NEED_AMPS : 0) + magnitude(site, 'storeLeaks', 0);
  state.rate = (income(site, state) - need) / STORE_COULOMBS;
  if (state.alive === 1 && state.rate < 0) return site.now + state.charge / -state.rate;
  if (state.alive === 0 && state.rate > 0 && !has(site, 'dead')) return site.now + (BOOT_SHARE - state.charge) / state.rate;
  return Number.POSITIVE_INFINITY;
}

const switchModes = (name: string, open: number, short: number): Mode[] => [
  { id: `${name}SwitchOpen`, weight: open },
  { id: `${name}SwitchShorted`, weight: short },
];

/**
 * A power-stealing thermostat: three solid-state switches from R, and no cells and no C needed. A trickle of a few milliamps through
 * the idle load keeps its small store full, and a small drop while it calls; so an open switch leaks, a switch without a load behind it
 * neither fires nor feeds, and a blank display can be the fault of what is at the far end. `storeLeaks` is amps, `sensorDrift` °F.
 */
export const powerStealingThermostat = definePart<Record<string, never>, State>({
  kind: 'powerStealingThermostat',
  section: 'thermostat',
  parameters: z.strictObject({}),
  terminals: [
    { id: 'R', label: '' },
    { id: 'W', label: '' },
    { id: 'Y', label: '' },
    { id: 'G', label: '' },
    { id: 'C', label: 'C' },
  ],
  branches: [
    ['R', 'W'],
    ['R', 'Y'],
    ['R', 'G'],
    ['R', 'C'],
  ],
  modes: [
    ...switchModes('heat', 0.5, 0.5),
    ...switchModes('cool', 0.7, 0.7),
    ...switchModes('fan', 0.4, 0.3),
    { id: 'storeLeaks', weight: 0.6, magnitudes: [0.0025, 0.006] },
    { id: 'sensorDrift', weight: 0.4, magnitudes: [-9, 9] },
    { id: 'dead', weight: 0.4 },
  ],
  controls: SETTINGS,
  calls: CALLS,
  removable: true,
  replaceMinutes: 20,
  initial: () => ({ ...startController(), alive: 1, wOn: 0, yOn: 0, gOn: 0, charge: 1, rate: 0, since: 0 }),
  conduct(site, state, stamp) {
    for (const which of ALL) {
      if (isShorted(site, which)) stamp.resistor(which, SHORTED_OHMS);
      else if (conducts(state, which)) stamp.resistor(which, CLOSED_OHMS);
      // A switch that is driven and does not fire trickles too: else it could not tell that its load has come back.
      else stamp.resistor(which, steals(state, which) || driven(state, which) ? TRICKLE_OHMS : LEAK_OHMS);
    }
    stamp.resistor(3, COMMON_OHMS);
  },
  react(site, state) {
    const before = { ...state };
    keepAlive(site, state);
    if (state.alive === 0) letGo(state, site.now);
    else oneStage(site, state, { fanWithHeat: false });
    const ran = state.yOn;
    state.wOn = fires(site, state, 0);
    state.yOn = fires(site, state, 1);
    state.gOn = fires(site, state, 2);
    // It feels its supply go, and guards the compressor for when that comes back.
    if (ran === 1 && state.y === 1 && state.yOn === 0) Object.assign(state, { y: 0, yOpened: site.now });
    state.due = Math.min(state.due, turnOf(site, state));
    // How its store creeps is nobody's to notice.
    const { charge, rate, since } = state;
    return differs({ ...before, charge, rate, since }, state);
  },
  watches: watched,
  signs: displaySigns,
  reads: readSetting,
  operate: (_site, state, control, value) => operateSetting(state, control, value),
});
