import type { Blueprint } from '../../drills/exam.ts';
import { ticketsOf } from '../../drills/examBench.ts';
import { measureOf } from '../board.ts';
import { tickets } from '../library.ts';
import { readFinished } from '../storage.ts';
import { keepExams, type RunningExam, type Sitting } from './exam-keep.ts';

/** The tickets that may be asked for, in the order of the list. */
export const posted = tickets.map(({ id, rig, skills }) => ({ id, rig, skills, grade: measureOf(id)?.grade }));

/**
 * Draws an exam and keeps it as the one under way: its tickets are settled from here on.
 * @param sittings those of whoever sits it: what they met there they know
 */
export async function beginExam(of: Blueprint, sittings: readonly Sitting[]): Promise<RunningExam> {
  const lot = (crypto.getRandomValues(new Uint32Array(1))[0] ?? 0) % 1_000_000;
  // Whoever keeps nothing is known to have closed nothing.
  const finished = of.bench === undefined ? [] : await readFinished().catch(() => []);
  const known = new Set([...finished, ...sittings.flatMap(({ bench = [] }) => bench)].map(({ ticket }) => ticket));
  const running: RunningExam = {
    blueprint: of.id,
    lot,
    began: Date.now(),
    used: 0,
    answers: Array(of.items).fill(null),
    flagged: [],
    ...(of.bench === undefined ? {} : { bench: ticketsOf(of.bench, posted, known, lot).map((ticket) => ({ ticket })) }),
  };
  await keepExams((all) => ({ ...all, running }));
  return running;
}
