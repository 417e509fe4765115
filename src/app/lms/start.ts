/** A page that was packed for a learning system: the assignment in it is opened, and what is done with it is told to that system. */
import { z } from 'zod';
import type { AttemptLog } from '../../attempt/attempt.ts';
import { replay } from '../../attempt/attempt.ts';
import type { Assignment } from '../../classroom/assignment.ts';
import type { Work } from '../../classroom/draw.ts';
import { possibleFaults } from '../../rig/faults.ts';
import { type Skill, skillsShown } from '../../scenario/skills.ts';
import { engineFor } from '../engine/engine.ts';
import { library } from '../library.ts';
import { go } from '../router.ts';
import { ownLog } from '../taking/hand-in.ts';
import { assignedId, openText } from '../taking/open.ts';
import { type Assigned, assignedSchema, type KeptWork, keptWorkSchema } from '../taking/records.ts';
import { keepAssigned, keepBegun, readAssigned, watchWorks } from '../taking/store.ts';
import { guestFor, readTaken, type Taken } from '../taking/use-assigned.ts';
import type { Course } from './course.ts';
import { codeOf, courseNow, embeddedText, packResume, unpackResume } from './session.ts';

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
  await takeUp(course, assignment, id);
  follow(course, id);
  const known = await readAssigned(id).catch(() => undefined);
  go(known ? `#/assigned/${id}` : '#/take', true);
}

const resumeSchema = z.strictObject({
  trainee: assignedSchema.shape.trainee,
  agreed: assignedSchema.shape.agreed,
  works: z.array(keptWorkSchema).max(100),
});
type Resume = z.infer<typeof resumeSchema>;

/** What the learning system kept, put where this browser keeps it; what is here already stays. */
async function takeUp(course: Course, assignment: Assignment, id: string): Promise<void> {
  const resume = resumeSchema.safeParse(unpackResume(course.resume)).data;
  if (!resume || resume.trainee.code !== codeOf(course.learner)) return;
  const assigned: Assigned = { id, assignment, trainee: resume.trainee, agreed: resume.agreed };
  await keepAssigned(assigned);
  for (const work of resume.works) await keepBegun(id, work);
}

/** Tells the learning system of every change, and of the end. */
function follow(course: Course, id: string): void {
  const began = performance.now();
  const results = new Map<string, Result>();
  let complete = false;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let telling = Promise.resolve();
  const tell = async (): Promise<void> => {
    const taken = await readTaken(id);
    if (!taken) return;
    await course.keep(packed(taken, course.limit));
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

/** All that is needed to go on, in as many characters as are kept: where it is too much, the logs of what is over go first. */
function packed({ assigned, kept }: Taken, limit: number): string {
  const { trainee, agreed } = assigned;
  const all: Resume = { trainee, agreed, works: [...kept] };
  const text = packResume(all);
  if (text.length <= limit) return text;
  const short = ({ log, stamps: _, ...work }: KeptWork): KeptWork => ({ ...work, stamps: [], log: { ...log, steps: [] } });
  return packResume({ ...all, works: kept.map((work) => (work.ended === undefined ? work : short(work))) });
}

interface Result {
  readonly total: number;
  readonly skills: readonly Skill[];
}

/** The mean of each item's best attempt, nothing for one that is not done; the skills of all. */
async function reachedIn(taken: Taken, results: Map<string, Result>) {
  const best = await Promise.all(
    taken.works.map(async (work) => {
      const ended = taken.kept.filter((each) => each.item === work.item && each.ended !== undefined);
      const found: Result[] = [];
      for (const each of ended) {
        const key = `${each.item} ${each.number}`;
        const result = results.get(key) ?? (await resultOf(taken, work, each).catch(() => undefined));
        if (!result) continue;
        results.set(key, result);
        found.push(result);
      }
      return {
        done: ended.length > 0,
        total: Math.max(0, ...found.map(({ total }) => total)),
        skills: found.flatMap(({ skills }) => skills),
      };
    }),
  );
  const sum = best.reduce((all, { total }) => all + total, 0);
  return {
    total: Math.round(sum / Math.max(1, best.length)),
    skills: [...new Set(best.flatMap(({ skills }) => skills))],
    complete: best.every(({ done }) => done),
  };
}

async function resultOf({ assigned }: Taken, work: Work, kept: KeptWork): Promise<Result> {
  const ticket = { ...work.ticket, id: guestFor(assigned, work, kept.number) };
  const debrief = await engineFor(ticket, work.rig).ask('debrief', { log: kept.log as unknown as AttemptLog, mode: ticket.mode });
  const attempt = replay(work.ticket, work.rig, ownLog(kept, work));
  const possible = possibleFaults(work.rig, work.ticket.suspects?.intermittents).length;
  return { total: debrief.total, skills: skillsShown(attempt, Math.max(0, 1 - debrief.suspectsAtStart / possible)) };
}
