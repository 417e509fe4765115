import { useCallback, useEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { AttemptLog } from '../../attempt/attempt.ts';
import { type Blueprint, paperOf } from '../../drills/exam.ts';
import type { Item } from '../../drills/item.ts';
import type { Kept } from '../keeping/store.ts';
import { keepExams, type RunningExam, type Sitting, usedBy } from './exam-keep.ts';
import { benchOver } from './exam-score.ts';
import { useDrawn } from './use-drawn.ts';
import { SHELF } from './use-drills.ts';

/** An exam that has just ended. */
export interface ExamOver {
  readonly sitting: Sitting;
  /** Null where a question fell out. */
  readonly items: readonly (Item | null)[];
  readonly running: RunningExam;
}

export interface Exam {
  /** By question; null where its system has nothing to ask of the kind, undefined while it is drawn. */
  readonly items: readonly (Item | null | undefined)[];
  readonly running: RunningExam;
  /** Its result is being worked out: nothing is answered any more. */
  readonly ending: boolean;
  /** Gives the seconds left. */
  readonly left: () => number;
  readonly kept: Kept;
  readonly answer: (question: number, choice: number) => void;
  /** @param place a question's, or after them a ticket's */
  readonly flag: (place: number) => void;
  /** Keeps the work on a ticket after a step. */
  readonly work: (ticket: number, log: AttemptLog) => Promise<Kept>;
  readonly finish: () => void;
}

/** An exam under way. */
export function useExam(blueprint: Blueprint, start: RunningExam, onOver: (over: ExamOver) => void): Exam {
  const questions = start.answers.length;
  const paper = useMemo(() => paperOf({ ...blueprint, items: questions }, SHELF, start.lot), [blueprint, questions, start.lot]);
  const items = useDrawn(paper);
  const [running, setRunning] = useState(start);
  const [kept, setKept] = useState<Kept>('kept');
  const [ending, setEnding] = useState(false);
  const latest = useRef(start);
  const [opened] = useState(() => ({ at: performance.now(), used: usedBy(start, Date.now()) }));
  const usedNow = useCallback(() => opened.used + (performance.now() - opened.at) / 1000, [opened]);
  const left = useCallback(() => Math.max(0, blueprint.minutes * 60 - usedNow()), [blueprint, usedNow]);

  const change = useCallback(
    async (how: (before: RunningExam) => Partial<RunningExam>): Promise<Kept> => {
      const now = { ...latest.current, ...how(latest.current), used: usedNow() };
      latest.current = now;
      setRunning(now);
      const done = await keepExams((all) => ({ ...all, running: now }));
      setKept(done);
      return done;
    },
    [usedNow],
  );
  const answer = useCallback(
    (question: number, choice: number) =>
      void change(({ answers }) => ({ answers: answers.map((each, index) => (index === question ? choice : each)) })),
    [change],
  );
  const flag = useCallback(
    (place: number) =>
      void change(({ flagged }) => ({
        flagged: flagged.includes(place) ? flagged.filter((each) => each !== place) : [...flagged, place],
      })),
    [change],
  );
  const work = useCallback(
    (ticket: number, log: AttemptLog) =>
      change(({ bench = [] }) => ({ bench: bench.map((each, index) => (index === ticket ? { ...each, log } : each)) })),
    [change],
  );
  const finish = useCallback(() => setEnding(true), []);

  useEffect(() => {
    if (ending) return;
    const timer = setInterval(() => left() === 0 && setEnding(true), 1000);
    return () => clearInterval(timer);
  }, [ending, left]);

  const drawn = items.every((item) => item !== undefined);
  useEffect(() => {
    if (!ending || !drawn) return;
    let current = true;
    const { answers: chosen, bench: works, lot } = latest.current;
    const whole = items.map((item) => item ?? null);
    const answers = whole.flatMap((item, place) =>
      item === null ? [] : [{ skill: item.skill, right: chosen[place] === item.right }],
    );
    void benchOver(works ?? []).then((bench) => {
      if (!current) return;
      const of = { blueprint: blueprint.id, lot, when: Date.now(), answers };
      const sitting: Sitting = works === undefined ? of : { ...of, bench };
      void keepExams(({ sittings }) => ({ sittings: [...sittings, sitting].slice(-200) }));
      onOver({ sitting, items: whole, running: latest.current });
    });
    return () => {
      current = false;
    };
  }, [ending, drawn, items, blueprint, onOver]);
  return { items, running, ending, left, kept, answer, flag, work, finish };
}
