/** Attempts as they are worked on. Each is rebuilt from its steps when it is asked for; the ones of late are kept in memory. */
import { type Action, sameAction } from '../attempt/actions.ts';
import { type Attempt, begin, perform, phaseOf, viewOf } from '../attempt/attempt.ts';
import type { Assignment } from '../classroom/assignment.ts';
import type { FromHost } from '../classroom/protocol.ts';
import { RULES } from '../classroom/seal.ts';
import { type Submission, submissionOf } from '../classroom/submission.ts';
import { type DataError, dataError, isDataError } from '../rig/errors.ts';
import { reportOf, type ServiceReport, type Setting } from '../score/report.ts';
import { assignmentUp, beginNext } from './beginning.ts';
import type { Class, Given } from './class.ts';
import type { Clock } from './clock.ts';
import type { Committer } from './committer.ts';
import { shown } from './face.ts';
import type { AttemptRow, Records, StepRow } from './records.ts';

/** So many worlds stay in memory. */
const MOST_KEPT = 256;

export interface Running {
  readonly row: AttemptRow;
  readonly assignment: Assignment;
  readonly given: Given;
  readonly attempt: Attempt;
  /** By the host's clock, one a step. */
  readonly stamps: number[];
}

export type Acted = Extract<FromHost, { kind: 'acted' | 'refused' }>;

export interface Attempts {
  /** The trainee's latest at an item, or a new one. @throws DataError where the assignment does not allow it */
  open(trainee: string, assignment: string, item: number, fresh: boolean): Running;
  /** @throws DataError where it is gone, or was done by other rules */
  get(id: number): Running;
  /** The same; undefined in place of an error. */
  find(id: number): Running | undefined;
  /**
   * Takes a step, once for each number, and tells of it when it is on the disk.
   * @throws DataError where the number is not the next and was not taken by the same action, or the attempt is over
   */
  act(id: number, seq: number, action: Action, tell: (answer: Acted | DataError) => void): void;
  /** Left of its time, seconds; undefined: no limit. */
  secondsLeft(running: Running): number | undefined;
  /** Ends it when its time is over. Whether it is over now. */
  settle(running: Running): boolean;
  setWords(id: number, text: string): void;
  /** Adds time to attempts; to one trainee's, or to all that are running. */
  extend(assignment: string, trainee: string | undefined, seconds: number): void;
  report(running: Running): ServiceReport;
  submission(row: AttemptRow): Submission;
  /** Forgets what is in memory of somebody. */
  forget(trainee: string): void;
}

