import { useCallback, useEffect, useMemo, useState } from 'preact/hooks';
import { type Classroom, type Seat, toInstructorSchema } from '../../classroom/room.ts';
import { failedText, Refused } from './api.ts';
import { type ClassApi, classApi } from './class-api.ts';
import { dialHost, keepLinked, type LinkState } from './link.ts';
import { storeOf, useStore } from './store.ts';

/** The instructor's session: in this tab's memory alone, through a change of language too. */
const session = storeOf<{ readonly token: string | undefined; readonly isEnded: boolean }>({ token: undefined, isEnded: false });

export const useClassSession = () => useStore(session);
export const takeToken = (token: string | undefined, isEnded = false): void => session.set({ token, isEnded });

export interface ClassRoom {
  readonly api: ClassApi;
  readonly room: Classroom | undefined;
  readonly seats: readonly Seat[];
  readonly paused: boolean;
  readonly link: LinkState;
  /** What went wrong or well with the last thing that was asked, in words. */
  readonly told: { readonly words: string; readonly isWrong: boolean };
  /** Does something, tells how it went, and looks at the class again. */
  readonly run: <T>(work: () => Promise<T>, done?: (answer: T) => string) => Promise<T | undefined>;
}

/** The class as the host has it, and the room as it moves. */
export function useClass(token: string): ClassRoom {
  const api = useMemo(() => classApi(token), [token]);
  const [room, setRoom] = useState<Classroom>();
  const [live, setLive] = useState<{ readonly paused: boolean; readonly seats: readonly Seat[] }>();
  const [link, setLink] = useState<LinkState>({ state: 'dialling' });
  const [told, tell] = useState({ words: '', isWrong: false });

  const fail = useCallback((error: unknown) => {
    if (error instanceof Refused && error.failure.code === 'lab.signedOut') takeToken(undefined, true);
    else tell({ words: failedText(error), isWrong: true });
  }, []);
  const look = useCallback(() => api.room().then(setRoom, fail), [api, fail]);

  useEffect(() => {
    void look();
    const line = keepLinked(dialHost('/api/instructor/live'), {
      opened: () => line.send(JSON.stringify({ kind: 'hello', token })),
      said: (text) => {
        const message = toInstructorSchema.safeParse(JSON.parse(text));
        if (!message.success) return;
        if (message.data.kind === 'signedOut') takeToken(undefined, true);
        else setLive(message.data);
      },
      stands: setLink,
    });
    return line.close;
  }, [token, look]);

  // Somebody has closed a ticket: the counts of what is handed in have changed.
  const closed = live?.seats.filter(({ at }) => at?.phase === 'closed').length ?? 0;
  useEffect(() => void look(), [closed, look]);

  const run: ClassRoom['run'] = useCallback(
    async (work, done) => {
      tell({ words: '', isWrong: false });
      try {
        const answer = await work();
        if (done !== undefined) tell({ words: done(answer), isWrong: false });
        await look();
        return answer;
      } catch (error) {
        fail(error);
        return undefined;
      }
    },
    [look, fail],
  );
  return { api, room, seats: live?.seats ?? [], paused: live?.paused ?? room?.paused ?? false, link, told, run };
}
