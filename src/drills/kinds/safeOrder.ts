import { reachablePoints, TOUCH_VOLTS, wireEnd } from '../../attempt/access.ts';
import type { Action } from '../../attempt/actions.ts';
import type { Bench } from '../../attempt/bench.ts';
import { prober } from '../../attempt/measure.ts';
import { type Point, WIRE_ENDS } from '../../rig/points.ts';
import { pick, shuffled } from '../../scenario/random.ts';
import type { Random } from '../../scenario/variant.ts';
import { DEAD_VOLTS } from '../../score/required.ts';
import type { Draft, DrillKind } from '../item.ts';
import { benchAfter } from '../places.ts';
import { doInOrder, isSafe } from '../safe.ts';
import type { Said } from '../said.ts';
import { type Setting, takeAll } from '../setting.ts';

/** Orders that are tried for three that are wrong. */
const MOST_ORDERS = 14;

/** Which order is safe? */
export const safeOrder: DrillKind = {
  id: 'safeOrder',
  skill: 'safety',
  choices: 4,
  draft: (setting, random, own) => {
    const job = pick(random, own(jobsOf(setting)));
    return job && draftOf(setting, job, random);
  },
};

/** Work on a dead circuit, where it is, and what proves that it is dead. */
interface Job {
  /** From the door to the open cabinet, the meter on volts and black on earth. */
  readonly way: readonly Action[];
  readonly earth: Point;
  /** Live whatever the isolator does. */
  readonly source: Point;
  readonly at: Point;
  readonly off: Action;
  readonly on: Action;
  readonly work: readonly Action[];
  readonly close: readonly Action[];
  /** Whether putting everything back is part of the question. */
  readonly whole: boolean;
  /** How much is done before the question begins. */
  readonly done: Done;
}

/** What may have been done before, and the next step with it: nothing, the meter proved, isolated, tested for absence of voltage. */
const DONE = ['nothing', 'proved', 'isolated', 'tested'] as const;
type Done = (typeof DONE)[number];
/** Fewer steps have no order worth a question. */
const FEWEST_BLOCKS = 4;
/** Of more nobody keeps an overview, in four choices at once. */
const MOST_STEPS = 9;

const known = new WeakMap<Setting, readonly Job[]>();

/** Every job of a house, at each isolator with something behind it. */
function jobsOf(setting: Setting): readonly Job[] {
  const found = known.get(setting);
  if (found) return found;
  const jobs = setting.assembly.parts.flatMap(({ id, kind, data }): Job[] => {
    const { isolator } = kind;
    if (!isolator || kind.lineVoltage !== true) return [];
    const turn = (position: string): Action => ({ name: 'operate', part: id, control: isolator.control, position });
    return jobsBehind(setting, { id, place: data.place, off: turn(isolator.off), on: turn(isolator.on) });
  });
  known.set(setting, jobs);
  return jobs;
}

interface Isolator extends Pick<Job, 'off' | 'on'> {
  readonly id: string;
  readonly place: string;
}

function jobsBehind(setting: Setting, { id, place, off, on }: Isolator): Job[] {
  const { rig } = setting;
  const covers = rig.covers.filter((cover) => cover.place === place).map((cover) => cover.id);
  const cover = (open: boolean) => covers.map((each): Action => ({ name: 'cover', cover: each, open }));
  const there: Action[] = [...(place === rig.start ? [] : [{ name: 'walk', to: place } as const]), ...cover(true)];
  const bench = benchAfter(setting, [], there);
  if (!bench) return [];
  const points = reachablePoints(bench);
  const branchesAt = (point: Point) => partOf(bench, point)?.kind.branches ?? [];
  // Bonded metal: all that it is joined to is earth.
  const earth = points.find((point) => branchesAt(point).length > 0 && branchesAt(point).every((ends) => ends.includes('earth')));
  if (earth === undefined) return [];
  const read = () => {
    const meter = prober(bench);
    return new Map(points.map((point) => [point, meter('voltsAc', point, earth).value]));
  };
  const before = read();
  if (!takeAll(bench, [off])) return [];
  const after = read();
  const wasLive = (point: Point) => (before.get(point) ?? 0) > TOUCH_VOLTS;
  const source = points.find((point) => partOf(bench, point)?.id === id && wasLive(point) && (after.get(point) ?? 0) > TOUCH_VOLTS);
  if (source === undefined) return [];
  const way: Action[] = [...there, { name: 'meter', fn: 'voltsAc' }, { name: 'probe', lead: 'black', at: earth }];
  const jobs = { way, earth, source, off, on, close: cover(false) };
  return points
    .filter((point) => partOf(bench, point)?.id !== id && wasLive(point) && (after.get(point) ?? 0) < DEAD_VOLTS)
    .flatMap((at) =>
      worksAt(bench, at).flatMap(({ work, whole }) => DONE.map((done): Job => ({ ...jobs, at, work, whole, done }))),
    );
}

