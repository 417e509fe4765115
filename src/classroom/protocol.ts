/**
 * What a trainee's browser and the lab host say to each other. The world runs on the host: what crosses is what a person standing there
 * is told, sees and reads, never what is wrong. Everything from a browser is checked by these schemas before anything is done with it.
 *
 * Over HTTP: `POST /api/sign-in` and `POST /api/sign-out`; errors come as {@link Failure}. Over the WebSocket `/api/live`: the first message is
 * `hello`; after that the host answers each message, and tells of its own accord when the room is paused and when time is over.
 */
import { z } from 'zod';
import { type Action, actionSchema } from '../attempt/actions.ts';
import { JOB_MODES, type Job } from '../attempt/job.ts';
import type { Refusal } from '../attempt/kind.ts';
import type { BenchView, StepView } from '../attempt/view.ts';
import type { RigData } from '../rig/schema.ts';
import type { Ticket } from '../scenario/ticket.ts';
import type { ServiceReport } from '../score/report.ts';
import { codeSchema, paperSchema } from './assignment.ts';
import { instantSchema } from './instant.ts';
import { paperAnswers, paperMessages } from './paperProtocol.ts';

/** Longer messages from a browser are not read, bytes. */
export const LARGEST_MESSAGE = 16_384;
/** What a trainee may write in the service report, characters. */
export const LONGEST_WORDS = 4000;
/** Beyond it no attempt has steps (attempt.ts: 500, the naming and the closing). */
export const HIGHEST_SEQ = 502;

/** 32 bytes in base64url. */
export const tokenSchema = z.string().regex(/^[A-Za-z0-9_-]{43}$/);
export const classCodeSchema = z
  .string()
  .trim()
  .toUpperCase()
  .regex(/^[A-Z0-9]{4,12}$/);
export const pinSchema = z.string().regex(/^[0-9]{4,12}$/);

export const signInSchema = z.strictObject({ class: classCodeSchema, trainee: codeSchema, pin: pinSchema });
export type SignIn = z.infer<typeof signInSchema>;

const item = z.int().min(0).max(29);
/** What the latest attempt is. */
const state = z.enum(['new', 'running', 'closed', 'timeOver']);

/** Of the total, 0…1; left out where all count the same. */
const share = z.number().min(0).max(1).optional();

/** An assignment as its trainee finds it: what there is to do, and how far it is. */
export const listedSchema = z.strictObject({
  id: codeSchema,
  title: z.string(),
  note: z.string().optional(),
  mode: z.enum(JOB_MODES),
  /** How often each ticket may be tried. */
  attempts: z.int(),
  /** For one attempt, with what the instructor has added; no limit where left out. */
  minutes: z.number().optional(),
  opens: instantSchema.optional(),
  closes: instantSchema.optional(),
  /** Whether its hours are now. */
  isOpen: z.boolean(),
  items: z.array(
    z.strictObject({
      item,
      rig: z.string(),
      share,
      /** Attempts begun. */
      used: z.int(),
      state,
    }),
  ),
  /** Exercises and exams; their places are counted on from the tickets'. */
  papers: z.array(
    z.strictObject({
      item,
      setting: paperSchema,
      questions: z.int(),
      share,
      /** For one attempt; no limit where left out. */
      minutes: z.number().optional(),
      used: z.int(),
      state,
    }),
  ),
});
export type Listed = z.infer<typeof listedSchema>;

export const signedInSchema = z.strictObject({
  /** Shown to nobody and kept in this tab alone; sign-out ends it. */
  token: tokenSchema,
  name: z.string(),
  trainee: codeSchema,
  /** Signed out after this long without an action, seconds. */
  idleSeconds: z.int(),
  assignments: z.array(listedSchema),
});
export type SignedIn = z.infer<typeof signedInSchema>;

/** What went wrong: `code` is a key of `error:`, `path` where in the message or file it is. */
export interface Failure {
  readonly error: {
    readonly code: string;
    readonly path: string;
    readonly values: Readonly<Record<string, string | number>>;
  };
}

/** What a browser says on `/api/live`. */
export const fromBrowserSchema = z.discriminatedUnion('kind', [
  /** Always first. */
  z.strictObject({ kind: z.literal('hello'), token: tokenSchema }),
  /**
   * Takes up the latest attempt where it was left, or begins the first one. With `fresh` a further one is begun, where the latest is over
   * and the assignment allows it; without, one that is over opens with its report.
   */
  z.strictObject({ kind: z.literal('open'), assignment: codeSchema, item, fresh: z.boolean().optional() }),
  /**
   * The next step of the attempt that is open. `seq` is the number that the step will have: one more than there are. A message that is
   * sent again, because no answer came, is answered as it was, and done once.
   */
  z.strictObject({ kind: z.literal('act'), seq: z.int().min(1).max(HIGHEST_SEQ), action: actionSchema }),
  /** The trainee's own words in the service report, whole. */
  z.strictObject({ kind: z.literal('words'), text: z.string().max(LONGEST_WORDS) }),
  /** Goes back to the list; the attempt stays as it is. */
  z.strictObject({ kind: z.literal('leave') }),
  ...paperMessages,
]);
export type FromBrowser = z.infer<typeof fromBrowserSchema>;

