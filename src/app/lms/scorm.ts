/**
 * A learning system that speaks SCORM, as the page finds it in a window around it. SCORM 1.2: ADL Run-Time Environment 1.2 (2001);
 * SCORM 2004: IEEE 1484.11.2 and ADL SCORM 2004 4th Edition RTE (2009). Names and limits from memory of these.
 */
import { type DrillScore, drillName, scaledOf } from '../../classroom/lms/drillScores.ts';
import { KEPT_CHARACTERS } from '../../classroom/lms/room.ts';
import { durationOf, type Reached } from '../../classroom/lms/statements.ts';
import type { Course } from './course.ts';

/** Either edition's calls, by the names that both share once the prefix is gone. */
interface Calls {
  initialize(): boolean;
  get(element: string): string;
  set(element: string, value: string): boolean;
  commit(): boolean;
  terminate(): boolean;
}

type Api = Readonly<Record<string, unknown>>;
export interface WindowLike {
  readonly parent?: WindowLike | null;
  readonly opener?: WindowLike | null;
  readonly API?: unknown;
  readonly API_1484_11?: unknown;
}

/** As far as a page looks outwards; the standard names 7 for the one edition, 500 for the other. */
const MOST_PARENTS = 50;

function apiIn(start: WindowLike | null | undefined, name: 'API' | 'API_1484_11'): Api | undefined {
  let window = start;
  for (let hops = 0; window && hops < MOST_PARENTS; hops++) {
    try {
      const api = window[name];
      if (typeof api === 'object' && api !== null) return api as Api;
      if (window.parent === window) return undefined;
      window = window.parent;
    } catch {
      // Another origin's window may not be looked into.
      return undefined;
    }
  }
  return undefined;
}

function callsOf(api: Api, prefix: '' | 'LMS'): Calls {
  const name = (plain: string) => (plain === 'Terminate' && prefix === 'LMS' ? 'LMSFinish' : `${prefix}${plain}`);
  const call = (plain: string, ...values: string[]): unknown => {
    const method = api[name(plain)];
    return typeof method === 'function' ? (method as (...args: string[]) => unknown).apply(api, values) : undefined;
  };
  const done = (answer: unknown) => answer === true || answer === 'true';
  return {
    initialize: () => done(call('Initialize', '')),
    get: (element) => String(call('GetValue', element) ?? ''),
    set: (element, value) => done(call('SetValue', element, value)),
    commit: () => done(call('Commit', '')),
    terminate: () => done(call('Terminate', '')),
  };
}

/** The learning system around a window; undefined where there is none, or it will not begin. */
export function findScorm(window: WindowLike): Course | undefined {
  const places = [window, window.opener];
  for (const place of places) {
    const newer = apiIn(place, 'API_1484_11');
    if (newer) return begin('scorm2004', callsOf(newer, ''));
  }
  for (const place of places) {
    const older = apiIn(place, 'API');
    if (older) return begin('scorm12', callsOf(older, 'LMS'));
  }
  return undefined;
}

const ELEMENTS = {
  scorm12: {
    learnerId: 'cmi.core.student_id',
    learnerName: 'cmi.core.student_name',
    raw: 'cmi.core.score.raw',
    min: 'cmi.core.score.min',
    max: 'cmi.core.score.max',
    exit: 'cmi.core.exit',
    time: 'cmi.core.session_time',
  },
  scorm2004: {
    learnerId: 'cmi.learner_id',
    learnerName: 'cmi.learner_name',
    raw: 'cmi.score.raw',
    min: 'cmi.score.min',
    max: 'cmi.score.max',
    exit: 'cmi.exit',
    time: 'cmi.session_time',
  },
} as const;

function begin(kind: 'scorm12' | 'scorm2004', calls: Calls): Course | undefined {
  if (!calls.initialize()) return undefined;
  const elements = ELEMENTS[kind];
  let over = false;
  if (kind === 'scorm12') {
    if (['', 'not attempted'].includes(calls.get('cmi.core.lesson_status'))) calls.set('cmi.core.lesson_status', 'incomplete');
  } else if (['', 'unknown', 'not attempted'].includes(calls.get('cmi.completion_status'))) {
    calls.set('cmi.completion_status', 'incomplete');
  }
  return {
    kind,
    learner: { id: calls.get(elements.learnerId), name: calls.get(elements.learnerName) },
    limit: KEPT_CHARACTERS[kind],
    resume: calls.get('cmi.suspend_data'),
    keep(text) {
      if (over || text.length > KEPT_CHARACTERS[kind]) return false;
      return calls.set('cmi.suspend_data', text) && calls.commit();
    },
    report(reached, complete) {
      if (over) return;
      score(kind, calls, reached);
      if (complete) complete12or2004(kind, calls, reached);
      objectives(calls, kind, reached);
      calls.commit();
    },
    leave(seconds, complete) {
      if (over) return;
      over = true;
      calls.set(elements.time, kind === 'scorm12' ? clockOf(seconds) : durationOf(seconds));
      calls.set(elements.exit, complete ? (kind === 'scorm12' ? '' : 'normal') : 'suspend');
      calls.commit();
      calls.terminate();
    },
  };
}

