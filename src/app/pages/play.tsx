import { useEffect, useState } from 'preact/hooks';
import '../css/pages.css';
import { checkTicket } from '../../scenario/check.ts';
import { loadTicket } from '../../scenario/ticket.ts';
import { enrol, rigOf } from '../library.ts';
import { whyNot } from '../making/error-text.ts';
import { go, hrefOf } from '../router.ts';
import { decodeShared } from '../sharing.ts';
import { BackHead, useTitle } from '../shell.tsx';
import { t } from '../words.ts';

/** A ticket that came in a link: it is checked like any file from outside, and leads on to its page. */
export function PlayPage({ ticket: data }: { readonly ticket: string }) {
  const [why, setWhy] = useState<string>();
  useTitle(t('builder:shared.title'));
  useEffect(() => {
    try {
      const ticket = loadTicket(decodeShared(data));
      checkTicket(ticket, rigOf(ticket));
      go(hrefOf('ticket', enrol(ticket, { home: hrefOf('home') })), true);
    } catch (error) {
      setWhy(whyNot(error));
    }
  }, [data]);
  return (
    <>
      <BackHead />
      <main class="sheet">
        <h1 tabIndex={-1}>{t('builder:shared.title')}</h1>
        <p role="status">{why ?? t('app:loading')}</p>
      </main>
    </>
  );
}
