import { z } from 'zod';
import { ARMATURE, coilHenries, nextArmature } from './coil.ts';
import { CONTACTOR_COIL } from './contactor.ts';
import { has, magnitude } from './modes.ts';
import { definePart } from './part.ts';

/** The relay that belongs there: 3 VA; common practice, no source (physics.md). */
const OWN_OHMS = 70;
const OWN_HENRIES = 0.47;

/**
 * The interlock of a building's exhaust fans: coils that start them with the unit's own fan. One small relay belongs there; `coilsAdded`
 * is how many contactors' coils somebody has hung beside it since, all on the unit's transformer.
 */
export const fanInterlock = definePart({
  kind: 'fanInterlock',
  sounds: { lasting: { chatter: { '1': 'chatter' } } },
  section: 'equipment',
  parameters: z.strictObject({}),
  terminals: [
    { id: 'A1', label: '1' },
    { id: 'A2', label: '2' },
  ],
  branches: [
    ['A1', 'A2'],
    ['A1', 'A2'],
  ],
  modes: [
    { id: 'coilsAdded', weight: 0.5, magnitudes: [4] },
    { id: 'coilShorted', weight: 0.2 },
  ],
  replaceMinutes: 30,
  initial: () => ({ due: Number.POSITIVE_INFINITY, extra: ARMATURE.out as number }),
  conduct(site, state, stamp) {
    if (has(site, 'coilShorted')) stamp.resistor(0, 0.5);
    else stamp.coil(0, OWN_OHMS, OWN_HENRIES);
    const added = magnitude(site, 'coilsAdded', 0);
    if (added === 0) stamp.open(1);
    else {
      const voltAmps = state.extra === ARMATURE.in ? CONTACTOR_COIL.sealedVoltAmps : CONTACTOR_COIL.unsealedVoltAmps;
      stamp.coil(1, CONTACTOR_COIL.ohms / added, coilHenries(CONTACTOR_COIL, voltAmps, site.hertz) / added);
    }
  },
  react(site, state) {
    const added = magnitude(site, 'coilsAdded', 0);
    const next = added === 0 ? ARMATURE.out : nextArmature(CONTACTOR_COIL, state.extra, site.volts('A1', 'A2'));
    if (next === state.extra) return false;
    state.extra = next;
    return true;
  },
  chatter(state) {
    state.extra = ARMATURE.chatter;
  },
  signs: (site, state) => [
    { key: 'coils', value: 1 + magnitude(site, 'coilsAdded', 0), sense: 'inspect' },
    { key: 'chatter', value: state.extra === ARMATURE.chatter ? 1 : 0, sense: 'hear' },
  ],
});
