import { describe, expect, it } from 'vitest';
import { branchCurrentAc, branchCurrentDc, windingCurrentsAc } from '../../src/circuit/currents.ts';
import { type CircuitError, createValues, isCircuitError, type Topology } from '../../src/circuit/network.ts';
import { createAcSolution, createSolver } from '../../src/circuit/solver.ts';

/** 27 V behind 1 Ω feeds a coil through a contact; the coil's far end is earthed. */
const loop: Topology = {
  nodes: ['earth', 'R', 'Y'],
  branches: [
    { name: 'supply', from: 0, to: 1 },
    { name: 'contact', from: 1, to: 2 },
    { name: 'coil', from: 2, to: 0 },
  ],
  transformers: [],
};

function closedLoop() {
  const values = createValues(loop);
  values.acVolts[0] = 27;
  values.ohms[0] = 1;
  values.ohms[1] = 0.03;
  values.ohms[2] = 12;
  values.henries[2] = 0.1;
  return values;
}

function caught(run: () => unknown): CircuitError {
  try {
    run();
  } catch (error) {
    if (isCircuitError(error)) return error;
    throw error;
  }
  throw new Error('nothing was thrown');
}

describe('a loop of supply, contact and coil', () => {
  it('carries V/Z, lagging by the coil’s angle', () => {
    const values = closedLoop();
    const solution = createAcSolution(loop);
    createSolver(loop).solveAc(values, 60, solution);
    // Z = 13.03 + j37.699 Ω, |Z| = 39.887 Ω, so 0.6769 A at −70.93°.
    const amps = branchCurrentAc(loop, values, 60, solution, 2);
    expect(Math.hypot(amps.re, amps.im)).toBeCloseTo(0.6769, 4);
    expect((Math.atan2(amps.im, amps.re) * 180) / Math.PI).toBeCloseTo(-70.93, 2);
  });

  it('drops nothing over the contact and all of its volts over it once open', () => {
    const values = closedLoop();
    const solver = createSolver(loop);
    const solution = createAcSolution(loop);
    solver.solveAc(values, 60, solution);
    expect(Math.abs(solution.re[1]! - solution.re[2]!)).toBeLessThan(0.03);
    values.ohms[1] = 1e9;
    solver.solveAc(values, 60, solution);
    expect(solution.re[1]! - solution.re[2]!).toBeCloseTo(27, 5);
  });

  it('lets direct current see the resistances only', () => {
    const values = closedLoop();
    values.dcVolts[0] = 3;
    const volts = new Float64Array(3);
    createSolver(loop).solveDc(values, volts);
    expect(volts[2]).toBeCloseTo((3 * 12) / 13.03, 7);
    expect(branchCurrentDc(loop, values, volts, 1)).toBeCloseTo(3 / 13.03, 7);
  });

  it('looks from Y to earth like the coil beside contact and supply in series', () => {
    const values = closedLoop();
    const solver = createSolver(loop);
    solver.factorDc(values);
    expect(solver.theveninDc(2, 0)).toBeCloseTo((12 * 1.03) / 13.03, 7);
    expect(solver.theveninDc(0, 2)).toBeCloseTo((12 * 1.03) / 13.03, 7);
    expect(solver.theveninDc(2, 2)).toBe(0);
  });
});

describe('capacitance shunts the whole branch', () => {
  it('couples an open conductor to its live neighbour', () => {
    const values = closedLoop();
    values.ohms[1] = 1e9;
    values.farads[1] = 1e-9;
    values.ohms[2] = 10e6;
    values.henries[2] = 0;
    const solution = createAcSolution(loop);
    createSolver(loop).solveAc(values, 60, solution);
    // In nanosiemens: 1 + j377 from R, and 100 + 1 of leak to earth: 27 × |1 + j377| / |102 + j377| = 26.06 V.
    expect(Math.hypot(solution.re[2]!, solution.im[2]!)).toBeCloseTo(26.06, 2);
    const amps = branchCurrentAc(loop, values, 60, solution, 1);
    expect(Math.hypot(amps.re, amps.im)).toBeCloseTo(26.06 * 101e-9, 9);
  });
});

