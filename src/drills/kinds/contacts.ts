import { baseOf } from '../../attempt/access.ts';
import type { AssembledPart } from '../../rig/assemble.ts';
import type { Fault } from '../../rig/faults.ts';
import { pick, shuffled } from '../../scenario/random.ts';
import type { DrillKind, Misconception, Sentence, Wrong } from '../item.ts';
import { faultSaid, faultsOf } from '../places.ts';
import type { Said } from '../said.ts';
import type { Setting } from '../setting.ts';
import {
  type Bearing,
  bearingOf,
  bearingsOf,
  joinedTo,
  roomAt,
  type Settings,
  standAt,
  standsWaiting,
  stepsOf,
} from './contacts/bearing.ts';

/** How often a fault is asked for that changes nothing in this mode. */
const UNCONCERNED_SHARE = 0.2;
/** How often no contact at all is the answer, where it is: an answer that is soon guessed. */
const NONE_SHARE = 0.4;
/** How often something is wrong with it. */
const FAULTY_SHARE = 0.55;
/** °F between the room and what is asked for, and the least that they must be apart in the end. */
const DEGREES = [-8, -6, -4, 4, 5, 6, 7, 8, 9] as const;
const LEAST_DEGREES = 2;
/** Seconds after the last key: at once, and after the time that second stages take to join. */
const SECONDS = { soon: 10, later: 120 } as const;
const LATER_SHARE = 0.4;

interface Asked {
  readonly bearing: Bearing;
  readonly source: string;
  readonly faults: readonly Fault[];
  readonly call: string;
  /** Controls that stand otherwise than the call alone would have them. */
  readonly other: Settings;
  /** °F by which the room misses what is asked for; below 0 where it is more than warm or cool enough. */
  readonly degrees: number;
}

/** Which contacts are closed? */
export const contacts: DrillKind = {
  id: 'contacts',
  skill: 'contacts',
  choices: 4,
  draft: (setting, random, own) => {
    const faulty = random() < FAULTY_SHARE;
    const asked = pick(random, own(everythingIn(setting).filter(({ faults }) => faults.length > 0 === faulty)));
    if (!asked) return undefined;
    const { bearing, source, faults, call, degrees } = asked;
    const seconds = bearing.where === 'wall' && random() < LATER_SHARE ? SECONDS.later : SECONDS.soon;
    const actsOf = (id: string): Settings => actsFor(setting, bearing.part, id, degrees);
    const acts = merged(actsOf(call), asked.other);
    const momentOf = (wrong: readonly Fault[], set: Settings, at = bearing) => ({
      at,
      faults: wrong,
      acts: stepsOf(bearing.part.id, set),
      seconds,
    });
    const made = (wrong: readonly Fault[], set: Settings, at = bearing, from = source) =>
      joinedTo(setting, momentOf(wrong, set, at), from);
    const now = momentOf(faults, acts);
    const right = joinedTo(setting, now, source);
    const room = roomAt(setting, now);
    const near = acts.some(({ value }) => typeof value === 'number' && Math.abs(value - room) < LEAST_DEGREES);
    if (!right || near || !settable(bearing.part, acts) || standsWaiting(setting, now)) return undefined;
    if (right.length === 0 && random() > NONE_SHARE) return undefined;
    const unpowered = bearing.where === 'mat' && !bearing.ownPower;
    const powered = !unpowered ? bearing : bearingOf(setting, bearing.part, 'wall', false);
    const sound = faults.length > 0 ? made([], acts) : undefined;
    if (sound && same(sound, right) && random() > UNCONCERNED_SHARE) return undefined;

    // On the wall its pins show no letters: its base's screws do.
    const base = bearing.where === 'wall' ? baseOf(setting.assembly, bearing.part) : undefined;
    const printed = base ?? bearing.part.id;
    const wrong: Wrong[] = [];
    const add = (set: readonly string[] | undefined, misconception: Misconception): void => {
      if (set && !same(set, right)) wrong.push({ said: pointsSaid(printed, set), misconception });
    };
    if (sound) add(sound, sound.length > right.length ? 'openTakenForClosed' : 'closedTakenForOpen');
    const believed = unpowered ? made(faults, acts, powered) : right;
    if (unpowered && !believed?.length) return undefined;
    add(believed, 'openTakenForClosed');
    const fan = made([], actsOf('fan'), powered) ?? [];
    if (fan.some((id) => right.includes(id)) && right.length > fan.length) add(without(right, fan), 'fanForgotten');
    else if (right.length > 0) add([...new Set([...right, ...fan])], 'fanAdded');
    for (const other of bearing.sources) if (other !== source) add(made(faults, acts, bearing, other), 'nextDoor');
    const others = (bearing.part.kind.calls ?? []).filter(({ id }) => id !== call);
    const elsewhere = shuffled(random, others).map(({ id }) => made(faults, merged(actsOf(id), asked.other)));
    for (const set of elsewhere) add(set, 'otherCall');
    // Who takes another call may forget the fan there, too, or think it on; or forget what is wrong.
    for (const set of elsewhere)
      if (set?.length) add(fan.some((id) => set.includes(id)) ? without(set, fan) : [...set, ...fan], 'otherCall');
    if (faults.length > 0) for (const { id } of others) add(made([], merged(actsOf(id), asked.other)), 'otherCall');
    for (const id of shuffled(random, right)) add(without(right, [id]), 'closedTakenForOpen');
    const open = bearing.contacts.filter((id) => !right.includes(id));
    for (const id of shuffled(random, open)) add([...right, id], 'openTakenForClosed');

    const why: Sentence[] = [];
    if (unpowered) why.push({ key: 'noPower', values: {} });
    why.push({ key: right.length > 0 ? 'made' : 'none', values: { made: pointsSaid(printed, right) } });
    if (sound && !same(sound, right)) why.push({ key: 'soundWould', values: { made: pointsSaid(printed, sound) } });
    const given: Sentence[] = [
      { key: 'before', values: { acts: { is: 'acts', acts: now.acts } } },
      { key: 'room', values: { room: roomSaid(bearing.part, room) } },
      { key: bearing.where, values: { seconds: { is: 'number', value: seconds } } },
      { key: 'fault', values: { fault: faultSaid(setting, faults) } },
    ];
    return {
      scene: setting.scene(faults, standAt(setting, now).steps),
      ask: {
        key: bearing.where,
        values: {
          source: { is: 'point', point: `${printed}.${source}` },
        },
      },
      given,
      marked: [`${printed}.${source}`],
      right: pointsSaid(printed, right),
      wrong,
      why,
    };
  },
};

