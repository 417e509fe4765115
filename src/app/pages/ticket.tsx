import { useEffect, useState } from 'preact/hooks';
import '../css/pages.css';
import { findTicket } from '../library.ts';
import { go, hrefOf } from '../router.ts';
import { Cautions, PageHead, useTitle } from '../shell.tsx';
import { dropRunning, readRunning } from '../storage.ts';
import { TicketText } from '../ticket-text.tsx';
import { t } from '../words.ts';

/** The complaint, the site and what is allowed; from here the job begins or goes on. */
export function TicketPage({ ticket: id }: { readonly ticket: string }) {
  const ticket = findTicket(id);
  const [running, setRunning] = useState(false);
  useTitle(t(`ticket:${id}.title`));
  useEffect(() => {
    let current = true;
    void readRunning(id).then((log) => current && setRunning(log !== undefined));
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
      <PageHead>
        <a class="back" href={hrefOf('home')}>
          {t('app:toTickets')}
        </a>
      </PageHead>
      <main class="sheet ticket-page">
        <h1 tabIndex={-1}>{t(`ticket:${id}.title`)}</h1>
        <div class="slip">
          <TicketText ticket={ticket} />
        </div>
        <div class="ticket-side">
          <div class="ticket-go">
            {running ? (
              <>
                <a class="button act" href={hrefOf('bench', id)}>
                  {t('app:ticket.resume')}
                </a>
                <button type="button" class="button" onClick={() => void begin()}>
                  {t('app:ticket.afresh')}
                </button>
              </>
            ) : (
              <a class="button act" href={hrefOf('bench', id)}>
                {t('app:ticket.begin')}
              </a>
            )}
          </div>
          <Cautions />
        </div>
      </main>
    </>
  );
}
