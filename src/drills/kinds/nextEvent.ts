import type { Action } from '../../attempt/actions.ts';
import { signsOf } from '../../attempt/notices.ts';
import type { Notice } from '../../attempt/view.ts';
import type { Fault } from '../../rig/faults.ts';
import { pick, shuffled } from '../../scenario/random.ts';
import type { Draft, DrillKind, Misconception, Sentence, Wrong } from '../item.ts';
import { type Perceived, perceivedNow } from '../perceived.ts';
import { benchAfter, faultSaid, faultsOf, standingSaid } from '../places.ts';
import type { Said } from '../said.ts';
import type { Setting } from '../setting.ts';
import { type Happening, type Run, runOf, type Watch, watchesOf } from './nextEvent/runs.ts';

/** How often something is wrong, and how often that changes nothing of what comes next. */
const FAULTY_SHARE = 0.4;
const UNCONCERNED_SHARE = 0.05;
/** The trainee is asked so long before it happens at least, seconds. */
const LEAST_SECONDS = 2;
/** … and so long after the watch began, where nothing has happened yet. */
const FIRST_SECONDS = 5;
/** Faults that one number tries. */
const TRIED = 4;
/** Happenings of one watch that are asked for. */
const MOST = 12;
/** How whatever moves or glows stands when nothing is called for. */
const AT_REST: readonly Notice['value'][] = [0, 'off'];
/** Happenings that the question tells, and that the reason goes on with. */
const TOLD = 3;

interface Asked {
  readonly watch: Watch;
  readonly faults: readonly Fault[];
  /** How many things have happened. */
  readonly past: number;
}

/** What happens next? */
export const nextEvent: DrillKind = {
  id: 'nextEvent',
  skill: 'sequence',
  choices: 4,
  draft: (setting, random, own) => {
    const faulty = random() < FAULTY_SHARE;
    const asked = pick(random, faulty ? own(faultyOnes(setting)).slice(0, TRIED) : own(soundOnes(setting)));
    if (!asked) return undefined;
    const { watch, faults } = asked;
    const run = runOf(setting, watch, faults);
    const past = faulty ? Math.floor(random() * Math.min(MOST, run.happenings.length)) : asked.past;
    const next = run.happenings[past];
    const before = run.happenings[past - 1];
    const seconds = before ? Math.ceil(before.at) + 1 : FIRST_SECONDS;
    const right = next && pick(random, next.notices);
    if (!next || !right || next.at - seconds < LEAST_SECONDS) return undefined;
    const sound = faulty ? soundNext(setting, asked, run, past) : undefined;
    if (faulty && (!sound || isIn(next, sound)) && random() > UNCONCERNED_SHARE) return undefined;

    const wrong: Wrong[] = [];
    const earlier = run.happenings.slice(0, past);
    const later = run.happenings.slice(past + 1);
    const steps = [...run.steps, { name: 'wait', seconds } as const];
    const { now, stands } = standingAfter(setting, faults, steps);
    const add = (from: readonly Happening[], why: Misconception | ((notice: Notice) => Misconception)): void => {
      for (const { notices } of from) {
        const notice = pick(random, notices);
        // An armature that moves and the sound of it are one.
        if (!notice || isIn(next, notice) || [right, ...said].some((each) => isOneWith(each, notice))) continue;
        said.push(notice);
        wrong.push({ said: noticeSaid(notice), misconception: typeof why === 'string' ? why : why(notice) });
      }
    };
    const said: Notice[] = [];
    if (sound) add([{ at: 0, notices: [sound] }], 'soundTaken');
    // What is just behind and just ahead first: one of each, then what is farther, then other calls'.
    add(later.slice(0, 1), 'tooEarly');
    add(earlier.slice(-1), 'tooLate');
    add(later.slice(1, TOLD), 'tooEarly');
    // What happens in several calls belongs to this one, too, and so does what happens in it only as long as nothing is wrong.
    const ours = [...run.happenings, ...sameCall(setting, watch)];
    const isOthers = ({ notices }: Happening) => !ours.some((each) => notices.some((notice) => isIn(each, notice)));
    add(shuffled(random, otherCalls(setting, watch)).filter(isOthers), (notice) => {
      if (stands(notice)) return 'standsAlready';
      // With that every call ends, this one as well.
      return AT_REST.includes(notice.value) ? 'tooEarly' : 'otherCall';
    });
    add(earlier.slice(-TOLD, -1), 'tooLate');
    return draftOf(
      { setting, asked, run, past, seconds, steps, now, right, sound: sound && !isIn(next, sound) ? sound : undefined },
      wrong,
    );
  },
};

const noticeSaid = (notice: Notice): Said => ({ is: 'notice', notice });
const alike = (a: Notice, b: Notice): boolean => a.part === b.part && a.key === b.key && a.value === b.value;
const isOneWith = (a: Notice, b: Notice): boolean => a.part === b.part && a.key !== b.key;
const isIn = ({ notices }: Happening, notice: Notice): boolean => notices.some((each) => alike(each, notice));

const known = new WeakMap<Setting, { readonly sound: readonly Asked[]; readonly faulty: readonly Asked[] }>();

