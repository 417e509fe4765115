/** A trainee for tests: a job without relevant fault unless one is given, hands that must not be refused, and a meter. */
import rigFile from '../../scenarios/rigs/furnaceAndCondenser.json';
import type { Action } from '../../src/attempt/actions.ts';
import { type Attempt, begin, perform } from '../../src/attempt/attempt.ts';
import type { HistoryAct, Job } from '../../src/attempt/job.ts';
import { measure } from '../../src/attempt/measure.ts';
import { signsOf } from '../../src/attempt/notices.ts';
import type { StepView } from '../../src/attempt/view.ts';
import type { MeterFunction } from '../../src/meter/functions.ts';
import type { Reading } from '../../src/meter/read.ts';
import { type Fault, possibleFaults } from '../../src/rig/faults.ts';
import { loadRig } from '../../src/rig/load.ts';
import { advance } from '../../src/world/time.ts';
import type { Weather } from '../../src/world/world.ts';

/** The first rig: a gas furnace and a split air conditioner. */
export const RIG = loadRig(rigFile);

export const COLD_DAY: Weather = { outdoorFahrenheit: 22, startFahrenheit: 61 };
export const HOT_DAY: Weather = { outdoorFahrenheit: 95, startFahrenheit: 82 };

/** A part or wire with one of its modes; of a mode that has magnitudes the first, unless one is told. */
export function faultOf(target: string, mode: string, magnitude?: number): Fault {
  const members = possibleFaults(RIG, true).find((each) => each.target === target && each.mode === mode)?.members ?? [];
  const fault = magnitude === undefined ? members[0] : members.find((each) => each.magnitude === magnitude);
  if (!fault) throw new Error(`no fault ${target} ${mode} ${magnitude ?? ''}`);
  return fault;
}

export interface JobFigures {
  readonly faults?: readonly Fault[];
  readonly weather?: Weather;
  readonly history?: readonly HistoryAct[];
}

export function jobWith({ faults = [], weather = {}, history = [] }: JobFigures = {}): Job {
  return { id: 'test', rig: RIG.id, faults, weather, complaint: { history, observed: [], works: [] } };
}

/** A technician who has just arrived. */
export function arriveAt(figures: JobFigures = {}): Attempt {
  return begin(jobWith(figures), RIG);
}

/** Takes these steps; a refusal is an error. The last step's view comes back. */
export function take(attempt: Attempt, ...actions: Action[]): StepView {
  let last: StepView | undefined;
  for (const action of actions) {
    const outcome = perform(attempt, action);
    if (!outcome.ok) throw new Error(`${JSON.stringify(action)} refused: ${outcome.refusal.code}`);
    last = outcome.step;
  }
  if (!last) throw new Error('no steps');
  return last;
}

/** The code of a refusal; 'done' when it was not refused. */
export function refusalCode(attempt: Attempt, action: Action): string {
  const outcome = perform(attempt, action);
  return outcome.ok ? 'done' : outcome.refusal.code;
}

/** Sets the meter and places its leads where they are not so already; what it then displays. */
export function read(attempt: Attempt, fn: MeterFunction, red: string, black: string): Reading {
  const { bench } = attempt;
  if (bench.fn !== fn) take(attempt, { name: 'meter', fn });
  if (bench.red !== red) take(attempt, { name: 'probe', lead: 'red', at: red });
  if (bench.black !== black) take(attempt, { name: 'probe', lead: 'black', at: black });
  return look(attempt);
}

/** What the display says now. */
export function look(attempt: Attempt): Reading {
  const reading = measure(attempt.bench);
  if (!reading) throw new Error('the meter is on nothing');
  return reading;
}

/** The number that `read` displays, in the unit without prefix. */
export function number(attempt: Attempt, fn: MeterFunction, red: string, black: string): number {
  const reading = read(attempt, fn, red, black);
  if (reading.kind !== 'number') throw new Error(`${fn} ${red} to ${black} is ${reading.kind}`);
  return reading.value;
}

/** How a part stands, whether or not anybody is there to see: the sign's value. */
export function sign(attempt: Attempt, part: string, key: string): string | number {
  const assembled = attempt.assembly.partById.get(part);
  const found = assembled && signsOf(attempt.bench, assembled).find((candidate) => candidate.key === key);
  return found?.value ?? 'none';
}

export function walk(attempt: Attempt, to: string): void {
  if (attempt.bench.place !== to) take(attempt, { name: 'walk', to });
}

export function wait(attempt: Attempt, seconds: number): StepView {
  return take(attempt, { name: 'wait', seconds });
}

/** Waits second by second until something stands so; the seconds that it took. */
export function waitUntil(attempt: Attempt, stands: () => boolean, most = 1200): number {
  const { world } = attempt.bench;
  const start = world.state.time;
  while (!stands()) {
    if (world.state.time - start >= most) throw new Error(`nothing after ${most} s`);
    advance(world, 1);
  }
  return world.state.time - start;
}

/** Opens these covers, walking to each. */
export function open(attempt: Attempt, ...covers: string[]): void {
  for (const id of covers) {
    const cover = RIG.covers.find((candidate) => candidate.id === id);
    if (!cover) throw new Error(`no cover ${id}`);
    walk(attempt, cover.place);
    take(attempt, { name: 'cover', cover: id, open: true });
  }
}

export function operate(attempt: Attempt, part: string, control: string, position: string): StepView {
  return take(attempt, { name: 'operate', part, control, position });
}

export function set(attempt: Attempt, part: string, control: string, value: number): StepView {
  return take(attempt, { name: 'set', part, control, value });
}

/** At the wall: asks the thermostat for heat, cooling, or neither. */
export function callFor(attempt: Attempt, mode: 'off' | 'heat' | 'cool', degrees = mode === 'heat' ? 75 : 68): void {
  if (mode === 'heat') set(attempt, 'thermostat', 'setHeat', degrees);
  if (mode === 'cool') set(attempt, 'thermostat', 'setCool', degrees);
  operate(attempt, 'thermostat', 'mode', mode);
}

/** Pulls the thermostat and lays it on the mat, pigtails on. */
export function layOnMat(attempt: Attempt): void {
  walk(attempt, 'hallway');
  take(attempt, { name: 'pull', part: 'thermostat' }, { name: 'mat', part: 'thermostat' });
}
