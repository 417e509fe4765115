/**
 * An independent solver for tests: ngspice, as WebAssembly, from the npm package eecircuit-engine. It starts in about a
 * second and then runs a small deck in a few milliseconds.
 */
import { type ResultType, Simulation } from 'eecircuit-engine';

export interface SpicePhasor {
  readonly re: number;
  readonly im: number;
}

/** Node voltages by the deck's node name, currents of voltage sources by the source's name (its plus to its minus). */
export interface SpiceResult {
  readonly ac: ReadonlyMap<string, SpicePhasor>;
  readonly acAmps: ReadonlyMap<string, SpicePhasor>;
  readonly op: ReadonlyMap<string, number>;
  readonly opAmps: ReadonlyMap<string, number>;
}

let started: Promise<Simulation> | undefined;
let decks = 0;
/** It gives no memory back, and has room for a thousand decks of a few hundred lines: after these it starts anew. */
const MOST_DECKS = 400;

/**
 * Runs a deck that holds `.op` and `.ac lin 1 …`.
 * @throws Error with ngspice's own words when it refuses the deck.
 */
export async function runSpice(deck: string): Promise<SpiceResult> {
  if (decks++ % MOST_DECKS === 0) started = startSpice();
  started ??= startSpice();
  const simulation = await started;
  // One run gives one analysis, so the deck runs once with each line alone.
  const ac = await run(simulation, deck.replace(/^\.op$/m, '* .op'), 'complex');
  const op = await run(simulation, deck.replace(/^(\.ac .*)$/m, '* $1'), 'real');
  const result = { ac: new Map(), acAmps: new Map(), op: new Map(), opAmps: new Map() };
  if (ac.dataType === 'complex') {
    for (const { name, values } of ac.data) {
      const value = values[0];
      if (value !== undefined) put(name, { re: value.real, im: value.img }, result.ac, result.acAmps);
    }
  }
  if (op.dataType === 'real') {
    for (const { name, values } of op.data) put(name, values[0], result.op, result.opAmps);
  }
  result.ac.set('0', { re: 0, im: 0 });
  result.op.set('0', 0);
  return result;
}

async function startSpice(): Promise<Simulation> {
  const simulation = new Simulation();
  await simulation.start();
  return simulation;
}

async function run(simulation: Simulation, deck: string, dataType: ResultType['dataType']): Promise<ResultType> {
  simulation.setNetList(deck);
  const result = await simulation.runSim();
  const errors = simulation.getError();
  // A deck that ngspice refuses leaves the last result in place: what came back must be of this run's kind.
  if (errors.length > 0 || result.dataType !== dataType) {
    throw new Error(`ngspice: ${errors.join('; ') || `no ${dataType} result`}\n${deck}`);
  }
  return result;
}

function put<T>(name: string, value: T, volts: Map<string, T>, amps: Map<string, T>): void {
  const match = /^([vi])\((.*)\)$/.exec(name);
  if (match !== null) (match[1] === 'v' ? volts : amps).set(match[2]!, value);
}
