import { useState } from 'preact/hooks';
import type { Classroom } from '../../classroom/room.ts';
import { openHosted } from '../gradebook/hand-over.ts';
import { go, hrefOf } from '../router.ts';
import { number, t } from '../words.ts';
import { download } from './download.ts';
import { FileButton } from './file-button.tsx';
import type { ClassRoom } from './use-class.ts';

/** What is set, more time for all, and what came of it. */
export function AssignmentSlip({ place }: { readonly place: ClassRoom }) {
  const { room, run, api } = place;
  const [notJson, setNotJson] = useState('');
  const put = async (file: File | undefined) => {
    if (file === undefined) return;
    setNotJson('');
    let json: unknown;
    try {
      json = JSON.parse(await file.text());
    } catch {
      setNotJson(t('error:data.notJson', { path: file.name }));
      return;
    }
    await run(
      () => api.putUp(json),
      ({ id }) => t('lab:work.isUp', { id }),
    );
  };
  return (
    <section class="slip" aria-labelledby="work-title">
      <h2 id="work-title">{t('lab:work.title')}</h2>
      <p>{t('lab:work.what')}</p>
      <FileButton words={t('lab:work.file')} accept=".json,application/json" onFile={put} />
      <div role="alert">{notJson !== '' && <p class="lab-wrong">{notJson}</p>}</div>
      <ul class="lab-people">
        {(room?.assignments ?? []).map((each) => (
          <Row key={each.id} assignment={each} place={place} />
        ))}
      </ul>
    </section>
  );
}

interface RowProps {
  readonly assignment: Classroom['assignments'][number];
  readonly place: ClassRoom;
}

/** Minutes that are offered first. */
const MORE = '10';

function Row({ assignment: { id, title, items, papers, finished, cautions }, place: { run, api } }: RowProps) {
  const [minutes, setMinutes] = useState(MORE);
  const named = (what: string) => t('lab:roster.named', { what, name: title });
  const save = async (name: string, type: string, load: () => Promise<string>) => {
    const text = await run(load);
    if (text !== undefined) download(name, text, type);
  };
  const csv = () => save(`${id}.csv`, 'text/csv', () => api.csv(id));
  const all = () => save(`${id}-submissions.json`, 'application/json', async () => JSON.stringify(await api.handed(id), null, 1));
  const open = () =>
    run(async () => {
      await openHosted(await api.handed(id));
      go(hrefOf('gradebook'));
    });
  const count = Number(minutes);
  const isMinutes = Number.isFinite(count) && count >= 1 && count <= 1440;
  return (
    <li data-assignment={id}>
      <span>
        <b>{title}</b> <small>{id}</small>
      </span>
      <span>
        {items > 0 && `${t('lab:work.items', { count: items })} · `}
        {papers > 0 && `${t('lab:work.papers', { count: papers })} · `}
        <span data-testid="finished">{t('lab:work.finished', { count: finished })}</span>
      </span>
      {cautions.map((each) => (
        <p key={each} class="lab-why">
          {t(`lab:work.caution.${each}`)}
        </p>
      ))}
      <form
        class="lab-buttons"
        onSubmit={(event) => {
          event.preventDefault();
          if (isMinutes)
            void run(
              () => api.extend(id, count),
              () => t('lab:work.added', { minutes: number(count), title }),
            );
        }}
      >
        <label class="choice">
          <span>{t('lab:work.minutes')}</span>
          <input
            type="number"
            min={1}
            max={1440}
            required
            value={minutes}
            aria-label={named(t('lab:work.minutes'))}
            onInput={(event) => setMinutes(event.currentTarget.value)}
          />
        </label>
        <button type="submit" class="button small" aria-label={named(t('lab:work.extend'))}>
          {t('lab:work.extend')}
        </button>
      </form>
      <div class="lab-buttons">
        <button type="button" class="button small" aria-label={named(t('lab:work.gradebook'))} onClick={() => void open()}>
          {t('lab:work.gradebook')}
        </button>
        <button type="button" class="button small" aria-label={named(t('lab:work.csv'))} onClick={() => void csv()}>
          {t('lab:work.csv')}
        </button>
        <button type="button" class="button small" aria-label={named(t('lab:work.submissions'))} onClick={() => void all()}>
          {t('lab:work.submissions')}
        </button>
        <button
          type="button"
          class="button small"
          aria-label={named(t('lab:work.takeDown'))}
          onClick={() =>
            void run(
              () => api.takeDown(id),
              () => t('lab:work.isDown', { title }),
            )
          }
        >
          {t('lab:work.takeDown')}
        </button>
      </div>
    </li>
  );
}
