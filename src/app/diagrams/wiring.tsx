import type { Assembly } from '../../rig/assemble.ts';
import type { Point } from '../../rig/points.ts';
import type { RigWire } from '../../rig/schema.ts';
import { solidBox } from '../../stage/boxes.ts';
import { factoryScene } from '../../stage/factory.ts';
import { nameBox, printsOf } from '../../stage/labels.ts';
import type { Scene } from '../../stage/layout.ts';
import type { Box } from '../../stage/pen.ts';
import type { PlacedPart } from '../../stage/placed.ts';
import { SCENE } from '../../stage/tokens.ts';
import { flagsOf, markOf } from '../../stage/wireMarks.ts';
import { number, partName, placeName, t } from '../words.ts';
import { inLines, labelAt } from './labels.ts';

/** What of the scene the drawing shows: all that stands in it, with a margin for names. */
function frameOf({ parts, covers, runs }: Scene): Box {
  const boxes = [...parts.map(solidBox), ...covers.map(({ at }) => at)];
  const spots = runs.flatMap(({ path }) => path);
  const [left, top] = [
    Math.max(0, Math.min(...boxes.map(({ x }) => x), ...spots.map(({ x }) => x)) - 20),
    Math.max(0, Math.min(...boxes.map(({ y }) => y), ...spots.map(({ y }) => y)) - 34),
  ];
  const right = Math.min(SCENE.width, Math.max(...boxes.map(({ x, width }) => x + width), ...spots.map(({ x }) => x)) + 20);
  const foot = Math.min(SCENE.height, Math.max(...boxes.map(({ y, height }) => y + height), ...spots.map(({ y }) => y)) + 34);
  return { x: left, y: top, width: right - left, height: foot - top };
}

/** The wiring of one place: drawn as its parts stand, and every wire in a table. */
export function WiringFigure({
  assembly,
  place,
  marked = [],
}: {
  readonly assembly: Assembly;
  readonly place: string;
  /** Points with a ring around them, numbered in this order. */
  readonly marked?: readonly Point[];
}) {
  const scene = factoryScene(assembly, place);
  const { look, runs, parts, covers } = scene;
  const { x, y, width, height } = frameOf(scene);
  const title = t('diagram:wiringOf', { place: placeName(place) });
  const path = (spots: readonly { readonly x: number; readonly y: number }[]): string =>
    `M${spots.map(({ x, y }) => `${Math.round(x * 10) / 10} ${Math.round(y * 10) / 10}`).join(' L')}`;
  return (
    <figure class="diagram">
      <figcaption>{title}</figcaption>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reached by keyboard. */}
      <section class="diagram-scroll" aria-label={title} tabIndex={0}>
        <svg viewBox={`${x} ${y} ${width} ${height}`} width={width} height={height} aria-hidden="true">
          {covers.map(({ id, at }) => (
            <rect key={id} class="diagram-cover" {...at} rx={4} />
          ))}
          {parts.map((part) => (
            <rect key={part.part.id} class="diagram-part" {...solidBox(part)} rx={4} />
          ))}
          {[...look.exits, ...look.joins.flatMap(({ from, to }) => [from, to])].map(({ x, y }) => (
            <circle key={`${x} ${y}`} class="diagram-hole" cx={x} cy={y} r={9} />
          ))}
          {runs.map((run) => (
            <g key={`${run.wire} ${run.path[0]?.x} ${run.path[0]?.y}`}>
              <path class="diagram-case" d={path(run.path)} />
              <path class="diagram-wire" style={{ stroke: `var(--wire-${run.colour})` }} d={path(run.path)} />
            </g>
          ))}
          {flagsOf(runs, parts, 5).map(({ box, text, wire }) => (
            <g key={`${wire} ${box.x} ${box.y}`}>
              <rect class="diagram-flag" {...box} rx={3} />
              <text class="diagram-code" x={box.x + box.width / 2} y={box.y + 11.5}>
                {text}
              </text>
            </g>
          ))}
          {parts.map((part) => (
            <PartFigure key={part.part.id} placed={part} />
          ))}
          {marked.map((point, index) => (
            <MarkFigure key={point} spot={spotOf(parts, point)} number={index + 1} />
          ))}
        </svg>
      </section>
      <details class="light-codes">
        <summary>{t('diagram:wires')}</summary>
        <WireTable assembly={assembly} place={place} />
      </details>
    </figure>
  );
}

