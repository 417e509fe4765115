import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { CAUTIONS, habitOf } from '../../src/app/cautions/use-cautions.ts';
import { fileText, HABIT_NAME, parseFile } from '../../src/app/keeping/file.ts';
import { defaultsFor, legalOr, regionOf, SETTINGS } from '../../src/app/setting-values.ts';
import type { DataError } from '../../src/rig/errors.ts';
import { COLOURS, MORE_CONTRAST } from '../../src/stage/tokens.ts';

describe('what holds as long as nobody chose', () => {
  test.each([
    [['en-US', 'en'], 'fahrenheit', 'feet'],
    [['es-PR'], 'fahrenheit', 'feet'],
    [['en-CA', 'en-US'], 'celsius', 'metres'],
    [['fr-CA'], 'celsius', 'metres'],
    [['es-MX'], 'celsius', 'metres'],
    [['en', 'en-GB'], 'celsius', 'metres'],
    [['en'], 'fahrenheit', 'feet'],
    [['fr'], 'celsius', 'metres'],
    [[], 'fahrenheit', 'feet'],
    [['not a tag', 'de-DE'], 'celsius', 'metres'],
  ])('%j: %s, %s', (tags, degrees, lengths) => {
    expect(defaultsFor(tags)).toMatchObject({ degrees, lengths });
  });

  test('is among what can be chosen', () => {
    for (const [name, value] of Object.entries(defaultsFor(['en-US'])))
      expect(SETTINGS[name as keyof typeof SETTINGS] as readonly string[]).toContain(value);
  });

  test('the region is the first that is named, wherever it stands', () => {
    expect(regionOf(['en', 'es-MX', 'en-US'])).toBe('MX');
  });
});

test('a value that is none of the setting’s is as none', () => {
  expect([legalOr('text', '150', '100'), legalOr('text', '1500', '100'), legalOr('text', '', '100')]).toEqual([
    '150',
    '100',
    '100',
  ]);
});

test('settings go out to the file and come back, and one with a value that is none is refused where it stands', () => {
  const habits = { degrees: 'celsius', text: '200', volume: '30', language: 'fr', guided: 'seen' };
  const profile = { name: '', finished: [], running: [], habits };
  expect(parseFile(fileText([profile]))).toEqual([profile]);
  for (const [name, value] of Object.entries({ degrees: 'kelvin', text: '<b>', volume: '1000', motion: '', keys: 'yes' })) {
    let found: Partial<DataError> = {};
    try {
      parseFile(fileText([profile, { ...profile, habits: { ...habits, [name]: value } }]));
    } catch (error) {
      found = error as DataError;
    }
    expect([found.code, found.path]).toEqual(['data.value', `profiles[1].habits.${name}`]);
  }
});

test('that a caution has been read is remembered under a name that goes into the file', () => {
  expect(CAUTIONS.map(habitOf).filter((name) => !HABIT_NAME.test(name))).toEqual([]);
});

test('layout asks its box for room in em, never the window: it must follow the size of text that was chosen', () => {
  const folder = new URL('../../src/app/css/', import.meta.url);
  const asked = readdirSync(folder).flatMap((file) =>
    [...readFileSync(new URL(file, folder), 'utf8').matchAll(/@(media|container)[^{]*/g)].map(
      ([query]) => `${file}: ${query.trim()}`,
    ),
  );
  const ofRoom = asked.filter((query) => /width|height/.test(query));
  expect(ofRoom.length).toBeGreaterThan(10);
  // The window itself decides only how large a very large screen's text is.
  const wrong = ofRoom.filter(
    (query) => !/@container [^{]*em\)|base\.css: @media \(width >= \d+em\)/.test(query) || /rem|px/.test(query),
  );
  expect(wrong).toEqual([]);
});

/** Contrast of two sRGB colours: WCAG 2.2, "relative luminance" and "contrast ratio". */
function contrast(a: string, b: string): number {
  const luminance = (hex: string) => {
    const [r = 0, g = 0, blue = 0] = [1, 3, 5].map((at) => {
      const share = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
      return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
    });
    return 0.2126 * r + 0.7152 * g + 0.0722 * blue;
  };
  const [light = 0, dark = 0] = [luminance(a), luminance(b)].sort((x, y) => y - x);
  return (light + 0.05) / (dark + 0.05);
}

test.each([
  ['ink', 'paper'],
  ['inkSoft', 'paper'],
  ['actionInk', 'paper'],
  ['onDark', 'ground'],
  ['onDarkSoft', 'rail'],
  ['onDarkSoft', 'quiet'],
  ['onAction', 'action'],
] as const)('with more contrast, %s on %s has 7:1 (WCAG 2.2, 1.4.6)', (front, back) => {
  const look: Record<string, string> = { ...COLOURS, ...MORE_CONTRAST };
  expect(contrast(look[front] ?? '', look[back] ?? '')).toBeGreaterThanOrEqual(7);
});

test('with more contrast, lines on the rails have 3:1 (WCAG 2.2, 1.4.11)', () => {
  expect(contrast(MORE_CONTRAST.line, MORE_CONTRAST.rail)).toBeGreaterThanOrEqual(3);
});
