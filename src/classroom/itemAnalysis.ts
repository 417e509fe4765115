/** What a class shows about an assignment's items: how hard each is, whether it tells the good from the poor, and where people go wrong. */
import { mean, sampleCorrelation } from 'simple-statistics';
import type { Action } from '../attempt/actions.ts';
import type { Naming } from '../suspects/hypotheses.ts';
import { canonical } from './digest.ts';
import type { Result } from './grade.ts';
import { groupBy } from './group.ts';

/** One trainee's result at an item, and what they got on the assignment's other items. */
export interface Taken {
  readonly trainee: string;
  readonly ticket: string;
  readonly result: Result;
  /** Mean of the points on the other items by their weights, of 100; undefined where there are none. */
  readonly rest: number | undefined;
}

export interface Analysis {
  readonly item: number;
  /** Undefined for all of the item's tickets together. */
  readonly ticket: string | undefined;
  /** Trainees. */
  readonly count: number;
  readonly rightCount: number;
  /** Mean share of the points, 0 (nobody got any) to 1. */
  readonly difficulty: number | undefined;
  /** Point-biserial correlation of naming it rightly with the points on the other items, −1…1; undefined where that says nothing. */
  readonly discrimination: number | undefined;
  readonly wastedStep: { readonly action: Action; readonly trainees: number; readonly ticket: string } | undefined;
  readonly wrongNaming: { readonly naming: Naming; readonly trainees: number; readonly ticket: string } | undefined;
  /** Measurements that those who were right took more often than those who were wrong, the greatest difference first. */
  readonly toldApart: readonly {
    readonly measured: string;
    readonly ticket: string;
    readonly right: number;
    readonly wrong: number;
  }[];
}

/** Fewer say nothing. */
const FEWEST = 3;
/** Measurements that are named. */
const MOST_MEASURED = 5;

/**
 * Point-biserial correlation: Pearson's, of a yes or no with a number.
 * @returns −1…1; undefined for fewer than three, or where either is the same for all
 */
export function pointBiserial(right: readonly boolean[], values: readonly number[]): number | undefined {
  if (right.length !== values.length || right.length < FEWEST) return undefined;
  if (new Set(right).size < 2 || new Set(values).size < 2) return undefined;
  return Math.min(1, Math.max(-1, sampleCorrelation(right.map(Number), [...values])));
}

/** An item as a whole, and each of its tickets where it has more than one. */
export function analysesOf(item: number, taken: readonly Taken[]): Analysis[] {
  const tickets = groupBy(taken, ({ ticket }) => ticket);
  const each = [...tickets].sort(([a], [b]) => (a < b ? -1 : 1)).map(([ticket, some]) => analysisOf(item, ticket, some));
  return [analysisOf(item, undefined, taken), ...(tickets.size > 1 ? each : [])];
}

function analysisOf(item: number, ticket: string | undefined, taken: readonly Taken[]): Analysis {
  const right = taken.filter(({ result }) => result.rightNaming);
  const wrong = taken.filter(({ result }) => !result.rightNaming);
  const rated = taken.filter((each): each is Taken & { readonly rest: number } => each.rest !== undefined);
  const wasted = commonest(taken.flatMap((each) => each.result.wasted.map(({ action }) => ({ ...each, what: action }))));
  const named = commonest(wrong.flatMap((each) => (each.result.named ? [{ ...each, what: each.result.named }] : [])));
  return {
    item,
    ticket,
    count: taken.length,
    rightCount: right.length,
    difficulty: taken.length === 0 ? undefined : mean(taken.map(({ result }) => result.total)) / 100,
    discrimination: pointBiserial(
      rated.map(({ result }) => result.rightNaming),
      rated.map(({ rest }) => rest),
    ),
    wastedStep: wasted && { action: wasted.what, trainees: wasted.trainees, ticket: wasted.ticket },
    wrongNaming: named && { naming: named.what, trainees: named.trainees, ticket: named.ticket },
    toldApart: toldApart(right, wrong),
  };
}

/** What most trainees did, each counted once. Two tickets' points and parts are not the same, whatever they are called. */
function commonest<T>(
  did: readonly { readonly trainee: string; readonly ticket: string; readonly what: T }[],
): { readonly what: T; readonly ticket: string; readonly trainees: number } | undefined {
  const byWhat = groupBy(did, ({ what, ticket }) => `${ticket} ${canonical(what)}`);
  const counted = [...byWhat].map(([key, all]) => ({ key, all, trainees: new Set(all.map(({ trainee }) => trainee)).size }));
  const [most] = counted.sort((a, b) => b.trainees - a.trainees || (a.key < b.key ? -1 : 1));
  const [first] = most?.all ?? [];
  return most && first && { what: first.what, ticket: first.ticket, trainees: most.trainees };
}

/** Within each ticket: shares of the right ones and of the wrong ones who took a measurement. */
function toldApart(right: readonly Taken[], wrong: readonly Taken[]): Analysis['toldApart'] {
  const tickets = new Set(right.map(({ ticket }) => ticket));
  const found = [...tickets].flatMap((ticket) => {
    const of = (all: readonly Taken[]) => all.filter((each) => each.ticket === ticket);
    const [rights, wrongs] = [of(right), of(wrong)];
    if (wrongs.length === 0) return [];
    const share = (all: readonly Taken[], measured: string) =>
      all.filter(({ result }) => result.measured.includes(measured)).length / all.length;
    const all = new Set(rights.flatMap(({ result }) => result.measured));
    return [...all].map((measured) => ({ measured, ticket, right: share(rights, measured), wrong: share(wrongs, measured) }));
  });
  return found
    .filter((each) => each.right > each.wrong)
    .sort((a, b) => b.right - b.wrong - (a.right - a.wrong) || (a.measured < b.measured ? -1 : 1))
    .slice(0, MOST_MEASURED);
}
