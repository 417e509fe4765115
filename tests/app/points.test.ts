import { beforeAll, expect, test } from 'vitest';
import { matching, type Reachable, reachablePoints } from '../../src/app/bench/points.ts';
import { optionsOf, viewOf } from '../../src/attempt/attempt.ts';
import { start, take } from '../scenario/shipped.ts';
import { pull, turn } from '../score/solutions.ts';
import { speakEnglish } from './english.ts';

beforeAll(speakEnglish);

const some: readonly Reachable[] = [
  { point: 'board.COOL', letter: 'COOL', on: 'control board' },
  { point: 'board.C', letter: 'C', on: 'control board' },
  { point: 'subbase.R', letter: 'R', on: 'sub-base' },
  { point: 'subbase.C', letter: 'C', on: 'sub-base' },
];

test('a typed letter finds the terminals that carry it first, then those that begin with it', () => {
  expect(matching(some, 'c').map((each) => each.point)).toEqual(['board.C', 'subbase.C', 'board.COOL']);
  expect(matching(some, 'co').map((each) => each.point)).toEqual(['board.COOL', 'board.C']);
  expect(matching(some, 'r').map((each) => each.point)).toEqual(['subbase.R']);
});

test('the letter and then the part single out one of several', () => {
  expect(matching(some, 'c sub').map((each) => each.point)).toEqual(['subbase.C']);
});

test('what no terminal begins with finds nothing, and nothing typed finds all', () => {
  expect(matching(some, 'x')).toEqual([]);
  expect(matching(some, ' ')).toEqual(some);
});

test('with the thermostat seated no terminal is offered; pulled, the sub-base is; turned over, its own pins are too', () => {
  const attempt = start('fanButNoCooling');
  const offered = () => reachablePoints(viewOf(attempt), optionsOf(attempt)).map((each) => each.point);
  expect(offered()).toEqual([]);
  take(attempt, pull('thermostat'));
  expect(offered()).toEqual(['subbase.R', 'subbase.W', 'subbase.Y', 'subbase.G', 'subbase.C']);
  take(attempt, turn('thermostat'));
  expect(offered()).toContain('thermostat.Y');
});

test('a point that a lead is on is still offered for the other lead and for moving back', () => {
  const attempt = start('fanButNoCooling');
  take(
    attempt,
    pull('thermostat'),
    { name: 'probe', lead: 'red', at: 'subbase.R' },
    { name: 'probe', lead: 'black', at: 'subbase.R' },
  );
  expect(reachablePoints(viewOf(attempt), optionsOf(attempt)).map((each) => each.point)).toContain('subbase.R');
});
