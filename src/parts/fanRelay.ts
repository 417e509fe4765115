import { z } from 'zod';
import { ARMATURE, type CoilData, coilHenries, nextArmature } from './coil.ts';
import { has } from './modes.ts';
import { definePart } from './part.ts';

/** General-purpose fan relay: 24 V, 3 VA, 70 Ω at DC, pulls in at 70–80 %; common practice, no source (physics.md). */
const FAN_RELAY_COIL: CoilData = {
  ratedVolts: 24,
  ohms: 70,
  unsealedVoltAmps: 5,
  sealedVoltAmps: 3,
  pickUp: 0.75,
  dropOut: 0.35,
  chatterFrom: 0.6,
};

const NAMES = ['out', 'in', 'chatter'] as const;

/**
 * The blower's relay: a changeover contact for line voltage. Pulled in it has the blower on the call for the fan; at rest its other contact
 * hands the blower to whatever interlocks it with heat.
 */
export const fanRelay = definePart({
  kind: 'fanRelay',
  sounds: { lasting: { chatter: { '1': 'chatter' } }, strikes: { snap: { '*': 'relay' } } },
  section: 'equipment',
  parameters: z.strictObject({}),
  terminals: [
    { id: 'A1', label: 'A1' },
    { id: 'A2', label: 'A2' },
    { id: 'COM', label: 'COM' },
    { id: 'NO', label: 'NO' },
    { id: 'NC', label: 'NC' },
  ],
  branches: [
    ['A1', 'A2'],
    ['COM', 'NO'],
    ['COM', 'NC'],
  ],
  modes: [
    { id: 'coilOpen', weight: 1 },
    { id: 'coilShorted', weight: 0.3 },
    { id: 'contactOpen', weight: 0.8 },
    { id: 'restContactOpen', weight: 0.6 },
    { id: 'welded', weight: 0.5 },
  ],
  lineVoltage: true,
  replaceMinutes: 25,
  initial: () => ({ due: Number.POSITIVE_INFINITY, armature: ARMATURE.out as number }),
  conduct(site, state, stamp) {
    if (has(site, 'coilOpen')) stamp.open(0);
    else if (has(site, 'coilShorted')) stamp.resistor(0, 0.5);
    else {
      const voltAmps = state.armature === ARMATURE.in ? FAN_RELAY_COIL.sealedVoltAmps : FAN_RELAY_COIL.unsealedVoltAmps;
      stamp.coil(0, FAN_RELAY_COIL.ohms, coilHenries(FAN_RELAY_COIL, voltAmps, site.hertz));
    }
    const welded = has(site, 'welded');
    stamp.contact(1, welded || (state.armature === ARMATURE.in && !has(site, 'contactOpen')));
    stamp.contact(2, !welded && state.armature !== ARMATURE.in && !has(site, 'restContactOpen'));
  },
  react(site, state) {
    const dead = has(site, 'coilOpen') || has(site, 'coilShorted');
    const next = dead ? ARMATURE.out : nextArmature(FAN_RELAY_COIL, state.armature, site.volts('A1', 'A2'));
    if (next === state.armature) return false;
    state.armature = next;
    return true;
  },
  chatter(state) {
    state.armature = ARMATURE.chatter;
  },
  drive: (_site, state) => (state.armature === ARMATURE.in ? 1 : 0),
  signs: (site, state) => [
    { key: 'armature', value: has(site, 'welded') ? 'in' : (NAMES[state.armature] ?? 'out'), sense: 'see' },
    { key: 'snap', value: state.armature === ARMATURE.in ? 1 : 0, sense: 'hear' },
    { key: 'chatter', value: state.armature === ARMATURE.chatter ? 1 : 0, sense: 'hear' },
  ],
});
