import 'virtual:fonts.css';
import { CATALOGUE } from '../../../src/parts/catalogue.ts';
import { faceOf } from '../../../src/stage/faces.ts';
import { paintFace } from '../../../src/stage/paint.ts';
import { MATERIAL } from '../../../src/stage/tokens.ts';
import { statesOf } from './states.ts';

/** Every face in every state that the view tells apart, as it stands on the bench: `npm run gallery`. */
const files = import.meta.glob<Record<string, unknown>>('/locales/en/*.json', { eager: true, import: 'default' });

function words(key: string, values: Record<string, unknown> = {}): string {
  const [space = '', path = ''] = key.split(':');
  const found = path
    .split('.')
    .reduce<unknown>((at, step) => (at as Record<string, unknown> | undefined)?.[step], files[`/locales/en/${space}.json`]);
  return typeof found === 'string'
    ? found.replace(/\{\{(\w+)\}\}/g, (_, name: string) => String(values[name] ?? ''))
    : (path.split('.').at(-1) ?? '');
}

const DENSITY = Math.max(1, devicePixelRatio);
const MARGIN = { x: 24, y: 30 };

function figure(name: string, part: Parameters<typeof paintFace>[1], through: boolean): HTMLElement {
  const { width, height, terminals } = faceOf(part.kind).shape(part);
  // A thermostat's back and pigtails reach beyond its front.
  const spots = Object.values(terminals);
  const far = {
    left: Math.min(0, ...spots.map(({ x }) => x - 40)),
    right: Math.max(width, ...spots.map(({ x }) => x + 60)),
    top: Math.min(0, ...spots.map(({ y }) => y - 130)),
    foot: Math.max(height, ...spots.map(({ y }) => y + 50)),
  };
  const canvas = document.createElement('canvas');
  canvas.width = (far.right - far.left + MARGIN.x * 2) * DENSITY;
  canvas.height = (far.foot - far.top + MARGIN.y * 2) * DENSITY;
  canvas.style.width = `${String(canvas.width / DENSITY)}px`;
  const pen = canvas.getContext('2d');
  if (pen !== null) {
    pen.scale(DENSITY, DENSITY);
    pen.fillStyle = part.cover === undefined && !through ? MATERIAL.cavity : MATERIAL.closetWall;
    pen.fillRect(0, 0, canvas.width, canvas.height);
    pen.translate(MARGIN.x - far.left, MARGIN.y - far.top);
    paintFace(pen, part, words, through);
  }
  const caption = document.createElement('figcaption');
  caption.textContent = name;
  const box = document.createElement('figure');
  box.append(canvas, caption);
  return box;
}

await document.fonts.ready;
await Promise.all(
  ["600 14px 'Archivo Variable'", "700 14px 'Atkinson Hyperlegible Mono'", "600 14px 'Atkinson Hyperlegible Next'"].map((face) =>
    document.fonts.load(face),
  ),
);
for (const kind of CATALOGUE.keys()) {
  const heading = document.createElement('h2');
  heading.textContent = kind;
  const row = document.createElement('section');
  for (const { name, part } of statesOf(kind)) {
    row.append(figure(name, part, false));
    if (faceOf(kind).through !== undefined) row.append(figure(`${name}, cover on`, part, true));
  }
  document.getElementById('faces')?.append(heading, row);
}
document.body.dataset.ready = 'yes';
