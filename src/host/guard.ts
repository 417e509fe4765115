/** Slows down whoever guesses: after a few wrong ones every further one doubles the wait. */
import { dataError } from '../rig/errors.ts';

export interface Guard {
  /** Seconds to wait before the next try under any of these names; 0: go on. */
  wait(names: readonly Guarded[]): number;
  wrong(names: readonly Guarded[]): void;
  right(names: readonly Guarded[]): void;
}

export interface Guarded {
  readonly name: string;
  /** Wrong ones that cost nothing: people mistype. */
  readonly free: number;
  /** The longest wait, seconds. */
  readonly most: number;
}

/** After so long without a wrong one, and with the wait over, it is forgotten, milliseconds. */
const FORGOTTEN = 900_000;
/** So many names are remembered; who guesses under ever new ones is slowed by address. */
const MOST_NAMES = 10_000;

/** @param now milliseconds */
export function createGuard(now: () => number): Guard {
  const failures = new Map<string, { count: number; until: number }>();
  return {
    wait(names) {
      const longest = Math.max(0, ...names.map(({ name }) => (failures.get(name)?.until ?? 0) - now()));
      return Math.ceil(longest / 1000);
    },
    wrong(names) {
      for (const { name, free, most } of names) {
        const before = failures.get(name);
        const count = before && now() < before.until + FORGOTTEN ? before.count + 1 : 1;
        const seconds = count <= free ? 0 : Math.min(most, 2 ** Math.min(30, count - free));
        failures.delete(name);
        failures.set(name, { count, until: now() + seconds * 1000 });
        const [oldest] = failures.keys();
        if (failures.size > MOST_NAMES && oldest !== undefined) failures.delete(oldest);
      }
    },
    right(names) {
      for (const { name } of names) failures.delete(name);
    },
  };
}

/** Whose secret is tried: counted before it is looked at, so that guesses side by side do not all go free. */
export interface Names {
  readonly own: readonly Guarded[];
  /** Where it is tried from: counted when it was wrong, and not forgiven when another one was right. */
  readonly place: readonly Guarded[];
}

/** A trainee's PIN: slow for whoever guesses from one place, and never shut for long for the trainee, whoever guesses elsewhere. */
export const traineeNames = (trainee: string, address: string): Names => ({
  own: [
    { name: `pin ${trainee} ${address}`, free: 3, most: 900 },
    { name: `trainee ${trainee}`, free: 10, most: 60 },
  ],
  place: [{ name: `address ${address}`, free: 30, most: 300 }],
});

export const instructorNames = (address: string): Names => ({
  own: [
    { name: `instructor ${address}`, free: 3, most: 900 },
    { name: 'instructor', free: 20, most: 60 },
  ],
  place: [],
});

/**
 * Looks at a secret, not too often.
 * @throws DataError with the seconds to wait
 */
export async function tried<T>(
  guard: Guard,
  { own, place }: Names,
  path: string,
  look: () => Promise<T | undefined>,
): Promise<T | undefined> {
  const seconds = guard.wait([...own, ...place]);
  if (seconds > 0) throw dataError('lab.wait', path, { seconds });
  guard.wrong(own);
  const found = await look();
  if (found === undefined) guard.wrong(place);
  else guard.right(own);
  return found;
}