/** Where a point is in the drawing; undefined where it is in another place, or on a body that is off its base. */
function spotOf(parts: readonly PlacedPart[], point: Point): { readonly x: number; readonly y: number } | undefined {
  const [id, terminal = ''] = point.split('.');
  const placed = parts.find(({ part }) => part.id === id);
  const spot = placed?.shape.terminals[terminal];
  return placed && spot && { x: placed.x + spot.x, y: placed.y + spot.y };
}

function MarkFigure({ spot, number: place }: { readonly spot: ReturnType<typeof spotOf>; readonly number: number }) {
  if (spot === undefined) return null;
  return (
    <g class="diagram-mark">
      <circle cx={spot.x} cy={spot.y} r={13} />
      <circle class="diagram-mark-tag" cx={spot.x + 17} cy={spot.y - 17} r={10} />
      <text x={spot.x + 17} y={spot.y - 12.5} text-anchor="middle">
        {number(place)}
      </text>
    </g>
  );
}

/** Whether its wires go into a hole in its middle. */
const hasExit = ({ shape }: PlacedPart): boolean => shape.exit !== undefined;

function PartFigure({ placed }: { readonly placed: PlacedPart }) {
  const box = nameBox(placed);
  const solid = solidBox(placed);
  const name = partName(placed.part.id);
  const lines = inLines(name, Math.max(12, Math.round((box?.width ?? solid.width) / 7.4)));
  const x = box === undefined ? solid.x + solid.width / 2 : box.x + box.width / 2;
  // A face that writes no name has it in its middle, or below it where it is low.
  const own = solid.height < 60 ? solid.y + solid.height + 14 : solid.y + solid.height * (hasExit(placed) ? 0.92 : 0.52);
  const y = box === undefined ? own : box.y + 13;
  return (
    <g>
      {Object.entries(placed.shape.terminals).map(([id, spot]) => (
        <circle key={id} class="diagram-terminal" cx={placed.x + spot.x} cy={placed.y + spot.y} r={6} />
      ))}
      {printsOf(placed).map(({ text, box: print, align, size }) => (
        <text
          key={`${text} ${print.x} ${print.y}`}
          class="diagram-print"
          style={{ fontSize: `${size}px` }}
          x={align === 'center' ? print.x + print.width / 2 : align === 'left' ? print.x : print.x + print.width}
          y={print.y + print.height * 0.92}
          text-anchor={align === 'center' ? 'middle' : align === 'left' ? 'start' : 'end'}
        >
          {text}
        </text>
      ))}
      {lines.map((line, index) => (
        <text key={line} class="diagram-name" x={x} y={y + index * 13}>
          {line}
        </text>
      ))}
    </g>
  );
}

/** Every wire that ends in a place: its colour, and from where to where. */
function WireTable({ assembly, place }: { readonly assembly: Assembly; readonly place: string }) {
  const partAt = (point: string) => assembly.partById.get(point.split('.')[0] ?? '');
  const here = (wire: RigWire) => [wire.from, wire.to].some((point) => partAt(point)?.data.place === place);
  const end = (point: string) => {
    const part = partAt(point);
    const name = `${partName(part?.id ?? '')} ${labelAt(assembly, point)}`.trim();
    return part?.data.place === place ? name : t('diagram:elsewhere', { name, place: placeName(part?.data.place ?? '') });
  };
  return (
    <div class="diagram-scroll">
      <table class="diagram-table">
        <thead>
          <tr>
            <th scope="col">{t('diagram:table.wire')}</th>
            <th scope="col">{t('diagram:table.from')}</th>
            <th scope="col">{t('diagram:table.to')}</th>
          </tr>
        </thead>
        <tbody>
          {assembly.rig.wires
            .filter((wire) => !wire.pin && here(wire))
            .map((wire) => (
              <tr key={wire.id}>
                <th scope="row">
                  {markOf(wire.colour).code} <small>{t(`app:colour.${wire.colour}`)}</small>
                </th>
                <td>{end(wire.from)}</td>
                <td>{end(wire.to)}</td>
              </tr>
            ))}
        </tbody>
      </table>
    </div>
  );
}