const partOf = ({ world }: Bench, point: Point) => world.assembly.partById.get(point.split('.')[0] ?? '');

/** What may be done at a terminal that is dead: ohms to earth, a new part, a wire lifted. What is lifted is not put back here. */
function worksAt(bench: Bench, at: Point): Pick<Job, 'work' | 'whole'>[] {
  const part = partOf(bench, at);
  const ohms: Action[] = [
    { name: 'probe', lead: 'red', at },
    { name: 'meter', fn: 'ohms' },
  ];
  const replace: Action[] = part ? [{ name: 'replace', target: part.id }] : [];
  const lifts = bench.world.assembly.wires
    .filter(({ data }) => !data.fixed && !data.pin)
    .flatMap((wire) => WIRE_ENDS.filter((end) => wireEnd(bench, wire, end).terminal === at).map((end) => ({ wire: wire.id, end })));
  return [
    ...[ohms, replace].filter((work) => work.length > 0).flatMap((work) => [true, false].map((whole) => ({ work, whole }))),
    ...lifts.map((lift) => ({ work: [{ name: 'lift', ...lift } as const], whole: false })),
  ];
}

type Block = readonly Action[];

function draftOf(setting: Setting, job: Job, random: Random): Draft | undefined {
  const { source, at, off, on, work, close, whole, done: before } = job;
  const prove: Action = { name: 'probe', lead: 'red', at: source };
  const test: Action = { name: 'probe', lead: 'red', at };
  const all: Block[] = [[prove], [off], [test], [prove], work, ...(whole ? [close, [on]] : [])];
  const begun = DONE.indexOf(before);
  const scene = [...job.way, ...all.slice(0, begun).flat()];
  const right = all.slice(begun);
  if (right.length < FEWEST_BLOCKS || right.flat().length > MOST_STEPS) return undefined;
  const judged = (blocks: readonly Block[]) => {
    const bench = setting.bench([]);
    const done = doInOrder(bench, [...scene, ...blocks.flat()]);
    return done && isSafe(bench.world, done, at, whole ? on : undefined);
  };
  if (judged(right) !== true) return undefined;
  const said = (blocks: readonly Block[]): Said => ({ is: 'actions', actions: blocks.flat() });
  const wrong = shuffled(random, ordersBeside(right))
    .slice(0, MOST_ORDERS)
    .filter((order) => judged(order) === false);
  const live = benchAfter(setting, [], job.way);
  const proved = live && prober(live)('voltsAc', source, job.earth);
  const dead = benchAfter(setting, [], [...job.way, off]);
  const tested = dead && prober(dead)('voltsAc', at, job.earth);
  if (!proved || !tested) return undefined;
  const point = (each: Point): Said => ({ is: 'point', point: each });
  return {
    scene: setting.scene([], scene),
    ask: { key: whole ? 'whole' : 'work', values: { at: point(at) } },
    given: [
      { key: 'first', values: {} },
      { key: 'source', values: { source: point(source), earth: point(job.earth) } },
      { key: before, values: { source: point(source), at: point(at) } },
    ],
    marked: [source, at],
    right: said(right),
    wrong: wrong.map((order) => ({ said: said(order), misconception: 'unsafeOrder' as const })),
    why: [
      { key: 'live', values: { source: point(source), proved: { is: 'reading', reading: proved } } },
      { key: 'dead', values: { at: point(at), tested: { is: 'reading', reading: tested } } },
      { key: whole ? 'back' : 'hands', values: {} },
    ],
  };
}

/** The same blocks with one or two of them at other places, each order once. */
function ordersBeside(blocks: readonly Block[]): Block[][] {
  const key = (order: readonly Block[]) => JSON.stringify(order);
  const once = moved(blocks);
  const found = new Map([...once, ...once.flatMap(moved)].map((order) => [key(order), order]));
  found.delete(key(blocks));
  return [...found.values()];
}

const moved = (blocks: readonly Block[]): Block[][] =>
  blocks.flatMap((block, from) => {
    const others = blocks.filter((_, index) => index !== from);
    return blocks.map((_, to) => [...others.slice(0, to), block, ...others.slice(to)]);
  });
