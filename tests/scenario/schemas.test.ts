import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { loadTicket } from '../../src/scenario/ticket.ts';
import { JSON_SCHEMAS } from '../tools/json-schemas.ts';
import { ticket } from './shipped.ts';

it.each(Object.entries(JSON_SCHEMAS))('%s is as the schema that reads such files has it: npm run schemas', (path, text) => {
  expect(readFileSync(path, 'utf8')).toBe(text);
});

it('a file may say where its schema is', () => {
  const json = { $schema: '../schemas/ticket.json', ...JSON.parse(JSON.stringify(ticket('blankWall'))) };
  expect(loadTicket(json).id).toBe('blankWall');
});
