import { baseOf } from '../../attempt/access.ts';
import type { Action } from '../../attempt/actions.ts';
import type { Bench } from '../../attempt/bench.ts';
import type { Fault } from '../../rig/faults.ts';
import { type Ladder, laddersOf, type Rung, type Step, type Way } from '../../rig/ladder.ts';
import { pick, shuffled } from '../../scenario/random.ts';
import { callersOf } from '../../suspects/route.ts';
import { voltsBetween } from '../../world/world.ts';
import type { DrillKind, Misconception, Sentence, Wrong } from '../item.ts';
import { benchAfter, faultSaid, faultsOf, standingSaid } from '../places.ts';
import type { Said } from '../said.ts';
import { type Setting, takeAll } from '../setting.ts';
import { stepsOf } from './contacts/bearing.ts';

/** Long enough for what a call starts to have started, seconds. */
const CALL_SECONDS = 120;
/** A load with more than this share of its supply is live, with less than the other dead. */
const LIVE_SHARE = 0.7;
const DEAD_SHARE = 0.2;
/** Openings that leave nothing live, of one call: an answer that is soon guessed. */
const MOST_WHOLE = 2;
/** More loads in one choice are a list that nobody reads, unless there is no other. */
const MOST_NAMED = 4;
/** Openings that one number tries: each is a world of its own. */
const TRIED = 4;
/** Ways to fail that are an open. */
const OPENS = /open|blown/i;

const endsOf = ({ enter, leave }: Step): string => [enter, leave].sort().join();

const hasLoad = (rungs: readonly Rung[], load: Step): boolean => rungs.some((rung) => endsOf(rung.load) === endsOf(load));

interface Asked {
  readonly ladder: Ladder;
  readonly steps: readonly Action[];
  readonly open: readonly Fault[];
  /** Loads that are live in a sound system then. */
  readonly live: readonly string[];
  /** A point by where its letter is printed: of a body on its base, on the base. */
  readonly printed: (point: string) => string;
}

/** What goes dead when this opens? */
export const ladder: DrillKind = {
  id: 'ladder',
  skill: 'diagrams',
  choices: 4,
  draft: (setting, random, own) => {
    const asked = pick(random, own(everythingIn(setting)).slice(0, TRIED));
    const [open] = asked?.open ?? [];
    if (!asked || !open) return undefined;
    const { live } = asked;
    const left = liveOn(setting, asked.ladder, asked.open, asked.steps);
    if (!left) return undefined;
    const right = live.filter((part) => !left.includes(part));
    // What a control does of itself because something opened stands on no diagram.
    const read = deadBy(asked, open.target);
    if (right.length === 0 || right.length > MOST_NAMED || !same(right, read) || left.some((part) => !live.includes(part)))
      return undefined;

    const wrong: Wrong[] = [];
    const add = (parts: readonly string[], misconception: Misconception): void => {
      if (!same(parts, right) && parts.length <= Math.max(MOST_NAMED, right.length))
        wrong.push({ said: loadsSaid(asked, parts), misconception });
    };
    const beside = live.filter((part) => !right.includes(part));
    if (beside.length > 0) add(beside, 'besideIt');
    add(live, 'besideIt');
    // Whatever shares a part of the way with it, before or after.
    const others = loadsOf(asked.ladder);
    for (const { target } of shuffled(
      random,
      faultsOf(setting).map(({ naming }) => naming),
    )) {
      const dead = deadBy(asked, target);
      if (dead.length > 0) add(dead, 'upstreamTaken');
    }
    for (const part of shuffled(random, others)) if (!live.includes(part)) add([...right, part], 'otherCall');
    for (const part of right)
      if (right.length > 1)
        add(
          right.filter((each) => each !== part),
          'upstreamTaken',
        );
    add([], 'openTakenForClosed');
    const given: Sentence[] = [
      { key: 'diagram', values: { supply: { is: 'part', part: asked.ladder.supply } } },
      { key: 'standing', values: { standing: standingSaid(setting, asked.steps) } },
    ];
    return {
      scene: setting.scene([], asked.steps),
      ask: {
        key: 'opens',
        values: { supply: { is: 'part', part: asked.ladder.supply }, fault: faultSaid(setting, asked.open) },
      },
      given,
      // A supply has several diagrams, some between the same points: its loads say which of them is asked about.
      marked: asked.ladder.rungs.map(({ load }) => load.enter),
      right: loadsSaid(asked, right),
      wrong,
      why: [
        { key: 'live', values: { loads: loadsSaid(asked, live) } },
        { key: 'through', values: { loads: loadsSaid(asked, right) } },
        ...(beside.length > 0 ? [{ key: 'beside', values: { loads: loadsSaid(asked, beside) } }] : []),
      ],
    };
  },
};

/** A load by its part's name, or by the terminal that feeds it where one part has several on this diagram. */
const isByPoint = ({ rungs }: Ladder): boolean => new Set(rungs.map(({ load }) => load.part)).size < rungs.length;
const nameOf = (on: Ladder, { load }: Rung): string => (isByPoint(on) ? load.enter : load.part);
const loadsOf = (on: Ladder): string[] => [...new Set(on.rungs.map((rung) => nameOf(on, rung)))];
const loadsSaid = ({ ladder: on, printed }: Asked, loads: readonly string[]): Said =>
  isByPoint(on) ? { is: 'points', points: loads.map(printed) } : { is: 'parts', parts: loads };

