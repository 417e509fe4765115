/** Who is at work on this PC. The choice is kept beside the habits, because the first page must know it at once. */
import { OWN, shelved } from './store.ts';

const CHOSEN = 'bellwire/profile';
const LOCKED = 'bellwire/locked';
const OPENED = 'bellwire/opened';
/** The profile that was deleted last: other tabs hear of it. */
const GONE = 'bellwire/gone';

function local(area: 'localStorage' | 'sessionStorage', key: string): string | null {
  try {
    return globalThis[area].getItem(key);
  } catch {
    return null;
  }
}

function keepLocal(area: 'localStorage' | 'sessionStorage', key: string, value: string): void {
  try {
    globalThis[area].setItem(key, value);
  } catch {
    // A browser that remembers nothing has one profile.
  }
}

let now: string | undefined;

/** Id of the profile that this tab works for. It stays so until the page is loaded anew. */
export function profileNow(): string {
  now ??= local('localStorage', CHOSEN) ?? OWN;
  return now;
}

/** Whether the PIN of this profile must be given first. */
export const isLocked = (): boolean =>
  local('localStorage', LOCKED) === profileNow() && local('sessionStorage', OPENED) !== profileNow();

interface Choice {
  readonly id: string;
  readonly pin?: unknown;
}

/** Works for this profile from the next load of the page. Its PIN has been given. */
export function choose(profile: Choice): void {
  keepLocal('localStorage', CHOSEN, profile.id);
  keepLocal('localStorage', LOCKED, profile.pin === undefined ? '' : profile.id);
  keepLocal('sessionStorage', OPENED, profile.id);
}

/** After a profile was deleted: every tab hears of it, and where it was at work `next` is, whose PIN is still to be given. */
export function leave(id: string, next: Choice): void {
  if (id === profileNow() || local('localStorage', CHOSEN) === id) {
    choose(next);
    keepLocal('sessionStorage', OPENED, '');
  }
  // Emptied first: a value that stays the same tells other tabs nothing.
  keepLocal('localStorage', GONE, '');
  keepLocal('localStorage', GONE, id);
}

/** Loads the page anew when another tab deletes the profile that this one works for: nothing more is kept for it. */
export function leaveWhenGone(): () => void {
  const hear = (event: StorageEvent) => {
    if (event.key === GONE && event.newValue === profileNow()) location.reload();
  };
  addEventListener('storage', hear);
  return () => removeEventListener('storage', hear);
}

/** A key of the profile that is at work. */
export const mine = (key: string): string => shelved(profileNow(), key);

/** The name of a habit of a profile's in the browser's local storage. */
export const habitKey = (profile: string, name: string): string => `bellwire.${shelved(profile, name)}`;
