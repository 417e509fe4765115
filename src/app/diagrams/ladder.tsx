import type { Assembly } from '../../rig/assemble.ts';
import type { Ladder, Step } from '../../rig/ladder.ts';
import type { Point } from '../../rig/points.ts';
import type { RigWire } from '../../rig/schema.ts';
import { partName, t } from '../words.ts';
import { codesOf, inLines, labelAt, rangeOf } from './labels.ts';
import { type Cell, drawLadder, type Stretch } from './ladder-layout.ts';
import { type CellWords, ladderTags } from './ladder-tags.ts';
import { DiagramSymbol } from './symbols.tsx';
import { type PointValue, ValueTag } from './value-tag.tsx';

interface Props {
  readonly assembly: Assembly;
  readonly ladder: Ladder;
  /** No other ladder beside it has the same. */
  readonly title: string;
  /** What stands along its wires. */
  readonly values?: ReadonlyMap<Point, PointValue>;
}

const NOTHING: ReadonlyMap<Point, PointValue> = new Map();

/** One ladder: drawn, and its rungs in words. */
export function LadderFigure({ assembly, ladder, title, values = NOTHING }: Props) {
  const drawing = drawLadder(ladder);
  const tags = values.size === 0 ? [] : ladderTags(drawing, values, (cell) => cellWords(assembly, cell));
  const [left, right] = drawing.rails;
  return (
    <figure class="diagram">
      <figcaption>{title}</figcaption>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reached by keyboard. */}
      <section class="diagram-scroll" aria-label={title} tabIndex={0}>
        <svg
          viewBox={`0 0 ${drawing.width} ${drawing.height}`}
          width={drawing.width}
          height={drawing.height}
          style={rangeOf(drawing.width)}
          aria-hidden="true"
        >
          <path class="diagram-rail" d={`M${left} ${drawing.top} V${drawing.foot} M${right} ${drawing.top} V${drawing.foot}`} />
          {drawing.stretches.map((stretch) => (
            <StretchLine key={`${stretch.x1} ${stretch.y1} ${stretch.x2} ${stretch.y2}`} stretch={stretch} />
          ))}
          {drawing.dots.map(({ x, y }) => (
            <circle key={`${x} ${y}`} class="diagram-dot" cx={x} cy={y} r={3.4} />
          ))}
          {drawing.cells.map((cell) => (
            <CellFigure key={`${cell.x} ${cell.y}`} assembly={assembly} cell={cell} />
          ))}
          {tags.map((tag) => (
            <ValueTag key={`${tag.box.x} ${tag.box.y}`} {...tag} />
          ))}
          {drawing.rows.map((y, index) => (
            <text key={y} class="diagram-number" x={left - 14} y={y + 4}>
              {index + 1}
            </text>
          ))}
        </svg>
      </section>
      <details class="light-codes">
        <summary>{t('diagram:rungs')}</summary>
        {ladder.feed.steps.length + ladder.tail.steps.length > 0 && <p>{sharedWords(assembly, ladder)}</p>}
        <ol>
          {ladder.rungs.map((rung) => {
            const words = rungWords(assembly, rung);
            return <li key={words}>{words}</li>;
          })}
        </ol>
      </details>
    </figure>
  );
}

function StretchLine({ stretch }: { readonly stretch: Stretch }) {
  const { x1, y1, x2, y2, wires } = stretch;
  const across = (x2 - x1) / Math.max(1, wires.length);
  return (
    <g>
      <path class={wires.length === 0 ? 'diagram-join' : 'diagram-case'} d={`M${x1} ${y1} L${x2} ${y2}`} />
      {wires.map((wire, index) => (
        <path
          key={wire.id}
          class="diagram-wire"
          style={{ stroke: `var(--wire-${wire.colour})` }}
          d={`M${x1 + across * index} ${y1} h${across}`}
        />
      ))}
      {wires.length > 0 && (
        <text class="diagram-code" x={x1 + Math.min((x2 - x1) / 2, 40)} y={y1 - 6}>
          {codesOf(wires)}
        </text>
      )}
    </g>
  );
}

const cellWords = (assembly: Assembly, cell: Cell): CellWords => ({
  lines: inLines(partName(cell.part), 18),
  left: labelAt(assembly, cell.left),
  right: labelAt(assembly, cell.right),
});

function CellFigure({ assembly, cell }: { readonly assembly: Assembly; readonly cell: Cell }) {
  const { x, y, kind } = cell;
  const { lines, left, right } = cellWords(assembly, cell);
  const wound = assembly.partById.get(cell.part)?.kind.transformers !== undefined;
  return (
    <g transform={`translate(${x} ${y})`}>
      <DiagramSymbol kind={kind === 'supply' && !wound ? 'mains' : kind} closed={cell.closed} />
      {lines.map((line, index) => (
        <text key={line} class="diagram-name" y={-20 - (lines.length - 1 - index) * 12}>
          {line}
        </text>
      ))}
      <text class="diagram-letter" x={-12} y={19} text-anchor="end">
        {left}
      </text>
      <text class="diagram-letter" x={12} y={19} text-anchor="start">
        {right}
      </text>
    </g>
  );
}

/** "red, blue", or nothing where two things meet without a wire. */
function wiresWords(wires: readonly RigWire[]): string {
  return wires.map(({ colour }) => t(`app:colour.${colour}`)).join(', ');
}

/** A thing on a rung in words, with its terminals: "thermostat R–W (open at rest)". */
function stepWords(assembly: Assembly, step: Step, load: boolean): string {
  const [from, to] = [labelAt(assembly, step.enter), labelAt(assembly, step.leave)];
  const letters = from === '' && to === '' ? '' : ` ${from === '' || to === '' ? from + to : `${from}–${to}`}`;
  const name = `${partName(step.part)}${letters}`;
  if (load) return t(step.kind === 'coil' ? 'diagram:step.coil' : 'diagram:step.load', { name });
  if (step.kind === 'contact') return t(step.closed ? 'diagram:step.closed' : 'diagram:step.open', { name });
  return step.kind === 'link' ? name : t(`diagram:step.${step.kind}`, { name });
}

/** Things one after another with the wires between them. */
function stringWords(items: readonly (readonly [wires: readonly RigWire[], thing: string])[]): string {
  return items
    .flatMap(([wires, thing]) => [wires.length === 0 ? '' : `[${wiresWords(wires)}]`, thing])
    .filter((each) => each !== '')
    .join(' → ');
}

function rungWords(assembly: Assembly, { load, ways, back }: Ladder['rungs'][number]): string {
  const plain = (step: Step) => [step.wires, stepWords(assembly, step, false)] as const;
  const [first, ...others] = ways.map(({ steps, wires }) =>
    stringWords([...steps.map(plain), [wires, stepWords(assembly, load, true)]]),
  );
  const home = stringWords([...back.steps.map(plain), [back.wires, '']]);
  const main = [first, home].filter((each) => each !== '' && each !== undefined).join(' → ');
  return [main, ...others.map((other) => t('diagram:orBy', { string: other }))].join('; ');
}

function sharedWords(assembly: Assembly, { feed, tail }: Ladder): string {
  const words = (steps: readonly Step[]) =>
    stringWords(steps.map((step) => [step.wires, stepWords(assembly, step, false)] as const));
  return [
    feed.steps.length > 0 ? t('diagram:shared', { string: words(feed.steps) }) : '',
    tail.steps.length > 0 ? t('diagram:sharedBack', { string: words(tail.steps) }) : '',
  ]
    .filter((each) => each !== '')
    .join(' ');
}
