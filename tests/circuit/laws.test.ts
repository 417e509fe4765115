import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Phasor } from '../../src/circuit/admittance.ts';
import { branchCurrentAc, branchCurrentDc, windingCurrentsAc } from '../../src/circuit/currents.ts';
import { createValues, type Topology, type Values } from '../../src/circuit/network.ts';
import { type AcSolution, createAcSolution, createSolver } from '../../src/circuit/solver.ts';
import { randomNetwork, randomNumbers } from './random-network.ts';

const HERTZ = 60;
const seeds = fc.integer({ min: 0, max: 2 ** 31 });
const RUNS = { numRuns: 200 };

function solved(topology: Topology, values: Values): AcSolution {
  const solution = createAcSolution(topology);
  createSolver(topology).solveAc(values, HERTZ, solution);
  return solution;
}

function copied(values: Values): Values {
  const copy: Record<string, unknown> = {};
  for (const [key, value] of Object.entries(values)) copy[key] = value instanceof Float64Array ? value.slice() : value;
  return copy as unknown as Values;
}

function withoutSources(values: Values): Values {
  const copy = copied(values);
  copy.acVolts.fill(0);
  copy.acVoltsImaginary.fill(0);
  copy.dcVolts.fill(0);
  return copy;
}

/** Largest distance between two sets of node voltages. */
function distance(a: AcSolution, b: AcSolution): number {
  return Math.max(...Array.from(a.re, (re, node) => Math.hypot(re - b.re[node]!, a.im[node]! - b.im[node]!)));
}

/** Average power into a branch from the network: Re(V·I*), watts. */
const watts = (volts: Phasor, amps: Phasor) => volts.re * amps.re + volts.im * amps.im;

