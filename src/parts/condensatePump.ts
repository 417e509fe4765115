import { z } from 'zod';
import { has } from './modes.ts';
import { definePart } from './part.ts';
import { differs } from './state.ts';

/** Shares of the tank: where its float starts the pump and stops it, where the safety opens and closes again; typical, no source. */
const STARTS = 0.5;
const STOPS = 0.1;
const SAFETY_OPENS = 0.9;
const SAFETY_CLOSES = 0.7;
/** Above this the pump ought to have run. */
const HIGH = 0.6;
/** One compressor fills the tank in this many seconds, and the pump empties it in so many; typical, no source. */
const FILL_SECONDS = 1200;
const EMPTY_SECONDS = 30;
const RUN_VOLTS = 85;
const NEARLY = 1e-9;

type State = { due: number; level: number; rate: number; since: number; float: number; running: number; up: number };

/** The next level at which something changes on the way that the water goes now. */
function ahead({ level, rate }: State): number {
  if (rate > 0) return [STARTS, SAFETY_OPENS].find((mark) => mark > level + NEARLY) ?? 1;
  return [SAFETY_CLOSES, STOPS].find((mark) => mark < level - NEARLY) ?? 0;
}

function levelNow({ level, rate, since }: State, now: number): number {
  return Math.min(1, Math.max(0, level + rate * (now - since)));
}

/**
 * A condensate pump: a tank that fills while the coil is cold, a pump that its float starts, and above that a safety switch for the
 * control circuit. What drips is told by the compressors that are linked.
 */
export const condensatePump = definePart<Record<string, never>, State>({
  kind: 'condensatePump',
  section: 'equipment',
  parameters: z.strictObject({}),
  terminals: [
    { id: 'L', label: 'L' },
    { id: 'N', label: 'N' },
    { id: 'a', label: '' },
    { id: 'b', label: '' },
  ],
  branches: [
    ['L', 'N'],
    ['a', 'b'],
  ],
  modes: [
    { id: 'pumpDead', weight: 1 },
    { id: 'floatStuck', weight: 0.8 },
    { id: 'stuckOpen', weight: 0.5 },
    { id: 'stuckClosed', weight: 0.2 },
  ],
  links: ['cooling'],
  optionalLinks: ['secondCooling'],
  lineVoltage: true,
  replaceMinutes: 40,
  initial: () => ({ due: Number.POSITIVE_INFINITY, level: 0.2, rate: 0, since: 0, float: 0, running: 0, up: 0 }),
  conduct(site, state, stamp) {
    if (state.float === 1 && !has(site, 'pumpDead')) stamp.coil(0, 60, 0.25);
    else stamp.open(0);
    stamp.contact(1, has(site, 'stuckClosed') || (state.up === 0 && !has(site, 'stuckOpen')));
  },
  react(site, state) {
    const before = { ...state };
    state.level = levelNow(state, site.now);
    state.since = site.now;
    if (state.level >= STARTS - NEARLY && !has(site, 'floatStuck')) state.float = 1;
    if (state.level <= STOPS + NEARLY || has(site, 'floatStuck')) state.float = 0;
    if (state.level >= SAFETY_OPENS - NEARLY) state.up = 1;
    if (state.level <= SAFETY_CLOSES + NEARLY) state.up = 0;
    state.running = state.float === 1 && !has(site, 'pumpDead') && site.volts('L', 'N') >= RUN_VOLTS ? 1 : 0;
    state.rate = (site.link('cooling') + site.link('secondCooling')) / FILL_SECONDS - state.running / EMPTY_SECONDS;
    const seconds = (ahead(state) - state.level) / state.rate;
    state.due = seconds > NEARLY ? site.now + seconds : Number.POSITIVE_INFINITY;
    return differs({ ...before, level: 0, since: 0 }, { ...state, level: 0, since: 0 });
  },
  signs: (site, state) => [
    { key: 'running', value: state.running, sense: 'hear' },
    { key: 'water', value: state.up === 1 ? 'full' : levelNow(state, site.now) > HIGH ? 'high' : 'low', sense: 'inspect' },
  ],
});
