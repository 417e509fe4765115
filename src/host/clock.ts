/** Time that counts: the wall clock's, but for the pauses, and but for when the host was not there. */
import type { Database } from './database.ts';

interface Pause {
  readonly began: number;
  ended: number | null;
}

export interface Clock {
  /** Milliseconds since 1970. */
  now(): number;
  paused(): boolean;
  setPaused(paused: boolean): void;
  /** Seconds between two moments, without the pauses in them. */
  worked(from: number, to: number): number;
  /** Notes that the host is there. */
  beat(): void;
}

/** A gap that is longer than this between two beats was no work of anybody's, milliseconds. */
const GAP = 15_000;

/** Takes up the clock where it stood: since the last beat nobody could work. */
export function createClock(db: Database, now: () => number): Clock {
  const pauses = db.prepare<[], Pause>('SELECT began, ended FROM pauses ORDER BY began').all();
  const add = db.prepare('INSERT OR REPLACE INTO pauses (began, ended) VALUES (?, ?)');
  const set = db.prepare("INSERT OR REPLACE INTO settings (name, value) VALUES ('beat', ?)");
  const last = db.prepare<[], { value: string }>("SELECT value FROM settings WHERE name = 'beat'").get();
  const open = (): Pause | undefined => pauses.find(({ ended }) => ended === null);

  function keep(pause: Pause): void {
    add.run(pause.began, pause.ended);
    if (!pauses.includes(pause)) pauses.push(pause);
  }

  const away = last ? Number(last.value) : now();
  if (!open() && now() - away > GAP) keep({ began: away, ended: now() });

  return {
    now,
    paused: () => open() !== undefined,
    setPaused(paused) {
      const running = open();
      if (paused && !running) keep({ began: now(), ended: null });
      if (!paused && running) {
        running.ended = now();
        keep(running);
      }
    },
    worked(from, to) {
      const out = pauses.reduce((sum, { began, ended }) => sum + Math.max(0, Math.min(to, ended ?? to) - Math.max(from, began)), 0);
      return Math.max(0, to - from - out) / 1000;
    },
    beat: () => void set.run(String(now())),
  };
}
