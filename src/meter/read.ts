/**
 * What the display says. The circuit is a Thevenin port between red and black; the meter's burden loads it here, and
 * because everything is linear that equals solving the network again with the burden wired in.
 *
 * The display is a function of the circuit alone: no noise, and no gain error. Accuracy is what a reader must allow for.
 */
import type { Phasor } from '../circuit/admittance.ts';
import {
  COUNTS,
  FUNCTION_SPECS,
  LIVE_VOLTS,
  type MeterFunction,
  type MeterPrefix,
  type MeterUnit,
  MICROAMPS_INPUT,
  PREFIX_VALUES,
  resolutionOf,
  SHUNTED_OHMS,
  TONE_OHMS,
} from './functions.ts';

/** Red and black as the circuit presents them: open-circuit volts (red minus black) and impedance, all sources dead. */
export interface Port {
  /** Line frequency at which the AC figures hold. */
  readonly hertz: number;
  readonly acVolts: Readonly<Phasor>;
  readonly acOhms: number;
  readonly acReactance: number;
  readonly dcVolts: number;
  readonly dcOhms: number;
}

export const READING_KINDS = ['blank', 'number', 'overload', 'live', 'fuseOpen'] as const;
/** 'live': ohms, tone or capacitance on a live circuit, no honest number. 'fuseOpen': the meter's own fuse. */
export type ReadingKind = (typeof READING_KINDS)[number];

export interface Reading {
  readonly fn: MeterFunction;
  readonly kind: ReadingKind;
  /** As displayed, rounded to the last digit, in the unit without prefix. 0 unless a number. */
  readonly value: number;
  /** Digits with '.' as the point, or 'OL'; empty when there is nothing honest to say. */
  readonly text: string;
  readonly prefix: MeterPrefix;
  readonly unit: MeterUnit;
  readonly tone: boolean;
  /** What the last digit is worth, in the unit without prefix. */
  readonly resolution: number;
}

/** What the meter displays with both leads on a circuit. A clamp without a conductor in it reads zero. */
export function readPort(fn: MeterFunction, port: Port): Reading {
  switch (fn) {
    case 'voltsAc':
    case 'voltsLoaded':
      return display(fn, acVoltsAcrossBurden(fn, port));
    case 'voltsDc':
      return display(fn, dcVoltsAcrossBurden(fn, port));
    case 'ohms':
    case 'tone':
      return isLive(fn, port) ? withoutNumber(fn, 'live') : display(fn, port.dcOhms);
    case 'capacitance':
      return isLive(fn, port) ? withoutNumber(fn, 'live') : readCapacitance(port);
    case 'microampsDc':
      return readMicroampsPort(port);
    case 'ampsAc':
    case 'off':
      return openLeads(fn);
  }
}

/** What a meter would say that took nothing from the circuit and minded no live one: the belief, not the display. Volts, ohms and tone. */
export function readIdeal(fn: MeterFunction, port: Port): Reading {
  switch (fn) {
    case 'voltsAc':
    case 'voltsLoaded':
      return display(fn, Math.hypot(port.acVolts.re, port.acVolts.im));
    case 'voltsDc':
      return display(fn, port.dcVolts);
    case 'ohms':
    case 'tone':
      return display(fn, port.dcOhms);
    default:
      return readPort(fn, port);
  }
}

/** What ohms, tone and capacitance say on a live circuit. */
export function liveReading(fn: MeterFunction): Reading {
  return withoutNumber(fn, 'live');
}

/**
 * What the clamp displays.
 * @param conductors current of every conductor in the jaw, rms amps, all counted in one direction
 * @param turns how often they pass through the jaw
 */
export function readClamp(conductors: readonly Readonly<Phasor>[], turns = 1): Reading {
  let re = 0;
  let im = 0;
  for (const amps of conductors) {
    re += amps.re;
    im += amps.im;
  }
  return display('ampsAc', Math.hypot(re, im) * turns);
}

/**
 * What microamps displays when the burden is wired into the network and carries this current.
 * @param dcAmps from red to black through the meter
 * @param acAmps rms, beside it
 */
export function readMicroamps(dcAmps: number, acAmps = 0): Reading {
  if (Math.hypot(dcAmps, acAmps) > MICROAMPS_INPUT.fuseAmps) return withoutNumber('microampsDc', 'fuseOpen');
  return display('microampsDc', dcAmps * 1e6);
}

/** What the meter displays with a lead in the air. */
export function openLeads(fn: MeterFunction): Reading {
  if (fn === 'off') return withoutNumber(fn, 'blank');
  return display(fn, fn === 'ohms' || fn === 'tone' ? Infinity : 0);
}

