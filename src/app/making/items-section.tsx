import { useEffect, useState } from 'preact/hooks';
import type { AssignmentItem } from '../../classroom/assignment.ts';
import { withWeight } from '../../classroom/weights.ts';
import { checkTicket } from '../../scenario/check.ts';
import { loadTicket } from '../../scenario/ticket.ts';
import { parseJson } from '../json-text.ts';
import { rigOf, storyOf, tickets } from '../library.ts';
import { titleOf } from '../ticket-words.ts';
import { number, span, t } from '../words.ts';
import { whyNot } from './error-text.ts';
import { FileButton, SelectField, Slip } from './fields.tsx';
import { MOST_CHARACTERS } from './json-section.tsx';
import { loadDraft, readMaking } from './kept.ts';
import { PoolMaker } from './pool-maker.tsx';
import { WeightField } from './weight-field.tsx';

interface Props {
  readonly items: readonly AssignmentItem[];
  /** Of the total, by place; undefined where all count the same. */
  readonly shares: readonly number[] | undefined;
  /** No more fit beside what else the assignment has. */
  readonly most: number;
  readonly onItems: (items: AssignmentItem[]) => void;
}

/** What an item is, in words. */
function itemText(item: AssignmentItem): string {
  switch (item.kind) {
    case 'shipped':
      return tickets.some(({ id }) => id === item.ticket) ? titleOf(item.ticket) : item.ticket;
    case 'own':
      return t('builder:assign.ownItem', { id: item.ticket.id, title: ownTitle(item) });
    case 'drawn': {
      const { recipe, pool } = item;
      const seconds = pool.map((each) => each.seconds);
      return t('builder:assign.drawnItem', {
        rig: t(`rig:name.${recipe.rig}`),
        pool: number(pool.length),
        from: span(Math.min(...seconds)),
        to: span(Math.max(...seconds)),
        skill: recipe.skill === undefined ? t('builder:assign.anySkill') : t(`keeping:skill.${recipe.skill}`),
        grade: recipe.grade === undefined ? t('builder:assign.anyGrade') : t(`app:grade.${recipe.grade}`),
      });
    }
  }
}

/** What an own ticket's customer calls it; its id where its rig is not here. */
function ownTitle({ ticket }: Extract<AssignmentItem, { kind: 'own' }>): string {
  try {
    return t(`ticket:made.title.${storyOf(ticket).symptom}`);
  } catch {
    return ticket.id;
  }
}

/** The tickets of an assignment: shipped ones, own ones, and pools from which everybody draws another. */
export function ItemsSection({ items, shares, most, onItems }: Props) {
  const [shipped, setShipped] = useState(tickets[0]?.id ?? '');
  const [said, setSaid] = useState('');
  useEffect(() => setSaid(''), [items]);
  const add = (item: AssignmentItem) => onItems([...items, item]);
  const addOwn = (json: () => unknown, file = '') => {
    try {
      const ticket = loadTicket(json());
      checkTicket(ticket, rigOf(ticket));
      add({ kind: 'own', ticket });
    } catch (error) {
      setSaid(whyNot(error, file));
    }
  };
  return (
    <Slip title={t('builder:assign.items')}>
      <ol class="make-list make-items">
        {items.map((item, index) => (
          <li key={`${index} ${item.kind}`} data-kind={item.kind}>
            <span>{itemText(item)}</span>
            <WeightField
              name={itemText(item)}
              weight={item.weight}
              share={shares?.[index]}
              onWeight={(weight) => onItems(items.map((each, other) => (other === index ? withWeight(each, weight) : each)))}
            />
            <button type="button" class="button small" onClick={() => onItems(items.filter((_, other) => other !== index))}>
              {t('builder:remove')}
              <span class="unseen"> {itemText(item)}</span>
            </button>
          </li>
        ))}
      </ol>
      {items.length === 0 && <p>{t('builder:assign.none')}</p>}
      {items.length < most && (
        <>
          <h3>{t('builder:assign.sameForAll')}</h3>
          <div class="make-row">
            <SelectField
              label={t('builder:assign.shipped')}
              value={shipped}
              options={tickets.map(({ id, rig }) => [id, `${titleOf(id)} · ${t(`rig:name.${rig}`)}`] as const)}
              onValue={setShipped}
            />
            <button type="button" class="button" onClick={() => add({ kind: 'shipped', ticket: shipped })}>
              {t('builder:assign.addShipped')}
            </button>
          </div>
          <div class="make-buttons">
            <button
              type="button"
              class="button"
              onClick={() => {
                const draft = readMaking('ticket', loadDraft);
                if (draft === undefined || draft.faults.length === 0) setSaid(t('builder:assign.noDraft'));
                else addOwn(() => draft);
              }}
            >
              {t('builder:assign.addMade')}
            </button>
            <FileButton
              words={t('builder:assign.addFile')}
              onText={(text, name) => addOwn(() => parseJson(text, MOST_CHARACTERS), name)}
            />
          </div>
          <p role="status">{said}</p>
          <h3>{t('builder:assign.eachOwn')}</h3>
          <PoolMaker onPool={add} />
        </>
      )}
    </Slip>
  );
}
