import { useState } from 'preact/hooks';
import { placesOf } from '../../../classroom/assignment.ts';
import type { Gradebook } from '../../../classroom/gradebook.ts';
import { groupBy } from '../../../classroom/group.ts';
import type { Analysis } from '../../../classroom/itemAnalysis.ts';
import { doneText } from '../../action-words.ts';
import { library } from '../../library.ts';
import { titleOf } from '../../ticket-words.ts';
import { namingText, number, percent, t } from '../../words.ts';
import { itemName } from '../words.ts';
import { byChance, verdictOn } from './discrimination.ts';
import { namingView, ticketAt, ticketsAt } from './item-tickets.ts';
import { measuredText } from './measured-words.ts';
import { PaperItem } from './paper-item.tsx';

type Assignment = Gradebook['assignment'];

interface Props {
  readonly gradebook: Gradebook;
}

/** What each item shows about the class, and the class about the item. */
export function ItemsView({ gradebook: { assignment, analyses, papers } }: Props) {
  const items = groupBy(analyses, ({ item }) => String(item));
  return (
    <div class="items-view">
      <p>{t('classview:items.how')}</p>
      {[...items.values()].map(([whole, ...tickets]) =>
        whole === undefined ? null : (
          <section key={whole.item} class="item-analysis" aria-labelledby={`item-${whole.item}`}>
            <h3 id={`item-${whole.item}`}>{ticketsTitle(assignment, whole.item)}</h3>
            <AnalysisFacts assignment={assignment} analysis={whole} isMixed={tickets.length > 0} />
            {tickets.length > 0 && <Tickets assignment={assignment} tickets={tickets} />}
          </section>
        ),
      )}
      {papers.map((analysis) => (
        <PaperItem key={analysis.item} assignment={assignment} analysis={analysis} />
      ))}
    </div>
  );
}

/** An item by its place, and by its ticket's title where it has but one. */
function ticketsTitle(assignment: Assignment, index: number): string {
  const name = itemName(assignment, index);
  const tickets = ticketsAt(assignment, index, library);
  const [only] = tickets;
  if (only === undefined) return name;
  return tickets.length === 1
    ? t('classview:items.one', { name, title: titleOf(only.id, only.told) })
    : t('classview:items.several', { name, rig: t(`rig:name.${only.rig}`), count: tickets.length });
}

function Tickets({ assignment, tickets }: { readonly assignment: Assignment; readonly tickets: readonly Analysis[] }) {
  // Tickets' systems are put together for their words when a hand first wants them.
  const [isOpen, setOpen] = useState(false);
  return (
    <details class="item-tickets" data-lazy onToggle={(event) => event.currentTarget.open && setOpen(true)}>
      <summary>{t('classview:items.tickets', { count: tickets.length })}</summary>
      {isOpen &&
        tickets.map((analysis) => (
          <section key={analysis.ticket} aria-label={analysis.ticket}>
            <h4>{ticketTitle(assignment, analysis)}</h4>
            <AnalysisFacts assignment={assignment} analysis={analysis} />
          </section>
        ))}
    </details>
  );
}

/** A drawn ticket by its fault: the tickets of a pool tell themselves apart by nothing else. */
function ticketTitle(assignment: Assignment, { item, ticket: id = '' }: Analysis): string {
  const ticket = ticketAt(assignment, item, id, library);
  const [fault, also] = ticket?.faults ?? [];
  if (ticket === undefined || fault === undefined) return id;
  return t('classview:items.ticket', { ticket: id, fault: namingText({ ...fault, also }) });
}

interface FactsProps {
  readonly assignment: Assignment;
  readonly analysis: Analysis;
  /** Of several tickets together: what is about one of them says of which. */
  readonly isMixed?: boolean;
}

function AnalysisFacts({ assignment, analysis, isMixed = false }: FactsProps) {
  const onTicket = (ticket: string, words: string) => (isMixed ? t('classview:items.onTicket', { words, ticket }) : words);
  const { count, rightCount, difficulty, wastedStep, wrongNaming, toldApart } = analysis;
  if (count === 0 || difficulty === undefined) return <p>{t('classview:items.nobody')}</p>;
  return (
    <dl class="item-facts">
      <Fact name={t('classview:items.named')}>{t('classview:items.right', { right: number(rightCount), count })}</Fact>
      <Fact name={t('classview:items.difficulty')}>
        {t('classview:items.share', { difficulty: number(difficulty, 2), share: percent(difficulty) })}
      </Fact>
      <Fact name={t('classview:items.discriminationName')}>{discriminationText(analysis, placesOf(assignment))}</Fact>
      <Fact name={t('classview:items.wasted')}>
        {wastedStep === undefined
          ? t('classview:items.noWaste')
          : t('classview:items.by', {
              what: onTicket(wastedStep.ticket, actionText(assignment, analysis.item, wastedStep)),
              count: wastedStep.trainees,
              share: percent(wastedStep.trainees / count),
            })}
      </Fact>
      <Fact name={t('classview:items.wrong')}>
        {wrongNaming === undefined
          ? t(rightCount === count ? 'classview:items.noWrong' : 'classview:items.noNaming')
          : t('classview:items.by', {
              what: onTicket(wrongNaming.ticket, namingText(wrongNaming.naming)),
              count: wrongNaming.trainees,
              share: percent(wrongNaming.trainees / count),
            })}
      </Fact>
      <Fact name={t('classview:items.apart')}>
        {toldApart.length === 0 ? (
          t(rightCount === 0 || rightCount === count ? 'classview:items.noApart' : 'classview:items.sameApart')
        ) : (
          <ul>
            {toldApart.map((each) => (
              <li key={`${each.ticket} ${each.measured}`}>
                {t('classview:items.shares', {
                  what: onTicket(each.ticket, measurementText(assignment, analysis.item, each)),
                  right: percent(each.right),
                  wrong: percent(each.wrong),
                })}
              </li>
            ))}
          </ul>
        )}
      </Fact>
    </dl>
  );
}

function Fact({ name, children }: { readonly name: string; readonly children: preact.ComponentChildren }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{children}</dd>
    </div>
  );
}

function discriminationText(analysis: Analysis, items: number): string {
  const verdict = verdictOn(analysis, items);
  const { count, discrimination } = analysis;
  const words = t(`classview:items.discrimination.${verdict}`, { count, chance: number(byChance(count), 2) });
  return discrimination === undefined ? words : t('classview:items.figure', { figure: number(discrimination, 2), words });
}

interface At {
  readonly ticket: string;
}

function actionText(assignment: Assignment, item: number, step: At & NonNullable<Analysis['wastedStep']>): string {
  const ticket = ticketAt(assignment, item, step.ticket, library);
  return ticket === undefined ? step.action.name : doneText(namingView(assignment, item, ticket, library), step.action);
}

function measurementText(assignment: Assignment, item: number, each: At & Analysis['toldApart'][number]): string {
  const ticket = ticketAt(assignment, item, each.ticket, library);
  return ticket === undefined ? each.measured : measuredText(namingView(assignment, item, ticket, library), each.measured);
}
