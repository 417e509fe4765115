/**
 * A linear network as plain data: who is joined to whom (the topology, fixed once a system is wired) and
 * what each joint is worth just now (the values, which change with every contact that moves).
 */

/** Immutable topology. Node 0 is earth, the reference. */
export interface Topology {
  /** Names, for people and for errors; `nodes[0]` is 'earth'. */
  readonly nodes: readonly string[];
  readonly branches: readonly Branch[];
  readonly transformers: readonly Transformer[];
}

/** A two-terminal element. Its current counts as positive when it flows from `from` to `to` through the element. */
export interface Branch {
  readonly name: string;
  readonly from: number;
  readonly to: number;
}

/** Two coupled windings; the first node of each pair is the dotted end. */
export interface Transformer {
  readonly name: string;
  readonly primary: readonly [number, number];
  readonly secondary: readonly [number, number];
}

/**
 * Values, one slot a branch: resistance and inductance with an EMF, all in series, and all of it shunted by a
 * capacitance. The EMF drives current from `from` to `to`: I = (V_from − V_to + E) / (R + jωL).
 */
export interface Values {
  readonly ohms: Float64Array;
  readonly henries: Float64Array;
  readonly farads: Float64Array;
  /** EMF at line frequency, rms volts, real part. */
  readonly acVolts: Float64Array;
  /** EMF at line frequency, rms volts, imaginary part. */
  readonly acVoltsImaginary: Float64Array;
  readonly dcVolts: Float64Array;

  /** One slot a transformer: winding resistance of the primary. */
  readonly primaryOhms: Float64Array;
  /** Winding resistance of the secondary. */
  readonly secondaryOhms: Float64Array;
  /** Magnetising inductance, seen from the primary. */
  readonly magnetisingHenries: Float64Array;
  /** Core loss as a resistance beside the magnetising inductance, seen from the primary. */
  readonly coreOhms: Float64Array;
  /** Secondary turns ÷ primary turns. */
  readonly turnsRatio: Float64Array;

  /** Leakage of every node to earth, so that nothing floats. */
  leakOhms: number;
}

/** An open contact, and the insulation of a node to earth (common practice, no source). */
export const OPEN_OHMS = 1e9;

/** The least impedance a branch may have. Below it a branch is a mistake: a good contact has 20 mΩ. */
export const LEAST_OHMS = 1e-6;

/** Values for a topology with every branch open, no sources, and transformers of 1:1 with open windings. */
export function createValues(topology: Topology): Values {
  const branches = topology.branches.length;
  const transformers = topology.transformers.length;
  const filled = (count: number, value: number) => new Float64Array(count).fill(value);
  return {
    ohms: filled(branches, OPEN_OHMS),
    henries: filled(branches, 0),
    farads: filled(branches, 0),
    acVolts: filled(branches, 0),
    acVoltsImaginary: filled(branches, 0),
    dcVolts: filled(branches, 0),
    primaryOhms: filled(transformers, OPEN_OHMS),
    secondaryOhms: filled(transformers, OPEN_OHMS),
    magnetisingHenries: filled(transformers, 1),
    coreOhms: filled(transformers, OPEN_OHMS),
    turnsRatio: filled(transformers, 1),
    leakOhms: OPEN_OHMS,
  };
}

/** Why a network cannot be solved. */
export const CIRCUIT_ERROR_CODES = [
  /** A value is NaN or infinite. */
  'circuit.notFinite',
  /** A value is negative, or a branch has less impedance than {@link LEAST_OHMS}. */
  'circuit.tooSmall',
  /** A node's total admittance vanished or overflowed while it was eliminated. */
  'circuit.singular',
  /** A branch or a winding names a node that is not there. */
  'circuit.noSuchNode',
] as const;
export type CircuitErrorCode = (typeof CIRCUIT_ERROR_CODES)[number];

/** An error with the code, and the name of the branch, transformer or node it is about. */
export interface CircuitError extends Error {
  readonly code: CircuitErrorCode;
  readonly element: string;
}

/** Makes a {@link CircuitError}; `detail` says which value, for whoever reads the stack. */
export function circuitError(code: CircuitErrorCode, element: string, detail: string): CircuitError {
  return Object.assign(new Error(`${code}: ${element}: ${detail}`), { code, element });
}

/** True for what {@link circuitError} made. */
export function isCircuitError(error: unknown): error is CircuitError {
  return error instanceof Error && 'code' in error && String(error.code).startsWith('circuit.');
}
