/** A learning record store and the launching part of a learning system, as far as cmi5 needs them: it keeps what it is told. */
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';

export interface Asked {
  readonly method: string;
  readonly path: string;
  readonly query: URLSearchParams;
  readonly headers: Readonly<Record<string, unknown>>;
  readonly body: string;
}

export interface RecordStore {
  /** All requests but preflights, in order. */
  readonly asked: Asked[];
  /** What a course is launched with: a registration's own parameters, with a token that is given out once. */
  readonly launch: () => URLSearchParams;
  readonly statements: () => Statement[];
  readonly stop: () => void;
}

export interface Statement {
  readonly verb: { readonly id: string };
  readonly result?: { readonly score?: { readonly raw?: number; readonly max?: number }; readonly success?: boolean };
}

const REGISTRATION = '7b5a9c1e-4c1d-4a55-9f7e-0a4b9d5c2f10';
const TOKEN = 'c2VjcmV0';
/** A course may come from elsewhere than the store: Fetch Standard, CORS protocol. */
const FROM_ELSEWHERE = {
  'access-control-allow-origin': '*',
  'access-control-allow-headers': 'authorization, content-type, x-experience-api-version',
  'access-control-allow-methods': 'GET, POST, PUT',
};

export async function startRecordStore(): Promise<RecordStore> {
  const asked: Asked[] = [];
  const states = new Map<string, string>();
  let launches = 0;
  const given = new Set<string>();
  const server = createServer((request, response) => {
    const { method = '', url = '', headers } = request;
    const { pathname, searchParams } = new URL(url, 'http://x');
    let body = '';
    request.on('data', (chunk) => {
      body += chunk;
    });
    request.on('end', () => {
      const say = (status: number, text = '') => response.writeHead(status, FROM_ELSEWHERE).end(text);
      if (method === 'OPTIONS') return say(204);
      asked.push({ method, path: pathname, query: searchParams, headers, body });
      if (pathname === '/token') {
        const number = searchParams.get('launch') ?? '';
        if (given.has(number)) return say(403);
        given.add(number);
        return say(200, JSON.stringify({ 'auth-token': TOKEN }));
      }
      if (headers.authorization !== `Basic ${TOKEN}` || headers['x-experience-api-version'] !== '1.0.3') return say(401);
      if (pathname.endsWith('/statements')) return say(200, '[]');
      if (pathname.endsWith('/agents/profile')) return say(404);
      const state = searchParams.get('stateId') ?? '';
      if (state === 'LMS.LaunchData')
        return say(
          200,
          JSON.stringify({
            launchMode: 'Normal',
            masteryScore: 0.8,
            contextTemplate: { extensions: { 'tag:s,2026:session': 's1' } },
          }),
        );
      if (method === 'PUT') {
        states.set(state, body);
        return say(204);
      }
      const kept = states.get(state);
      return kept === undefined ? say(404) : say(200, kept);
    });
  });
  await new Promise<void>((done) => {
    server.listen(0, '127.0.0.1', done);
  });
  const base = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
  return {
    asked,
    launch: () =>
      new URLSearchParams({
        endpoint: `${base}/xapi/`,
        fetch: `${base}/token?launch=${++launches}`,
        actor: JSON.stringify({ objectType: 'Agent', name: 'Ana', account: { homePage: 'https://school.example', name: 'ana-7' } }),
        registration: REGISTRATION,
        activityId: 'tag:bellwire.example,2026:assignment/week-9/work',
      }),
    statements: () =>
      asked.filter(({ path }) => path.endsWith('/statements')).flatMap(({ body }) => JSON.parse(body) as Statement[]),
    stop: () => {
      server.close();
      server.closeAllConnections();
    },
  };
}
