import { has } from './modes.ts';
import type { Site } from './part.ts';
import { type Controller, felt, GUARD_SECONDS, MODES, startController, watched } from './thermostatLogic.ts';

/** Auxiliary joins when the room lies this far, °F, under its setting although the compressor has been called this long; typical, no source. */
const DROOP = 2;
const DROOP_SECONDS = 60;
/** … or when the compressor has been called this long without getting there, by however little. */
const LONGEST_FIRST_STAGE_SECONDS = 2400;

/** A heat pump's controller; `w` is its call for heat, `y` the compressor's relay, `aux` W2's. */
type HeatPump = Controller & {
  o: number;
  aux: number;
  e: number;
  emergency: number;
  /** When it falls asleep or has started up, seconds. */
  powerDue: number;
  /** When the compressor's relay closed for heat, seconds. */
  heatFrom: number;
};

/** The parameter that heat pumps' thermostats are set up by: what the reversing valve's screw is live in. */
type SetUp = { readonly reversing: 'O' | 'B' };

export function startHeatPump(emergency: boolean): HeatPump {
  // A house that the story finds under power has a thermostat that is up.
  const stands = { o: 0, aux: 0, e: 0, emergency: emergency ? 1 : 0, powerDue: 0, heatFrom: Number.POSITIVE_INFINITY };
  return { ...startController(), ...stands };
}

/** As which letter the reversing valve's screw behaves. */
export function reversingEnergised({ params, fault }: Pick<Site<SetUp>, 'params' | 'fault'>): 'O' | 'B' {
  return has({ fault }, 'reversingSetWrongly') ? (params.reversing === 'O' ? 'B' : 'O') : params.reversing;
}

function calls(site: Site<SetUp>, state: HeatPump): { heat: boolean; cool: boolean } {
  const room = felt(site);
  const mode = MODES[state.mode];
  const heat = mode === 'heat' && (state.w === 1 ? room < state.setHeat + state.half : room <= state.setHeat - state.half);
  const cools = state.y === 1 && state.w === 0;
  const cool = mode === 'cool' && (cools ? room > state.setCool - state.half : room >= state.setCool + state.half);
  return { heat, cool };
}

/** Whether only the guard keeps the compressor off. */
export function waiting(site: Site<SetUp>, state: HeatPump): boolean {
  const { heat, cool } = calls(site, state);
  return (cool || (heat && state.emergency === 0)) && state.y === 0 && site.now < state.yOpened + GUARD_SECONDS;
}

/** Drives the relays of a heat pump's thermostat that has power, and sets `due`. */
export function heatPumpStages(site: Site<SetUp>, state: HeatPump): void {
  const { heat, cool } = calls(site, state);
  const emergency = heat && state.emergency === 1;
  const guarded = waiting(site, state);
  const compressor = (cool || (heat && !emergency)) && !guarded;
  if (state.y === 1 && !compressor) state.yOpened = site.now;
  state.w = heat ? 1 : 0;
  state.y = compressor ? 1 : 0;
  state.e = emergency ? 1 : 0;
  if (!heat || !compressor) state.heatFrom = Number.POSITIVE_INFINITY;
  else if (state.heatFrom === Number.POSITIVE_INFINITY) state.heatFrom = site.now;
  state.due = guarded ? state.yOpened + GUARD_SECONDS : Number.POSITIVE_INFINITY;
  state.aux = emergency || auxiliary(site, state, heat) ? 1 : 0;
  state.o = MODES[state.mode] === (reversingEnergised(site) === 'O' ? 'cool' : 'heat') ? 1 : 0;
  state.g = state.fan === 1 || compressor || emergency || state.aux === 1 ? 1 : 0;
}

/** Whether the second stage is wanted; brings `due` forward to when it may be. */
function auxiliary(site: Site<SetUp>, state: HeatPump, heat: boolean): boolean {
  if (!heat || has(site, 'auxiliaryNever') || state.heatFrom === Number.POSITIVE_INFINITY) return false;
  if (state.aux === 1) return felt(site) < state.setHeat;
  const from = state.heatFrom + (felt(site) <= state.setHeat - DROOP ? DROOP_SECONDS : LONGEST_FIRST_STAGE_SECONDS);
  if (site.now >= from && felt(site) < state.setHeat) return true;
  if (site.now < from) state.due = Math.min(state.due, from);
  return false;
}

/** Room temperatures at which it thinks again, °F. */
export function stageTemperatures(site: Site<SetUp>, state: HeatPump): readonly number[] {
  const own = watched(site, state);
  if (MODES[state.mode] !== 'heat') return own;
  const shift = felt(site) - site.roomFahrenheit;
  return [...own, state.setHeat - DROOP - shift, state.setHeat - shift];
}
