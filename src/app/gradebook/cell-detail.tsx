import { useMemo } from 'preact/hooks';
import type { AttemptLog } from '../../attempt/attempt.ts';
import type { PaperSetting } from '../../classroom/assignment.ts';
import { drawnFor, type Work, workWith } from '../../classroom/draw.ts';
import { type Entry, pointsIn } from '../../classroom/entry.ts';
import type { Result } from '../../classroom/grade.ts';
import type { Cell, Gradebook, Row } from '../../classroom/gradebook.ts';
import { SCORE_ITEMS } from '../../score/debrief.ts';
import { Dialog } from '../bench/dialog.tsx';
import { library } from '../library.ts';
import { pointsText } from '../points-text.ts';
import { retell } from '../retell.ts';
import { stepWords } from '../step-words.ts';
import { titleOf } from '../ticket-words.ts';
import { namingText, number, t } from '../words.ts';
import { submissionOf } from './book.ts';
import { OverruleSection } from './overrule.tsx';
import { PaperAnswers, paperFacts } from './paper-answers.tsx';
import { useBook } from './store.ts';
import { doubtText, itemTitle, nameOf } from './words.ts';

interface Props {
  readonly gradebook: Gradebook;
  readonly row: Row;
  readonly cell: Cell;
  readonly onDone: () => void;
}

/** One trainee's grade at one item: why it is what it is, what is in doubt, and the instructor's own word on it. */
export function CellDetail({ gradebook: { assignment }, row: { trainee }, cell, onDone }: Props) {
  const { doubts, points, entry } = cell;
  const paper = assignment.papers?.[cell.item - assignment.items.length];
  return (
    <Dialog title={`${nameOf(trainee)}, ${itemTitle(assignment, cell.item)}`} onDone={onDone}>
      {doubts.length > 0 && (
        <section class="book-doubts" data-open={cell.open || undefined}>
          <h3>{t(cell.open ? 'gradebook:detail.open' : 'gradebook:detail.settled')}</h3>
          <ul>
            {doubts.map(({ doubt, entry: { file } }, index) => (
              <li key={index}>
                {doubtText(doubt)} <small>{file}</small>
              </li>
            ))}
          </ul>
        </section>
      )}
      {paper === undefined ? (
        <TicketCell assignment={assignment} code={trainee.code} cell={cell} />
      ) : (
        <PaperCell setting={paper} code={trainee.code} cell={cell} />
      )}
      {entry === undefined && <p>{t('gradebook:table.nothing')}</p>}
      <OverruleSection trainee={trainee.code} item={cell.item} points={points} />
    </Dialog>
  );
}

interface CellProps {
  readonly code: string;
  readonly cell: Cell;
}

/** Work at a ticket. */
function TicketCell({ assignment, code, cell }: CellProps & Pick<Gradebook, 'assignment'>) {
  const { entry, result, points } = cell;
  const work = useMemo(
    () => workWith(assignment, cell.item, drawnFor(assignment, code, cell.item, library), library),
    [assignment, code, cell.item],
  );
  return (
    <>
      <p>
        {titleOf(work.ticket.id, work.ticket.told)} · {t(`rig:name.${work.rig.id}`)}
      </p>
      <dl class="book-facts">
        <PointsFact points={points} />
        {result !== undefined && <ResultFacts result={result} />}
      </dl>
      {entry !== undefined && (
        <>
          <Attempts cell={cell} code={code} />
          {result === undefined ? <p>{t('gradebook:detail.noReplay')}</p> : <Needless entry={entry} result={result} work={work} />}
          <OwnWords entry={entry} />
        </>
      )}
    </>
  );
}

/** Answers to exercises or an exam. */
function PaperCell({ setting, code, cell }: CellProps & { readonly setting: PaperSetting }) {
  const { entry, points } = cell;
  const paper = entry?.paper;
  return (
    <>
      <dl class="book-facts">
        <PointsFact points={points} />
        {paper !== undefined && (
          <>
            <Fact name="replayed">{pointsText(paper.total)}</Fact>
            {paperFacts(setting, paper).map(([name, words]) => (
              <Fact key={name} name={name}>
                {words}
              </Fact>
            ))}
          </>
        )}
      </dl>
      {entry !== undefined && <Attempts cell={cell} code={code} />}
      {paper !== undefined && <PaperAnswers paper={paper} heading="h3" />}
      {entry !== undefined && paper === undefined && <p>{t('gradebook:paper.noGrade')}</p>}
    </>
  );
}

