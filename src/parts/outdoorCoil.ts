import { z } from 'zod';
import { definePart, type Site } from './part.ts';
import { differs } from './state.ts';

/**
 * Figures of a coil in the open, typical, no source: in heating it lies some degrees below the air, and frost grows where that is under
 * freezing; in cooling it lies above, and far above without its fan. Degrees are °F, frost is 0 (clear) to 1 (blocked).
 */
const BELOW_AIR = 10;
const BELOW_WITHOUT_FAN = 15;
const BELOW_BLOCKED = 15;
const ABOVE_AIR = 20;
const ABOVE_WITHOUT_FAN = 130;
const MELTING = 34;
const TAU_SECONDS = 120;
/** Frost builds while it is colder than this outside (common practice: about 40 °F), and clears by itself where it is warmer. */
const FROST_BELOW = 40;
const FROST_SECONDS = 5400;
const FROST_WITHOUT_FAN_SECONDS = 1800;
const MELT_SECONDS = 150;
const MELT_WITH_FAN_SECONDS = 900;
const THAW_SECONDS = 7200;
/** A blocked coil carries this much less heat. */
const BLOCKED_LOSS = 0.6;
/** Frost is felt by the rest of the system in steps, so that between events nothing changes. */
const STEPS = 8;
const FROSTED_FROM = 2 / STEPS;
const ICED_FROM = 6 / STEPS;
const HOTTEST = 300;
const COLDEST = -40;

type State = {
  due: number;
  /** What it does: see `regimeOf`. */
  regime: number;
  /** Frost and temperature when the regime or the step began. */
  frost: number;
  fahrenheit: number;
  since: number;
  /** Frost in whole steps, for whoever asks between events. */
  step: number;
  hot: number;
};

const REGIME = { idle: 0, heating: 1, heatingWithoutFan: 2, heatingWithoutAir: 3, cooling: 4, coolingWithoutFan: 5 } as const;
/** Less of the house's air than this does not carry the heat away. */
const LEAST_AIR = 0.1;

function regimeOf(site: Site): number {
  if (site.link('compressor') < 0.5) return REGIME.idle;
  const fan = site.link('fan') >= 0.5;
  if (site.link('reversing') >= 0.5) {
    if (site.link('indoorAir') < LEAST_AIR) return REGIME.heatingWithoutAir;
    return fan ? REGIME.heating : REGIME.heatingWithoutFan;
  }
  return fan ? REGIME.cooling : REGIME.coolingWithoutFan;
}

/** Frost per second. */
function growth(site: Site, regime: number): number {
  const cold = site.outdoorFahrenheit < FROST_BELOW;
  if (regime === REGIME.heating || regime === REGIME.heatingWithoutAir) return cold ? 1 / FROST_SECONDS : -1 / THAW_SECONDS;
  if (regime === REGIME.heatingWithoutFan)
    return site.outdoorFahrenheit < FROST_BELOW + BELOW_WITHOUT_FAN ? 1 / FROST_WITHOUT_FAN_SECONDS : 0;
  if (regime === REGIME.cooling) return -1 / MELT_WITH_FAN_SECONDS;
  if (regime === REGIME.coolingWithoutFan) return -1 / MELT_SECONDS;
  return cold ? 0 : -1 / THAW_SECONDS;
}

function frostAt(site: Site, state: State, now: number): number {
  return Math.min(1, Math.max(0, state.frost + growth(site, state.regime) * (now - state.since)));
}

/** Where its temperature is heading with this much frost on it. */
function target(site: Site, regime: number, frost: number): number {
  const air = site.outdoorFahrenheit;
  if (regime === REGIME.heating || regime === REGIME.heatingWithoutAir) return air - BELOW_AIR - BELOW_BLOCKED * frost;
  if (regime === REGIME.heatingWithoutFan) return air - BELOW_AIR - BELOW_WITHOUT_FAN - BELOW_BLOCKED * frost;
  if (regime === REGIME.idle) return air;
  if (frost > 0) return MELTING;
  return air + (regime === REGIME.cooling ? ABOVE_AIR : ABOVE_WITHOUT_FAN);
}

function fahrenheitAt(site: Site, state: State, now: number): number {
  const heading = target(site, state.regime, state.frost);
  return heading + (state.fahrenheit - heading) * Math.exp((state.since - now) / TAU_SECONDS);
}

