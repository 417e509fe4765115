/** `npm run lab`: the host of a room, and what copies and puts back what it keeps. */
import type { AddressInfo } from 'node:net';
import { resolve } from 'node:path';
import { parseArgs } from 'node:util';
import i18next from 'i18next';
import { roomAddresses } from '../host/addresses.ts';
import { builtApp } from '../host/app-files.ts';
import { backup, restore } from '../host/database.ts';
import { openHost } from '../host/host.ts';
import { createServer } from '../host/server.ts';
import { dataError, isDataError } from '../rig/errors.ts';
import { shippedLibrary, wordsOf } from './files.ts';

const say = (text: string): void => void process.stdout.write(`${text}\n`);

async function speak(language: string): Promise<void> {
  await i18next.init({ lng: language, resources: { [language]: wordsOf(language) }, interpolation: { escapeValue: false } });
}

function explain(error: unknown): string {
  if (isDataError(error)) return i18next.t(`error:${error.code}`, { ...error.values, path: error.path });
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  if (code === 'EADDRINUSE') return i18next.t('host:portTaken');
  if (code.startsWith('ERR_PARSE_ARGS')) return i18next.t('host:usage');
  return error instanceof Error ? error.message : String(error);
}

function portOf(text: string): number {
  const port = Number(text);
  if (!Number.isInteger(port) || port < 0) throw dataError('data.tooSmall', '--port', { limit: 0 });
  if (port > 65_535) throw dataError('data.tooBig', '--port', { limit: 65_535 });
  return port;
}

async function serve(folder: string, port: number, address: string, app: string | undefined): Promise<void> {
  const host = await openHost({ data: folder, library: shippedLibrary() });
  const server = await createServer(host, app ?? (await builtApp(() => say(i18next.t('host:building')))));
  try {
    await server.listen({ port, host: address });
  } catch (error) {
    await host.close();
    throw error;
  }
  const bound = server.server.address() as AddressInfo;
  say(i18next.t('host:open'));
  for (const each of [...roomAddresses(bound), `http://localhost:${bound.port}`]) say(`  ${each}/`);
  say(i18next.t('host:class', { code: host.classCode }));
  if (host.password !== undefined) say(i18next.t('host:password', { password: host.password }));
  say(i18next.t('host:kept', { folder }));
  say(i18next.t('host:plain'));
  say(i18next.t('host:stop', { process: String(process.pid) }));
  const stop = async () => {
    await server.close();
    await host.close();
    process.exit(0);
  };
  process.once('SIGINT', stop);
  process.once('SIGTERM', stop);
}

async function run(args: readonly string[]): Promise<number | undefined> {
  const { values, positionals } = parseArgs({
    args: [...args],
    allowPositionals: true,
    options: {
      port: { type: 'string', default: '8780' },
      data: { type: 'string', default: 'lab-data' },
      /** The address that it listens at; all of this PC's where left out. */
      address: { type: 'string', default: '0.0.0.0' },
      /** A built app, in place of the one that is built here. */
      app: { type: 'string' },
      to: { type: 'string' },
      from: { type: 'string' },
      lang: { type: 'string' },
      help: { type: 'boolean' },
    },
  });
  if (values.lang !== undefined) await speak(values.lang);
  const folder = resolve(values.data);
  const [command] = positionals;
  if (command === 'backup' && values.to !== undefined) {
    await backup(folder, resolve(values.to));
    say(i18next.t('host:backedUp', { file: resolve(values.to) }));
    return 0;
  }
  if (command === 'restore' && values.from !== undefined) {
    await restore(folder, resolve(values.from));
    say(i18next.t('host:restored', { folder }));
    return 0;
  }
  if (command !== undefined || values.help) {
    say(i18next.t('host:usage'));
    return values.help ? 0 : 2;
  }
  await serve(folder, portOf(values.port), values.address, values.app === undefined ? undefined : resolve(values.app));
  return undefined;
}

await speak('en');
try {
  const code = await run(process.argv.slice(2));
  if (code !== undefined) process.exitCode = code;
} catch (error) {
  process.stderr.write(`${explain(error)}\n`);
  process.exit(1);
}
