/** `npm run build:single`: the app in one file, its size, and how to use it. */
import { readFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import { buildSingleFile } from './single-file.ts';

await buildSingleFile('dist-single');
const page = readFileSync('dist-single/index.html');
const megabytes = (bytes: number) => (bytes / 1e6).toFixed(1);
console.log(`
  dist-single/index.html: ${megabytes(page.length)} MB (${megabytes(gzipSync(page).length)} MB compressed), the whole of Bellwire.
  Copy it to a USB stick or a shared folder, under any name, and open it with a double click: it needs no server and no network.
  Results are kept by the browser that opens it, not in the file.
`);
