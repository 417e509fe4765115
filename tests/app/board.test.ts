/** The list of tickets is read without the library's care: it must show the same. */
import { expect, test } from 'vitest';
import { board, byGrade, isListed, measureOf } from '../../src/app/board.ts';
import { tickets } from '../../src/app/library.ts';
import measures from '../../src/app/measures.json';

test('the list shows the library’s tickets in the library’s order', () => {
  expect(board.map(({ id, rig, mode, order }) => ({ id, rig, mode, order }))).toEqual(
    tickets.map(({ id, rig, mode, order }) => ({ id, rig, mode, order })),
  );
  expect(board.length).toBeGreaterThan(0);
  expect(isListed('noSuchTicket')).toBe(false);
});

test('by grade the plainest come first, each as it is listed, and none is lost', () => {
  const sorted = byGrade(board);
  const grades = sorted.map(({ id }) => measureOf(id)?.grade);
  expect([...new Set(grades)]).toEqual(['apprentice', 'journeyman', 'master']);
  expect(grades.lastIndexOf('apprentice')).toBeLessThan(grades.indexOf('journeyman'));
  expect(grades.lastIndexOf('journeyman')).toBeLessThan(grades.indexOf('master'));
  expect(sorted.filter(({ id }) => measureOf(id)?.grade === 'master')).toEqual(
    board.filter(({ id }) => measureOf(id)?.grade === 'master'),
  );
  expect(sorted).toHaveLength(board.length);
  expect(byGrade([{ id: 'noSuchTicket' }, ...board]).at(-1)).toEqual({ id: 'noSuchTicket' });
});

test('the table of short ways has every ticket, and none that is not there: npm run measures new', () => {
  expect(Object.keys(measures).sort()).toEqual(tickets.map(({ id }) => id).sort());
});
