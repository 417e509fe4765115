import { z } from 'zod';
import { ARMATURE, type CoilData, coilHenries, nextArmature } from './coil.ts';
import { GOOD_CONTACT_OHMS, has, magnitude } from './modes.ts';
import { definePart, type Sign, type Stamp, type Terminal } from './part.ts';

/** A relay pulls in or it doesn't: below pick-up its light armature does not buzz. */
const NEVER_CHATTERS = { pickUp: 0.75, dropOut: 0.3, chatterFrom: 0.75 } as const;

/** General-purpose 24 V relay: 3 VA, 70 Ω at DC; common practice, no source (physics.md). */
const CONTROL_COIL: CoilData = { ratedVolts: 24, ohms: 70, unsealedVoltAmps: 5, sealedVoltAmps: 3, ...NEVER_CHATTERS };

/** A lockout relay's coil is wound for about 0.6 kΩ, so that beside it a contactor's coil gets next to nothing; typical, no source. */
export const LOCKOUT_COIL: CoilData = { ratedVolts: 24, ohms: 350, unsealedVoltAmps: 1.1, sealedVoltAmps: 0.9, ...NEVER_CHATTERS };

const COIL_TERMINALS: readonly Terminal[] = [
  { id: 'A1', label: '1' },
  { id: 'A2', label: '2' },
];
const SOUND = { strikes: { armature: { '*': 'relay' } } } as const;

type RelayState = { due: number; armature: number };

const atRest = (): RelayState => ({ due: Number.POSITIVE_INFINITY, armature: ARMATURE.out });

function stampCoil(coil: CoilData, state: RelayState, hertz: number, stamp: Stamp): void {
  const voltAmps = state.armature === ARMATURE.in ? coil.sealedVoltAmps : coil.unsealedVoltAmps;
  stamp.coil(0, coil.ohms, coilHenries(coil, voltAmps, hertz));
}

function moves(coil: CoilData, state: RelayState, volts: number): boolean {
  const next = nextArmature(coil, state.armature, volts);
  if (next === state.armature) return false;
  state.armature = next;
  return true;
}

function armatureSign(state: RelayState): readonly Sign[] {
  return [{ key: 'armature', value: state.armature === ARMATURE.in ? 'in' : 'out', sense: 'see' }];
}

/** A plug-in control relay with one changeover contact. `pitted` is ohms in the contact that closes. */
export const controlRelay = definePart<Record<string, never>, RelayState>({
  kind: 'controlRelay',
  sounds: SOUND,
  section: 'equipment',
  parameters: z.strictObject({}),
  terminals: [...COIL_TERMINALS, { id: 'COM', label: 'COM' }, { id: 'NO', label: 'NO' }, { id: 'NC', label: 'NC' }],
  branches: [
    ['A1', 'A2'],
    ['COM', 'NO'],
    ['COM', 'NC'],
  ],
  modes: [
    { id: 'coilOpen', weight: 1 },
    { id: 'contactOpen', weight: 0.7 },
    { id: 'pitted', weight: 0.4, magnitudes: [80] },
    { id: 'welded', weight: 0.4 },
  ],
  replaceMinutes: 15,
  initial: atRest,
  conduct(site, state, stamp) {
    if (has(site, 'coilOpen')) stamp.open(0);
    else stampCoil(CONTROL_COIL, state, site.hertz, stamp);
    const made = (state.armature === ARMATURE.in && !has(site, 'contactOpen')) || has(site, 'welded');
    stamp.contact(1, made, magnitude(site, 'pitted', GOOD_CONTACT_OHMS));
    stamp.contact(2, state.armature === ARMATURE.out && !has(site, 'welded'));
  },
  react: (site, state) => !has(site, 'coilOpen') && moves(CONTROL_COIL, state, site.volts('A1', 'A2')),
  drive: (_site, state) => (state.armature === ARMATURE.in ? 1 : 0),
  signs: (_site, state) => armatureSign(state),
});

/**
 * A lockout (impedance) relay. Its coil lies across the safety switches and its own closed contact, and in series with the contactor's
 * coil. While all is closed it is bridged. When a safety opens, nearly all of the voltage falls on it: it pulls in, the contactor lets go, and
 * its contact keeps the way open when the safety closes again, until the call is broken.
 */
export const lockoutRelay = definePart<Record<string, never>, RelayState>({
  kind: 'lockoutRelay',
  sounds: SOUND,
  section: 'equipment',
  parameters: z.strictObject({}),
  terminals: [...COIL_TERMINALS, { id: 'COM', label: 'COM' }, { id: 'NC', label: 'NC' }],
  branches: [
    ['A1', 'A2'],
    ['COM', 'NC'],
  ],
  modes: [
    { id: 'coilOpen', weight: 0.4 },
    { id: 'contactOpen', weight: 0.7 },
    { id: 'welded', weight: 0.2 },
  ],
  replaceMinutes: 20,
  initial: atRest,
  conduct(site, state, stamp) {
    if (has(site, 'coilOpen')) stamp.open(0);
    else stampCoil(LOCKOUT_COIL, state, site.hertz, stamp);
    stamp.contact(1, (state.armature === ARMATURE.out && !has(site, 'contactOpen')) || has(site, 'welded'));
  },
  react: (site, state) => !has(site, 'coilOpen') && moves(LOCKOUT_COIL, state, site.volts('A1', 'A2')),
  signs: (_site, state) => armatureSign(state),
});
