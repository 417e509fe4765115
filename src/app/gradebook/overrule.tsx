import { useId, useState } from 'preact/hooks';
import { moment } from '../lab/moment.ts';
import { pointsText } from '../points-text.ts';
import { t } from '../words.ts';
import { overrule, useBook } from './store.ts';

interface Props {
  readonly trainee: string;
  readonly item: number;
  /** That count now. */
  readonly points: number | undefined;
}

/** The instructor's own points: what was decided so far, and a new decision. None is ever taken away. */
export function OverruleSection({ trainee, item, points }: Props) {
  const { book } = useBook();
  const made = book.overrules.filter((each) => each.trainee === trainee && each.item === item);
  return (
    <section class="book-overrule">
      <h3>{t('gradebook:overrule.title')}</h3>
      {made.length > 0 && (
        <ol class="book-list" data-testid="overrules">
          {made.map((each, index) => (
            <li key={index}>
              {t('gradebook:overrule.made', { points: pointsText(each.points), by: each.by, when: moment(each.at) })}{' '}
              {index === made.length - 1 && <b>{t('gradebook:overrule.inForce')}</b>}
              <blockquote>{each.reason}</blockquote>
            </li>
          ))}
        </ol>
      )}
      <Form key={made.length} trainee={trainee} item={item} points={points} />
    </section>
  );
}

function Form({ trainee, item, points }: Props) {
  const { by: last } = useBook();
  const [value, setValue] = useState(points === undefined ? '' : String(points));
  const [reason, setReason] = useState('');
  const [by, setBy] = useState(last);
  const id = useId();
  return (
    <form
      class="book-form"
      onSubmit={(event) => {
        event.preventDefault();
        const [why, who] = [reason.trim(), by.trim()];
        const worth = Number(value);
        if (value === '' || !(worth >= 0 && worth <= 100) || why === '' || who === '') return;
        overrule({ trainee, item, points: worth, reason: why, by: who, at: new Date().toISOString() });
      }}
    >
      <p>{t('gradebook:overrule.what')}</p>
      <div class="book-field">
        <label for={`${id}points`}>{t('gradebook:overrule.points')}</label>
        <input
          id={`${id}points`}
          type="number"
          min={0}
          max={100}
          step="any"
          required
          value={value}
          onInput={(event) => setValue(event.currentTarget.value)}
        />
      </div>
      <div class="book-field book-wide">
        <label for={`${id}reason`}>{t('gradebook:overrule.reason')}</label>
        <textarea
          id={`${id}reason`}
          rows={2}
          maxLength={500}
          required
          value={reason}
          onInput={(event) => setReason(event.currentTarget.value)}
        />
      </div>
      <div class="book-field">
        <label for={`${id}by`}>{t('gradebook:overrule.by')}</label>
        <input
          id={`${id}by`}
          maxLength={80}
          required
          autocomplete="off"
          value={by}
          onInput={(event) => setBy(event.currentTarget.value)}
        />
      </div>
      <button type="submit" class="button act">
        {t('gradebook:overrule.go')}
      </button>
    </form>
  );
}
