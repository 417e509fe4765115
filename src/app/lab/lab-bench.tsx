import { Dialog } from '../bench/dialog.tsx';
import { BenchScreen } from '../pages/bench.tsx';
import { LanguageChoice, useTitle } from '../shell.tsx';
import { t } from '../words.ts';
import { useHostedBench } from './hosted-bench.ts';
import { PauseCover, TimeLeft } from './notices.tsx';
import type { Seat } from './seat-state.ts';
import { signOut } from './session.ts';

/** The bench of an attempt whose world runs on the host. */
export function LabBench({ seat }: { readonly seat: Seat }) {
  const bench = useHostedBench(seat);
  useTitle(t('lab:title'));
  if (bench === undefined) return null;
  return (
    <BenchScreen
      bench={bench}
      beside={{
        count: <TimeLeft seat={seat} />,
        cover: <PauseCover seat={seat} />,
        menu: (onDone) => <LabMenu seat={seat} onDone={onDone} />,
      }}
    />
  );
}

function LabMenu({ seat, onDone }: { readonly seat: Seat; readonly onDone: () => void }) {
  return (
    <Dialog title={t('settings:menu.title')} onDone={onDone}>
      <p>{t('lab:menu')}</p>
      <div class="menu">
        <button type="button" class="button" onClick={seat.leave}>
          {t('lab:toList')}
        </button>
        <button type="button" class="button" onClick={signOut}>
          {t('lab:signOut')}
        </button>
      </div>
      <div>
        <LanguageChoice />
      </div>
    </Dialog>
  );
}
