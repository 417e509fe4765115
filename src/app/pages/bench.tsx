import type { ComponentChildren } from 'preact';
import { useEffect, useMemo, useState } from 'preact/hooks';
import '../css/bench.css';
// After it: what it says of an upright phone stands over the rest.
import '../css/bench-phone.css';
import type { Ticket } from '../../scenario/ticket.ts';
import { CoachPanel, useCoach } from '../bench/coach.tsx';
import { DrawnBench } from '../bench/drawn.tsx';
import { FreeBar } from '../bench/free-bar.tsx';
import { BenchHead, type FreeBench } from '../bench/head.tsx';
import { HintDialog, type HintTold } from '../bench/hints.tsx';
import { House } from '../bench/house.tsx';
import type { Sheet } from '../bench/kinds.ts';
import { LeadPicker } from '../bench/lead-picker.tsx';
import { ListBench } from '../bench/list.tsx';
import { MenuDialog } from '../bench/menu-dialog.tsx';
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
import { CautionCard, CautionStrip } from '../cautions/caution-panel.tsx';
import { useCautions } from '../cautions/use-cautions.ts';
import { OutsideExam } from '../drills/in-exam.tsx';
import { engineFor } from '../engine/engine.ts';
import { MarksProvider, marksFor } from '../guided/marks.ts';
import { GuidePanel, showMarkedIn } from '../guided/panel.tsx';
import { useGuide } from '../guided/use-guide.ts';
import { Elsewhere } from '../keeping/elsewhere.tsx';
import { useHold } from '../keeping/hold.ts';
import { findTicket, rigOf } from '../library.ts';
import { go, hrefOf, rememberJob } from '../router.ts';
import { useSetting } from '../settings.ts';
import { useTitle } from '../shell.tsx';
import { readClosed } from '../storage.ts';
import { titleOf } from '../ticket-words.ts';
import { type Bench, useAttempt } from '../use-attempt.ts';
import { Waiting } from '../waiting.tsx';
import { complaintText, t } from '../words.ts';

export function BenchPage({ ticket: id }: { readonly ticket: string }) {
  const ticket = findTicket(id);
  if (ticket === undefined) return null;
  return (
    <OutsideExam ticket={id}>
      <Opened ticket={ticket} />
    </OutsideExam>
  );
}

function Opened({ ticket }: { readonly ticket: Ticket }) {
  const { hold, takeOver } = useHold(ticket.id);
  if (hold === 'asking') return <Waiting />;
  if (hold !== 'mine') return <Elsewhere ticket={ticket.id} taken={hold === 'taken'} onTakeOver={takeOver} />;
  return <Mine ticket={ticket} />;
}

function Mine({ ticket }: { readonly ticket: Ticket }) {
  const bench = useAttempt(ticket, rigOf(ticket));
  useTitle(titleOf(ticket.id));
  const phase = bench?.view.phase;
  useEffect(() => {
    rememberJob(phase === 'closed' ? undefined : hrefOf('bench', ticket.id));
    if (phase === 'closed') go(hrefOf('debrief', ticket.id));
    // While the repair is proved, the short way is worked out for the debrief; where that fails, the debrief says so.
    if (phase === 'named')
      engineFor(ticket, rigOf(ticket))
        .ask('prepare', {})
        .catch(() => undefined);
  }, [phase, ticket]);
  if (bench === undefined || phase === 'closed') return <Waiting />;
  return <BenchScreen bench={bench} />;
}

export function LivePage({ ticket }: { readonly ticket: string }) {
  return (
    <OutsideExam ticket={ticket}>
      <LiveCircuit ticket={ticket} />
    </OutsideExam>
  );
}

/** The circuit of a debrief, to probe again: a fresh attempt with its fault named, of which nothing is scored or kept. */
function LiveCircuit({ ticket: id }: { readonly ticket: string }) {
  const ticket = findTicket(id);
  const [closed, setClosed] = useState<boolean>();
  const [begun, setBegun] = useState(0);
  useTitle(t('app:live.title'));
  useEffect(() => {
    let current = true;
    void readClosed(id).then((kept) => current && setClosed(kept !== undefined));
    return () => {
      current = false;
    };
  }, [id]);
  if (ticket === undefined) return null;
  if (closed === undefined) return <Waiting />;
  // The fault stands on the page: nobody shall come here before the ticket is closed.
  if (!closed)
    return (
      <main class="waiting">
        <h1 tabIndex={-1}>{t('app:live.title')}</h1>
        <p>{t('app:live.closed')}</p>
        <a class="button" href={hrefOf('ticket', id)}>
          {titleOf(id)}
        </a>
      </main>
    );
  return <Live key={begun} ticket={ticket} onRestart={() => setBegun(begun + 1)} />;
}

function Live({ ticket, onRestart }: { readonly ticket: Ticket; readonly onRestart: () => void }) {
  const bench = useAttempt(ticket, rigOf(ticket), true);
  return bench === undefined ? <Waiting /> : <BenchScreen bench={bench} onRestart={onRestart} />;
}

/** What a bench has beside where its world runs on a host. */
export interface Beside {
  /** In the head, with the other counts. */
  readonly count: ComponentChildren;
  /** Over all else. */
  readonly cover: ComponentChildren;
  /** In place of the bench's own menu. */
  readonly menu: (onDone: () => void) => ComponentChildren;
}

