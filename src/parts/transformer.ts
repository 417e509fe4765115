import { z } from 'zod';
import { has } from './modes.ts';
import { coldJoint, OPENS_WARM, partedWarm, warmJoint } from './opensWarm.ts';
import { definePart } from './part.ts';
import { wearOn } from './wear.ts';

/** How slowly iron and windings warm and cool; typical, no source. */
export const TRANSFORMER_TAU_SECONDS = 480;

/**
 * A control transformer. Typical 40 VA: 27 V open, 24 V at its rated resistive load, 1 Ω secondary and 16 Ω primary at DC
 * (common practice, no source); other sizes scale by their VA. In overload the windings cook: ten times the rated current for a few minutes.
 * Its iron warms it whenever it is live, whatever it feeds: `opensWarm` is a primary, or a thermal cut-out in it, that parts then.
 */
export const transformer = definePart({
  kind: 'transformer',
  section: 'supply',
  parameters: z.strictObject({
    primaryVolts: z.union([z.literal(120), z.literal(240)]).default(120),
    secondaryVolts: z.literal(24).default(24),
    ratedVoltAmps: z.number().min(20).max(100).default(40),
  }),
  terminals: [
    { id: 'H1', label: 'H1' },
    { id: 'H2', label: 'H2' },
    { id: 'X1', label: 'X1' },
    { id: 'X2', label: 'X2' },
  ],
  inner: ['h', 'x'],
  branches: [
    ['H1', 'h'],
    ['x', 'X1'],
  ],
  transformers: [
    [
      ['h', 'H2'],
      ['x', 'X2'],
    ],
  ],
  modes: [{ id: 'primaryOpen', weight: 1 }, { id: 'secondaryOpen', weight: 0.7 }, OPENS_WARM],
  lineVoltage: true,
  replaceMinutes: 25,
  initial: () => ({ due: Number.POSITIVE_INFINITY, burnt: 0, damage: 0, rate: 0, since: 0, ...coldJoint() }),
  conduct(site, state, stamp) {
    const { primaryVolts, ratedVoltAmps } = site.params;
    const size = 40 / ratedVoltAmps;
    const perLine = (primaryVolts / 120) ** 2;
    if (has(site, 'primaryOpen') || state.burnt === 1 || partedWarm(site, state)) stamp.open(0);
    else stamp.resistor(0, 16 * size * perLine);
    if (has(site, 'secondaryOpen')) stamp.open(1);
    else stamp.resistor(1, 1 * size);
    stamp.transformer(0, 0.001, 0.001, 6.4 * size * perLine, 27 / primaryVolts);
  },
  react(site, state) {
    if (state.burnt === 1) return false;
    const ratio = (site.amps(1) * site.params.secondaryVolts) / site.params.ratedVoltAmps;
    const excess = ratio * ratio - 1.44;
    const turned = warmJoint(site, state, site.volts('H1', 'H2') / site.params.primaryVolts, TRANSFORMER_TAU_SECONDS);
    const burns = wearOn(state, site.now, excess > 0 ? excess / 16000 : 0);
    if (burns) state.burnt = 1;
    else state.due = Math.min(state.due, state.turns);
    return burns || turned;
  },
  spoilt: (state) => state.burnt === 1,
  signs: (site, state) => [
    { key: 'hum', value: site.volts('h', 'H2') > 60 ? 1 : 0, sense: 'inspect' },
    { key: 'body', value: state.burnt === 1 ? 'burnt' : 'sound', sense: 'inspect' },
  ],
});
