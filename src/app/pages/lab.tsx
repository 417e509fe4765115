import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import '../css/pages.css';
import '../css/lab.css';
import { AssignmentList } from '../lab/list.tsx';
import { IdleWatch, LineNotice } from '../lab/notices.tsx';
import type { Opened, Seat } from '../lab/seat-state.ts';
import { enterLab, labSeat } from '../lab/session.ts';
import { SignIn } from '../lab/sign-in.tsx';
import { useStore } from '../lab/store.ts';
import { useTitle } from '../shell.tsx';
import { t } from '../words.ts';

/** A trainee's page of the lab: signing in, what there is to do, and the bench that the host works. */
export function LabPage() {
  const [seat] = useState(labSeat);
  const { signedIn, open, paper } = useStore(seat);
  useEffect(enterLab, []);
  useTitle(t('lab:title'));
  const place = signedIn === undefined ? 'out' : paper !== undefined ? 'paper' : placeOf(open);
  // Another place is another page: its heading takes the focus.
  useEffect(() => document.querySelector<HTMLElement>('h1')?.focus(), [place]);
  if (signedIn === undefined) return <SignIn seat={seat} />;
  return (
    <>
      {place === 'list' && <AssignmentList seat={seat} />}
      {place === 'bench' && <Fetched key="bench" seat={seat} load={loadBench} />}
      {place === 'paper' && <Fetched key="paper" seat={seat} load={loadPaper} />}
      {place === 'over' && <Fetched key="over" seat={seat} load={loadHandedIn} />}
      <LineNotice seat={seat} />
      <IdleWatch seat={seat} idleSeconds={signedIn.idleSeconds} />
    </>
  );
}

const placeOf = (open: Opened | undefined) => (open === undefined ? 'list' : open.over === undefined ? 'bench' : 'over');

type Part = ComponentType<{ readonly seat: Seat }>;

const loadBench = async (): Promise<Part> => (await import('../lab/lab-bench.tsx')).LabBench;
const loadPaper = async (): Promise<Part> => (await import('../lab/lab-paper.tsx')).LabPaper;
const loadHandedIn = async (): Promise<Part> => (await import('../lab/handed-in.tsx')).HandedIn;

/** What is fetched only when somebody works. */
function Fetched({ seat, load }: { readonly seat: Seat; readonly load: () => Promise<Part> }) {
  const [Part, setPart] = useState<Part>();
  const [failed, setFailed] = useState(false);
  useEffect(() => {
    let current = true;
    load().then(
      (part) => current && setPart(() => part),
      () => current && setFailed(true),
    );
    return () => {
      current = false;
    };
  }, [load]);
  if (Part !== undefined) return <Part seat={seat} />;
  return (
    <main class="waiting" aria-busy={!failed}>
      <p role="status">{failed ? t('app:loadFailed') : t('app:loading')}</p>
    </main>
  );
}
