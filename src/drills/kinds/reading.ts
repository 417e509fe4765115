import { voltsToEarth } from '../../attempt/access.ts';
import type { MeterFunction } from '../../meter/functions.ts';
import { liveReading, openLeads, type Reading, readPort } from '../../meter/read.ts';
import type { Fault } from '../../rig/faults.ts';
import type { Point } from '../../rig/points.ts';
import { pick, shuffled } from '../../scenario/random.ts';
import type { Random } from '../../scenario/variant.ts';
import type { Draft, DrillKind, Misconception, Sentence, Share, Wrong } from '../item.ts';
import { benchAfter, faultSaid, railsOf, readingSteps, sameSupply, standingSaid } from '../places.ts';
import { saidApart } from '../said.ts';
import type { Setting } from '../setting.ts';
import { faultNear, type Here, heresIn, type Look, lookOn, pairsByLot, SHOWS, type Shows, said, shownAt } from './reading/shown.ts';

/** How often each function is asked for, by how often it comes in the list. */
const FUNCTIONS: readonly MeterFunction[] = [
  ...Array.from({ length: 6 }, () => 'voltsAc' as const),
  ...Array.from({ length: 5 }, () => 'ohms' as const),
  'voltsLoaded',
  'voltsLoaded',
  'voltsDc',
];
/** How often something is wrong. */
const FAULTY_SHARE = 0.7;
/** How often a fault is asked for that changes nothing here: most of them. */
const UNCONCERNED_SHARE = 0.2;
/** As long as a hand waits on the bench at once: what passes by itself has passed by then. */
const LATER = { name: 'wait', seconds: 300 } as const;
/** Share of the lots for no volts at all that are cast anew. */
const NOTHING_LEFT_OUT = 0.35;
/** What has more to earth is a leg of a service, volts. */
const LEG_VOLTS = 30;
/** What is shown may be this far from what was reckoned of the volts at the two points: volts, and a share of what is shown. */
const RECKONED = { volts: 1, share: 0.05 };
/** Spots at which one draft looks for what its lot fell on. */
const MOST_SPOTS = 3;

/** What will this meter read? */
export const reading: DrillKind = {
  id: 'reading',
  skill: 'readings',
  choices: 4,
  draft: (setting, random, own) => {
    const fn = pick(random, FUNCTIONS);
    // What is shown is by lot, not how often it is shown: most pairs of points have nothing between them.
    const shows = pick(random, SHOWS[fn === 'ohms' ? 'ohms' : 'volts']);
    if (!fn || !shows || setting.variant.tools?.includes(fn) === false) return undefined;
    // Between most points there is nothing, and who always says so must not be right too often.
    if (shows === 'none' && random() < NOTHING_LEFT_OUT) return undefined;
    const faulty = random() < FAULTY_SHARE;
    const all = !faulty || random() < UNCONCERNED_SHARE;
    const mine = shares.get(own) ?? own(heresIn(setting));
    shares.set(own, mine);
    for (let tries = 0; tries < MOST_SPOTS; tries++) {
      const here = pick(random, mine);
      const faults = here && faulty ? faultNear(setting, here.point, random) : [];
      if (!here || !faults) continue;
      const [red, black] = pick(random, shownAt(setting, here, { faults, fn, shows, all }, random)) ?? [];
      const { way, points } = here.spot;
      if (red !== undefined && black !== undefined) return draftOf({ setting, faults, fn, red, black, shows, way, points }, random);
    }
    return undefined;
  },
};

/** What one number has to itself, for as long as it is drawn. */
const shares = new WeakMap<Share, readonly Here[]>();

interface Asked {
  readonly red: Point;
  readonly black: Point;
  readonly shows: Shows;
  readonly setting: Setting;
  readonly faults: readonly Fault[];
  readonly fn: MeterFunction;
  readonly way: Parameters<typeof benchAfter>[2];
  readonly points: readonly Point[];
}

function draftOf(asked: Asked, random: Random): Draft | undefined {
  const { setting, faults, fn, red, black, way } = asked;
  const steps = [...way, ...readingSteps(fn, red, black)];
  const sound = faults.length > 0 ? benchAfter(setting, [], steps) : undefined;
  const soundly = sound && lookOn(sound).read(fn, red, black);
  const later = benchAfter(setting, faults, [...steps, LATER]);
  const then = later && lookOn(later).read(fn, red, black);
  const bench = benchAfter(setting, faults, steps);
  if (!bench || !then) return undefined;
  const look = lookOn(bench);
  // Some seconds have passed since the lot fell on it.
  if (look.shows(fn, red, black) !== asked.shows) return undefined;
  const right = look.read(fn, red, black);
  // What is only so for a while cannot be told from how things stand.
  if (saidApart(said(then), said(right))) return undefined;
  const wrong = [...shuffled(random, mistaken(asked, look, right, soundly, random)), ...beside(asked, look, random)];
  const rails = railsOf(bench);
  const why: Sentence[] = [];
  if (right.kind === 'live') why.push({ key: 'live', values: { between: said(look.read('voltsAc', red, black)) } });
  else if (fn === 'ohms') why.push({ key: right.kind === 'overload' ? 'noWay' : 'wayOf', values: { shown: said(right) } });
  else if (fn !== 'voltsDc') {
    const ends = { red: { is: 'point', point: red }, black: { is: 'point', point: black } } as const;
    const ofRails = rails && sameSupply(setting)(rails.common, black) ? rails : undefined;
    const volts = (point: Point) => (ofRails ? said(look.read('voltsAc', point, ofRails.common)) : earthVolts(point));
    const earthVolts = (point: Point) => ({ is: 'quantity', value: voltsToEarth(bench, point), unit: 'V' }) as const;
    why.push({ key: ofRails ? 'toCommon' : 'toEarth', values: { ...ends, redVolts: volts(red), blackVolts: volts(black) } });
    const pulled = saidApart(said(look.ideal(fn, red, black)), said(right));
    const each = [red, black].map((point) =>
      ofRails ? look.read('voltsAc', point, ofRails.common).value : voltsToEarth(bench, point),
    );
    const relation = pulled ? undefined : relationOf(each, right.value);
    // Volts within a row or out of phase, as at the far end of a motor's winding, are known to a solver alone.
    if (!ofRails && (relation === 'floating' || !each.every(look.isPlain))) return undefined;
    if (relation) why.push({ key: relation, values: { shown: said(right) } });
    if (pulled) why.push({ key: 'burden', values: { shown: said(right) } });
  } else if (right.value === 0) why.push({ key: 'alternating', values: {} });
  if (soundly && saidApart(said(soundly), said(right))) why.push({ key: 'soundWould', values: { shown: said(soundly) } });
  return {
    scene: setting.scene(faults, steps),
    ask: { key: 'reading', values: { leads: { is: 'leads', fn, red, black } } },
    given: [
      { key: 'fault', values: { fault: faultSaid(setting, faults) } },
      { key: 'standing', values: { standing: standingSaid(setting, steps) } },
    ],
    marked: [red, black],
    right: said(right),
    wrong,
    why,
  };
}

