import { entryOf } from '../../src/classroom/entry.ts';
import { createGrader } from '../../src/classroom/grade.ts';
import { gradebookOf } from '../../src/classroom/gradebook.ts';
import { classAssignment, codes, diceOf, honest } from '../classroom/crowd.ts';
import { library } from '../scenario/shipped.ts';
import type { BenchFigure } from './circuit.bench.ts';

/** Submissions that are made; each is graded as often as it takes to come to {@link GRADED}. */
const MADE = 100;
const GRADED = 1000;

/** Grades a thousand submissions of a class one after another on one core, ticket by ticket, and looks at what memory that takes. */
export async function bench(): Promise<BenchFigure[]> {
  const assignment = classAssignment();
  const dice = diceOf(9);
  const made = codes(MADE).map((code, index) => honest(assignment, code, index % assignment.items.length, dice));
  made.sort((a, b) => (`${a.item} ${a.ticket.id}` < `${b.item} ${b.ticket.id}` ? -1 : 1));
  const texts = made.map((submission) => JSON.stringify(submission));
  const grader = createGrader(assignment, library);
  const began = process.cpuUsage();
  const heapBefore = usedMegabytes();
  let half = 0;
  const entries = Array.from({ length: GRADED }, (_, index) => {
    if (index === GRADED / 2) half = usedMegabytes();
    const text = texts[Math.floor((index * MADE) / GRADED)]!;
    return entryOf(`${index}.json`, grader.grade(JSON.parse(text)));
  });
  const { user, system } = process.cpuUsage(began);
  const heapAfter = usedMegabytes();
  const start = performance.now();
  gradebookOf({ assignment, entries });
  return [
    { name: `grading: ${GRADED} submissions, processor`, value: (user + system) / 1e6, unit: 's' },
    { name: 'grading: heap grown, first half', value: half - heapBefore, unit: 'MB' },
    { name: 'grading: heap grown, second half', value: heapAfter - half, unit: 'MB' },
    { name: 'grading: the gradebook of all of them', value: performance.now() - start, unit: 'ms' },
  ];
}

function usedMegabytes(): number {
  globalThis.gc?.();
  return process.memoryUsage().heapUsed / 1e6;
}
