/** The lab host as a process of its own, and trainees that speak to it over real sockets. */
import { type ChildProcess, spawn } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { WebSocket } from 'ws';
import type { Action } from '../../src/attempt/actions.ts';
import type { FromBrowser, FromHost } from '../../src/classroom/protocol.ts';

export interface HostProcess {
  readonly child: ChildProcess;
  readonly port: number;
  readonly printed: () => string;
  /** SIGKILL: nothing is said good-bye to. */
  kill(): Promise<void>;
}

/** Starts the command that `npm run lab` starts, on a port that is free, with a page in place of the built app. */
export async function startHost(folder: string, ...more: readonly string[]): Promise<HostProcess> {
  const app = join(folder, 'app');
  mkdirSync(app, { recursive: true });
  writeFileSync(join(app, 'index.html'), '<!doctype html><title>Lab</title>');
  const args = [
    '--import',
    'tsx',
    resolve('src/cli/lab.ts'),
    '--port',
    '0',
    '--address',
    '127.0.0.1',
    '--data',
    folder,
    '--app',
    app,
  ];
  const child = spawn(process.execPath, [...args, ...more], { stdio: ['ignore', 'pipe', 'pipe'] });
  let printed = '';
  const ended = new Promise<void>((done) => {
    child.once('exit', () => done());
  });
  const port = await new Promise<number>((done, failed) => {
    const listen = (chunk: Buffer) => {
      printed += chunk.toString();
      const [, found] = /localhost:(\d+)/.exec(printed) ?? [];
      if (found !== undefined) done(Number(found));
    };
    child.stdout.on('data', listen);
    child.stderr.on('data', listen);
    child.once('exit', () => failed(new Error(`the host ended: ${printed}`)));
  });
  return {
    child,
    port,
    printed: () => printed,
    async kill() {
      child.kill('SIGKILL');
      await ended;
    },
  };
}

/** A trainee's connection; every question is answered, or fails when the connection is gone. */
export interface Client {
  ask(message: FromBrowser): Promise<FromHost>;
  close(): void;
}

export async function connect(port: number, token: string): Promise<Client> {
  const socket = new WebSocket(`ws://127.0.0.1:${port}/api/live`, { origin: `http://127.0.0.1:${port}` });
  let waiting: { readonly done: (message: FromHost) => void; readonly failed: (error: Error) => void } | undefined;
  socket.on('message', (data) => {
    const message = JSON.parse(String(data)) as FromHost;
    // The report of what is over comes of itself.
    if (message.kind === 'ended') return;
    const now = waiting;
    waiting = undefined;
    now?.done(message);
  });
  const gone = () => waiting?.failed(new Error('gone'));
  socket.on('close', gone);
  socket.on('error', gone);
  await new Promise<void>((done, failed) => {
    socket.once('open', () => done());
    socket.once('error', failed);
  });
  const client: Client = {
    ask: (message) =>
      new Promise((done, failed) => {
        if (socket.readyState !== socket.OPEN) {
          failed(new Error('gone'));
          return;
        }
        waiting = { done, failed };
        socket.send(JSON.stringify(message));
      }),
    close: () => socket.close(),
  };
  await client.ask({ kind: 'hello', token });
  return client;
}

/** One of the quiet things that can be done next. */
export function nextOf(options: readonly Action[], turn: number): Action {
  const quiet = options.filter(({ name }) => ['probe', 'look', 'meter', 'walk', 'cover', 'tug'].includes(name));
  return quiet[turn % Math.max(1, quiet.length)] ?? { name: 'wait', seconds: 10 };
}
