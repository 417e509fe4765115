import { z } from 'zod';
import { GOOD_CONTACT_OHMS, has } from './modes.ts';
import { definePart } from './part.ts';
import { wearOn } from './wear.ts';

/** Log-log points of current ÷ rating → seconds, the middle of ISO 8820-3's band (from memory) and its 110 % row. */
const CURVE: readonly (readonly [ratio: number, seconds: number])[] = [
  [1.1, 500_000],
  [1.35, 21],
  [1.6, 3.5],
  [2.0, 0.87],
  [3.5, 0.2],
];

/**
 * Seconds until a blade fuse opens at a steady current, Infinity at 110 % of its rating and below.
 * @param ratio current ÷ rating, 0 and up
 */
export function meltSeconds(ratio: number): number {
  const last = CURVE[CURVE.length - 1] as (typeof CURVE)[number];
  if (ratio <= (CURVE[0] as (typeof CURVE)[number])[0]) return Number.POSITIVE_INFINITY;
  if (ratio >= last[0]) return last[1] * (last[0] / ratio) ** 2;
  for (let i = 1; i < CURVE.length; i++) {
    const [x1, y1] = CURVE[i] as (typeof CURVE)[number];
    if (ratio > x1) continue;
    const [x0, y0] = CURVE[i - 1] as (typeof CURVE)[number];
    const part = Math.log(ratio / x0) / Math.log(x1 / x0);
    return Math.exp(Math.log(y0) + part * Math.log(y1 / y0));
  }
  return last[1];
}

/** A blade fuse in its holder: the board's protection of the 24 V side. */
export const bladeFuse = definePart({
  kind: 'bladeFuse',
  section: 'supply',
  parameters: z.strictObject({ amps: z.union([z.literal(3), z.literal(5)]).default(3) }),
  terminals: [
    { id: 'a', label: '' },
    { id: 'b', label: '' },
  ],
  branches: [['a', 'b']],
  modes: [{ id: 'blown', weight: 1 }],
  pluggable: true,
  replaceMinutes: 3,
  initial: (_params, fault) => ({
    due: Number.POSITIVE_INFINITY,
    blown: fault?.mode === 'blown' ? 1 : 0,
    out: 0,
    damage: 0,
    rate: 0,
    since: 0,
  }),
  conduct(site, state, stamp) {
    stamp.contact(0, state.blown === 0 && state.out === 0 && !has(site, 'blown'), GOOD_CONTACT_OHMS);
  },
  react(site, state) {
    if (state.blown === 1) return false;
    const seconds = meltSeconds(site.amps(0) / site.params.amps);
    if (!wearOn(state, site.now, 1 / seconds)) return false;
    state.blown = 1;
    return true;
  },
  spoilt: (state) => state.blown === 1,
  signs: (_site, state) => [{ key: 'element', value: state.blown === 1 ? 'blown' : 'whole', sense: 'inspect' }],
});
