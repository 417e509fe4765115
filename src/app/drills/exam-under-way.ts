import { blueprints } from './blueprints.ts';
import { examsIn, usedBy } from './exam-keep.ts';

/**
 * The tickets that the exam under way sets, by their ids. One whose time is over sets nothing any more, whether or not anybody has
 * come back to it.
 * @param kept what lies on a profile's shelf under EXAMS
 * @param now milliseconds since 1970
 */
export function ticketsSet(kept: unknown, now: number): ReadonlySet<string> {
  const { running } = examsIn(kept);
  const exam = blueprints.find(({ id }) => id === running?.blueprint);
  const isOver = running === undefined || exam === undefined || usedBy(running, now) >= exam.minutes * 60;
  return new Set(isOver ? [] : running.bench?.map(({ ticket }) => ticket));
}
