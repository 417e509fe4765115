import { expect, it } from 'vitest';
import rigFile from '../../scenarios/rigs/longRun.json';
import { assemble } from '../../src/rig/assemble.ts';
import { loadRig } from '../../src/rig/load.ts';
import { advance } from '../../src/world/time.ts';
import { ampsThrough, createWorld, stateOf } from '../../src/world/world.ts';
import { turn } from '../world/states.ts';

/** The long run with a thermostat cable of this gauge and length, calling for cooling. */
function calling(awg: number, feet: number) {
  const wires = rigFile.wires.map((wire) => ('cable' in wire && wire.cable === 'statCable' ? { ...wire, awg, feet } : wire));
  const world = createWorld(assemble(loadRig({ ...rigFile, wires })), []);
  turn(world, 'thermostat', 'setCool', 68);
  turn(world, 'thermostat', 'mode', 'cool');
  advance(world, 60);
  return world;
}
const armature = (awg: number, feet: number) => {
  const world = calling(awg, feet);
  const part = world.assembly.partById.get('contactor')!;
  return part.kind.signs(world.sites[part.index]!, stateOf(world, part)).find(({ key }) => key === 'armature')?.value;
};

// NBS Handbook 100 (ohms per 1000 ft) and the coil's 30 VA before it seats: common practice, no source.
it.each([
  [18, 250, 'in'],
  [20, 250, 'in'],
  [22, 400, 'not in'],
  [18, 400, 'in'],
] as const)('through %d AWG and %d feet the contactor is %s', (awg, feet, stands) => {
  expect(armature(awg, feet) === 'in' ? 'in' : 'not in').toBe(stands);
});

// Kirchhoff: what goes out on R comes back on Y, G and W of the same jacket, but for what leaks.
it('the currents of the whole cable add up to nearly nothing, although each conductor carries its own', () => {
  const world = calling(20, 250);
  const conductors = world.assembly.wires.filter((wire) => wire.data.cable === 'statCable');
  const amps = conductors.map((wire) => ampsThrough(world, world.wiring.wires[wire.index]!.body));
  const sum = Math.hypot(
    amps.reduce((all, { re }) => all + re, 0),
    amps.reduce((all, { im }) => all + im, 0),
  );
  const each = amps.map(({ re, im }) => Math.hypot(re, im));
  expect(Math.max(...each)).toBeGreaterThan(0.2);
  expect(sum).toBeLessThan(0.01);
});