interface ScreenProps {
  readonly bench: Bench;
  readonly onRestart?: () => void;
  readonly beside?: Beside;
  /** A free bench that is no debrief's. */
  readonly free?: FreeBench;
}

export function BenchScreen({ bench, onRestart, beside, free }: ScreenProps) {
  const [kind, choose] = useSetting('bench');
  const [sheet, setSheet] = useState<Sheet>();
  const [dialog, setDialog] = useState<'naming' | 'ticket' | 'hint' | 'menu'>();
  const moved = bench.view.steps.at(-1)?.action.name;
  const [hint, setHint] = useState<HintTold>();
  const coach = useCoach(bench);
  const leads = useLeads(bench);
  const heard = useSounds(bench.view);
  const { guide, offered, take } = useGuide(bench);
  const cautions = useCautions(bench.view);
  const marks = useMemo(
    () => marksFor(guide?.action, { kind, held: leads.held, tool: leads.tool, sheet }),
    [guide, kind, leads.held, leads.tool, sheet],
  );
  // A walk, a picked lead, a named fault or the other bench goes on there: the sheet that covered it on a small screen makes room.
  useEffect(() => setSheet(undefined), [bench.view.place, bench.view.phase, leads.held, kind]);
  useEffect(() => {
    if (sheet !== undefined) showMarkedIn('.rail');
  }, [sheet, marks]);
  return (
    <MarksProvider value={marks}>
      <div class="bench-frame">
        <div class="bench" data-sheet={sheet} data-kind={kind} data-coached={coach !== undefined}>
          <BenchHead
            bench={bench}
            kind={kind}
            onKind={choose}
            onMenu={() => setDialog('menu')}
            onTicket={() => setDialog('ticket')}
            onName={() => setDialog('naming')}
            count={beside?.count}
            free={free}
          />
          <div class="bench-over">
            {cautions.due !== undefined && <CautionStrip due={cautions.due} onRead={cautions.read} />}
            {guide !== undefined && (
              <GuidePanel
                guide={guide}
                far={kind === 'list'}
                complaint={complaintText(bench.ticket)}
                crowded={cautions.due !== undefined && bench.view.phase === 'named'}
                busy={sheet !== undefined || leads.held !== undefined}
                onUncover={() => setSheet(undefined)}
                onLeave={() => take(false)}
              />
            )}
          </div>
          <aside class="rail rail-left" id="rail-house" aria-label={t('app:rails.house')}>
            <House bench={bench}>
              <SoundSwitch heard={heard} />
            </House>
            {cautions.due !== undefined && <CautionCard due={cautions.due} onRead={cautions.read} />}
            <Notebook told={bench.told} />
            {offered && guide === undefined && (
              <button type="button" class="button small" onClick={() => take(true)}>
                {t('guided:takeUp')}
              </button>
            )}
          </aside>
          <main class="work" id="work">
            {bench.view.phase === 'named' && <ProveBar bench={bench} />}
            {onRestart !== undefined && <FreeBar bench={bench} onRestart={onRestart} />}
            <Notes bench={bench} />
            {kind === 'drawn' ? (
              <DrawnBench bench={bench} leads={leads} onList={() => choose('list')} />
            ) : (
              <ListBench bench={bench} leads={leads} />
            )}
            <Captions heard={heard} last={kind === 'drawn' && moved !== 'walk' ? bench.told.at(-1) : undefined} />
            <LeadPicker bench={bench} leads={leads} />
          </main>
          <aside class="rail rail-right" id="rail-meter" aria-label={t('app:rails.meter')}>
            <MeterPanel bench={bench} leads={leads} />
            {coach !== undefined && <CoachPanel coach={coach} />}
            {kind === 'drawn' && <Tools leads={leads} />}
          </aside>
          <MeterDock
            bench={bench}
            leads={leads}
            coach={coach}
            sheet={sheet}
            onSheet={(next) => setSheet(next === sheet ? undefined : next)}
          />
          <Strip bench={bench} onHint={() => setDialog('hint')} />
          {dialog === 'naming' && <NamingDialog bench={bench} guide={guide} onDone={() => setDialog(undefined)} />}
          {dialog === 'menu' &&
            (beside === undefined ? (
              <MenuDialog free={bench.free} onDone={() => setDialog(undefined)} />
            ) : (
              beside.menu(() => setDialog(undefined))
            ))}
          {dialog === 'ticket' && <TicketDialog ticket={bench.ticket} rig={bench.rig} onDone={() => setDialog(undefined)} />}
          {dialog === 'hint' && <HintDialog bench={bench} last={hint} onTold={setHint} onDone={() => setDialog(undefined)} />}
          {beside?.cover}
          <p class="unseen" aria-live="polite" aria-atomic="true" data-testid="said">
            {bench.said}
          </p>
        </div>
      </div>
    </MarksProvider>
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
      {bench.kept !== 'kept' && <p class="note">{t(bench.kept === 'full' ? 'keeping:full' : 'app:notKept')}</p>}
      {bench.origin === 'lost' && bench.view.steps.length === 0 && <p class="note">{t('app:lost')}</p>}
    </div>
  );
}
