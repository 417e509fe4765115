import { useCallback, useEffect, useState } from 'preact/hooks';
import '../css/pages.css';
import '../css/print.css';
import '../css/drills.css';
import { type Blueprint, examResult } from '../../drills/exam.ts';
import type { Item } from '../../drills/item.ts';
import { blueprints } from '../drills/blueprints.ts';
import { type KeptExams, keepExams, type RunningExam, readExams, type Sitting } from '../drills/exam-keep.ts';
import { ExamOutcome } from '../drills/exam-outcome.tsx';
import { ExamPaper } from '../drills/exam-paper.tsx';
import { hrefOf } from '../router.ts';
import { BackHead, useTitle } from '../shell.tsx';
import { number, percent, t } from '../words.ts';

// keys: drill:exam.of.*

interface Over {
  readonly blueprint: Blueprint;
  readonly sitting: Sitting;
  readonly items: readonly (Item | null)[];
  readonly answers: RunningExam['answers'];
}

/** Mock exams: chosen, sat, and what they say. */
export function ExamsPage() {
  const [kept, setKept] = useState<KeptExams>();
  const [running, setRunning] = useState<RunningExam>();
  const [over, setOver] = useState<Over>();
  useTitle(t('drill:exam.title'));
  useEffect(() => {
    readExams().then(setKept, () => setKept({ sittings: [] }));
  }, [over]);
  const blueprint = blueprints.find(({ id }) => id === running?.blueprint);
  const onOver = useCallback(
    (sitting: Sitting, items: readonly (Item | null)[], answers: RunningExam['answers']) => {
      if (blueprint === undefined) return;
      setRunning(undefined);
      setOver({ blueprint, sitting, items, answers });
      scrollTo(0, 0);
    },
    [blueprint],
  );
  const begin = (of: Blueprint) => {
    const lot = (crypto.getRandomValues(new Uint32Array(1))[0] ?? 0) % 1_000_000;
    const fresh: RunningExam = {
      blueprint: of.id,
      lot,
      began: Date.now(),
      used: 0,
      answers: Array(of.items).fill(null),
      flagged: [],
    };
    void keepExams((all) => ({ ...all, running: fresh }));
    setRunning(fresh);
  };
  return (
    <>
      <BackHead />
      <main class="sheet drills exams">
        <h1 tabIndex={-1}>{blueprint === undefined ? t('drill:exam.title') : t(`drill:exam.of.${blueprint.id}.name`)}</h1>
        {kept === undefined ? (
          <p role="status">{t('app:loading')}</p>
        ) : blueprint !== undefined && running !== undefined ? (
          <ExamPaper blueprint={blueprint} start={running} onOver={onOver} />
        ) : over !== undefined ? (
          <ExamOutcome {...over} onBack={() => setOver(undefined)} />
        ) : (
          <Choose kept={kept} onBegin={begin} onResume={setRunning} />
        )}
      </main>
    </>
  );
}

interface ChooseProps {
  readonly kept: KeptExams;
  readonly onBegin: (blueprint: Blueprint) => void;
  readonly onResume: (running: RunningExam) => void;
}

function Choose({ kept, onBegin, onResume }: ChooseProps) {
  const { running, sittings } = kept;
  return (
    <>
      <p>{t('drill:exam.about')}</p>
      {running !== undefined && blueprints.some(({ id }) => id === running.blueprint) && (
        <section class="slip" aria-labelledby="under-way-title">
          <h2 id="under-way-title">{t('drill:exam.underWay')}</h2>
          <p>{t(`drill:exam.of.${running.blueprint}.name`)}</p>
          <p>
            <button type="button" class="button act" onClick={() => onResume(running)}>
              {t('drill:exam.resume')}
            </button>
          </p>
        </section>
      )}
      {blueprints.map((each) => (
        <section key={each.id} class="slip" aria-labelledby={`exam-${each.id}`}>
          <h2 id={`exam-${each.id}`}>{t(`drill:exam.of.${each.id}.name`)}</h2>
          <p>{t(`drill:exam.of.${each.id}.about`)}</p>
          <p>{t('drill:exam.rules', { items: number(each.items), minutes: number(each.minutes), pass: percent(each.pass) })}</p>
          <p>
            <button type="button" class={running === undefined ? 'button act' : 'button'} onClick={() => onBegin(each)}>
              {t('drill:exam.begin')}
            </button>
          </p>
        </section>
      ))}
      {sittings.length > 0 && (
        <section class="slip" aria-labelledby="sittings-title">
          <h2 id="sittings-title">{t('drill:exam.sittings')}</h2>
          <ul class="drill-given">
            {[...sittings].reverse().map((sitting) => {
              const of = blueprints.find(({ id }) => id === sitting.blueprint);
              if (of === undefined) return null;
              const { share, passed } = examResult(of, sitting.answers);
              return (
                <li key={sitting.when}>
                  {t(passed ? 'drill:exam.satPassed' : 'drill:exam.satNot', {
                    name: t(`drill:exam.of.${of.id}.name`),
                    share: percent(share),
                    day: new Intl.DateTimeFormat(document.documentElement.lang, { dateStyle: 'medium' }).format(sitting.when),
                  })}
                </li>
              );
            })}
          </ul>
        </section>
      )}
      <p>
        <a href={hrefOf('drills')}>{t('drill:exam.toDrills')}</a>
      </p>
    </>
  );
}
