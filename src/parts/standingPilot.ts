import { z } from 'zod';
import { has, magnitude } from './modes.ts';
import { definePart } from './part.ts';
import { differs } from './state.ts';

const KNOB = ['off', 'pilot', 'on'] as const;
/** EMF of a thermocouple in its pilot's flame, volts DC, behind 20 mΩ, into a magnet of 20 mΩ: 30 mV open, 15 mV closed; common practice, no source. */
const COUPLE_VOLTS = 0.03;
const COUPLE_OHMS = 0.02;
const MAGNET_OHMS = 0.02;
/** Closed-circuit volts below which the magnet lets go; common practice, no source. */
const HOLD_VOLTS = 0.007;
/** The button is held for a minute while the thermocouple takes up its flame's heat; common practice, no source. */
const HELD_SECONDS = 60;
/** The valve opens at three quarters of its rated volts; common practice, no source. */
const OPENS_AT_VOLTS = 18;

type State = {
  due: number;
  knob: number;
  /** The pilot burns. */
  pilot: number;
  energised: number;
  /** Until when a hand holds the button in, seconds. */
  heldUntil: number;
};

/**
 * The gas valve of a furnace with a standing pilot: a 24 V coil of 10 VA for the main flow, and a magnet that a thermocouple in the pilot's
 * flame holds without any power. When the pilot is out the magnet lets go and no gas flows at all. Lit again by hand, with the button held
 * for a minute. `thermocoupleWeak` is its volts open, `coilPartlyShorted` the share of its impedance that is left.
 */
export const standingPilotValve = definePart<Record<string, never>, State>({
  kind: 'standingPilotValve',
  sounds: { strikes: { click: { '1': 'gasValve' } } },
  section: 'equipment',
  parameters: z.strictObject({}),
  terminals: [
    { id: 'TH', label: 'TH' },
    { id: 'TR', label: 'TR' },
    { id: 'TC', label: 'TC' },
    { id: 'CASE', label: '' },
  ],
  inner: ['tip'],
  branches: [
    ['TH', 'TR'],
    ['CASE', 'tip'],
    ['tip', 'TC'],
    ['TC', 'CASE'],
    ['CASE', 'earth'],
  ],
  modes: [
    { id: 'coilOpen', weight: 0.6 },
    { id: 'coilPartlyShorted', weight: 0.2, magnitudes: [0.5] },
    { id: 'stuckShut', weight: 0.5 },
    { id: 'stuckOpenMain', weight: 0.1 },
    { id: 'pilotOut', weight: 1.5 },
    { id: 'thermocoupleWeak', weight: 1, magnitudes: [0.012] },
    { id: 'leftAtPilot', weight: 0.5 },
  ],
  controls: [
    { id: 'knob', positions: KNOB },
    { id: 'pilot', positions: ['lit'] },
  ],
  gas: true,
  replaceMinutes: 60,
  initial: (_params, fault) => ({
    due: Number.POSITIVE_INFINITY,
    knob: fault?.mode === 'leftAtPilot' ? 1 : 2,
    pilot: fault?.mode === 'pilotOut' || fault?.mode === 'thermocoupleWeak' ? 0 : 1,
    energised: 0,
    heldUntil: -1,
  }),
  conduct(site, state, stamp) {
    const emf = magnitude(site, 'thermocoupleWeak', COUPLE_VOLTS);
    const share = magnitude(site, 'coilPartlyShorted', 1);
    if (has(site, 'coilOpen')) stamp.open(0);
    else stamp.coil(0, 40 * share, 0.11 * share);
    stamp.source(1, COUPLE_OHMS, 0, state.pilot * emf);
    stamp.resistor(2, 0.001);
    stamp.resistor(3, MAGNET_OHMS);
    // The pipe earths it.
    stamp.resistor(4, 0.1);
  },
  react(site, state) {
    const before = { ...state };
    const held = site.now < state.heldUntil - 1e-6;
    if (state.knob === 0 || (!held && site.dcVolts('TC', 'CASE') < HOLD_VOLTS)) state.pilot = 0;
    state.energised = !has(site, 'coilOpen') && site.volts('TH', 'TR') >= OPENS_AT_VOLTS ? 1 : 0;
    state.due = held && state.pilot === 1 ? state.heldUntil : Number.POSITIVE_INFINITY;
    return differs(before, state);
  },
  drive(site, state) {
    const open = (state.energised === 1 && !has(site, 'stuckShut')) || has(site, 'stuckOpenMain');
    return open && state.pilot === 1 && state.knob === 2 ? 1 : 0;
  },
  signs: (site, state) => [
    { key: 'click', value: state.energised, sense: 'hear' },
    { key: 'knob', value: KNOB[state.knob] ?? 'off', sense: 'see' },
    { key: 'pilot', value: state.pilot, sense: 'see' },
    // A tip that has burnt thin gives little; common practice, no source.
    { key: 'couple', value: has(site, 'thermocoupleWeak') ? 'burnt' : 'whole', sense: 'inspect' },
  ],
  reads: (state, control) => (control === 'knob' ? (KNOB[state.knob] ?? 'off') : state.pilot === 1 ? 'lit' : 'out'),
  operate(site, state, control, value) {
    if (control === 'knob') state.knob = Math.max(0, KNOB.indexOf(value as (typeof KNOB)[number]));
    else if (state.knob > 0) {
      state.pilot = 1;
      state.heldUntil = site.now + HELD_SECONDS;
    }
  },
});
