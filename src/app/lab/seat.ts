/**
 * A trainee's place on the lab host, as the browser sees it: who is signed in, what is open, what waits for an answer. All of it is in
 * memory and gone with the tab. Nothing is done here before the host has done it.
 */
import type { Action } from '../../attempt/actions.ts';
import type { FromBrowser, FromHost } from '../../classroom/protocol.ts';
import { fromHostSchema } from '../../classroom/protocol.ts';
import { type Dial, keepLinked, type Link } from './link.ts';
import { createPaperPlace } from './paper-place.ts';
import { EMPTY, type Entry, type Seat, type SeatState, secondsNow, type Why } from './seat-state.ts';
import { storeOf } from './store.ts';
import { createWaits } from './waits.ts';

/** What was written too fast is written again after this, milliseconds. */
const AGAIN = 1000;
/** Steps that a hand may be ahead of the host. */
const MOST_QUEUED = 8;

type Said<Kind extends FromHost['kind']> = Extract<FromHost, { kind: Kind }>;

export function createSeat(dial: Dial): Seat {
  const store = storeOf<SeatState>(EMPTY);
  let link: Link | undefined;
  /** What the trainee wants to be open. */
  let wanted: { readonly assignment: string; readonly item: number; readonly fresh: boolean } | undefined;
  let pending: { readonly seq: number; readonly action: Action } | undefined;
  let queue: Action[] = [];
  /** The line is new, and the host has not opened again what was open: a step would come before it. */
  let isReopening = false;
  let unkept: string | undefined;

  const { later, wait, calm } = createWaits(
    () => store.set({ waiting: true }),
    () => link?.redial(),
  );

  const say = (message: FromBrowser) => {
    link?.send(JSON.stringify(message));
    store.set({ saidAt: performance.now() });
  };

  const leftOf = (secondsLeft: number | undefined) => ({
    left: secondsLeft === undefined ? undefined : { seconds: secondsLeft, at: performance.now() },
  });

  const place = createPaperPlace({ store, say, wait, calm });

  /** Sends the step that is due, where one is. */
  function pump(): void {
    const { open, paused, link: line } = store.get();
    if (open === undefined || paused || isReopening || line.state !== 'open') return;
    if (pending === undefined) {
      const action = queue.shift();
      if (action === undefined) return;
      pending = { seq: open.entries.length + 1, action };
    }
    say({ kind: 'act', ...pending });
    wait();
  }

  function answered(): void {
    pending = undefined;
    calm();
    store.set({ waiting: false });
  }

  function forgetSteps(): void {
    answered();
    queue = [];
  }

  function askToOpen(): void {
    if (wanted === undefined) return;
    const { fresh, ...what } = wanted;
    say({ kind: 'open', ...what, ...(fresh ? { fresh } : {}) });
  }

  function opened({ kind: _, steps, secondsLeft, ...told }: Said<'opened'>): void {
    const { open } = store.get();
    isReopening = false;
    const same = open?.assignment === told.assignment && open.item === told.item && open.number === told.number;
    if (wanted) wanted = { ...wanted, fresh: false };
    const known = same ? open.entries.slice(0, steps.length) : [];
    const entries = steps.map((step, index): Entry => known[index] ?? { step, view: told.view });
    if (!same) forgetSteps();
    // It was done before the line was lost: only its answer was.
    else if (pending !== undefined && pending.seq <= steps.length) answered();
    store.set({
      ...leftOf(secondsLeft),
      refused: undefined,
      failed: undefined,
      paper: undefined,
      open: {
        ...told,
        // What is drawn goes by the rig: the same one stays.
        rig: same ? open.rig : told.rig,
        words: unkept ?? told.words,
        entries,
        before: same ? open.before : steps.length,
        over: undefined,
      },
    });
    if (unkept !== undefined) say({ kind: 'words', text: unkept });
    pump();
  }

  function acted({ seq, step, view, options, secondsLeft }: Said<'acted'>): void {
    const { open } = store.get();
    if (open === undefined || seq !== pending?.seq || seq !== open.entries.length + 1) return;
    answered();
    store.set({
      ...leftOf(secondsLeft),
      refused: undefined,
      failed: undefined,
      open: { ...open, view, options, entries: [...open.entries, { step, view }] },
    });
    pump();
  }

  function goOn(): void {
    pump();
    place.pump();
  }

  function failed(message: Said<'error'>): void {
    const { kind: _, seq, question: _question, ...failure } = message;
    if (failure.code === 'lab.tooFast') {
      later('again', AGAIN, goOn);
      return;
    }
    place.failed(message);
    // The host has other steps than this page: what it has counts.
    const astray = failure.code === 'lab.seqAhead' || failure.code === 'lab.seqTaken';
    if (seq !== undefined && seq === pending?.seq) forgetSteps();
    else if (seq === undefined && isReopening) {
      isReopening = false;
      forgetSteps();
    }
    if (failure.code === 'lab.paused') store.set({ paused: true });
    else if (astray) askToOpen();
    else {
      if (store.get().open === undefined && store.get().paper === undefined) wanted = undefined;
      store.set({ failed: failure });
    }
  }

  function hear(message: FromHost): void {
    const { open, left } = store.get();
    switch (message.kind) {
      case 'welcome':
        store.set({ paused: message.paused, assignments: message.assignments });
        askToOpen();
        return;
      case 'opened':
        opened(message);
        return;
      case 'paper':
        isReopening = false;
        forgetSteps();
        if (wanted) wanted = { ...wanted, fresh: false };
        store.set(leftOf(message.secondsLeft));
        place.opened(message);
        return;
      case 'question':
      case 'chosen':
      case 'paperOver':
        place.hear(message);
        return;
      case 'acted':
        acted(message);
        return;
      case 'refused':
        if (message.seq !== pending?.seq) return;
        forgetSteps();
        store.set({ refused: message.refusal });
        return;
      case 'kept':
        unkept = undefined;
        store.set({ wordsKept: true });
        return;
      case 'left':
        store.set({
          assignments: message.assignments,
          ...(wanted === undefined ? { open: undefined, paper: undefined, left: undefined } : {}),
        });
        return;
      case 'paused':
        store.set({ paused: true, ...(left === undefined ? {} : { left: { seconds: secondsNow(left), at: performance.now() } }) });
        return;
      case 'resumed':
        store.set({ paused: false, ...leftOf(message.secondsLeft) });
        goOn();
        return;
      case 'time':
        store.set(leftOf(message.secondsLeft));
        return;
      case 'ended':
        forgetSteps();
        if (open !== undefined) store.set({ open: { ...open, over: { how: message.how, report: message.report } } });
        return;
      case 'signedOut':
        end(message.why);
        return;
      case 'error':
        failed(message);
    }
  }

  function end(why: Why): void {
    link?.close();
    link = undefined;
    wanted = undefined;
    unkept = undefined;
    forgetSteps();
    store.set({ ...EMPTY, why });
  }

  return {
    get: store.get,
    watch: store.watch,
    begin(signedIn) {
      end('self');
      store.set({ ...EMPTY, signedIn, assignments: signedIn.assignments, saidAt: performance.now() });
      link = keepLinked(dial, {
        opened: () => {
          isReopening = wanted !== undefined;
          say({ kind: 'hello', token: signedIn.token });
        },
        said: (text) => {
          const message = messageIn(text);
          if (message !== undefined) hear(message);
        },
        stands: (state) => {
          calm();
          store.set({ link: state, waiting: false });
        },
      });
    },
    openItem(assignment, item, fresh) {
      wanted = { assignment, item, fresh };
      store.set({ failed: undefined });
      askToOpen();
    },
    act(action) {
      const { open, paused, link: line } = store.get();
      const isTaken = open !== undefined && open.over === undefined && !paused && line.state === 'open';
      if (!isTaken || queue.length >= MOST_QUEUED) return;
      queue.push(action);
      if (pending === undefined) pump();
    },
    write(words) {
      const { open } = store.get();
      if (open === undefined) return;
      unkept = words;
      store.set({ open: { ...open, words }, wordsKept: false });
      say({ kind: 'words', text: words });
    },
    leave() {
      wanted = undefined;
      say({ kind: 'leave' });
    },
    choose: place.choose,
    turnTo: place.turnTo,
    handIn: place.handIn,
    stay() {
      const { open, paper } = store.get();
      if (paper !== undefined) say({ kind: 'ask', question: paper.at });
      else say(open === undefined ? { kind: 'leave' } : { kind: 'words', text: open.words });
    },
    end,
  };
}

function messageIn(text: string): FromHost | undefined {
  try {
    const parsed = fromHostSchema.safeParse(JSON.parse(text));
    return parsed.success ? parsed.data : undefined;
  } catch {
    return undefined;
  }
}
