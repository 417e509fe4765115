import type { Action, HintDepth } from '../../attempt/actions.ts';
import type { AttemptLog } from '../../attempt/attempt.ts';
import type { Submission } from '../../classroom/submission.ts';
import type { Item } from '../../drills/item.ts';
import type { RigData } from '../../rig/schema.ts';
import type { Ticket } from '../../scenario/ticket.ts';
import type { Debrief } from '../../score/debrief.ts';
import type { Hint } from '../../suspects/hints.ts';
import type { StillPossible } from '../../suspects/possible.ts';
import type { WayTree } from '../../suspects/wayTree.ts';
import type { Marked, Review, Roll } from './grading.ts';
import type { Drawn, Examined, Recipe, Survey } from './making.ts';

/** A test that would have told most for its time: what to do, how long that takes, and what it could be expected to tell. */
export interface Better {
  readonly actions: readonly Action[];
  readonly seconds: number;
  readonly gainBits: number;
}

/** What the engine is asked, and what it answers. A question carries the whole search so far, so that none depends on an earlier one. */
export interface Questions {
  readonly possible: { readonly ask: { readonly actions: readonly Action[] }; readonly answer: readonly StillPossible[] };
  readonly hint: { readonly ask: { readonly actions: readonly Action[]; readonly depth: HintDepth }; readonly answer: Hint };
  /** Gets the short way ready, so that the debrief is there sooner. */
  readonly prepare: { readonly ask: Record<never, never>; readonly answer: null };
  readonly debrief: { readonly ask: { readonly log: AttemptLog; readonly mode: Ticket['mode'] }; readonly answer: Debrief };
  /** `step`: from 1. Null where nothing would have told anything. */
  readonly better: { readonly ask: { readonly actions: readonly Action[]; readonly step: number }; readonly answer: Better | null };
  /** Whether a ticket that is being made stands, and what its customer could tell. No ticket need be open. */
  readonly examine: { readonly ask: { readonly json: unknown; readonly rig: RigData }; readonly answer: Examined };
  /** How hard a sound ticket is. `rig`: as it hangs in that ticket's house. */
  readonly survey: { readonly ask: { readonly ticket: Ticket; readonly rig: RigData }; readonly answer: Survey };
  /** The next draw of a recipe: asked again, it goes on from the last. */
  readonly draw: { readonly ask: { readonly recipe: Recipe; readonly rig: RigData }; readonly answer: Drawn };
  /** The item of a kind's number, or of the next number that has one; null where none of them has. `rig`: the one of that number's house. */
  readonly drill: {
    readonly ask: { readonly kind: string; readonly number: number; readonly rig: RigData };
    readonly answer: Item | null;
  };
  /** Opens an assignment, whose submissions are then graded. No ticket need be open. */
  readonly roll: { readonly ask: Roll; readonly answer: null };
  readonly grade: { readonly ask: { readonly submission: unknown }; readonly answer: Marked };
  /** Of the same assignment: what a report tells of an attempt; null where it does not replay. */
  readonly review: { readonly ask: { readonly submission: Submission }; readonly answer: Review | null };
  readonly tree: { readonly ask: Record<never, never>; readonly answer: WayTree };
}

export type QuestionName = keyof Questions;

export type ToWorker =
  | { readonly kind: 'open'; readonly ticket: Ticket; readonly rig: RigData }
  | {
      [Name in QuestionName]: {
        readonly kind: 'ask';
        readonly number: number;
        readonly name: Name;
        readonly ask: Questions[Name]['ask'];
      };
    }[QuestionName];

export type FromWorker =
  | { readonly number: number; readonly name: QuestionName; readonly answer: Questions[QuestionName]['answer'] }
  | { readonly number: number; readonly failed: string };
