/**
 * The paper that is open at a trainee's place: its questions as they come, and choices on their way to the host, one at a time. Nothing counts as
 * chosen before the host has kept it.
 */
import type { FromBrowser, FromHost } from '../../classroom/protocol.ts';
import type { OpenPaper, SeatState } from './seat-state.ts';
import type { OwnStore } from './store.ts';

type Said<Kind extends FromHost['kind']> = Extract<FromHost, { kind: Kind }>;

interface Needs {
  readonly store: OwnStore<SeatState>;
  readonly say: (message: FromBrowser) => void;
  /** An answer is waited for: it is shown after a while, and in the end the line is given up. */
  readonly wait: () => void;
  readonly calm: () => void;
}

export interface PaperPlace {
  readonly opened: (message: Said<'paper'>) => void;
  readonly hear: (message: Said<'question' | 'chosen' | 'paperOver'>) => void;
  /** What was asked for was not done. */
  readonly failed: (failure: Said<'error'>) => void;
  /** Says again what has not been answered. */
  readonly pump: () => void;
  readonly choose: (question: number, choice: number) => void;
  readonly turnTo: (question: number) => void;
  readonly handIn: () => void;
}

const replaced = <T>(all: readonly T[], place: number, by: T): readonly T[] =>
  all.map((each, index) => (index === place ? by : each));

export function createPaperPlace({ store, say, wait, calm }: Needs): PaperPlace {
  let handingIn = false;

  const set = (change: Partial<OpenPaper>) => {
    const { paper } = store.get();
    if (paper !== undefined) store.set({ paper: { ...paper, ...change } });
  };

  /** The open paper where it can be worked on now. */
  function workable(): OpenPaper | undefined {
    const { paper, paused, link } = store.get();
    return paper !== undefined && paper.over === undefined && !paused && link.state === 'open' ? paper : undefined;
  }

  function pump(): void {
    const paper = workable();
    if (paper === undefined) return;
    if (paper.sent !== undefined) {
      say({ kind: 'choose', ...paper.sent });
      wait();
    } else if (handingIn) {
      say({ kind: 'handIn' });
      wait();
    } else if (paper.faces[paper.at] === undefined) say({ kind: 'ask', question: paper.at });
  }

  function answered(change: Partial<OpenPaper>): void {
    calm();
    store.set({ waiting: false, failed: undefined });
    set(change);
  }

  return {
    opened({ kind: _, choices, over, secondsLeft: _seconds, ...told }) {
      const { paper } = store.get();
      const same = paper?.assignment === told.assignment && paper.item === told.item && paper.number === told.number;
      const sent = same ? paper.sent : undefined;
      // It was kept before the line was lost: only its answer was.
      const isKept = sent !== undefined && choices[sent.question] === sent.choice;
      if (!same) handingIn = false;
      store.set({
        failed: undefined,
        open: undefined,
        paper: {
          ...told,
          choices,
          over,
          at: same ? paper.at : Math.max(0, choices.indexOf(null)),
          sent: isKept ? undefined : sent,
          faces: same ? paper.faces : choices.map(() => undefined),
        },
      });
      pump();
    },
    hear(message) {
      const { paper } = store.get();
      if (paper === undefined) return;
      if (message.kind === 'question') set({ faces: replaced(paper.faces, message.question, message.face) });
      else if (message.kind === 'paperOver') answered({ over: message.how, sent: undefined });
      else {
        const { question, choice } = message;
        const isLast = paper.sent?.question === question && paper.sent.choice === choice;
        const choices = replaced(paper.choices, question, choice);
        if (isLast) answered({ choices, sent: undefined });
        else set({ choices });
        if (isLast) pump();
      }
    },
    failed({ code, question }) {
      if (code === 'lab.paused') return;
      handingIn = false;
      if (question !== undefined && store.get().paper?.sent?.question === question) {
        calm();
        set({ sent: undefined });
      }
    },
    pump,
    choose(question, choice) {
      const paper = workable();
      if (paper === undefined || paper.sent !== undefined || handingIn || paper.choices[question] === choice) return;
      set({ sent: { question, choice } });
      pump();
    },
    turnTo(question) {
      const paper = store.get().paper;
      if (paper === undefined) return;
      set({ at: question });
      // Asked for again where it is here already: the host knows by it which one is on the screen.
      if (workable() !== undefined) say({ kind: 'ask', question });
    },
    handIn() {
      if (workable() === undefined) return;
      handingIn = true;
      if (store.get().paper?.sent === undefined) pump();
    },
  };
}
