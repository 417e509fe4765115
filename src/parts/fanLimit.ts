import { z } from 'zod';
import { has, magnitude, SWITCH_MODES } from './modes.ts';
import { definePart } from './part.ts';
import { differs } from './state.ts';

/** Rise of the plenum's air above the room, °F, to which a flame takes it: with all of the air, and with none. Typical; no source. */
const FULL_AIR_RISE = 55;
const STILL_AIR_RISE = 300;
/** Time constants of the plenum, seconds: while the fan moves its air, and while it stands. Typical; no source. */
const MOVED_TAU_SECONDS = 90;
const STILL_TAU_SECONDS = 630;
const LEAST_AIR = 0.1;
/** Rises at which the fan starts and stops, and the limit opens and closes, °F: a room of 70° has them at 110, 90, 200 and 175 °F. Common practice, no source. */
const FAN_ON = 40;
const FAN_OFF = 20;
const LIMIT_OPENS = 130;
const LIMIT_CLOSES = 105;

type State = { due: number; fan: number; open: number; rise: number; target: number; tau: number; since: number };

/**
 * The fan and limit control of an older furnace: one bimetal in the plenum turns a dial past a fan switch and a high limit. The fan starts
 * a minute and a half after the flame and runs on as long after it. `fanSetWrongly` is the rise at which the fan starts, °F.
 */
export const fanLimitControl = definePart<Record<string, never>, State>({
  kind: 'fanLimitControl',
  sounds: { strikes: { click: { '*': 'relay' } } },
  section: 'equipment',
  parameters: z.strictObject({}),
  terminals: [
    { id: 'F1', label: 'fan' },
    { id: 'F2', label: 'fan' },
    { id: 'L1', label: 'limit' },
    { id: 'L2', label: 'limit' },
  ],
  branches: [
    ['F1', 'F2'],
    ['L1', 'L2'],
  ],
  modes: [
    ...SWITCH_MODES.map((mode) => ({ ...mode, id: mode.id === 'stuckOpen' ? 'limitStuckOpen' : 'limitStuckClosed' })),
    { id: 'fanSwitchStuckOpen', weight: 0.8 },
    { id: 'fanSwitchWelded', weight: 0.4 },
    { id: 'fanSetWrongly', weight: 0.6, magnitudes: [115] },
  ],
  links: ['flame', 'air'],
  lineVoltage: true,
  replaceMinutes: 40,
  initial: () => ({ due: Number.POSITIVE_INFINITY, fan: 0, open: 0, rise: 0, target: 0, tau: STILL_TAU_SECONDS, since: 0 }),
  conduct(site, state, stamp) {
    stamp.contact(0, (state.fan === 1 && !has(site, 'fanSwitchStuckOpen')) || has(site, 'fanSwitchWelded'));
    stamp.contact(1, has(site, 'limitStuckClosed') || (state.open === 0 && !has(site, 'limitStuckOpen')));
  },
  react(site, state) {
    if (site.now > state.since) {
      state.rise = state.target + (state.rise - state.target) * Math.exp((state.since - site.now) / state.tau);
      state.since = site.now;
    }
    const before = { fan: state.fan, open: state.open, due: 0 };
    const air = site.link('air');
    state.tau = air >= LEAST_AIR ? MOVED_TAU_SECONDS : STILL_TAU_SECONDS;
    state.target =
      site.link('flame') <= 0.5 ? 0 : air >= LEAST_AIR ? Math.min(STILL_AIR_RISE, FULL_AIR_RISE / air) : STILL_AIR_RISE;
    const turns = [
      state.fan === 1 ? FAN_OFF : magnitude(site, 'fanSetWrongly', FAN_ON),
      state.open === 1 ? LIMIT_CLOSES : LIMIT_OPENS,
    ];
    const past = (at: number | undefined, falling: boolean) =>
      falling ? state.rise <= Number(at) + 1e-6 : state.rise >= Number(at) - 1e-6;
    if (past(turns[0], state.fan === 1)) state.fan = 1 - state.fan;
    if (past(turns[1], state.open === 1)) state.open = 1 - state.open;
    state.due = Number.POSITIVE_INFINITY;
    for (const at of turns) {
      const share = (at - state.target) / (state.rise - state.target);
      if (share > 0 && share < 1) state.due = Math.min(state.due, site.now - state.tau * Math.log(share));
    }
    return differs(before, state);
  },
  signs: (site, state) => [
    { key: 'click', value: state.fan, sense: 'hear' },
    { key: 'fanPointer', value: has(site, 'fanSetWrongly') ? 'high' : 'usual', sense: 'inspect' },
  ],
});
