/**
 * Two trainees with the same log. Each agreement counts for as many bits as it would surprise between two who never met; two are
 * doubted where it comes to {@link SURE_BITS} more than the logarithm of the number of pairs that were compared. Two kinds are counted:
 *
 * - the same actions at the same pace: each gap between two steps that is the same to the hundredth of a second. People are seconds
 *   apart, so a hundredth is worth about five bits and a half, and six gaps in a row are enough. Where the clock was only kept in whole
 *   seconds, a gap is worth one bit. Gaps below a fifth of a second are one movement of the hand, and count for nothing;
 * - the same needless steps in an unbroken run of the same actions. The short way is the same for everybody who finds it, so a step
 *   that told something, or that safe working asks for, counts for nothing however long the run is. A needless step is worth the
 *   logarithm of how rare it is among the others who had this ticket, and one bit at most where it is a look or a wait or a walk:
 *   people look round in the same order.
 *
 * A run of honest short ways therefore never comes to anything, whatever its length. That shared errors tell of copying, and shared
 * right answers do not, is how answer sheets are compared too (error similarity analysis; from memory, no source at hand).
 */
import { type Doubt, doubt } from './doubts.ts';
import type { Entry } from './entry.ts';
import { groupBy } from './group.ts';

/** Beyond the number of pairs: one wrongly doubted pair in a thousand million classes, were all agreements independent. */
export const SURE_BITS = 30;
/** A needless step is never rarer than this, bits: nobody else's log may be there to compare. */
const MOST_BITS = 4;
/** Steps by which a pair is found at all. */
const WINDOW = 6;
const ONE_MOVEMENT_SECONDS = 0.2;
const IDLE = new Set(['look', 'wait', 'watch', 'walk', 'cover', 'meter']);

interface Pair {
  readonly a: Entry;
  readonly b: Entry;
  readonly atA: number;
  readonly atB: number;
}

export interface SameLog {
  readonly a: Entry;
  readonly b: Entry;
  /** What the two have in common. */
  readonly why: 'pace' | 'waste';
  /** Length of the run of the same actions, and its first step in each, from 1. */
  readonly steps: number;
  readonly fromA: number;
  readonly fromB: number;
}

/** Pairs of submissions of two trainees at one ticket whose logs agree by more than chance. */
export function sameLogs(entries: readonly Entry[]): SameLog[] {
  const byTicket = groupBy(entries, (entry) => `${entry.item} ${entry.ticket}`);
  return [...byTicket.values()].flatMap((group) => {
    const needed = SURE_BITS + Math.log2(Math.max(1, (group.length * (group.length - 1)) / 2));
    const rarity = rarityIn(group);
    const found = new Map<string, SameLog>();
    const look = (
      why: SameLog['why'],
      keysOf: (entry: Entry) => (string | undefined)[],
      bitsOf: (pair: Pair, steps: number) => number,
    ) => {
      for (const pair of pairsBy(group, keysOf)) {
        const key = `${group.indexOf(pair.a)} ${group.indexOf(pair.b)}`;
        if (found.has(key)) continue;
        const run = runOf(pair);
        if (bitsOf(run.pair, run.steps) < needed) continue;
        found.set(key, { a: pair.a, b: pair.b, why, steps: run.steps, fromA: run.pair.atA + 1, fromB: run.pair.atB + 1 });
      }
    };
    look('pace', paceKeys, paceBits);
    look('waste', wasteKeys, (pair, steps) => wasteBits(pair, steps, rarity));
    return [...found.values()];
  });
}

/** The doubts of a submission about whose log it is; `index` is its place in `entries`. */
export function sameLogDoubts(entries: readonly Entry[]): ReadonlyMap<Entry, readonly Doubt[]> {
  const doubts = new Map<Entry, Doubt[]>();
  const add = (entry: Entry, other: Entry, step: number, { why, steps }: SameLog) => {
    const values = { trainee: other.trainee.code, why, steps };
    doubts.set(entry, [...(doubts.get(entry) ?? []), doubt('sameLog', step, values)]);
  };
  for (const same of sameLogs(entries)) {
    add(same.a, same.b, same.fromA, same);
    add(same.b, same.a, same.fromB, same);
  }
  return doubts;
}

