import { describe, expect, test } from 'vitest';
import { viewOf } from '../../src/attempt/attempt.ts';
import type { PartView } from '../../src/attempt/view.ts';
import { FACES, faceOf } from '../../src/stage/faces.ts';
import { paintFace } from '../../src/stage/paint.ts';
import { SHIPPED_KINDS } from '../parts/kinds.ts';
import { BENCH_NAMES, viewAt, wordsIn } from './benches.ts';
import { SIGNS, statesOf } from './gallery/states.ts';
import { recorder } from './recorder.ts';
import { ALL_STANDS } from './rigs.ts';

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
  const kinds = [...SHIPPED_KINDS].sort();
  expect(Object.keys(FACES).sort()).toEqual(kinds);
  expect(Object.keys(SIGNS).sort()).toEqual(kinds);
  for (const kind of kinds) expect(statesOf(kind).length, kind).toBeGreaterThan(0);
});

test('the gallery knows every sign that the benches show', () => {
  const views = [...BENCH_NAMES.map(viewAt), ...ALL_STANDS.map(({ attempt }) => viewOf(attempt))];
  const unknown = views
    .flatMap(({ parts }) => parts)
    .flatMap(({ kind, signs }) =>
      Object.keys(signs)
        .filter((key) => SIGNS[kind]?.[key] === undefined)
        .map((key) => `${kind}.${key}`),
    );
  expect([...new Set(unknown)]).toEqual([]);
});

describe.each(SHIPPED_KINDS)('the face of %s', (kind) => {
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

test('a kind without a face is a box with its name, its signs in words, its controls and all its terminals', () => {
  const bare = (count: number, more: Partial<PartView> = {}): PartView => ({
    ...(statesOf('splice')[0]?.part as PartView),
    kind: 'unheardOf',
    terminals: Array.from({ length: count }, (_, index) => ({
      point: `part.${String(index)}`,
      id: String(index),
      label: `T${String(index)}`,
      reachable: true,
      wires: [],
    })),
    ...more,
  });
  const face = faceOf('unheardOf');
  for (const count of [0, 1, 2, 6, 7, 12, 19]) {
    const { terminals, width, height } = face.shape(bare(count));
    const spots = Object.values(terminals);
    expect(spots.length).toBe(count);
    for (const [index, a] of spots.entries()) {
      expect(a.x > 0 && a.x < width && a.y > 0 && a.y < height).toBe(true);
      for (const b of spots.slice(index + 1)) expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeGreaterThanOrEqual(44);
    }
  }
  const lever = { id: 'lever', positions: ['on', 'off'], value: 'on' };
  const part = bare(3, { signs: { flame: 1, set: 68 }, controls: [lever] });
  const { pen, written } = recorder();
  paintFace(pen, part, words, false);
  const said = written.map(({ text }) => text).join(' ');
  for (const text of ['flame', 'set to 68', 'T0', 'T1', 'T2', 'on', 'part']) expect(said).toContain(text);
  expect(face.handles?.(part).map(({ action }) => action)).toEqual([
    { name: 'operate', part: part.id, control: 'lever', position: 'off' },
  ]);
});
