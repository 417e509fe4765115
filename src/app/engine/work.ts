/** The worker that reasons about one ticket: it takes one question at a time, in order, so that the page stays awake meanwhile. */
import type { Action } from '../../attempt/actions.ts';
import { replay } from '../../attempt/attempt.ts';
import type { RigData } from '../../rig/schema.ts';
import type { Ticket } from '../../scenario/ticket.ts';
import { debriefOf, type Yardstick, yardstickFor } from '../../score/score.ts';
import { beginFollowing, type Following, followStep } from '../../suspects/follow.ts';
import { type Ground, prepareGround } from '../../suspects/ground.ts';
import { betterAt, hintFrom } from '../../suspects/hints.ts';
import { stillPossible } from '../../suspects/possible.ts';
import { wayTree } from '../../suspects/wayTree.ts';
import { drill } from './drilling.ts';
import { grade, review, roll } from './grading.ts';
import { draw, examine, survey } from './making.ts';
import type { FromWorker, QuestionName, Questions, ToWorker } from './questions.ts';

/** The ticket and what has been worked out about it. */
interface Opened {
  readonly ticket: Ticket;
  readonly rig: RigData;
  /** Where the trainee's search is followed. The yardstick has a ground of its own: two followings on one would tread on each other. */
  ground?: Ground;
  followed?: { readonly taken: string[]; readonly following: Following };
  yardstick?: Yardstick;
  tree?: Questions['tree']['answer'];
}

let opened: Opened | undefined;

function it(): Opened {
  if (opened === undefined) throw new Error('no ticket is open');
  return opened;
}

/** The following of a search: the one that is there, taken further, where the search goes on from it; else a new one. */
function followed(actions: readonly Action[]): Following {
  const job = it();
  const named = actions.findIndex((action) => action.name === 'name');
  const wanted = (named < 0 ? actions : actions.slice(0, named)).map((action) => JSON.stringify(action));
  job.ground ??= prepareGround(job.ticket, job.rig);
  const kept = job.followed;
  if (kept === undefined || kept.taken.length > wanted.length || kept.taken.some((text, index) => text !== wanted[index]))
    job.followed = { taken: [], following: beginFollowing(job.ticket, job.rig, job.ground) };
  const { taken, following } = job.followed ?? { taken: [], following: beginFollowing(job.ticket, job.rig, job.ground) };
  for (const action of actions.slice(taken.length, wanted.length)) {
    followStep(following, action);
    taken.push(JSON.stringify(action));
  }
  return following;
}

function yardstick(): Yardstick {
  const job = it();
  job.yardstick ??= yardstickFor(job.ticket, job.rig);
  return job.yardstick;
}

type Answers = { readonly [Name in QuestionName]: (ask: Questions[Name]['ask']) => Questions[Name]['answer'] };

const ANSWERS: Answers = {
  possible: ({ actions }) => stillPossible(followed(actions)),
  hint: ({ actions, depth }) => hintFrom(followed(actions), depth),
  prepare() {
    yardstick();
    return null;
  },
  debrief({ log, mode }) {
    const { ticket, rig } = it();
    return debriefOf(replay({ ...ticket, mode }, rig, log), ticket.rubric, yardstick());
  },
  better({ actions, step }) {
    const found = betterAt(followed(actions), step - 1);
    return found === undefined ? null : { actions: found.test.actions, seconds: found.test.seconds, gainBits: found.gainBits };
  },
  examine,
  survey,
  draw,
  drill,
  roll,
  grade,
  review,
  tree() {
    const job = it();
    job.tree ??= wayTree(job.ticket, yardstick().ground);
    return job.tree;
  },
};

addEventListener('message', ({ data }: MessageEvent<ToWorker>) => {
  if (data.kind === 'open') {
    opened = { ticket: data.ticket, rig: data.rig };
    return;
  }
  const { number, name } = data;
  const tell = (answer: FromWorker) => postMessage(answer);
  try {
    const work = ANSWERS[name] as (ask: unknown) => Questions[QuestionName]['answer'];
    tell({ number, name, answer: work(data.ask) });
  } catch (error) {
    // A following that broke off half way is of no use to the next question.
    if (opened !== undefined) delete opened.followed;
    tell({ number, failed: String(error) });
  }
});
