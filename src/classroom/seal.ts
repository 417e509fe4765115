/**
 * A seal makes a change to a finished log show: every step's seal is a hash of the one before, of what was done, and of what was then
 * seen. It holds no secret: whoever can rebuild the app can seal what they like, as long as each step tells what this very fault tells.
 * Where that matters, the attempt belongs on a host of the instructor's.
 */
import type { Observation } from '../attempt/act.ts';
import type { Action } from '../attempt/actions.ts';
import { fingerprint } from '../suspects/apart.ts';
import { canonical, hashOf } from './digest.ts';

/** Raised whenever the same log may come to another result: physics, parts, costs or score changed. */
export const RULES = 1;

/** Of one step: eight hexadecimal digits of the action alone, a point, and sixteen of all up to here. */
export const SEAL_PATTERN = /^[0-9a-f]{8}\.[0-9a-f]{16}$/;

/** What an attempt is sealed to: any of these another, and no seal fits. */
export interface SealedTo {
  readonly assignment: string;
  readonly trainee: string;
  readonly item: number;
  readonly attempt: number;
  readonly ticket: string;
  readonly rig: string;
}

interface Seen {
  readonly action: Action;
  readonly observation: Observation;
}

/** The action's own part of its step's seal. */
export function ownSeal(action: Action): string {
  return hashOf(canonical(action)).slice(0, 8);
}

/** A seal for each step. */
export function sealSteps(to: SealedTo, steps: readonly Seen[]): string[] {
  let chain = hashOf(canonical({ ...to, rules: RULES })).slice(0, 16);
  return steps.map(({ action, observation }) => {
    chain = hashOf(`${chain} ${canonical(action)} ${fingerprint(observation)}`).slice(0, 16);
    return `${ownSeal(action)}.${chain}`;
  });
}

/** What closes a submission: everything else that it says, sealed to its last step. */
export function sealRest(to: SealedTo, seals: readonly string[], rest: unknown): string {
  return hashOf(`${canonical(to)} ${seals.at(-1) ?? ''} ${seals.length} ${canonical(rest)}`).slice(0, 32);
}
