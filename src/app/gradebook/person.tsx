import { useState } from 'preact/hooks';
import type { Row } from '../../classroom/gradebook.ts';
import { Dialog } from '../bench/dialog.tsx';
import { download } from '../lab/download.ts';
import { reportsHref } from '../router.ts';
import { number, t } from '../words.ts';
import { personOf } from './book.ts';
import { bookNow, erase } from './store.ts';
import { nameOf } from './words.ts';

interface Props {
  readonly row: Row;
  readonly onDone: () => void;
}

/** One trainee: a copy of all that the book has of them, or their erasure from it. */
export function Person({ row: { trainee, total, cells }, onDone }: Props) {
  const [isAsked, setIsAsked] = useState(false);
  const handedIn = cells.reduce((sum, { attempts }) => sum + attempts, 0);
  return (
    <Dialog title={nameOf(trainee)} onDone={onDone}>
      <dl class="book-facts">
        <div>
          <dt>{t('gradebook:column.trainee')}</dt>
          <dd>{trainee.code}</dd>
        </div>
        <div>
          <dt>{t('gradebook:column.attempts')}</dt>
          <dd>{number(handedIn)}</dd>
        </div>
        <div>
          <dt>{t('gradebook:column.total')}</dt>
          <dd>{number(total, 1)}</dd>
        </div>
      </dl>
      <div class="book-buttons">
        <a class="button" href={reportsHref(trainee.code)}>
          {t('classview:report.one')}
        </a>
        <button
          type="button"
          class="button"
          onClick={() =>
            download(`${trainee.code}.json`, `${JSON.stringify(personOf(bookNow(), trainee.code), null, 1)}\n`, 'application/json')
          }
        >
          {t('gradebook:person.export')}
        </button>
        {!isAsked && (
          <button type="button" class="button" onClick={() => setIsAsked(true)}>
            {t('gradebook:person.erase')}
          </button>
        )}
      </div>
      <p>{t('gradebook:person.exportWhat')}</p>
      {isAsked && (
        <div class="book-sure" role="alert">
          <p>{t('gradebook:person.sure', { name: nameOf(trainee) })}</p>
          <button
            type="button"
            class="button act"
            onClick={() => {
              erase(trainee.code);
              onDone();
            }}
          >
            {t('gradebook:person.eraseNow')}
          </button>
        </div>
      )}
    </Dialog>
  );
}