/** The public face of a ticket: what its customer tells, and what a technician is allowed. It is the same for every fault with that story. */
export interface TicketFace {
  /** A shipped ticket's own, which its words go by; else one that says nothing. */
  readonly id: string;
  readonly rig: string;
  readonly mode: Ticket['mode'];
  /** Which words the customer has; a shipped ticket's go by its id. */
  readonly told?: Ticket['told'];
  readonly complaint: Pick<Job['complaint'], 'history' | 'observed'>;
  readonly weather: Job['weather'];
  readonly house?: Ticket['house'];
  readonly tools?: Job['tools'];
  readonly rubric?: Ticket['rubric'];
  /** What the naming offers beside each single lasting fault of the rig. */
  readonly naming: { readonly intermittents: boolean; readonly pairs: boolean };
}

/** A view without what does not change while an attempt lasts, and without its steps, which the browser has already. */
export type MovingView = Omit<BenchView, 'steps' | 'looks' | 'places'>;
export type StillView = Pick<BenchView, 'looks' | 'places'>;

const moving = z.custom<MovingView>((value) => typeof value === 'object' && value !== null);
const still = z.custom<StillView>((value) => typeof value === 'object' && value !== null);
const steps = z.custom<StepView>((value) => typeof value === 'object' && value !== null);
const options = z.array(z.custom<Action>((value) => typeof value === 'object' && value !== null));
const clock = {
  /** Left of this attempt by the host's clock, seconds; undefined: no limit. Stands still while the room is paused. */
  secondsLeft: z.number().optional(),
};

/** What the host says on `/api/live`. */
export const fromHostSchema = z.discriminatedUnion('kind', [
  /** The answer to `hello`. */
  z.strictObject({ kind: z.literal('welcome'), paused: z.boolean(), assignments: z.array(listedSchema) }),
  z.strictObject({
    kind: z.literal('opened'),
    assignment: codeSchema,
    item,
    /** Which attempt, from 1. */
    number: z.int().min(1),
    /** As it hangs in this house. */
    rig: z.custom<RigData>((value) => typeof value === 'object' && value !== null),
    ticket: z.custom<TicketFace>((value) => typeof value === 'object' && value !== null),
    /** With what is wrong: only where the assignment is not graded, so that coach, hints and debrief work as they do at home. */
    whole: z.custom<Ticket>((value) => typeof value === 'object' && value !== null).optional(),
    still,
    view: moving,
    steps: z.array(steps),
    /** Every discrete action that is allowed now. */
    options,
    words: z.string(),
    ...clock,
  }),
  z.strictObject({ kind: z.literal('acted'), seq: z.int(), step: steps, view: moving, options, ...clock }),
  /** The action cannot be done; nothing has changed, and `seq` is still to come. */
  z.strictObject({
    kind: z.literal('refused'),
    seq: z.int(),
    refusal: z.custom<Refusal>((value) => typeof value === 'object' && value !== null),
  }),
  /** The words are kept. */
  z.strictObject({ kind: z.literal('kept') }),
  /** The answer to `leave`. */
  z.strictObject({ kind: z.literal('left'), assignments: z.array(listedSchema) }),
  z.strictObject({ kind: z.literal('paused') }),
  z.strictObject({ kind: z.literal('resumed'), ...clock }),
  /** The instructor has added time. */
  z.strictObject({ kind: z.literal('time'), ...clock }),
  /** The open attempt is over; the report holds what was named and done, not what is true, and no score. */
  z.strictObject({
    kind: z.literal('ended'),
    how: z.enum(['closed', 'timeOver']),
    report: z.custom<ServiceReport>((value) => typeof value === 'object' && value !== null),
  }),
  ...paperAnswers(clock),
  /** No further message follows. */
  z.strictObject({ kind: z.literal('signedOut'), why: z.enum(['idle', 'elsewhere', 'ended']) }),
  /** What was asked for was not done; `seq` where it was an act, `question` where it was about one. */
  z.strictObject({
    kind: z.literal('error'),
    code: z.string(),
    path: z.string(),
    values: z.record(z.string(), z.union([z.string(), z.number()])),
    seq: z.int().optional(),
    question: z.int().optional(),
  }),
]);
export type FromHost = z.infer<typeof fromHostSchema>;

/** A view as the bench draws it, put together from what came with `opened` and what came since. */
export function wholeView(still: StillView, view: MovingView, steps: readonly StepView[]): BenchView {
  return { ...view, ...still, steps };
}
