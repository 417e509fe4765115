/** `npm start`: builds the app, serves it on this machine and says where. */
import { build, preview } from 'vite';

await build({ logLevel: 'warn' });
// 4173 or the next free port.
const server = await preview({ preview: { port: 4173, strictPort: false }, logLevel: 'warn' });
const address = server.resolvedUrls?.local[0];
if (address === undefined) throw new Error('the server has no address');
console.log(`\n  Bellwire is at ${address}\n  Ctrl+C ends it.\n`);
