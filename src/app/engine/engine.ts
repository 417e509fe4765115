import type { RigData } from '../../rig/schema.ts';
import type { Ticket } from '../../scenario/ticket.ts';
import type { FromWorker, QuestionName, Questions, ToWorker } from './questions.ts';
import { startWorker } from './start-worker.ts';

/** A worker that reasons about one ticket. Answers come in the order of the questions. */
export interface Engine {
  /** @throws when the question could not be answered, or the worker has died */
  readonly ask: <Name extends QuestionName>(name: Name, ask: Questions[Name]['ask']) => Promise<Questions[Name]['answer']>;
}

interface Waiting {
  readonly resolve: (answer: never) => void;
  readonly reject: (reason: Error) => void;
}

interface Running {
  readonly ticket: Ticket['id'];
  readonly engine: Engine;
  readonly waiting: ReadonlyMap<number, Waiting>;
  readonly stop: () => void;
}

let running: Running | undefined;

/**
 * The engine of a ticket. There is one worker at a time: it goes on from the bench to the debrief, so that what is the same for every
 * attempt is worked out once, and ends when another ticket is opened or when it has died.
 */
export function engineFor(ticket: Ticket, rig: RigData): Engine {
  if (running?.ticket === ticket.id) return running.engine;
  running?.stop();
  running = start({ ticket, rig });
  return running.engine;
}

/**
 * An engine for what needs no open ticket: making and drawing tickets. What an earlier question still works on is given up, since
 * only its asker's newest question counts.
 */
export function engineAlone(): Engine {
  if (running?.ticket === ALONE && running.waiting.size === 0) return running.engine;
  running?.stop();
  running = start();
  return running.engine;
}

/** In place of a ticket's id, which is never empty. */
const ALONE = '';

/** Gives up whatever is being made or drawn. */
export const leaveMaking = (): void => leaveEngine(ALONE);

/** Lets go of a ticket's engine if it is still busy with what nobody waits for any more: the next one then starts afresh. */
export function leaveEngine(ticket: Ticket['id']): void {
  if (running?.ticket !== ticket || running.waiting.size === 0) return;
  running.stop();
}

function start(open?: { readonly ticket: Ticket; readonly rig: RigData }): Running {
  const worker = startWorker();
  const waiting = new Map<number, Waiting>();
  let last = 0;
  let stopped = false;
  const send = (message: ToWorker) => worker.postMessage(message);
  const stop = () => {
    stopped = true;
    worker.terminate();
    if (running?.engine === engine) running = undefined;
    for (const each of waiting.values()) each.reject(new Error('the engine has stopped'));
    waiting.clear();
  };
  const engine: Engine = {
    ask(name, ask) {
      return new Promise((resolve, reject) => {
        if (stopped) {
          reject(new Error('the engine has stopped'));
          return;
        }
        last += 1;
        waiting.set(last, { resolve, reject });
        send({ kind: 'ask', number: last, name, ask } as ToWorker);
      });
    },
  };
  worker.onmessage = ({ data }: MessageEvent<FromWorker>) => {
    const asked = waiting.get(data.number);
    waiting.delete(data.number);
    if ('failed' in data) asked?.reject(new Error(data.failed));
    else asked?.resolve(data.answer as never);
  };
  // A worker that could not be fetched, ran out of memory or threw outside a question.
  worker.onerror = stop;
  worker.onmessageerror = stop;
  if (open !== undefined) send({ kind: 'open', ...open });
  return { ticket: open?.ticket.id ?? ALONE, engine, waiting, stop };
}
