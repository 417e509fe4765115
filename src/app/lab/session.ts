/** Who is signed in on this PC's page of the lab: one seat in memory, and nothing of it on the PC. */
import { takeUpLanguage } from '../language.ts';
import { takeUpSettings } from '../settings.ts';
import { passThrough } from '../storage.ts';
import { ask } from './api.ts';
import { dialHost } from './link.ts';
import { createSeat } from './seat.ts';
import type { Seat } from './seat-state.ts';

const PAGE = '#/lab';

let seat: Seat | undefined;
let isHere = false;

/** Everything as for the next one who sits down. */
function wipe(passing: boolean): void {
  passThrough(passing);
  takeUpSettings();
  void takeUpLanguage();
}

export function labSeat(): Seat {
  if (seat !== undefined) return seat;
  const made = createSeat(dialHost('/api/live'));
  let was = false;
  made.watch(() => {
    const is = made.get().signedIn !== undefined;
    if (was && !is && isHere) wipe(true);
    was = is;
  });
  seat = made;
  return made;
}

/** The page of the lab is up: from now on until it is left, nothing is written on this PC. */
export function enterLab(): void {
  if (isHere) return;
  isHere = true;
  passThrough(true);
  addEventListener('hashchange', leaveLab);
}

function leaveLab(): void {
  if (location.hash.startsWith(PAGE)) return;
  removeEventListener('hashchange', leaveLab);
  isHere = false;
  signOut();
  wipe(false);
}

/** Ends the session here and on the host. */
export function signOut(): void {
  const token = seat?.get().signedIn?.token;
  if (token === undefined) return;
  ask('/api/sign-out', { method: 'POST', token }).catch(() => undefined);
  seat?.end('self');
}
