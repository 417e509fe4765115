/** Worked examples of textbooks, through the same solver and the same copper that the exercises on wire, VA and sag are worked out with. */
import { describe, expect, it } from 'vitest';
import { branchCurrentAc } from '../../src/circuit/currents.ts';
import { createValues, type Topology } from '../../src/circuit/network.ts';
import { createAcSolution, createSolver } from '../../src/circuit/solver.ts';
import { wireOhms } from '../../src/circuit/wire.ts';

const HERTZ = 60;
const OMEGA = 2 * Math.PI * HERTZ;

interface Load {
  readonly ohms: number;
  readonly henries?: number;
}

interface Taken {
  readonly amps: number;
  /** Behind the volts, degrees. */
  readonly lag: number;
  readonly watts: number;
  readonly vars: number;
  readonly voltAmps: number;
}

/** Loads side by side on a stiff supply: what all of them take. */
function taken(volts: number, loads: readonly Load[]): Taken {
  const topology: Topology = {
    nodes: ['earth', 'supply'],
    branches: [{ name: 'supply', from: 0, to: 1 }, ...loads.map((_, index) => ({ name: `load ${index}`, from: 1, to: 0 }))],
    transformers: [],
  };
  const values = createValues(topology);
  values.acVolts[0] = volts;
  values.ohms[0] = 1e-5;
  for (const [index, { ohms, henries = 0 }] of loads.entries()) {
    values.ohms[index + 1] = ohms;
    values.henries[index + 1] = henries;
  }
  const solution = createAcSolution(topology);
  createSolver(topology).solveAc(values, HERTZ, solution);
  const { re, im } = branchCurrentAc(topology, values, HERTZ, solution, 0);
  const amps = Math.hypot(re, im);
  return { amps, lag: (-Math.atan2(im, re) * 180) / Math.PI, watts: volts * re, vars: -volts * im, voltAmps: volts * amps };
}

/** Within half of the last digit that the book prints, or a little more where it went on with rounded figures. */
function printed(value: number, ofBook: number, digits: number): void {
  expect(Math.abs(value - ofBook), `${value} for ${ofBook}`).toBeLessThan(0.75 * 10 ** -digits);
}

// Source: Kuphaldt, Lessons in Electric Circuits, volume II, chapter 3 (from memory): 10 V, 60 Hz, 5 Ω and 10 mH.
describe('a resistor and an inductor', () => {
  it('in series take 1.597 A, 37.016° behind', () => {
    const { amps, lag } = taken(10, [{ ohms: 5, henries: 0.01 }]);
    printed(amps, 1.597, 3);
    printed(lag, 37.016, 3);
  });

  it('side by side take 3.322 A, 52.984° behind', () => {
    const { amps, lag } = taken(10, [{ ohms: 5 }, { ohms: 1e-5, henries: 0.01 }]);
    printed(amps, 3.322, 3);
    printed(lag, 52.984, 3);
  });
});

// Source: Bird, Electrical and Electronic Principles and Technology, chapter 15. Problem 9 is at 50 Hz: its reactance is 100 Ω.
describe('a coil', () => {
  it('of 200 Ω and 100 Ω of reactance on 240 V takes 1.073 A, 26.57° behind (problem 9)', () => {
    const { amps, lag } = taken(240, [{ ohms: 200, henries: 100 / OMEGA }]);
    printed(amps, 1.073, 3);
    printed(lag, 26.57, 2);
  });

  it('of 60 Ω and 75 mH on 110 V at 60 Hz turns 165 W to heat (problem 25)', () => {
    printed(taken(110, [{ ohms: 60, henries: 0.075 }]).watts, 165, 0);
  });
});

// Source: Kuphaldt, the same volume, chapter 11 (from memory): 120 V, 60 Hz, 60 Ω, without and with 160 mH in series.
describe('VA', () => {
  it('of a plain resistor are its watts: 240', () => {
    const { watts, voltAmps } = taken(120, [{ ohms: 60 }]);
    printed(watts, 240, 1);
    printed(voltAmps, 240, 1);
  });

  it('of a coil are 169.256, from 119.365 W and 119.998 var', () => {
    const { amps, watts, vars, voltAmps } = taken(120, [{ ohms: 60, henries: 0.16 }]);
    printed(amps, 1.41, 2);
    printed(watts, 119.365, 2);
    printed(vars, 119.998, 2);
    printed(voltAmps, 169.256, 2);
  });
});

// Source: Chapman, Electric Machinery Fundamentals, example 2-5 (from memory): 15 kVA, 2300 to 230 V, 0.0445 Ω and 0.0645 Ω of reactance seen
// from the secondary. For 230 V at its full load of 65.2 A it wants so many volts behind these, and that is its sag.
describe('what a transformer sags by', () => {
  it.each([
    ['0.8 lagging', 0.8, 0.6, 234.85, 2.1],
    ['1', 1, 0, 232.94, 1.28],
    ['0.8 leading', 0.8, -0.6, 229.85, -0.062],
  ])('at a power factor of %s', (_, inPhase, behind, behindIt, percent) => {
    const topology: Topology = {
      nodes: ['earth', 'line', 'winding', 'load'],
      branches: [
        { name: 'line', from: 0, to: 1 },
        { name: 'leakage', from: 2, to: 3 },
        { name: 'load', from: 3, to: 0 },
        { name: 'reactive', from: 3, to: 0 },
      ],
      transformers: [{ name: 'transformer', primary: [1, 0], secondary: [2, 0] }],
    };
    const values = createValues(topology);
    values.acVolts[0] = 10 * behindIt;
    values.ohms[0] = 1e-5;
    // Half of the resistance in each winding; all of the leakage behind the secondary.
    values.primaryOhms[0] = (100 * 0.0445) / 2;
    values.secondaryOhms[0] = 0.0445 / 2;
    values.magnetisingHenries[0] = 1e6;
    values.turnsRatio[0] = 0.1;
    values.ohms[1] = 1e-5;
    values.henries[1] = 0.0645 / OMEGA;
    values.ohms[2] = 230 / (65.2 * inPhase);
    if (behind > 0) {
      values.ohms[3] = 1e-5;
      values.henries[3] = 230 / (65.2 * behind) / OMEGA;
    } else if (behind < 0) values.farads[3] = (65.2 * -behind) / 230 / OMEGA;
    const solution = createAcSolution(topology);
    createSolver(topology).solveAc(values, HERTZ, solution);
    const loaded = Math.hypot(solution.re[3]!, solution.im[3]!);
    expect(Math.abs(loaded / 230 - 1)).toBeLessThan(1e-4);
    // Without its load it gives what stands behind.
    values.ohms[2] = 1e9;
    values.ohms[3] = 1e9;
    values.henries[3] = 0;
    values.farads[3] = 0;
    createSolver(topology).solveAc(values, HERTZ, solution);
    const open = Math.hypot(solution.re[3]!, solution.im[3]!);
    expect(Math.abs(100 * (open / loaded - 1) - percent)).toBeLessThan(0.02);
  });
});

// Source: Boylestad, Introductory Circuit Analysis, chapter 3 (from memory).
describe('copper', () => {
  it('650 ft of 8 AWG have 0.408 Ω at 20 °C', () => {
    printed(wireOhms(8, 650), 0.408, 3);
  });

  it('what has 50 Ω at 20 °C has 65.72 Ω at 100 °C', () => {
    const feet = 50 / wireOhms(24, 1);
    printed(wireOhms(24, feet, 100), 65.72, 2);
  });
});
