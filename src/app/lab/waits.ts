/** What a trainee's place does after a while. */

/** An answer that takes longer than this is waited for visibly, milliseconds. */
const SEEN_WAITING = 300;
/** A line that has not answered for so long is given up, milliseconds; common practice, no source. */
const GIVEN_UP = 8000;

type Name = 'seen' | 'givenUp' | 'again';

export interface Waits {
  /** In place of what was to come under this name. */
  readonly later: (name: Name, milliseconds: number, run: () => void) => void;
  /** An answer is waited for: it is shown after a while, and in the end the line is given up. */
  readonly wait: () => void;
  /** Nothing is waited for any more. */
  readonly calm: () => void;
}

export function createWaits(seen: () => void, givenUp: () => void): Waits {
  const timers = new Map<Name, ReturnType<typeof setTimeout>>();
  const later: Waits['later'] = (name, milliseconds, run) => {
    clearTimeout(timers.get(name));
    timers.set(name, setTimeout(run, milliseconds));
  };
  return {
    later,
    wait: () => {
      later('seen', SEEN_WAITING, seen);
      later('givenUp', GIVEN_UP, givenUp);
    },
    calm: () => {
      for (const timer of timers.values()) clearTimeout(timer);
      timers.clear();
    },
  };
}
