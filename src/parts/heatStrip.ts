import { z } from 'zod';
import { lagAt, lagReaches } from './lag.ts';
import { GOOD_CONTACT_OHMS, has } from './modes.ts';
import { definePart, type Site } from './part.ts';

/** Btu/h in a kilowatt: the International Table Btu is 1055.05585262 J by definition (ISO 31-4), so 3 600 000 J are 3412.14 Btu. */
const BTU_PER_KILOWATT_HOUR = 3412.14;
const RATED_VOLTS = 240;

/** °F over the air around it: with its full air, where its limit opens and closes, where its link melts, without air. Typical, no source. */
const FULL_AIR_RISE = 40;
const LIMIT_OPENS = 95;
const LIMIT_CLOSES = 50;
const LINK_MELTS = 280;
const RISE_CEILING = 400;
const TAU_SECONDS = 60;
const NEAR = 1e-6;

type StripParameters = { kilowatts: number };
type State = { due: number; warmth: number; target: number; since: number; limitOpen: number; melted: number };

function elementOhms({ kilowatts }: StripParameters): number {
  return RATED_VOLTS ** 2 / (kilowatts * 1000);
}

/** What it turns into heat now, kW, by what flows in either half of its element. */
function kilowattsNow(site: Site<StripParameters>): number {
  const half = elementOhms(site.params) / 2;
  return (half * (site.amps(2) ** 2 + site.amps(3) ** 2)) / 1000;
}

/**
 * A 240 V electric heating element with its own limit and its own fusible link in series. Energised without air the limit opens within a
 * minute, and closes by itself when cool; where the limit will not open, the link melts and stays so. `air` is what moves air over it.
 */
export const heatStrip = definePart<StripParameters, State>({
  kind: 'heatStrip',
  section: 'equipment',
  parameters: z.strictObject({ kilowatts: z.number().min(0.5).max(20).default(5) }),
  terminals: [
    { id: 'L1', label: '1' },
    { id: 'TL', label: '2' },
    { id: 'FL', label: '3' },
    { id: 'L2', label: '4' },
  ],
  inner: ['middle'],
  branches: [
    ['L1', 'TL'],
    ['TL', 'FL'],
    ['FL', 'middle'],
    ['middle', 'L2'],
    ['middle', 'earth'],
  ],
  modes: [
    { id: 'linkOpen', weight: 1 },
    { id: 'limitStuckOpen', weight: 0.7 },
    { id: 'limitStuckClosed', weight: 0.2 },
    { id: 'elementOpen', weight: 0.8 },
    { id: 'toEarth', weight: 0.3 },
  ],
  links: ['air'],
  lineVoltage: true,
  replaceMinutes: 45,
  initial: () => ({ due: Number.POSITIVE_INFINITY, warmth: 0, target: 0, since: 0, limitOpen: 0, melted: 0 }),
  conduct(site, state, stamp) {
    const half = elementOhms(site.params) / 2;
    stamp.contact(0, has(site, 'limitStuckClosed') || (state.limitOpen === 0 && !has(site, 'limitStuckOpen')), GOOD_CONTACT_OHMS);
    stamp.contact(1, state.melted === 0 && !has(site, 'linkOpen'), 0.01);
    if (has(site, 'elementOpen')) stamp.open(2);
    else stamp.resistor(2, half);
    stamp.resistor(3, half);
    if (has(site, 'toEarth')) stamp.resistor(4, 0.5);
    else stamp.open(4);
  },
  react(site, state) {
    state.warmth = lagAt(state, site.now, TAU_SECONDS);
    state.since = site.now;
    const share = kilowattsNow(site) / site.params.kilowatts;
    state.target = Math.min(RISE_CEILING, (share * FULL_AIR_RISE) / Math.max(site.link('air'), 0.05));
    const open = state.limitOpen === 1 ? state.warmth > LIMIT_CLOSES + NEAR : state.warmth >= LIMIT_OPENS - NEAR;
    const melted = state.melted === 1 || state.warmth >= LINK_MELTS - NEAR;
    const changed = open !== (state.limitOpen === 1) || melted !== (state.melted === 1);
    state.limitOpen = open ? 1 : 0;
    state.melted = melted ? 1 : 0;
    state.due = Math.min(
      lagReaches(state, open ? LIMIT_CLOSES : LIMIT_OPENS, TAU_SECONDS),
      melted ? Number.POSITIVE_INFINITY : lagReaches(state, LINK_MELTS, TAU_SECONDS),
    );
    return changed;
  },
  drive: (site) => Math.min(1, kilowattsNow(site) / site.params.kilowatts),
  heat: (site) => kilowattsNow(site) * BTU_PER_KILOWATT_HOUR,
  signs: () => [],
  spoilt: (state) => state.melted === 1,
});
