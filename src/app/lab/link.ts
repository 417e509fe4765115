/** A WebSocket that is dialled again when it is lost, after pauses that grow. */

/** How the line stands; `lost`: dialled again at `again`, milliseconds on the clock of `performance.now()`. */
export type LinkState = { readonly state: 'dialling' | 'open' } | { readonly state: 'lost'; readonly again: number };

export interface Line {
  readonly send: (text: string) => void;
  readonly close: () => void;
}

interface Hears {
  readonly opened: () => void;
  readonly said: (text: string) => void;
  readonly closed: () => void;
}

/** Opens one connection. */
export type Dial = (hears: Hears) => Line;

/** Seconds between one failure and the next attempt, the last for all that follow; common practice, no source. */
const PAUSES = [1, 2, 4, 8, 15] as const;

export interface Link {
  readonly send: (text: string) => void;
  /** Gives up a line that no longer answers, and dials again at once. */
  readonly redial: () => void;
  readonly close: () => void;
}

export function keepLinked(dial: Dial, hear: Omit<Hears, 'closed'> & { readonly stands: (state: LinkState) => void }): Link {
  let line: Line | undefined;
  let failures = 0;
  let timer: ReturnType<typeof setTimeout> | undefined;
  /** Only the last line is listened to. */
  let last = 0;

  function begin(): void {
    last += 1;
    const mine = last;
    const isLast = () => mine === last;
    hear.stands({ state: 'dialling' });
    line = dial({
      opened: () => {
        if (!isLast()) return;
        failures = 0;
        hear.stands({ state: 'open' });
        hear.opened();
      },
      said: (text) => {
        if (isLast()) hear.said(text);
      },
      closed: () => {
        if (!isLast()) return;
        last += 1;
        const seconds = PAUSES[Math.min(failures, PAUSES.length - 1)] ?? 1;
        failures += 1;
        hear.stands({ state: 'lost', again: performance.now() + seconds * 1000 });
        timer = setTimeout(begin, seconds * 1000);
      },
    });
  }

  function drop(): void {
    clearTimeout(timer);
    last += 1;
    line?.close();
    line = undefined;
  }

  begin();
  return {
    send: (text) => line?.send(text),
    redial: () => {
      drop();
      begin();
    },
    close: drop,
  };
}

/** Dials the host that served this page. */
export const dialHost =
  (path: string): Dial =>
  ({ opened, said, closed }) => {
    const socket = new WebSocket(new URL(path, location.origin.replace(/^http/, 'ws')));
    socket.addEventListener('open', opened);
    socket.addEventListener('message', (event) => said(String(event.data)));
    socket.addEventListener('close', closed);
    return {
      send: (text) => {
        if (socket.readyState === WebSocket.OPEN) socket.send(text);
      },
      close: () => socket.close(),
    };
  };
