/** The profiles of this PC. Who is at work now is in profile-now.ts. */
import { z } from 'zod';
import { fits, newPin } from './pin.ts';
import { choose, profileNow } from './profile-now.ts';
import { OWN, read, transact } from './store.ts';

const profileSchema = z.object({
  id: z.string(),
  /** Empty for the profile that everybody starts with. */
  name: z.string(),
  pin: z.object({ salt: z.string(), hash: z.string(), rounds: z.number() }).optional(),
});
export type Profile = z.infer<typeof profileSchema>;

// The list lies on no profile's shelf.
const LIST = '/profiles';

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

export const opens = async (profile: Profile, tried: string): Promise<boolean> =>
  profile.pin === undefined || (await fits(profile.pin, tried));