const same = (a: readonly string[], b: readonly string[]): boolean => a.length === b.length && a.every((id) => b.includes(id));
const without = (all: readonly string[], out: readonly string[]): string[] => all.filter((id) => !out.includes(id));
const pointsSaid = (id: string, terminals: readonly string[]): Said => ({
  is: 'points',
  points: terminals.map((terminal) => `${id}.${terminal}`),
});

const roomSaid = ({ id }: AssembledPart, fahrenheit: number): Said => ({
  is: 'notice',
  notice: { part: id, key: 'room', value: fahrenheit, sense: 'see', minor: true },
});

const known = new WeakMap<Setting, readonly Asked[]>();

/** Every question of this kind in a house, the degrees aside: as many about sound thermostats as about faulty ones. */
function everythingIn(setting: Setting): readonly Asked[] {
  const found = known.get(setting);
  if (found) return found;
  const all = bearingsOf(setting).flatMap((bearing) => {
    const { part } = bearing;
    const calls = part.kind.calls ?? [];
    const slides = [...new Set(calls.flatMap(({ acts }) => acts.slice(1)).map(({ control }) => control))].filter((control) =>
      part.kind.controls?.some(({ id, positions }) => id === control && positions !== undefined),
    );
    const others: Settings[] = [
      [],
      ...slides.flatMap((control) =>
        (part.kind.controls?.find(({ id }) => id === control)?.positions ?? []).map((value) => [{ control, value }]),
      ),
    ];
    const wrong = bearing.ownPower || bearing.where !== 'mat' ? ownFaults(setting, part) : [];
    const seen = new Set<string>();
    return [[], ...wrong].flatMap((faults) =>
      bearing.sources.flatMap((source) =>
        calls.flatMap(({ id: call, acts }) =>
          others.flatMap((other) => {
            const numbers = acts.some(({ value }) => typeof value === 'number');
            const key = JSON.stringify([faults, source, merged(acts, other)]);
            const twice = seen.has(key) || (call === 'off' && faults.length === 0);
            seen.add(key);
            return twice
              ? []
              : (numbers ? DEGREES : [0]).map((degrees): Asked => ({ bearing, source, faults, call, other, degrees }));
          }),
        ),
      ),
    );
  });
  known.set(setting, all);
  return all;
}

/** Faults of the thermostat itself whose name says all of them, and which no key puts right. */
function ownFaults(setting: Setting, part: AssembledPart): (readonly Fault[])[] {
  const start = JSON.stringify(part.kind.initial(part.params, undefined));
  return faultsOf(setting).flatMap(({ naming, members }) => {
    const [fault] = members[0] ?? [];
    if (naming.target !== part.id || members.length !== 1 || !fault) return [];
    return JSON.stringify(part.kind.initial(part.params, fault)) === start ? [[fault]] : [];
  });
}

/** A call's controls, with the temperature that is asked for so far from the room's: beyond it, or short of it where `degrees` is below 0. */
function actsFor(setting: Setting, part: AssembledPart, call: string, degrees: number): Settings {
  const acts = part.kind.calls?.find(({ id }) => id === call)?.acts ?? [];
  const room = Math.round(setting.bench([]).world.sites[part.index]?.roomFahrenheit ?? 0);
  return acts.map(({ control, value }) => {
    const range = part.kind.controls?.find(({ id }) => id === control)?.range;
    if (typeof value === 'string' || !range) return { control, value };
    const up = value > (range.from + range.to) / 2;
    return { control, value: room + (up ? degrees : -degrees) };
  });
}

/** Whether its keys go so far. */
const settable = ({ kind }: AssembledPart, acts: Settings): boolean =>
  acts.every(({ control, value }) => {
    const range = kind.controls?.find(({ id }) => id === control)?.range;
    return typeof value === 'string' || !range || (value >= range.from && value <= range.to);
  });

function merged(acts: Settings, other: Settings): Settings {
  return acts.map((each) => other.find(({ control }) => control === each.control) ?? each);
}
