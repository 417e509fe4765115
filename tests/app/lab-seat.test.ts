/** A trainee's place on the lab host, against a host of the test's own on the other end of the line: one that works a real attempt. */
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { Dial } from '../../src/app/lab/link.ts';
import { createSeat } from '../../src/app/lab/seat.ts';
import { secondsNow } from '../../src/app/lab/seat-state.ts';
import { findTicket, rigOf } from '../../src/app/library.ts';
import { type Action, sameAction } from '../../src/attempt/actions.ts';
import { type Attempt, begin, optionsOf, perform, viewOf } from '../../src/attempt/attempt.ts';
import { type FromHost, fromBrowserSchema, type SignedIn, wholeView } from '../../src/classroom/protocol.ts';

const TICKET = 'fanButNoCooling';
const SIGNED_IN: SignedIn = { token: 'x'.repeat(43), name: 'Ana', trainee: 'ana', idleSeconds: 900, assignments: [] };
const WALK: Action = { name: 'walk', to: 'furnace' };
const LOOK: Action = { name: 'wait', seconds: 15 };

/** The far end: what was dialled, what came, and what it answers with. */
function createFarEnd() {
  const ticket = findTicket(TICKET);
  if (ticket === undefined) throw new Error('the ticket is gone');
  const rig = rigOf(ticket);
  const attempt: Attempt = begin(ticket, rig);
  const heard: { kind: string; seq?: number }[] = [];
  let hears: Parameters<Dial>[0] | undefined;
  let dialled = 0;
  /** Answers that are kept back: the host has done it, the line does not bring it. */
  let isMute = false;
  /** Nothing reaches the host. */
  let isCut = false;
  let secondsLeft: number | undefined;

  const say = (message: FromHost) => {
    if (!isMute) hears?.said(JSON.stringify(message));
  };
  const shown = () => {
    const { steps, looks, places, ...view } = viewOf(attempt);
    return { view, still: { looks, places }, steps: [...steps], options: optionsOf(attempt) };
  };
  const left = () => (secondsLeft === undefined ? {} : { secondsLeft });

  function answer(text: string): void {
    if (isCut) return;
    const message = fromBrowserSchema.parse(JSON.parse(text));
    heard.push(message);
    if (message.kind === 'hello') say({ kind: 'welcome', paused: false, assignments: [] });
    if (message.kind === 'words') say({ kind: 'kept' });
    if (message.kind === 'leave') say({ kind: 'left', assignments: [] });
    if (message.kind === 'open') {
      const { view, still, steps, options } = shown();
      const { id, mode, complaint, weather } = attempt.job as typeof ticket & typeof attempt.job;
      const face = { id, rig: rig.id, mode, complaint, weather, naming: { intermittents: false, pairs: false } };
      const { assignment, item } = message;
      say({
        kind: 'opened',
        assignment,
        item,
        number: 1,
        rig,
        ticket: face,
        view,
        still,
        steps,
        options: [...options],
        words: '',
        ...left(),
      });
    }
    if (message.kind === 'act') {
      const { seq, action } = message;
      const taken = attempt.steps[seq - 1];
      if (taken === undefined) {
        const outcome = perform(attempt, action);
        if (!outcome.ok) {
          say({ kind: 'refused', seq, refusal: outcome.refusal });
          return;
        }
      } else if (!sameAction(taken.action, action)) throw new Error('sent otherwise');
      const { view, options, steps } = shown();
      const step = steps[seq - 1];
      if (step === undefined) throw new Error('no such step');
      say({ kind: 'acted', seq, step, view, options: [...options], ...left() });
    }
  }

  const dial: Dial = (by) => {
    dialled += 1;
    hears = by;
    return { send: answer, close: () => undefined };
  };
  return {
    dial,
    say,
    heard,
    attempt,
    dialled: () => dialled,
    connect: () => hears?.opened(),
    drop: () => hears?.closed(),
    mute: (on: boolean) => {
      isMute = on;
    },
    cut: (on: boolean) => {
      isCut = on;
    },
    limit: (seconds: number) => {
      secondsLeft = seconds;
    },
  };
}

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

function sitDown() {
  const far = createFarEnd();
  const seat = createSeat(far.dial);
  seat.begin(SIGNED_IN);
  far.connect();
  seat.openItem('exam', 0, false);
  return { far, seat };
}

