/** The list of tickets is read without the library's care: it must show the same. */
import { expect, test } from 'vitest';
import { board, isListed } from '../../src/app/board.ts';
import { tickets } from '../../src/app/library.ts';

test('the list shows the library’s tickets in the library’s order', () => {
  expect(board.map(({ id, rig, mode, order }) => ({ id, rig, mode, order }))).toEqual(
    tickets.map(({ id, rig, mode, order }) => ({ id, rig, mode, order })),
  );
  expect(board.length).toBeGreaterThan(0);
  expect(isListed('noSuchTicket')).toBe(false);
});