/** From here up the pressure is more than its switch bears, °F of the coil. */
const TOO_HOT = (HOTTEST + COLDEST) / 2;

/** Drive of a coil at this temperature, and back: 1 is very cold, 0 very hot, and from a half down the head pressure is too high. */
const driveAt = (fahrenheit: number) => Math.min(1, Math.max(0, (HOTTEST - fahrenheit) / (HOTTEST - COLDEST)));
export const coilFahrenheit = (drive: number) => HOTTEST - (HOTTEST - COLDEST) * drive;

/**
 * A heat pump's outdoor coil: frost grows on it in heating and is melted in cooling, and its heat is the compressor's as far as the frost
 * lets through. Its drive is how cold it is (`coilFahrenheit`): a defrost control feels it, and a high-pressure switch that is linked to
 * it instead of to a fan stays closed while it is cold. In heating it is the house's coil whose pressure runs away, where no air takes the
 * heat: the drive tells that as a coil that is too hot.
 */
export const outdoorCoil = definePart<Record<string, never>, State>({
  kind: 'outdoorCoil',
  section: 'equipment',
  parameters: z.strictObject({}),
  terminals: [],
  branches: [],
  modes: [],
  links: ['compressor', 'fan', 'reversing', 'indoorAir'],
  replaceMinutes: 300,
  initial: () => ({ due: 0, regime: -1, frost: 0, fahrenheit: 0, since: 0, step: 0, hot: 0 }),
  conduct() {},
  react(site, state) {
    const regime = regimeOf(site);
    if (state.regime >= 0 && regime === state.regime && site.now < state.due) return false;
    const before = { ...state };
    if (state.regime < 0) state.fahrenheit = site.outdoorFahrenheit;
    else {
      const fahrenheit = fahrenheitAt(site, state, site.now);
      state.frost = frostAt(site, state, site.now);
      state.fahrenheit = fahrenheit;
    }
    // A step that was just reached counts as reached, whatever rounding says.
    const steps = state.frost * STEPS;
    if (Math.abs(steps - Math.round(steps)) < 1e-6) state.frost = Math.round(steps) / STEPS;
    state.since = site.now;
    state.regime = regime;
    state.step = Math.floor(state.frost * STEPS + 1e-9);
    // Reached counts as crossed, whichever way it is heading.
    const rising = target(site, regime, state.frost) > TOO_HOT;
    const choked = regime === REGIME.heatingWithoutAir;
    state.hot = choked || state.fahrenheit > TOO_HOT + (rising ? -1e-6 : 1e-6) ? 1 : 0;
    state.due = site.now + soonest(site, state);
    return differs(before, state);
  },
  drive: (site, state) =>
    state.hot === 1 ? Math.min(driveAt(state.fahrenheit), 0.499) : driveAt(fahrenheitAt(site, state, site.now)),
  heat(site, state) {
    const heat = site.heat('compressor');
    return heat > 0 ? heat * (1 - (BLOCKED_LOSS * state.step) / STEPS) : heat;
  },
  signs(site, state) {
    const heating = site.link('reversing') >= 0.5;
    const runs = state.regime !== REGIME.idle;
    const melts = state.regime >= REGIME.cooling && state.frost > 0;
    const frost = state.step / STEPS;
    return [
      {
        key: 'frost',
        value: melts ? 'melting' : frost >= ICED_FROM ? 'iced' : frost >= FROSTED_FROM ? 'frosted' : 'clear',
        sense: 'see',
        through: true,
      },
      { key: 'line', value: runs ? (heating ? 'hot' : 'cold') : 'even', sense: 'inspect' },
    ];
  },
});

/** Seconds until the next step of frost, or until it is too hot for its switch or no longer. */
function soonest(site: Site, state: State): number {
  const rate = growth(site, state.regime);
  const steps = state.frost * STEPS;
  const next = rate > 0 ? Math.floor(steps + 1e-9) + 1 : rate < 0 ? Math.ceil(steps - 1e-9) - 1 : -1;
  const frost = next >= 0 && next <= STEPS ? (next / STEPS - state.frost) / rate : Number.POSITIVE_INFINITY;
  const heading = target(site, state.regime, state.frost);
  const share = (TOO_HOT - heading) / (state.fahrenheit - heading);
  const crossing = share > 0 && share < 1 - 1e-9 ? -TAU_SECONDS * Math.log(share) : Number.POSITIVE_INFINITY;
  return Math.min(frost, crossing);
}
