import { z } from 'zod';
import { coilHenries } from './coil.ts';
import { has, magnitude } from './modes.ts';
import { definePart } from './part.ts';

const TRAVEL = { shut: 0, opening: 1, open: 2, closing: 3 } as const;
const NAMES = ['shut', 'opening', 'open', 'closing'] as const;
/** Its motor stands against the stop for as long as it is called, so one figure does; 7 to 8 VA: common practice, no source (physics.md). */
const MOTOR = {
  ratedVolts: 24,
  ohms: 40,
  unsealedVoltAmps: 7.5,
  sealedVoltAmps: 7.5,
  pickUp: 0.75,
  dropOut: 0.5,
  chatterFrom: 0.75,
} as const;
/** The spring takes less time than the motor; typical, no source. */
const CLOSE_SECONDS = 8;

/**
 * A zone valve: a 24 V motor opens it against a spring in `openSeconds`, and only then its end switch closes. A lever opens the valve by hand
 * and leaves the end switch alone. It passes water from fully open until the spring begins to shut it. `slow` is seconds to open;
 * a valve that is `stuckOpen` passes water always, and its motor and end switch work on. Typical; no source.
 */
export const zoneValve = definePart({
  kind: 'zoneValve',
  section: 'equipment',
  sounds: { lasting: { motor: { '1': 'zoneValve' } } },
  parameters: z.strictObject({ openSeconds: z.number().min(10).max(60).default(20) }),
  terminals: [
    { id: 'M1', label: 'M1' },
    { id: 'M2', label: 'M2' },
    { id: 'E1', label: 'E1' },
    { id: 'E2', label: 'E2' },
  ],
  branches: [
    ['M1', 'M2'],
    ['E1', 'E2'],
  ],
  modes: [
    { id: 'motorOpen', weight: 1 },
    { id: 'stuckShut', weight: 0.6 },
    { id: 'stuckOpen', weight: 0.5 },
    { id: 'endSwitchOpen', weight: 1 },
    { id: 'endSwitchWelded', weight: 0.5 },
    { id: 'slow', weight: 0.3, magnitudes: [240] },
    { id: 'leftOpen', weight: 0.5 },
  ],
  controls: [{ id: 'lever', positions: ['auto', 'open'] }],
  replaceMinutes: 30,
  initial: (_params, fault) => ({
    due: Number.POSITIVE_INFINITY,
    travel: TRAVEL.shut as number,
    lever: fault?.mode === 'leftOpen' ? 1 : 0,
  }),
  conduct(site, state, stamp) {
    if (has(site, 'motorOpen')) stamp.open(0);
    else stamp.coil(0, MOTOR.ohms, coilHenries(MOTOR, MOTOR.sealedVoltAmps, site.hertz));
    stamp.contact(1, (state.travel === TRAVEL.open && !has(site, 'endSwitchOpen')) || has(site, 'endSwitchWelded'));
  },
  react(site, state) {
    const up = state.travel === TRAVEL.opening || state.travel === TRAVEL.open;
    const least = MOTOR.ratedVolts * (up ? MOTOR.dropOut : MOTOR.pickUp);
    const driven = site.volts('M1', 'M2') >= least && !has(site, 'motorOpen') && !has(site, 'stuckShut');
    const begin = (travel: number, seconds: number): boolean => {
      state.travel = travel;
      state.due = site.now + seconds;
      return true;
    };
    if (driven && !up) return begin(TRAVEL.opening, magnitude(site, 'slow', site.params.openSeconds));
    if (!driven && up) return begin(TRAVEL.closing, CLOSE_SECONDS);
    if (site.now < state.due) return false;
    state.due = Number.POSITIVE_INFINITY;
    state.travel = up ? TRAVEL.open : TRAVEL.shut;
    return true;
  },
  drive: (site, state) => (state.travel === TRAVEL.open || state.lever === 1 || has(site, 'stuckOpen') ? 1 : 0),
  signs: (_site, state) => [
    { key: 'travel', value: NAMES[state.travel] ?? 'shut', sense: 'see' },
    { key: 'lever', value: state.lever === 1 ? 'open' : 'auto', sense: 'see' },
    { key: 'motor', value: state.travel === TRAVEL.opening ? 1 : 0, sense: 'hear' },
  ],
  reads: (state) => (state.lever === 1 ? 'open' : 'auto'),
  operate(_site, state, _control, value) {
    state.lever = value === 'open' ? 1 : 0;
  },
});
