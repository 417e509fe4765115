import { Simulation } from 'eecircuit-engine';
import { complex, lusolve, matrix } from 'mathjs';
import { createAcSolution, createSolver } from '../../src/circuit/solver.ts';
import { toSpice } from '../../src/circuit/spice.ts';
import { nodalMatrix } from '../reference/tableau.ts';
import { start } from '../scenario/shipped.ts';

const HERTZ = 60;

/** One result of a benchmark. */
export interface BenchFigure {
  readonly name: string;
  readonly value: number;
  readonly unit: string;
}

/** Our solve of the first rig in a cooling call (about 200 nodes), beside general libraries on the same network. */
export async function bench(): Promise<BenchFigure[]> {
  const { world } = start('clicksButWontStart').bench;
  const { topology } = world.wiring;
  const { values } = world;
  const solver = createSolver(topology);
  const solution = createAcSolution(topology);
  const volts = new Float64Array(topology.nodes.length);
  const planned = secondsPer(5, () => createSolver(topology));
  const ac = secondsPer(5000, () => solver.solveAc(values, HERTZ, solution));
  const dc = secondsPer(5000, () => solver.solveDc(values, volts));
  const thevenin = secondsPer(20_000, () => solver.theveninAc(10, 150));

  const nodal = nodalMatrix(topology, values, HERTZ);
  const left = matrix(nodal.re.map((row, a) => row.map((re, b) => complex(re, nodal.im[a]![b]!))));
  const sparse = matrix(left.toArray(), 'sparse');
  const right = matrix(nodal.rightRe.map((re, row) => complex(re, nodal.rightIm[row]!)));
  const mathjsDense = secondsPer(2, () => lusolve(left, right));
  const mathjsSparse = secondsPer(5, () => lusolve(sparse, right));

  // The deck is the .ac line alone: the same work as ours, the reading of the deck included, as any user of it pays.
  const deck = toSpice(topology, values, HERTZ, 'benchmark').replace(/^\.op$/m, '');
  const simulation = new Simulation();
  await simulation.start();
  simulation.setNetList(deck);
  await simulation.runSim();
  const runs = 20;
  const began = performance.now();
  for (let run = 0; run < runs; run++) {
    simulation.setNetList(deck);
    await simulation.runSim();
  }
  const spice = (performance.now() - began) / 1000 / runs;

  return [
    { name: 'circuit: plan a rig, once for all its twins', value: planned * 1e3, unit: 'ms' },
    { name: 'circuit: AC factor and solve', value: ac * 1e6, unit: 'µs' },
    { name: 'circuit: DC factor and solve', value: dc * 1e6, unit: 'µs' },
    { name: 'circuit: Thevenin impedance of a pair', value: thevenin * 1e6, unit: 'µs' },
    { name: 'circuit: a reading by solving with the meter wired in, beside one by Thevenin', value: ac / thevenin, unit: '×' },
    { name: 'circuit: mathjs lusolve, dense, same matrix', value: mathjsDense / ac, unit: '× ours' },
    { name: 'circuit: mathjs lusolve, sparse, same matrix', value: mathjsSparse / ac, unit: '× ours' },
    { name: 'circuit: ngspice as WebAssembly, same network', value: spice / ac, unit: '× ours' },
  ];
}

/** Best of three rounds, seconds a call, after a round to warm up. */
function secondsPer(calls: number, run: () => unknown): number {
  let best = Infinity;
  for (let round = 0; round < 4; round++) {
    const began = performance.now();
    for (let call = 0; call < calls; call++) run();
    const seconds = (performance.now() - began) / 1000 / calls;
    if (round > 0) best = Math.min(best, seconds);
  }
  return best;
}