describe('a transformer of 120 to 27 V with 16 Ω and 1 Ω of winding', () => {
  const topology: Topology = {
    nodes: ['earth', 'L1', 'R', 'C'],
    branches: [
      { name: 'line', from: 0, to: 1 },
      { name: 'load', from: 2, to: 3 },
      { name: 'chassis', from: 3, to: 0 },
    ],
    transformers: [{ name: 'T1', primary: [1, 0], secondary: [2, 3] }],
  };
  function supplied() {
    const values = createValues(topology);
    values.acVolts[0] = 120;
    values.ohms[0] = 0.1;
    values.primaryOhms[0] = 16;
    values.secondaryOhms[0] = 1;
    values.magnetisingHenries[0] = 8;
    values.turnsRatio[0] = 27 / 120;
    return values;
  }

  it('gives 27 V open', () => {
    const values = supplied();
    values.ohms[2] = 0.02;
    const solution = createAcSolution(topology);
    createSolver(topology).solveAc(values, 60, solution);
    expect(Math.hypot(solution.re[2]! - solution.re[3]!, solution.im[2]! - solution.im[3]!)).toBeCloseTo(27, 1);
  });

  it('looks from the secondary like its winding and the primary’s by the square of the ratio', () => {
    const values = supplied();
    const solver = createSolver(topology);
    solver.factorAc(values, 60);
    // 1 + 0.050625 × 16.1 = 1.815 Ω, and a little less for the magnetising branch beside the primary.
    expect(solver.theveninAc(2, 3).ohms).toBeCloseTo(1.815, 3);
    solver.factorDc(values);
    expect(solver.theveninDc(2, 3)).toBeCloseTo(1, 6);
  });

  it('carries load current in the ratio of its turns, and no direct current across', () => {
    const values = supplied();
    values.ohms[1] = 14.4;
    values.dcVolts[0] = 5;
    const solver = createSolver(topology);
    const solution = createAcSolution(topology);
    solver.solveAc(values, 60, solution);
    const { primary, secondary } = windingCurrentsAc(topology, values, 60, solution, 0);
    expect(primary.re).toBeCloseTo(-secondary.re * (27 / 120), 3);
    const volts = new Float64Array(4);
    solver.solveDc(values, volts);
    expect(Math.abs(volts[2]! - volts[3]!)).toBeLessThan(1e-9);
  });

  it('floats as a whole when its common is not earthed: half the volts on either side', () => {
    const values = supplied();
    values.ohms[1] = 1000;
    const solution = createAcSolution(topology);
    createSolver(topology).solveAc(values, 60, solution);
    // 1 GΩ from R to earth; 1 GΩ of leak beside the 1 GΩ chassis branch from C: two thirds and one third.
    expect(solution.re[2]! / (solution.re[2]! - solution.re[3]!)).toBeCloseTo(2 / 3, 5);
  });

  it('has a reversed secondary when its ratio is negative', () => {
    const values = supplied();
    values.ohms[2] = 0.02;
    values.turnsRatio[0] = -27 / 120;
    const solution = createAcSolution(topology);
    createSolver(topology).solveAc(values, 60, solution);
    expect(solution.re[2]).toBeLessThan(-26);
  });
});

