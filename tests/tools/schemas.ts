/** Writes scenarios/schemas anew: `npm run schemas`. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { JSON_SCHEMAS } from './json-schemas.ts';

mkdirSync('scenarios/schemas', { recursive: true });
for (const [path, text] of Object.entries(JSON_SCHEMAS)) writeFileSync(path, text);
