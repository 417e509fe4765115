import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { REGISTRY } from '../../src/attempt/registry.ts';
import { CATALOGUE } from '../../src/parts/catalogue.ts';
import { assemble } from '../../src/rig/assemble.ts';
import { possibleFaults, splitMode } from '../../src/rig/faults.ts';
import { advance } from '../../src/world/time.ts';
import { stateOf, type World } from '../../src/world/world.ts';
import { sourceFiles } from '../tools/import-rule.ts';
import { wordKeys } from '../tools/locale-keys.ts';
import { modesOf } from '../world/states.ts';
import { library } from './shipped.ts';

const WORDS = wordKeys('.', 'en');
const RIGS = [...library.rigs.values()];

/** Keys without words. */
const wordless = (keys: Iterable<string>) => [...new Set(keys)].filter((key) => !WORDS.has(key));

describe('there are English words for', () => {
  it('every rig, place, cover, cable, part and wire', () => {
    expect(
      wordless(
        RIGS.flatMap((rig) => [
          `rig:name.${rig.id}`,
          ...rig.places.map(({ id }) => `rig:place.${id}`),
          ...rig.covers.map(({ id }) => `rig:cover.${id}`),
          ...rig.cables.map(({ id }) => `rig:cable.${id}`),
          // A wire without words is named by the parts that it joins, their letters and its cable.
          ...rig.parts.map(({ id }) => `rig:part.${id}`),
        ]),
      ),
    ).toEqual([]);
  });

  it('every ticket’s title, site and complaint', () => {
    expect(
      wordless(library.tickets.flatMap(({ id }) => ['title', 'site', 'complaint'].map((key) => `ticket:${id}.${key}`))),
    ).toEqual([]);
  });

  it('every failure that can be named', () => {
    const ofKinds = [...CATALOGUE.values()].flatMap((kind) => kind.modes.map((mode) => `parts:mode.${mode.id}`));
    const ofRigs = RIGS.flatMap((rig) => possibleFaults(rig).map((fault) => `parts:mode.${splitMode(fault.mode).base}`));
    expect(ofRigs.length).toBeGreaterThan(100);
    expect(wordless([...ofKinds, ...ofRigs])).toEqual([]);
  });

  it('every meaning of a status light, on the ticket and on the door', () => {
    const codes = [...CATALOGUE.values()].flatMap((kind) => Object.keys(kind.codes ?? {}));
    expect(codes.length).toBeGreaterThan(5);
    expect(wordless(codes.flatMap((code) => [`parts:code.${code}`, `stage:codes.${code}`]))).toEqual([]);
  });

  it('every control, and every position of one', () => {
    const controls = [...CATALOGUE.values()].flatMap((kind) => kind.controls ?? []);
    expect(wordless(controls.map((control) => `parts:control.${control.id}`))).toEqual([]);
    expect(
      wordless(controls.flatMap((control) => (control.positions ?? []).map((position) => `parts:position.${position}`))),
    ).toEqual([]);
  });

  it('every place that a control can stand in by itself', () => {
    // A breaker's lever reads "tripped", which no hand puts it in.
    const read = RIGS.flatMap((rig) => {
      const world = modesOf(assemble(rig)).rest!([]);
      return world.assembly.parts.flatMap((part) =>
        (part.kind.controls ?? []).map((control) => part.kind.reads?.(stateOf(world, part), control.id)),
      );
    });
    const positions = [...read, 'tripped'].filter((value) => typeof value === 'string');
    expect(wordless(positions.map((position) => `parts:position.${position}`))).toEqual([]);
  });

  it('every refusal', () => {
    const codes = codesIn(
      'src/attempt',
      /\bno\([^'()]*'(\w+)'|\bno\(\w+ \? '(\w+)' : '(\w+)'|code: '(\w+)'|'(\w+)' : '(\w+)', \{/g,
    );
    expect(codes.length).toBeGreaterThan(20);
    expect(wordless(codes.map((code) => `refusal:${code}`))).toEqual([]);
    expect(Object.keys(REGISTRY).length).toBeGreaterThan(20);
  });

  it('every error in a file that a person can cause', () => {
    const codes = codesIn('src', /dataError\(\s*'([\w.]+)'/g);
    expect(codes.length).toBeGreaterThan(25);
    expect(wordless(codes.map((code) => `error:${code}`))).toEqual([]);
  });

  it('every unsafe act', () => {
    const harms = RIGS.flatMap((rig) => {
      const world = modesOf(assemble(rig)).rest!([]);
      return world.assembly.parts.flatMap((part) => part.kind.harm?.(stateOf(world, part)).code ?? []);
    });
    expect(harms).toContain('shortCycle');
    const acts = codesIn('src/attempt', /unsafe \?\?= '(\w+)'|\? '(\w+)' : undefined/g);
    expect(acts).toContain('ohmsLive');
    expect(wordless([...harms, ...acts].map((code) => `score:reason.${code}`))).toEqual([]);
  });
});

/** Codes that the source of a room writes out, by a pattern with groups. */
function codesIn(folder: string, pattern: RegExp): string[] {
  return sourceFiles(process.cwd(), folder).flatMap((path) =>
    [...readFileSync(path, 'utf8').matchAll(pattern)].flatMap((match) => match.slice(1).filter((code) => code !== undefined)),
  );
}

/** Numbers that are said with their value: `parts:sign.set.value`. */
const MEASURES = new Set(['set', 'room', 'guard', 'dial', 'supply', 'returnAir', 'supplyAir', 'delay', 'coils', 'gauge']);

describe('a sign', () => {
  it('that ever shows on a rig has English words for what it says', { timeout: 60_000 }, () => {
    const keys = new Map<string, string>();
    const collect = (world: World) => {
      for (const part of world.assembly.parts) {
        for (const { key, value } of part.kind.signs(world.sites[part.index]!, stateOf(world, part))) {
          keys.set(MEASURES.has(key) ? `parts:sign.${key}.value` : `parts:sign.${key}.${value}`, `${part.id}: ${key} ${value}`);
        }
      }
    };
    for (const rig of RIGS) {
      const assembly = assemble(rig);
      const modes = Object.values(modesOf(assembly));
      const faults = [undefined, ...possibleFaults(rig).flatMap(({ members }) => members)];
      faults.forEach((fault, place) => {
        modes.forEach((mode, turn) => {
          // Each fault in some of the modes, all of the modes with some of the faults.
          if (fault && (place + turn) % 12 !== 0) return;
          const world = mode(fault ? [fault] : []);
          collect(world);
          advance(world, 1200, () => {
            collect(world);
            return false;
          });
        });
      });
    }
    expect(keys.size).toBeGreaterThan(60);
    expect([...keys].filter(([key]) => !WORDS.has(key)).map(([key, where]) => `${key} (${where})`)).toEqual([]);
  });
});
