import { type Complex, complex, lusolve, matrix } from 'mathjs';
import { describe, expect, it } from 'vitest';
import {
  backComplex,
  backReal,
  createComplexFactor,
  createRealFactor,
  factorComplex,
  factorReal,
  forwardComplex,
  forwardReal,
  planElimination,
  slotBetween,
} from '../../src/circuit/elimination.ts';
import { createAcSolution, createSolver } from '../../src/circuit/solver.ts';
import { randomNetwork, randomNumbers } from '../circuit/random-network.ts';
import { nodalMatrix, tableau } from './tableau.ts';

interface System {
  readonly re: number[][];
  readonly im: number[][];
  readonly rightRe: number[];
  readonly rightIm: number[];
}

/**
 * A random complex symmetric system whose real part is positive definite, as a passive network's is, with any symmetric
 * imaginary part. `share` of the entries off the diagonal are there.
 */
function randomSystem(seed: number, size: number, share: number): System {
  const random = randomNumbers(seed);
  const grid = () => Array.from({ length: size }, () => new Array<number>(size).fill(0));
  const re = grid();
  const im = grid();
  for (let a = 0; a < size; a++) {
    for (let b = 0; b < a; b++) {
      if (random() > share) continue;
      re[a]![b] = re[b]![a] = random() - 0.5;
      im[a]![b] = im[b]![a] = 4 * (random() - 0.5);
    }
  }
  for (let a = 0; a < size; a++) {
    // Diagonally dominant in the real part only: positive definite, with nothing asked of the imaginary part.
    re[a]![a] = 0.01 + random() + re[a]!.reduce((sum, value) => sum + Math.abs(value), 0);
    im[a]![a] = 4 * (random() - 0.5);
  }
  return {
    re,
    im,
    rightRe: Array.from({ length: size }, () => random() - 0.5),
    rightIm: Array.from({ length: size }, () => random() - 0.5),
  };
}

function pairsOf(system: System): [number, number][] {
  return system.re.flatMap((row, a) => row.flatMap((value, b): [number, number][] => (value !== 0 && a < b ? [[a, b]] : [])));
}

/** Solved by elimination: an entry off the diagonal is an admittance between rows, the row's sum one to earth. */
function solveComplex(system: System): { re: Float64Array; im: Float64Array } {
  const size = system.re.length;
  const pairs = pairsOf(system);
  const plan = planElimination(size, pairs);
  const factor = createComplexFactor(plan);
  for (const [a, b] of pairs) {
    factor.re[slotBetween(plan, a, b)] = -system.re[a]![b]!;
    factor.im[slotBetween(plan, a, b)] = -system.im[a]![b]!;
  }
  const re = new Float64Array(size);
  const im = new Float64Array(size);
  for (let row = 0; row < size; row++) {
    factor.re[slotBetween(plan, row, -1)] = system.re[row]!.reduce((sum, value) => sum + value, 0);
    factor.im[slotBetween(plan, row, -1)] = system.im[row]!.reduce((sum, value) => sum + value, 0);
    re[plan.positions[row]!] = system.rightRe[row]!;
    im[plan.positions[row]!] = system.rightIm[row]!;
  }
  expect(factorComplex(plan, factor)).toBe(-1);
  forwardComplex(plan, factor, re, im);
  backComplex(plan, factor, re, im);
  return {
    re: Float64Array.from(re, (_, row) => re[plan.positions[row]!]!),
    im: Float64Array.from(im, (_, row) => im[plan.positions[row]!]!),
  };
}

function lusolveComplex(re: number[][], im: number[][], rightRe: number[], rightIm: number[]): Complex[] {
  const left = matrix(re.map((row, a) => row.map((value, b) => complex(value, im[a]![b]!))));
  const right = matrix(rightRe.map((value, row) => complex(value, rightIm[row]!)));
  return (lusolve(left, right).toArray() as Complex[][]).map((row) => complex(row[0]!));
}

// Source: mathjs, lusolve (LU with partial pivoting).
describe('mathjs solves the same complex matrix to the same numbers', () => {
  it.each([
    ['dense', 1],
    ['half full', 0.5],
    ['sparse', 0.1],
  ])('100 random symmetric matrices, %s', (_, share) => {
    for (let seed = 0; seed < 100; seed++) {
      const system = randomSystem(seed, 2 + (seed % 24), share);
      const ours = solveComplex(system);
      lusolveComplex(system.re, system.im, system.rightRe, system.rightIm).forEach((theirs, row) => {
        const off = Math.hypot(ours.re[row]! - theirs.re, ours.im[row]! - theirs.im);
        expect(off, `seed ${seed}, row ${row}`).toBeLessThan(1e-9);
      });
    }
  });

  it('100 random real matrices', () => {
    for (let seed = 0; seed < 100; seed++) {
      const system = randomSystem(seed, 2 + (seed % 24), 0.6);
      const size = system.re.length;
      const pairs = pairsOf(system);
      const plan = planElimination(size, pairs);
      const factor = createRealFactor(plan);
      for (const [a, b] of pairs) factor.re[slotBetween(plan, a, b)] = -system.re[a]![b]!;
      const right = new Float64Array(size);
      for (let row = 0; row < size; row++) {
        factor.re[slotBetween(plan, row, -1)] = system.re[row]!.reduce((sum, value) => sum + value, 0);
        right[plan.positions[row]!] = system.rightRe[row]!;
      }
      expect(factorReal(plan, factor)).toBe(-1);
      forwardReal(plan, factor, right);
      backReal(plan, factor, right);
      (lusolve(system.re, system.rightRe) as number[][]).forEach(([value], row) => {
        expect(Math.abs(right[plan.positions[row]!]! - value!), `seed ${seed}, row ${row}`).toBeLessThan(1e-9);
      });
    }
  });

  it('60 random networks, written for it with every source and winding as a row of its own', () => {
    for (let seed = 0; seed < 60; seed++) {
      const { topology, values } = randomNetwork(seed, { nodes: 4 + (seed % 20), chords: seed % 7, transformers: seed % 3 });
      const solution = createAcSolution(topology);
      createSolver(topology).solveAc(values, 60, solution);
      const { re, im, rightRe, rightIm } = tableau(topology, values, 60);
      const theirs = lusolveComplex(re, im, rightRe, rightIm);
      for (let node = 1; node < topology.nodes.length; node++) {
        const off = Math.hypot(solution.re[node]! - theirs[node - 1]!.re, solution.im[node]! - theirs[node - 1]!.im);
        const size = Math.hypot(solution.re[node]!, solution.im[node]!);
        expect(off, `seed ${seed}, ${topology.nodes[node]}`).toBeLessThan(1e-3 + 1e-6 * size);
      }
    }
  });

  it('and the same networks as the folded matrix that the benchmark gives it', () => {
    for (let seed = 0; seed < 30; seed++) {
      const { topology, values } = randomNetwork(seed);
      const solution = createAcSolution(topology);
      createSolver(topology).solveAc(values, 60, solution);
      const { re, im, rightRe, rightIm } = nodalMatrix(topology, values, 60);
      const theirs = lusolveComplex(re, im, rightRe, rightIm);
      for (let node = 1; node < topology.nodes.length; node++) {
        const off = Math.hypot(solution.re[node]! - theirs[node - 1]!.re, solution.im[node]! - theirs[node - 1]!.im);
        const size = Math.hypot(solution.re[node]!, solution.im[node]!);
        // Its diagonal has lost digits of the leakage, so that what floats is known less well to it.
        expect(off, `seed ${seed}, ${topology.nodes[node]}`).toBeLessThan(1e-3 + 1e-3 * size);
      }
    }
  });
});
