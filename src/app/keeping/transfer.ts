/** All that is kept, out to a file and back in. */
import { replay } from '../../attempt/attempt.ts';
import { joinPractice } from '../../drills/practice.ts';
import { dataError } from '../../rig/errors.ts';
import { isListed } from '../board.ts';
import { examined, examsIn, joinExams } from '../drills/exam-keep.ts';
import { PRACTICE, practiceIn } from '../drills/keep.ts';
import { findTicket, rigOf } from '../library.ts';
import { attemptIn } from '../storage.ts';
import { fileText, HABIT_NAME, type KeptProfile, parseFile, within } from './file.ts';
import { habitKey, profileNow } from './profile-now.ts';
import { LIST, listIn, newProfile, type Profile, profiles } from './profiles.ts';
import { finishedIn } from './records.ts';
import { EXAMS, finishedKey, OWN, onShelf, readAll, shelved, transact } from './store.ts';

/** Names of the habits in the browser's local storage; nothing else of it goes into a file. */
function habitsOf(profile: string): Record<string, string> {
  const habits: Record<string, string> = {};
  try {
    for (const key of Object.keys(localStorage)) {
      const name = key.startsWith('bellwire.') ? onShelf(profile, key.slice('bellwire.'.length)) : undefined;
      if (name !== undefined && HABIT_NAME.test(name)) habits[name] = localStorage.getItem(key) ?? '';
    }
  } catch {
    // Without local storage there are no habits.
  }
  return habits;
}

/**
 * The text of a file that holds one profile, or all of them. PINs stay here.
 * @throws when the browser denies its storage
 */
export async function exportText(which: string | 'all'): Promise<string> {
  const kept = await readAll();
  const chosen = (await profiles()).filter((each) => which === 'all' || each.id === which);
  return fileText(
    chosen.map(({ id, name }): KeptProfile => {
      const shelf = shelfOf(id, kept);
      const running = [...shelf].flatMap(([key, value]) => {
        const ticket = key.startsWith('running:') ? key.slice('running:'.length) : '';
        const attempt = isListed(ticket) ? attemptIn(value) : undefined;
        return attempt === undefined ? [] : [{ ticket, mode: attempt.mode, log: attempt.log }];
      });
      const finished = finishedIn(shelf).map(({ number: _, result: __, ...attempt }) => attempt);
      const drills = practiceIn(shelf.get(PRACTICE));
      const exams = shelf.has(EXAMS) ? examsIn(shelf.get(EXAMS)) : undefined;
      return { name, finished, running, habits: habitsOf(id), ...(drills ? { drills } : {}), ...(exams ? { exams } : {}) };
    }),
  );
}

/** Plays every attempt of a file again. @throws DataError with the path of the first one that cannot have happened */
function playAgain(read: readonly KeptProfile[]): void {
  read.forEach((profile, index) => {
    for (const list of ['finished', 'running'] as const) {
      profile[list].forEach(({ ticket: id, mode, log }, at) => {
        const place = `profiles[${index}].${list}[${at}]`;
        const ticket = findTicket(id);
        if (ticket === undefined) throw dataError('keeping.noTicket', `${place}.ticket`, { ticket: id });
        within(`${place}.log`, () => {
          const { steps } = replay({ ...ticket, mode }, rigOf(ticket), log);
          const over = steps.at(-1)?.action.name === 'close';
          if (over !== (list === 'finished')) throw dataError('log.shape', 'steps');
        });
      });
    }
    profile.exams?.running?.bench?.forEach(({ ticket: id, log }, at) => {
      const place = `profiles[${index}].exams.running.bench[${at}]`;
      const ticket = findTicket(id);
      if (ticket === undefined) throw dataError('keeping.noTicket', `${place}.ticket`, { ticket: id });
      if (log !== undefined) within(`${place}.log`, () => replay(examined(ticket), rigOf(ticket), log));
    });
  });
}

/** Alike for one attempt that is met twice. */
const sameness = ({ when, log }: { readonly when: number; readonly log: unknown }): string => JSON.stringify([when, log]);

