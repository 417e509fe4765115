import { expect, test } from 'vitest';
import { countY, inLines, type Plot, stairsPath, stepX, ticksOf } from '../../src/app/debrief/chart-scale.ts';

const plot: Plot = { left: 40, top: 10, width: 200, height: 120 };

test('words stand in lines where they fit, and not at all where they do not', () => {
  expect(inLines('walked to furnace closet', 16, 2)).toEqual(['walked to', 'furnace closet']);
  expect(inLines('walked to furnace closet', 9, 2)).toBeUndefined();
  expect(inLines('walked to furnace closet', 6, 9)).toBeUndefined();
});

test('on the log scale one suspect is at the bottom, all of them at the top, and each halving falls by the same height', () => {
  expect(countY(plot, 64, 1)).toBeCloseTo(130);
  expect(countY(plot, 64, 64)).toBeCloseTo(10);
  const heights = [64, 32, 16, 8, 4, 2, 1].map((count) => countY(plot, 64, count));
  for (const [index, height] of heights.slice(1).entries()) expect(height - (heights[index] ?? 0)).toBeCloseTo(20);
});

test('no suspects, or a single one at the start, still lie within the plot', () => {
  expect(countY(plot, 64, 0)).toBeCloseTo(130);
  expect(countY(plot, 1, 1)).toBeCloseTo(130);
});

test('columns share the width evenly, and an attempt without steps has none', () => {
  expect([0, 1, 2, 3, 4].map((index) => stepX(plot, 4, index))).toEqual([40, 90, 140, 190, 240]);
  expect(stepX(plot, 0, 0)).toBe(40);
});

test('the lines are halvings of the start down to one, each count once', () => {
  expect(ticksOf(48)).toEqual([48, 24, 12, 6, 3, 1]);
  expect(ticksOf(2)).toEqual([2, 1]);
  expect(ticksOf(1)).toEqual([1]);
});

test('the stairs fall at the end of the step that ruled something out', () => {
  expect(stairsPath(plot, 4, [4, 1])).toBe('M40 10 H140 V10 H240 V130');
});
