import { createValues, type Topology, type Values } from '../../src/circuit/network.ts';
import { createAcSolution, createSolver } from '../../src/circuit/solver.ts';
import type { Port } from '../../src/meter/read.ts';

const HERTZ = 60;

/** A port of figures that a test gives; the rest is a good supply: nothing there behind no resistance to speak of. */
export function portOf(figures: Partial<Port>): Port {
  return {
    hertz: HERTZ,
    acVolts: { re: 0, im: 0 },
    acOhms: 0.02,
    acReactance: 0,
    dcVolts: 0,
    dcOhms: 0.02,
    ...figures,
  };
}

/** The port that red and black see in a network. */
export function portBetween(topology: Topology, values: Values, red: number, black: number): Port {
  const solver = createSolver(topology);
  const ac = createAcSolution(topology);
  const dc = new Float64Array(topology.nodes.length);
  solver.solveAc(values, HERTZ, ac);
  solver.solveDc(values, dc);
  const { ohms, reactance } = solver.theveninAc(red, black);
  return {
    hertz: HERTZ,
    acVolts: { re: ac.re[red]! - ac.re[black]!, im: ac.im[red]! - ac.im[black]! },
    acOhms: ohms,
    acReactance: reactance,
    dcVolts: dc[red]! - dc[black]!,
    dcOhms: solver.theveninDc(red, black),
  };
}

/** A series loop from earth and back: what stands between each node and the next, and the last node's way to earth. */
export interface Link {
  readonly ohms?: number;
  readonly henries?: number;
  readonly farads?: number;
  readonly acVolts?: number;
  readonly dcVolts?: number;
}

/** A chain earth → node 1 → … → earth, as a network. */
export function chain(...links: Link[]): { topology: Topology; values: Values } {
  const topology: Topology = {
    nodes: ['earth', ...links.slice(1).map((_, index) => `node ${index + 1}`)],
    branches: links.map((_, index) => ({ name: `link ${index + 1}`, from: index, to: (index + 1) % links.length })),
    transformers: [],
  };
  const values = createValues(topology);
  links.forEach((link, index) => {
    if (link.ohms !== undefined) values.ohms[index] = link.ohms;
    if (link.henries !== undefined) values.henries[index] = link.henries;
    if (link.farads !== undefined) values.farads[index] = link.farads;
    if (link.acVolts !== undefined) values.acVolts[index] = link.acVolts;
    if (link.dcVolts !== undefined) values.dcVolts[index] = link.dcVolts;
  });
  return { topology, values };
}
