import { createTwoPort, transformerAdmittance } from '../../src/circuit/admittance.ts';
import type { Topology, Values } from '../../src/circuit/network.ts';

/** A full matrix and its right-hand side. */
export interface Tableau {
  readonly re: number[][];
  readonly im: number[][];
  readonly rightRe: number[];
  readonly rightIm: number[];
}

/**
 * The textbook's modified nodal analysis of a network, written without regard to ours: unknowns are the node voltages
 * (earth left out), then the current of every branch's series part, then both winding currents of every transformer.
 */
export function tableau(topology: Topology, values: Values, hertz: number): Tableau {
  const omega = 2 * Math.PI * hertz;
  const nodes = topology.nodes.length - 1;
  const branches = topology.branches.length;
  const size = nodes + branches + 2 * topology.transformers.length;
  const grid = () => Array.from({ length: size }, () => new Array<number>(size).fill(0));
  const re = grid();
  const im = grid();
  const rightRe = new Array<number>(size).fill(0);
  const rightIm = new Array<number>(size).fill(0);
  const add = (row: number, column: number, real: number, imaginary = 0) => {
    if (row < 0 || column < 0) return;
    re[row]![column]! += real;
    im[row]![column]! += imaginary;
  };

  for (let node = 0; node < nodes; node++) add(node, node, 1 / values.leakOhms);
  topology.branches.forEach(({ from, to }, index) => {
    const [a, b, i] = [from - 1, to - 1, nodes + index];
    // Kirchhoff: the branch's current leaves `from` and enters `to`, and so does that of its capacitance.
    add(a, i, 1);
    add(b, i, -1);
    const susceptance = omega * values.farads[index]!;
    add(a, a, 0, susceptance);
    add(b, b, 0, susceptance);
    add(a, b, 0, -susceptance);
    add(b, a, 0, -susceptance);
    // V_from − V_to − (R + jωL)·I = −E
    add(i, a, 1);
    add(i, b, -1);
    add(i, i, -values.ohms[index]!, -omega * values.henries[index]!);
    rightRe[i] = -values.acVolts[index]!;
    rightIm[i] = -values.acVoltsImaginary[index]!;
  });
  topology.transformers.forEach(({ primary, secondary }, index) => {
    const first = nodes + branches + 2 * index;
    const second = first + 1;
    const ratio = values.turnsRatio[index]!;
    const core = values.coreOhms[index]!;
    const reactance = omega * values.magnetisingHenries[index]!;
    const square = core * core + reactance * reactance;
    const zRe = (core * reactance * reactance) / square;
    const zIm = (core * core * reactance) / square;
    add(primary[0] - 1, first, 1);
    add(primary[1] - 1, first, -1);
    add(secondary[0] - 1, second, 1);
    add(secondary[1] - 1, second, -1);
    // V₁ = (R₁ + Zₘ)·I₁ + n·Zₘ·I₂ and V₂ = n·Zₘ·I₁ + (R₂ + n²·Zₘ)·I₂
    add(first, primary[0] - 1, 1);
    add(first, primary[1] - 1, -1);
    add(first, first, -values.primaryOhms[index]! - zRe, -zIm);
    add(first, second, -ratio * zRe, -ratio * zIm);
    add(second, secondary[0] - 1, 1);
    add(second, secondary[1] - 1, -1);
    add(second, first, -ratio * zRe, -ratio * zIm);
    add(second, second, -values.secondaryOhms[index]! - ratio * ratio * zRe, -ratio * ratio * zIm);
  });
  return { re, im, rightRe, rightIm };
}

/** The nodal matrix that our elimination factors, written out in full: every node but earth, sources folded in. */
export function nodalMatrix(topology: Topology, values: Values, hertz: number): Tableau {
  const omega = 2 * Math.PI * hertz;
  const size = topology.nodes.length - 1;
  const grid = () => Array.from({ length: size }, () => new Array<number>(size).fill(0));
  const re = grid();
  const im = grid();
  const rightRe = new Array<number>(size).fill(0);
  const rightIm = new Array<number>(size).fill(0);
  const admit = (a: number, b: number, real: number, imaginary: number) => {
    for (const [row, column, sign] of [
      [a, a, 1],
      [b, b, 1],
      [a, b, -1],
      [b, a, -1],
    ] as const) {
      if (row === 0 || column === 0 || a === b) continue;
      re[row - 1]![column - 1]! += sign * real;
      im[row - 1]![column - 1]! += sign * imaginary;
    }
  };
  for (let node = 1; node <= size; node++) admit(node, 0, 1 / values.leakOhms, 0);
  topology.branches.forEach(({ from, to }, index) => {
    const ohms = values.ohms[index]!;
    const reactance = omega * values.henries[index]!;
    const square = ohms * ohms + reactance * reactance;
    const [yRe, yIm] = [ohms / square, -reactance / square];
    admit(from, to, yRe, yIm + omega * values.farads[index]!);
    const [eRe, eIm] = [values.acVolts[index]!, values.acVoltsImaginary[index]!];
    for (const [node, sign] of [
      [to, 1],
      [from, -1],
    ] as const) {
      if (node === 0) continue;
      rightRe[node - 1]! += sign * (yRe * eRe - yIm * eIm);
      rightIm[node - 1]! += sign * (yRe * eIm + yIm * eRe);
    }
  });
  topology.transformers.forEach((transformer, index) => {
    const ports = createTwoPort();
    transformerAdmittance(topology, values, index, omega, ports);
    const [p0, p1] = transformer.primary;
    const [s0, s1] = transformer.secondary;
    admit(p0, p1, ports.primary.re, ports.primary.im);
    admit(s0, s1, ports.secondary.re, ports.secondary.im);
    for (const [a, b, sign] of [
      [p0, s0, -1],
      [p1, s1, -1],
      [p0, s1, 1],
      [p1, s0, 1],
    ] as const) {
      admit(a, b, sign * ports.mutual.re, sign * ports.mutual.im);
    }
  });
  return { re, im, rightRe, rightIm };
}
