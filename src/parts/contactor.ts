import { z } from 'zod';
import { ARMATURE, type CoilData, coilHenries, nextArmature } from './coil.ts';
import { GOOD_CONTACT_OHMS, has, magnitude } from './modes.ts';
import { coldJoint, OPENS_WARM, partedWarm, warmJoint } from './opensWarm.ts';
import { definePart } from './part.ts';

/** Typical two-pole definite-purpose coil: 12 Ω DC, 30 VA before the armature seats and 7 VA after; common practice, no source. */
export const CONTACTOR_COIL: CoilData = {
  ratedVolts: 24,
  ohms: 12,
  unsealedVoltAmps: 30,
  sealedVoltAmps: 7,
  pickUp: 0.75,
  dropOut: 0.5,
  chatterFrom: 0.55,
};

/** How slowly its coil warms and cools; typical, no source. */
export const CONTACTOR_TAU_SECONDS = 420;

const NAMES = ['out', 'in', 'chatter'] as const;

/** The outdoor unit's contactor. `pitted` is ohms in one pole. */
export const contactor = definePart({
  kind: 'contactor',
  sounds: { lasting: { chatter: { '1': 'chatter' } }, strikes: { thump: { '1': 'contactor' } } },
  section: 'equipment',
  parameters: z.strictObject({}),
  terminals: [
    { id: 'L1', label: 'L1' },
    { id: 'L2', label: 'L2' },
    { id: 'T1', label: 'T1' },
    { id: 'T2', label: 'T2' },
    { id: 'A1', label: 'A1' },
    { id: 'A2', label: 'A2' },
  ],
  branches: [
    ['L1', 'T1'],
    ['L2', 'T2'],
    ['A1', 'A2'],
  ],
  modes: [
    { id: 'coilOpen', weight: 1 },
    { id: 'coilShorted', weight: 0.4 },
    { id: 'jammed', weight: 0.3 },
    { id: 'poleOpen', weight: 0.6 },
    { id: 'pitted', weight: 0.6, magnitudes: [5, 20] },
    { id: 'welded', weight: 0.5 },
    OPENS_WARM,
  ],
  lineVoltage: true,
  replaceMinutes: 30,
  initial: () => ({ due: Number.POSITIVE_INFINITY, armature: ARMATURE.out as number, ...coldJoint() }),
  conduct(site, state, stamp) {
    const made = state.armature === ARMATURE.in;
    stamp.contact(0, (made && !has(site, 'poleOpen')) || has(site, 'welded'), magnitude(site, 'pitted', GOOD_CONTACT_OHMS));
    stamp.contact(1, made || has(site, 'welded'));
    if (has(site, 'coilOpen') || partedWarm(site, state)) stamp.open(2);
    else if (has(site, 'coilShorted')) stamp.resistor(2, 0.5);
    else {
      const voltAmps = made ? CONTACTOR_COIL.sealedVoltAmps : CONTACTOR_COIL.unsealedVoltAmps;
      stamp.coil(2, CONTACTOR_COIL.ohms, coilHenries(CONTACTOR_COIL, voltAmps, site.hertz));
    }
  },
  react(site, state) {
    const volts = site.volts('A1', 'A2');
    const turned = warmJoint(site, state, volts / CONTACTOR_COIL.ratedVolts, CONTACTOR_TAU_SECONDS);
    state.due = state.turns;
    const dead = has(site, 'coilOpen') || has(site, 'coilShorted') || has(site, 'jammed') || partedWarm(site, state);
    const next = dead ? ARMATURE.out : nextArmature(CONTACTOR_COIL, state.armature, volts);
    if (next === state.armature) return turned;
    state.armature = next;
    return true;
  },
  chatter(state) {
    state.armature = ARMATURE.chatter;
  },
  drive: (_site, state) => (state.armature === ARMATURE.in ? 1 : 0),
  signs: (site, state) => [
    { key: 'armature', value: has(site, 'welded') ? 'in' : (NAMES[state.armature] ?? 'out'), sense: 'see' },
    { key: 'thump', value: state.armature === ARMATURE.in ? 1 : 0, sense: 'hear' },
    { key: 'chatter', value: state.armature === ARMATURE.chatter ? 1 : 0, sense: 'hear' },
  ],
});

/** A wire-nut splice. `corroded` is ohms; common practice, no source. */
export const splice = definePart({
  kind: 'splice',
  section: 'cable',
  parameters: z.strictObject({}),
  terminals: [
    { id: 'a', label: '' },
    { id: 'b', label: '' },
  ],
  branches: [['a', 'b']],
  modes: [
    { id: 'corroded', weight: 1, magnitudes: [15, 80, 400] },
    { id: 'open', weight: 0.6 },
  ],
  replaceMinutes: 10,
  initial: () => ({ due: Number.POSITIVE_INFINITY }),
  conduct(site, _state, stamp) {
    if (has(site, 'open')) stamp.open(0);
    else stamp.resistor(0, magnitude(site, 'corroded', 0.02));
  },
  signs: () => [],
});
