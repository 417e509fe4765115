import type { PaperSetting } from '../../../classroom/assignment.ts';
import { drawnFor } from '../../../classroom/draw.ts';
import type { PaperResult } from '../../../classroom/gradeAnswers.ts';
import type { Cell, Gradebook } from '../../../classroom/gradebook.ts';
import { sharesOf } from '../../../classroom/weights.ts';
import { type Debrief, SCORE_ITEMS } from '../../../score/debrief.ts';
import { DEFAULT_RUBRIC } from '../../../score/rubric.ts';
import { SuspectsChart } from '../../debrief/chart.tsx';
import { reasonText, signed } from '../../debrief/score-lines.tsx';
import { wordsOf } from '../../debrief/step-body.tsx';
import { library } from '../../library.ts';
import { pointsText } from '../../points-text.ts';
import type { StepTold } from '../../step-words.ts';
import { titleOf } from '../../ticket-words.ts';
import { listed, namingText, number, percent, t } from '../../words.ts';
import { PaperAnswers, paperFacts } from '../paper-answers.tsx';
import { itemName, itemTitle } from '../words.ts';
import { Decided } from './decided.tsx';
import { type Loss, lossesOf } from './points-lost.ts';
import type { Reviewed } from './use-reviews.ts';

interface Props {
  readonly assignment: Gradebook['assignment'];
  /** The trainee's code. */
  readonly code: string;
  readonly cell: Cell;
  /** Undefined where the attempt does not replay, or there is none. */
  readonly reviewed: Reviewed | undefined;
}

/** The chart on a sheet, CSS pixels. */
const CHART_HEIGHT = 96;

/** One item of a trainee's report: what it came to, and why. */
export function ItemSheet({ assignment, code, cell, reviewed }: Props) {
  const { points, entry, attempts } = cell;
  const paper = assignment.papers?.[cell.item - assignment.items.length];
  const share = sharesOf(assignment)?.[cell.item];
  return (
    <section class="sheet-item">
      <h3>
        <span>{paper === undefined ? ticketTitle(assignment, code, cell.item) : itemTitle(assignment, cell.item)}</span>
        <span class="sheet-points">
          {points === undefined
            ? t('gradebook:table.noPoints')
            : t('app:debrief.points', { points: pointsText(points), of: number(100) })}
        </span>
      </h3>
      {share !== undefined && <p>{t('classview:report.share', { share: percent(share) })}</p>}
      {entry === undefined && <p>{t('gradebook:table.nothing')}</p>}
      {entry !== undefined && paper === undefined && reviewed === undefined && (
        <p>{t(cell.result === undefined ? 'gradebook:detail.noReplay' : 'classview:report.failed')}</p>
      )}
      {entry !== undefined && paper !== undefined && entry.paper === undefined && <p>{t('gradebook:paper.noGrade')}</p>}
      {entry !== undefined && attempts > 1 && (
        <p>{t('classview:report.attempt', { attempt: number(entry.attempt), count: attempts })}</p>
      )}
      {reviewed && <Replayed reviewed={reviewed} />}
      {paper !== undefined && entry?.paper && <Answered setting={paper} paper={entry.paper} />}
      <Decided cell={cell} />
      {reviewed && reviewed.words.trim() !== '' && (
        <div class="sheet-words">
          <h4>{t('gradebook:detail.words')}</h4>
          <blockquote>{reviewed.words}</blockquote>
        </div>
      )}
    </section>
  );
}

function ticketTitle(assignment: Props['assignment'], code: string, item: number): string {
  const { id, told } = drawnFor(assignment, code, item, library);
  return t('classview:items.one', { name: itemName(assignment, item), title: titleOf(id, told) });
}