describe('laws that every network obeys', () => {
  it('currents at a node sum to its leakage (Kirchhoff)', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const { topology, values } = randomNetwork(seed);
        const solution = solved(topology, values);
        const re = new Float64Array(topology.nodes.length);
        let largest = 0;
        const take = (node: number, amps: number) => {
          re[node]! += amps;
          largest = Math.max(largest, Math.abs(amps));
        };
        topology.branches.forEach(({ from, to }, branch) => {
          const amps = branchCurrentAc(topology, values, HERTZ, solution, branch);
          take(from, -amps.re);
          take(to, amps.re);
        });
        topology.transformers.forEach((transformer, index) => {
          const amps = windingCurrentsAc(topology, values, HERTZ, solution, index);
          take(transformer.primary[0], -amps.primary.re);
          take(transformer.primary[1], amps.primary.re);
          take(transformer.secondary[0], -amps.secondary.re);
          take(transformer.secondary[1], amps.secondary.re);
        });
        for (let node = 1; node < topology.nodes.length; node++) {
          expect(Math.abs(re[node]! - solution.re[node]! / values.leakOhms)).toBeLessThan(1e-9 * (1 + largest));
        }
      }),
      RUNS,
    );
  });

  it('sources act as the sum of each alone (superposition)', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const { topology, values } = randomNetwork(seed);
        const together = solved(topology, values);
        const sum = createAcSolution(topology);
        topology.branches.forEach((_, branch) => {
          if (values.acVolts[branch] === 0) return;
          const alone = withoutSources(values);
          alone.acVolts[branch] = values.acVolts[branch]!;
          alone.acVoltsImaginary[branch] = values.acVoltsImaginary[branch]!;
          const part = solved(topology, alone);
          for (let node = 0; node < topology.nodes.length; node++) {
            sum.re[node]! += part.re[node]!;
            sum.im[node]! += part.im[node]!;
          }
        });
        expect(distance(together, sum)).toBeLessThan(1e-4);
      }),
      RUNS,
    );
  });

  it('a source here drives there what it would drive here from there (reciprocity)', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const { topology, values } = randomNetwork(seed);
        const random = randomNumbers(seed + 1);
        const here = Math.floor(random() * topology.branches.length);
        const there = Math.floor(random() * topology.branches.length);
        const current = (source: number, meter: number) => {
          const alone = withoutSources(values);
          alone.acVolts[source] = 100;
          return branchCurrentAc(topology, alone, HERTZ, solved(topology, alone), meter);
        };
        // The EMF sits in the series part, so reciprocity holds for the series current; keep capacitance out of it.
        values.farads[here] = 0;
        values.farads[there] = 0;
        const one = current(here, there);
        const other = current(there, here);
        const scale = Math.max(Math.hypot(one.re, one.im), 1e-6);
        expect(Math.hypot(one.re - other.re, one.im - other.im)).toBeLessThan(1e-6 * scale + 1e-10);
      }),
      RUNS,
    );
  });

  it('a load between two nodes takes what the Thevenin equivalent says', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const { topology, values } = randomNetwork(seed);
        const random = randomNumbers(seed + 2);
        const count = topology.nodes.length;
        const a = Math.floor(random() * count);
        const b = (a + 1 + Math.floor(random() * (count - 1))) % count;
        const loadOhms = 10 ** (random() * 8 - 1);

        const solver = createSolver(topology);
        const open = createAcSolution(topology);
        solver.solveAc(values, HERTZ, open);
        const { ohms, reactance } = solver.theveninAc(a, b);
        const openRe = open.re[a]! - open.re[b]!;
        const openIm = open.im[a]! - open.im[b]!;
        const volts = (Math.hypot(openRe, openIm) * loadOhms) / Math.hypot(ohms + loadOhms, reactance);

        const loaded = loadedWith(topology, values, a, b, loadOhms);
        const solution = solved(loaded.topology, loaded.values);
        const measured = Math.hypot(solution.re[a]! - solution.re[b]!, solution.im[a]! - solution.im[b]!);
        expect(Math.abs(measured - volts)).toBeLessThan(1e-6 * volts + 1e-5);
      }),
      RUNS,
    );
  });

  it('and the same for direct current', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const { topology, values } = randomNetwork(seed);
        const random = randomNumbers(seed + 3);
        const count = topology.nodes.length;
        const a = Math.floor(random() * count);
        const b = (a + 1 + Math.floor(random() * (count - 1))) % count;
        const loadOhms = 10 ** (random() * 8 - 1);
        const solver = createSolver(topology);
        const open = new Float64Array(count);
        solver.solveDc(values, open);
        const amps = (open[a]! - open[b]!) / (solver.theveninDc(a, b) + loadOhms);
        const loaded = loadedWith(topology, values, a, b, loadOhms);
        const volts = new Float64Array(count);
        createSolver(loaded.topology).solveDc(loaded.values, volts);
        const measured = branchCurrentDc(loaded.topology, loaded.values, volts, topology.branches.length);
        expect(Math.abs(measured - amps)).toBeLessThan(1e-6 * Math.abs(amps) + 1e-9);
      }),
      RUNS,
    );
  });

  it('what the sources deliver is what the resistances turn to heat (power balance)', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const { topology, values } = randomNetwork(seed);
        const solution = solved(topology, values);
        const across = (a: number, b: number): Phasor => ({
          re: solution.re[a]! - solution.re[b]!,
          im: solution.im[a]! - solution.im[b]!,
        });
        let delivered = 0;
        let heat = 0;
        topology.branches.forEach(({ from, to }, branch) => {
          const emf = { re: values.acVolts[branch]!, im: values.acVoltsImaginary[branch]! };
          const total = branchCurrentAc(topology, values, HERTZ, solution, branch);
          const volts = across(from, to);
          const susceptance = 2 * Math.PI * HERTZ * values.farads[branch]!;
          const series = { re: total.re + susceptance * volts.im, im: total.im - susceptance * volts.re };
          delivered += watts(emf, series);
          heat += values.ohms[branch]! * (series.re ** 2 + series.im ** 2);
        });
        topology.transformers.forEach(({ primary }, index) => {
          // Winding resistance by I²R; the core by what is left at the primary behind it.
          const amps = windingCurrentsAc(topology, values, HERTZ, solution, index);
          const primaryOhms = values.primaryOhms[index]!;
          const volts = across(...primary);
          const core = Math.hypot(volts.re - primaryOhms * amps.primary.re, volts.im - primaryOhms * amps.primary.im);
          heat += primaryOhms * (amps.primary.re ** 2 + amps.primary.im ** 2);
          heat += values.secondaryOhms[index]! * (amps.secondary.re ** 2 + amps.secondary.im ** 2);
          heat += core ** 2 / values.coreOhms[index]!;
        });
        topology.nodes.forEach((_, node) => {
          heat += (solution.re[node]! ** 2 + solution.im[node]! ** 2) / values.leakOhms;
        });
        expect(Math.abs(delivered - heat)).toBeLessThan(1e-6 * Math.abs(delivered) + 1e-9);
      }),
      RUNS,
    );
  });
});

/** The same network with one resistor more, as its last branch. */
function loadedWith(topology: Topology, values: Values, a: number, b: number, ohms: number) {
  const branches = [...topology.branches, { name: 'load', from: a, to: b }];
  const wider: Topology = { ...topology, branches };
  const more = createValues(wider) as Values & Record<string, unknown>;
  for (const [key, column] of Object.entries(values)) {
    if (column instanceof Float64Array) (more[key as keyof Values] as Float64Array).set(column);
  }
  more.ohms[topology.branches.length] = ohms;
  more.leakOhms = values.leakOhms;
  return { topology: wider, values: more };
}
