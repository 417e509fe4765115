import { useEffect, useState } from 'preact/hooks';
import '../css/pages.css';
import '../css/progress.css';
import '../css/take.css';
import type { Assignment } from '../../classroom/assignment.ts';
import { whyNot } from '../keeping/file-section.tsx';
import { library } from '../library.ts';
import { embeddedText } from '../lms/session.ts';
import { assignedHref } from '../router.ts';
import { BackHead, useTitle } from '../shell.tsx';
import { Consent } from '../taking/consent.tsx';
import { openLink, openText } from '../taking/open.ts';
import type { Assigned } from '../taking/records.ts';
import { Rules } from '../taking/rules.tsx';
import { readAssignments } from '../taking/store.ts';
import { useNow } from '../taking/use-assigned.ts';
import { t } from '../words.ts';

interface Opened {
  readonly assignment: Assignment;
  readonly from: string;
}

/** Takes in an assignment: from a file, or from the data of a link. */
export function TakePage({ ticket: data }: { readonly ticket: string }) {
  const [opened, setOpened] = useState<Opened>();
  const [wrong, setWrong] = useState('');
  const now = useNow();
  useTitle(opened?.assignment.title ?? t('take:title'));
  const open = (from: string, read: () => Assignment) => {
    try {
      setOpened({ assignment: read(), from });
      setWrong('');
    } catch (error) {
      setOpened(undefined);
      setWrong(t('take:file.failed', { why: whyNot(error, from) }));
    }
  };
  useEffect(() => {
    const packed = embeddedText();
    if (data !== '') open(t('take:file.link'), () => openLink(data, library));
    else if (packed !== undefined) open(t('take:file.packed'), () => openText(packed, library));
  }, [data]);
  const take = async (file: File) => {
    try {
      const text = await file.text();
      open(file.name, () => openText(text, library));
    } catch {
      setWrong(t('take:file.unread', { file: file.name }));
    }
  };
  return (
    <>
      <BackHead />
      <main class="sheet progress take">
        <h1 tabIndex={-1}>{opened?.assignment.title ?? t('take:title')}</h1>
        {wrong !== '' && (
          <p role="alert" class="take-wrong">
            {wrong}
          </p>
        )}
        {opened === undefined ? (
          <FileChoice onFile={(file) => void take(file)} />
        ) : (
          <>
            <Rules assignment={opened.assignment} now={now} />
            <Kept only={opened.assignment} />
            <Consent assignment={opened.assignment} from={opened.from} />
          </>
        )}
        {opened === undefined && <Kept />}
      </main>
    </>
  );
}

function FileChoice({ onFile }: { readonly onFile: (file: File) => void }) {
  const [over, setOver] = useState(false);
  return (
    <section
      class="slip take-drop"
      data-over={over || undefined}
      aria-labelledby="file-title"
      onDragOver={(event) => {
        event.preventDefault();
        setOver(true);
      }}
      onDragLeave={() => setOver(false)}
      onDrop={(event) => {
        event.preventDefault();
        setOver(false);
        const file = event.dataTransfer?.files[0];
        if (file !== undefined) onFile(file);
      }}
    >
      <h2 id="file-title">{t('take:file.title')}</h2>
      <p>{t('take:file.text')}</p>
      <label class="button act file-button">
        {t('take:file.choose')}
        <input
          type="file"
          class="unseen"
          accept=".json,application/json"
          onChange={(event) => {
            const input = event.currentTarget;
            const file = input.files?.[0];
            if (file !== undefined) onFile(file);
            input.value = '';
          }}
        />
      </label>
    </section>
  );
}

/** Assignments that this browser keeps for the profile at work; of one alone, where it is open. */
function Kept({ only }: { readonly only?: Assignment }) {
  const [all, setAll] = useState<readonly Assigned[]>([]);
  useEffect(() => {
    let current = true;
    readAssignments().then(
      (found) => current && setAll(found),
      () => undefined,
    );
    return () => {
      current = false;
    };
  }, []);
  const shown = all.filter(({ assignment }) => only === undefined || assignment.id === only.id);
  if (shown.length === 0) return null;
  return (
    <section class="slip" aria-labelledby="kept-title">
      <h2 id="kept-title">{t('take:kept.title')}</h2>
      <ul class="take-kept">
        {shown.map(({ id, assignment, trainee }) => (
          <li key={id}>
            <a class="button" href={assignedHref(id)}>
              {t('take:kept.one', { title: assignment.title, code: trainee.code })}
            </a>
          </li>
        ))}
      </ul>
    </section>
  );
}
