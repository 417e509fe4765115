import { z } from 'zod';
import { ARMATURE, type CoilData, coilHenries, nextArmature } from './coil.ts';
import { has, magnitude } from './modes.ts';
import { definePart } from './part.ts';

/** Typical pilot solenoid: 24 V, 5 VA, 30 Ω at direct current (physics.md: 4–6 VA, 20–50 Ω); common practice, no source. */
export const REVERSING_COIL: CoilData = {
  ratedVolts: 24,
  ohms: 30,
  unsealedVoltAmps: 5,
  sealedVoltAmps: 5,
  pickUp: 0.75,
  dropOut: 0.3,
  // Too small to buzz: it draws its pilot over or it does not.
  chatterFrom: 0.75,
};

/** Seconds for the slide to go over once the pilot has; typical, no source. */
const SHIFT_SECONDS = 2;

/**
 * A four-way reversing valve with its pilot solenoid. How its pipes are brazed says what it does while energised: it makes the compressor
 * cool the house (O) or heat it (B). Its drive is 1 while it stands for heating. `slow` is seconds for the slide to go over.
 */
export const reversingValve = definePart({
  kind: 'reversingValve',
  section: 'equipment',
  parameters: z.strictObject({ energisedIn: z.enum(['cooling', 'heating']).default('cooling') }),
  terminals: [
    { id: 'a', label: '' },
    { id: 'b', label: '' },
  ],
  branches: [['a', 'b']],
  modes: [
    { id: 'coilOpen', weight: 1 },
    { id: 'stuckInHeating', weight: 0.5 },
    { id: 'stuckInCooling', weight: 0.5 },
    { id: 'slow', weight: 0.3, magnitudes: [240] },
  ],
  replaceMinutes: 240,
  initial: ({ energisedIn }, fault) => ({
    due: Number.POSITIVE_INFINITY,
    energised: 0,
    heating: fault?.mode === 'stuckInHeating' ? 1 : fault?.mode === 'stuckInCooling' ? 0 : energisedIn === 'cooling' ? 1 : 0,
  }),
  conduct(site, _state, stamp) {
    if (has(site, 'coilOpen')) stamp.open(0);
    else stamp.coil(0, REVERSING_COIL.ohms, coilHenries(REVERSING_COIL, REVERSING_COIL.sealedVoltAmps, site.hertz));
  },
  react(site, state) {
    const before = state.energised;
    state.energised = has(site, 'coilOpen') ? ARMATURE.out : nextArmature(REVERSING_COIL, state.energised, site.volts('a', 'b'));
    const pulled = state.energised === ARMATURE.in;
    const stuck = has(site, 'stuckInHeating') || has(site, 'stuckInCooling');
    const wanted = stuck ? state.heating : pulled === (site.params.energisedIn === 'heating') ? 1 : 0;
    if (wanted === state.heating) {
      state.due = Number.POSITIVE_INFINITY;
      return state.energised !== before;
    }
    if (state.due === Number.POSITIVE_INFINITY) state.due = site.now + magnitude(site, 'slow', SHIFT_SECONDS);
    if (site.now < state.due) return state.energised !== before;
    state.due = Number.POSITIVE_INFINITY;
    state.heating = wanted;
    return true;
  },
  drive: (_site, state) => state.heating,
  signs: (_site, state) => [{ key: 'pull', value: state.energised, sense: 'inspect' }],
});
