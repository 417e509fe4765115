import { useState } from 'preact/hooks';
import '../css/debrief.css';
import '../css/guided-ends.css';
import '../css/pages.css';
import '../css/print.css';
import type { Debrief, JudgedStep } from '../../score/debrief.ts';
import { byGrade } from '../board.ts';
import { SuspectsChart } from '../debrief/chart.tsx';
import { ScoreLines } from '../debrief/score-lines.tsx';
import { StepBody, wordsOf } from '../debrief/step-body.tsx';
import { TreeFold } from '../debrief/tree.tsx';
import { type Reviewed, useDebrief } from '../debrief/use-debrief.ts';
import { useExamTickets } from '../drills/exam-tickets.ts';
import { OutsideExam } from '../drills/in-exam.tsx';
import { guestOf } from '../guests.ts';
import { isGuided } from '../guided/choice.ts';
import { findTicket, rigOf, ticketAfter, tickets } from '../library.ts';
import { hrefOf } from '../router.ts';
import { BackHead, useTitle } from '../shell.tsx';
import { stepWords } from '../step-words.ts';
import { titleOf } from '../ticket-words.ts';
import { useOpenFolds } from '../use-open-folds.ts';
import { namingText, number, t } from '../words.ts';

type Ticket = NonNullable<ReturnType<typeof findTicket>>;

interface PageProps {
  readonly ticket: string;
  readonly number?: number;
}

export function DebriefPage({ ticket: id, number: at }: PageProps) {
  const ticket = findTicket(id);
  if (ticket === undefined) return null;
  return (
    <OutsideExam ticket={id}>
      <Opened ticket={ticket} at={at} />
    </OutsideExam>
  );
}

function Opened({ ticket, at }: { readonly ticket: Ticket; readonly at: number | undefined }) {
  const result = useDebrief(ticket, rigOf(ticket), at);
  useTitle(t('app:debrief.title'));
  useOpenFolds();
  return (
    <div class="paper">
      <BackHead />
      <main class="debrief">
        {result.state === 'ready' ? (
          <Read reviewed={result.reviewed} at={at} />
        ) : (
          <>
            <h1 tabIndex={-1}>{t('app:debrief.title')}</h1>
            <p role="status">{t(`app:debrief.${result.state}`)}</p>
          </>
        )}
        {result.state !== 'working' && <Onward ticket={ticket} />}
      </main>
    </div>
  );
}

/** After the guide comes the plainest of all; else the next one follows. None until it is known what an exam sets. */
function useNextTicket({ id }: Ticket): Ticket | undefined {
  const barred = useExamTickets();
  if (barred === undefined) return undefined;
  return isGuided(id) ? byGrade(tickets).find((each) => !barred.has(each.id)) : ticketAfter(id, barred);
}

function Onward({ ticket }: { readonly ticket: Ticket }) {
  const guest = guestOf(ticket.id);
  const follows = useNextTicket(ticket);
  const next = guest === undefined ? follows : undefined;
  return (
    <nav class="onward">
      <a class="button" href={hrefOf('ticket', ticket.id)}>
        {t('app:debrief.again')}
      </a>
      {guest !== undefined && (
        <a class="button act" href={guest.home}>
          {t('app:debrief.back')}
        </a>
      )}
      {next !== undefined && next.id !== ticket.id && (
        <a class="button act" href={hrefOf('ticket', next.id)}>
          {t('app:debrief.next', { title: titleOf(next.id) })}
        </a>
      )}
    </nav>
  );
}

function verdict(debrief: Debrief, judged: readonly JudgedStep[]): string {
  const minutes = Math.max(1, Math.round(debrief.minutes));
  const values = {
    steps: t('app:debrief.inSteps', { count: judged.length }),
    minutes: t('app:debrief.inMinutes', { count: minutes }),
  };
  if (debrief.named === undefined) return t('app:debrief.unnamed', values);
  if (debrief.rightNaming) return t('app:debrief.right', values);
  return t('app:debrief.wrong', {
    ...values,
    fault: namingText(debrief.named),
  });
}

