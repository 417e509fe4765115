import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { entryOf } from '../../src/classroom/entry.ts';
import { createGrader } from '../../src/classroom/grade.ts';
import { gradebookOf } from '../../src/classroom/gradebook.ts';
import { classAssignment, codes, diceOf, honest } from '../classroom/crowd.ts';
import { library } from '../scenario/shipped.ts';
import type { BenchFigure } from './circuit.bench.ts';

/** Submissions that are made; each is graded as often as it takes to come to {@link GRADED}. */
const MADE = 100;
const GRADED = 1000;
/** Graded besides while memory is looked at, and how often it is: after so many each. */
const WATCHED = 2000;
const EVERY = 100;
/** As many tickets as a grader keeps: those that it has seen last. */
const KEPT = 12;

/**
 * Grades a thousand submissions of a class one after another on one core, ticket by ticket. Then two thousand more of the tickets that are
 * kept by now, and looks after each hundred at what is left in memory when all rubbish is gone: a grader keeps nothing of a submission.
 */
export async function bench(): Promise<BenchFigure[]> {
  const assignment = classAssignment();
  const dice = diceOf(9);
  const made = codes(MADE).map((code, index) => honest(assignment, code, index % assignment.items.length, dice));
  made.sort((a, b) => (placeOf(a) < placeOf(b) ? -1 : 1));
  const texts = made.map((submission) => JSON.stringify(submission));
  const grader = createGrader(assignment, library);
  const entryAt = (index: number, text = '') => entryOf(`${index}.json`, grader.grade(JSON.parse(text)));
  const began = process.cpuUsage();
  const entries = Array.from({ length: GRADED }, (_, index) => entryAt(index, texts[Math.floor((index * MADE) / GRADED)]));
  const { user, system } = process.cpuUsage(began);
  const start = performance.now();
  gradebookOf({ assignment, entries });
  const gradebookMilliseconds = performance.now() - start;

  const full = usedMegabytes();
  entries.length = 0;
  const heaps = [usedMegabytes()];
  const entryKilobytes = ((full - heaps[0]!) * 1000) / GRADED;
  const last = [...new Set(made.map(placeOf))].slice(-KEPT);
  const again = texts.filter((_, index) => last.includes(placeOf(made[index]!)));
  for (let index = 1; index <= WATCHED; index++) {
    entryAt(index, again[index % again.length]);
    if (index % EVERY === 0) heaps.push(usedMegabytes());
  }
  return [
    { name: `grading: ${GRADED} submissions, processor`, value: (user + system) / 1e6, unit: 's' },
    { name: 'grading: the gradebook of all of them', value: gradebookMilliseconds, unit: 'ms' },
    { name: 'grading: one entry of it in memory', value: entryKilobytes, unit: 'kB' },
    { name: `grading: heap before ${WATCHED} more`, value: heaps[0]!, unit: 'MB' },
    { name: `grading: heap after them`, value: heaps.at(-1)!, unit: 'MB' },
    { name: `grading: heap, most of ${heaps.length} looks`, value: Math.max(...heaps), unit: 'MB' },
    { name: `grading: heap, least`, value: Math.min(...heaps), unit: 'MB' },
  ];
}

const placeOf = ({ item, ticket }: { readonly item: number; readonly ticket: { readonly id: string } }) => `${item} ${ticket.id}`;

setFlagsFromString('--expose-gc');
const collect = runInNewContext('gc') as () => void;

function usedMegabytes(): number {
  collect();
  return process.memoryUsage().heapUsed / 1e6;
}
