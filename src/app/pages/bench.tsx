import { useEffect, useState } from 'preact/hooks';
import '../css/bench.css';
import { DrawnBench } from '../bench/drawn.tsx';
import { BenchHead } from '../bench/head.tsx';
import { House } from '../bench/house.tsx';
import type { BenchKind, Sheet } from '../bench/kinds.ts';
import { LeadPicker } from '../bench/lead-picker.tsx';
import { ListBench } from '../bench/list.tsx';
import { MeterPanel } from '../bench/meter.tsx';
import { MeterDock } from '../bench/meter-dock.tsx';
import { NamingDialog } from '../bench/naming.tsx';
import { Notebook } from '../bench/notebook.tsx';
import { ProveBar } from '../bench/prove.tsx';
import { Captions, SoundSwitch } from '../bench/sounds.tsx';
import { Strip } from '../bench/strip.tsx';
import { TicketDialog } from '../bench/ticket-dialog.tsx';
import { Tools } from '../bench/tools.tsx';
import { useLeads } from '../bench/use-leads.ts';
import { useSounds } from '../bench/use-sounds.ts';
import { findTicket, rigOf } from '../library.ts';
import { go, hrefOf } from '../router.ts';
import { useTitle } from '../shell.tsx';
import { habit, keepHabit } from '../storage.ts';
import { type Bench, useAttempt } from '../use-attempt.ts';
import { t } from '../words.ts';

export function BenchPage({ ticket: id }: { readonly ticket: string }) {
  const ticket = findTicket(id);
  if (ticket === undefined) return null;
  return <Opened ticket={ticket} />;
}

function Opened({ ticket }: { readonly ticket: Bench['ticket'] }) {
  const bench = useAttempt(ticket, rigOf(ticket));
  useTitle(t(`ticket:${ticket.id}.title`));
  const closed = bench?.view.phase === 'closed';
  useEffect(() => {
    if (closed) go(hrefOf('debrief', ticket.id));
  }, [closed, ticket.id]);
  if (bench === undefined || closed) {
    return (
      <main class="waiting" aria-busy="true">
        <p role="status">{t('app:loading')}</p>
      </main>
    );
  }
  return <BenchScreen bench={bench} />;
}

function BenchScreen({ bench }: { readonly bench: Bench }) {
  const [kind, setKind] = useState<BenchKind>(() => (habit('bench', 'drawn') === 'list' ? 'list' : 'drawn'));
  const [sheet, setSheet] = useState<Sheet>();
  const [dialog, setDialog] = useState<'naming' | 'ticket'>();
  const leads = useLeads(bench);
  const heard = useSounds(bench.view);
  const choose = (next: BenchKind) => {
    setKind(next);
    keepHabit('bench', next);
  };
  // A walk or a picked lead goes on at the bench: the sheet that covered it on a small screen makes room.
  useEffect(() => setSheet(undefined), [bench.view.place, leads.held]);
  return (
    <div class="bench" data-sheet={sheet} data-kind={kind}>
      <BenchHead
        bench={bench}
        kind={kind}
        onKind={choose}
        onTicket={() => setDialog('ticket')}
        onName={() => setDialog('naming')}
      />
      <aside class="rail rail-left" id="rail-house" aria-label={t('app:rails.house')}>
        <House bench={bench} />
        <Notebook told={bench.told} />
        <SoundSwitch heard={heard} />
      </aside>
      <main class="work" id="work">
        <Notes bench={bench} />
        {bench.view.phase === 'named' && <ProveBar bench={bench} />}
        {kind === 'drawn' ? (
          <DrawnBench bench={bench} leads={leads} onList={() => choose('list')} />
        ) : (
          <ListBench bench={bench} leads={leads} />
        )}
        <Captions heard={heard} />
        <LeadPicker bench={bench} leads={leads} />
      </main>
      <aside class="rail rail-right" id="rail-meter" aria-label={t('app:rails.meter')}>
        <MeterPanel bench={bench} leads={leads} />
        {kind === 'drawn' && <Tools leads={leads} />}
      </aside>
      <MeterDock bench={bench} leads={leads} sheet={sheet} onSheet={(next) => setSheet(next === sheet ? undefined : next)} />
      <Strip bench={bench} />
      {dialog === 'naming' && <NamingDialog bench={bench} onDone={() => setDialog(undefined)} />}
      {dialog === 'ticket' && <TicketDialog ticket={bench.ticket} onDone={() => setDialog(undefined)} />}
      <p class="unseen" aria-live="polite" aria-atomic="true" data-testid="said">
        {bench.said}
      </p>
    </div>
  );
}

/** What must be told in passing: a refusal, a log that could not be kept or taken up. */
function Notes({ bench }: { readonly bench: Bench }) {
  const unsafe = bench.view.steps.at(-1)?.unsafe;
  return (
    <div class="notes">
      <div role="alert">
        {bench.refused !== undefined && <p class="note note-refused">{bench.refused}</p>}
        {bench.refused === undefined && unsafe !== undefined && <p class="note note-unsafe">{t(`app:unsafe.${unsafe}`)}</p>}
      </div>
      {bench.kept === 'failed' && <p class="note">{t('app:notKept')}</p>}
      {bench.origin === 'lost' && bench.view.steps.length === 0 && <p class="note">{t('app:lost')}</p>}
    </div>
  );
}
