import { z } from 'zod';
import { has, magnitude } from './modes.ts';
import { definePart } from './part.ts';
import { wearOn } from './wear.ts';

const OPEN_VOLTS = 27;
const RATED_VOLTS = 24;

/**
 * A plug-in class 2 supply on its two-wire lead: 27 V open and 24 V at its rated load (common practice, no source). It has no fuse that can be
 * changed: in a short its thermal fuse opens for good within seconds to minutes. `weak` is its volts open.
 */
export const plugInSupply = definePart({
  kind: 'plugInSupply',
  section: 'supply',
  parameters: z.strictObject({ ratedVoltAmps: z.number().min(20).max(40).default(40) }),
  terminals: [
    { id: 'X1', label: '24V' },
    { id: 'X2', label: '24V' },
  ],
  inner: ['x', 'lead'],
  branches: [
    ['X2', 'x'],
    ['x', 'lead'],
    ['lead', 'X1'],
  ],
  modes: [
    { id: 'dead', weight: 1 },
    { id: 'weak', weight: 0.5, magnitudes: [15] },
    { id: 'leadOpen', weight: 0.8 },
  ],
  pluggable: true,
  replaceMinutes: 5,
  initial: () => ({ due: Number.POSITIVE_INFINITY, out: 0, burnt: 0, damage: 0, rate: 0, since: 0 }),
  conduct(site, state, stamp) {
    const { ratedVoltAmps } = site.params;
    const ohms = ((OPEN_VOLTS - RATED_VOLTS) * RATED_VOLTS) / ratedVoltAmps;
    const alive = state.out === 0 && state.burnt === 0 && !has(site, 'dead');
    stamp.source(0, ohms, alive ? magnitude(site, 'weak', OPEN_VOLTS) : 0, 0);
    // The thermal fuse is in the primary: the secondary still reads as a winding.
    stamp.contact(1, true);
    stamp.contact(2, !has(site, 'leadOpen'));
  },
  react(site, state) {
    if (state.burnt === 1) return false;
    const ratio = (site.amps(0) * RATED_VOLTS) / site.params.ratedVoltAmps;
    const excess = ratio * ratio - 1.44;
    if (!wearOn(state, site.now, excess > 0 ? excess / 2000 : 0)) return false;
    state.burnt = 1;
    return true;
  },
  spoilt: (state) => state.burnt === 1,
  signs: (site, state) => [
    { key: 'warmth', value: state.out === 0 && state.burnt === 0 && !has(site, 'dead') ? 'warm' : 'cold', sense: 'inspect' },
  ],
});
