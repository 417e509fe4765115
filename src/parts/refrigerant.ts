import { z } from 'zod';
import { has } from './modes.ts';
import { definePart } from './part.ts';

/** A sealed refrigerant circuit: filled, or low because a joint weeps (which leaves oil there). Drive is the charge as a fraction. */
export const refrigerantCircuit = definePart({
  kind: 'refrigerantCircuit',
  section: 'equipment',
  parameters: z.strictObject({}),
  terminals: [],
  branches: [],
  modes: [{ id: 'lowCharge', weight: 1 }],
  replaceMinutes: 120,
  initial: () => ({ due: Number.POSITIVE_INFINITY }),
  conduct() {},
  drive: (site) => (has(site, 'lowCharge') ? 0.3 : 1),
  signs: (site) => [{ key: 'joints', value: has(site, 'lowCharge') ? 'oily' : 'dry', sense: 'inspect' }],
});

/**
 * Seconds of running until the suction pressure opens its switch: soon on a low charge, later on a coil without air, which ices. And
 * seconds of standing until the pressures have evened out and it closes again. Typical; no source.
 */
const LOW_CHARGE_SECONDS = 45;
const NO_AIR_SECONDS = 240;
const EVEN_OUT_SECONDS = 180;
/** Less charge, and less air than this, as fractions, let the suction pressure fall. */
const LEAST_CHARGE = 0.5;
const LEAST_AIR = 0.5;

/** The low-pressure switch in the suction line: opens when the compressor runs short of refrigerant or its coil short of air. */
export const lowPressureSwitch = definePart({
  kind: 'lowPressureSwitch',
  section: 'equipment',
  parameters: z.strictObject({}),
  terminals: [
    { id: 'a', label: '' },
    { id: 'b', label: '' },
  ],
  branches: [['a', 'b']],
  modes: [
    { id: 'stuckOpen', weight: 0.7 },
    { id: 'stuckClosed', weight: 0.2 },
  ],
  links: ['compressor', 'charge', 'air'],
  replaceMinutes: 60,
  initial: () => ({ due: Number.POSITIVE_INFINITY, open: 0, began: Number.POSITIVE_INFINITY }),
  conduct(site, state, stamp) {
    stamp.contact(0, has(site, 'stuckClosed') || (state.open === 0 && !has(site, 'stuckOpen')));
  },
  react(site, state) {
    const runs = site.link('compressor') > 0.5;
    const falls = site.link('charge') < LEAST_CHARGE ? LOW_CHARGE_SECONDS : site.link('air') < LEAST_AIR ? NO_AIR_SECONDS : 0;
    const turning = state.open === 1 ? !runs : runs && falls > 0;
    if (!turning) {
      state.began = Number.POSITIVE_INFINITY;
      state.due = Number.POSITIVE_INFINITY;
      return false;
    }
    if (state.began === Number.POSITIVE_INFINITY) state.began = site.now;
    state.due = state.began + (state.open === 1 ? EVEN_OUT_SECONDS : falls);
    if (site.now < state.due) return false;
    state.open = 1 - state.open;
    state.began = Number.POSITIVE_INFINITY;
    state.due = Number.POSITIVE_INFINITY;
    return true;
  },
  signs: () => [],
});
