import { z } from 'zod';
import { definePart } from './part.ts';

/** Btu/h that one cubic foot a minute of standard air carries per °F: 60 min × 0.075 lb/ft³ × 0.24 Btu/(lb·°F), ASHRAE Handbook Fundamentals (from memory). */
export const STANDARD_AIR = 1.08;
/** Below this share of its air nothing comes out of the ducts. */
const LEAST_AIR = 0.1;

/**
 * The ducts at the furnace, with a thermometer in the return and one in the supply. What heats or cools the air warms it by
 * q / (1.08 · cfm). `cfm` is the air at full speed, cubic feet a minute; links: what moves the air, what heats it, what cools it.
 */
export const supplyPlenum = definePart<{ cfm: number }, { due: number }>({
  kind: 'supplyPlenum',
  section: 'equipment',
  parameters: z.strictObject({ cfm: z.number().min(100).max(5000).default(1000) }),
  terminals: [],
  branches: [],
  modes: [],
  links: ['air'],
  optionalLinks: ['heating', 'cooling'],
  replaceMinutes: 30,
  initial: () => ({ due: Number.POSITIVE_INFINITY }),
  conduct() {},
  signs(site) {
    const air = site.link('air');
    const heat = site.heat('heating') + site.heat('cooling');
    const rise = air < LEAST_AIR ? 0 : heat / (STANDARD_AIR * site.params.cfm * air);
    return [
      { key: 'returnAir', value: Math.round(site.roomFahrenheit), sense: 'inspect', minor: true },
      { key: 'supplyAir', value: Math.round(site.roomFahrenheit + rise), sense: 'inspect', minor: true },
    ];
  },
});
