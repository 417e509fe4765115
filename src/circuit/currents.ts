import { angular, createTwoPort, type Phasor, seriesAdmittance, transformerAdmittance } from './admittance.ts';
import type { Topology, Values } from './network.ts';
import type { AcSolution } from './solver.ts';

/** Current through a branch from `from` to `to`, its capacitance included, rms amps. */
export function branchCurrentAc(
  topology: Topology,
  values: Values,
  hertz: number,
  solution: AcSolution,
  branch: number,
  out: Phasor = { re: 0, im: 0 },
): Phasor {
  const { from, to } = topology.branches[branch]!;
  const omega = angular(hertz);
  seriesAdmittance(topology, values, branch, omega, out);
  const vRe = solution.re[from]! - solution.re[to]!;
  const vIm = solution.im[from]! - solution.im[to]!;
  const driveRe = vRe + values.acVolts[branch]!;
  const driveIm = vIm + values.acVoltsImaginary[branch]!;
  const susceptance = omega * values.farads[branch]!;
  const re = out.re * driveRe - out.im * driveIm - susceptance * vIm;
  const im = out.re * driveIm + out.im * driveRe + susceptance * vRe;
  out.re = re;
  out.im = im;
  return out;
}

/** Direct current through a branch from `from` to `to`, amps. */
export function branchCurrentDc(topology: Topology, values: Values, solution: Float64Array, branch: number): number {
  const { from, to } = topology.branches[branch]!;
  return (solution[from]! - solution[to]! + values.dcVolts[branch]!) / values.ohms[branch]!;
}

/** Currents into the dotted end of each winding, rms amps. */
export function windingCurrentsAc(
  topology: Topology,
  values: Values,
  hertz: number,
  solution: AcSolution,
  transformer: number,
): { primary: Phasor; secondary: Phasor } {
  const { primary, secondary } = topology.transformers[transformer]!;
  const ports = createTwoPort();
  transformerAdmittance(topology, values, transformer, angular(hertz), ports);
  const across = ([a, b]: readonly [number, number]): Phasor => ({
    re: solution.re[a]! - solution.re[b]!,
    im: solution.im[a]! - solution.im[b]!,
  });
  const first = across(primary);
  const second = across(secondary);
  return {
    primary: sumOfProducts(ports.primary, first, ports.mutual, second),
    secondary: sumOfProducts(ports.mutual, first, ports.secondary, second),
  };
}

function sumOfProducts(a: Phasor, b: Phasor, c: Phasor, d: Phasor): Phasor {
  return {
    re: a.re * b.re - a.im * b.im + c.re * d.re - c.im * d.im,
    im: a.re * b.im + a.im * b.re + c.re * d.im + c.im * d.re,
  };
}
