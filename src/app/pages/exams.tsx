import type { ComponentChildren } from 'preact';
import { useCallback, useEffect, useState } from 'preact/hooks';
import '../css/pages.css';
import '../css/print.css';
import '../css/drills.css';
import type { Blueprint } from '../../drills/exam.ts';
import { beginExam } from '../drills/begin-exam.ts';
import { blueprints } from '../drills/blueprints.ts';
import { ExamChoice } from '../drills/exam-choose.tsx';
import { type KeptExams, type RunningExam, readExams } from '../drills/exam-keep.ts';
import { ExamOutcome } from '../drills/exam-outcome.tsx';
import { ExamPaper } from '../drills/exam-paper.tsx';
import { leaveResult, resultLeft } from '../drills/result-left.ts';
import { type ExamOver, useExam } from '../drills/use-exam.ts';
import { Elsewhere } from '../keeping/elsewhere.tsx';
import { useHold } from '../keeping/hold.ts';
import { go, hrefOf, rememberJob } from '../router.ts';
import { BackHead, useTitle } from '../shell.tsx';
import { t } from '../words.ts';
import { ExamBench } from './exam-bench.tsx';

// keys: drill:exam.of.*

interface PageProps {
  /** Which of the tickets of the exam under way is at the bench, from 1; the paper where left out. */
  readonly number?: number;
}

/** Mock exams: chosen, sat, and what they say. */
export function ExamsPage({ number: ticket }: PageProps) {
  const [kept, setKept] = useState<KeptExams>();
  const [begun, setBegun] = useState<RunningExam>();
  const [told, setTold] = useState(resultLeft);
  useEffect(() => {
    readExams().then(setKept, () => setKept({ sittings: [] }));
  }, [told]);
  // Whoever loads the bench anew goes on there.
  const running = begun ?? (ticket === undefined ? undefined : kept?.running);
  const blueprint = blueprints.find(({ id }) => id === running?.blueprint);
  const isLost = ticket !== undefined && kept !== undefined && running === undefined;
  useEffect(() => {
    if (isLost) go(hrefOf('exams'), true);
    else if (begun === undefined && running !== undefined) setBegun(running);
  }, [isLost, begun, running]);
  const onOver = useCallback(
    (over: ExamOver) => {
      if (blueprint === undefined) return;
      // What was read before is no longer so: this exam is not under way any more.
      setKept(undefined);
      setBegun(undefined);
      setTold({ ...over, blueprint });
      scrollTo(0, 0);
    },
    [blueprint],
  );
  const onBegin = (of: Blueprint) => void beginExam(of, kept?.sittings ?? []).then(setBegun);
  const onBack = () => {
    leaveResult(undefined);
    setTold(undefined);
  };
  if (running !== undefined && blueprint !== undefined)
    return <Held blueprint={blueprint} start={running} ticket={ticket} onOver={onOver} />;
  return (
    <Page title={t('drill:exam.title')}>
      {kept === undefined ? (
        <p role="status">{t('app:loading')}</p>
      ) : told !== undefined ? (
        <ExamOutcome told={told} onBack={onBack} />
      ) : (
        <ExamChoice kept={kept} onBegin={onBegin} onResume={setBegun} />
      )}
    </Page>
  );
}

function Page({ title, children }: { readonly title: string; readonly children: ComponentChildren }) {
  useTitle(t('drill:exam.title'));
  return (
    <>
      <BackHead />
      <main class="sheet drills exams">
        <h1 tabIndex={-1}>{title}</h1>
        {children}
      </main>
    </>
  );
}

interface SatProps {
  readonly blueprint: Blueprint;
  readonly start: RunningExam;
  readonly ticket: number | undefined;
  readonly onOver: (over: ExamOver) => void;
}

/** One tab at a time sits an exam, from where it stands when that tab takes it. */
function Held({ start, ...props }: SatProps) {
  const { hold, takeOver } = useHold('exam');
  const [stands, setStands] = useState<RunningExam>();
  useEffect(() => {
    setStands(undefined);
    if (hold !== 'mine') return;
    readExams().then(
      ({ running }) => setStands(running?.lot === start.lot && running.began === start.began ? running : start),
      () => setStands(start),
    );
  }, [hold, start]);
  if (hold === 'elsewhere' || hold === 'taken')
    return <Elsewhere ticket="" back={hrefOf('home')} taken={hold === 'taken'} onTakeOver={takeOver} />;
  if (stands !== undefined) return <Sat start={stands} {...props} />;
  return (
    <main class="waiting" aria-busy="true">
      <p role="status">{t('app:loading')}</p>
    </main>
  );
}

function Sat({ blueprint, start, ticket, onOver }: SatProps) {
  const exam = useExam(blueprint, start, onOver);
  const questions = exam.items.length;
  const [at, setAt] = useState(0);
  useEffect(() => {
    if (ticket !== undefined) setAt(questions + ticket - 1);
  }, [ticket, questions]);
  const work = ticket === undefined ? undefined : exam.running.bench?.[ticket - 1];
  // Once the time is over, the exam ends at the bench as well.
  const isAway = ticket !== undefined && (work === undefined || exam.ending);
  useEffect(() => {
    if (isAway) go(hrefOf('exams'), true);
  }, [isAway]);
  if (ticket !== undefined && work !== undefined && !isAway)
    return <ExamBench key={ticket} exam={exam} begun={work} at={ticket - 1} />;
  // Before the head asks: from the paper no job is gone back to.
  rememberJob(undefined);
  return (
    <Page title={t(`drill:exam.of.${blueprint.id}.name`)}>
      {exam.ending ? <p role="status">{t('drill:exam.bench.working')}</p> : <ExamPaper exam={exam} at={at} onGo={setAt} />}
    </Page>
  );
}