describe('a place on the lab host', () => {
  test('shows what the host has done, step by step, as the bench would have it here', () => {
    const { far, seat } = sitDown();
    seat.act(WALK);
    seat.act(LOOK);
    const { open } = seat.get();
    expect(open?.entries.map(({ step }) => step.action.name)).toEqual(['walk', 'wait']);
    const view =
      open &&
      wholeView(
        open.still,
        open.view,
        open.entries.map(({ step }) => step),
      );
    expect(view).toEqual(JSON.parse(JSON.stringify(viewOf(far.attempt))));
  });

  test('does nothing itself: without an answer no step stands, and after 300 ms the wait is seen', () => {
    const { far, seat } = sitDown();
    far.mute(true);
    seat.act(WALK);
    expect(seat.get().open?.entries).toHaveLength(0);
    vi.advanceTimersByTime(299);
    expect(seat.get().waiting).toBe(false);
    vi.advanceTimersByTime(1);
    expect(seat.get().waiting).toBe(true);
  });

  test('a step whose answer was lost counts once, and those behind it go on', () => {
    const { far, seat } = sitDown();
    far.mute(true);
    seat.act(WALK);
    seat.act(LOOK);
    far.drop();
    expect(seat.get().link.state).toBe('lost');
    far.mute(false);
    vi.advanceTimersByTime(1000);
    far.connect();
    expect(seat.get().open?.entries.map(({ step }) => step.number)).toEqual([1, 2]);
    expect(far.attempt.steps.map(({ action }) => action.name)).toEqual(['walk', 'wait']);
  });

  test('a step that never came is sent again under its number', () => {
    const { far, seat } = sitDown();
    far.cut(true);
    seat.act(WALK);
    expect(far.attempt.steps).toHaveLength(0);
    far.drop();
    far.cut(false);
    vi.advanceTimersByTime(1000);
    far.connect();
    expect(far.heard.filter(({ kind }) => kind === 'act').map(({ seq }) => seq)).toEqual([1]);
    expect(seat.get().open?.entries.map(({ step }) => step.action.name)).toEqual(['walk']);
  });

  test('what is pressed while the line is lost is not done behind the trainee’s back', () => {
    const { far, seat } = sitDown();
    far.drop();
    seat.act(WALK);
    vi.advanceTimersByTime(1000);
    far.connect();
    expect(far.attempt.steps).toHaveLength(0);
  });

  test('what is pressed on a new line waits until the host has opened the work again, and is done then', () => {
    const { seat, far } = sitDown();
    far.drop();
    vi.advanceTimersByTime(60_000);
    far.mute(true);
    far.connect();
    far.heard.length = 0;
    seat.act(WALK);
    expect(far.heard.map(({ kind }) => kind)).toEqual([]);
    far.mute(false);
    far.say({ kind: 'welcome', paused: false, assignments: [] });
    expect(far.heard.map(({ kind }) => kind)).toEqual(['open', 'act']);
    expect(far.attempt.steps).toHaveLength(1);
    expect(seat.get().open?.entries).toHaveLength(1);
  });

  test('a line that answers nothing for eight seconds is given up, and dialled anew', () => {
    const { far, seat } = sitDown();
    far.mute(true);
    seat.act(WALK);
    vi.advanceTimersByTime(8000);
    expect(far.dialled()).toBe(2);
    far.mute(false);
    far.connect();
    expect(seat.get().open?.entries).toHaveLength(1);
    expect(far.attempt.steps).toHaveLength(1);
  });

  test('pauses between attempts to dial grow', () => {
    const { far } = sitDown();
    const pauses = [1, 2, 4, 8, 15, 15].map((seconds) => {
      far.drop();
      const before = far.dialled();
      vi.advanceTimersByTime(seconds * 1000 - 1);
      const early = far.dialled() - before;
      vi.advanceTimersByTime(1);
      return [early, far.dialled() - before];
    });
    expect(pauses).toEqual(pauses.map(() => [0, 1]));
  });

  test('a refusal says why, takes nothing, and drops what was pressed after it', () => {
    const { far, seat } = sitDown();
    far.mute(true);
    seat.act({ name: 'walk', to: 'nowhere' });
    seat.act(LOOK);
    far.mute(false);
    far.say({ kind: 'refused', seq: 1, refusal: { code: 'noSuchPlace', values: {} } as never });
    expect(seat.get().refused?.code).toBe('noSuchPlace');
    expect(far.attempt.steps).toHaveLength(0);
    seat.act(WALK);
    expect(seat.get().refused).toBeUndefined();
    expect(far.attempt.steps.map(({ action }) => action.name)).toEqual(['walk']);
  });

  test('while the room is paused nothing is sent and time stands still', () => {
    const { far, seat } = sitDown();
    far.limit(600);
    seat.act(WALK);
    vi.advanceTimersByTime(10_000);
    far.say({ kind: 'paused' });
    vi.advanceTimersByTime(60_000);
    expect(seat.get().left?.seconds).toBeCloseTo(590);
    seat.act(LOOK);
    expect(far.attempt.steps).toHaveLength(1);
    far.say({ kind: 'resumed', secondsLeft: 590 });
    vi.advanceTimersByTime(10_000);
    const { left } = seat.get();
    expect(left && secondsNow(left)).toBeCloseTo(580);
  });

  test('the end comes with its report, and no step is taken after it', () => {
    const { far, seat } = sitDown();
    far.say({ kind: 'ended', how: 'timeOver', report: {} as never });
    expect(seat.get().open?.over?.how).toBe('timeOver');
    seat.act(WALK);
    expect(far.attempt.steps).toHaveLength(0);
  });

  test('words that the line lost are sent again', () => {
    const { far, seat } = sitDown();
    far.mute(true);
    seat.write('The wire was open.');
    expect(seat.get().wordsKept).toBe(false);
    far.drop();
    far.mute(false);
    vi.advanceTimersByTime(1000);
    far.connect();
    expect(seat.get().wordsKept).toBe(true);
    expect(seat.get().open?.words).toBe('The wire was open.');
  });

  test('signing out leaves nothing, and nobody dials any more', () => {
    const { far, seat } = sitDown();
    seat.act(WALK);
    seat.end('self');
    const { signedIn, open, assignments, why } = seat.get();
    expect({ signedIn, open, assignments, why }).toEqual({ signedIn: undefined, open: undefined, assignments: [], why: 'self' });
    vi.advanceTimersByTime(60_000);
    expect(far.dialled()).toBe(1);
  });

  test('what is not of the protocol is not listened to', () => {
    const { far, seat } = sitDown();
    const before = seat.get();
    far.say({ kind: 'acted', seq: 'x' } as never);
    far.say({ kind: 'truth' } as never);
    expect(seat.get()).toBe(before);
  });
});
