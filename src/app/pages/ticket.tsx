import { useEffect, useState } from 'preact/hooks';
import '../css/pages.css';
import type { Ticket } from '../../scenario/ticket.ts';
import { Diagrams } from '../diagrams/fold.tsx';
import { OutsideExam } from '../drills/in-exam.tsx';
import { keepGuided } from '../guided/choice.ts';
import { GUIDED_TICKET } from '../guided/facts.ts';
import { findTicket, rigOf } from '../library.ts';
import { go, hrefOf } from '../router.ts';
import { BackHead, Cautions, useTitle } from '../shell.tsx';
import { dropRunning, type KeptAttempt, keepMode, modeFor, readRunning } from '../storage.ts';
import { TicketText } from '../ticket-text.tsx';
import { titleOf } from '../ticket-words.ts';
import { t } from '../words.ts';

export function TicketPage({ ticket }: { readonly ticket: string }) {
  return (
    <OutsideExam ticket={ticket}>
      <Slip ticket={ticket} />
    </OutsideExam>
  );
}

/** The complaint, the site and what is allowed; from here the job begins or goes on. */
function Slip({ ticket: id }: { readonly ticket: string }) {
  const ticket = findTicket(id);
  const [running, setRunning] = useState<KeptAttempt>();
  useTitle(titleOf(id));
  useEffect(() => {
    let current = true;
    void readRunning(id).then((kept) => current && setRunning(kept));
    return () => {
      current = false;
    };
  }, [id]);
  if (ticket === undefined) return null;
  const begin = async () => {
    await dropRunning(id);
    go(hrefOf('bench', id));
  };
  return (
    <>
      <BackHead />
      <main class="sheet ticket-page">
        <h1 tabIndex={-1}>{titleOf(id)}</h1>
        <div class="slip">
          <TicketText ticket={ticket} rig={rigOf(ticket)} />
        </div>
        <div class="ticket-side">
          <div class="ticket-go">
            <ModeChoice ticket={ticket} />
            {running !== undefined ? (
              <>
                <p>{t('app:ticket.under', { mode: t(`app:mode.${running.mode}`) })}</p>
                <a class="button act" href={hrefOf('bench', id)}>
                  {t('app:ticket.resume')}
                </a>
                <button type="button" class="button" onClick={() => void begin()}>
                  {t('app:ticket.afresh')}
                </button>
              </>
            ) : (
              <>
                <a class="button act" href={hrefOf('bench', id)} onClick={() => id === GUIDED_TICKET && keepGuided(false)}>
                  {t('app:ticket.begin')}
                </a>
                {id === GUIDED_TICKET && (
                  <a class="button" href={hrefOf('bench', id)} onClick={() => keepGuided(true)}>
                    {t('guided:begin')}
                  </a>
                )}
              </>
            )}
          </div>
          <Cautions />
        </div>
        <div class="slip ticket-diagrams">
          <Diagrams rig={rigOf(ticket)} />
        </div>
      </main>
    </>
  );
}

/** Coached or practice, as the trainee likes; a graded ticket leaves no choice. */
function ModeChoice({ ticket }: { readonly ticket: Ticket }) {
  const [mode, setMode] = useState(() => modeFor(ticket));
  if (mode === 'graded') return <p>{t('app:ticket.howText.graded')}</p>;
  return (
    <fieldset class="ticket-how">
      <legend>{t('app:ticket.how')}</legend>
      {(['coached', 'practice'] as const).map((each) => (
        <label key={each} class="choice">
          <input
            type="radio"
            name="how"
            checked={mode === each}
            onChange={() => {
              setMode(each);
              keepMode(each);
            }}
          />
          <span>
            <b>{t(`app:mode.${each}`)}</b> <small>{t(`app:ticket.howText.${each}`)}</small>
          </span>
        </label>
      ))}
    </fieldset>
  );
}
