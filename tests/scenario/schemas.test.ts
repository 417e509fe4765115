import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { loadAssignment } from '../../src/classroom/assignment.ts';
import { digestOf } from '../../src/classroom/digest.ts';
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

it('an assignment may say so, too, and is the same assignment to whoever grades by it', () => {
  const items = [{ kind: 'shipped', ticket: 'blankWall' }];
  const json = { format: 'bellwire-assignment', version: 1, id: 'a', title: 'A', mode: 'graded', seed: 1, items };
  const said = loadAssignment({ $schema: '../schemas/assignment.json', ...json });
  expect(digestOf(said)).toBe(digestOf(loadAssignment(json)));
});
