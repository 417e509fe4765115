import { describe, expect, it } from 'vitest';
import rigFile from '../../scenarios/rigs/furnaceAndCondenser.json';
import { assemble } from '../../src/rig/assemble.ts';
import { isDataError } from '../../src/rig/errors.ts';
import { loadRig } from '../../src/rig/load.ts';
import type { RigData } from '../../src/rig/schema.ts';
import { advance } from '../../src/world/time.ts';
import { createWorld } from '../../src/world/world.ts';
import { leadsInto, mutated, renamed } from '../scenario/mutate.ts';
import { wordKeys } from '../tools/locale-keys.ts';

const WORDS = wordKeys('.', 'en');
const MUTANTS = 1000;
/** Far more than the slowest honest load; a hang would be for ever. */
const MOST_MILLISECONDS = 2000;

/** Loads a mutant and, when it is sound, lives an hour with it; the error's code, or 'loaded'. */
function outcome(json: unknown, seed: number): { code: string; path: string } {
  let rig: RigData;
  try {
    rig = loadRig(json);
  } catch (error) {
    if (!isDataError(error)) throw error;
    return { code: error.code, path: error.path };
  }
  try {
    advance(createWorld(assemble(rig), []), 3600);
  } catch (error) {
    throw new Error(`seed ${seed} loads and then cannot live`, { cause: error });
  }
  return { code: 'loaded', path: '' };
}

/** Tries every mutant; how often each outcome came up. */
function tryAll(mutate: (json: unknown, seed: number) => unknown): Map<string, number> {
  const codes = new Map<string, number>();
  for (let seed = 0; seed < MUTANTS; seed++) {
    const json = mutate(rigFile, seed);
    const start = performance.now();
    const { code, path } = outcome(json, seed);
    expect(performance.now() - start, `seed ${seed}`).toBeLessThan(MOST_MILLISECONDS);
    codes.set(code, (codes.get(code) ?? 0) + 1);
    if (code === 'loaded') continue;
    expect(WORDS, `seed ${seed}`).toContain(`error:${code}`);
    expect(leadsInto(json, path), `seed ${seed}: ${code} at ${path}`).toBe(true);
  }
  return codes;
}

describe('a rig file with something wrong in it gives one clear error with its place in the file, or is sound', () => {
  it(`${MUTANTS} files broken at random`, { timeout: 120_000 }, () => {
    const codes = tryAll(mutated);
    const misshapen = [...codes].filter(([code]) => code.startsWith('data.')).reduce((sum, [, count]) => sum + count, 0);
    expect(misshapen).toBeGreaterThan(MUTANTS / 2);
    expect(codes.get('loaded')).toBeGreaterThan(10);
  });

  it(`${MUTANTS} files of the right shape that name something else than they should`, { timeout: 120_000 }, () => {
    const codes = tryAll(renamed);
    // They reach deep into the checks and not only the first one.
    expect(codes.size).toBeGreaterThan(8);
    expect(codes.get('loaded')).toBeGreaterThan(100);
  });
});
