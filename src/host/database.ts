/** The lab's file: SQLite, in one folder of the instructor's. A commit is on the disk before anybody hears of it. */
import { copyFileSync, existsSync, mkdirSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import type BetterSqlite from 'better-sqlite3';
import { dataError } from '../rig/errors.ts';

export type Database = BetterSqlite.Database;

const FILE = 'bellwire-lab.sqlite';

/** Each takes the file to the next version; a file that has been shipped with is never changed, only followed by another. */
const MIGRATIONS: readonly string[] = [
  `
  CREATE TABLE settings (name TEXT PRIMARY KEY, value TEXT NOT NULL) STRICT;
  CREATE TABLE trainees (code TEXT PRIMARY KEY, name TEXT NOT NULL, pin TEXT NOT NULL) STRICT;
  CREATE TABLE sessions (
    hash TEXT PRIMARY KEY,
    trainee TEXT REFERENCES trainees ON DELETE CASCADE,
    seen INTEGER NOT NULL
  ) STRICT;
  CREATE TABLE assignments (id TEXT PRIMARY KEY, json TEXT NOT NULL, down INTEGER NOT NULL DEFAULT 0) STRICT;
  CREATE TABLE attempts (
    id INTEGER PRIMARY KEY,
    assignment TEXT NOT NULL REFERENCES assignments,
    trainee TEXT NOT NULL REFERENCES trainees ON DELETE CASCADE,
    item INTEGER NOT NULL,
    number INTEGER NOT NULL,
    rules INTEGER NOT NULL,
    began INTEGER NOT NULL,
    ended TEXT CHECK (ended IN ('closed', 'timeOver')),
    extra INTEGER NOT NULL DEFAULT 0,
    words TEXT NOT NULL DEFAULT '',
    UNIQUE (assignment, trainee, item, number)
  ) STRICT;
  CREATE TABLE steps (
    attempt INTEGER NOT NULL REFERENCES attempts ON DELETE CASCADE,
    number INTEGER NOT NULL,
    stamp INTEGER NOT NULL,
    seconds REAL NOT NULL,
    action TEXT NOT NULL,
    PRIMARY KEY (attempt, number)
  ) STRICT, WITHOUT ROWID;
  CREATE TABLE pauses (began INTEGER PRIMARY KEY, ended INTEGER) STRICT;
  CREATE INDEX attempts_of ON attempts (trainee, assignment);
  `,
  `
  CREATE TABLE answers (
    attempt INTEGER NOT NULL REFERENCES attempts ON DELETE CASCADE,
    question INTEGER NOT NULL,
    choice INTEGER NOT NULL,
    stamp INTEGER NOT NULL,
    PRIMARY KEY (attempt, question)
  ) STRICT, WITHOUT ROWID;
  `,
];

/** @throws DataError where better-sqlite3 is not there: it is built when the packages are installed, which not every PC can */
async function driver(): Promise<typeof BetterSqlite> {
  try {
    return (await import('better-sqlite3')).default;
  } catch {
    throw dataError('lab.noDatabase', 'better-sqlite3');
  }
}

/** Opens the file in a folder, makes both where they are not there, and takes the file to the current version. @throws DataError */
export async function openDatabase(folder: string): Promise<Database> {
  const Driver = await driver();
  let db: Database;
  try {
    mkdirSync(folder, { recursive: true, mode: 0o700 });
    db = new Driver(join(folder, FILE));
  } catch (error) {
    throw dataError(isMissingDriver(error) ? 'lab.noDatabase' : 'lab.unwritable', folder);
  }
  try {
    db.pragma('journal_mode = WAL');
    db.pragma('synchronous = FULL');
    db.pragma('foreign_keys = ON');
    db.pragma('secure_delete = ON');
    migrate(db, folder);
    return db;
  } catch (error) {
    db.close();
    throw error instanceof Error && 'path' in error ? error : dataError('lab.noFile', join(folder, FILE));
  }
}

/** The package is there, but what was built for it is not. */
const isMissingDriver = (error: unknown): boolean =>
  error instanceof Error && /bindings|NODE_MODULE_VERSION|\.node/.test(error.message);

function migrate(db: Database, folder: string): void {
  const version = Number(db.pragma('user_version', { simple: true }));
  if (version > MIGRATIONS.length) throw dataError('lab.newer', join(folder, FILE), { version, current: MIGRATIONS.length });
  for (const [index, step] of MIGRATIONS.entries()) {
    if (index < version) continue;
    db.transaction(() => {
      db.exec(step);
      db.pragma(`user_version = ${index + 1}`);
    }).immediate();
  }
}

/** Copies the file while the lab goes on, as it stands at one moment. @throws DataError */
export async function backup(folder: string, file: string): Promise<void> {
  if (!existsSync(join(folder, FILE))) throw dataError('lab.noFile', join(folder, FILE));
  const Driver = await driver();
  const db = new Driver(join(folder, FILE), { readonly: true });
  try {
    mkdirSync(dirname(file), { recursive: true });
    await db.backup(file);
  } catch {
    throw dataError('lab.unwritable', file);
  } finally {
    db.close();
  }
}

/**
 * Puts a copy in the place of the lab's file. What was there stays beside it as `….before`.
 * @throws DataError where the copy is none of ours, or is damaged, or a lab is running on the folder
 */
export async function restore(folder: string, file: string): Promise<void> {
  const Driver = await driver();
  if (!existsSync(file)) throw dataError('data.unreadable', file);
  try {
    const copy = new Driver(file, { readonly: true });
    const sound = copy.pragma('integrity_check', { simple: true }) === 'ok';
    const version = Number(copy.pragma('user_version', { simple: true }));
    copy.prepare('SELECT count(*) FROM attempts').get();
    copy.close();
    if (!sound || version < 1 || version > MIGRATIONS.length) throw new Error('not sound');
  } catch {
    throw dataError('lab.noFile', file);
  }
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  const target = join(folder, FILE);
  if (existsSync(target)) {
    const db = new Driver(target, { timeout: 200 });
    try {
      // Whoever has it open holds a lock in this mode: then nothing is touched.
      db.pragma('locking_mode = EXCLUSIVE');
      db.pragma('wal_checkpoint(TRUNCATE)');
      db.pragma('journal_mode = DELETE');
    } catch {
      throw dataError('lab.running', folder);
    } finally {
      db.close();
    }
    copyFileSync(target, `${target}.before`);
  }
  for (const end of ['-wal', '-shm']) rmSync(`${target}${end}`, { force: true });
  copyFileSync(file, target);
}