/** ± of a reading in its unit without prefix: percent of it and counts of its last digit. 0 unless a number. */
export function accuracyOf(reading: Reading): number {
  if (reading.kind !== 'number') return 0;
  const { accuracyPercent, accuracyCounts } = FUNCTION_SPECS[reading.fn];
  return (Math.abs(reading.value) * accuracyPercent) / 100 + accuracyCounts * reading.resolution;
}

/** Rounds to the lowest range that holds the value; OL above the last. */
function display(fn: MeterFunction, value: number): Reading {
  const spec = FUNCTION_SPECS[fn];
  if (Math.abs(value) > spec.most) return withoutNumber(fn, 'overload');
  for (const range of spec.ranges) {
    const resolution = resolutionOf(range);
    const counts = Math.round(Math.abs(value) / resolution);
    if (counts > COUNTS) continue;
    const sign = value < 0 && counts > 0 ? '-' : '';
    const text = sign + (counts / 10 ** range.decimals).toFixed(range.decimals);
    const shown = Number(text) * PREFIX_VALUES[range.prefix];
    const tone = fn === 'tone' && shown < TONE_OHMS;
    return { fn, kind: 'number', value: shown, text, prefix: range.prefix, unit: spec.unit, tone, resolution };
  }
  return withoutNumber(fn, 'overload');
}

function withoutNumber(fn: MeterFunction, kind: Exclude<ReadingKind, 'number'>): Reading {
  const { ranges, unit } = FUNCTION_SPECS[fn];
  const range = ranges.at(-1);
  return {
    fn,
    kind,
    value: 0,
    text: kind === 'overload' ? 'OL' : '',
    prefix: range?.prefix ?? '',
    unit,
    tone: false,
    resolution: range === undefined ? 0 : resolutionOf(range),
  };
}

/** Magnitude of the AC volts that the burden leaves, by the divider of burden and source impedance. */
function acVoltsAcrossBurden(fn: MeterFunction, port: Port): number {
  const { burdenOhms, burdenFarads } = FUNCTION_SPECS[fn];
  // |Vb| = |V| ÷ |1 + Z·Yb|
  const conductance = 1 / burdenOhms;
  const susceptance = 2 * Math.PI * port.hertz * burdenFarads;
  const re = 1 + port.acOhms * conductance - port.acReactance * susceptance;
  const im = port.acOhms * susceptance + port.acReactance * conductance;
  return Math.hypot(port.acVolts.re, port.acVolts.im) / Math.hypot(re, im);
}

function dcVoltsAcrossBurden(fn: MeterFunction, port: Port): number {
  return port.dcVolts / (1 + port.dcOhms / FUNCTION_SPECS[fn].burdenOhms);
}

function isLive(fn: MeterFunction, port: Port): boolean {
  return acVoltsAcrossBurden(fn, port) > LIVE_VOLTS || Math.abs(dcVoltsAcrossBurden(fn, port)) > LIVE_VOLTS;
}

/**
 * The capacitance beside whatever resistance is there. A shorted capacitor, or one with a winding across it, never
 * charges, and the display says OL.
 */
function readCapacitance(port: Port): Reading {
  if (port.dcOhms < SHUNTED_OHMS) return withoutNumber('capacitance', 'overload');
  const square = port.acOhms * port.acOhms + port.acReactance * port.acReactance;
  const farads = -port.acReactance / square / (2 * Math.PI * port.hertz);
  return display('capacitance', Math.max(0, farads));
}

/**
 * In series the burden carries the current. Across a supply it would drop more than the diodes beside it allow: they
 * conduct, nothing but the fuse is left in the way, and it opens.
 */
function readMicroampsPort(port: Port): Reading {
  const { burdenOhms } = FUNCTION_SPECS.microampsDc;
  const { diodeVolts, fuseOhms } = MICROAMPS_INPUT;
  const dcAmps = port.dcVolts / (port.dcOhms + burdenOhms);
  const acVolts = Math.hypot(port.acVolts.re, port.acVolts.im);
  const acAmps = acVolts / Math.hypot(port.acOhms + burdenOhms, port.acReactance);
  if (Math.hypot(dcAmps, acAmps) * burdenOhms <= diodeVolts) return readMicroamps(dcAmps, acAmps);
  const pastDiodes = (volts: number, ohms: number) => Math.max(0, Math.abs(volts) - diodeVolts) / ohms;
  const surgeDc = pastDiodes(port.dcVolts, port.dcOhms + fuseOhms);
  const surgeAc = pastDiodes(acVolts, Math.hypot(port.acOhms + fuseOhms, port.acReactance));
  const blown = Math.hypot(surgeDc, surgeAc) > MICROAMPS_INPUT.fuseAmps;
  return withoutNumber('microampsDc', blown ? 'fuseOpen' : 'overload');
}
