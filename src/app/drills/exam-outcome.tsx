import { useEffect, useState } from 'preact/hooks';
import { type ExamSkill, examResult, type Tally } from '../../drills/exam.ts';
import type { Item } from '../../drills/item.ts';
import { hrefOf } from '../router.ts';
import { number, percent, t } from '../words.ts';
import { countedIn, unanswered } from './exam-keep.ts';
import { ExamTicketsTold } from './exam-tickets-told.tsx';
import { ItemView } from './item-view.tsx';
import type { ExamTold } from './result-left.ts';

interface Props {
  readonly told: ExamTold;
  readonly onBack: () => void;
}

const nameOf = (skill: ExamSkill): string => (skill === 'bench' ? t('drill:exam.bench.row') : t(`drill:skill.${skill}`));

const between = ({ low, high }: Tally): string => t('drill:exam.between', { low: percent(low), high: percent(high) });

/** What an exam says: passed or not, how sure that is, by skill, and every question with its reason. */
export function ExamOutcome({ told, onBack }: Props) {
  const { blueprint, sitting, items, running } = told;
  const result = examResult(blueprint, countedIn(sitting));
  const { right, asked, share, passed, sure, skills, practise } = result;
  const { questions, tickets } = unanswered(items, running);
  const open = questions + tickets;
  useEffect(() => document.querySelector<HTMLElement>('h1')?.focus(), []);
  return (
    <>
      <section class="slip exam-result" aria-labelledby="result-title">
        <h2 id="result-title">{t(passed ? 'drill:exam.passed' : 'drill:exam.notPassed')}</h2>
        <p class="drill-ask">
          {t('drill:exam.share', {
            right: number(right),
            asked: number(asked),
            share: percent(share),
            pass: percent(blueprint.pass),
          })}
        </p>
        <p>
          {open > 0
            ? t('drill:exam.unanswered', { count: open })
            : t(sure ? 'drill:exam.isSure' : 'drill:exam.notSure', { between: between(result) })}
        </p>
        <table class="drill-skills">
          <thead>
            <tr>
              <th scope="col">{t('drill:page.skill')}</th>
              <th scope="col">{t('drill:page.right')}</th>
              <th scope="col">{t('drill:exam.interval')}</th>
            </tr>
          </thead>
          <tbody>
            {skills.map((each) => (
              <tr key={each.skill}>
                <th scope="row">{nameOf(each.skill)}</th>
                <td>{t('drill:page.of', { right: number(each.right), asked: number(each.asked) })}</td>
                <td>{between(each)}</td>
              </tr>
            ))}
          </tbody>
        </table>
        <p>{t('drill:exam.intervalAbout')}</p>
        {practise.length > 0 && (
          <>
            <h3>{t('drill:exam.practise')}</h3>
            <ul class="drill-given">
              {practise.map((skill) => (
                <li key={skill}>
                  {skill === 'bench' ? <a href={hrefOf('home')}>{t('drill:exam.bench.toTickets')}</a> : nameOf(skill)}
                </li>
              ))}
            </ul>
          </>
        )}
        <p class="no-print">{t('drill:exam.mock')}</p>
        <div class="drill-do no-print">
          <a class="button act" href={hrefOf('drills')}>
            {t('drill:exam.toDrills')}
          </a>
          <button type="button" class="button" onClick={() => print()}>
            {t('drill:exam.print')}
          </button>
          <button type="button" class="button" onClick={onBack}>
            {t('drill:exam.back')}
          </button>
        </div>
      </section>
      <ExamTicketsTold told={told} />
      <section class="no-print" aria-labelledby="review-title">
        <h2 id="review-title">{t('drill:exam.review')}</h2>
        {items.map((item, place) =>
          item === null ? null : (
            <Reviewed key={`${item.kind} ${item.number}`} item={item} place={place} chosen={running.answers[place] ?? undefined} />
          ),
        )}
      </section>
    </>
  );
}

/** One question again, with its reason, once somebody opens it. */
export function Reviewed({
  item,
  place,
  chosen,
}: {
  readonly item: Item;
  readonly place: number;
  readonly chosen: number | undefined;
}) {
  const [open, setOpen] = useState(false);
  const said = chosen === undefined ? 'notAnswered' : chosen === item.right ? 'isRight' : 'isWrong';
  return (
    <details class="exam-review" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        {t('drill:exam.reviewed', { number: number(place + 1), name: t(`drill:kind.${item.kind}.name`) })}{' '}
        <b>{t(`drill:exam.${said}`)}</b>
      </summary>
      {open && <ItemView item={item} chosen={chosen ?? -1} onChoose={() => undefined} onNext={undefined} />}
    </details>
  );
}
