import { z } from 'zod';
import { has } from './modes.ts';
import { definePart } from './part.ts';

const MOTION = { off: 0, run: 1, hum: 2 } as const;
const NAMES = ['off', 'run', 'hum'] as const;

/** The circulating pump: a small wet-rotor motor at 120 V, so weak that it stands locked for hours without harm. Typical; no source. */
export const circulator = definePart({
  kind: 'circulator',
  sounds: { lasting: { running: { run: 'circulator', hum: 'circulatorHum', gurgle: 'circulatorAir' } } },
  section: 'equipment',
  parameters: z.strictObject({}),
  terminals: [
    { id: 'a', label: '' },
    { id: 'b', label: '' },
  ],
  branches: [['a', 'b']],
  modes: [
    { id: 'windingOpen', weight: 0.7 },
    { id: 'seized', weight: 1 },
    { id: 'airBound', weight: 0.7 },
  ],
  lineVoltage: true,
  replaceMinutes: 90,
  initial: () => ({ due: Number.POSITIVE_INFINITY, motion: MOTION.off as number }),
  conduct(site, state, stamp) {
    if (has(site, 'windingOpen')) stamp.open(0);
    // About 0.8 A turning and 1.3 A locked.
    else if (state.motion === MOTION.run) stamp.coil(0, 110, 0.27);
    else stamp.coil(0, 60, 0.18);
  },
  react(site, state) {
    const powered = site.volts('a', 'b') >= 85 && !has(site, 'windingOpen');
    const motion = !powered ? MOTION.off : has(site, 'seized') ? MOTION.hum : MOTION.run;
    if (motion === state.motion) return false;
    state.motion = motion;
    return true;
  },
  drive: (site, state) => (state.motion === MOTION.run && !has(site, 'airBound') ? 1 : 0),
  signs: (site, state) => [
    {
      key: 'running',
      value: state.motion === MOTION.run && has(site, 'airBound') ? 'gurgle' : (NAMES[state.motion] ?? 'off'),
      sense: 'hear',
    },
  ],
});
