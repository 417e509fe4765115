import type { Box, Pen } from '../../src/stage/pen.ts';

/** A line of writing as it was drawn: its words and the box of its letters, in the pen's own units at the outset. */
export interface Written {
  readonly text: string;
  readonly box: Box;
}

export interface Recorder {
  readonly pen: Pen;
  /** Everything that was drawn, in order: calls with rounded figures, and styles as they were set. */
  readonly strokes: string[];
  readonly written: Written[];
}

const NARROW = /[ijlftrI.,:;'’|()1\-− ]/;
const WIDE = /[mwMWÉ%×@]/;

/** Width of a line of the stage's letters in ems: a fair upper bound, held against Chromium's own figures for Archivo 600. */
function ems(text: string): number {
  return [...text].reduce(
    (sum, letter) => sum + (NARROW.test(letter) ? 0.36 : WIDE.test(letter) ? 0.9 : /[A-Z]/.test(letter) ? 0.7 : 0.58),
    0,
  );
}

const rounded = (value: unknown): unknown => (typeof value === 'number' ? Math.round(value * 10) / 10 : value);

/** A pen that draws nothing and remembers everything, for tests without a canvas; or what is written alone, in half the time. */
export function recorder({ writtenAlone = false } = {}): Recorder {
  const strokes: string[] = [];
  const written: Written[] = [];
  let matrix = { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 };
  const stack: (typeof matrix)[] = [];
  const times = (m: typeof matrix): void => {
    const o = matrix;
    matrix = {
      a: o.a * m.a + o.c * m.b,
      b: o.b * m.a + o.d * m.b,
      c: o.a * m.c + o.c * m.d,
      d: o.b * m.c + o.d * m.d,
      e: o.a * m.e + o.c * m.f + o.e,
      f: o.b * m.e + o.d * m.f + o.f,
    };
  };
  const style: Record<string, unknown> = { font: '10px sans-serif', textAlign: 'start' };
  const size = (): number => Number(/([\d.]+)px/.exec(String(style.font))?.[1] ?? 10);
  const gradient =
    (name: string) =>
    (...figures: number[]) => {
      const stops: string[] = [];
      return {
        addColorStop: (at: number, colour: string) => stops.push(`${String(at)} ${colour}`),
        toString: () => `${name}(${figures.map(rounded).join()}; ${stops.join()})`,
      };
    };
  const methods: Record<string, (...args: never[]) => unknown> = {
    save: () => stack.push(matrix),
    restore: () => {
      matrix = stack.pop() ?? matrix;
    },
    translate: (x: number, y: number) => times({ a: 1, b: 0, c: 0, d: 1, e: x, f: y }),
    scale: (x: number, y: number) => times({ a: x, b: 0, c: 0, d: y, e: 0, f: 0 }),
    rotate: (angle: number) => {
      const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
      times({ a: cos, b: sin, c: -sin, d: cos, e: 0, f: 0 });
    },
    getTransform: () => matrix,
    createLinearGradient: gradient('linear'),
    createRadialGradient: gradient('radial'),
    measureText: (text: string) => ({ width: ems(text) * size() }),
    fillText: (text: string, x: number, y: number, most?: number) => {
      const width = Math.min(most ?? Number.POSITIVE_INFINITY, ems(text) * size());
      const height = size() * 0.72;
      const left = style.textAlign === 'left' ? x : style.textAlign === 'right' ? x - width : x - width / 2;
      const corner = {
        x: matrix.a * left + matrix.c * (y - height / 2) + matrix.e,
        y: matrix.d * (y - height / 2) + matrix.b * left + matrix.f,
      };
      if (text.trim() !== '') written.push({ text, box: { ...corner, width: width * matrix.a, height: height * matrix.d } });
    },
  };
  const pen = new Proxy(style, {
    get: (_, name: string) => {
      if (name in style && !(name in methods)) return style[name];
      return (...args: never[]) => {
        if (!writtenAlone) strokes.push(`${name}(${args.map(rounded).join()}) @${Object.values(matrix).map(rounded).join()}`);
        return methods[name]?.(...args);
      };
    },
    set: (_, name: string, value: unknown) => {
      style[name] = value;
      if (!writtenAlone) strokes.push(`${name}=${String(value)}`);
      return true;
    },
  });
  return { pen: pen as unknown as Pen, strokes, written };
}
