/** What the lab has to tell over a page: the room is paused, the line is lost, nobody seems to be there. */
import { useEffect, useRef, useState } from 'preact/hooks';
import { clock, number, t } from '../words.ts';
import { type Seat, type SeatState, secondsNow } from './seat-state.ts';
import { useStore } from './store.ts';

/** Renders anew each second. */
function useSeconds(): void {
  const [, tick] = useState(0);
  useEffect(() => {
    const timer = setInterval(() => tick((count) => count + 1), 1000);
    return () => clearInterval(timer);
  }, []);
}

/** Told when so much time is left, seconds. */
const TOLD_AT = [600, 300, 60] as const;

/** Time left, where the assignment has a limit. */
export function TimeLeft({ seat }: { readonly seat: Seat }) {
  useSeconds();
  const { left, paused } = useStore(seat);
  if (left === undefined) return null;
  const seconds = Math.ceil(paused ? left.seconds : secondsNow(left));
  const mark = TOLD_AT.findLast((each) => seconds <= each);
  return (
    <div class={mark === undefined ? undefined : 'lab-short'}>
      <dt>{t('lab:left')}</dt>
      <dd data-testid="left">
        {clock(seconds)}
        <span class="unseen" role="status">
          {mark !== undefined && t('lab:leftSaid', { count: mark / 60 })}
        </span>
      </dd>
    </div>
  );
}

/** Over the bench while the room is paused: nothing is to be read or done. */
export function PauseCover({ seat }: { readonly seat: Seat }) {
  const { paused } = useStore(seat);
  return paused ? <Cover /> : null;
}

function Cover() {
  const element = useRef<HTMLDialogElement>(null);
  useEffect(() => element.current?.showModal(), []);
  return (
    <dialog
      ref={element}
      class="lab-cover"
      aria-labelledby="lab-paused"
      onKeyDown={(event) => event.key === 'Escape' && event.preventDefault()}
      onCancel={(event) => event.preventDefault()}
      onClose={() => element.current?.showModal()}
    >
      <h2 id="lab-paused" tabIndex={-1}>
        {t('lab:paused.title')}
      </h2>
      <p>{t('lab:paused.text')}</p>
    </dialog>
  );
}

/** A slow answer, quietly; a lost line, with when it is tried again. */
export function LineNotice({ seat }: { readonly seat: Seat }) {
  const { link, waiting, signedIn } = useStore(seat);
  if (signedIn === undefined) return null;
  if (link.state === 'lost')
    return (
      <p class="lab-notice lab-lost" role="alert" data-testid="lost">
        {t('lab:lost')} <Again at={link.again} />
      </p>
    );
  return (
    <p class="lab-notice" role="status" data-testid="waiting">
      {waiting && t('lab:waiting')}
    </p>
  );
}

function Again({ at }: { readonly at: number }) {
  useSeconds();
  const seconds = Math.max(0, Math.ceil((at - performance.now()) / 1000));
  return <span aria-hidden="true">{t('lab:again', { seconds: number(seconds) })}</span>;
}

/** Warned so long before, seconds, or at half the time where that is shorter. */
const WARNING = 60;
/** A hand that moves tells the host so this often at most, seconds. */
const SIGN_OF_LIFE = 30;

const idleOf = ({ saidAt }: SeatState): number => (performance.now() - saidAt) / 1000;

/** Signs out who has gone away, with a warning first; whatever is pressed puts it off. */
export function IdleWatch({ seat, idleSeconds }: { readonly seat: Seat; readonly idleSeconds: number }) {
  useSeconds();
  useEffect(() => {
    const alive = () => {
      if (idleOf(seat.get()) > Math.min(SIGN_OF_LIFE, idleSeconds / 4)) seat.stay();
    };
    for (const name of ['pointerdown', 'keydown'] as const) addEventListener(name, alive);
    return () => {
      for (const name of ['pointerdown', 'keydown'] as const) removeEventListener(name, alive);
    };
  }, [seat, idleSeconds]);
  const left = idleSeconds - idleOf(seat.get());
  const isOver = left <= 0;
  useEffect(() => {
    if (isOver) seat.end('idle');
  }, [isOver, seat]);
  if (left > Math.min(WARNING, idleSeconds / 2)) return null;
  return (
    <div class="lab-notice lab-idle" role="alert">
      <p>
        {t('lab:idle')} <span aria-hidden="true">{t('lab:idleLeft', { seconds: number(Math.max(0, Math.ceil(left))) })}</span>
      </p>
      <button type="button" class="button act" onClick={seat.stay}>
        {t('lab:stay')}
      </button>
    </div>
  );
}
