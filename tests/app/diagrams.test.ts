import { describe, expect, test } from 'vitest';
import { codesOf, inLines, labelAt } from '../../src/app/diagrams/labels.ts';
import { drawLadder } from '../../src/app/diagrams/ladder-layout.ts';
import { ladderTitles } from '../../src/app/diagrams/ladder-titles.ts';
import { assemble } from '../../src/rig/assemble.ts';
import { laddersOf } from '../../src/rig/ladder.ts';
import { factoryScene } from '../../src/stage/factory.ts';
import { library } from '../scenario/shipped.ts';
import { wordKeys } from '../tools/locale-keys.ts';
import { speakEnglish } from './english.ts';

const rigs = [...library.rigs.values()].map((rig) => [rig.id, assemble(rig)] as const);

describe.each(rigs)('the diagrams of %s', (_, assembly) => {
  test('have no two things on one spot of a ladder, and all of it inside the drawing', () => {
    for (const ladder of laddersOf(assembly)) {
      const { cells, stretches, width, height, rails, rows } = drawLadder(ladder);
      for (const [index, a] of cells.entries()) {
        expect(a.x > rails[0] && a.x < rails[1] && a.y < height).toBe(true);
        for (const b of cells.slice(index + 1)) expect(Math.abs(a.x - b.x) >= 100 || Math.abs(a.y - b.y) >= 80).toBe(true);
      }
      for (const { x1, x2 } of stretches) {
        expect(x1 <= x2 && x1 >= 0 && x2 <= width).toBe(true);
      }
      expect(rows.length).toBe(ladder.rungs.length);
    }
  });

  test('have a title for each ladder that no other has', async () => {
    await speakEnglish();
    const titles = ladderTitles(assembly, laddersOf(assembly));
    expect(titles.length).toBeGreaterThan(0);
    expect(new Set(titles).size).toBe(titles.length);
  });

  test('draw every place with every wire that the factory landed there, and no body off its base', () => {
    for (const { id } of assembly.rig.places) {
      const { runs, parts } = factoryScene(assembly, id);
      expect(parts.filter(({ part }) => assembly.partById.get(part.id)?.kind.removable === true)).toEqual([]);
      const here = new Set(parts.map(({ part }) => part.id));
      const partOf = (point: string): string => point.split('.')[0] ?? '';
      const drawable = assembly.rig.wires.filter(
        ({ from, to, pin }) =>
          !pin &&
          [from, to].every((point) => {
            const part = assembly.partById.get(partOf(point));
            return part?.kind.removable !== true && assembly.partById.get(part?.data.rides ?? '')?.kind.removable !== true;
          }) &&
          (here.has(partOf(from)) || here.has(partOf(to))),
      );
      expect([...new Set(runs.map(({ wire }) => wire))].sort()).toEqual(drawable.map((wire) => wire.id).sort());
    }
  });
});

test('terminals are called as the rig prints them, a winding by the terminal that it ends on, a pin by its screw', () => {
  const assembly = assemble(library.rigs.get('furnaceAndCondenser')!);
  expect(labelAt(assembly, 'transformer.X2')).toBe('X2');
  expect(labelAt(assembly, 'transformer.x')).toBe('X1');
  expect(labelAt(assembly, 'compressor.c')).toBe('');
  expect(labelAt(assembly, 'thermostat.Y')).toBe('Y');
  expect(labelAt(assembly, 'fuse.a')).toBe('');
  const other = structuredClone(assembly.rig);
  Object.assign(other.parts.find(({ id }) => id === 'board')?.labels ?? {}, { W: 'W1' });
  expect(labelAt(assemble(other), 'board.W')).toBe('W1');
});

test('names break into lines at spaces, and colours are IEC 60757 letters', () => {
  expect(inLines('high-pressure switch of the outdoor unit', 18)).toEqual(['high-pressure', 'switch of the', 'outdoor unit']);
  const rig = library.rigs.get('furnaceAndCondenser')!;
  expect(codesOf(rig.wires.filter(({ id }) => ['statY', 'outY', 'statW'].includes(id)))).toBe('WH YE');
});

test('all kinds of step and symbol have words', () => {
  const keys = wordKeys('.', 'en');
  for (const kind of ['open', 'closed', 'fuse', 'capacitor', 'coil', 'resistor', 'load'])
    expect(keys).toContain(`diagram:step.${kind}`);
  for (const kind of ['open', 'closed', 'fuse', 'coil', 'load', 'capacitor', 'supply', 'mains'])
    expect(keys).toContain(`diagram:symbol.${kind}`);
});
