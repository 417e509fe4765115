/** A launch by cmi5 against a learning record store that keeps what it is told, and validates it. */
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import validate from 'xapi-validation';
import { beginCmi5, cmi5Asked } from '../../../src/app/lms/cmi5.ts';
import { VERBS } from '../../../src/classroom/lms/statements.ts';

interface Asked {
  readonly method: string;
  readonly path: string;
  readonly query: URLSearchParams;
  readonly headers: Readonly<Record<string, unknown>>;
  readonly body: string;
}

let server: Server;
let base = '';
const asked: Asked[] = [];
let kept = '';

beforeAll(async () => {
  server = createServer((request, response) => {
    const { pathname, searchParams } = new URL(request.url ?? '', 'http://x');
    let body = '';
    request.on('data', (chunk) => {
      body += chunk;
    });
    request.on('end', () => {
      asked.push({ method: request.method ?? '', path: pathname, query: searchParams, headers: request.headers, body });
      const say = (status: number, text = '') => response.writeHead(status).end(text);
      if (pathname === '/token') return say(200, '{"auth-token":"c2VjcmV0"}');
      if (pathname.endsWith('/statements')) return say(200, '[]');
      if (pathname.endsWith('/agents/profile')) return say(404);
      if (searchParams.get('stateId') === 'LMS.LaunchData')
        return say(
          200,
          JSON.stringify({
            launchMode: 'Normal',
            masteryScore: 0.8,
            contextTemplate: { extensions: { 'tag:s,2026:session': 's1' } },
          }),
        );
      if (request.method === 'PUT') {
        kept = body;
        return say(204);
      }
      return kept === '' ? say(404) : say(200, kept);
    });
  });
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  base = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
});
afterAll(() => server.close());

const registration = '7b5a9c1e-4c1d-4a55-9f7e-0a4b9d5c2f10';
const launch = () => {
  const query = new URLSearchParams({
    endpoint: `${base}/xapi/`,
    fetch: `${base}/token`,
    actor: JSON.stringify({ objectType: 'Agent', name: 'Ana', account: { homePage: 'https://school.example', name: 'ana-7' } }),
    registration,
    activityId: 'tag:bellwire.example,2026:assignment/week-9/work',
  });
  let number = 0;
  const uuid = () => `00000000-0000-4000-8000-${String(++number).padStart(12, '0')}`;
  return beginCmi5(cmi5Asked(`?${query}`)!, () => '2026-03-02T13:00:00.000Z', uuid);
};
const statements = () =>
  asked.filter(({ path }) => path.endsWith('/statements')).flatMap(({ body }) => JSON.parse(body) as { verb: { id: string } }[]);

describe('a launch by cmi5', () => {
  // Source: cmi5 Specification Profile for xAPI, Quartz, sections 8, 10 and 11 (from memory).
  it('fetches its token once, reads launch data and preferences, and says that it has begun before anything else', async () => {
    const course = await launch();
    expect(course.learner).toEqual({ id: 'ana-7', name: 'Ana' });
    expect(course.resume).toBe('');
    expect(asked.map(({ path }) => path)).toEqual([
      '/token',
      '/xapi/activities/state',
      '/xapi/agents/profile',
      '/xapi/activities/state',
      '/xapi/statements',
    ]);
    expect(asked[0]?.method).toBe('POST');
    for (const { headers } of asked.slice(1)) {
      expect(headers.authorization).toBe('Basic c2VjcmV0');
      expect(headers['x-experience-api-version']).toBe('1.0.3');
    }
    expect(statements().map(({ verb }) => verb.id)).toEqual([VERBS.initialized]);
  });

  it('keeps and gives back, completes and passes once, and says goodbye once; every statement is valid', async () => {
    const course = await launch();
    expect(await course.keep('half way')).toBe(true);
    expect((await launch()).resume).toBe('half way');
    asked.length = 0;
    const reached = { total: 84, seconds: 700, skills: ['hopscotch'] as const };
    await course.report(reached, false);
    await course.report(reached, true);
    await course.report(reached, true);
    await course.leave(720, true);
    await course.leave(720, true);
    expect(statements().map(({ verb }) => verb.id)).toEqual([VERBS.demonstrated, VERBS.completed, VERBS.passed, VERBS.terminated]);
    for (const statement of statements()) expect(validate(statement)).toEqual([]);
  });
});
