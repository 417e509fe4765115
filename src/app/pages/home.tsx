import { useEffect, useState } from 'preact/hooks';
import '../css/pages.css';
import { board, type Listed } from '../board.ts';
import { GuidedStart } from '../guided/start.tsx';
import { OfflineNote } from '../offline/note.tsx';
import { hrefOf } from '../router.ts';
import { Cautions, PageHead, useTitle } from '../shell.tsx';
import { readBest, readRunning } from '../storage.ts';
import { siteOf, titleOf } from '../ticket-words.ts';
import { t } from '../words.ts';

/** The tickets on the board, what this is, and the cautions. */
export function HomePage() {
  useTitle(t('app:home.title'));
  return (
    <>
      <PageHead>
        <a class="back" href={hrefOf('progress')}>
          {t('keeping:link')}
        </a>
        <a class="back" href={hrefOf('guide')}>
          {t('guide:link')}
        </a>
        <a class="back" href={hrefOf('settings')}>
          {t('settings:title')}
        </a>
      </PageHead>
      <main class="sheet home">
        <div class="home-intro">
          <h1 tabIndex={-1}>{t('app:home.headline')}</h1>
          <p class="lead">{t('app:home.what')}</p>
          <p>{t('app:home.how')}</p>
          <GuidedStart />
        </div>
        <section class="home-board" aria-labelledby="tickets-title">
          <h2 id="tickets-title">{t('app:home.tickets')}</h2>
          <ol class="tickets">
            {board.map((ticket) => (
              <TicketRow key={ticket.id} ticket={ticket} />
            ))}
          </ol>
        </section>
        <Cautions />
        <OfflineNote />
      </main>
    </>
  );
}

function TicketRow({ ticket }: { readonly ticket: Listed }) {
  const [best, setBest] = useState<number>();
  const [running, setRunning] = useState(false);
  useEffect(() => {
    let current = true;
    void Promise.all([readBest(ticket.id), readRunning(ticket.id)]).then(([score, log]) => {
      if (!current) return;
      setBest(score);
      setRunning(log !== undefined);
    });
    return () => {
      current = false;
    };
  }, [ticket.id]);
  return (
    <li class="ticket-row">
      <a href={hrefOf('ticket', ticket.id)}>
        <span class="ticket-title">{titleOf(ticket.id)}</span>
        <span class="ticket-site">{siteOf(ticket.id)}</span>
      </a>
      <span class="ticket-rig">{t('app:home.line', { rig: t(`rig:name.${ticket.rig}`), mode: t(`app:mode.${ticket.mode}`) })}</span>
      <span class="ticket-best">
        {running ? t('app:home.running') : best === undefined ? t('app:home.fresh') : t('app:home.best', { score: best })}
      </span>
    </li>
  );
}