const PointsFact = ({ points }: Pick<Cell, 'points'>) => (
  <Fact name="points">{points === undefined ? t('gradebook:table.noPoints') : pointsText(points)}</Fact>
);

/** A figure under the name that it has in the table that is saved. */
function Fact({ name, children }: { readonly name: string; readonly children: string }) {
  return (
    <div>
      <dt>{t(`gradebook:column.${name}`)}</dt>
      <dd data-testid={name}>{children}</dd>
    </div>
  );
}

function ResultFacts({ result }: { readonly result: Result }) {
  return (
    <>
      <Fact name="replayed">{number(result.total)}</Fact>
      {SCORE_ITEMS.map((item) => (
        <Fact key={item} name={item}>
          {number(result.items[item], Number.isInteger(result.items[item]) ? 0 : 1)}
        </Fact>
      ))}
      <Fact name="fault">{namingText(result.truth)}</Fact>
      <Fact name="named">
        {result.named === undefined
          ? t('gradebook:detail.notNamed')
          : `${namingText(result.named)} (${t(result.rightNaming ? 'gradebook:detail.right' : 'gradebook:detail.wrong')})`}
      </Fact>
      <Fact name="minutes">
        {t('gradebook:detail.minutes', { minutes: number(result.minutes, 1), par: number(result.parMinutes, 1) })}
      </Fact>
      <Fact name="steps">{number(result.steps)}</Fact>
      <Fact name="wastedSteps">{number(result.wastedSteps)}</Fact>
    </>
  );
}

/** All attempts that were handed in, and which of them counts. */
function Attempts({ cell: { entry, item, attempts }, code }: { readonly cell: Cell; readonly code: string }) {
  const { book } = useBook();
  if (attempts < 2) return <p class="book-file">{entry?.file}</p>;
  const all = [...book.entries.values()]
    .filter((each) => each.trainee.code === code && each.item === item)
    .sort((a, b) => a.attempt - b.attempt);
  const isCounted = (each: Entry) => each.seal === entry?.seal && each.file === entry.file;
  return (
    <ul class="book-list">
      {all.map((each, index) => (
        <li key={index}>
          {t('gradebook:detail.attempt', {
            attempt: number(each.attempt),
            points: attemptPoints(each),
          })}{' '}
          <small>{each.file}</small> {isCounted(each) && <b>{t('gradebook:detail.counts')}</b>}
        </li>
      ))}
    </ul>
  );
}

function attemptPoints(entry: Entry): string {
  const points = pointsIn(entry);
  return points === undefined ? t('gradebook:table.noPoints') : pointsText(points);
}

interface NeedlessProps {
  readonly entry: Entry;
  readonly result: Result;
  readonly work: Work;
}

/** The steps that told nothing, as they were taken. */
function Needless({ entry, result, work }: NeedlessProps) {
  const { book } = useBook();
  const log = submissionOf(book, entry)?.log as AttemptLog | undefined;
  const told = useMemo(
    () =>
      log === undefined || result.wasted.length === 0
        ? []
        : retell(
            work.ticket,
            work.rig,
            log.steps.map(({ action }) => action),
          ).told,
    [log, result, work],
  );
  if (result.wasted.length === 0) return null;
  return (
    <details class="book-fold">
      <summary>{t('gradebook:detail.needless', { count: result.wasted.length })}</summary>
      <ol class="book-list">
        {result.wasted.map(({ step }) => {
          const each = told[step - 1];
          return (
            <li key={step} value={step}>
              {each === undefined ? '' : stepWords(each)}
            </li>
          );
        })}
      </ol>
    </details>
  );
}

/** What the trainee wrote into the service report: people grade it, no program does. */
function OwnWords({ entry }: { readonly entry: Entry }) {
  const { book } = useBook();
  const words = submissionOf(book, entry)?.words;
  if (words === undefined || words === '') return null;
  return (
    <section class="book-words">
      <h3>{t('gradebook:detail.words')}</h3>
      <blockquote>{words}</blockquote>
    </section>
  );
}
