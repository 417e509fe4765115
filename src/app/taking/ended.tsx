import { useState } from 'preact/hooks';
import type { Work } from '../../classroom/draw.ts';
import { download, whyNot } from '../keeping/file-section.tsx';
import type { Kept } from '../keeping/store.ts';
import { assignedReportHref, go, hrefOf } from '../router.ts';
import { keepClosed } from '../storage.ts';
import { number, t } from '../words.ts';
import { fileName, fileText, handIn } from './hand-in.ts';
import { type KeptWork, MOST_WORDS } from './records.ts';
import { type ItemStatus, tellsDebrief, tellsScore } from './status.ts';
import { amendWork } from './store.ts';
import { guestFor, type Taken } from './use-assigned.ts';

interface Props {
  readonly taken: Taken;
  readonly work: Work;
  readonly kept: KeptWork;
  readonly status: ItemStatus;
  readonly now: number;
  readonly onChange: () => Promise<void>;
}

/** An attempt that is over: the words of its service report, its file, and what of its debrief may be told. */
export function EndedAttempt({ taken, work, kept, status, now, onChange }: Props) {
  const { assigned } = taken;
  const [words, setWords] = useState(kept.words ?? '');
  const [stored, setStored] = useState<Kept>('kept');
  const [wrong, setWrong] = useState('');
  const name = `${work.item}-${kept.number}`;
  const write = (next: string) => {
    setWords(next);
    void amendWork(assigned.id, kept, { words: next, saved: false }).then(setStored);
  };
  const save = async () => {
    try {
      download(fileText(handIn(assigned, work, { ...kept, words })), fileName(assigned, kept));
      setWrong('');
      setStored(await amendWork(assigned.id, kept, { saved: true }));
      await onChange();
    } catch (error) {
      setWrong(whyNot(error, fileName(assigned, kept)));
    }
  };
  const debrief = async () => {
    const guest = guestFor(assigned, work, kept.number, false);
    await keepClosed(guest, { mode: work.ticket.mode, log: kept.log });
    go(hrefOf('debrief', guest));
  };
  return (
    <div class="take-ended">
      <h4>
        {t('take:ended.title', { number: number(kept.number) })} · {t(`take:ended.${kept.ended ?? 'closed'}`)}
      </h4>
      {tellsScore(assigned.assignment, status, now) &&
        (kept.shown === undefined ? (
          <p role="status">{t('take:ended.scoring')}</p>
        ) : (
          <p data-testid={`total-${name}`} data-total={kept.shown}>
            {t('take:ended.score', { total: number(kept.shown), of: number(100) })}
          </p>
        ))}
      <label class="take-words">
        <span>{t('take:ended.words')}</span>
        <textarea rows={3} maxLength={MOST_WORDS} value={words} onInput={(event) => write(event.currentTarget.value)} />
      </label>
      {stored !== 'kept' && <p role="alert">{t(stored === 'full' ? 'keeping:full' : 'keeping:denied')}</p>}
      <p class="progress-buttons">
        <button type="button" class="button act" onClick={() => void save()}>
          {t('take:ended.save')}
        </button>
        <a class="button" href={assignedReportHref(assigned.id, work.item, kept.number)}>
          {t('report:link')}
        </a>
        {tellsDebrief(assigned.assignment, now) && (
          <button type="button" class="button" onClick={() => void debrief()}>
            {t('take:ended.debrief')}
          </button>
        )}
        <span role="status">{kept.saved === true && t('take:ended.saved')}</span>
      </p>
      {wrong !== '' && <p role="alert">{wrong}</p>}
    </div>
  );
}
