import { describe, expect, test } from 'vitest';
import { viewOf } from '../../src/attempt/attempt.ts';
import type { BenchView } from '../../src/attempt/view.ts';
import { sceneOf } from '../../src/stage/layout.ts';
import { paintStill } from '../../src/stage/paint.ts';
import type { Box } from '../../src/stage/pen.ts';
import { opening, paintedBounds, whole } from '../../src/stage/sight.ts';
import { LETTERS, WIRE } from '../../src/stage/tokens.ts';
import { CORE, flagsOf, MARKS, markOf, tells } from '../../src/stage/wireMarks.ts';
import type { Spot } from '../../src/stage/wires.ts';
import { BENCH_NAMES, viewAt, wordsIn } from './benches.ts';
import { recorder, type Written } from './recorder.ts';
import { ALL_STANDS } from './rigs.ts';

const LAPTOP = { width: 798, height: 648 };
const PHONE = { width: 390, height: 555 };

/** Benches of the first rig by hand, every place of the others as it comes. */
const VIEWS: ReadonlyMap<string, () => BenchView> = new Map([
  ...BENCH_NAMES.map((name) => [name, () => viewAt(name)] as const),
  ...ALL_STANDS.filter(({ rig }) => rig.id !== 'furnaceAndCondenser').map(
    ({ name, attempt }) => [name, () => viewOf(attempt)] as const,
  ),
]);
const NAMES = [...VIEWS.keys()];

/** A bench's scene with its flags, laid once: neither knows of languages or screens. */
const laid = new Map(
  NAMES.map((name) => {
    const view = VIEWS.get(name)?.() ?? viewAt(name);
    const scene = sceneOf(view);
    return [name, { view, scene, flags: flagsOf(scene.runs, scene.parts, scene.look.wireWidth) }] as const;
  }),
);
const laidOut = (name: string) => laid.get(name)!;

function drawn(name: string, language: string, screen: typeof LAPTOP) {
  const { view, scene, flags } = laidOut(name);
  const { pen, written } = recorder({ writtenAlone: true });
  paintStill(pen, scene, view, wordsIn(language), paintedBounds(screen.width, screen.height));
  const flagged = (each: Written) => flags.some((flag) => flag.text === each.text && inside(flag.box, middleOf(each.box)));
  return { scene, flags, words: written.filter((each) => !flagged(each)) };
}

const middleOf = (box: Box): Spot => ({ x: box.x + box.width / 2, y: box.y + box.height / 2 });
const inside = (box: Box, { x, y }: Spot): boolean => x > box.x && x < box.x + box.width && y > box.y && y < box.y + box.height;
const core = ({ x, y, width, height }: Box): Box => ({
  x: x + CORE,
  y: y + CORE,
  width: width - 2 * CORE,
  height: height - 2 * CORE,
});
const overlap = (a: Box, b: Box): boolean =>
  a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;

describe.each(NAMES)('%s', (name) => {
  test.each(['en', 'es', 'fr'])('no wire runs through words, and no words lie on others (%s)', (language) => {
    for (const screen of [LAPTOP, PHONE]) {
      const { scene, words, flags } = drawn(name, language, screen);
      const crossed = scene.runs.flatMap((run) =>
        words.filter(({ box }) => run.path.some((spot) => inside(box, spot))).map(({ text }) => `${run.wire} through ${text}`),
      );
      expect(crossed.join('; ')).toBe('');
      const all = [...words, ...flags];
      const clashes = all.flatMap((a, index) =>
        all
          .slice(index + 1)
          .filter((b) => overlap(a.box, b.box))
          .map((b) => `${a.text} on ${b.text}`),
      );
      expect(clashes.join('; ')).toBe('');
    }
  });

  test('wires in sight carry their letters, six of seven at least, and no wire of another colour runs through their middle', () => {
    const { scene, flags } = drawn(name, 'en', LAPTOP);
    const untold = scene.runs.flatMap((run) => (flags.some((flag) => tells(flag, run)) ? [] : run.wire));
    // In the tightest corners a wire has no room for letters: its pattern, and its name under the pointer, must do.
    expect(untold.length / Math.max(1, scene.runs.length), untold.join()).toBeLessThanOrEqual(0.15);
    for (const flag of flags)
      for (const run of scene.runs)
        if (markOf(run.colour).code !== flag.text)
          expect(
            run.path.some((spot) => inside(core(flag.box), spot)),
            `${run.wire} through ${flag.wire}`,
          ).toBe(false);
  });
});

test('every colour of insulation has letters and, black and white apart, a pattern of its own', () => {
  expect(Object.keys(MARKS).sort()).toEqual(Object.keys(WIRE).sort());
  const codes = Object.values(MARKS).map((mark) => mark.code);
  expect(new Set(codes).size).toBe(codes.length);
  const patterns = Object.values(MARKS).flatMap(({ dash, part }) => (dash === undefined ? [] : [JSON.stringify([dash, part])]));
  expect(patterns.length).toBe(codes.length - 2);
  expect(new Set(patterns).size).toBe(patterns.length);
});

test('no lettering is smaller than the least size, whole scene on a laptop', () => {
  expect(whole(LAPTOP.width, LAPTOP.height).unit * LETTERS.small).toBeGreaterThan(12);
  expect(opening(PHONE.width, PHONE.height).unit * LETTERS.small).toBeGreaterThan(11);
  for (const name of NAMES) {
    const { view, scene } = laidOut(name);
    const { pen, strokes } = recorder();
    paintStill(pen, scene, view, wordsIn('en'), paintedBounds(LAPTOP.width, LAPTOP.height));
    const sizes = strokes.flatMap((stroke) => /^font=.*?([\d.]+)px/.exec(stroke)?.[1] ?? []).map(Number);
    expect(Math.min(...sizes), name).toBeGreaterThanOrEqual(LETTERS.small);
  }
});
