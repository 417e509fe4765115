/** The host on the wire: signing in and out, guessing, walls, and what an instructor asks of it. */
import { mkdirSync, writeFileSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import type { FastifyInstance } from 'fastify';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { WebSocket } from 'ws';
import { type SignedIn, type SignIn, signedInSchema } from '../../src/classroom/protocol.ts';
import { classSchema, pinsSchema, toInstructorSchema } from '../../src/classroom/room.ts';
import { roomAddresses } from '../../src/host/addresses.ts';
import { backup, openDatabase, restore } from '../../src/host/database.ts';
import type { Host } from '../../src/host/host.ts';
import { createServer } from '../../src/host/server.ts';
import { type Hands, newFolder, openLab, smallAssignment } from './lab.ts';

let place: ReturnType<typeof newFolder>;
let hands: Hands;
let host: Host;
let server: FastifyInstance;

beforeEach(async () => {
  place = newFolder();
  hands = { at: Date.UTC(2026, 2, 2, 13) };
  host = await openLab(join(place.folder, 'data'), hands);
  const app = join(place.folder, 'app');
  mkdirSync(app);
  writeFileSync(join(app, 'index.html'), '<!doctype html><script>1</script><script type="module" src="./a.js"></script>');
  server = await createServer(host, app);
});
afterEach(async () => {
  await server.close();
  await host.close();
  place.remove();
});

const post = (url: string, payload: object, headers: Record<string, string> = {}) =>
  server.inject({ method: 'POST', url, payload, headers, remoteAddress: headers.from ?? '10.0.0.1' });

async function instructor(): Promise<{ authorization: string }> {
  const reply = await post('/api/instructor/sign-in', { password: host.password });
  return { authorization: `Bearer ${reply.json().token}` };
}

/** Ana with her PIN. */
async function enrolled(): Promise<{ readonly boss: { authorization: string }; readonly pin: string }> {
  const boss = await instructor();
  const reply = await post('/api/instructor/roster', { csv: 'code,name,pin\r\nana,"Ana, the first",\r\nben,Ben,1234\r\n' }, boss);
  const { pins, added } = pinsSchema.parse(reply.json());
  expect(added).toBe(2);
  return { boss, pin: pins[0]!.pin };
}

const signIn = (trainee: string, pin: string, from = '10.0.0.1') =>
  post('/api/sign-in', { class: host.classCode, trainee, pin } satisfies SignIn, { from });

describe('signing in', () => {
  it('wants class, name and PIN, and gives a token that ends with sign-out', async () => {
    const { pin } = await enrolled();
    host.room.putUp(smallAssignment());
    const reply = await signIn('ana', pin);
    const { token, name, assignments }: SignedIn = signedInSchema.parse(reply.json());
    expect([name, assignments[0]?.items.map(({ state }) => state)]).toEqual(['Ana, the first', ['new', 'new']]);
    expect((await post('/api/sign-out', {}, { authorization: `Bearer ${token}` })).statusCode).toBe(200);
    const texts: string[] = [];
    const seat = host.seat(
      (text) => texts.push(text),
      () => undefined,
    );
    seat.receive(JSON.stringify({ kind: 'hello', token }));
    expect(texts).toEqual(['{"kind":"signedOut","why":"ended"}']);
    for (const [code, wrong] of [
      ['XXXX', pin],
      [host.classCode, '000000'],
    ] as const) {
      const refused = await post('/api/sign-in', { class: code, trainee: 'ana', pin: wrong });
      expect([refused.statusCode, refused.json()]).toEqual([401, { error: { code: 'lab.wrong', path: 'pin', values: {} } }]);
    }
    expect((await signIn('nobody', '0000')).json().error.code).toBe('lab.wrong');
  });

  it('is slowed for whoever guesses, ever longer, and not for the trainee elsewhere', async () => {
    const { pin } = await enrolled();
    const waits: number[] = [];
    for (let guess = 0; guess < 9; guess++) {
      const reply = await signIn('ana', String(guess).padStart(6, '0'));
      if (reply.statusCode === 401) continue;
      const { code, values } = reply.json().error;
      expect([reply.statusCode, code, reply.headers['retry-after']]).toEqual([429, 'lab.wait', String(values.seconds)]);
      // The right PIN is not looked at either while the wait lasts.
      expect((await signIn('ana', pin)).statusCode).toBe(429);
      waits.push(values.seconds);
      hands.at += values.seconds * 1000;
    }
    expect(waits).toEqual([2, 4, 8]);
    expect((await signIn('ana', pin, '10.0.0.2')).statusCode).toBe(200);
  });

  it('is slowed for guesses side by side, too', async () => {
    await enrolled();
    const replies = await Promise.all(Array.from({ length: 20 }, (_, guess) => signIn('ben', `99${guess + 10}`)));
    expect(replies.filter(({ statusCode }) => statusCode === 401).length).toBeLessThanOrEqual(4);
  });
});

describe('walls', () => {
  it('stand on every page: a strict policy, no frame, no sniffing, no promise of HTTPS', async () => {
    const { headers } = await server.inject('/');
    const policy = String(headers['content-security-policy']);
    expect(policy).toContain("default-src 'none'");
    expect(policy).toMatch(/script-src 'self' 'sha256-[A-Za-z0-9+/=]{44}';/);
    expect(policy).not.toMatch(/unsafe|upgrade-insecure|\*/);
    expect(headers).toMatchObject({
      'x-content-type-options': 'nosniff',
      'x-frame-options': 'SAMEORIGIN',
      'referrer-policy': 'no-referrer',
    });
    expect(headers['strict-transport-security']).toBeUndefined();
    expect((await server.inject('/api/lab')).headers['cache-control']).toBe('no-store');
  });

  it('answer what is wrong by code and path, and never with a stack', async () => {
    const wrong = [
      await post('/api/sign-in', { class: 'AB12', trainee: 't1', pin: 'x' }),
      await post('/api/sign-in', { class: 'AB12', trainee: 't1', pin: '1234', admin: true }),
      await server.inject({ method: 'POST', url: '/api/sign-in', payload: '{', headers: { 'content-type': 'application/json' } }),
      await post('/api/sign-in', { class: 'A'.repeat(50_000) }),
      await server.inject('/api/nothing'),
      await server.inject('/../package.json'),
      await server.inject('/%2e%2e/package.json'),
      await server.inject('/api/instructor/class'),
      await server.inject({ url: '/api/instructor/class', headers: { authorization: `Bearer ${'A'.repeat(43)}` } }),
      await post('/api/sign-in', {}, { origin: 'http://elsewhere.example', host: 'lab' }),
    ];
    expect(wrong.map(({ statusCode }) => statusCode)).toEqual([400, 400, 400, 413, 404, 404, 404, 401, 401, 403]);
    for (const reply of wrong) {
      const { error } = reply.json();
      expect(Object.keys(reply.json())).toEqual(['error']);
      expect(Object.keys(error)).toEqual(['code', 'path', 'values']);
      expect(reply.body).not.toMatch(/node_modules|\.ts|at /);
    }
  });

  it('let no trainee do what the instructor does', async () => {
    const { pin } = await enrolled();
    const { token } = (await signIn('ana', pin)).json();
    for (const [method, url] of [
      ['GET', '/api/instructor/class'],
      ['POST', '/api/instructor/pause'],
      ['GET', '/api/instructor/trainees/ben'],
      ['DELETE', '/api/instructor/trainees/ben'],
      ['GET', '/api/instructor/assignments/week-9/submissions'],
    ] as const) {
      const reply = await server.inject({ method, url, headers: { authorization: `Bearer ${token}` } });
      expect(reply.statusCode, url).toBe(401);
    }
    expect(host.records.trainee('ben')).toBeDefined();
  });

  it('open a socket to pages of this host alone', async () => {
    await server.listen({ port: 0, host: '127.0.0.1' });
    const { port } = server.server.address() as AddressInfo;
    const outcome = (origin: string | undefined) =>
      new Promise<string>((resolve) => {
        const socket = new WebSocket(`ws://127.0.0.1:${port}/api/live`, origin === undefined ? {} : { origin });
        socket.on('open', () => {
          socket.close();
          resolve('open');
        });
        socket.on('error', ({ message }) => resolve(message));
      });
    expect(await outcome(`http://127.0.0.1:${port}`)).toBe('open');
    expect(await outcome('http://elsewhere.example')).toContain('403');
    expect(await outcome(undefined)).toContain('403');
  });
});

describe('an instructor', () => {
  it('hears where the room finds the host, once it listens', async () => {
    const boss = await instructor();
    const told = async () => classSchema.parse((await server.inject({ url: '/api/instructor/class', headers: boss })).json());
    expect((await told()).addresses).toEqual([]);
    await server.listen({ port: 0, host: '0.0.0.0' });
    const bound = server.server.address() as AddressInfo;
    expect((await told()).addresses).toEqual(roomAddresses(bound));
  });

  it('puts up an assignment, sees the room, resets a PIN, and exports and erases a person', async () => {
    const { boss, pin } = await enrolled();
    const put = await post('/api/instructor/assignments', smallAssignment(), boss);
    expect(put.json()).toEqual({ id: 'week-9', cautions: ['shipped'] });
    const seen = classSchema.parse((await server.inject({ url: '/api/instructor/class', headers: boss })).json());
    expect(seen).toMatchObject({
      code: host.classCode,
      trainees: [{ code: 'ana' }, { code: 'ben' }],
      assignments: [{ finished: 0 }],
    });
    const { token } = (await signIn('ana', pin)).json();
    const texts: string[] = [];
    const seat = host.seat(
      (text) => texts.push(text),
      () => undefined,
    );
    seat.receive(JSON.stringify({ kind: 'hello', token }));
    seat.receive(JSON.stringify({ kind: 'open', assignment: 'week-9', item: 0 }));
    seat.receive(JSON.stringify({ kind: 'words', text: 'My own words' }));
    const room = toInstructorSchema.parse(host.hub.room());
    expect(room).toMatchObject({
      seats: [{ trainee: 'ana', connected: true, at: { item: 0, steps: 0, phase: 'working' } }, { connected: false }],
    });

    const fresh = pinsSchema.parse((await post('/api/instructor/trainees/ana/pin', {}, boss)).json()).pins[0]!.pin;
    expect(texts.at(-1)).toBe('{"kind":"signedOut","why":"ended"}');
    expect((await signIn('ana', pin)).statusCode).toBe(401);
    expect((await signIn('ana', fresh)).statusCode).toBe(200);

    const kept = await server.inject({ url: '/api/instructor/trainees/ana', headers: boss });
    expect(kept.json()).toMatchObject({ trainee: { name: 'Ana, the first' }, attempts: [{ words: 'My own words' }] });
    const gone = await server.inject({ method: 'DELETE', url: '/api/instructor/trainees/ana', headers: boss });
    expect(gone.json()).toEqual({ erased: true });
    expect((await server.inject({ url: '/api/instructor/trainees/ana', headers: boss })).json().error.code).toBe('lab.noTrainee');
    expect(host.records.attemptsOf('ana', 'week-9')).toEqual([]);
  });

  it('is told which line of a class list is wrong', async () => {
    const boss = await instructor();
    const told = async (csv: string) => (await post('/api/instructor/roster', { csv }, boss)).json().error;
    expect(await told('code,name\nana,Ana\nana,Ben')).toMatchObject({ code: 'lab.codeTwice', path: 'roster:3 › code' });
    expect(await told('code,name,pin\nana,Ana,12')).toMatchObject({ code: 'lab.pinShape', path: 'roster:2 › pin' });
    expect(await told('name\nAna')).toMatchObject({ code: 'lab.noColumn', values: { column: 'code' } });
    expect(await told('code,name\n../x,Ana')).toMatchObject({ path: 'roster:2 › code' });
  });
});

describe('the lab’s file', () => {
  it('is copied while the lab goes on, and put back only where none is running', async () => {
    await enrolled();
    const data = join(place.folder, 'data');
    const copy = join(place.folder, 'copies', 'monday.sqlite');
    await backup(data, copy);
    host.records.erase('ben');
    await expect(restore(data, copy)).rejects.toThrow('lab.running');
    await host.close();
    await restore(data, copy);
    host = await openLab(data, hands);
    expect(host.records.trainees().map(({ code }) => code)).toEqual(['ana', 'ben']);
    expect(host.password).toBeUndefined();
    writeFileSync(copy, 'no database');
    await expect(restore(data, copy)).rejects.toThrow('lab.noFile');
  });

  it('of a newer Bellwire is refused, and left as it is', async () => {
    const folder = join(place.folder, 'newer');
    const db = await openDatabase(folder);
    db.pragma('user_version = 99');
    db.close();
    await expect(openDatabase(folder)).rejects.toMatchObject({ code: 'lab.newer', values: { version: 99 } });
  });

  it('holds no PIN, no password and no token', async () => {
    const { pin } = await enrolled();
    const { token } = (await signIn('ana', pin)).json();
    const db = await openDatabase(join(place.folder, 'data'));
    const all = ['settings', 'trainees', 'sessions']
      .map((table) => JSON.stringify(db.prepare(`SELECT * FROM ${table}`).all()))
      .join();
    db.close();
    for (const secret of [pin, token, host.password!]) expect(all).not.toContain(secret);
    expect(all).toContain(host.classCode);
  });
});
