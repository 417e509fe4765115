/** The guide as data: its ideas in order, each with a condition that says when it is fulfilled and what would bring it forward. */
import type { Action } from '../../attempt/actions.ts';
import type { BenchView } from '../../attempt/view.ts';
import { CAUSE, CLOSET, ENDS, type Facts, factsOf, GUIDED_TICKET, OUTSIDE } from './facts.ts';
import { at, putBack } from './put-back.ts';

interface Idea {
  /** Its words are `guided:idea.ID.what` and `.why`. */
  readonly id: string;
  /** Whether there is nothing left to do for it. */
  readonly done: (view: BenchView, facts: Facts) => boolean;
  /** What would bring it forward now; undefined where nobody can say. */
  readonly next: (view: BenchView, facts: Facts) => Action | undefined;
}

/** The cause is found, or nothing more can be found out about it. */
const found = ({ seen, namedRight, repaired }: Facts) => seen !== undefined || namedRight || repaired;
const showing = ({ measured }: Facts) => measured !== undefined;
const onEnd = (view: BenchView, lead: 'red' | 'black') => ENDS.find((end) => end === view.meter[lead]);
const otherEnd = (end: string | undefined) => (end === ENDS[0] ? ENDS[1] : ENDS[0]);
const probe = (lead: 'red' | 'black', to: string): Action => ({ name: 'probe', lead, at: to });
const LONG_WAIT: Action = { name: 'wait', seconds: 300 };

/** Waiting helps when a guard against short cycling holds the call back; twice is enough for any. */
const waitedEnough = (view: BenchView) =>
  view.steps.slice(-2).every(({ action }) => action.name === 'wait' || action.name === 'watch');
const wait = (view: BenchView) => (view.steps.length > 1 && waitedEnough(view) ? undefined : LONG_WAIT);

/** Every idea in its order. `putBack` and `wait` are shown only where what was done before keeps a later one from working. */
export const IDEAS: readonly Idea[] = [
  {
    id: 'putBack',
    done: (view, facts) => found(facts) || showing(facts) || putBack(view) === undefined,
    next: putBack,
  },
  {
    id: 'furnace',
    done: (view, facts) => found(facts) || showing(facts) || view.place === CLOSET,
    next: (view) => at(view, CLOSET, undefined),
  },
  {
    id: 'volts',
    done: (view, facts) => found(facts) || showing(facts) || view.meter.fn === 'voltsAc',
    next: () => ({ name: 'meter', fn: 'voltsAc' }),
  },
  {
    id: 'red',
    done: (view, facts) => found(facts) || showing(facts) || onEnd(view, 'red') !== undefined,
    next: (view) => probe('red', otherEnd(onEnd(view, 'black') ?? ENDS[1])),
  },
  {
    id: 'black',
    done: (view, facts) => found(facts) || showing(facts) || onEnd(view, 'black') === otherEnd(onEnd(view, 'red')),
    next: (view) => probe('black', otherEnd(onEnd(view, 'red'))),
  },
  { id: 'wait', done: (_view, facts) => found(facts) || showing(facts), next: wait },
  {
    id: 'look',
    done: (_view, facts) => found(facts),
    next: (view) => at(view, CLOSET, { name: 'look', part: CAUSE.target }),
  },
  {
    id: 'name',
    done: (_view, { named }) => named,
    next: (_view, { measured, seen }) => ({
      name: 'name',
      ...CAUSE,
      evidence: [measured, seen].filter((each) => each !== undefined).sort((a, b) => a - b),
    }),
  },
  {
    id: 'repair',
    done: (_view, { repaired }) => repaired,
    next: (view) => at(view, CLOSET, { name: 'replace', target: CAUSE.target }),
  },
  { id: 'putBack', done: (view) => putBack(view) === undefined, next: putBack },
  {
    id: 'blower',
    done: (view, { heardBlower }) => heardBlower || view.place === CLOSET,
    next: (view) => at(view, CLOSET, undefined),
  },
  { id: 'wait', done: (_view, { heardBlower }) => heardBlower, next: wait },
  {
    id: 'outdoor',
    done: (view, { heardCompressor }) => heardCompressor || view.place === OUTSIDE,
    next: (view) => at(view, OUTSIDE, undefined),
  },
  { id: 'wait', done: (_view, { heardCompressor }) => heardCompressor, next: wait },
  { id: 'close', done: (view) => view.phase === 'closed', next: () => ({ name: 'close' }) },
];

/** The ideas that everybody is shown who follows the guide, in order: what "idea 3 of 9" counts. */
const COUNTED: readonly string[] = ['furnace', 'volts', 'red', 'black', 'look', 'name', 'repair', 'outdoor', 'close'];

export interface Guide {
  /** An idea's id, or `aside`: the guide has nothing to say to what was done. */
  readonly id: string;
  /** Place among the ideas that everybody is shown; undefined where it is none of them. */
  readonly number: number | undefined;
  readonly of: number;
  /** What would bring the idea forward now. */
  readonly action: Action | undefined;
  /** Something of the past that must be said: a naming or a repair that does not fit. */
  readonly note: 'wrongName' | 'wrongPart' | undefined;
}

/** What the guide says to an attempt as it stands; undefined on another ticket, and when it is over. */
export function guideAt(view: BenchView): Guide | undefined {
  if (view.ticket !== GUIDED_TICKET || view.phase === 'closed') return undefined;
  const facts = factsOf(view);
  const idea = IDEAS.find((each) => !each.done(view, facts));
  const action = idea?.next(view, facts);
  const id = idea === undefined || action === undefined ? 'aside' : idea.id;
  const place = COUNTED.indexOf(id);
  return {
    id,
    number: place < 0 ? undefined : place + 1,
    of: COUNTED.length,
    action,
    note: facts.named && !facts.namedRight ? 'wrongName' : facts.replacedOther && !facts.repaired ? 'wrongPart' : undefined,
  };
}
