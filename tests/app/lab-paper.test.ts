/** A trainee's place at a paper on the lab host, against a host of the test's own on the other end of the line. */
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import type { Dial } from '../../src/app/lab/link.ts';
import { createSeat } from '../../src/app/lab/seat.ts';
import type { QuestionFace } from '../../src/classroom/paperProtocol.ts';
import { type FromBrowser, type FromHost, fromBrowserSchema, fromHostSchema, type SignedIn } from '../../src/classroom/protocol.ts';

const SIGNED_IN: SignedIn = { token: 'x'.repeat(43), name: 'Ana', trainee: 'ana', idleSeconds: 900, assignments: [] };
const faceOf = (question: number): QuestionFace => ({
  ...{ kind: 'reading', skill: 'readings', rig: 'trainingBoard', moves: [], given: [], marked: [] },
  ask: { key: 'reading', values: { place: { is: 'number', value: question } } },
  choices: [],
});

function sitDown() {
  const heard: FromBrowser[] = [];
  const kept: (number | null)[] = [null, null, null];
  let hears: Parameters<Dial>[0] | undefined;
  let isMute = false;
  let isPaused = false;
  let over: 'closed' | undefined;
  const say = (message: FromHost) => {
    expect(fromHostSchema.safeParse(message).error).toBeUndefined();
    if (!isMute) hears?.said(JSON.stringify(message));
  };
  function answer(text: string): void {
    const message = fromBrowserSchema.parse(JSON.parse(text));
    heard.push(message);
    if (message.kind === 'hello') say({ kind: 'welcome', paused: isPaused, assignments: [] });
    else if (message.kind === 'open') {
      const { assignment, item } = message;
      say({ kind: 'paper', assignment, item, number: 1, choices: [...kept], secondsLeft: 60, ...(over ? { over } : {}) });
    } else if (message.kind === 'leave') say({ kind: 'left', assignments: [] });
    else if (isPaused) {
      const about = 'question' in message ? { question: message.question } : {};
      say({ kind: 'error', code: 'lab.paused', path: 'kind', values: {}, ...about });
    } else if (message.kind === 'ask') say({ kind: 'question', question: message.question, face: faceOf(message.question) });
    else if (message.kind === 'choose') {
      kept[message.question] = message.choice;
      say({ ...message, kind: 'chosen' });
    } else if (message.kind === 'handIn') {
      over = 'closed';
      say({ kind: 'paperOver', how: 'closed' });
    }
  }
  const seat = createSeat((by) => {
    hears = by;
    return { send: answer, close: () => undefined };
  });
  seat.begin(SIGNED_IN);
  hears?.opened();
  seat.openItem('exam', 2, false);
  return {
    seat,
    heard,
    kept,
    mute: (on: boolean) => {
      isMute = on;
    },
    pause: (on: boolean) => {
      isPaused = on;
    },
    say,
    drop: () => hears?.closed(),
    connect: () => hears?.opened(),
    count: (kind: FromBrowser['kind']) => heard.filter((each) => each.kind === kind).length,
  };
}

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

test('shows one question after another, and counts as chosen only what the host has kept', () => {
  const { seat, mute, count } = sitDown();
  expect(seat.get().paper).toMatchObject({ at: 0, choices: [null, null, null], faces: [faceOf(0), undefined, undefined] });
  seat.choose(0, 2);
  expect(seat.get().paper).toMatchObject({ choices: [2, null, null], sent: undefined });
  seat.turnTo(1);
  mute(true);
  seat.choose(1, 1);
  // Another one waits until the first is answered.
  seat.choose(1, 0);
  expect(seat.get().paper).toMatchObject({ at: 1, choices: [2, null, null], sent: { question: 1, choice: 1 } });
  expect(count('choose')).toBe(2);
  vi.advanceTimersByTime(300);
  expect(seat.get().waiting).toBe(true);
});

test('a choice whose answer was lost with the line is not sent again; one that did not arrive is', () => {
  const { seat, mute, drop, connect, kept, count } = sitDown();
  mute(true);
  seat.choose(0, 2);
  drop();
  expect(seat.get().paper?.choices).toEqual([null, null, null]);
  // Nothing is chosen while the line is lost.
  seat.choose(1, 1);
  mute(false);
  vi.advanceTimersByTime(1000);
  connect();
  expect(seat.get().paper).toMatchObject({ choices: [2, null, null], sent: undefined, faces: [faceOf(0), undefined, undefined] });
  expect(count('choose')).toBe(1);

  mute(true);
  seat.choose(0, 3);
  kept[0] = 2;
  drop();
  mute(false);
  vi.advanceTimersByTime(1000);
  connect();
  expect(seat.get().paper).toMatchObject({ choices: [3, null, null], sent: undefined });
  expect(count('choose')).toBe(3);
});

test('waits out a pause, then says what was on its way', () => {
  const { seat, pause, say, count, kept } = sitDown();
  pause(true);
  seat.choose(0, 1);
  expect(seat.get()).toMatchObject({ paused: true, failed: undefined, paper: { sent: { question: 0, choice: 1 } } });
  seat.choose(1, 1);
  seat.turnTo(2);
  expect(count('ask')).toBe(1);
  pause(false);
  say({ kind: 'resumed', secondsLeft: 30 });
  expect(kept).toEqual([1, null, null]);
  expect(seat.get().paper).toMatchObject({ at: 2, choices: [1, null, null], faces: [faceOf(0), undefined, faceOf(2)] });
});

test('is handed in after the last choice is kept, and stays over', () => {
  const { seat, mute, say, count } = sitDown();
  mute(true);
  seat.choose(0, 1);
  seat.handIn();
  expect(count('handIn')).toBe(0);
  mute(false);
  say({ kind: 'chosen', question: 0, choice: 1 });
  expect(seat.get().paper).toMatchObject({ choices: [1, null, null], over: 'closed' });
  seat.choose(1, 1);
  expect(count('choose')).toBe(1);
  seat.stay();
  seat.leave();
  expect(seat.get().paper).toBeUndefined();
  seat.openItem('exam', 2, false);
  expect(seat.get().paper).toMatchObject({ over: 'closed' });
});
