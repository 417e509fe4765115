/** A page that was packed for a learning system: the assignment in it is opened, and what is done with it is told to that system. */
import type { AttemptLog } from '../../attempt/attempt.ts';
import { replay } from '../../attempt/attempt.ts';
import type { Assignment } from '../../classroom/assignment.ts';
import type { Work } from '../../classroom/draw.ts';
import { drillScores } from '../../classroom/lms/drillScores.ts';
import type { Paper } from '../../classroom/papers.ts';
import { totalOf, weightsOf } from '../../classroom/weights.ts';
import { possibleFaults } from '../../rig/faults.ts';
import { skillsShown } from '../../scenario/skills.ts';
import { engineFor } from '../engine/engine.ts';
import { library } from '../library.ts';
import { go } from '../router.ts';
import { ownLog } from '../taking/hand-in.ts';
import { assignedId, openText } from '../taking/open.ts';
import type { KeptAttempt, KeptPaper, KeptWork } from '../taking/records.ts';
import { isAt } from '../taking/sheet.ts';
import { keepAssigned, keepPaper, keepWork, readAssigned, watchWorks } from '../taking/store.ts';
import { guestFor, readTaken, type Taken } from '../taking/use-assigned.ts';
import { resultAt } from '../taking/use-paper-scores.ts';
import type { Course } from './course.ts';
import { bestOfResults, isFurther, type Result, type Results, resultKey, resumeIn, resumeOf } from './resume.ts';
import { codeOf, courseNow, embeddedText } from './session.ts';

/** So long after a step, milliseconds: several in a row are told once. */
const SOON = 500;

/** Opens the packed assignment, where there is one; what a learning system kept of it goes on. */
export async function startCourse(): Promise<void> {
  const text = embeddedText();
  if (text === undefined) return;
  let assignment: Assignment;
  try {
    assignment = openText(text, library);
  } catch {
    // The page says what is wrong with it.
    go('#/take', true);
    return;
  }
  const course = await courseNow();
  if (!course) {
    if (location.hash === '') go('#/take', true);
    return;
  }
  const id = assignedId(assignment, codeOf(course.learner));
  follow(course, id, await takeUp(course, assignment, id));
  const known = await readAssigned(id).catch(() => undefined);
  go(known ? `#/assigned/${id}` : '#/take', true);
}

/** What the learning system kept, put where this browser keeps it; what is further here already stays. */
async function takeUp(course: Course, assignment: Assignment, id: string): Promise<Results> {
  const resume = resumeIn(course.resume);
  if (!resume || resume.trainee.code !== codeOf(course.learner)) return new Map();
  const { trainee, agreed, works, papers, results } = resume;
  await keepAssigned({ id, assignment, trainee, agreed });
  const { kept = [], keptPapers = [] } = (await readTaken(id)) ?? {};
  for (const work of works) if (isFurther(work, kept)) await keepWork(id, work);
  for (const paper of papers) if (isFurther(paper, keptPapers)) await keepPaper(id, paper);
  return new Map(Object.entries(results));
}

/** Tells the learning system of every change, and of the end. @param results what is known of attempts that are over */
function follow(course: Course, id: string, results: Results): void {
  const began = performance.now();
  let complete = false;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let telling = Promise.resolve();
  const tell = async (): Promise<void> => {
    const taken = await readTaken(id);
    if (!taken) return;
    await course.keep(resumeOf(taken, results, course.limit));
    const reached = await reachedIn(taken, results);
    complete = reached.complete;
    if (results.size > 0) await course.report({ ...reached, seconds: (performance.now() - began) / 1000 }, complete);
  };
  const soon = () => {
    clearTimeout(timer);
    timer = setTimeout(() => {
      // One after another: what is told later must not be overtaken.
      telling = telling.then(tell).catch(() => undefined);
    }, SOON);
  };
  watchWorks((changed) => changed === id && soon());
  soon();
  addEventListener('pagehide', () => void course.leave((performance.now() - began) / 1000, complete));
}

/** The mean of the best attempt at each ticket and paper by their weights, nothing for one that is not done; the skills of all, those of drills as those attempts show them. */
async function reachedIn(taken: Taken, results: Results) {
  const { works, kept, papers, keptPapers } = taken;
  const bestOf = async <Kept extends KeptAttempt>(item: number, all: readonly Kept[], work: (each: Kept) => Promise<Result>) => {
    const ended = all.filter((each) => each.item === item && each.ended !== undefined);
    const found: Result[] = [];
    for (const each of ended) {
      const result = results.get(resultKey(each)) ?? (await work(each).catch(() => undefined));
      if (!result) continue;
      results.set(resultKey(each), result);
      found.push(result);
    }
    const { total = 0, answers = [] } = bestOfResults(found) ?? {};
    return {
      done: ended.length > 0,
      total,
      answers,
      skills: found.flatMap(({ skills }) => skills),
    };
  };
  const best = await Promise.all([
    ...works.map((work) => bestOf(work.item, kept, (each) => resultOf(taken, work, each))),
    ...papers.map((paper) => bestOf(paper.item, keptPapers, (each) => paperResultOf(paper, each))),
  ]);
  const points = best.map(({ total }) => total);
  return {
    total: Math.round(totalOf(points, weightsOf(taken.assigned.assignment))),
    skills: [...new Set(best.flatMap(({ skills }) => skills))],
    drills: drillScores(best.flatMap(({ answers }) => answers)),
    complete: best.every(({ done }) => done),
  };
}

/** What the answers were worth, and each of them; of skills as tickets show them they say nothing. */
async function paperResultOf(paper: Paper, kept: KeptPaper): Promise<Result> {
  if (!isAt(kept, paper)) throw new Error('other questions');
  const { total, answers } = await resultAt(paper, kept);
  return { total, skills: [], answers };
}

async function resultOf({ assigned }: Taken, work: Work, kept: KeptWork): Promise<Result> {
  const ticket = { ...work.ticket, id: guestFor(assigned, work, kept.number) };
  const debrief = await engineFor(ticket, work.rig).ask('debrief', { log: kept.log as unknown as AttemptLog, mode: ticket.mode });
  const attempt = replay(work.ticket, work.rig, ownLog(kept, work));
  const possible = possibleFaults(work.rig, work.ticket.suspects?.intermittents).length;
  return { total: debrief.total, skills: skillsShown(attempt, Math.max(0, 1 - debrief.suspectsAtStart / possible)) };
}
