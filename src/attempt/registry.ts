import { METER_FUNCTIONS } from '../meter/functions.ts';
import { STIRRED_SECONDS } from '../rig/faults.ts';
import { MAT_PLACE, WIRE_ENDS } from '../rig/points.ts';
import { BODY } from '../world/state.ts';
import { rewire, settle, stateOf } from '../world/world.ts';
import { bodyOf, canLift, controlReachable, isAtHand, isHere, isReachable, isVisible, reachablePoints, wireEnd } from './access.ts';
import type { Action, ActionName, ActionOf } from './actions.ts';
import type { Bench } from './bench.ts';
import { COST_SECONDS } from './costs.ts';
import { repair } from './repair.ts';

/** Why an action cannot be done: a key for the screen's words, and what fills them in. */
export interface Refusal {
  readonly code: string;
  readonly values: Readonly<Record<string, string | number>>;
}

/** One thing that a trainee can do. The canvas, the list, the keyboard, the CLI and the help page all read these. */
export interface ActionKind<A extends Action> {
  /** Seconds on the job. */
  seconds(bench: Bench, action: A): number;
  /** Undefined when it can be done. */
  refusal(bench: Bench, action: A): Refusal | undefined;
  /** Changes the bench; the network settles afterwards when `electrical`. */
  apply(bench: Bench, action: A): void;
  readonly electrical: boolean;
  /** Each discrete way to do it now, whether or not refused. */
  options(bench: Bench): readonly A[];
}

const no = (code: string, values: Record<string, string | number> = {}): Refusal => ({ code, values });

function partOf(bench: Bench, id: string) {
  return bench.world.assembly.partById.get(id);
}

function wireOf(bench: Bench, id: string) {
  return bench.world.assembly.wireById.get(id);
}

function removableHere(bench: Bench, id: string, from: readonly string[]): Refusal | undefined {
  const part = partOf(bench, id);
  if (!part?.kind.removable) return no('notRemovable');
  if (!isHere(bench, part)) return no('notHere', { part: id });
  return from.includes(bodyOf(bench, part) ?? '') ? undefined : no('bodyElsewhere', { part: id });
}

function moveBody(bench: Bench, id: string, to: number): void {
  const part = partOf(bench, id);
  if (part) bench.world.state.bodies[part.index] = to;
}

function bodies(bench: Bench): string[] {
  return bench.world.assembly.parts.filter((part) => part.kind.removable).map((part) => part.id);
}

function liftable(bench: Bench, action: ActionOf<'lift'> | ActionOf<'land'>, lifted: boolean): Refusal | undefined {
  const wire = wireOf(bench, action.wire);
  if (!wire) return no('noSuchWire');
  if (!canLift(wire)) return no('fixedWire', { wire: wire.id });
  const now = wireEnd(bench, wire, action.end);
  if (!isVisible(bench, now.part)) return no('endNotHere', { wire: wire.id });
  return now.lifted === lifted ? undefined : no(lifted ? 'notLifted' : 'alreadyLifted', { wire: wire.id });
}

function setLifted(bench: Bench, action: ActionOf<'lift'> | ActionOf<'land'>, lifted: 0 | 1): void {
  const wire = wireOf(bench, action.wire);
  if (wire) bench.world.state.lifted[2 * wire.index + (action.end === 'to' ? 1 : 0)] = lifted;
}

function wireEnds(bench: Bench): { wire: string; end: 'from' | 'to' }[] {
  return bench.world.assembly.wires.filter(canLift).flatMap((wire) => WIRE_ENDS.map((end) => ({ wire: wire.id, end })));
}

function wireHere(bench: Bench, id: string): boolean {
  const wire = wireOf(bench, id);
  return wire !== undefined && WIRE_ENDS.some((end) => isVisible(bench, wireEnd(bench, wire, end).part));
}

function plugged(bench: Bench, id: string, out: number): Refusal | undefined {
  const part = partOf(bench, id);
  if (!part?.kind.pluggable) return no('notPluggable');
  if (!isVisible(bench, part)) return no('notHere', { part: id });
  return stateOf(bench.world, part).out === out ? undefined : no(out === 1 ? 'notOut' : 'alreadyOut', { part: id });
}

function setOut(bench: Bench, id: string, out: number): void {
  const part = partOf(bench, id);
  if (part) stateOf(bench.world, part).out = out;
}

function pluggables(bench: Bench): string[] {
  return bench.world.assembly.parts.filter((part) => part.kind.pluggable).map((part) => part.id);
}

function coverOf(bench: Bench, id: string) {
  return bench.world.assembly.rig.covers.find((cover) => cover.id === id);
}

function controlOf(bench: Bench, action: ActionOf<'operate'> | ActionOf<'set'>) {
  const part = partOf(bench, action.part);
  const control = part?.kind.controls?.find((candidate) => candidate.id === action.control);
  return part && control ? { part, control } : undefined;
}

