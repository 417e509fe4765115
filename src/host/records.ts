/** What the lab keeps, by the question that is asked of it. Times are milliseconds since 1970. */
import type { Database } from './database.ts';

export interface TraineeRow {
  readonly code: string;
  readonly name: string;
  readonly pin: string;
}

export interface SessionRow {
  readonly hash: string;
  /** Null: the instructor's. */
  readonly trainee: string | null;
  readonly seen: number;
}

export interface AttemptRow {
  readonly id: number;
  readonly assignment: string;
  readonly trainee: string;
  readonly item: number;
  readonly number: number;
  readonly rules: number;
  readonly began: number;
  readonly ended: 'closed' | 'timeOver' | null;
  /** Time that the instructor added, seconds. */
  readonly extra: number;
  readonly words: string;
}

export interface StepRow {
  readonly number: number;
  readonly stamp: number;
  /** On the job, as the world had it. */
  readonly seconds: number;
  readonly action: string;
}

/** A choice at a question of a paper, the latest. */
export interface AnswerRow {
  readonly question: number;
  readonly choice: number;
  readonly stamp: number;
}

export type Records = ReturnType<typeof createRecords>;

export function createRecords(db: Database) {
  const setting = db.prepare<[string], { value: string }>('SELECT value FROM settings WHERE name = ?');
  const setSetting = db.prepare('INSERT OR REPLACE INTO settings (name, value) VALUES (?, ?)');
  const trainee = db.prepare<[string], TraineeRow>('SELECT * FROM trainees WHERE code = ?');
  const trainees = db.prepare<[], TraineeRow>('SELECT * FROM trainees ORDER BY code');
  const setTrainee = db.prepare(
    'INSERT INTO trainees (code, name, pin) VALUES (?, ?, ?) ON CONFLICT (code) DO UPDATE SET name = excluded.name, pin = excluded.pin',
  );
  const erase = db.prepare('DELETE FROM trainees WHERE code = ?');
  const session = db.prepare<[string], SessionRow>('SELECT * FROM sessions WHERE hash = ?');
  const setSession = db.prepare('INSERT OR REPLACE INTO sessions (hash, trainee, seen) VALUES (?, ?, ?)');
  const dropSession = db.prepare('DELETE FROM sessions WHERE hash = ?');
  const dropSessionsOf = db.prepare('DELETE FROM sessions WHERE trainee IS ?');
  const dropStale = db.prepare('DELETE FROM sessions WHERE seen < ?');
  const assignments = db.prepare<[], { id: string; json: string; down: number }>('SELECT * FROM assignments ORDER BY id');
  const setAssignment = db.prepare(
    'INSERT INTO assignments (id, json) VALUES (?, ?) ON CONFLICT (id) DO UPDATE SET json = excluded.json, down = 0',
  );
  const takeDown = db.prepare('UPDATE assignments SET down = 1 WHERE id = ?');
  const attempt = db.prepare<[number], AttemptRow>('SELECT * FROM attempts WHERE id = ?');
  const attemptsOf = db.prepare<[string, string], AttemptRow>(
    'SELECT * FROM attempts WHERE trainee = ? AND assignment = ? ORDER BY item, number',
  );
  const attemptsAt = db.prepare<[string], AttemptRow>('SELECT * FROM attempts WHERE assignment = ? ORDER BY trainee, item, number');
  const beginAttempt = db.prepare(
    'INSERT INTO attempts (assignment, trainee, item, number, rules, began) VALUES (?, ?, ?, ?, ?, ?)',
  );
  const endAttempt = db.prepare('UPDATE attempts SET ended = ? WHERE id = ? AND ended IS NULL');
  const extend = db.prepare('UPDATE attempts SET extra = extra + ? WHERE id = ?');
  const setWords = db.prepare('UPDATE attempts SET words = ? WHERE id = ?');
  const steps = db.prepare<[number], StepRow>('SELECT number, stamp, seconds, action FROM steps WHERE attempt = ? ORDER BY number');
  const addStep = db.prepare('INSERT INTO steps (attempt, number, stamp, seconds, action) VALUES (?, ?, ?, ?, ?)');
  const answers = db.prepare<[number], AnswerRow>(
    'SELECT question, choice, stamp FROM answers WHERE attempt = ? ORDER BY question',
  );
  // What is over stays as it was, whatever was still on its way.
  const setAnswer = db.prepare(
    `INSERT INTO answers (attempt, question, choice, stamp) SELECT id, ?, ?, ? FROM attempts WHERE id = ? AND ended IS NULL
     ON CONFLICT (attempt, question) DO UPDATE SET choice = excluded.choice, stamp = excluded.stamp`,
  );

  return {
    setting: (name: string): string | undefined => setting.get(name)?.value,
    setSetting: (name: string, value: string): void => void setSetting.run(name, value),
    trainee: (code: string): TraineeRow | undefined => trainee.get(code),
    trainees: (): TraineeRow[] => trainees.all(),
    setTrainees: (rows: readonly TraineeRow[]): void =>
      db
        .transaction(() => {
          for (const { code, name, pin } of rows) setTrainee.run(code, name, pin);
        })
        .immediate(),
    /** With all sessions, attempts and steps of theirs; what the file held of them is overwritten. */
    erase(code: string): boolean {
      const gone = erase.run(code).changes > 0;
      db.pragma('wal_checkpoint(TRUNCATE)');
      return gone;
    },
    session: (hash: string): SessionRow | undefined => session.get(hash),
    setSession: (hash: string, trainee: string | null, seen: number): void => void setSession.run(hash, trainee, seen),
    dropSession: (hash: string): void => void dropSession.run(hash),
    dropSessionsOf: (trainee: string | null): void => void dropSessionsOf.run(trainee),
    dropSessionsBefore: (seen: number): void => void dropStale.run(seen),
    assignments: () => assignments.all(),
    setAssignment: (id: string, json: string): void => void setAssignment.run(id, json),
    takeDown: (id: string): boolean => takeDown.run(id).changes > 0,
    attempt: (id: number): AttemptRow | undefined => attempt.get(id),
    attemptsOf: (trainee: string, assignment: string): AttemptRow[] => attemptsOf.all(trainee, assignment),
    attemptsAt: (assignment: string): AttemptRow[] => attemptsAt.all(assignment),
    beginAttempt: (of: Pick<AttemptRow, 'assignment' | 'trainee' | 'item' | 'number' | 'rules' | 'began'>): number =>
      Number(beginAttempt.run(of.assignment, of.trainee, of.item, of.number, of.rules, of.began).lastInsertRowid),
    endAttempt: (id: number, how: 'closed' | 'timeOver'): void => void endAttempt.run(how, id),
    extend: (id: number, seconds: number): void => void extend.run(seconds, id),
    setWords: (id: number, words: string): void => void setWords.run(words, id),
    steps: (attempt: number): StepRow[] => steps.all(attempt),
    addStep: (attempt: number, { number, stamp, seconds, action }: StepRow): void =>
      void addStep.run(attempt, number, stamp, seconds, action),
    answers: (attempt: number): AnswerRow[] => answers.all(attempt),
    setAnswer: (attempt: number, { question, choice, stamp }: AnswerRow): void =>
      void setAnswer.run(question, choice, stamp, attempt),
  };
}
