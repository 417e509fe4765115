import type { Doubt } from '../../../classroom/doubts.ts';
import { pointsIn } from '../../../classroom/entry.ts';
import type { Cell } from '../../../classroom/gradebook.ts';
import { moment } from '../../lab/moment.ts';
import { pointsText } from '../../points-text.ts';
import { t } from '../../words.ts';
import { doubtText } from '../words.ts';

/** What is in doubt, and what the instructor decided. */
export function Decided({ cell: { doubts, open, overrule, entry } }: { readonly cell: Cell }) {
  const replayed = entry && pointsIn(entry);
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
          {replayed !== undefined && <p>{t('classview:report.replayed', { points: pointsText(replayed) })}</p>}
          <blockquote>{overrule.reason}</blockquote>
        </div>
      )}
    </>
  );
}

const NAMING: readonly Doubt['code'][] = ['sameLog', 'sameAnswers', 'othersLog'];

/** A doubt as its trainee may read it: nobody else is named. */
export function ownDoubtText(doubt: Doubt): string {
  return NAMING.includes(doubt.code) ? t(`classview:report.doubt.${doubt.code}`) : doubtText(doubt);
}
