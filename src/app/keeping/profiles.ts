/** The profiles of this PC. Who is at work now is in profile-now.ts. */
import { z } from 'zod';
import { fits, newPin } from './pin.ts';
import { choose, leave, profileNow } from './profile-now.ts';
import { OWN, onShelf, read, readAll, transact } from './store.ts';

const profileSchema = z.object({
  id: z.string(),
  /** Empty for the profile that everybody starts with. */
  name: z.string(),
  pin: z.object({ salt: z.string(), hash: z.string(), rounds: z.number() }).optional(),
});
export type Profile = z.infer<typeof profileSchema>;

/** Where the list lies: on no profile's shelf. */
export const LIST = '/profiles';

/** Longest name, characters. */
export const MOST_NAME = 40;

/** Every profile, the first one first. @throws when the browser denies its storage */
export async function profiles(): Promise<readonly Profile[]> {
  return listIn(await read(LIST));
}

/** The list as it lies in the store. */
export function listIn(value: unknown): readonly Profile[] {
  const found = z.array(profileSchema).safeParse(value);
  return found.success && found.data.length > 0 ? found.data : [{ id: OWN, name: '' }];
}

function change(to: (list: readonly Profile[]) => readonly Profile[]): Promise<void> {
  return transact([LIST], (found) => new Map([[LIST, to(listIn(found.get(LIST)))]]));
}

/** A profile that is on no list yet. */
export const newProfile = (name: string): Profile => ({ id: `p${crypto.getRandomValues(new Uint32Array(2)).join('')}`, name });

/** @throws when the browser keeps nothing */
export function addProfile(name: string): Promise<void> {
  return change((list) => [...list, newProfile(name)]);
}

/** @throws when the browser keeps nothing */
export function renameProfile(id: string, name: string): Promise<void> {
  return change((list) => list.map((each) => (each.id === id ? { ...each, name } : each)));
}

/** What a profile has: how many attempts would go with it. @throws when the browser denies its storage */
export async function contentsOf(id: string): Promise<{ readonly finished: number; readonly running: number }> {
  const own = [...(await readAll()).keys()].map((key) => onShelf(id, key) ?? '');
  const count = (start: string) => own.filter((key) => key.startsWith(start)).length;
  return { finished: count('finished:'), running: count('running:') };
}

/**
 * Takes a profile away with everything on its shelf and its habits; the last one leaves an empty, unnamed one behind. Nobody is asked
 * for a PIN. Where it was at work, the first one that is left is chosen, and its PIN still asked for.
 * @throws when the browser keeps nothing; then nothing is gone
 */
export async function deleteProfile(id: string): Promise<void> {
  const shelf = [...(await readAll()).keys()].filter((key) => onShelf(id, key) !== undefined);
  let left: readonly Profile[] = [];
  await transact([LIST], (found) => {
    left = listIn(found.get(LIST)).filter((each) => each.id !== id);
    return new Map<string, unknown>([[LIST, left], ...shelf.map((key) => [key, undefined] as const)]);
  });
  try {
    for (const key of Object.keys(localStorage)) {
      if (key.startsWith('bellwire.') && onShelf(id, key.slice('bellwire.'.length)) !== undefined) localStorage.removeItem(key);
    }
  } catch {
    // Without local storage there are no habits.
  }
  leave(id, listIn(left)[0] ?? { id: OWN });
}

/** Sets, changes or (with undefined) takes away a profile's PIN. @throws when the browser keeps nothing */
export async function setPin(profile: Profile, pin: string | undefined): Promise<void> {
  const { id } = profile;
  const made = pin === undefined ? undefined : await newPin(pin);
  const changed = ({ name }: Profile): Profile => ({ id, name, ...(made && { pin: made }) });
  await change((list) => list.map((each) => (each.id === id ? changed(each) : each)));
  if (id === profileNow()) choose(changed(profile));
}

export const opens = async (profile: Profile, tried: string): Promise<boolean> =>
  profile.pin === undefined || (await fits(profile.pin, tried));
