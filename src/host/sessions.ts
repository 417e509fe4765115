/** Who is signed in. A token is known by its hash alone, outlives a restart of the host, and ends with sign-out or idleness. */
import type { Records } from './records.ts';
import { hashToken, makeToken } from './secrets.ts';

export interface Session {
  readonly hash: string;
  /** Undefined: the instructor. */
  readonly trainee: string | undefined;
}

export interface Sessions {
  /** A new token. */
  begin(trainee: string | undefined): string;
  /** Whose token it is; undefined where it is nobody's or has been idle for too long. It counts as a sign of life. */
  find(token: string): Session | undefined;
  /** A sign of life. */
  touch(session: Session): void;
  isIdle(session: Session): boolean;
  end(session: Session): void;
  endAllOf(trainee: string | undefined): void;
  /** Ends those that have been idle for too long. */
  sweep(): void;
  /** Puts the signs of life into the file: a kill loses no more than what came since. */
  keep(): void;
}

/** The instructor's page may stand in a corner for a whole lesson, milliseconds. */
const INSTRUCTOR_IDLE = 4 * 3600_000;

/**
 * @param now milliseconds
 * @param idle milliseconds
 */
export function createSessions(records: Records, now: () => number, idle: number): Sessions {
  const seen = new Map<string, number>();
  const limit = ({ trainee }: Session) => (trainee === undefined ? Math.max(idle, INSTRUCTOR_IDLE) : idle);

  function isIdle(session: Session): boolean {
    return now() - (seen.get(session.hash) ?? records.session(session.hash)?.seen ?? 0) > limit(session);
  }

  function end({ hash }: Session): void {
    seen.delete(hash);
    records.dropSession(hash);
  }

  return {
    begin(trainee) {
      const token = makeToken();
      records.setSession(hashToken(token), trainee ?? null, now());
      return token;
    },
    find(token) {
      const row = records.session(hashToken(token));
      if (!row) return undefined;
      const session = { hash: row.hash, trainee: row.trainee ?? undefined };
      if (isIdle(session)) {
        end(session);
        return undefined;
      }
      seen.set(row.hash, now());
      return session;
    },
    touch: ({ hash }) => void seen.set(hash, now()),
    isIdle,
    end,
    endAllOf: (trainee) => records.dropSessionsOf(trainee ?? null),
    sweep: () => records.dropSessionsBefore(now() - Math.max(idle, INSTRUCTOR_IDLE)),
    keep() {
      for (const [hash, at] of seen) {
        const row = records.session(hash);
        if (row) records.setSession(hash, row.trainee, at);
      }
      seen.clear();
    },
  };
}
