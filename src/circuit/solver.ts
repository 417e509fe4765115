/**
 * Steady state of a network: phasors at line frequency, and direct current.
 *
 * Modified nodal analysis with its extra rows folded away: every source and every winding here has an impedance, so
 * each is an admittance between nodes with a current beside it, and the matrix stays nodal, symmetric and small.
 */
import { angular, createTwoPort, type Phasor, seriesAdmittance, transformerAdmittance } from './admittance.ts';
import {
  backComplex,
  backReal,
  createComplexFactor,
  createRealFactor,
  type EliminationPlan,
  factorComplex,
  factorReal,
  forwardComplex,
  forwardReal,
  planElimination,
  portComplex,
  portReal,
  slotBetween,
} from './elimination.ts';
import { circuitError, LEAST_OHMS, type Topology, type Values } from './network.ts';

/** Voltage of every node to earth as an rms phasor. */
export interface AcSolution {
  readonly re: Float64Array;
  readonly im: Float64Array;
}

/** What a pair of terminals looks like with every source dead. */
export interface Impedance {
  ohms: number;
  reactance: number;
}

/**
 * A network ready to be solved for any values. The symbolic work is done once, so all twins of a world share one. It
 * holds the last factorisation of each kind and is not to be entered twice at once.
 */
export interface Solver {
  readonly topology: Topology;
  /** @throws CircuitError naming the branch, transformer or node at fault, as do all functions here that take values. */
  factorAc(values: Values, hertz: number): void;
  factorDc(values: Values): void;
  /** Factors and solves: node voltages into `out`, rms volts. Only a factorisation that succeeded is kept. */
  solveAc(values: Values, hertz: number, out: AcSolution): void;
  /** Factors and solves: node voltages into `out`, volts. Sources at line frequency count as their own resistance. */
  solveDc(values: Values, out: Float64Array): void;
  /** Impedance between two nodes at the frequency and values last factored, sources dead. */
  theveninAc(a: number, b: number, out?: Impedance): Impedance;
  /** Ohms between two nodes at the values last factored for direct current, sources dead. */
  theveninDc(a: number, b: number): number;
}

export function createAcSolution(topology: Topology): AcSolution {
  const count = topology.nodes.length;
  return { re: new Float64Array(count), im: new Float64Array(count) };
}

/** Where each transformer's admittances go: its two windings, then the four paths from one to the other. */
interface WindingSlots {
  readonly primary: number;
  readonly secondary: number;
  readonly along: readonly [number, number];
  readonly across: readonly [number, number];
}

/**
 * Does the work that depends on the topology alone.
 * @throws CircuitError 'circuit.noSuchNode' when a branch or winding names a node that is not there.
 */