/** How the volts of two points go together, unless one taken from the other says it all. */
function relationOf(volts: readonly number[], shown: number): 'opposite' | 'inStep' | 'floating' | undefined {
  const [less = 0, more = 0] = [...volts].sort((one, other) => one - other);
  const is = (reckoned: number) => Math.abs(reckoned - shown) <= RECKONED.volts + RECKONED.share * shown;
  if (is(more - less)) return less > LEG_VOLTS && is(0) ? 'inStep' : undefined;
  return is(less + more) ? 'opposite' : 'floating';
}

/** What somebody would say who believes otherwise of the meter, the fault or the circuit: each computed in the world that they believe in. */
function mistaken(asked: Asked, look: Look, right: Reading, sound: Reading | undefined, random: Random): Wrong[] {
  const { fn, red, black, shows } = asked;
  const { read, ideal } = look;
  const wrong: Wrong[] = [];
  const add = (misconception: Misconception, shown: Reading) => wrong.push({ said: said(shown), misconception });
  if (fn !== 'ohms') {
    if (fn === 'voltsLoaded') add('burdenIgnored', ideal(fn, red, black));
    wrong.push(...elsewhere(asked, look, random));
  } else if (shows === 'live') {
    // Whatever number, or none, is read off a live circuit.
    for (const each of [ideal(fn, red, black), openLeads(fn), read(fn, red, red)]) add('ohmsOnLive', each);
  } else {
    add('deadTakenForLive', liveReading(fn));
    if (shows !== 'open') add('closedTakenForOpen', openLeads(fn));
    // Both leads on one point: what conducts perfectly.
    if (shows !== 'copper') add(shows === 'open' ? 'openTakenForClosed' : 'loadTakenForWire', read(fn, red, red));
  }
  // One load's ohms cannot be told from another's by who sees neither of their plates.
  if (sound && sound.kind === right.kind && !(fn === 'ohms' && shows === 'load')) add('soundTaken', sound);
  return wrong;
}

/** Volts of each kind as they stand somewhere at this spot, or else at a source; and half of a control circuit's. */
function elsewhere({ setting, fn, shows, points }: Asked, { read, shows: showsAt, stiff }: Look, random: Random): Wrong[] {
  const together = sameSupply(setting);
  const pairs = [...pairsByLot(points, random).filter(([one, other]) => together(one, other)), ...stiff];
  const wrong: Wrong[] = [];
  for (const kind of SHOWS.volts) {
    const [one, other] = pairs.find(([a, b]) => showsAt(fn, a, b) === kind) ?? [];
    if (one === undefined || other === undefined) continue;
    const reading = read(fn, one, other);
    if (kind !== shows) wrong.push({ said: said(reading), misconception: kind === 'none' ? 'nothingThere' : 'sourceEverywhere' });
    if (kind === 'low') wrong.push({ said: said(voltsOf(fn, reading.value / 2)), misconception: 'sharedInRow' });
  }
  return wrong;
}

/** So many volts from a stiff source, as a meter shows them. */
function voltsOf(fn: MeterFunction, volts: number): Reading {
  const [acVolts, dcVolts] = fn === 'voltsDc' ? [0, volts] : [volts, 0];
  return readPort(fn, { hertz: 60, acVolts: { re: acVolts, im: 0 }, acOhms: 0, acReactance: 0, dcVolts, dcOhms: 0 });
}

/** What the same lead shows with the other on a point beside; of a load not: who sees no plate cannot tell one load's ohms from another's. */
function beside({ setting, fn, red, black, points, shows }: Asked, look: Look, random: Random): Wrong[] {
  if (fn === 'ohms' && shows === 'load') return [];
  const together = sameSupply(setting);
  return shuffled(random, points).flatMap((point): Wrong[] => {
    if (point === red || point === black || !together(point, black)) return [];
    const there = look.shows(fn, point, black);
    if (there === undefined) return [];
    const misconception =
      fn !== 'ohms' ? 'nextDoor' : shows === 'live' ? 'ohmsOnLive' : shows === 'copper' ? 'wireTakenForLoad' : 'nextDoor';
    return there === 'load' || fn !== 'ohms' ? [{ said: said(look.read(fn, point, black)), misconception }] : [];
  });
}
