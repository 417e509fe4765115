import { useEffect, useRef, useState } from 'preact/hooks';
import { t } from '../words.ts';
import { download } from './file-section.tsx';
import { contentsOf, deleteProfile, type Profile } from './profiles.ts';
import { exportText } from './transfer.ts';

interface Props {
  readonly profile: Profile;
  readonly name: string;
  readonly onKeep: () => void;
}

/** Asks before a profile is deleted: says what goes with it, and offers it as a file first. */
export function RemoveProfile({ profile, name, onKeep }: Props) {
  const [contents, setContents] = useState<Awaited<ReturnType<typeof contentsOf>>>();
  const [said, setSaid] = useState('');
  const heading = useRef<HTMLHeadingElement>(null);
  const denied = () => setSaid(t('keeping:denied'));
  useEffect(() => {
    heading.current?.focus();
    contentsOf(profile.id).then(setContents, denied);
  }, [profile.id]);
  const save = () =>
    exportText(profile.id)
      .then((text) => download(text))
      .then(() => setSaid(t('keeping:remove.saved')), denied);
  return (
    <section class="remove-profile" aria-labelledby="remove-title">
      <h3 id="remove-title" tabIndex={-1} ref={heading}>
        {t('keeping:remove.title', { name })}
      </h3>
      {profile.pin !== undefined && <p>{t('keeping:remove.pin')}</p>}
      <p>{t('keeping:remove.lost')}</p>
      <ul>
        {contents !== undefined && (
          <>
            <li>{t('keeping:remove.finished', { count: contents.finished })}</li>
            <li>{t('keeping:remove.running', { count: contents.running })}</li>
          </>
        )}
        <li>{t('keeping:remove.habits')}</li>
      </ul>
      <div class="progress-buttons">
        <button type="button" class="button act" onClick={() => void save()}>
          {t('keeping:remove.save')}
        </button>
        <button type="button" class="button" onClick={() => deleteProfile(profile.id).then(() => location.reload(), denied)}>
          {t('keeping:remove.remove', { name })}
        </button>
        <button type="button" class="button" onClick={onKeep}>
          {t('keeping:remove.keep')}
        </button>
      </div>
      <p role="status">{said}</p>
    </section>
  );
}
