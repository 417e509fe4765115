import { useState } from 'preact/hooks';
import type { Gradebook } from '../../classroom/gradebook.ts';
import { csvOf, longTable, type Table, wideTable } from '../../classroom/gradebookCsv.ts';
import { download } from '../lab/download.ts';
import { reportsHref } from '../router.ts';
import { t } from '../words.ts';
import { closeBook, overrulesText, savedText, useBook } from './store.ts';
import { csvWords } from './words.ts';

/** By it a spreadsheet knows that the letters are Unicode's (UTF-8's byte order mark). */
const MARK = '\u{feff}';

/** The ways out of the page: files for the instructor, for spreadsheets and for the command line. */
export function Keep({ gradebook }: { readonly gradebook: Gradebook }) {
  const { book, isUnsaved } = useBook();
  const [isAsked, setIsAsked] = useState(false);
  const { id } = gradebook.assignment;
  const csv = (name: string, table: Table) => download(`${id}-${name}.csv`, `${MARK}${csvOf(table)}`, 'text/csv;charset=utf-8');
  const json = (name: string, text: string | undefined) =>
    text !== undefined && download(`${id}-${name}.json`, text, 'application/json');
  return (
    <>
      <div class="book-buttons">
        <button type="button" class={isUnsaved ? 'button act' : 'button'} onClick={() => json('gradebook', savedText())}>
          {t('gradebook:keep.save')}
        </button>
        <button type="button" class="button" onClick={() => csv('points', wideTable(gradebook, csvWords(gradebook.assignment)))}>
          {t('gradebook:keep.wide')}
        </button>
        <button type="button" class="button" onClick={() => csv('attempts', longTable(gradebook, csvWords(gradebook.assignment)))}>
          {t('gradebook:keep.long')}
        </button>
        {gradebook.rows.length > 0 && (
          <a class="button" href={reportsHref()}>
            {t('classview:report.all')}
          </a>
        )}
        {book.overrules.length > 0 && (
          <button type="button" class="button" onClick={() => json('overrules', overrulesText())}>
            {t('gradebook:keep.overrules')}
          </button>
        )}
        <button type="button" class="button" onClick={() => (isUnsaved ? setIsAsked(true) : closeBook())}>
          {t('gradebook:keep.close')}
        </button>
      </div>
      <p role="status">{isUnsaved ? t('gradebook:keep.unsaved') : ''}</p>
      {isAsked && isUnsaved && (
        <div class="book-sure" role="alert">
          <p>{t('gradebook:keep.sure')}</p>
          <button type="button" class="button act" onClick={closeBook}>
            {t('gradebook:keep.closeNow')}
          </button>
        </div>
      )}
    </>
  );
}
