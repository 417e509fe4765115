import { z } from 'zod';
import { has, magnitude } from './modes.ts';
import { definePart, type Site } from './part.ts';
import { differs } from './state.ts';
import {
  CALLS,
  type Controller,
  displaySigns,
  felt,
  letGo,
  MODES,
  oneStage,
  operateSetting,
  readSetting,
  SETTINGS,
  startController,
  watched,
} from './thermostatLogic.ts';

/** Volts from R to C at which it starts, and below which it goes out; typical, no source. */
const START_VOLTS = 18;
const LEAST_VOLTS = 15;
/** From power to a display that is up and relays that answer; typical, no source. */
const BOOT_SECONDS = 5;
/** What it draws: about 1 VA; typical, no source. */
const OWN_OHMS = 700;

/** The second stage joins when the room is this far off, °F … */
const DROOP = 2;
/** … or when the first has run so long and not done it; both common practice, no source. */
const STAGE_SECONDS = 900;

type State = Controller & {
  /** When it will be up; Infinity without power. */
  bootDue: number;
  /** Second stage of whatever is called, and since when the first has run. */
  second: number;
  firstSince: number;
};

/** How far the room is from the setting, in the direction that is called, °F. */
function off(site: Site, state: State): number {
  return state.w === 1 ? state.setHeat - felt(site) : felt(site) - state.setCool;
}

/** Stages up by droop or by time, and down again when the room is where it was asked to be. */
function secondStage(site: Site, state: State): void {
  if (state.w === 0 && state.y === 0) {
    state.second = 0;
    state.firstSince = Number.POSITIVE_INFINITY;
    return;
  }
  if (state.firstSince === Number.POSITIVE_INFINITY) state.firstSince = site.now;
  if (has(site, 'setWrongly')) return;
  const far = off(site, state);
  if (state.second === 1) {
    if (far > 0) return;
    state.second = 0;
    state.firstSince = site.now;
  }
  if (far >= DROOP || site.now >= state.firstSince + STAGE_SECONDS) state.second = 1;
  else state.due = Math.min(state.due, state.firstSince + STAGE_SECONDS);
}

const RELAYS = [
  { branch: 1, name: 'heatFirst', on: (state: State) => state.w },
  { branch: 2, name: 'heatSecond', on: (state: State) => state.w * state.second },
  { branch: 3, name: 'coolFirst', on: (state: State) => state.y },
  { branch: 4, name: 'coolSecond', on: (state: State) => state.y * state.second },
  { branch: 5, name: 'fan', on: (state: State) => state.g },
] as const;

/**
 * A thermostat of two heating and two cooling stages with a common wire: relays from R, its own power from R and C. `setWrongly`: set up
 * for a single stage. `sensorDrift` is °F.
 */
export const twoStageThermostat = definePart<Record<string, never>, State>({
  kind: 'twoStageThermostat',
  sounds: { strikes: { call: { '*': 'relay' }, stage: { '*': 'relay' } } },
  section: 'thermostat',
  parameters: z.strictObject({}),
  terminals: ['R', 'C', 'W1', 'W2', 'Y1', 'Y2', 'G'].map((id) => ({ id, label: id })),
  branches: [
    ['R', 'C'],
    ['R', 'W1'],
    ['R', 'W2'],
    ['R', 'Y1'],
    ['R', 'Y2'],
    ['R', 'G'],
  ],
  modes: [
    { id: 'heatFirstStuckOpen', weight: 0.6 },
    { id: 'heatSecondStuckOpen', weight: 0.6 },
    { id: 'coolFirstStuckOpen', weight: 0.8 },
    { id: 'coolSecondStuckOpen', weight: 0.8 },
    { id: 'fanStuckOpen', weight: 0.5 },
    { id: 'heatFirstWelded', weight: 0.3 },
    { id: 'heatSecondWelded', weight: 0.2 },
    { id: 'coolFirstWelded', weight: 0.3 },
    { id: 'coolSecondWelded', weight: 0.3 },
    { id: 'fanWelded', weight: 0.3 },
    { id: 'sensorDrift', weight: 0.4, magnitudes: [-9, 9] },
    { id: 'setWrongly', weight: 0.8 },
    { id: 'dead', weight: 0.4 },
  ],
  controls: SETTINGS,
  calls: CALLS,
  removable: true,
  replaceMinutes: 20,
  initial: () => ({
    ...startController(),
    bootDue: Number.POSITIVE_INFINITY,
    second: 0,
    firstSince: Number.POSITIVE_INFINITY,
  }),
  conduct(site, state, stamp) {
    if (has(site, 'dead')) stamp.open(0);
    else stamp.resistor(0, OWN_OHMS);
    for (const { branch, name, on } of RELAYS)
      stamp.contact(branch, (on(state) === 1 && !has(site, `${name}StuckOpen`)) || has(site, `${name}Welded`));
  },
  react(site, state) {
    const before = { ...state };
    const volts = has(site, 'dead') ? 0 : site.volts('R', 'C');
    if (volts < (state.alive === 1 ? LEAST_VOLTS : START_VOLTS)) {
      state.alive = 0;
      state.bootDue = Number.POSITIVE_INFINITY;
    } else if (state.alive === 0) {
      if (state.bootDue === Number.POSITIVE_INFINITY) state.bootDue = site.now + BOOT_SECONDS;
      if (site.now >= state.bootDue) state.alive = 1;
    }
    if (state.alive === 1) {
      oneStage(site, state, { fanWithHeat: false });
      secondStage(site, state);
    } else {
      letGo(state, site.now);
      secondStage(site, state);
      state.due = state.bootDue;
    }
    return differs(before, state);
  },
  watches(site, state) {
    const shift = magnitude(site, 'sensorDrift', 0);
    const mode = MODES[state.mode];
    const more =
      mode === 'heat'
        ? [state.setHeat - DROOP - shift, state.setHeat - shift]
        : mode === 'cool'
          ? [state.setCool + DROOP - shift, state.setCool - shift]
          : [];
    return [...watched(site, state), ...more];
  },
  signs(site, state) {
    const shown = displaySigns(site, state);
    if (state.alive === 0) return shown;
    const stage = state.w === 1 || state.y === 1 ? 1 + state.second : 0;
    return [
      ...shown,
      { key: 'stage', value: stage, sense: 'see' },
      { key: 'stages', value: has(site, 'setWrongly') ? 1 : 2, sense: 'inspect' },
    ];
  },
  reads: readSetting,
  operate: (_site, state, control, value) => operateSetting(state, control, value),
});