function printedAt({ assembly }: Setting, point: string): string {
  const [id = '', terminal = ''] = point.split('.');
  const part = assembly.partById.get(id);
  const base = part && baseOf(assembly, part);
  return base === undefined ? point : `${base}.${terminal}`;
}

/** What the diagram says goes dead of what is live. */
const deadBy = ({ ladder: on, live }: Pick<Asked, 'ladder' | 'live'>, target: string): string[] =>
  live.filter((load) => cutOff(on, load, target));
const same = (a: readonly string[], b: readonly string[]): boolean => a.length === b.length && a.every((part) => b.includes(part));

const known = new WeakMap<Setting, readonly Asked[]>();

/** Every call, every ladder with more than one load, and everything on it that can open. */
function everythingIn(setting: Setting): readonly Asked[] {
  const found = known.get(setting);
  if (found) return found;
  const opens = faultsOf(setting).filter(({ naming, members }) => members.length === 1 && OPENS.test(naming.mode));
  const drawn = laddersOf(setting.assembly);
  const ladders = drawn
    // What stands on two supplies' ladders is live from whichever feeds it: no question of one of them.
    .filter(
      ({ rungs }) => rungs.length > 1 && rungs.every(({ load }) => drawn.filter((each) => hasLoad(each.rungs, load)).length === 1),
    )
    .map((each) => ({ ...each, rungs: each.rungs.map((rung) => ({ ...rung, load: byTerminal(setting, rung.load) })) }));
  const calls = callersOf(setting.bench([])).flatMap((caller) =>
    (caller.kind.calls ?? []).map(({ id, acts }) => ({ caller, id, acts })),
  );
  const all = calls
    .filter(({ id }) => id !== 'off')
    .flatMap(({ caller, acts }) => {
      const bench = setting.bench([]);
      const { place } = caller.data;
      const there: Action[] = [
        ...(place === setting.rig.start ? [] : [{ name: 'walk', to: place } as const]),
        ...stepsOf(caller.id, acts),
        { name: 'wait', seconds: CALL_SECONDS },
      ];
      const steps = there.filter((step) => takeAll(bench, [step]));
      return ladders.flatMap((each) => {
        const live = liveOn(setting, each, [], steps);
        if (!live || live.length < 2) return [];
        const whole = (target: string) => deadBy({ ladder: each, live }, target).length === live.length;
        const some = opens.filter(
          ({ naming }) => isOne(each, naming.target) && deadBy({ ladder: each, live }, naming.target).length > 0,
        );
        const few = some.filter(({ naming }) => whole(naming.target)).slice(0, MOST_WHOLE);
        return [...some.filter(({ naming }) => !whole(naming.target)), ...few].flatMap(({ members: [open] }): Asked[] =>
          open ? [{ ladder: each, steps, open, live, printed: (point) => printedAt(setting, point) }] : [],
        );
      });
    });
  known.set(setting, all);
  return all;
}

/** Whether a wire, or a part that stands in one place of a diagram alone: of one with several contacts the name does not say which opens. */
function isOne({ feed, tail, rungs }: Ladder, target: string): boolean {
  const ways = [feed, tail, ...rungs.flatMap((rung) => [...rung.ways, rung.back])];
  const places = ways.flatMap(({ steps }) => steps.filter(({ part }) => part === target));
  return new Set(places.map(({ enter, leave }) => `${enter} ${leave}`)).size < 2;
}

const isPrinted = ({ assembly }: Setting, point: string): boolean =>
  assembly.parts.some(({ id, kind }) => kind.terminals.some((terminal) => `${id}.${terminal.id}` === point));

/** A load from the end that has a terminal: a winding's other end may lie inside. */
const byTerminal = (setting: Setting, load: Step): Step =>
  isPrinted(setting, load.enter) ? load : { ...load, enter: load.leave, leave: load.enter };

const isOn = ({ steps, wires }: Way, target: string): boolean =>
  wires.some(({ id }) => id === target) || steps.some((step) => step.part === target || step.wires.some(({ id }) => id === target));

/** Whether the diagram leaves a load no way round something that opens. */
function cutOff(on: Ladder, load: string, target: string): boolean {
  return on.rungs
    .filter((rung) => nameOf(on, rung) === load)
    .every(({ ways, back }) => [on.feed, on.tail, back].some((way) => isOn(way, target)) || ways.every((way) => isOn(way, target)));
}

/** The parts whose loads on a ladder are live after these steps; undefined where one is neither live nor dead, or half of it is. */
function liveOn(setting: Setting, on: Ladder, faults: readonly Fault[], steps: readonly Action[]) {
  const full = volts(setting, on.hot, on.common);
  const bench = benchAfter(setting, faults, steps);
  if (!bench) return undefined;
  const live = new Map<string, boolean>();
  for (const rung of on.rungs) {
    const { load } = rung;
    const name = nameOf(on, rung);
    const share = between(bench, load.enter, load.leave) / full;
    const is = share > LIVE_SHARE;
    if ((!is && share > DEAD_SHARE) || (live.get(name) ?? is) !== is) return undefined;
    live.set(name, is);
  }
  return [...live].flatMap(([part, is]) => (is ? [part] : []));
}

/** What a supply has with nothing called, volts. */
const volts = (setting: Setting, hot: string, common: string): number => between(setting.bench([]), hot, common) || 1;

function between({ world }: Bench, a: string, b: string): number {
  return voltsBetween(world, world.wiring.nodeOf.get(a) ?? 0, world.wiring.nodeOf.get(b) ?? 0);
}