export function createSolver(topology: Topology): Solver {
  const size = topology.nodes.length - 1;
  checkNodes(topology);
  const plan = planElimination(size, joinedRows(topology));
  const branchSlots = Int32Array.from(topology.branches, ({ from, to }) => slotBetween(plan, from - 1, to - 1));
  const windingSlots = topology.transformers.map((transformer) => slotsOfWindings(plan, transformer));
  // A node's place in a right-hand side. Earth has one too, after all others; what lands there is of no interest.
  const place = Int32Array.from(topology.nodes, (_, node) => (node === 0 ? size : plan.positions[node - 1]!));
  const fromPlace = Int32Array.from(topology.branches, ({ from }) => place[from]!);
  const toPlace = Int32Array.from(topology.branches, ({ to }) => place[to]!);

  const ac = createComplexFactor(plan);
  const dc = createRealFactor(plan);
  const edges = plan.ends.length;
  const branchCount = topology.branches.length;
  const seriesRe = new Float64Array(branchCount);
  const seriesIm = new Float64Array(branchCount);
  const seriesDc = new Float64Array(branchCount);
  const rightRe = new Float64Array(size + 1);
  const rightIm = new Float64Array(size + 1);
  // Zero but while a port is asked for.
  const portRe = new Float64Array(size + 1);
  const portIm = new Float64Array(size + 1);
  const admittance: Phasor = { re: 0, im: 0 };
  const ports = createTwoPort();

  function stampAc(values: Values, hertz: number): void {
    const omega = angular(hertz);
    if (!(omega >= 0 && omega < Infinity)) throw circuitError('circuit.notFinite', 'hertz', String(hertz));
    const { re, im } = ac;
    re.fill(0);
    im.fill(0);
    re.fill(leakage(values), edges, edges + size);
    for (let branch = 0; branch < branchCount; branch++) {
      seriesAdmittance(topology, values, branch, omega, admittance);
      const slot = branchSlots[branch]!;
      seriesRe[branch] = admittance.re;
      seriesIm[branch] = admittance.im;
      re[slot]! += admittance.re;
      im[slot]! += admittance.im + omega * values.farads[branch]!;
    }
    for (let index = 0; index < windingSlots.length; index++) {
      const slots = windingSlots[index]!;
      transformerAdmittance(topology, values, index, omega, ports);
      re[slots.primary]! += ports.primary.re;
      im[slots.primary]! += ports.primary.im;
      re[slots.secondary]! += ports.secondary.re;
      im[slots.secondary]! += ports.secondary.im;
      // As joints between nodes the mutual admittance has one sign from dot to dot and the other across.
      for (const slot of slots.along) {
        re[slot]! -= ports.mutual.re;
        im[slot]! -= ports.mutual.im;
      }
      for (const slot of slots.across) {
        re[slot]! += ports.mutual.re;
        im[slot]! += ports.mutual.im;
      }
    }
  }

  function stampDc(values: Values): void {
    const { re } = dc;
    re.fill(0);
    re.fill(leakage(values), edges, edges + size);
    for (let branch = 0; branch < branchCount; branch++) {
      seriesAdmittance(topology, values, branch, 0, admittance);
      seriesDc[branch] = admittance.re;
      re[branchSlots[branch]!]! += admittance.re;
    }
    for (let index = 0; index < windingSlots.length; index++) {
      const slots = windingSlots[index]!;
      transformerAdmittance(topology, values, index, 0, ports);
      re[slots.primary]! += ports.primary.re;
      re[slots.secondary]! += ports.secondary.re;
    }
  }

  function factorAc(values: Values, hertz: number): void {
    stampAc(values, hertz);
    failAt(topology, factorComplex(plan, ac));
  }

  function factorDc(values: Values): void {
    stampDc(values);
    failAt(topology, factorReal(plan, dc));
  }

  function solveAc(values: Values, hertz: number, out: AcSolution): void {
    factorAc(values, hertz);
    rightRe.fill(0);
    rightIm.fill(0);
    const { acVolts, acVoltsImaginary } = values;
    for (let branch = 0; branch < branchCount; branch++) {
      const eRe = acVolts[branch]!;
      const eIm = acVoltsImaginary[branch]!;
      if (eRe === 0 && eIm === 0) continue;
      const iRe = seriesRe[branch]! * eRe - seriesIm[branch]! * eIm;
      const iIm = seriesRe[branch]! * eIm + seriesIm[branch]! * eRe;
      rightRe[toPlace[branch]!]! += iRe;
      rightIm[toPlace[branch]!]! += iIm;
      rightRe[fromPlace[branch]!]! -= iRe;
      rightIm[fromPlace[branch]!]! -= iIm;
    }
    forwardComplex(plan, ac, rightRe, rightIm);
    backComplex(plan, ac, rightRe, rightIm);
    rightRe[size] = 0;
    rightIm[size] = 0;
    for (let node = 0; node <= size; node++) {
      out.re[node] = rightRe[place[node]!]!;
      out.im[node] = rightIm[place[node]!]!;
    }
  }

  function solveDc(values: Values, out: Float64Array): void {
    factorDc(values);
    rightRe.fill(0);
    for (let branch = 0; branch < branchCount; branch++) {
      const amps = seriesDc[branch]! * values.dcVolts[branch]!;
      if (amps === 0) continue;
      rightRe[toPlace[branch]!]! += amps;
      rightRe[fromPlace[branch]!]! -= amps;
    }
    forwardReal(plan, dc, rightRe);
    backReal(plan, dc, rightRe);
    rightRe[size] = 0;
    for (let node = 0; node <= size; node++) out[node] = rightRe[place[node]!]!;
  }

  // One ampere in at a and out at b meets bᵀA⁻¹b ohms, which is a sum over the half-done right-hand side: no back
  // substitution, and no difference of two large voltages.
  function theveninAc(a: number, b: number, out: Impedance = { ohms: 0, reactance: 0 }): Impedance {
    out.ohms = 0;
    out.reactance = 0;
    if (a !== b) portComplex(plan, ac, place[a]!, place[b]!, portRe, portIm, out);
    return out;
  }

  function theveninDc(a: number, b: number): number {
    return a === b ? 0 : portReal(plan, dc, place[a]!, place[b]!, portRe);
  }

  return { topology, factorAc, factorDc, solveAc, solveDc, theveninAc, theveninDc };
}

function leakage(values: Values): number {
  const { leakOhms } = values;
  if (!Number.isFinite(leakOhms)) throw circuitError('circuit.notFinite', 'earth', `leakOhms is ${leakOhms}`);
  if (leakOhms < LEAST_OHMS) throw circuitError('circuit.tooSmall', 'earth', `leakOhms is ${leakOhms}`);
  return 1 / leakOhms;
}

function failAt(topology: Topology, row: number): void {
  if (row < 0) return;
  throw circuitError('circuit.singular', topology.nodes[row + 1] ?? String(row + 1), 'its admittance vanished or overflowed');
}

function checkNodes(topology: Topology): void {
  const count = topology.nodes.length;
  const check = (name: string, nodes: readonly number[]) => {
    const wrong = nodes.find((node) => !(Number.isInteger(node) && node >= 0 && node < count));
    if (wrong !== undefined) throw circuitError('circuit.noSuchNode', name, `node ${wrong} of ${count}`);
  };
  for (const { name, from, to } of topology.branches) check(name, [from, to]);
  for (const { name, primary, secondary } of topology.transformers) check(name, [...primary, ...secondary]);
}

/** Pairs of rows (nodes without earth) that some branch or transformer joins. */
function joinedRows(topology: Topology): [number, number][] {
  const pairs: [number, number][] = [];
  const join = (a: number, b: number) => {
    if (a !== 0 && b !== 0) pairs.push([a - 1, b - 1]);
  };
  for (const { from, to } of topology.branches) join(from, to);
  for (const { primary, secondary } of topology.transformers) {
    const nodes = [...primary, ...secondary];
    for (const [index, a] of nodes.entries()) for (const b of nodes.slice(index + 1)) join(a, b);
  }
  return pairs;
}

function slotsOfWindings(plan: EliminationPlan, transformer: Topology['transformers'][number]): WindingSlots {
  const [p0, p1] = transformer.primary;
  const [s0, s1] = transformer.secondary;
  const slot = (a: number, b: number) => slotBetween(plan, a - 1, b - 1);
  return {
    primary: slot(p0, p1),
    secondary: slot(s0, s1),
    along: [slot(p0, s0), slot(p1, s1)],
    across: [slot(p0, s1), slot(p1, s0)],
  };
}