function shortWayValues({ par }: Debrief) {
  return {
    steps: t('app:debrief.inSteps', { count: par.actions.length }),
    minutes: t('app:debrief.inMinutes', { count: Math.max(1, Math.round(par.seconds / 60)) }),
  };
}

/** What a step was worth, in few words; a hint has been paid for, and is neither waste nor work. */
function kindText({ actions }: Reviewed, step: JudgedStep): string {
  return t(`app:debrief.kind.${actions[step.number - 1]?.name === 'hint' ? 'hint' : step.kind}`);
}

/** Opens a step in the list of steps and goes there. */
function goToStep(step: number): void {
  const found = document.getElementById(`step-${step}`);
  for (let each = found?.closest('details'); each; each = each.parentElement?.closest('details')) each.open = true;
  const summary = found?.querySelector('summary');
  summary?.scrollIntoView({ block: 'center' });
  summary?.focus({ preventScroll: true });
}

function Read({ reviewed, at }: { readonly reviewed: Reviewed; readonly at: number | undefined }) {
  const { ticket, debrief, told, shortWay } = reviewed;
  const judged = debrief.steps.filter((step) => step.kind !== 'after');
  const after = debrief.steps.filter((step) => step.kind === 'after');
  const [chosen, setChosen] = useState(
    () =>
      (
        judged.find((step) => step.kind === 'wasted') ??
        judged.findLast((step) => reviewed.actions[step.number - 1]?.name !== 'hint')
      )?.number,
  );
  const next = useNextTicket(ticket);
  const card = debrief.steps.find((step) => step.number === chosen);
  const words = (step: JudgedStep) => wordsOf(told, step.number);
  return (
    <>
      <div class="debrief-head">
        <div>
          <p class="debrief-ticket">
            {titleOf(ticket.id)}
            {at !== undefined && ` · ${t('report:attempt', { number: number(at) })}`}
          </p>
          <h1 tabIndex={-1}>{namingText(debrief.truth)}</h1>
          <p>{verdict(debrief, judged)}</p>
          <p>{t('app:debrief.shortWay', shortWayValues(debrief))}</p>
          <p class="debrief-more">
            <a class="button" href={hrefOf('report', ticket.id, at)}>
              {t('report:link')}
            </a>
            <a class="button" href={hrefOf('live', ticket.id)}>
              {t('app:debrief.live')}
            </a>
            <button type="button" class="button" onClick={() => print()}>
              {t('settings:print')}
            </button>
          </p>
        </div>
        <p class="debrief-total">
          <span class="unseen">{t('app:debrief.score')} </span>
          <b data-testid="total">{number(debrief.total)}</b>
          <span>{t('app:debrief.of', { of: 100 })}</span>
        </p>
      </div>
      {isGuided(ticket.id) && next !== undefined && (
        <p class="guided-end">
          {t('guided:end', {
            start: debrief.suspectsAtStart,
            end: judged.at(-1)?.left ?? debrief.suspectsAtStart,
            next: titleOf(next.id),
          })}
        </p>
      )}
      <div class="debrief-body">
        <section class="debrief-chart" aria-labelledby="chart-title">
          <h2 id="chart-title">{t('app:debrief.chart.title')}</h2>
          <p class="unseen">
            {t('app:debrief.chart.alt', { start: debrief.suspectsAtStart, end: judged.at(-1)?.left ?? debrief.suspectsAtStart })}
          </p>
          <SuspectsChart
            start={debrief.suspectsAtStart}
            steps={judged}
            shortWay={debrief.par.left}
            words={words}
            chosen={chosen}
            onChoose={setChosen}
          />
          <StepTable reviewed={reviewed} words={words} />
        </section>
        <div class="debrief-side">
          <ScoreLines
            debrief={debrief}
            words={(step) => wordsOf(told, step)}
            onStep={(step) => {
              setChosen(step);
              goToStep(step);
            }}
          />
          {card !== undefined && (
            <section class="step-card" aria-live="polite">
              <h2>{t('app:debrief.stepTitle', { step: card.number, words: kindText(reviewed, card) })}</h2>
              <StepBody reviewed={reviewed} step={card} />
            </section>
          )}
        </div>
        <div class="debrief-rest">
          <section class="debrief-steps" aria-labelledby="steps-title">
            <h2 id="steps-title">{t('app:debrief.steps')}</h2>
            <StepList steps={judged} reviewed={reviewed} />
            {after.length > 0 && (
              <details class="debrief-after">
                <summary>{t('app:debrief.after', { count: after.length })}</summary>
                <StepList steps={after} reviewed={reviewed} />
              </details>
            )}
          </section>
          {debrief.par.actions.length > 0 && (
            <details class="debrief-fold">
              <summary>
                <h2>{t('app:debrief.shortWayTitle', shortWayValues(debrief))}</h2>
              </summary>
              <ol class="short-way">
                {shortWay.map((each, index) => (
                  <li key={each.step.number}>
                    <span>{stepWords(each)}</span>
                    <span>{t('app:debrief.left', { count: debrief.par.left[index] ?? 1 })}</span>
                  </li>
                ))}
              </ol>
            </details>
          )}
          <TreeFold reviewed={reviewed} />
          {debrief.alike.length > 0 && (
            <section>
              <h2>{t('app:debrief.alike')}</h2>
              <ul>
                {debrief.alike.map((each) => (
                  <li key={namingText(each)}>{namingText(each)}</li>
                ))}
              </ul>
            </section>
          )}
          {debrief.leftAtNaming.length > 1 && (
            <details class="debrief-fold">
              <summary>
                <h2>{t('app:debrief.leftAtNaming', { count: debrief.leftAtNaming.length })}</h2>
              </summary>
              <ul class="ruled-out">
                {debrief.leftAtNaming.map((each) => (
                  <li key={namingText(each)}>{namingText(each)}</li>
                ))}
              </ul>
            </details>
          )}
        </div>
      </div>
    </>
  );
}

