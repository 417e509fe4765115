import type { Action } from '../../attempt/actions.ts';
import type { BenchView } from '../../attempt/view.ts';
import type { Point } from '../../rig/points.ts';
import { partName, t, terminalName, wireName } from '../words.ts';

/** A place that a probe reaches from here. */
export interface Reachable {
  readonly point: Point;
  /** What is typed to find it: what is printed at the terminal, or its words. */
  readonly letter: string;
  /** The part or wire that it is on. */
  readonly on: string;
}

/** Every place that a probe may be put now, in the order of the bench. Read off the allowed actions, so that no rule is repeated here. */
export function reachablePoints(view: BenchView, options: readonly Action[]): readonly Reachable[] {
  const allowed = new Set(options.flatMap((each) => (each.name === 'probe' && each.at !== null ? [each.at] : [])));
  const terminals = view.parts.flatMap((part) =>
    part.terminals
      // A point that one lead is on already is no option for it, and still a terminal to be found.
      .filter((each) => allowed.has(each.point) || each.reachable)
      .map((each) => ({ point: each.point, letter: terminalName(part, each), on: partName(part.id) })),
  );
  const ends = view.wires.flatMap((wire) =>
    [wire.ends.from, wire.ends.to]
      .filter((end) => end.lifted && end.visible)
      .map((end) => ({ point: end.point, letter: t('app:terminal.bareEnd'), on: wireName(wire.id) })),
  );
  return [...terminals, ...ends];
}

/** As a keyboard writes it: it has no sign for minus. */
const written = (words: string): string => words.toLocaleLowerCase().replaceAll('−', '-');

/** Those whose letter begins with what was typed (whole matches first), or whose part does. */
export function matching(points: readonly Reachable[], typed: string): readonly Reachable[] {
  const wanted = written(typed.trim());
  if (wanted === '') return points;
  const rank = (each: Reachable): number => {
    const letter = written(each.letter);
    if (letter === wanted) return 0;
    if (letter.startsWith(wanted)) return 1;
    const on = written(each.on);
    return `${letter} ${on}`.startsWith(wanted) || on.startsWith(wanted) ? 2 : 3;
  };
  return points
    .map((each) => ({ each, rank: rank(each) }))
    .filter((each) => each.rank < 3)
    .sort((a, b) => a.rank - b.rank)
    .map((each) => each.each);
}
