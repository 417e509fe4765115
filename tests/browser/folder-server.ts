/** A plain server of one folder that can be stopped, or given other files, while a page is open. */
import { readFileSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join, normalize } from 'node:path';

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.woff2': 'font/woff2',
  '.webmanifest': 'application/manifest+json',
};

export interface FolderServer {
  /** Ends in a slash. */
  readonly address: string;
  /** Serves another folder under the same address from now on. */
  readonly swap: (folder: string) => void;
  readonly stop: () => Promise<void>;
}

/** Serves `folder` under a path of its own, as where an app shares its host with others. */
export async function serveFolder(folder: string): Promise<FolderServer> {
  const BASE = '/some/where/';
  let now = folder;
  const server = createServer((request, response) => {
    const path = decodeURIComponent(new URL(request.url ?? '/', 'http://localhost').pathname);
    const file = path === BASE ? 'index.html' : normalize(path.slice(BASE.length));
    try {
      if (!path.startsWith(BASE) || file.startsWith('..')) throw new Error('elsewhere');
      const content = readFileSync(join(now, file));
      response.writeHead(200, { 'content-type': TYPES[extname(file)] ?? 'application/octet-stream', 'cache-control': 'no-store' });
      response.end(content);
    } catch {
      response.writeHead(404).end();
    }
  });
  await new Promise<void>((resolve) => {
    server.listen(0, '127.0.0.1', resolve);
  });
  return {
    address: `http://127.0.0.1:${(server.address() as AddressInfo).port}${BASE}`,
    swap: (other) => {
      now = other;
    },
    stop: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}
