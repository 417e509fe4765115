/**
 * Statements of the Experience API 1.0.3 as cmi5 (Quartz 1st Edition, section 9) asks for them. Verb and category IRIs are those of the
 * two specifications, from memory. Identifiers and times come in from above.
 */
import type { Skill } from '../../scenario/skills.ts';
import { type DrillScore, drillName, scaledOf } from './drillScores.ts';

export const VERBS = {
  initialized: 'http://adlnet.gov/expapi/verbs/initialized',
  completed: 'http://adlnet.gov/expapi/verbs/completed',
  passed: 'http://adlnet.gov/expapi/verbs/passed',
  failed: 'http://adlnet.gov/expapi/verbs/failed',
  terminated: 'http://adlnet.gov/expapi/verbs/terminated',
  /** Not of cmi5's own: what an attempt showed of one skill. */
  demonstrated: 'http://adlnet.gov/expapi/verbs/experienced',
  /** Not of cmi5's own: what papers came to in one skill; of ADL's vocabulary (from memory). */
  scored: 'http://adlnet.gov/expapi/verbs/scored',
} as const;
export type Verb = keyof typeof VERBS;

const CMI5_CATEGORY = 'https://w3id.org/xapi/cmi5/context/categories/cmi5';
const MOVE_ON_CATEGORY = 'https://w3id.org/xapi/cmi5/context/categories/moveon';
const MASTERY_EXTENSION = 'https://w3id.org/xapi/cmi5/context/extensions/masteryscore';
const SKILLS_EXTENSION = 'tag:bellwire.example,2026:skills';
const DRILLS_EXTENSION = 'tag:bellwire.example,2026:drills';

/** What the learning system said at the launch. */
export interface Launch {
  readonly actor: unknown;
  readonly registration: string;
  readonly activityId: string;
  /** To be in every statement's context, as it came. */
  readonly contextTemplate: Readonly<Record<string, unknown>>;
  /** 0…1. */
  readonly masteryScore: number | undefined;
}

/** What has been reached. */
export interface Reached {
  /** 0…100, over all items. */
  readonly total: number;
  readonly seconds: number;
  readonly skills: readonly Skill[];
  /** Of the papers that are over, the best attempt at each. */
  readonly drills: readonly DrillScore[];
}

export interface Stamp {
  /** A UUID. */
  readonly id: string;
  /** ISO 8601. */
  readonly timestamp: string;
}

type Json = Readonly<Record<string, unknown>>;

const objectOf = (value: unknown): Json =>
  typeof value === 'object' && value !== null && !Array.isArray(value) ? (value as Json) : {};
const listOf = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value : value === undefined ? [] : [value]);

/** A duration as ISO 8601 has it, to a hundredth of a second. */
export function durationOf(seconds: number): string {
  const hundredths = Math.round(Math.max(0, seconds) * 100);
  const rest = (hundredths % 6000) / 100;
  const minutes = Math.floor(hundredths / 6000);
  return `PT${Math.floor(minutes / 60)}H${minutes % 60}M${rest}S`;
}

function statement(verb: Verb, launch: Launch, stamp: Stamp, result?: Json, extensions?: Json): Json {
  const template = launch.contextTemplate;
  const activities = objectOf(template.contextActivities);
  const moves = verb === 'completed' || verb === 'passed' || verb === 'failed';
  const defined = verb !== 'demonstrated' && verb !== 'scored';
  const category = [
    ...listOf(activities.category),
    ...(defined ? [{ id: CMI5_CATEGORY }] : []),
    ...(moves ? [{ id: MOVE_ON_CATEGORY }] : []),
  ];
  return {
    ...stamp,
    actor: launch.actor,
    verb: { id: VERBS[verb], display: { en: verb } },
    object: { id: launch.activityId, objectType: 'Activity' },
    ...(result ? { result } : {}),
    context: {
      ...template,
      registration: launch.registration,
      contextActivities: { ...activities, ...(category.length > 0 ? { category } : {}) },
      extensions: { ...objectOf(template.extensions), ...extensions },
    },
  };
}

export const initialized = (launch: Launch, stamp: Stamp): Json => statement('initialized', launch, stamp);

export const terminated = (launch: Launch, stamp: Stamp, seconds: number): Json =>
  statement('terminated', launch, stamp, { duration: durationOf(seconds) });

/** All items handed in. cmi5 wants no score here. */
export const completed = (launch: Launch, stamp: Stamp, { seconds, skills, drills }: Reached): Json =>
  statement('completed', launch, stamp, {
    completion: true,
    duration: durationOf(seconds),
    extensions: { [SKILLS_EXTENSION]: skills, ...(drills.length > 0 ? { [DRILLS_EXTENSION]: drills } : {}) },
  });

/** Passed or failed by the launch's mastery score; undefined where it has none. */
export function judged(launch: Launch, stamp: Stamp, { total, seconds }: Reached): Json | undefined {
  if (launch.masteryScore === undefined) return undefined;
  const scaled = total / 100;
  const success = scaled >= launch.masteryScore;
  return statement(
    success ? 'passed' : 'failed',
    launch,
    stamp,
    { success, score: { scaled, raw: total, min: 0, max: 100 }, duration: durationOf(seconds) },
    { [MASTERY_EXTENSION]: launch.masteryScore },
  );
}

/** One skill that the work showed. */
export const demonstrated = (launch: Launch, stamp: Stamp, skill: Skill): Json => ({
  ...statement('demonstrated', launch, stamp),
  object: { id: `${launch.activityId}/skill/${skill}`, objectType: 'Activity' },
});

/** What papers came to in one skill, as a score of its own: right of asked. */
export const scored = (launch: Launch, stamp: Stamp, drill: DrillScore): Json => ({
  ...statement('scored', launch, stamp, { score: { scaled: scaledOf(drill), raw: drill.right, min: 0, max: drill.asked } }),
  object: { id: `${launch.activityId}/${drillName(drill.skill)}`, objectType: 'Activity' },
});
