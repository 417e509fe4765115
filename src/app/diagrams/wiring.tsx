import { useEffect, useMemo, useRef } from 'preact/hooks';
import type { Assembly } from '../../rig/assemble.ts';
import type { Point } from '../../rig/points.ts';
import { solidBox } from '../../stage/boxes.ts';
import type { BodiesOff } from '../../stage/factory.ts';
import { placeName, t } from '../words.ts';
import { rangeOf } from './labels.ts';
import { PartFigure } from './part-figure.tsx';
import { StateFigures } from './state-figure.tsx';
import { type StateMark, sizeOf } from './states.ts';
import { type PointValue, ValueTag } from './value-tag.tsx';
import { WireTable } from './wire-table.tsx';
import { layWiring } from './wiring-layout.ts';

interface Props {
  readonly assembly: Assembly;
  readonly place: string;
  /** Points with a ring around them. */
  readonly marked?: readonly Point[];
  /** What stands beside terminals. */
  readonly values?: ReadonlyMap<Point, PointValue>;
  /** What is seen and heard of parts, by their ids. */
  readonly states?: ReadonlyMap<string, readonly StateMark[]>;
  /** Bodies that are off their bases. */
  readonly off?: BodiesOff;
  /** Their pins have letters. */
  readonly lettered?: boolean;
}

/** What is seen beside a point that a drawing begins with, CSS pixels. */
const RIM = 60;

const NOTHING: ReadonlyMap<Point, PointValue> = new Map();
const QUIET: ReadonlyMap<string, readonly StateMark[]> = new Map();

/** The wiring of one place: drawn as its parts stand, and every wire in a table. */
export function WiringFigure({ assembly, place, marked = [], values = NOTHING, states = QUIET, off = {}, lettered = true }: Props) {
  const layout = useMemo(
    () =>
      layWiring(assembly, place, {
        off,
        marked,
        values: [...values].map(([point, { text }]) => ({ point, text })),
        states: [...states].map(([part, of]) => ({ part, ...sizeOf(of) })),
      }),
    [assembly, place, marked, values, states, off],
  );
  const { scene, flags, marks } = layout;
  const { look, runs, parts, covers } = scene;
  const { x, y, width, height } = layout.frame;
  const room = useRef<HTMLElement>(null);
  // On a small screen the drawing begins at what the question is about: points in it, or the pins of a body.
  const pins = [...scene.terminals.values()].filter(({ part }) => off[part] !== undefined);
  const about = marks.length > 0 ? marks : pins;
  const across = about.map((each) => each.x - x);
  const [left, right] = [Math.min(...across), Math.max(...across)];
  useEffect(() => {
    if (room.current === null || across.length === 0) return;
    const { clientWidth: seen, scrollWidth } = room.current;
    const [from, to] = [left, right].map((each) => (each * scrollWidth) / width) as [number, number];
    // Both ends where they go together, else the first of them.
    room.current.scrollLeft = to - from < seen - 2 * RIM ? (from + to - seen) / 2 : from - RIM;
  }, [left, right, width]);
  const title = runs.length === 0 ? placeName(place) : t('diagram:wiringOf', { place: placeName(place) });
  const path = (spots: readonly { readonly x: number; readonly y: number }[]): string =>
    `M${spots.map(({ x, y }) => `${Math.round(x * 10) / 10} ${Math.round(y * 10) / 10}`).join(' L')}`;
  return (
    <figure class="diagram">
      <figcaption>{title}</figcaption>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reached by keyboard. */}
      <section class="diagram-scroll" aria-label={title} tabIndex={0} ref={room}>
        <svg viewBox={`${x} ${y} ${width} ${height}`} width={width} height={height} style={rangeOf(width)} aria-hidden="true">
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
          {flags.map(({ box, text, wire }) => (
            <g key={`${wire} ${box.x} ${box.y}`}>
              <rect class="diagram-flag" {...box} rx={3} />
              <text class="diagram-code" x={box.x + box.width / 2} y={box.y + 11.5}>
                {text}
              </text>
            </g>
          ))}
          {parts.map((part) => (
            <PartFigure key={part.part.id} placed={part} lettered={lettered} />
          ))}
          {[...layout.states].map(([part, box]) => (
            <StateFigures key={part} marks={states.get(part) ?? []} x={box.x} y={box.y} />
          ))}
          {layout.values.map(({ point, spot, box }) => {
            const value = values.get(point);
            return value && <ValueTag key={point} value={value} spot={spot} box={box} />;
          })}
          {marks.map(({ point, x, y }) => (
            <circle key={point} class="diagram-ring" cx={x} cy={y} r={11.5} />
          ))}
        </svg>
      </section>
      {runs.length > 0 && (
        <details class="light-codes">
          <summary>{t('diagram:wires')}</summary>
          <WireTable assembly={assembly} place={place} />
        </details>
      )}
    </figure>
  );
}