function Answered({ setting, paper }: { readonly setting: PaperSetting; readonly paper: PaperResult }) {
  return (
    <>
      <dl class="sheet-facts">
        {paperFacts(setting, paper).map(([name, words]) => (
          <Fact key={name} name={t(`gradebook:column.${name}`)}>
            {words}
          </Fact>
        ))}
      </dl>
      <PaperAnswers paper={paper} heading="h4" />
    </>
  );
}

function Replayed({ reviewed: { debrief, told, work } }: { readonly reviewed: Reviewed }) {
  const losses = lossesOf(debrief, work.ticket.rubric ?? DEFAULT_RUBRIC);
  const judged = debrief.steps.filter(({ kind }) => kind !== 'after');
  const lefts = [debrief.suspectsAtStart, ...judged.map(({ left }) => left)];
  return (
    <>
      <dl class="sheet-facts">
        <Fact name={t('gradebook:column.fault')}>{namingText(debrief.truth)}</Fact>
        <Fact name={t('gradebook:column.named')}>{namedText(debrief)}</Fact>
        <Fact name={t('gradebook:column.minutes')}>
          {t('gradebook:detail.minutes', { minutes: number(debrief.minutes, 1), par: number(debrief.par.seconds / 60, 1) })}
        </Fact>
      </dl>
      <div class="sheet-score">
        <table>
          <caption class="unseen">{t('app:debrief.items')}</caption>
          <thead>
            <tr>
              <th scope="col">{t('classview:report.part')}</th>
              <th scope="col">{t('gradebook:column.points')}</th>
              <th scope="col">{t('classview:report.lost')}</th>
            </tr>
          </thead>
          <tbody>
            {SCORE_ITEMS.map((item) => {
              const { points, of } = debrief.items[item];
              return (
                <tr key={item} data-item={item}>
                  <th scope="row">{t(`score:item.${item}`)}</th>
                  <td class="sheet-points">{t('app:debrief.points', { points: pointsText(rounded(points)), of: number(of) })}</td>
                  <td>
                    <Losses losses={losses[item]} told={told} />
                  </td>
                </tr>
              );
            })}
            {debrief.hints.length > 0 && (
              <tr data-item="hints">
                <th scope="row">{t('app:debrief.hints')}</th>
                <td class="sheet-points">{signed(debrief.hints.reduce((sum, { points }) => sum + points, 0))}</td>
                <td>
                  <Losses losses={losses.hints} told={told} />
                </td>
              </tr>
            )}
          </tbody>
        </table>
        <div class="sheet-chart">
          <p class="unseen">{t('classview:report.lefts', { counts: listed(lefts.map((each) => number(each))) })}</p>
          <SuspectsChart start={debrief.suspectsAtStart} steps={judged} shortWay={debrief.par.left} height={CHART_HEIGHT} />
        </div>
      </div>
    </>
  );
}

function Fact({ name, children }: { readonly name: string; readonly children: string }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{children}</dd>
    </div>
  );
}

function namedText({ named, rightNaming }: Debrief): string {
  if (named === undefined) return t('gradebook:detail.notNamed');
  return `${namingText(named)} (${t(rightNaming ? 'gradebook:detail.right' : 'gradebook:detail.wrong')})`;
}

const rounded = (points: number): number => Math.round(points * 10) / 10;

function Losses({ losses, told }: { readonly losses: readonly Loss[]; readonly told: readonly StepTold[] }) {
  if (losses.length === 0) return t('classview:report.nothingLost');
  return (
    <ul>
      {losses.map((loss) => (
        <li key={`${loss.code} ${loss.step}`}>
          <b>{signed(loss.points)}</b> {lossText(loss, told)}
        </li>
      ))}
    </ul>
  );
}

/** The reason, and each step that shows it. */
function lossText(loss: Loss, told: readonly StepTold[]): string {
  const reason = reasonText(loss);
  if (loss.steps.length === 0) return reason;
  const steps = loss.steps.map((step) => t('app:debrief.wasted.step', { step, words: wordsOf(told, step) }));
  return t('classview:report.at', { reason, steps: listed(steps) });
}
