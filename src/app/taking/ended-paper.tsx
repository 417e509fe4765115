import { useState } from 'preact/hooks';
import type { Paper } from '../../classroom/papers.ts';
import { download, whyNot } from '../keeping/file-section.tsx';
import type { Kept } from '../keeping/store.ts';
import { pointsText } from '../points-text.ts';
import { questionsHref } from '../router.ts';
import { number, t } from '../words.ts';
import { fileName, fileText, handInPaper } from './hand-in.ts';
import type { KeptPaper } from './records.ts';
import { isAt } from './sheet.ts';
import { type ItemStatus, tellsDebrief, tellsScore } from './status.ts';
import { amendPaper } from './store.ts';
import type { Taken } from './use-assigned.ts';

interface Props {
  readonly taken: Taken;
  readonly paper: Paper;
  readonly kept: KeptPaper;
  readonly status: ItemStatus;
  readonly now: number;
  readonly onChange: () => Promise<void>;
}

/** An attempt at a paper that is over: its file, its points and its answers as far as they may be told. */
export function EndedPaper({ taken, paper, kept, status, now, onChange }: Props) {
  const { assigned } = taken;
  const { assignment, id } = assigned;
  const [stored, setStored] = useState<Kept>('kept');
  const [wrong, setWrong] = useState('');
  const save = async () => {
    try {
      download(fileText(handInPaper(assigned, paper, kept)), fileName(assigned, kept));
      setWrong('');
      setStored(await amendPaper(id, kept, { saved: true }));
      await onChange();
    } catch (error) {
      setWrong(whyNot(error, fileName(assigned, kept)));
    }
  };
  const known = isAt(kept, paper);
  return (
    <div class="take-ended">
      <h4>
        {t('take:ended.title', { number: number(kept.number) })} · {t(`take:ended.${kept.ended ?? 'closed'}`)}
      </h4>
      {!known && <p role="alert">{t('take:lost')}</p>}
      {known && tellsScore(assignment, status, now) && <Points kept={kept} name={`${paper.item}-${kept.number}`} />}
      {stored !== 'kept' && <p role="alert">{t(stored === 'full' ? 'keeping:full' : 'keeping:denied')}</p>}
      <p class="progress-buttons">
        <button type="button" class="button act" onClick={() => void save()}>
          {t('take:ended.save')}
        </button>
        {known && tellsDebrief(assignment, now) && (
          <a class="button" href={questionsHref(id, paper.item, kept.number)}>
            {t('take:paper.review')}
          </a>
        )}
        <span role="status">{kept.saved === true && t('take:ended.saved')}</span>
      </p>
      {wrong !== '' && <p role="alert">{wrong}</p>}
    </div>
  );
}

function Points({ kept, name }: { readonly kept: KeptPaper; readonly name: string }) {
  const { shown, passed } = kept;
  if (shown === undefined) return <p role="status">{t('take:ended.scoring')}</p>;
  return (
    <p data-testid={`total-${name}`} data-total={shown}>
      {t('take:ended.score', { total: pointsText(shown), of: number(100) })}
      {passed !== undefined && ` · ${t(passed ? 'drill:exam.passed' : 'drill:exam.notPassed')}`}
    </p>
  );
}