function askedOf(setting: Setting) {
  const found = known.get(setting);
  if (found) return found;
  // What the customer left set may be a call's own keys.
  const ways = new Set<string>();
  const watches = watchesOf(setting).filter((watch) => {
    const way = JSON.stringify([watch.place, runOf(setting, watch, []).steps]);
    return !ways.has(way) && ways.add(way);
  });
  const { assembly } = setting;
  // Of what stands there: elsewhere most faults change nothing here.
  const faultsAt = (place: string) =>
    faultsOf(setting).flatMap(({ naming, members: [first, ...rest] }) =>
      first && rest.length === 0 && assembly.partById.get(naming.target)?.data.place === place ? [first] : [],
    );
  const asked = {
    sound: watches.flatMap((watch) => Array.from({ length: MOST }, (_, past): Asked => ({ watch, faults: [], past }))),
    faulty: watches.flatMap((watch) => faultsAt(watch.place).map((each): Asked => ({ watch, faults: each, past: 0 }))),
  };
  known.set(setting, asked);
  return asked;
}

const soundOnes = (setting: Setting): readonly Asked[] =>
  askedOf(setting).sound.filter(({ watch, past }) => past < runOf(setting, watch, []).happenings.length);

/** Where something happens in a sound system: elsewhere a fault has nothing to change. */
const faultyOnes = (setting: Setting): readonly Asked[] =>
  askedOf(setting).faulty.filter(({ watch }) => runOf(setting, watch, []).happenings.length > 0);

/** What would come next in a sound system, where it has gone alike up to now. */
function soundNext(setting: Setting, { watch }: Asked, { happenings }: Run, past: number): Notice | undefined {
  const sound = runOf(setting, watch, []).happenings;
  const same = happenings.slice(0, past).every(({ notices: [first] }, index) => {
    const there = sound[index];
    return first !== undefined && there !== undefined && isIn(there, first);
  });
  return same ? sound[past]?.notices[0] : undefined;
}

/** What happens in the same place in this call as long as nothing is wrong, whether it is just starting or cycles for an hour. */
function sameCall(setting: Setting, { place, call }: Watch): readonly Happening[] {
  return watchesOf(setting)
    .filter((each) => each.place === place && each.call?.id === call?.id)
    .flatMap((each) => runOf(setting, each, []).happenings);
}

/** What happens in the same place when something else is called for: what the customer left set is a call as well, and may be the same. */
function otherCalls(setting: Setting, { place, call }: Watch): readonly Happening[] {
  return watchesOf(setting)
    .filter((each) => each.place === place && each.call !== undefined && each.call.id !== call?.id)
    .flatMap((each) => runOf(setting, each, []).happenings);
}

interface Drawn {
  readonly setting: Setting;
  readonly asked: Asked;
  readonly run: Run;
  readonly past: number;
  /** Since the watch began. */
  readonly seconds: number;
  /** From the door to the moment in question, and what is perceived then. */
  readonly steps: readonly Action[];
  readonly now: readonly Perceived[];
  readonly right: Notice;
  readonly sound: Notice | undefined;
}

function draftOf({ setting, asked, run, past, seconds, steps, now, right, sound }: Drawn, wrong: readonly Wrong[]): Draft {
  const { watch, faults } = asked;
  const told = run.happenings.slice(Math.max(0, past - TOLD), past);
  const coming = run.happenings.slice(past, past + TOLD);
  const seen = told.flatMap(({ notices: [notice] }): Sentence[] =>
    notice ? [{ key: 'seen', values: { notice: noticeSaid(notice) } }] : [],
  );
  return {
    scene: setting.scene(faults, steps),
    ask: { key: watch.powered ? 'powered' : 'cycling', values: {} },
    given: [
      { key: 'place', values: { place: { is: 'place', place: watch.place } } },
      { key: 'standing', values: { standing: standingSaid(setting, steps) } },
      { key: 'fault', values: { fault: faultSaid(setting, faults) } },
      timed('since', seconds),
      ...(seen.length > 0 ? seen : [{ key: 'nothing', values: {} }]),
      ...nowSaid(now),
    ],
    right: noticeSaid(right),
    wrong,
    why: [
      ...coming.map(({ at, notices: [notice = right] }, index): Sentence => {
        const { key, values } = timed('then', Math.round(at - seconds));
        return { key, values: { ...values, notice: noticeSaid(index === 0 ? right : notice) } };
      }),
      ...(sound ? [{ key: 'soundWould', values: { notice: noticeSaid(sound) } }] : []),
    ],
  };
}

/** More than this is told in minutes, seconds. */
const LONG_SECONDS = 120;

function timed(key: string, seconds: number): Sentence {
  return seconds < LONG_SECONDS
    ? { key, values: { seconds: { is: 'number', value: seconds } } }
    : { key: `${key}Minutes`, values: { minutes: { is: 'number', value: Math.round(seconds / 60) } } };
}

/** What is perceived after these steps, and whether something stands as a notice has it. */
function standingAfter(setting: Setting, faults: readonly Fault[], steps: readonly Action[]) {
  const bench = benchAfter(setting, faults, steps);
  const signs = new Map(bench?.world.assembly.parts.map((part) => [part.id, signsOf(bench, part)]));
  return {
    now: bench ? perceivedNow(bench) : [],
    // The bench is gone by the time that this is asked: it lives another run.
    stands: ({ part, key, value }: Notice) => signs.get(part)?.some((sign) => sign.key === key && sign.value === value),
  };
}

/** What somebody who stands there sees and hears: on a light or a motor hangs what comes next. */
const nowSaid = (now: readonly Perceived[]): Sentence[] =>
  now.flatMap(({ part, signs }) =>
    signs.map(({ key, value, sense }): Sentence => ({ key: 'now', values: { notice: noticeSaid({ part, key, value, sense }) } })),
  );
