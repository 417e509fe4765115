import { act } from '../attempt/act.ts';
import type { Action } from '../attempt/actions.ts';
import { begin } from '../attempt/attempt.ts';
import { drawView } from '../attempt/scene.ts';
import type { RigData } from '../rig/schema.ts';
import type { Ticket } from '../scenario/ticket.ts';
import { goBack, takeSnapshot } from '../suspects/snapshot.ts';
import { nextText } from './action-words.ts';

/** What to do from where a search stands, one instruction an action, each in the words of the moment when it would be done. */
export type Instruct = (soFar: readonly Action[], actions: readonly Action[]) => readonly string[];

/** Somebody who can say how to do things on a ticket's circuit. The bench is set up once, and gone back to. */
export function instructor(ticket: Ticket, rig: RigData): Instruct {
  const { bench } = begin(ticket, rig);
  const home = takeSnapshot(bench);
  return (soFar, actions) => {
    goBack(bench, home);
    for (const action of soFar) act(bench, action);
    return actions.map((action) => {
      const words = nextText(drawView(ticket, bench, [], 'working'), action);
      act(bench, action);
      return words;
    });
  };
}