function operate(bench: Bench, part: string, control: string, value: string | number): void {
  const found = partOf(bench, part);
  const site = found && bench.world.sites[found.index];
  if (found && site) found.kind.operate?.(site, stateOf(bench.world, found), control, value);
}

/** A microamps meter with both leads on is part of the network. */
export function takeUpMeter(bench: Bench): void {
  const { red, black, fn, world } = bench;
  const inSeries = fn === 'microampsDc' && red !== undefined && black !== undefined && red !== black && !bench.meterFuseOpen;
  const was = world.state.series;
  if (!inSeries && was === undefined) return;
  if (inSeries && was?.red === red && was?.black === black) return;
  world.state.series = inSeries ? { red, black } : undefined;
  rewire(world);
  settle(world);
}

export const REGISTRY: { readonly [N in ActionName]: ActionKind<ActionOf<N>> } = {
  walk: {
    seconds(bench, { to }) {
      const { places } = bench.world.assembly.rig;
      const seconds = (id: string) => places.find((place) => place.id === id)?.walkSeconds ?? 0;
      return seconds(to) + (bench.place === 'outdoor' ? seconds('outdoor') / 2 : 0);
    },
    refusal(bench, { to }) {
      if (!bench.world.assembly.rig.places.some((place) => place.id === to)) return no('noSuchPlace');
      return to === bench.place ? no('alreadyThere') : undefined;
    },
    apply(bench, { to }) {
      bench.place = to;
    },
    electrical: false,
    options: (bench) => bench.world.assembly.rig.places.map(({ id }) => ({ name: 'walk', to: id })),
  },
  cover: {
    seconds: (bench, { cover }) => coverOf(bench, cover)?.seconds ?? 0,
    refusal(bench, { cover: id, open }) {
      const cover = coverOf(bench, id);
      if (!cover) return no('noSuchCover');
      if (cover.place !== bench.place) return no('coverNotHere', { cover: id });
      const isOpen = bench.world.state.covers[bench.world.assembly.coverIndex.get(id) ?? -1] === 1;
      return isOpen === open ? no(open ? 'alreadyOpen' : 'alreadyClosed', { cover: id }) : undefined;
    },
    apply(bench, { cover: id, open }) {
      bench.world.state.covers[bench.world.assembly.coverIndex.get(id) ?? -1] = open ? 1 : 0;
      const panel = coverOf(bench, id)?.panel;
      if (panel !== undefined) operate(bench, panel, 'cover', open ? 'open' : 'closed');
    },
    electrical: true,
    options: (bench) =>
      bench.world.assembly.rig.covers.flatMap(({ id }) =>
        [true, false].map((open) => ({ name: 'cover' as const, cover: id, open })),
      ),
  },
  operate: {
    seconds: () => COST_SECONDS.operate,
    refusal(bench, action) {
      const found = controlOf(bench, action);
      if (!found?.control.positions) return no('noSuchControl');
      if (!found.control.positions.includes(action.position)) return no('noSuchPosition');
      if (!controlReachable(bench, found.part, found.control)) return no('notHere', { part: action.part });
      const now = found.part.kind.reads?.(stateOf(bench.world, found.part), action.control);
      return now === action.position ? no('alreadySo') : undefined;
    },
    apply: (bench, { part, control, position }) => operate(bench, part, control, position),
    electrical: true,
    options: (bench) =>
      bench.world.assembly.parts.flatMap((part) =>
        (part.kind.controls ?? []).flatMap((control) =>
          (control.positions ?? []).map((position) => ({ name: 'operate' as const, part: part.id, control: control.id, position })),
        ),
      ),
  },
  set: {
    seconds: () => COST_SECONDS.set,
    refusal(bench, action) {
      const found = controlOf(bench, action);
      const range = found?.control.range;
      if (!found || !range) return no('noSuchControl');
      if (action.value < range.from || action.value > range.to) return no('outOfRange', { from: range.from, to: range.to });
      if (!Number.isInteger((action.value - range.from) / range.step)) return no('betweenSteps', { step: range.step });
      if (!controlReachable(bench, found.part, found.control)) return no('notHere', { part: action.part });
      const now = found.part.kind.reads?.(stateOf(bench.world, found.part), action.control);
      return now === action.value ? no('alreadySo') : undefined;
    },
    apply: (bench, { part, control, value }) => operate(bench, part, control, value),
    electrical: true,
    options: () => [],
  },
  pull: {
    seconds: () => COST_SECONDS.pull,
    refusal: (bench, { part }) => removableHere(bench, part, ['seated']),
    apply: (bench, { part }) => moveBody(bench, part, BODY.pulled),
    electrical: true,
    options: (bench) => bodies(bench).map((part) => ({ name: 'pull', part })),
  },
  turn: {
    seconds: () => COST_SECONDS.turn,
    refusal: (bench, { part }) => removableHere(bench, part, ['pulled', 'turned']),
    apply(bench, { part: id }) {
      const part = partOf(bench, id);
      moveBody(bench, id, part && bodyOf(bench, part) === 'turned' ? BODY.pulled : BODY.turned);
    },
    electrical: false,
    options: (bench) => bodies(bench).map((part) => ({ name: 'turn', part })),
  },
  mat: {
    seconds: () => COST_SECONDS.mat,
    refusal(bench, { part }) {
      if (!bench.world.assembly.rig.places.some((place) => place.id === MAT_PLACE)) return no('noMat');
      return removableHere(bench, part, ['pulled', 'turned']);
    },
    apply(bench, { part }) {
      moveBody(bench, part, BODY.mat);
      bench.place = MAT_PLACE;
    },
    electrical: false,
    options: (bench) => bodies(bench).map((part) => ({ name: 'mat', part })),
  },
  seat: {
    seconds(bench, { part: id }) {
      const part = partOf(bench, id);
      const away = part && bodyOf(bench, part) === 'mat';
      return COST_SECONDS.seat + (away ? COST_SECONDS.mat : 0);
    },
    refusal: (bench, { part }) => removableHere(bench, part, ['pulled', 'turned', 'mat']),
    apply(bench, { part: id }) {
      moveBody(bench, id, BODY.seated);
      bench.place = partOf(bench, id)?.data.place ?? bench.place;
    },
    electrical: true,
    options: (bench) => bodies(bench).map((part) => ({ name: 'seat', part })),
  },
  meter: {
    seconds: () => COST_SECONDS.meter,
    refusal: (bench, { fn }) => (bench.fn === fn ? no('alreadySo') : undefined),
    apply(bench, { fn }) {
      bench.fn = fn;
      if (fn !== 'ampsAc') bench.clamp = undefined;
    },
    electrical: false,
    options: () => METER_FUNCTIONS.map((fn) => ({ name: 'meter', fn })),
  },
  probe: {
    seconds: () => COST_SECONDS.probe,
    refusal(bench, { lead, at }) {
      if (at === null) return bench[lead] === undefined ? no('leadFree') : undefined;
      if (bench[lead] === at) return no('alreadySo');
      return isReachable(bench, at) ? undefined : no('pointNotHere');
    },
    apply(bench, { lead, at }) {
      bench[lead] = at ?? undefined;
    },
    electrical: false,
    options: (bench) =>
      (['red', 'black'] as const).flatMap((lead) =>
        [null, ...reachablePoints(bench)].map((at) => ({ name: 'probe' as const, lead, at })),
      ),
  },
  clamp: {
    seconds: () => COST_SECONDS.clamp,
    refusal(bench, { around, turns }) {
      if (bench.fn !== 'ampsAc') return no('noClamp');
      if (around === null) return bench.clamp === undefined ? no('leadFree') : undefined;
      if (bench.clamp === around && bench.turns === turns) return no('alreadySo');
      const { rig } = bench.world.assembly;
      const inside = rig.wires.filter((wire) => !wire.pin && (wire.id === around || wire.cable === around));
      return inside.some((wire) => wireHere(bench, wire.id)) ? undefined : no('wireNotHere');
    },
    apply(bench, { around, turns }) {
      bench.clamp = around ?? undefined;
      bench.turns = turns;
    },
    electrical: false,
    options: (bench) =>
      [
        null,
        ...bench.world.assembly.rig.wires.filter((wire) => !wire.pin).map((wire) => wire.id),
        ...bench.world.assembly.rig.cables.map((cable) => cable.id),
      ].map((around) => ({ name: 'clamp', around, turns: 1 })),
  },
  jumper: {
    seconds: () => COST_SECONDS.jumper,
    refusal(bench, { from, to, on }) {
      const there = bench.world.state.jumpers.find((jumper) => jumper.from === from && jumper.to === to);
      const within = on ? isReachable : isAtHand;
      if (!within(bench, from) || !within(bench, to)) return no('pointNotHere');
      if (!on) return there ? undefined : no('noJumper');
      if (from === to) return no('samePoint');
      if (bench.world.state.jumpers.length >= 4) return no('tooManyJumpers');
      const turned = bench.world.state.jumpers.some((jumper) => jumper.from === to && jumper.to === from);
      return there || turned ? no('alreadySo') : undefined;
    },
    apply(bench, { from, to, on }) {
      const others = bench.world.state.jumpers.filter((jumper) => jumper.from !== from || jumper.to !== to);
      bench.world.state.jumpers = on ? [...others, { from, to }] : others;
    },
    electrical: true,
    options(bench) {
      const points = reachablePoints(bench);
      const laid = bench.world.state.jumpers.map(({ from, to }) => ({ name: 'jumper' as const, from, to, on: false }));
      const possible = points.flatMap((from, place) =>
        points.slice(place + 1).map((to) => ({ name: 'jumper' as const, from, to, on: true })),
      );
      return [...laid, ...possible];
    },
  },
  lift: {
    seconds: () => COST_SECONDS.lift,
    refusal: (bench, action) => liftable(bench, action, false),
    apply: (bench, action) => setLifted(bench, action, 1),
    electrical: true,
    options: (bench) => wireEnds(bench).map((end) => ({ name: 'lift', ...end })),
  },
  land: {
    seconds: () => COST_SECONDS.land,
    refusal: (bench, action) => liftable(bench, action, true),
    apply: (bench, action) => setLifted(bench, action, 0),
    electrical: true,
    options: (bench) => wireEnds(bench).map((end) => ({ name: 'land', ...end })),
  },
  tug: {
    seconds: () => COST_SECONDS.tug,
    refusal(bench, { wire: id }) {
      const wire = wireOf(bench, id);
      if (!wire || !canLift(wire)) return no('noSuchWire');
      return wireHere(bench, id) ? undefined : no('wireNotHere');
    },
    apply(bench, { wire: id }) {
      const wire = wireOf(bench, id);
      if (wire) bench.world.state.stirredUntil[wire.index] = bench.world.state.time + STIRRED_SECONDS;
    },
    electrical: true,
    options: (bench) => bench.world.assembly.wires.filter(canLift).map((wire) => ({ name: 'tug', wire: wire.id })),
  },
  unplug: {
    seconds: () => COST_SECONDS.unplug,
    refusal: (bench, { part }) => plugged(bench, part, 0),
    apply: (bench, { part }) => setOut(bench, part, 1),
    electrical: true,
    options: (bench) => pluggables(bench).map((part) => ({ name: 'unplug', part })),
  },
  plug: {
    seconds: () => COST_SECONDS.plug,
    refusal: (bench, { part }) => plugged(bench, part, 1),
    apply: (bench, { part }) => setOut(bench, part, 0),
    electrical: true,
    options: (bench) => pluggables(bench).map((part) => ({ name: 'plug', part })),
  },
  look: {
    seconds: () => COST_SECONDS.look,
    refusal(bench, { part: id }) {
      const part = partOf(bench, id);
      if (!part) return no('noSuchPart');
      return isVisible(bench, part) ? undefined : no('notHere', { part: id });
    },
    apply() {},
    electrical: false,
    options: (bench) => bench.world.assembly.parts.map((part) => ({ name: 'look', part: part.id })),
  },
  wait: {
    seconds: (_bench, { seconds }) => seconds,
    refusal: () => undefined,
    apply() {},
    electrical: false,
    options: () => [15, 60, 300].map((seconds) => ({ name: 'wait', seconds })),
  },
  watch: {
    seconds: (_bench, { seconds }) => seconds,
    refusal: () => undefined,
    apply() {},
    electrical: false,
    options: () => [{ name: 'watch', seconds: 0 }],
  },
  replace: {
    seconds(bench, { target }) {
      const part = partOf(bench, target);
      if (part) return part.kind.replaceMinutes * 60;
      return wireOf(bench, target)?.data.cable === undefined ? COST_SECONDS.repairJoint : COST_SECONDS.replaceWire;
    },
    refusal(bench, { target }) {
      const part = partOf(bench, target);
      if (part)
        return isVisible(bench, part) || (part.data.rides !== undefined && isHere(bench, part))
          ? undefined
          : no('notHere', { part: target });
      const wire = wireOf(bench, target);
      if (!wire) return no('noSuchPart');
      if (wire.data.fixed) return no('fixedWire', { wire: target });
      return wireHere(bench, target) ? undefined : no('wireNotHere');
    },
    apply: (bench, { target }) => repair(bench, target),
    electrical: true,
    options: (bench) =>
      [...bench.world.assembly.parts, ...bench.world.assembly.wires.filter((wire) => !wire.data.fixed)].map(({ id }) => ({
        name: 'replace',
        target: id,
      })),
  },
  hint: {
    seconds: () => 0,
    refusal: () => undefined,
    apply() {},
    electrical: false,
    options: () => [],
  },
  name: {
    seconds: () => 0,
    refusal: () => undefined,
    apply() {},
    electrical: false,
    options: () => [],
  },
  close: {
    seconds: () => 0,
    refusal: () => undefined,
    apply() {},
    electrical: false,
    options: () => [{ name: 'close' }],
  },
};

/** The registered kind of an action, typed so that it can be asked about that very action. */
export function kindOf(action: Action): ActionKind<Action> {
  return REGISTRY[action.name] as unknown as ActionKind<Action>;
}