function score(kind: 'scorm12' | 'scorm2004', calls: Calls, { total }: Reached): void {
  const elements = ELEMENTS[kind];
  calls.set(elements.min, '0');
  calls.set(elements.max, '100');
  calls.set(elements.raw, String(total));
  if (kind === 'scorm2004') calls.set('cmi.score.scaled', String(total / 100));
}

/** Completed; and passed or failed where the learning system has a mark for that. */
function complete12or2004(kind: 'scorm12' | 'scorm2004', calls: Calls, { total }: Reached): void {
  if (kind === 'scorm12') {
    const mastery = calls.get('cmi.student_data.mastery_score');
    const status = mastery === '' ? 'completed' : total >= Number(mastery) ? 'passed' : 'failed';
    calls.set('cmi.core.lesson_status', status);
    return;
  }
  calls.set('cmi.completion_status', 'completed');
  calls.set('cmi.progress_measure', '1');
  const mark = calls.get('cmi.scaled_passing_score');
  if (mark !== '') calls.set('cmi.success_status', total / 100 >= Number(mark) ? 'passed' : 'failed');
}

/** Each skill that was shown is an objective of that name, passed; each that papers asked for is one with a score, and completed. */
function objectives(calls: Calls, kind: 'scorm12' | 'scorm2004', { skills, drills }: Reached): void {
  const count = Number(calls.get('cmi.objectives._count')) || 0;
  const known = Array.from({ length: count }, (_, index) => calls.get(`cmi.objectives.${index}.id`));
  const nameAt = (id: string): string => {
    const at = known.includes(id) ? known.indexOf(id) : known.push(id) - 1;
    // Its name comes before all else that is said of it.
    if (at >= count) calls.set(`cmi.objectives.${at}.id`, id);
    return `cmi.objectives.${at}`;
  };
  for (const skill of skills) {
    if (known.includes(skill)) continue;
    const objective = nameAt(skill);
    if (kind === 'scorm12') calls.set(`${objective}.status`, 'passed');
    else {
      calls.set(`${objective}.success_status`, 'passed');
      calls.set(`${objective}.completion_status`, 'completed');
    }
  }
  for (const drill of drills) drillObjective(calls, kind, nameAt(drillName(drill.skill)), drill);
}

/** Right of asked. SCORM 1.2 has scores of 100 alone (RTE 1.2, cmi.objectives.n.score.raw, from memory). No mark says of one skill that it is passed. */
function drillObjective(calls: Calls, kind: 'scorm12' | 'scorm2004', objective: string, drill: DrillScore): void {
  const { right, asked } = drill;
  calls.set(`${objective}.score.min`, '0');
  if (kind === 'scorm12') {
    calls.set(`${objective}.score.max`, '100');
    calls.set(`${objective}.score.raw`, String(Math.round((right / asked) * 1000) / 10));
    calls.set(`${objective}.status`, 'completed');
    return;
  }
  calls.set(`${objective}.score.max`, String(asked));
  calls.set(`${objective}.score.raw`, String(right));
  calls.set(`${objective}.score.scaled`, String(scaledOf(drill)));
  calls.set(`${objective}.completion_status`, 'completed');
}

/** CMITimespan of SCORM 1.2: hours of at least two digits, minutes, seconds and hundredths. */
export function clockOf(seconds: number): string {
  const hundredths = Math.round(Math.max(0, seconds) * 100);
  const two = (value: number) => String(value).padStart(2, '0');
  const minutes = Math.floor(hundredths / 6000);
  return `${two(Math.min(9999, Math.floor(minutes / 60)))}:${two(minutes % 60)}:${two(Math.floor((hundredths % 6000) / 100))}.${two(hundredths % 100)}`;
}
