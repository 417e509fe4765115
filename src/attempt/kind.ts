import { WIRE_ENDS } from '../rig/points.ts';
import { isVisible, wireEnd } from './access.ts';
import type { Action, ActionName, ActionOf } from './actions.ts';
import type { Bench } from './bench.ts';

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

/** Every kind of action by its name. */
export type Registry = { readonly [N in ActionName]: ActionKind<ActionOf<N>> };

export function no(code: string, values: Record<string, string | number> = {}): Refusal {
  return { code, values };
}

export function partOf(bench: Bench, id: string) {
  return bench.world.assembly.partById.get(id);
}

export function wireOf(bench: Bench, id: string) {
  return bench.world.assembly.wireById.get(id);
}

export function wireHere(bench: Bench, id: string): boolean {
  const wire = wireOf(bench, id);
  return wire !== undefined && WIRE_ENDS.some((end) => isVisible(bench, wireEnd(bench, wire, end).part));
}
