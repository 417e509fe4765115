import { navigate } from 'wouter-preact/use-hash-location';

const PLAIN = ['progress', 'guide', 'settings', 'take', 'build', 'assign', 'gradebook', 'drills', 'exams'] as const;
type PlainPageName = (typeof PLAIN)[number];
export type TicketPageName = 'ticket' | 'bench' | 'debrief' | 'live' | 'report';

/**
 * Where a page is: the app lives behind the hash, so that any static server and any folder serves it. A debrief and a report may name
 * the attempt by its number; without one it is the last.
 */
export function hrefOf(page: 'home' | PlainPageName | TicketPageName, ticket = '', number?: number): string {
  if (PLAIN.some((each) => each === page)) return `#/${page}`;
  if (page === 'home') return '#/';
  return `#/${page}/${encodeURIComponent(ticket)}${number === undefined ? '' : `/${number}`}`;
}

/** Where the printed reports of a class are, or one trainee's by their code. */
export const reportsHref = (code?: string): string => `#/gradebook/report${code === undefined ? '' : `/${code}`}`;

/** Where an assignment that is kept is, or the bench of one of its items. */
export const assignedHref = (id: string, item?: number): string => `#/assigned/${id}${item === undefined ? '' : `/${item}`}`;

/** Where the questions of an assignment's exercises or exam are, or with an attempt that is over its review. */
export const questionsHref = (id: string, item: number, number?: number): string =>
  `${assignedHref(id)}/questions/${item}${number === undefined ? '' : `/${number}`}`;

/** The bench of the drill's circuit that was chosen last. */
export const drillHref = '#/drills/bench';

/** The bench of a ticket of the exam under way, from 1. */
export const examBenchHref = (ticket: number): string => `#/exams/${ticket}`;

/** Where the service report of an assigned attempt is. */
export const assignedReportHref = (id: string, item: number, number: number): string =>
  `${assignedHref(id, item)}/${number}/report`;

/** Goes to a page; with `replace`, back leads to the page before this one. */
export function go(href: string, replace = false): void {
  navigate(href.slice(1), { replace });
}

let jobNow: string | undefined;

/** Where the job under way on the bench is gone back to from other pages; nothing when none was left there in this tab. */
export const jobHref = (): string | undefined => jobNow;

/** Keeps in mind, or forgets, that a bench was left from which one comes back. */
export function rememberJob(href: string | undefined): void {
  jobNow = href;
}
