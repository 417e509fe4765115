/** A learning system that opened the page by cmi5 (Quartz 1st Edition, sections 8 to 11), over the Experience API 1.0.3. */
import { KEPT_CHARACTERS } from '../../classroom/lms/room.ts';
import { completed, demonstrated, initialized, judged, type Launch, scored, terminated } from '../../classroom/lms/statements.ts';
import type { Course } from './course.ts';

const VERSION = '1.0.3';
const LAUNCH_DATA = 'LMS.LaunchData';
const PREFERENCES = 'cmi5LearnerPreferences';
const RESUME = 'bellwire.resume';

interface Asked {
  readonly endpoint: string;
  readonly fetch: string;
  readonly actor: string;
  readonly registration: string;
  readonly activityId: string;
}

/** The launch's parameters; undefined where the page was not opened by cmi5, or by something that only looks so. */
export function cmi5Asked(search: string): Asked | undefined {
  const query = new URLSearchParams(search);
  const [endpoint, fetch, actor, registration, activityId] = ['endpoint', 'fetch', 'actor', 'registration', 'activityId'].map(
    (name) => query.get(name),
  );
  if (!endpoint || !fetch || !actor || !registration || !activityId) return undefined;
  if (![endpoint, fetch].every((url) => /^https?:\/\//.test(url))) return undefined;
  return { endpoint: endpoint.endsWith('/') ? endpoint : `${endpoint}/`, fetch, actor, registration, activityId };
}

/** @throws Error where the learning system does not answer as it should */
export async function beginCmi5(asked: Asked, now: () => string, uuid: () => string): Promise<Course> {
  const token = (await (await answered(fetch(asked.fetch, { method: 'POST' }))).json()) as { readonly 'auth-token'?: unknown };
  if (typeof token['auth-token'] !== 'string') throw new Error('cmi5: no token');
  const headers = { Authorization: `Basic ${token['auth-token']}`, 'X-Experience-API-Version': VERSION };
  const actor = JSON.parse(asked.actor) as { readonly name?: unknown; readonly account?: { readonly name?: unknown } };
  const stateUrl = (id: string) => {
    const query = new URLSearchParams({
      activityId: asked.activityId,
      agent: asked.actor,
      registration: asked.registration,
      stateId: id,
    });
    return `${asked.endpoint}activities/state?${query}`;
  };
  const data = (await (await answered(fetch(stateUrl(LAUNCH_DATA), { headers }))).json()) as {
    readonly contextTemplate?: Readonly<Record<string, unknown>>;
    readonly masteryScore?: unknown;
    readonly launchMode?: unknown;
  };
  // cmi5 has every course look at the learner's preferences, whether it has a use for them or not.
  await fetch(`${asked.endpoint}agents/profile?${new URLSearchParams({ agent: asked.actor, profileId: PREFERENCES })}`, {
    headers,
  });
  const kept = await fetch(stateUrl(RESUME), { headers });
  const resume = kept.ok ? await kept.text() : '';
  const launch: Launch = {
    actor,
    registration: asked.registration,
    activityId: asked.activityId,
    contextTemplate: data.contextTemplate ?? {},
    masteryScore: typeof data.masteryScore === 'number' ? data.masteryScore : undefined,
  };
  // Only a launch for credit may say that something was completed or passed.
  const normal = data.launchMode === undefined || data.launchMode === 'Normal';
  const stamp = () => ({ id: uuid(), timestamp: now() });
  const send = async (statements: readonly (object | undefined)[]): Promise<void> => {
    await answered(
      fetch(`${asked.endpoint}statements`, {
        method: 'POST',
        headers: { ...headers, 'Content-Type': 'application/json' },
        body: JSON.stringify(statements.filter((each) => each !== undefined)),
        keepalive: true,
      }),
    );
  };
  await send([initialized(launch, stamp())]);
  const told = new Set<string>();
  /** Of a skill of drills: what it was last told to have come to. */
  const drillsTold = new Map<string, string>();
  let over = false;
  return {
    kind: 'cmi5',
    learner: {
      id: String(actor.account?.name ?? actor.name ?? ''),
      name: typeof actor.name === 'string' ? actor.name : '',
    },
    limit: KEPT_CHARACTERS.cmi5,
    resume,
    async keep(text) {
      const answer = await fetch(stateUrl(RESUME), {
        method: 'PUT',
        headers: { ...headers, 'Content-Type': 'text/plain' },
        body: text,
      });
      return answer.ok;
    },
    async report(reached, complete) {
      const fresh = reached.skills.filter((skill) => !told.has(skill));
      for (const skill of fresh) told.add(skill);
      // What another attempt or another paper has changed is told anew.
      const drills = reached.drills.filter(({ skill, right, asked }) => drillsTold.get(skill) !== `${right} ${asked}`);
      for (const { skill, right, asked } of drills) drillsTold.set(skill, `${right} ${asked}`);
      const ending =
        complete && normal && !told.has(':end') ? [completed(launch, stamp(), reached), judged(launch, stamp(), reached)] : [];
      if (ending.length > 0) told.add(':end');
      const statements = [
        ...fresh.map((skill) => demonstrated(launch, stamp(), skill)),
        ...drills.map((drill) => scored(launch, stamp(), drill)),
        ...ending,
      ];
      if (statements.length > 0) await send(statements);
    },
    async leave(seconds) {
      if (over) return;
      over = true;
      await send([terminated(launch, stamp(), seconds)]);
    },
  };
}

async function answered(asking: Promise<Response>): Promise<Response> {
  const answer = await asking;
  if (!answer.ok) throw new Error(`cmi5: ${answer.status}`);
  return answer;
}
