/** Assignments on the shelf of the profile at work, apart from its free practice: `assigned:ID` and `work:ID:ITEM:NUMBER`. */
import { dropGuest } from '../guests.ts';
import { mine, profileNow } from '../keeping/profile-now.ts';
import { type Kept, onShelf, read, readAll, transact, tryTransact } from '../keeping/store.ts';
import { type Assigned, assignedSchema, type KeptWork, keptWorkSchema } from './records.ts';

const assignedKey = (id: string) => mine(`assigned:${id}`);
const workKey = (id: string, { item, number }: Pick<KeptWork, 'item' | 'number'>) => mine(`work:${id}:${item}:${number}`);

/** All of the profile's records whose key begins so. @throws when the browser denies its storage */
async function allUnder(prefix: string): Promise<unknown[]> {
  return [...(await readAll())].flatMap(([key, value]) => (onShelf(profileNow(), key)?.startsWith(prefix) === true ? [value] : []));
}

/** @throws when the browser denies its storage */
export async function readAssignments(): Promise<Assigned[]> {
  return (await allUnder('assigned:')).flatMap((value) => assignedSchema.safeParse(value).data ?? []);
}

/** @throws when the browser denies its storage */
export async function readAssigned(id: string): Promise<Assigned | undefined> {
  return assignedSchema.safeParse(await read(assignedKey(id))).data;
}

/** Every attempt at an assignment. @throws when the browser denies its storage */
export async function readWorks(id: string): Promise<KeptWork[]> {
  return (await allUnder(`work:${id}:`)).flatMap((value) => keptWorkSchema.safeParse(value).data ?? []);
}

/** Keeps an assignment; one that is there stays as it is. */
export function keepAssigned(assigned: Assigned): Promise<Kept> {
  const key = assignedKey(assigned.id);
  return tryTransact([key], (found) => new Map(found.get(key) === undefined ? [[key, assigned]] : []));
}

/** Keeps the beginning of an attempt; one that is there is not begun again. */
export function keepBegun(id: string, work: KeptWork): Promise<Kept> {
  const key = workKey(id, work);
  return tryTransact([key], (found) => new Map(found.get(key) === undefined ? [[key, work]] : []));
}

let watcher: (id: string) => void = () => undefined;

/** Whoever wants to know when something of an assignment was kept: a learning system that opened the page. */
export function watchWorks(told: (id: string) => void): void {
  watcher = told;
}

async function told(id: string, keeping: Promise<Kept>): Promise<Kept> {
  const kept = await keeping;
  watcher(id);
  return kept;
}

/** Keeps an attempt after a step; in a transaction that asks for nothing first, so that it is committed at once. */
export const keepWork = (id: string, work: KeptWork): Promise<Kept> =>
  told(
    id,
    tryTransact([], () => new Map([[workKey(id, work), work]])),
  );

/** Changes what is kept beside an attempt's steps. */
export function amendWork(
  id: string,
  work: Pick<KeptWork, 'item' | 'number'>,
  change: Partial<Pick<KeptWork, 'ended' | 'words' | 'shown' | 'saved'>>,
): Promise<Kept> {
  const key = workKey(id, work);
  const changed = tryTransact([key], (found) => {
    const kept = found.get(key) as KeptWork | undefined;
    return new Map<string, unknown>(kept === undefined ? [] : [[key, { ...kept, ...change }]]);
  });
  return told(id, changed);
}

/** Takes away all that this browser keeps of an assignment. @throws when the browser denies its storage */
export async function eraseAssigned(id: string): Promise<void> {
  const works = await readWorks(id);
  const guests = [...new Set(works.map((each) => each.log.ticket))];
  guests.forEach(dropGuest);
  const keys = [
    assignedKey(id),
    ...works.map((each) => workKey(id, each)),
    ...guests.flatMap((guest) => ['closed', 'running', 'aside', 'best'].map((kind) => mine(`${kind}:${guest}`))),
  ];
  await transact([], () => new Map(keys.map((key) => [key, undefined])));
}
