/** The list of tickets is read without the library's care: it must show the same. */
import { expect, test } from 'vitest';
import { board, isListed } from '../../src/app/board.ts';
import { tickets } from '../../src/app/library.ts';
import measures from '../../src/app/measures.json';

test('the list shows the library’s tickets in the library’s order', () => {
  expect(board.map(({ id, rig, mode, order }) => ({ id, rig, mode, order }))).toEqual(
    tickets.map(({ id, rig, mode, order }) => ({ id, rig, mode, order })),
  );
  expect(board.length).toBeGreaterThan(0);
  expect(isListed('noSuchTicket')).toBe(false);
});

test('the table of short ways has every ticket, and none that is not there: npm run measures new', () => {
  expect(Object.keys(measures).sort()).toEqual(tickets.map(({ id }) => id).sort());
});
