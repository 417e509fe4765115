import type { Random } from '../scenario/variant.ts';
import { keyOf, type Said, saidApart } from './said.ts';
import type { Scene } from './scene.ts';
import type { Setting } from './setting.ts';

/** What drills ask for, as progress and exams count it. */
export const DRILL_SKILLS = ['readings', 'probing', 'contacts', 'sequence', 'suspects', 'safety', 'sums', 'diagrams'] as const;
export type DrillSkill = (typeof DRILL_SKILLS)[number];

/** Beliefs that lead to a wrong choice, each computed: what somebody who holds it would say. */
export const MISCONCEPTIONS = [
  /** The meter takes nothing from the circuit. */
  'burdenIgnored',
  /** An open is thought to conduct, or a fault to change nothing. */
  'openTakenForClosed',
  /** What conducts is thought to be open. */
  'closedTakenForOpen',
  /** A load is thought to be no more than a wire, or a wire a load. */
  'loadTakenForWire',
  'wireTakenForLoad',
  /** What is in a row is thought to share the volts although no current flows. */
  'sharedInRow',
  /** Across an open there is nothing; or across a load that works there is nothing. */
  'nothingThere',
  /** The source's volts are everywhere. */
  'sourceEverywhere',
  /** Ohms give a number on a live circuit. */
  'ohmsOnLive',
  /** A dead circuit is thought to be live. */
  'deadTakenForLive',
  /** Pins behind are in the order of the letters in front. */
  'notMirrored',
  /** The fan's contact is forgotten, or thought to close where it does not. */
  'fanForgotten',
  'fanAdded',
  /** What belongs to another call. */
  'otherCall',
  /** Of what must happen, a later thing first. */
  'tooEarly',
  /** What has already happened. */
  'tooLate',
  /** What stands so all the while. */
  'standsAlready',
  /** What a sound system would do, although something is wrong. */
  'soundTaken',
  /** The terminal, wire or part beside it. */
  'nextDoor',
  /** A load side by side with it is thought to hang on it. */
  'besideIt',
  /** What comes before it is thought to depend on it. */
  'upstreamTaken',
  /** A cable counted one way, not there and back. */
  'oneWay',
  /** One conductor counted there and back. */
  'bothWays',
  /** Another gauge. */
  'otherGauge',
  /** The ohms of a thousand feet, whatever the length. */
  'perThousand',
  /** What is lost taken for what is left, or the other way round. */
  'lossForRest',
  /** Ohms taken for volts. */
  'ohmsForVolts',
  /** Loads side by side taken for loads in a row, or the other way round. */
  'seriesForParallel',
  /** One of several loads forgotten. */
  'loadLeftOut',
  /** Amps taken for volt-amperes. */
  'ampsForVoltAmps',
  /** The line's volts with the low-voltage side's amps. */
  'lineSide',
  /** The winding's ohms taken for all that holds its current back. */
  'resistanceForImpedance',
  /** Resistance and reactance added as if they were of one kind. */
  'addedStraight',
  /** Turns through a clamp's jaw multiplied where they divide, or divided where they multiply. */
  'turnsTheOtherWay',
  /** Turns through a clamp's jaw forgotten. */
  'turnsForgotten',
  /** One turn too few: the conductor counts each time that it passes. */
  'turnsMiscounted',
  /** What lies outside the jaw counted as well. */
  'turnsTwice',
  /** A fault that the readings rule out. */
  'ruledOut',
  /** A fault that the readings leave, struck out. */
  'struckOutTooSoon',
  /** A reading that both would show. */
  'sameForBoth',
  /** A reading whose outcome is known before. */
  'knownBefore',
  /** It tells something, and another tells more. */
  'tellsLess',
  /** Some fault would show it. */
  'possibleAfterAll',
  /** Steps in an order in which somebody could be hurt, or a reading means nothing. */
  'unsafeOrder',
  /** Peak for effective value. */
  'peak',
  /** Effective value worked out of what is one already. */
  'effectiveTwice',
  /** What a plate allows taken for what is asked of it. */
  'plateForLoad',
] as const;
export type Misconception = (typeof MISCONCEPTIONS)[number];

/** Words by a key, with what is put into them. */
export interface Sentence {
  readonly key: string;
  readonly values: Readonly<Record<string, Said>>;
}

export interface Choice {
  readonly said: Said;
  /** Why somebody would choose it; undefined for the right one. */
  readonly misconception: Misconception | undefined;
}

/** One exercise: a question about a circuit, and choices of which exactly one is right. */
export interface Item {
  /** The kind's id. */
  readonly kind: string;
  /** From this number alone the kind draws the same item again. */
  readonly number: number;
  readonly skill: DrillSkill;
  readonly scene: Scene;
  readonly ask: Sentence;
  /** What is known: readings that were taken, faults in question. */
  readonly given: readonly Sentence[];
  readonly choices: readonly Choice[];
  /** Place of the right one. */
  readonly right: number;
  /** The short argument. */
  readonly why: readonly Sentence[];
  /** Points that the picture marks. */
  readonly marked: readonly string[];
}

/** A wrong choice, and what the item says and marks because of it where it is one of those that are taken. */
export interface Wrong {
  readonly said: Said;
  readonly misconception: Misconception;
  readonly why?: Sentence;
  readonly marked?: readonly string[];
}

/** An item before its choices are shuffled and its number is put on it. */
export interface Draft extends Pick<Item, 'scene' | 'ask' | 'why'> {
  readonly given?: readonly Sentence[];
  readonly marked?: readonly string[];
  readonly right: Said;
  /** In order of worth, and more than are needed: those are taken that can be told from each other and give the right one away least. */
  readonly wrong: readonly Wrong[];
}

/**
 * Of all that could be asked in a house, what one number has to itself: none of its other numbers is given the same. For kinds with so few
 * questions that lots would repeat them.
 */
export type Share = <T>(all: readonly T[]) => readonly T[];

/** A kind of drill: a generator of items over every rig. */
export interface DrillKind {
  readonly id: string;
  readonly skill: DrillSkill;
  /** How many choices an item of it has. */
  readonly choices: number;
  /** Nothing where the lot fell on what gives no question. Everything comes from the setting and the lots. */
  readonly draft: (setting: Setting, random: Random, own: Share) => Draft | undefined;
}

/**
 * What is wrong with an item as a question, by code; empty when nothing is. That the right choice is right and the wrong ones are wrong is what its
 * kind computes; here it is that no two could be taken for one another.
 */
export function flawsOf(item: Pick<Item, 'choices' | 'right'>): string[] {
  const { choices, right } = item;
  const flaws: string[] = [];
  if (choices.length < 3 || choices.length > 6) flaws.push('choices');
  if (choices.filter(({ misconception }) => misconception === undefined).length !== 1) flaws.push('oneRight');
  if (choices[right]?.misconception !== undefined || choices[right] === undefined) flaws.push('right');
  choices.forEach((one, index) => {
    if (choices.slice(index + 1).some((other) => !saidApart(one.said, other.said))) flaws.push(`alike ${index}`);
  });
  return flaws;
}

/** Equal for two items that ask the same, whatever the order of their choices. */
export function itemKey(item: Item): string {
  const { rig, history, faults, actions, house, weather } = item.scene;
  return JSON.stringify([
    item.kind,
    rig,
    history,
    faults,
    actions,
    house,
    weather,
    item.ask,
    item.given,
    item.choices.map(({ said }) => keyOf(said)).sort(),
  ]);
}
