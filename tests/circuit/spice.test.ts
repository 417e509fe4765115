import { describe, expect, it } from 'vitest';
import { createValues, type Topology } from '../../src/circuit/network.ts';
import { spiceBranchNames, spiceNodeNames, toSpice } from '../../src/circuit/spice.ts';

const topology: Topology = {
  nodes: ['earth', 'Furnace › R', 'furnace r', 'C'],
  branches: [
    { name: 'coil “Y”', from: 1, to: 3 },
    { name: 'supply', from: 0, to: 1 },
  ],
  transformers: [{ name: 'T1', primary: [1, 0], secondary: [2, 3] }],
};

function deck(options = {}) {
  const values = createValues(topology);
  values.ohms[0] = 12;
  values.henries[0] = 0.1;
  values.farads[0] = 1e-9;
  values.ohms[1] = 0.1;
  values.acVolts[1] = 3;
  values.acVoltsImaginary[1] = 4;
  values.dcVolts[1] = 1.5;
  return toSpice(topology, values, 60, 'Furnace\nin cooling', options).split('\n');
}

describe('a SPICE deck', () => {
  it('names nodes so that no two are alike, with earth as 0', () => {
    expect(spiceNodeNames(topology)).toEqual(['0', 'furnace_r', 'furnace_r_2', 'c']);
    expect(spiceBranchNames(topology)).toEqual(['coil_y', 'supply']);
  });

  it('calls no node what SPICE takes for earth', () => {
    const names = spiceNodeNames({ ...topology, nodes: ['earth', 'GND', '0', '*'] });
    expect(names).toEqual(['0', 'gnd_2', '0_2', 'x']);
  });

  it('writes a branch as its elements, and only those it has', () => {
    const lines = deck();
    expect(lines).toContain('ccoil_y furnace_r c 1e-9');
    expect(lines).toContain('rcoil_y furnace_r coil_y__1 12');
    expect(lines).toContain('lcoil_y coil_y__1 c 0.1');
    expect(lines.filter((line) => line.startsWith('lsupply') || line.startsWith('csupply'))).toEqual([]);
  });

  it('writes a source with its plus at the far end, its magnitude and phase, and its direct volts', () => {
    const source = deck().find((line) => line.startsWith('vsupply'));
    expect(source).toMatch(/^vsupply supply__1 0 dc 1\.5 ac 5 53\.13/);
  });

  it('keeps the title on one line, first, and the analyses last', () => {
    const lines = deck();
    expect(lines[0]).toBe('* Furnace in cooling');
    expect(lines.slice(-4)).toEqual(['.op', '.ac lin 1 60 60', '.end', '']);
  });

  it('has an ammeter in every branch when asked', () => {
    expect(deck({ ammeters: true }).filter((line) => line.startsWith('vamps__'))).toHaveLength(2);
    expect(deck().filter((line) => line.startsWith('vamps__'))).toHaveLength(0);
  });

  it('gives every node its leak', () => {
    expect(deck().filter((line) => line.startsWith('rleak__'))).toHaveLength(3);
  });
});
