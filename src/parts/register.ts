import { z } from 'zod';
import { definePart, type Site } from './part.ts';

/** Btu/h that one cubic foot of standard air a minute carries by a degree: 60 min · 0.075 lb/ft³ · 0.24 Btu/(lb·°F). */
const AIR_BTU = 1.08;
/** Below this share of its air nothing is felt at a register. */
const LEAST_AIR = 0.1;
/** °F over or under the room from which a hand calls air hot, warm or cold; common practice, no source. */
const FELT = { hot: 35, warm: 7, cold: -7 } as const;

const SOURCES = ['first', 'second', 'third'] as const;

/** °F by which the air is warmer than the room that it was drawn from: q = 1.08 · cfm · ΔT. */
function rise(site: Site<{ cfm: number }>): number {
  const heat = SOURCES.reduce((sum, role) => sum + site.heat(role), 0);
  return heat / (AIR_BTU * site.params.cfm * site.link('air'));
}

/** A supply register in the house: what a hand, or a thermometer held in it, finds of the air. `cfm` is the air of the whole system. */
export const register = definePart<{ cfm: number }, { due: number }>({
  kind: 'register',
  section: 'equipment',
  parameters: z.strictObject({ cfm: z.number().min(200).max(3000).default(800) }),
  terminals: [],
  branches: [],
  modes: [],
  links: ['air'],
  optionalLinks: SOURCES,
  replaceMinutes: 10,
  initial: () => ({ due: Number.POSITIVE_INFINITY }),
  conduct() {},
  signs(site) {
    if (site.link('air') < LEAST_AIR) return [{ key: 'air', value: 'still', sense: 'see' }];
    const degrees = rise(site);
    const felt = degrees >= FELT.hot ? 'hot' : degrees >= FELT.warm ? 'warm' : degrees <= FELT.cold ? 'cold' : 'room';
    return [
      { key: 'air', value: felt, sense: 'see' },
      { key: 'supply', value: Math.round(site.roomFahrenheit + degrees), sense: 'inspect', minor: true },
    ];
  },
});
