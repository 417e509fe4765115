import '../css/pages.css';
import '../css/lab.css';
import { leaveHosted } from '../gradebook/hand-over.ts';
import { AssignmentSlip } from '../lab/assignment-slip.tsx';
import { ClassSignIn } from '../lab/class-sign-in.tsx';
import { openAt } from '../lab/open-at.ts';
import { RoomTable } from '../lab/room-table.tsx';
import { RosterSlip } from '../lab/roster-slip.tsx';
import { takeToken, useClass, useClassSession } from '../lab/use-class.ts';
import { BackHead, PageHead, useTitle } from '../shell.tsx';
import { t } from '../words.ts';

/** The instructor's page of the lab. */
export function ClassPage() {
  const { token, isEnded } = useClassSession();
  useTitle(t('lab:class.title'));
  return token === undefined ? (
    <>
      <BackHead />
      <main class="sheet lab">
        <h1 tabIndex={-1}>{t('lab:class.title')}</h1>
        <ClassSignIn isEnded={isEnded} />
      </main>
    </>
  ) : (
    <Room token={token} />
  );
}

function Room({ token }: { readonly token: string }) {
  const place = useClass(token);
  const { room, told, api } = place;
  return (
    <>
      <PageHead>
        <button
          type="button"
          class="button"
          onClick={() => {
            api.signOut().catch(() => undefined);
            leaveHosted();
            takeToken(undefined);
          }}
        >
          {t('lab:signOut')}
        </button>
      </PageHead>
      <main class="sheet lab lab-class">
        <h1 tabIndex={-1}>{t('lab:class.title')}</h1>
        <div class="lab-told">
          <div role="alert">{told.isWrong && <p class="lab-wrong">{told.words}</p>}</div>
          <p role="status">{!told.isWrong && told.words}</p>
        </div>
        <section class="slip lab-board" aria-labelledby="code-title">
          <h2 id="code-title">{t('lab:class.code')}</h2>
          <p class="lab-code" data-testid="class-code">
            {room?.code ?? ''}
          </p>
          {room !== undefined && <HowToOpen addresses={room.addresses} />}
        </section>
        <RoomTable place={place} />
        <AssignmentSlip place={place} />
        <RosterSlip place={place} />
      </main>
    </>
  );
}

/** What trainees open to get here. */
function HowToOpen({ addresses }: { readonly addresses: readonly string[] }) {
  const [address, ...others] = openAt(location, addresses);
  if (address === undefined) return <p class="lab-why">{t('lab:class.noAddress')}</p>;
  if (others.length === 0) return <p>{t('lab:class.how', { address })}</p>;
  return (
    <>
      <p>{t('lab:class.howSeveral')}</p>
      <ul class="lab-addresses">
        {[address, ...others].map((each) => (
          <li key={each}>{each}</li>
        ))}
      </ul>
    </>
  );
}
