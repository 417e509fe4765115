import { circuitError, LEAST_OHMS, type Topology, type Values } from './network.ts';

/** A complex number: rms volts or amps as a phasor, ohms as an impedance, siemens as an admittance. */
export interface Phasor {
  re: number;
  im: number;
}

/** A transformer's two ports as admittances, seen at the terminals of each winding. */
export interface TwoPort {
  /** Current into the primary per volt on the primary, the secondary shorted. */
  readonly primary: Phasor;
  readonly secondary: Phasor;
  /** Current into either winding per volt on the other. */
  readonly mutual: Phasor;
}

export function createTwoPort(): TwoPort {
  return { primary: { re: 0, im: 0 }, secondary: { re: 0, im: 0 }, mutual: { re: 0, im: 0 } };
}

/** Radians per second. */
export function angular(hertz: number): number {
  return 2 * Math.PI * hertz;
}

/**
 * Admittance of a branch's series part, 1 / (R + jωL), in siemens. Direct current is ω = 0.
 * @throws CircuitError that names the branch, when any of its values is not finite, negative or below 1 µΩ.
 */
export function seriesAdmittance(topology: Topology, values: Values, branch: number, omega: number, out: Phasor): void {
  const ohms = values.ohms[branch]!;
  const reactance = omega * values.henries[branch]!;
  const farads = values.farads[branch]!;
  const square = ohms * ohms + reactance * reactance;
  // One number that is NaN if any of these is NaN or infinite.
  const rest = values.acVolts[branch]! + values.acVoltsImaginary[branch]! + values.dcVolts[branch]! + farads;
  const sound = square >= LEAST_OHMS * LEAST_OHMS && square < Infinity && ohms >= 0 && reactance >= 0 && farads >= 0;
  if (!sound || rest - rest !== 0) throw branchError(topology, values, branch);
  out.re = ohms / square;
  out.im = -reactance / square;
}

/**
 * A transformer's two-port: the T-circuit Z = [[Z₁ + Zₘ, nZₘ], [nZₘ, Z₂ + n²Zₘ]], inverted. At direct current
 * Zₘ = 0 and what is left of it is two windings that know nothing of each other.
 * @throws CircuitError that names the transformer, when a value is not finite or too small.
 */
export function transformerAdmittance(topology: Topology, values: Values, transformer: number, omega: number, out: TwoPort): void {
  const first = values.primaryOhms[transformer]!;
  const second = values.secondaryOhms[transformer]!;
  const ratio = values.turnsRatio[transformer]!;
  const magnetising = omega * values.magnetisingHenries[transformer]!;
  const core = values.coreOhms[transformer]!;
  const sound = first >= LEAST_OHMS && second >= LEAST_OHMS && magnetising >= 0 && core >= LEAST_OHMS;
  const sum = first + second + magnetising + core + ratio;
  if (!sound || sum - sum !== 0) throw transformerError(topology, values, transformer);

  // Zm: the magnetising reactance beside the core's loss.
  const square = core * core + magnetising * magnetising;
  const zRe = (core * magnetising * magnetising) / square;
  const zIm = (core * core * magnetising) / square;
  // det = Z₁Z₂ + Zₘ(n²Z₁ + Z₂)
  const reach = ratio * ratio * first + second;
  const detRe = first * second + zRe * reach;
  const detIm = zIm * reach;
  const detSquare = detRe * detRe + detIm * detIm;
  const invRe = detRe / detSquare;
  const invIm = -detIm / detSquare;
  multiply(second + ratio * ratio * zRe, ratio * ratio * zIm, invRe, invIm, out.primary);
  multiply(first + zRe, zIm, invRe, invIm, out.secondary);
  multiply(-ratio * zRe, -ratio * zIm, invRe, invIm, out.mutual);
}

function multiply(aRe: number, aIm: number, bRe: number, bIm: number, out: Phasor): void {
  out.re = aRe * bRe - aIm * bIm;
  out.im = aRe * bIm + aIm * bRe;
}

/** Finds which value of a branch is wrong. Only called once something is. */
function branchError(topology: Topology, values: Values, branch: number): Error {
  const { ohms, henries, farads, acVolts, acVoltsImaginary, dcVolts } = values;
  const columns = { ohms, henries, farads, acVolts, acVoltsImaginary, dcVolts };
  const name = topology.branches[branch]?.name ?? String(branch);
  for (const [column, numbers] of Object.entries(columns)) {
    const value = numbers[branch]!;
    // The square of a huge resistance overflows, and then it is as good as infinite.
    if (!Number.isFinite(value * value)) return circuitError('circuit.notFinite', name, `${column} is ${value}`);
  }
  return circuitError('circuit.tooSmall', name, `${ohms[branch]} ohms, ${henries[branch]} H, ${farads[branch]} F`);
}

function transformerError(topology: Topology, values: Values, transformer: number): Error {
  const { primaryOhms, secondaryOhms, magnetisingHenries, coreOhms, turnsRatio } = values;
  const columns = { primaryOhms, secondaryOhms, magnetisingHenries, coreOhms, turnsRatio };
  const name = topology.transformers[transformer]?.name ?? String(transformer);
  for (const [column, numbers] of Object.entries(columns)) {
    const value = numbers[transformer]!;
    if (!Number.isFinite(value)) return circuitError('circuit.notFinite', name, `${column} is ${value}`);
  }
  return circuitError('circuit.tooSmall', name, `${primaryOhms[transformer]} and ${secondaryOhms[transformer]} ohms`);
}
