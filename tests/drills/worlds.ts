/** Worlds for drill tests: each fault in an attempt of its own, begun from nothing and taken step by step. */
import type { Action } from '../../src/attempt/actions.ts';
import { type Attempt, begin, perform } from '../../src/attempt/attempt.ts';
import { createBank } from '../../src/drills/draw.ts';
import type { DrillKind, Item } from '../../src/drills/item.ts';
import type { Said } from '../../src/drills/said.ts';
import type { Scene } from '../../src/drills/scene.ts';
import type { MeterFunction } from '../../src/meter/functions.ts';
import { accuracyOf, type Reading } from '../../src/meter/read.ts';
import type { Fault } from '../../src/rig/faults.ts';
import { layHouse } from '../../src/rig/house.ts';
import type { RigData } from '../../src/rig/schema.ts';
import { type Hypothesis, hypothesesOf, type Naming } from '../../src/suspects/hypotheses.ts';
import { library } from '../scenario/shipped.ts';

/** Numbers that BELLWIRE_FULL tries of each kind, the same ones in every test: what is checked for flaws is worked out anew as well. */
export const MANY = 2016;

/** Items of a kind: three a house of a few houses, or, with BELLWIRE_FULL, of many. */
export function itemsOf(kind: DrillKind, few: number): Item[] {
  const full = process.env.BELLWIRE_FULL !== undefined;
  const bank = createBank([...library.rigs.values()]);
  return Array.from({ length: full ? MANY : few }, (_, index) =>
    bank.item(kind, full ? index : Math.floor(index / 3) * 24 + (index % 3)),
  ).filter((item) => item !== undefined);
}

export function rigOfScene({ rig, house }: Scene): RigData {
  return layHouse(library.rigs.get(rig)!, house);
}

export type Leads = Extract<Said, { is: 'leads' }>;

/** A job of this scene with other faults, after the scene's steps. */
export function beginAt(scene: Scene, faults: readonly Fault[], actions: readonly Action[] = scene.actions): Attempt {
  const { rig, weather, tools, history } = scene;
  const complaint = { history, observed: [], works: [] };
  const attempt = begin({ id: 'drill', rig, faults, weather, tools, complaint }, rigOfScene(scene));
  for (const action of actions) {
    const outcome = perform(attempt, action);
    // What a fault has left off needs no hand to switch it off.
    if (!outcome.ok && outcome.refusal.code !== 'alreadySo')
      throw new Error(`${JSON.stringify(action)} refused: ${outcome.refusal.code}`);
  }
  return attempt;
}

/** Puts the leads somewhere and turns the key, lead by lead; what the display says then. */
export function readAt(attempt: Attempt, { fn, red, black }: Pick<Leads, 'fn' | 'red' | 'black'>): Reading {
  const { bench } = attempt;
  const steps: Action[] = [];
  if (bench.black !== black) steps.push({ name: 'probe', lead: 'black', at: black });
  if (bench.red !== red) steps.push({ name: 'probe', lead: 'red', at: red });
  if (bench.fn !== fn) steps.push({ name: 'meter', fn: fn as MeterFunction });
  for (const action of steps) {
    const outcome = perform(attempt, action);
    if (!outcome.ok) throw new Error(`${JSON.stringify(action)} refused: ${outcome.refusal.code}`);
  }
  const reading = attempt.steps.at(-1)?.observation.reading;
  if (!reading) throw new Error('no reading');
  return reading;
}

/** The hypothesis of a name in a scene's house. */
export function hypothesisOf(scene: Scene, { target, mode }: Naming): Hypothesis {
  return hypothesesOf(rigOfScene(scene)).find(({ naming }) => naming.target === target && naming.mode === mode)!;
}

export function namedIn(said: Said | undefined): Naming {
  if (said?.is !== 'fault' || !said.naming) throw new Error('no fault');
  return said.naming;
}

export function leadsIn(said: Said | undefined): Leads {
  if (said?.is !== 'leads') throw new Error('no leads');
  return said;
}

/** Not by any eye: another kind of display, or numbers apart by more than the meter may be wrong in both. */
export function beyondAccuracy(a: Reading, b: Reading): boolean {
  if (a.kind !== b.kind) return true;
  return a.kind === 'number' && Math.abs(a.value - b.value) > accuracyOf(a) + accuracyOf(b);
}

/** Nearer than a twentieth, or than half of what an eye takes for the same: volts within 0.75 V, ohms within 1 Ω. */
export function asGoodAs(a: Reading, b: Reading): boolean {
  if (a.kind !== b.kind) return false;
  const most = Math.max(Math.abs(a.value), Math.abs(b.value)) / 20;
  return Math.abs(a.value - b.value) <= Math.max(most, accuracyOf(a), accuracyOf(b), a.fn === 'ohms' ? 1 : 0.75) + 1e-9;
}

export interface Told {
  readonly leads: Leads;
  readonly reading: Reading;
}

/** The readings that an item tells. */
export function toldIn(given: Item['given']): Told[] {
  return given.flatMap(({ key, values: { leads, shown } }) =>
    key === 'shown' && shown?.is === 'reading' ? [{ leads: leadsIn(leads), reading: shown.reading }] : [],
  );
}

/** What these faults show at each reading told, as the scene's own steps come to it. */
export function seriesIn(scene: Scene, faults: readonly Fault[], told: readonly Told[]): Reading[] {
  const attempt = beginAt(scene, faults, []);
  const shown: Reading[] = [];
  let next = 0;
  for (const action of scene.actions) {
    const outcome = perform(attempt, action);
    if (!outcome.ok) throw new Error(`${JSON.stringify(action)} refused: ${outcome.refusal.code}`);
    const { red, black, fn } = attempt.bench;
    const leads = told[next]?.leads;
    const reading = attempt.steps.at(-1)?.observation.reading;
    if (!leads || !reading || leads.red !== red || leads.black !== black || leads.fn !== fn) continue;
    shown.push(reading);
    next += 1;
  }
  if (shown.length < told.length) throw new Error('a reading told that the steps do not take');
  return shown;
}
