import { useCallback, useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { type Blueprint, paperOf } from '../../drills/exam.ts';
import type { Item } from '../../drills/item.ts';
import type { Question } from '../../drills/paper.ts';
import type { Kept } from '../keeping/store.ts';
import { drawQuestion } from './draw-question.ts';
import { keepExams, type RunningExam, type Sitting } from './exam-keep.ts';
import { SHELF } from './use-drills.ts';

export interface Exam {
  readonly paper: readonly Question[];
  /** By question; null where its system has nothing to ask of the kind, undefined while it is drawn. */
  readonly items: readonly (Item | null | undefined)[];
  readonly running: RunningExam;
  /** Seconds left. */
  readonly left: number;
  readonly kept: Kept;
  readonly answer: (question: number, choice: number) => void;
  readonly flag: (question: number) => void;
  readonly finish: () => void;
}

/** After a worker has failed, milliseconds. */
const AGAIN = 2000;

/** An exam under way: its questions are drawn one after another while the first are being read. */
export function useExam(
  blueprint: Blueprint,
  start: RunningExam,
  onOver: (sitting: Sitting, items: readonly (Item | null)[], answers: RunningExam['answers']) => void,
): Exam {
  const paper = useMemo(() => paperOf(blueprint, SHELF, start.lot), [blueprint, start.lot]);
  const [running, setRunning] = useState(start);
  const [items, setItems] = useState<readonly (Item | null | undefined)[]>(() => paper.map(() => undefined));
  const [kept, setKept] = useState<Kept>('kept');
  const opened = useRef({ at: performance.now(), used: start.used });
  const usedNow = () => opened.current.used + (performance.now() - opened.current.at) / 1000;
  const [used, setUsed] = useState(start.used);

  const drawn = useRef(new Set<number>());
  const [turn, setTurn] = useState(0);
  useEffect(() => {
    let current = true;
    const draw = async () => {
      for (const [place, question] of paper.entries()) {
        if (drawn.current.has(place)) continue;
        const item = await drawQuestion(question);
        if (!current) return;
        drawn.current.add(place);
        setItems((before) => before.map((each, index) => (index === place ? item : each)));
      }
    };
    let waiting: ReturnType<typeof setTimeout>;
    // A worker that has died is begun anew, and what it had drawn stays.
    draw().catch(() => {
      waiting = setTimeout(() => setTurn((before) => before + 1), AGAIN);
    });
    return () => {
      current = false;
      clearTimeout(waiting);
    };
  }, [paper, turn]);

  const change = useCallback((how: (before: RunningExam) => RunningExam) => {
    setRunning((before) => {
      const after = { ...how(before), used: usedNow() };
      void keepExams((all) => ({ ...all, running: after })).then(setKept);
      return after;
    });
  }, []);
  const answer = useCallback(
    (question: number, choice: number) =>
      change((before) => ({ ...before, answers: before.answers.map((each, index) => (index === question ? choice : each)) })),
    [change],
  );
  const flag = useCallback(
    (question: number) =>
      change((before) => ({
        ...before,
        flagged: before.flagged.includes(question)
          ? before.flagged.filter((each) => each !== question)
          : [...before.flagged, question],
      })),
    [change],
  );
  const over = useRef(false);
  const finish = useCallback(() => {
    if (over.current || items.some((item) => item === undefined)) return;
    over.current = true;
    const drawn = items.map((item) => item ?? null);
    const answers = drawn.flatMap((item, place) =>
      item === null ? [] : [{ skill: item.skill, right: running.answers[place] === item.right }],
    );
    const sitting: Sitting = { blueprint: blueprint.id, lot: running.lot, when: Date.now(), answers };
    void keepExams(({ sittings }) => ({ sittings: [...sittings, sitting].slice(-200) })).then(setKept);
    onOver(sitting, drawn, running.answers);
  }, [items, running, blueprint, onOver]);

  const most = blueprint.minutes * 60;
  useEffect(() => {
    const tick = setInterval(() => setUsed(usedNow()), 1000);
    return () => clearInterval(tick);
  }, []);
  useEffect(() => {
    if (used >= most) finish();
  }, [used, most, finish]);
  return { paper, items, running, left: Math.max(0, most - used), kept, answer, flag, finish };
}
