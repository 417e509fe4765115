/**
 * The meter's functions: what each puts across the circuit, its ranges, and how far it can be trusted.
 *
 * 10 MΩ beside 100 pF on volts, about 3 kΩ on loaded volts, 6000 counts, the tone below 30 Ω, and all accuracies, ranges and
 * other burdens here are those of an ordinary service meter: common practice, no source.
 */
export const METER_FUNCTIONS = [
  'off',
  'voltsAc',
  'voltsDc',
  'voltsLoaded',
  'ohms',
  'tone',
  'ampsAc',
  'microampsDc',
  'capacitance',
] as const;
export type MeterFunction = (typeof METER_FUNCTIONS)[number];

export type MeterPrefix = '' | 'k' | 'M' | 'm' | 'µ' | 'n';
export type MeterUnit = '' | 'V~' | 'V=' | 'Ω' | 'A~' | 'µA=' | 'F';

/** The display counts this far in every range. */
export const COUNTS = 6000;

/** Below this the tone sounds, ohms. */
export const TONE_OHMS = 30;

/** Volts across the meter's own burden from which ohms, tone and capacitance say that the circuit is live. */
export const LIVE_VOLTS = 0.5;

/** Capacitance is measured by charging; a path past the capacitor with fewer ohms than this never lets it charge. */
export const SHUNTED_OHMS = 10_000;

/** The microamps input: its fuse, and the diodes that carry what its burden cannot. */
export const MICROAMPS_INPUT = {
  fuseAmps: 0.4,
  /** Resistance of fuse and leads. */
  fuseOhms: 2,
  /** Volts across the burden from which the diodes conduct past it, so that the fuse sees the full current. */
  diodeVolts: 0.7,
} as const;

/** One range of the display. It holds `COUNTS` counts. */
export interface MeterRange {
  readonly prefix: MeterPrefix;
  /** Digits after the point. */
  readonly decimals: number;
}

export interface FunctionSpec {
  readonly unit: MeterUnit;
  /** Across the leads; a clamp has none. */
  readonly burdenOhms: number;
  readonly burdenFarads: number;
  /** Lowest first. */
  readonly ranges: readonly MeterRange[];
  /** Largest value shown, in the unit; above it the display says OL. */
  readonly most: number;
  /** ± percent of the reading … */
  readonly accuracyPercent: number;
  /** … and ± counts of its last digit. */
  readonly accuracyCounts: number;
}

const VOLT_RANGES: readonly MeterRange[] = [
  { prefix: '', decimals: 3 },
  { prefix: '', decimals: 2 },
  { prefix: '', decimals: 1 },
];

/**
 * What ohms, tone and capacitance present to a circuit that turns out to be live: their test source's own resistance.
 * Low enough that a voltage borrowed from a neighbouring conductor collapses and is not taken for a live circuit.
 */
const TEST_SOURCE_OHMS = 3000;

/** By function. Values are in the unit without prefix, except microamps, whose unit is the microampere. */
export const FUNCTION_SPECS: Readonly<Record<MeterFunction, FunctionSpec>> = {
  off: {
    unit: '',
    burdenOhms: Infinity,
    burdenFarads: 0,
    ranges: [],
    most: 0,
    accuracyPercent: 0,
    accuracyCounts: 0,
  },
  voltsAc: {
    unit: 'V~',
    burdenOhms: 10e6,
    burdenFarads: 100e-12,
    ranges: VOLT_RANGES,
    most: 600,
    accuracyPercent: 1,
    accuracyCounts: 3,
  },
  voltsDc: {
    unit: 'V=',
    burdenOhms: 10e6,
    burdenFarads: 100e-12,
    ranges: VOLT_RANGES,
    most: 600,
    accuracyPercent: 0.5,
    accuracyCounts: 2,
  },
  voltsLoaded: {
    unit: 'V~',
    burdenOhms: 3000,
    burdenFarads: 100e-12,
    ranges: VOLT_RANGES,
    most: 600,
    accuracyPercent: 2,
    accuracyCounts: 3,
  },
  ohms: {
    unit: 'Ω',
    burdenOhms: TEST_SOURCE_OHMS,
    burdenFarads: 0,
    ranges: [
      { prefix: '', decimals: 1 },
      { prefix: 'k', decimals: 3 },
      { prefix: 'k', decimals: 2 },
      { prefix: 'k', decimals: 1 },
      { prefix: 'M', decimals: 3 },
      { prefix: 'M', decimals: 2 },
    ],
    most: 60e6,
    accuracyPercent: 0.9,
    accuracyCounts: 2,
  },
  tone: {
    unit: 'Ω',
    burdenOhms: TEST_SOURCE_OHMS,
    burdenFarads: 0,
    ranges: [{ prefix: '', decimals: 1 }],
    most: 600,
    accuracyPercent: 0.9,
    accuracyCounts: 2,
  },
  ampsAc: {
    unit: 'A~',
    burdenOhms: Infinity,
    burdenFarads: 0,
    ranges: [
      { prefix: '', decimals: 2 },
      { prefix: '', decimals: 1 },
    ],
    most: 600,
    accuracyPercent: 2,
    accuracyCounts: 5,
  },
  microampsDc: {
    unit: 'µA=',
    burdenOhms: 1000,
    burdenFarads: 0,
    ranges: [{ prefix: '', decimals: 1 }],
    most: 600,
    accuracyPercent: 1,
    accuracyCounts: 2,
  },
  capacitance: {
    unit: 'F',
    burdenOhms: TEST_SOURCE_OHMS,
    burdenFarads: 0,
    ranges: [
      { prefix: 'n', decimals: 1 },
      { prefix: 'µ', decimals: 3 },
      { prefix: 'µ', decimals: 2 },
      { prefix: 'µ', decimals: 1 },
      { prefix: 'µ', decimals: 0 },
    ],
    most: 1000e-6,
    accuracyPercent: 2,
    accuracyCounts: 5,
  },
};

/** What one of the prefixed unit is worth. */
export const PREFIX_VALUES: Readonly<Record<MeterPrefix, number>> = {
  '': 1,
  k: 1e3,
  M: 1e6,
  m: 1e-3,
  µ: 1e-6,
  n: 1e-9,
};

/** What the last digit of a range is worth, in the function's unit. */
export function resolutionOf(range: MeterRange): number {
  return PREFIX_VALUES[range.prefix] * 10 ** -range.decimals;
}