describe('what cannot be solved is an error that names the element', () => {
  const solve = (change: (values: ReturnType<typeof closedLoop>) => void) =>
    caught(() => {
      const values = closedLoop();
      change(values);
      createSolver(loop).solveAc(values, 60, createAcSolution(loop));
    });

  it.each([
    ['an EMF that is not a number', 'circuit.notFinite', 'supply', (v) => (v.acVolts[0] = NaN)],
    ['an infinite resistance', 'circuit.notFinite', 'contact', (v) => (v.ohms[1] = Infinity)],
    ['a capacitance that is not a number', 'circuit.notFinite', 'coil', (v) => (v.farads[2] = NaN)],
    ['no impedance at all', 'circuit.tooSmall', 'contact', (v) => (v.ohms[1] = 0)],
    ['a negative resistance', 'circuit.tooSmall', 'coil', (v) => (v.ohms[2] = -12)],
    ['a leakage of zero ohms', 'circuit.tooSmall', 'earth', (v) => (v.leakOhms = 0)],
  ] satisfies [string, string, string, (v: ReturnType<typeof closedLoop>) => void][])('%s', (_, code, element, change) => {
    expect(solve(change)).toMatchObject({ code, element });
  });

  it('a coil without resistance is fine for AC and an error for direct current', () => {
    const values = closedLoop();
    values.ohms[2] = 0;
    const solver = createSolver(loop);
    solver.solveAc(values, 60, createAcSolution(loop));
    expect(caught(() => solver.factorDc(values))).toMatchObject({ code: 'circuit.tooSmall', element: 'coil' });
  });

  it('a capacitor that cancels an ideal coil leaves its node with nothing', () => {
    const tank: Topology = { nodes: ['earth', 'Y'], branches: [{ name: 'tank', from: 1, to: 0 }], transformers: [] };
    const values = createValues(tank);
    values.leakOhms = 1e300;
    values.ohms[0] = 0;
    // At one radian per second 1 H and 1 F are +1 and −1 siemens.
    values.henries[0] = 1;
    values.farads[0] = 1;
    const error = caught(() => createSolver(tank).factorAc(values, 1 / (2 * Math.PI)));
    expect(error).toMatchObject({ code: 'circuit.singular', element: 'Y' });
  });

  it('a node that is not there', () => {
    const topology = { ...loop, branches: [{ name: 'stray', from: 0, to: 3 }] };
    expect(caught(() => createSolver(topology))).toMatchObject({ code: 'circuit.noSuchNode', element: 'stray' });
  });

  it('a frequency that is not a number', () => {
    expect(caught(() => createSolver(loop).factorAc(closedLoop(), NaN))).toMatchObject({ element: 'hertz' });
  });
});

describe('accuracy', () => {
  it('keeps leakage of 1 nS beside conductances of 50 S: an open end floats at the far end’s volts', () => {
    // 100 closed contacts in a row, nothing at the end but leakage: 50 nA at most, so every node reads 27 V.
    const count = 100;
    const topology: Topology = {
      nodes: ['earth', ...Array.from({ length: count }, (_, index) => `link ${index}`)],
      branches: Array.from({ length: count }, (_, index) => ({ name: `contact ${index}`, from: index, to: index + 1 })),
      transformers: [],
    };
    const values = createValues(topology);
    values.ohms.fill(0.02);
    values.acVolts[0] = 27;
    const solution = createAcSolution(topology);
    createSolver(topology).solveAc(values, 60, solution);
    // Σ of 20 mΩ × (nodes still ahead) × 27 nA = 0.02 × 5050 × 27e-9 = 2.727 µV below.
    expect(27 - solution.re[count]!).toBeCloseTo(2.727e-6, 9);
  });

  it('measures an open contact as the leakage around it', () => {
    const topology: Topology = {
      nodes: ['earth', 'a', 'b'],
      branches: [{ name: 'open contact', from: 1, to: 2 }],
      transformers: [],
    };
    const values = createValues(topology);
    const solver = createSolver(topology);
    solver.factorDc(values);
    // 1 GΩ beside two leaks in series.
    expect(solver.theveninDc(1, 2)).toBeCloseTo(2e9 / 3, 0);
    values.ohms[0] = 0.02;
    solver.factorDc(values);
    expect(solver.theveninDc(1, 2)).toBeCloseTo(0.02, 12);
  });

  it('leaves voltages from an earlier solve out of the next', () => {
    const solver = createSolver(loop);
    const first = createAcSolution(loop);
    const again = createAcSolution(loop);
    const values = closedLoop();
    solver.solveAc(values, 60, first);
    values.acVolts[0] = 240;
    solver.solveAc(values, 60, again);
    solver.theveninAc(1, 2);
    values.acVolts[0] = 27;
    solver.solveAc(values, 60, again);
    expect(again).toEqual(first);
  });
});
