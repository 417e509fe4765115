/** Assignments on the shelf of the profile at work, apart from its free practice: `assigned:ID`, `work:ID:ITEM:NUMBER` and `paper:ID:ITEM:NUMBER`. */
import { dropGuest } from '../guests.ts';
import { mine, profileNow } from '../keeping/profile-now.ts';
import { type Kept, onShelf, read, readAll, transact, tryTransact } from '../keeping/store.ts';
import {
  type Assigned,
  assignedSchema,
  type KeptAttempt,
  type KeptPaper,
  type KeptWork,
  keptPaperSchema,
  keptWorkSchema,
} from './records.ts';

const assignedKey = (id: string) => mine(`assigned:${id}`);
type Place = Pick<KeptAttempt, 'item' | 'number'>;
const workKey = (id: string, { item, number }: Place) => mine(`work:${id}:${item}:${number}`);
const paperKey = (id: string, { item, number }: Place) => mine(`paper:${id}:${item}:${number}`);

/** All of the profile's records whose key begins so. @throws when the browser denies its storage */
async function recordsUnder(prefix: string): Promise<(readonly [key: string, value: unknown])[]> {
  return [...(await readAll())].filter(([key]) => onShelf(profileNow(), key)?.startsWith(prefix) === true);
}

const allUnder = async (prefix: string): Promise<unknown[]> => (await recordsUnder(prefix)).map(([, value]) => value);

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

/** Every attempt at an assignment's papers. @throws when the browser denies its storage */
export async function readPapers(id: string): Promise<KeptPaper[]> {
  return (await allUnder(`paper:${id}:`)).flatMap((value) => keptPaperSchema.safeParse(value).data ?? []);
}

const keepFirst = (key: string, value: unknown): Promise<Kept> =>
  tryTransact([key], (found) => new Map(found.get(key) === undefined ? [[key, value]] : []));

/** Keeps an assignment; one that is there stays as it is. */
export const keepAssigned = (assigned: Assigned): Promise<Kept> => keepFirst(assignedKey(assigned.id), assigned);

/** Keeps the beginning of an attempt; one that is there is not begun again. */
export const keepBegun = (id: string, work: KeptWork): Promise<Kept> => keepFirst(workKey(id, work), work);

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

/** The same at a paper, whose questions are seen from then on: a learning system is told at once. */
export const keepPaperBegun = (id: string, paper: KeptPaper): Promise<Kept> => told(id, keepFirst(paperKey(id, paper), paper));

/** Keeps an attempt after a step; in a transaction that asks for nothing first, so that it is committed at once. */
export const keepWork = (id: string, work: KeptWork): Promise<Kept> =>
  told(
    id,
    tryTransact([], () => new Map([[workKey(id, work), work]])),
  );

/** Keeps an attempt at a paper after a choice; as {@link keepWork} does. */
export const keepPaper = (id: string, paper: KeptPaper): Promise<Kept> =>
  told(
    id,
    tryTransact([], () => new Map([[paperKey(id, paper), paper]])),
  );

function amend(id: string, key: string, change: object): Promise<Kept> {
  const changed = tryTransact([key], (found) => {
    const kept = found.get(key);
    return new Map<string, unknown>(kept === undefined ? [] : [[key, { ...kept, ...change }]]);
  });
  return told(id, changed);
}

/** Changes what is kept beside an attempt's steps. */
export const amendWork = (
  id: string,
  work: Place,
  change: Partial<Pick<KeptWork, 'ended' | 'words' | 'shown' | 'saved'>>,
): Promise<Kept> => amend(id, workKey(id, work), change);

/** Changes what is kept beside an attempt's choices. */
export const amendPaper = (
  id: string,
  paper: Place,
  change: Partial<Pick<KeptPaper, 'ended' | 'shown' | 'passed' | 'saved'>>,
): Promise<Kept> => amend(id, paperKey(id, paper), change);

/** Takes away all that this browser keeps of an assignment, whole or not. @throws when the browser denies its storage */
export async function eraseAssigned(id: string): Promise<void> {
  const guests = [...new Set((await readWorks(id)).map((each) => each.log.ticket))];
  guests.forEach(dropGuest);
  const attempts = [...(await recordsUnder(`work:${id}:`)), ...(await recordsUnder(`paper:${id}:`))];
  const keys = [
    assignedKey(id),
    ...attempts.map(([key]) => key),
    ...guests.flatMap((guest) => ['closed', 'running', 'aside', 'best'].map((kind) => mine(`${kind}:${guest}`))),
  ];
  await transact([], () => new Map(keys.map((key) => [key, undefined])));
}
