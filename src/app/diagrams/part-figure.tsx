import { solidBox } from '../../stage/boxes.ts';
import { nameBox, printsOf } from '../../stage/labels.ts';
import type { Box } from '../../stage/pen.ts';
import type { PlacedPart } from '../../stage/placed.ts';
import { partName, t } from '../words.ts';
import { inLines } from './labels.ts';

/** Of one line of a name: its height, and about what a letter takes, CSS pixels. */
const LINE = 13;
const LETTER = 6.8;
/** From a pin to its letter, behind and on a pigtail's tag. */
const PIN_LETTER = 30;

/** Whether its wires go into a hole in its middle. */
const hasExit = ({ shape }: PlacedPart): boolean => shape.exit !== undefined;

interface Name {
  readonly lines: readonly string[];
  readonly x: number;
  readonly y: number;
}

/** A part's name as it is written in the drawing: its lines, the middle, and the foot of the first. */
function nameOf(placed: PlacedPart): Name {
  const box = nameBox(placed);
  const solid = solidBox(placed);
  const lines = inLines(partName(placed.part.id), Math.max(12, Math.round((box?.width ?? solid.width) / 7.4)));
  const x = box === undefined ? solid.x + solid.width / 2 : box.x + box.width / 2;
  // A face that writes no name has it in its middle, or below it where it is low.
  const own = solid.height < 60 ? solid.y + solid.height + 14 : solid.y + solid.height * (hasExit(placed) ? 0.92 : 0.52);
  return { lines, x, y: box === undefined ? own : box.y + 13 };
}

const behindOf = ({ part, shape, x, y }: PlacedPart) => {
  const { back } = shape;
  if (back === undefined) return undefined;
  const box = { ...back, x: x + back.x, y: y + back.y };
  return { box, words: t('diagram:behind', { part: partName(part.id) }) };
};

/** Everything that is written on and beside a part, as boxes that other words keep off. */
export function writtenOn(placed: PlacedPart): Box[] {
  const { lines, x, y } = nameOf(placed);
  const names = lines.map((line, index) => {
    const width = line.length * LETTER;
    return { x: x - width / 2, y: y - 11 + index * LINE, width, height: LINE + 1 };
  });
  const behind = behindOf(placed)?.box;
  const pins = placed.part.body === undefined ? [] : Object.values(placed.shape.terminals);
  return [
    ...names,
    ...printsOf(placed).map(({ box }) => box),
    ...(behind === undefined ? [] : [{ ...behind, height: 40 }]),
    ...pins.map((pin) => ({ x: placed.x + pin.x - 16, y: placed.y + pin.y + PIN_LETTER - 13, width: 32, height: 17 })),
  ];
}

/** One part with its name, its terminals and their letters. @param lettered the pins of a body that is off its base have letters, too */
export function PartFigure({ placed, lettered }: { readonly placed: PlacedPart; readonly lettered: boolean }) {
  const { lines, x, y } = nameOf(placed);
  return (
    <g>
      {placed.part.body !== undefined && <PinsFigure placed={placed} lettered={lettered} />}
      {Object.entries(placed.shape.terminals).map(([id, spot]) => (
        <circle key={id} class="diagram-terminal" cx={placed.x + spot.x} cy={placed.y + spot.y} r={6} />
      ))}
      {placed.part.body === undefined &&
        printsOf(placed).map(({ text, box: print, align, size }) => (
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
        <text key={line} class="diagram-name" x={x} y={y + index * LINE}>
          {line}
        </text>
      ))}
    </g>
  );
}

/** Of a body off its base: its back beside its front, or the pigtails that lead from it to where they lie. */
function PinsFigure({ placed, lettered }: { readonly placed: PlacedPart; readonly lettered: boolean }) {
  const { part, shape, x, y } = placed;
  const behind = behindOf(placed);
  const solid = solidBox(placed);
  const pins = Object.entries(shape.terminals);
  const letterOf = (id: string): string => part.terminals.find((each) => each.id === id)?.label || id;
  return (
    <g>
      {behind !== undefined && (
        <>
          <rect class="diagram-part" {...behind.box} rx={4} />
          <text class="diagram-name" x={behind.box.x + behind.box.width / 2} y={behind.box.y + 28}>
            {behind.words}
          </text>
        </>
      )}
      {part.body === 'mat' &&
        pins.map(([id, pin], index) => {
          const from = solid.x + (solid.width * (index + 1)) / (pins.length + 1);
          const foot = solid.y + solid.height;
          return (
            <path
              key={id}
              class="diagram-lead"
              d={`M${from} ${foot} V${foot + 60} L${x + pin.x} ${y + pin.y - 50} V${y + pin.y}`}
            />
          );
        })}
      {(lettered || part.body === 'mat') &&
        pins.map(([id, pin]) => (
          <text key={id} class="diagram-number diagram-pin" x={x + pin.x} y={y + pin.y + PIN_LETTER}>
            {letterOf(id)}
          </text>
        ))}
    </g>
  );
}
