import { z } from 'zod';
import { WATER_STEP, waterFahrenheit } from './boilerVessel.ts';
import { has, magnitude } from './modes.ts';
import { definePart } from './part.ts';

const HAIR = 1e-6;

type AquastatParameters = { limitFahrenheit: number; differentialFahrenheit: number };
type AquastatState = { due: number; open: number; dial: number };

/**
 * The aquastat: a switch in the burner's circuit that opens where the water reaches its dial, and closes again when it has cooled by its
 * differential. `drifted` is °F by which it opens above its dial, `setWrongly` the dial as somebody left it, °F.
 */
export const aquastat = definePart<AquastatParameters, AquastatState>({
  kind: 'aquastat',
  section: 'equipment',
  parameters: z.strictObject({
    limitFahrenheit: z.number().min(100).max(240).multipleOf(WATER_STEP).default(180),
    differentialFahrenheit: z.number().min(5).max(30).multipleOf(WATER_STEP).default(15),
  }),
  terminals: [
    { id: 'a', label: '' },
    { id: 'b', label: '' },
  ],
  branches: [['a', 'b']],
  modes: [
    { id: 'stuckOpen', weight: 0.8 },
    { id: 'stuckClosed', weight: 0.3 },
    { id: 'drifted', weight: 0.5, magnitudes: [-70, 40] },
    { id: 'setWrongly', weight: 0.5, magnitudes: [100] },
  ],
  links: ['water'],
  controls: [{ id: 'limit', range: { from: 100, to: 240, step: WATER_STEP, press: WATER_STEP } }],
  replaceMinutes: 30,
  initial: ({ limitFahrenheit }, fault) => ({
    due: Number.POSITIVE_INFINITY,
    open: 0,
    dial: fault?.mode === 'setWrongly' ? fault.magnitude : limitFahrenheit,
  }),
  conduct(site, state, stamp) {
    stamp.contact(0, has(site, 'stuckClosed') || (state.open === 0 && !has(site, 'stuckOpen')));
  },
  react(site, state) {
    const opens = state.dial + magnitude(site, 'drifted', 0);
    const water = waterFahrenheit(site);
    const open = water >= opens - HAIR || (state.open === 1 && water > opens - site.params.differentialFahrenheit + HAIR) ? 1 : 0;
    if (open === state.open) return false;
    state.open = open;
    return true;
  },
  signs: (_site, state) => [{ key: 'dial', value: state.dial, sense: 'inspect' }],
  reads: (state) => state.dial,
  operate(_site, state, _control, value) {
    state.dial = Number(value);
  },
});