/** Everything on a profile's shelf. */
function shelfOf(id: string, kept: ReadonlyMap<string, unknown>): ReadonlyMap<string, unknown> {
  const shelf = new Map<string, unknown>();
  for (const [key, value] of kept) {
    const own = onShelf(id, key);
    if (own !== undefined && value !== undefined) shelf.set(own, value);
  }
  return shelf;
}

interface Places {
  readonly list: readonly Profile[];
  /** Where each profile of the file goes. */
  readonly targets: readonly string[];
}

/** Where the profiles of a file go: see `importText`. */
function placesFor(read: readonly KeptProfile[], there: readonly Profile[], kept: ReadonlyMap<string, unknown>): Places {
  const list = [...there];
  const rename = (at: number, name: string) => {
    const found = list[at];
    if (found !== undefined && found.name === '' && !list.some((each) => each.name === name)) list[at] = { ...found, name };
  };
  if (read.length === 1) {
    rename(
      list.findIndex((each) => each.id === profileNow()),
      read[0]?.name ?? '',
    );
    return { list, targets: [profileNow()] };
  }
  const untouched = list.length === 1 && list[0]?.id === OWN && shelfOf(OWN, kept).size === 0;
  if (untouched && !read.some((each) => each.name === '')) rename(0, read[0]?.name ?? '');
  // Two of one name in a file are two profiles.
  const targets: string[] = [];
  for (const { name } of read) {
    const found = list.find((each) => each.name === name && !targets.includes(each.id)) ?? newProfile(name);
    if (!list.includes(found)) list.push(found);
    targets.push(found.id);
  }
  return { list, targets };
}

/**
 * Reads a file in, whole or not at all. One profile goes to the one at work, which takes its name where it has none; of several, each
 * goes to the profile of its name, which is added where there is none (in a browser where nothing was done yet, the first one takes the
 * place of the unnamed profile there). What is there already is not read in twice, and no attempt under way is written over.
 * @returns how many attempts are new
 * @throws DataError with the path of what does not fit; whatever the browser says when it keeps nothing
 */
export async function importText(text: string): Promise<number> {
  const read = parseFile(text);
  playAgain(read);
  const before = await readAll();
  let targets: readonly string[] = [];
  let added = 0;
  await transact([...new Set([LIST, ...before.keys()])], (kept) => {
    const places = placesFor(read, listIn(kept.get(LIST)), kept);
    targets = places.targets;
    const writes = new Map<string, unknown>([[LIST, places.list]]);
    read.forEach((profile, index) => {
      const id = targets[index] ?? profileNow();
      const shelf = shelfOf(id, kept);
      const known = new Map(finishedIn(shelf).map((each) => [sameness(each), each]));
      let number = Number(shelf.get('count') ?? 0);
      for (const attempt of profile.finished) {
        const here = known.get(sameness(attempt));
        if (here !== undefined) {
          // Words that are here already stay.
          if (here.words === undefined && attempt.words !== undefined)
            writes.set(shelved(id, finishedKey(here.number)), { ...here, words: attempt.words });
          continue;
        }
        number += 1;
        added += 1;
        writes.set(shelved(id, finishedKey(number)), { ...attempt, number });
        writes.set(shelved(id, `closed:${attempt.ticket}`), { mode: attempt.mode, log: attempt.log });
      }
      writes.set(shelved(id, 'count'), number);
      const practised = practiceIn(shelf.get(PRACTICE));
      if (profile.drills !== undefined)
        writes.set(shelved(id, PRACTICE), practised === undefined ? profile.drills : joinPractice(practised, profile.drills));
      if (profile.exams !== undefined) writes.set(shelved(id, EXAMS), joinExams(examsIn(shelf.get(EXAMS)), profile.exams));
      for (const { ticket, mode, log } of profile.running) {
        if (shelf.has(`running:${ticket}`)) continue;
        added += 1;
        writes.set(shelved(id, `running:${ticket}`), { mode, log });
      }
    });
    return writes;
  });
  read.forEach((profile, index) => {
    for (const [name, value] of Object.entries(profile.habits)) {
      try {
        localStorage.setItem(habitKey(targets[index] ?? profileNow(), name), value);
      } catch {
        // A browser that remembers nothing still plays.
      }
    }
  });
  return added;
}
