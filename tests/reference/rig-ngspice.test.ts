import { describe, expect, it } from 'vitest';
import { branchCurrentDc } from '../../src/circuit/currents.ts';
import { spiceBranchNames, spiceNodeNames, toSpice } from '../../src/circuit/spice.ts';
import { assemble } from '../../src/rig/assemble.ts';
import { possibleFaults } from '../../src/rig/faults.ts';
import { ampsThrough, type World } from '../../src/world/world.ts';
import { library } from '../scenario/shipped.ts';
import { modesOf } from '../world/states.ts';
import { runSpice } from './ngspice.ts';

/** What two solvers may differ by: 0.1 %, or these. */
const FLOOR = { volts: 1e-3, amps: 1e-6 } as const;
const SHARE = 1e-3;

/** How far apart in shares of what is allowed: below 1 they agree. */
function apart(distance: number, ours: number, theirs: number, floor: number): number {
  return distance / Math.max(SHARE * Math.max(ours, theirs), floor);
}

interface Worst {
  off: number;
  what: string;
}

/** Compares every node and branch of a world with ngspice; the worst of each goes into `worst`. */
async function compare(world: World, title: string, worst: Record<keyof typeof FLOOR, Worst>): Promise<void> {
  const { wiring, values, ac, dc } = world;
  const { topology } = wiring;
  const theirs = await runSpice(toSpice(topology, values, world.assembly.rig.hertz, title, { ammeters: true }));
  const note = (kind: keyof typeof FLOOR, off: number, what: () => string) => {
    // A quantity that is missing gives NaN, which is worse than anything.
    if (!(off <= worst[kind].off)) worst[kind] = { off: Number.isNaN(off) ? Number.POSITIVE_INFINITY : off, what: what() };
  };
  const check = (kind: keyof typeof FLOOR, re: number, im: number, other: { re: number; im: number } | undefined, name: string) => {
    const x = other?.re ?? Number.NaN;
    const y = other?.im ?? Number.NaN;
    const off = apart(Math.hypot(re - x, im - y), Math.hypot(re, im), Math.hypot(x, y), FLOOR[kind]);
    note(kind, off, () => `${title}: ${name} is ${re} + j${im} here and ${x} + j${y} there`);
  };
  const real = (value: number | undefined) => (value === undefined ? undefined : { re: value, im: 0 });
  spiceNodeNames(topology).forEach((name, node) => {
    check('volts', ac.re[node]!, ac.im[node]!, theirs.ac.get(name), `AC ${topology.nodes[node]}`);
    check('volts', dc[node]!, 0, real(theirs.op.get(name)), `DC ${topology.nodes[node]}`);
  });
  spiceBranchNames(topology).forEach((name, branch) => {
    const { re, im } = ampsThrough(world, branch);
    check('amps', re, im, theirs.acAmps.get(`vamps__${name}`), `AC through ${topology.branches[branch]!.name}`);
    const direct = branchCurrentDc(topology, values, dc, branch);
    check('amps', direct, 0, real(theirs.opAmps.get(`vamps__${name}`)), `DC through ${topology.branches[branch]!.name}`);
  });
}

/** A third of the faults are compared in one mode, another for each; BELLWIRE_FULL=1 compares each fault in every mode. */
const FULL = process.env.BELLWIRE_FULL !== undefined;

// Source: ngspice, an independent solver (npm package eecircuit-engine).
describe.each([...library.rigs.values()].map((rig) => [rig.id, rig] as const))(
  '%s agrees with ngspice, node by node and branch by branch, within 0.1 % or 1 mV and 1 µA',
  (_, rig) => {
    const assembly = assemble(rig);
    const faults = [undefined, ...possibleFaults(rig).flatMap((possible) => possible.members)];
    const modes = Object.entries(modesOf(assembly));
    let points = 0;

    it('with faults, each in a mode of its turn', { timeout: 600_000 }, async () => {
      const worst = { volts: { off: 0, what: '' }, amps: { off: 0, what: '' } };
      for (const [place, fault] of faults.entries()) {
        for (const [turn, [name, mode]] of modes.entries()) {
          if (fault && !FULL && (place + turn) % (3 * modes.length) !== 0) continue;
          const title = `${name}, ${fault ? `${fault.target} ${fault.mode} ${fault.magnitude}` : 'sound'}`;
          await compare(mode(fault ? [fault] : []), title, worst);
          points++;
        }
      }
      if (FULL) console.log(`${rig.id}: ${points} points, ${JSON.stringify(worst)}`);
      expect(worst.volts.off, worst.volts.what).toBeLessThan(1);
      expect(worst.amps.off, worst.amps.what).toBeLessThan(1);
    });

    it('at the sound modes and a hundredth of the points at the least', () => {
      expect(points).toBeGreaterThanOrEqual(modes.length + (faults.length * modes.length) / 100);
    });
  },
);