export function createAttempts(records: Records, room: Class, clock: Clock, committer: Committer): Attempts {
  const kept = new Map<number, Running>();

  function get(id: number): Running {
    const known = kept.get(id);
    if (known) {
      kept.delete(id);
      kept.set(id, known);
      return known;
    }
    // What was acted on before must be in the file before it is read.
    committer.flush();
    const row = records.attempt(id);
    if (!row) throw dataError('lab.noAttempt', 'attempt');
    return keep(rebuilt(row, records.steps(id)));
  }

  function keep(running: Running): Running {
    kept.set(running.row.id, running);
    const [oldest] = kept.keys();
    if (kept.size > MOST_KEPT && oldest !== undefined) {
      committer.flush();
      kept.delete(oldest);
    }
    return running;
  }

  /** @param steps the first of its steps, in order */
  function rebuilt(row: AttemptRow, steps: readonly StepRow[]): Running {
    const assignment = room.assignment(row.assignment);
    if (!assignment) throw dataError('lab.noAssignment', 'assignment', { id: row.assignment });
    if (row.rules !== RULES) throw dataError('lab.otherRules', 'rules');
    const given = room.given(assignment, row.trainee, row.item);
    const attempt = begin(given.work.ticket, given.work.rig);
    for (const { action, seconds, number } of steps) {
      const outcome = perform(attempt, JSON.parse(action) as Action);
      if (!outcome.ok || outcome.step.seconds !== seconds) throw dataError('lab.otherRules', `steps[${number - 1}]`);
    }
    return { row, assignment, given, attempt, stamps: steps.map(({ stamp }) => stamp) };
  }

  function secondsLeft({ row, assignment }: Running): number | undefined {
    if (assignment.minutes === undefined) return undefined;
    return Math.max(0, assignment.minutes * 60 + row.extra - clock.worked(row.began, clock.now()));
  }

  function end(running: Running, how: 'closed' | 'timeOver'): void {
    records.endAttempt(running.row.id, how);
    refresh(running.row.id);
  }

  /** Reads again what stands beside the steps. */
  function refresh(id: number): void {
    const running = kept.get(id);
    const row = records.attempt(id);
    if (running && row) kept.set(id, { ...running, row });
  }

  function settle(running: Running): boolean {
    if (running.row.ended !== null) return true;
    const left = secondsLeft(running);
    if (phaseOf(running.attempt) === 'closed') return true;
    if (!(left === 0 || !room.isOpen(running.assignment))) return false;
    committer.flush();
    end(running, 'timeOver');
    return true;
  }

  function acted(running: Running, seq: number): Acted {
    const { attempt, given } = running;
    const step = attempt.steps[seq - 1]?.view;
    if (!step) throw dataError('lab.seqAhead', 'seq', { next: attempt.steps.length + 1 });
    const { view, options } = shown(attempt, given.face);
    const left = secondsLeft(running);
    return { kind: 'acted', seq, step, view, options: [...options], ...(left === undefined ? {} : { secondsLeft: left }) };
  }

  /** The service report, without settings that its trainee has never had in sight. */
  function report({ attempt, given: { work, face } }: Running): ServiceReport {
    const known = new Set<string>();
    const again = begin(work.ticket, work.rig);
    const see = () => {
      for (const { id, controls } of viewOf(again).parts) for (const control of controls) known.add(`${id} ${control.id}`);
    };
    see();
    for (const { action } of attempt.steps) {
      perform(again, action);
      see();
    }
    const whole = reportOf(attempt);
    const seen = (settings: readonly Setting[]) => settings.filter(({ part, control }) => known.has(`${part} ${control}`));
    return {
      ...whole,
      ticket: face.id,
      evidence: whole.evidence.map((each) => ({ ...each, settings: seen(each.settings) })),
      proof: { ...whole.proof, call: seen(whole.proof.call) },
    };
  }

  /** The answer to a step that was taken before. */
  function again(running: Running, seq: number, action: Action): Acted {
    const taken = running.attempt.steps[seq - 1]?.action;
    const same = taken !== undefined && sameAction(taken, action);
    const open = taken?.name === 'watch' && action.name === 'watch' && action.seconds === 0;
    if (!same && !open) throw dataError('lab.seqTaken', 'seq', { next: running.attempt.steps.length + 1 });
    if (seq === running.attempt.steps.length) return acted(running, seq);
    committer.flush();
    return acted(rebuilt(running.row, records.steps(running.row.id).slice(0, seq)), seq);
  }

  return {
    get,
    find(id) {
      try {
        return get(id);
      } catch (error) {
        if (isDataError(error)) return undefined;
        throw error;
      }
    },
    settle,
    secondsLeft,
    open(trainee, id, item, fresh) {
      const assignment = assignmentUp(room, id);
      room.given(assignment, trainee, item);
      const tried = records.attemptsOf(trainee, id).filter((row) => row.item === item);
      const last = tried.at(-1);
      const latest = last && get(last.id);
      if (latest && !(fresh && settle(latest))) return latest;
      return get(beginNext({ records, room, clock }, assignment, trainee, item, tried));
    },
    act(id, seq, action, tell) {
      const running = get(id);
      const { attempt } = running;
      if (seq <= attempt.steps.length) {
        const answer = again(running, seq, action);
        committer.add(undefined, (isKept) => tell(isKept ? answer : dataError('lab.notKept', 'seq')));
        return;
      }
      if (seq > attempt.steps.length + 1) throw dataError('lab.seqAhead', 'seq', { next: attempt.steps.length + 1 });
      if (settle(running)) throw dataError('lab.over', 'attempt');
      const stamp = clock.now();
      const outcome = perform(attempt, action);
      if (!outcome.ok) {
        tell({ kind: 'refused', seq, refusal: outcome.refusal });
        return;
      }
      running.stamps.push(stamp);
      const answer = acted(running, seq);
      const { seconds, action: resolved } = outcome.step;
      const closes = resolved.name === 'close';
      committer.add(
        () => {
          records.addStep(id, { number: seq, stamp, seconds, action: JSON.stringify(resolved) });
          if (closes) records.endAttempt(id, 'closed');
        },
        (isKept) => {
          if (!isKept) kept.delete(id);
          else if (closes) refresh(id);
          tell(isKept ? answer : dataError('lab.notKept', 'seq'));
        },
      );
    },
    setWords(id, text) {
      records.setWords(id, text);
      refresh(id);
    },
    extend(assignment, trainee, seconds) {
      for (const row of records.attemptsAt(assignment)) {
        if (row.ended !== null || (trainee !== undefined && row.trainee !== trainee)) continue;
        records.extend(row.id, seconds);
        refresh(row.id);
      }
    },
    report,
    submission(row) {
      const running = get(row.id);
      const { assignment, given, attempt, stamps } = running;
      return submissionOf({
        assignment,
        trainee: { code: row.trainee, name: records.trainee(row.trainee)?.name ?? '' },
        work: given.work,
        number: row.number,
        attempt,
        began: new Date(row.began).toISOString(),
        stamps: stamps.map((stamp) => clock.worked(row.began, stamp)),
        words: row.words,
      });
    },
    forget(trainee) {
      for (const [id, { row }] of kept) if (row.trainee === trainee) kept.delete(id);
    },
  };
}
