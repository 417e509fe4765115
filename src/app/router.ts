import { navigate } from 'wouter-preact/use-hash-location';

export type TicketPageName = 'ticket' | 'bench' | 'debrief' | 'live';

/** Where a page is: the app lives behind the hash, so that any static server and any folder serves it. */
export function hrefOf(page: 'home' | 'progress' | 'guide' | TicketPageName, ticket = ''): string {
  if (page === 'progress' || page === 'guide') return `#/${page}`;
  return page === 'home' ? '#/' : `#/${page}/${encodeURIComponent(ticket)}`;
}

/** Goes to a page; with `replace`, back leads to the page before this one. */
export function go(href: string, replace = false): void {
  navigate(href.slice(1), { replace });
}
