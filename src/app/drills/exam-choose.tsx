import { type Blueprint, examResult } from '../../drills/exam.ts';
import { ticketCount } from '../../drills/examBench.ts';
import { hrefOf } from '../router.ts';
import { number, percent, t } from '../words.ts';
import { blueprints } from './blueprints.ts';
import { TimeLeft } from './exam-clock.tsx';
import { countedIn, type KeptExams, type RunningExam, type Sitting, usedBy } from './exam-keep.ts';

// keys: drill:exam.of.*

interface Props {
  readonly kept: KeptExams;
  readonly onBegin: (blueprint: Blueprint) => void;
  readonly onResume: (running: RunningExam) => void;
}

function rulesOf({ items, minutes, pass, bench }: Blueprint): string {
  const values = { items: number(items), minutes: number(minutes), pass: percent(pass) };
  return bench === undefined
    ? t('drill:exam.rules', values)
    : t('drill:exam.bench.rules', { ...values, count: ticketCount(bench) });
}

/** The exam under way, those that can be begun, and those that were sat. */
export function ExamChoice({ kept, onBegin, onResume }: Props) {
  const { running, sittings } = kept;
  const underWay = blueprints.find(({ id }) => id === running?.blueprint);
  return (
    <>
      <p>{t('drill:exam.about')}</p>
      {blueprints.some(({ bench }) => bench !== undefined) && <p>{t('drill:exam.bench.rule')}</p>}
      {running !== undefined && underWay !== undefined && (
        <section class="slip" aria-labelledby="under-way-title">
          <h2 id="under-way-title">{t('drill:exam.underWay')}</h2>
          <p>{t(`drill:exam.of.${running.blueprint}.name`)}</p>
          <p>
            {t('drill:exam.left')} <TimeLeft left={() => Math.max(0, underWay.minutes * 60 - usedBy(running, Date.now()))} />.{' '}
            {t('drill:exam.bench.runsOn')}
          </p>
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
          <p>{rulesOf(each)}</p>
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
            {[...sittings].reverse().map((sitting) => (
              <SatBefore key={sitting.when} sitting={sitting} />
            ))}
          </ul>
        </section>
      )}
      <p>
        <a href={hrefOf('drills')}>{t('drill:exam.toDrills')}</a>
      </p>
    </>
  );
}

function SatBefore({ sitting }: { readonly sitting: Sitting }) {
  const of = blueprints.find(({ id }) => id === sitting.blueprint);
  if (of === undefined) return null;
  const { share, passed, skills } = examResult(of, countedIn(sitting));
  const bench = skills.find(({ skill }) => skill === 'bench');
  return (
    <li>
      {t(passed ? 'drill:exam.satPassed' : 'drill:exam.satNot', {
        name: t(`drill:exam.of.${of.id}.name`),
        share: percent(share),
        day: new Intl.DateTimeFormat(document.documentElement.lang, { dateStyle: 'medium' }).format(sitting.when),
      })}
      {bench !== undefined && ` · ${t('drill:exam.bench.sat', { right: number(bench.right), asked: number(bench.asked) })}`}
    </li>
  );
}
