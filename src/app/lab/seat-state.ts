/** What a trainee's place on the lab host is made of. */
import type { Action } from '../../attempt/actions.ts';
import type { Refusal } from '../../attempt/kind.ts';
import type { StepView } from '../../attempt/view.ts';
import type { QuestionFace } from '../../classroom/paperProtocol.ts';
import type { Failure, FromHost, Listed, MovingView, SignedIn, StillView, TicketFace } from '../../classroom/protocol.ts';
import type { RigData } from '../../rig/schema.ts';
import type { ServiceReport } from '../../score/report.ts';
import type { LinkState } from './link.ts';
import type { Store } from './store.ts';

/** A step, and the view right after it; after a reload only the last view is there, and stands for those before. */
export interface Entry {
  readonly step: StepView;
  readonly view: MovingView;
}

/** The attempt that is open. */
export interface Opened {
  readonly assignment: string;
  readonly item: number;
  /** Which attempt, from 1. */
  readonly number: number;
  readonly rig: RigData;
  readonly ticket: TicketFace;
  readonly still: StillView;
  readonly view: MovingView;
  readonly entries: readonly Entry[];
  /** So many of them were there when it was opened. */
  readonly before: number;
  readonly options: readonly Action[];
  readonly words: string;
  readonly over: { readonly how: 'closed' | 'timeOver'; readonly report: ServiceReport } | undefined;
}

/** The paper that is open. */
export interface OpenPaper {
  readonly assignment: string;
  readonly item: number;
  /** Which attempt, from 1. */
  readonly number: number;
  /** The question on the screen, from 0. */
  readonly at: number;
  /** What the host has kept, by question. */
  readonly choices: readonly (number | null)[];
  /** A choice on its way to the host. */
  readonly sent: { readonly question: number; readonly choice: number } | undefined;
  /** By question: as it came, null where there is nothing to ask, undefined where it has not come. */
  readonly faces: readonly (QuestionFace | null | undefined)[];
  readonly over: 'closed' | 'timeOver' | undefined;
}

export type Why = Extract<FromHost, { kind: 'signedOut' }>['why'] | 'self';

export interface SeatState {
  readonly signedIn: SignedIn | undefined;
  /** Why nobody is signed in any more. */
  readonly why: Why | undefined;
  readonly link: LinkState;
  readonly paused: boolean;
  readonly assignments: readonly Listed[];
  readonly open: Opened | undefined;
  readonly paper: OpenPaper | undefined;
  /** Time left as the host last said it, seconds, and when that was by `performance.now()`; undefined: no limit. */
  readonly left: { readonly seconds: number; readonly at: number } | undefined;
  /** An answer takes longer than one waits without noticing. */
  readonly waiting: boolean;
  readonly refused: Refusal | undefined;
  readonly failed: Failure['error'] | undefined;
  /** What was written has been kept by the host. */
  readonly wordsKept: boolean;
  /** When something was last said to the host, by `performance.now()`. */
  readonly saidAt: number;
}

export interface Seat extends Store<SeatState> {
  readonly begin: (signedIn: SignedIn) => void;
  readonly openItem: (assignment: string, item: number, fresh: boolean) => void;
  readonly act: (action: Action) => void;
  readonly write: (words: string) => void;
  /** Chooses at a question of the open paper. */
  readonly choose: (question: number, choice: number) => void;
  /** Has another of its questions on the screen. */
  readonly turnTo: (question: number) => void;
  readonly handIn: () => void;
  readonly leave: () => void;
  /** Tells the host that somebody is still there. */
  readonly stay: () => void;
  readonly end: (why: Why) => void;
}

export const EMPTY: SeatState = {
  signedIn: undefined,
  why: undefined,
  link: { state: 'dialling' },
  paused: false,
  assignments: [],
  open: undefined,
  paper: undefined,
  left: undefined,
  waiting: false,
  refused: undefined,
  failed: undefined,
  wordsKept: true,
  saidAt: 0,
};

/** What is left of a time that runs, seconds. */
export function secondsNow({ seconds, at }: NonNullable<SeatState['left']>): number {
  return Math.max(0, seconds - (performance.now() - at) / 1000);
}
