import { describe, expect, test } from 'vitest';
import type { PartView } from '../../src/attempt/view.ts';
import { CATALOGUE } from '../../src/parts/catalogue.ts';
import { FACES, faceOf } from '../../src/stage/faces.ts';
import { paintFace } from '../../src/stage/paint.ts';
import { BENCH_NAMES, viewAt, wordsIn } from './benches.ts';
import { SIGNS, statesOf } from './gallery/states.ts';
import { recorder } from './recorder.ts';

const speak = wordsIn('en');
/** Parts of the gallery have no names in the rig's words. */
const words = (key: string, values?: Record<string, unknown>): string => (key.startsWith('rig:') ? 'part' : speak(key, values));

/** All that is drawn of a part, still and moving, and how it moves. */
function picture(part: PartView, through: boolean): string {
  const { pen, strokes } = recorder();
  paintFace(pen, part, words, through);
  const moving = (through ? faceOf(part.kind).movingThrough : faceOf(part.kind).moving)?.(part) ?? [];
  return [...strokes, ...moving.map(({ motion }) => JSON.stringify(motion))].join('\n');
}

test('every kind in the catalogue has a face and its states in the gallery', () => {
  const kinds = [...CATALOGUE.keys()].sort();
  expect(Object.keys(FACES).sort()).toEqual(kinds);
  expect(Object.keys(SIGNS).sort()).toEqual(kinds);
  for (const kind of kinds) expect(statesOf(kind).length, kind).toBeGreaterThan(0);
});

test('the gallery knows every sign that the benches show', () => {
  const unknown = BENCH_NAMES.flatMap((name) => viewAt(name).parts).flatMap(({ kind, signs }) =>
    Object.keys(signs)
      .filter((key) => SIGNS[kind]?.[key] === undefined)
      .map((key) => `${kind}.${key}`),
  );
  expect([...new Set(unknown)]).toEqual([]);
});

describe.each([...CATALOGUE.keys()])('the face of %s', (kind) => {
  test('draws no two states alike', () => {
    const seen = new Map<string, string>();
    for (const { name, part } of statesOf(kind)) {
      const drawn = picture(part, false);
      expect(seen.get(drawn), name).toBeUndefined();
      seen.set(drawn, name);
    }
  });
});

test('what can be worked through a closed cover shows its positions there', () => {
  for (const kind of ['breakerSinglePole', 'breakerTwoPole', 'disconnect', 'condenserFan', 'igniter', 'burner', 'furnaceBoard']) {
    const pictures = statesOf(kind).map(({ part }) => picture(part, true));
    expect(new Set(pictures).size, kind).toBe(pictures.length);
  }
});