function StepTable({ reviewed, words }: { readonly reviewed: Reviewed; readonly words: (step: JudgedStep) => string }) {
  const { debrief } = reviewed;
  return (
    <details class="step-table">
      <summary class="table-summary">{t('app:debrief.table')}</summary>
      <table>
        <thead>
          <tr>
            {['step', 'what', 'left', 'kind'].map((each) => (
              <th key={each} scope="col">
                {t(`app:debrief.column.${each}`)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          <tr>
            <th scope="row">0</th>
            <td>{t('app:debrief.start')}</td>
            <td>{number(debrief.suspectsAtStart)}</td>
            <td />
          </tr>
          {debrief.steps.map((step) => (
            <tr key={step.number}>
              <th scope="row">{step.number}</th>
              <td>{words(step)}</td>
              <td>{number(step.left)}</td>
              <td>{kindText(reviewed, step)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}

interface StepListProps {
  readonly steps: readonly JudgedStep[];
  readonly reviewed: Reviewed;
}

function StepList({ steps, reviewed }: StepListProps) {
  return (
    <ol>
      {steps.map((step) => (
        <li key={step.number} class={step.kind}>
          <details id={`step-${step.number}`}>
            <summary class="step-summary">
              <span class="step-number">{step.number}</span>
              <span class="step-words">{wordsOf(reviewed.told, step.number)}</span>
              <span class="step-kind">{step.kind !== 'after' && kindText(reviewed, step)}</span>
            </summary>
            <div class="step-body">
              <StepBody reviewed={reviewed} step={step} />
            </div>
          </details>
        </li>
      ))}
    </ol>
  );
}
