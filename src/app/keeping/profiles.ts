/** Who is at work on this PC. The choice is kept beside the habits, because the first page must know it at once. */
import { z } from 'zod';
import { fits, newPin } from './pin.ts';
import { OWN, read, shelved, transact } from './store.ts';

const profileSchema = z.object({
  id: z.string(),
  /** Empty for the profile that everybody starts with. */
  name: z.string(),
  pin: z.object({ salt: z.string(), hash: z.string(), rounds: z.number() }).optional(),
});
export type Profile = z.infer<typeof profileSchema>;

// The list lies on no profile's shelf.
const LIST = '/profiles';
const CHOSEN = 'bellwire/profile';
const LOCKED = 'bellwire/locked';
const OPENED = 'bellwire/opened';

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

/** Every profile, the first one first. @throws when the browser denies its storage */
export async function profiles(): Promise<readonly Profile[]> {
  return listIn(await read(LIST));
}

function listIn(value: unknown): readonly Profile[] {
  const found = z.array(profileSchema).safeParse(value);
  return found.success && found.data.length > 0 ? found.data : [{ id: OWN, name: '' }];
}

function change(to: (list: readonly Profile[]) => readonly Profile[]): Promise<void> {
  return transact([LIST], (found) => new Map([[LIST, to(listIn(found.get(LIST)))]]));
}

/** @throws when the browser keeps nothing */
export async function addProfile(name: string): Promise<Profile> {
  const profile: Profile = { id: `p${crypto.getRandomValues(new Uint32Array(2)).join('')}`, name };
  await change((list) => [...list, profile]);
  return profile;
}

/** Sets, changes or (with undefined) takes away a profile's PIN. @throws when the browser keeps nothing */
export async function setPin(profile: Profile, pin: string | undefined): Promise<void> {
  const { id, name } = profile;
  const next: Profile = pin === undefined ? { id, name } : { id, name, pin: await newPin(pin) };
  await change((list) => list.map((each) => (each.id === id ? next : each)));
  if (id === profileNow()) choose(next);
}

/** Works for this profile from the next load of the page. Its PIN has been given. */
export function choose(profile: Profile): void {
  keepLocal('localStorage', CHOSEN, profile.id);
  keepLocal('localStorage', LOCKED, profile.pin === undefined ? '' : profile.id);
  keepLocal('sessionStorage', OPENED, profile.id);
}

export const opens = async (profile: Profile, tried: string): Promise<boolean> =>
  profile.pin === undefined || (await fits(profile.pin, tried));

/** A key of the profile that is at work. */
export const mine = (key: string): string => shelved(profileNow(), key);

/** The name of a habit of a profile's in the browser's local storage. */
export const habitKey = (profile: string, name: string): string => `bellwire.${shelved(profile, name)}`;
