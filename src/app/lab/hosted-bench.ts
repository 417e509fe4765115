import i18next from 'i18next';
import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { BenchView } from '../../attempt/view.ts';
import { wholeView } from '../../classroom/protocol.ts';
import { type StepTold, tellStep } from '../step-words.ts';
import { type Bench, spoken } from '../use-attempt.ts';
import { refusalText } from '../words.ts';
import { failureText } from './api.ts';
import type { Entry, Opened, Seat } from './seat-state.ts';
import { useStore } from './store.ts';

/** Put in words once, in the language of then. */
const tellings = new WeakMap<Entry, { readonly language: string; readonly told: StepTold }>();

function toldOf({ still, entries }: Opened): readonly StepTold[] {
  const { language } = i18next;
  const steps = entries.map(({ step }) => step);
  return entries.map((entry) => {
    const known = tellings.get(entry);
    if (known?.language === language) return known.told;
    const told = tellStep(wholeView(still, entry.view, steps), entry.step);
    tellings.set(entry, { language, told });
    return told;
  });
}

function viewOf({ still, view, entries }: Opened): BenchView {
  return wholeView(
    still,
    view,
    entries.map(({ step }) => step),
  );
}

/** The attempt that is open on the host, for the bench page: it shows what the host has done, and asks it for all else. */
export function useHostedBench(seat: Seat): Bench | undefined {
  const { open, refused, failed } = useStore(seat);
  const [said, say] = useState('');
  const view = useMemo(() => open && viewOf(open), [open?.still, open?.view, open?.entries]);
  const told = useMemo(() => (open ? toldOf(open) : []), [open?.still, open?.entries, i18next.language]);
  const count = open?.entries.length ?? 0;
  const spokenTo = useRef(open?.before ?? 0);
  useEffect(() => {
    const last = open?.entries.at(-1);
    if (last !== undefined && view !== undefined && count > spokenTo.current) say(spoken(view, last.step));
    spokenTo.current = count;
  }, [count]);
  if (open === undefined || view === undefined) return undefined;
  return {
    ticket: open.ticket,
    whole: undefined,
    naming: open.ticket.naming,
    rig: open.rig,
    free: false,
    view,
    told,
    options: open.options,
    act: seat.act,
    refused: refused !== undefined ? refusalText(refused) : failed && failureText(failed),
    said,
    say,
    kept: 'kept',
    origin: open.before > 0 ? 'resumed' : 'begun',
  };
}
