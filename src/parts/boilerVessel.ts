import { z } from 'zod';
import { definePart, type Site } from './part.ts';

/** What `drive` of the water counts in: 1 is this many °F. */
const FULL_SCALE_FAHRENHEIT = 250;
/** The water's temperature is passed on in steps of this, °F: thermometers, limits and radiators need no finer, and between two steps nothing is solved. */
export const WATER_STEP = 5;
/** Air of the rooms and of the cellar as the water meets it, °F: held still, so that the water's way is one exponential. Typical, no source. */
export const ROOM_FAHRENHEIT = 70;
const CELLAR_FAHRENHEIT = 65;
/** Here the relief valve blows and the water goes no hotter, °F: 30 psi steam tables, from memory 274 °F; kept on the gauge's scale. */
const HOTTEST = 245;
/** What the jacket loses, Btu/(h·°F); typical, no source. */
const JACKET = 5;

const ZONES = ['zone1', 'zone2', 'zone3'] as const;

type VesselParameters = { massBtuPerFahrenheit: number; zoneBtuPerHourFahrenheit: number; startFahrenheit: number };
type VesselState = { due: number; told: number; from: number; since: number; target: number; tau: number };

/** Where the water is heading, °F, and how slowly, seconds. */
function heading(site: Site<VesselParameters>): { readonly target: number; readonly tau: number } {
  const zones = site.link('flow') >= 0.5 ? ZONES.filter((zone) => site.link(zone) >= 0.5).length : 0;
  const out = zones * site.params.zoneBtuPerHourFahrenheit;
  const loss = out + JACKET;
  return {
    target: (out * ROOM_FAHRENHEIT + JACKET * CELLAR_FAHRENHEIT + site.heat('flame')) / loss,
    tau: (site.params.massBtuPerFahrenheit / loss) * 3600,
  };
}

/**
 * The boiler with its water: one thermal mass, warmed by the flame, cooled by each open zone through which water flows, and a little by its
 * jacket. `drive` is the water's temperature, 1 for 250 °F. `zoneBtuPerHourFahrenheit` is what one zone takes, Btu/(h·°F) of water over room.
 */
export const boilerVessel = definePart<VesselParameters, VesselState>({
  kind: 'boilerVessel',
  section: 'equipment',
  parameters: z.strictObject({
    massBtuPerFahrenheit: z.number().min(20).max(2000).default(120),
    zoneBtuPerHourFahrenheit: z.number().min(10).max(1000).default(100),
    startFahrenheit: z.number().min(40).max(200).multipleOf(WATER_STEP).default(140),
  }),
  terminals: [],
  branches: [],
  modes: [],
  links: ['flame', 'flow'],
  optionalLinks: ZONES,
  replaceMinutes: 480,
  initial: ({ startFahrenheit }) => ({
    due: Number.POSITIVE_INFINITY,
    told: startFahrenheit,
    from: startFahrenheit,
    since: 0,
    target: startFahrenheit,
    tau: 3600,
  }),
  conduct() {},
  react(site, state) {
    const { target, tau } = heading(site);
    const arrived = site.now >= state.due;
    if (!arrived && target === state.target && tau === state.tau) return false;
    // What it came to on the way that ends here; on a step it stands to the hair.
    const next = state.told + WATER_STEP * Math.sign(state.target - state.from);
    const reached = state.target + (state.from - state.target) * Math.exp((state.since - site.now) / state.tau);
    state.from = arrived ? next : Math.min(HOTTEST, reached);
    if (arrived) state.told = next;
    Object.assign(state, { since: site.now, target, tau });
    state.due = site.now + secondsToStep(state);
    return arrived;
  },
  drive: (_site, state) => state.told / FULL_SCALE_FAHRENHEIT,
  signs: (_site, state) => [{ key: 'gauge', value: state.told, sense: 'see', through: true, minor: true }],
});

/** Seconds until the water stands at the next step of its way; Infinity when it never will. */
function secondsToStep({ from, target, told, tau }: VesselState): number {
  const up = target > from;
  // It may have turned between two steps: then the step that it comes from is told already, and the next is beyond.
  const step = told + (up ? WATER_STEP : -WATER_STEP);
  if (up && step > HOTTEST) return Number.POSITIVE_INFINITY;
  const share = (step - target) / (from - target);
  return share > 0 && share < 1 ? -tau * Math.log(share) : Number.POSITIVE_INFINITY;
}

/** °F of water that a part feels under its role `water`. */
export function waterFahrenheit(site: Pick<Site, 'link'>): number {
  return site.link('water') * FULL_SCALE_FAHRENHEIT;
}