/** Pairs of two trainees that share a window, each pair once for each window that it shares. */
function* pairsBy(group: readonly Entry[], keysOf: (entry: Entry) => (string | undefined)[]): Generator<Pair> {
  const seen = new Map<string, { readonly entry: Entry; readonly at: number }[]>();
  for (const entry of group) {
    for (const [at, key] of keysOf(entry).entries()) {
      if (key === undefined) continue;
      const known = seen.get(key) ?? [];
      for (const other of known)
        if (other.entry.trainee.code !== entry.trainee.code) yield { a: other.entry, b: entry, atA: other.at, atB: at };
      known.push({ entry, at });
      seen.set(key, known);
    }
  }
}

/** The whole unbroken run of the same actions that a pair's window lies in. */
function runOf(pair: Pair): { readonly pair: Pair; readonly steps: number } {
  const { a, b } = pair;
  let [atA, atB] = [pair.atA, pair.atB];
  while (atA > 0 && atB > 0 && a.actions[atA - 1] === b.actions[atB - 1]) {
    atA -= 1;
    atB -= 1;
  }
  let steps = 0;
  while (atA + steps < a.actions.length && a.actions[atA + steps] === b.actions[atB + steps]) steps += 1;
  return { pair: { a, b, atA, atB }, steps };
}

/** To the hundredth of a second. */
const gapBefore = ({ stamps }: Entry, step: number): number =>
  Math.round(100 * ((stamps[step] ?? 0) - (stamps[step - 1] ?? 0))) / 100;

function windows(entry: Entry, textOf: (step: number) => string, counts: (from: number) => boolean): (string | undefined)[] {
  return entry.actions.map((_, from) => {
    if (from + WINDOW > entry.actions.length || !counts(from)) return undefined;
    return Array.from({ length: WINDOW }, (__, index) => textOf(from + index)).join(' ');
  });
}

function paceKeys(entry: Entry): (string | undefined)[] {
  return windows(
    entry,
    (step) => `${entry.actions[step]}@${gapBefore(entry, step)}`,
    (from) => from > 0,
  );
}

/** Seconds to which the clock of a log was kept. */
function resolutionOf({ stamps }: Entry): number {
  if (stamps.every(Number.isInteger)) return 1;
  return stamps.every((stamp) => Math.abs(stamp * 10 - Math.round(stamp * 10)) < 1e-6) ? 0.1 : 0.01;
}

function paceBits({ a, b, atA, atB }: Pair, steps: number): number {
  const each = -Math.log2(Math.min(0.5, 2 * Math.max(resolutionOf(a), resolutionOf(b))));
  let bits = 0;
  for (let step = 1; step < steps; step++) {
    const gap = gapBefore(a, atA + step);
    if (gap >= ONE_MOVEMENT_SECONDS && gap === gapBefore(b, atB + step)) bits += each;
  }
  return bits;
}

const wastedAt = ({ result }: Entry): ReadonlyMap<number, string> =>
  new Map((result?.wasted ?? []).map(({ step, action }) => [step - 1, action.name]));

function wasteKeys(entry: Entry): (string | undefined)[] {
  const wasted = wastedAt(entry);
  return windows(
    entry,
    (step) => entry.actions[step] ?? '',
    (from) => [...wasted.keys()].filter((step) => step >= from && step < from + WINDOW).length >= 2,
  );
}

/** Of each action: how many trainees took it for nothing at this ticket. */
function rarityIn(group: readonly Entry[]): { readonly trainees: number; readonly took: ReadonlyMap<string, number> } {
  const took = new Map<string, Set<string>>();
  for (const entry of group)
    for (const step of wastedAt(entry).keys()) {
      const action = entry.actions[step] ?? '';
      took.set(action, (took.get(action) ?? new Set()).add(entry.trainee.code));
    }
  const trainees = new Set(group.map((entry) => entry.trainee.code)).size;
  return { trainees, took: new Map([...took].map(([action, who]) => [action, who.size])) };
}

function wasteBits({ a, b, atA, atB }: Pair, steps: number, { trainees, took }: ReturnType<typeof rarityIn>): number {
  const [ofA, ofB] = [wastedAt(a), wastedAt(b)];
  const others = Math.max(0, trainees - 2);
  let bits = 0;
  for (let step = 0; step < steps; step++) {
    const name = ofA.get(atA + step);
    if (name === undefined || !ofB.has(atB + step)) continue;
    const among = Math.max(0, (took.get(a.actions[atA + step] ?? '') ?? 0) - 2);
    bits += Math.min(IDLE.has(name) ? 1 : MOST_BITS, -Math.log2((among + 0.5) / (others + 5)));
  }
  return bits;
}
