import type { MeterFunction } from '../meter/functions.ts';
import { openLeads, type Port, type Reading, readClamp, readIdeal, readMicroamps, readPort } from '../meter/read.ts';
import type { Point } from '../rig/points.ts';
import { SERIES_METER_OHMS } from '../world/stamp.ts';
import { ampsThrough, type World } from '../world/world.ts';
import { nodeAt } from './access.ts';
import type { Bench } from './bench.ts';

/** What the display says now; undefined while the meter is off or its leads and clamp are on nothing. */
export function measure(bench: Bench): Reading | undefined {
  const { fn, world } = bench;
  if (fn === 'off') return undefined;
  if (fn === 'ampsAc') return bench.clamp === undefined ? undefined : readClamp(clamped(world, bench.clamp), bench.turns);
  if (bench.red === undefined || bench.black === undefined) return undefined;
  if (fn === 'microampsDc') return series(bench);
  return atPort(bench, nodeAt(bench, bench.red), nodeAt(bench, bench.black));
}

/** What the display says when nothing is connected. */
export function idleReading(bench: Bench): Reading {
  return measure(bench) ?? openLeads(bench.fn);
}

/** Which of a circuit's two solutions a function looks at. */
function needsOf(fn: MeterFunction): { readonly ac: boolean; readonly dc: boolean } {
  return { ac: fn !== 'voltsDc', dc: fn !== 'voltsAc' && fn !== 'voltsLoaded' };
}

function factor(world: World, needs: { readonly ac: boolean; readonly dc: boolean }): void {
  const { solver } = world.wiring;
  // The solver is shared by every world wired alike: its last factors may be another's.
  if (needs.ac) solver.factorAc(world.values, world.assembly.rig.hertz);
  if (needs.dc) solver.factorDc(world.values);
}

/** The circuit between two nodes as the meter finds it, by the last factors. */
function portAt(world: World, red: number, black: number, needs: { readonly ac: boolean; readonly dc: boolean }): Port {
  const { solver } = world.wiring;
  const impedance = needs.ac ? solver.theveninAc(red, black) : { ohms: 0, reactance: 0 };
  return {
    hertz: world.assembly.rig.hertz,
    acVolts: { re: at(world.ac.re, red) - at(world.ac.re, black), im: at(world.ac.im, red) - at(world.ac.im, black) },
    acOhms: impedance.ohms,
    acReactance: impedance.reactance,
    dcVolts: at(world.dc, red) - at(world.dc, black),
    dcOhms: needs.dc ? solver.theveninDc(red, black) : 0,
  };
}

function atPort(bench: Bench, red: number, black: number): Reading {
  const needs = needsOf(bench.fn);
  factor(bench.world, needs);
  return readPort(bench.fn, portAt(bench.world, red, black, needs));
}

/**
 * A meter that reads pair after pair with the world as it stands, for whoever looks for a test: factors once. Good until any other world
 * that is wired alike is solved or measured. Volts, ohms, tone and capacitance.
 */
export function prober(bench: Bench): (fn: MeterFunction, red: Point, black: Point) => Reading {
  const both = { ac: true, dc: true };
  factor(bench.world, both);
  let asked: { readonly red: Point; readonly black: Point; readonly port: Port } | undefined;
  return (fn, red, black) => {
    // One pair is asked for with several functions in a row.
    if (asked?.red !== red || asked.black !== black)
      asked = { red, black, port: portAt(bench.world, nodeAt(bench, red), nodeAt(bench, black), both) };
    return readPort(fn, asked.port);
  };
}

/** What a meter without a burden would say between two points, volts, ohms and tone: what somebody believes who forgets it. */
export function idealBetween(bench: Bench, fn: MeterFunction, red: Point, black: Point): Reading {
  const both = { ac: true, dc: true };
  factor(bench.world, both);
  return readIdeal(fn, portAt(bench.world, nodeAt(bench, red), nodeAt(bench, black), both));
}

/** What a clamp around a wire or cable would say. */
export function clampOn(bench: Bench, around: string): Reading {
  return readClamp(clamped(bench.world, around), 1);
}

function at(values: Float64Array, node: number): number {
  return values[node] ?? 0;
}

/** Microamps: the burden is in the network already; take it out of the port again, and the meter's own model puts it back with its diodes and fuse. */
function series(bench: Bench): Reading {
  const { world } = bench;
  const { seriesMeter, topology } = world.wiring;
  const branch = topology.branches[seriesMeter];
  if (bench.meterFuseOpen || !branch) return readMicroamps(Number.POSITIVE_INFINITY);
  const both = { ac: true, dc: true };
  factor(world, both);
  const loaded = portAt(world, branch.from, branch.to, both);
  const size = loaded.acOhms ** 2 + loaded.acReactance ** 2;
  const conductance = loaded.acOhms / size - 1 / SERIES_METER_OHMS;
  const susceptance = -loaded.acReactance / size;
  const rest = conductance ** 2 + susceptance ** 2;
  const acOhms = conductance / rest;
  const acReactance = -susceptance / rest;
  const dcOhms = 1 / (1 / loaded.dcOhms - 1 / SERIES_METER_OHMS);
  const gain = { re: 1 + acOhms / SERIES_METER_OHMS, im: acReactance / SERIES_METER_OHMS };
  const { re, im } = loaded.acVolts;
  return readPort('microampsDc', {
    ...loaded,
    acVolts: { re: re * gain.re - im * gain.im, im: re * gain.im + im * gain.re },
    acOhms,
    acReactance,
    dcOhms,
    dcVolts: loaded.dcVolts * (1 + dcOhms / SERIES_METER_OHMS),
  });
}

/** Currents in the clamp: one wire's, or those of every conductor in a cable. */
function clamped(world: World, around: string): readonly { readonly re: number; readonly im: number }[] {
  return world.assembly.wires
    .filter((wire) => wire.id === around || wire.data.cable === around)
    .map((wire) => ampsThrough(world, world.wiring.wires[wire.index]?.body ?? 0));
}
