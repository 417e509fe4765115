import { z } from 'zod';
import { ROOM_FAHRENHEIT, waterFahrenheit } from './boilerVessel.ts';
import { has } from './modes.ts';
import { definePart, type Site } from './part.ts';

/** Water at which a radiator's output is told, °F; common practice, no source. */
const RATED_FAHRENHEIT = 180;
/** From here a pipe is warm to the hand, °F: the skin’s own warmth, from memory. */
const WARM_TO_THE_HAND = 95;

/** A radiator's heat where its valve is open, its pump runs and nothing holds the water, Btu/h. */
function given(site: Site<{ ratedBtuPerHour: number }>): number {
  if (site.link('valve') < 0.5 || site.link('flow') < 0.5 || has(site, 'airBound')) return 0;
  const over = Math.max(0, waterFahrenheit(site) - ROOM_FAHRENHEIT);
  return (site.params.ratedBtuPerHour * over) / (RATED_FAHRENHEIT - ROOM_FAHRENHEIT);
}

/** A room's baseboard: gives its heat straight to the room, in proportion to water over room. `ratedBtuPerHour` is with water of 180 °F. */
export const baseboard = definePart({
  kind: 'baseboard',
  section: 'equipment',
  parameters: z.strictObject({ ratedBtuPerHour: z.number().min(500).max(60_000).default(11_000) }),
  terminals: [],
  branches: [],
  modes: [{ id: 'airBound', weight: 0.5 }],
  links: ['valve', 'flow', 'water'],
  replaceMinutes: 30,
  initial: () => ({ due: Number.POSITIVE_INFINITY }),
  conduct() {},
  heat: given,
  signs: (site) => [
    {
      key: 'pipe',
      value: given(site) > 0 && waterFahrenheit(site) >= WARM_TO_THE_HAND ? 'hot' : 'cold',
      sense: 'inspect',
    },
  ],
});
