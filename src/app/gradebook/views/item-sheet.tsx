import type { Doubt } from '../../../classroom/doubts.ts';
import { drawnFor } from '../../../classroom/draw.ts';
import type { Cell, Gradebook } from '../../../classroom/gradebook.ts';
import { type Debrief, SCORE_ITEMS } from '../../../score/debrief.ts';
import { DEFAULT_RUBRIC } from '../../../score/rubric.ts';
import { SuspectsChart } from '../../debrief/chart.tsx';
import { reasonText, signed } from '../../debrief/score-lines.tsx';
import { wordsOf } from '../../debrief/step-body.tsx';
import { moment } from '../../lab/moment.ts';
import { library } from '../../library.ts';
import type { StepTold } from '../../step-words.ts';
import { titleOf } from '../../ticket-words.ts';
import { listed, namingText, number, t } from '../../words.ts';
import { pointsText } from '../table.tsx';
import { doubtText, itemName } from '../words.ts';
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
  const { id, told } = drawnFor(assignment, code, cell.item, library);
  return (
    <section class="sheet-item">
      <h3>
        <span>{t('classview:items.one', { name: itemName(cell.item), title: titleOf(id, told) })}</span>
        <span class="sheet-points">
          {points === undefined
            ? t('gradebook:table.noPoints')
            : t('app:debrief.points', { points: pointsText(points), of: number(100) })}
        </span>
      </h3>
      {entry === undefined && <p>{t('gradebook:table.nothing')}</p>}
      {entry !== undefined && reviewed === undefined && (
        <p>{t(cell.result === undefined ? 'gradebook:detail.noReplay' : 'classview:report.failed')}</p>
      )}
      {entry !== undefined && attempts > 1 && (
        <p>{t('classview:report.attempt', { attempt: number(entry.attempt), count: attempts })}</p>
      )}
      {reviewed && <Replayed reviewed={reviewed} />}
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

/** What is in doubt, and what the instructor decided. */
function Decided({ cell: { doubts, open, overrule, result } }: Pick<Props, 'cell'>) {
  return (
    <>
      {doubts.length > 0 && (
        <div class="sheet-doubts">
          <h4>{t(open ? 'gradebook:detail.open' : 'gradebook:detail.settled')}</h4>
          <ul>
            {[...new Set(doubts.map(({ doubt }) => ownDoubtText(doubt)))].map((words) => (
              <li key={words}>{words}</li>
            ))}
          </ul>
        </div>
      )}
      {overrule !== undefined && (
        <div class="sheet-overrule">
          <h4>{t('gradebook:table.overruled')}</h4>
          <p>
            {t('gradebook:overrule.made', {
              points: pointsText(overrule.points),
              by: overrule.by,
              when: moment(overrule.at),
            })}
          </p>
          {result !== undefined && <p>{t('classview:report.replayed', { points: number(result.total) })}</p>}
          <blockquote>{overrule.reason}</blockquote>
        </div>
      )}
    </>
  );
}

/** A doubt as its trainee may read it: nobody else is named. */
function ownDoubtText(doubt: Doubt): string {
  return doubt.code === 'sameLog' || doubt.code === 'othersLog' ? t(`classview:report.doubt.${doubt.code}`) : doubtText(doubt);
}
