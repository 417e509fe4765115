import { describe, expect, it } from 'vitest';
import { branchCurrentAc, branchCurrentDc } from '../../src/circuit/currents.ts';
import { createAcSolution, createSolver } from '../../src/circuit/solver.ts';
import { spiceBranchNames, spiceNodeNames, toSpice } from '../../src/circuit/spice.ts';
import { randomNetwork } from '../circuit/random-network.ts';
import { runSpice } from './ngspice.ts';

const HERTZ = 60;
const NETWORKS = 200;

/** Within 0.1 % of the other solver, or within the floor. */
function worst(ours: number, theirs: number, distance: number, floor: number): number {
  return distance / Math.max(0.001 * Math.max(Math.abs(ours), Math.abs(theirs)), floor);
}

// Source: ngspice, an independent solver (npm package eecircuit-engine).
describe('ngspice solves the exported deck to the same voltages and currents', () => {
  it(`in ${NETWORKS} random networks, within 0.1 % or 1 mV and 1 µA`, { timeout: 120_000 }, async () => {
    let compared = 0;
    for (let seed = 0; seed < NETWORKS; seed++) {
      const { topology, values } = randomNetwork(seed);
      const solver = createSolver(topology);
      const solution = createAcSolution(topology);
      solver.solveAc(values, HERTZ, solution);
      const dcVolts = new Float64Array(topology.nodes.length);
      solver.solveDc(values, dcVolts);

      const theirs = await runSpice(toSpice(topology, values, HERTZ, `random network ${seed}`, { ammeters: true }));
      spiceNodeNames(topology).forEach((name, node) => {
        const ac = theirs.ac.get(name)!;
        const re = solution.re[node]!;
        const im = solution.im[node]!;
        const off = worst(Math.hypot(re, im), Math.hypot(ac.re, ac.im), Math.hypot(re - ac.re, im - ac.im), 1e-3);
        expect(off, `seed ${seed}: AC volts of ${topology.nodes[node]}`).toBeLessThan(1);
        const dc = theirs.op.get(name)!;
        const dcOff = worst(dcVolts[node]!, dc, Math.abs(dcVolts[node]! - dc), 1e-3);
        expect(dcOff, `seed ${seed}: DC volts of ${topology.nodes[node]}`).toBeLessThan(1);
        compared += 2;
      });
      spiceBranchNames(topology).forEach((name, branch) => {
        const ac = theirs.acAmps.get(`vamps__${name}`)!;
        const ours = branchCurrentAc(topology, values, HERTZ, solution, branch);
        const distance = Math.hypot(ours.re - ac.re, ours.im - ac.im);
        const off = worst(Math.hypot(ours.re, ours.im), Math.hypot(ac.re, ac.im), distance, 1e-6);
        expect(off, `seed ${seed}: AC amps of ${topology.branches[branch]!.name}`).toBeLessThan(1);
        const dc = theirs.opAmps.get(`vamps__${name}`)!;
        const oursDc = branchCurrentDc(topology, values, dcVolts, branch);
        const dcOff = worst(oursDc, dc, Math.abs(oursDc - dc), 1e-6);
        expect(dcOff, `seed ${seed}: DC amps of ${topology.branches[branch]!.name}`).toBeLessThan(1);
        compared += 2;
      });
    }
    expect(compared).toBeGreaterThan(NETWORKS * 50);
  });

  it('and a deck that it refuses is an error, not an old result', async () => {
    await expect(runSpice('* nonsense\nr1 a b\n.op\n.ac lin 1 60 60\n.end\n')).rejects.toThrow('ngspice');
  });
});
