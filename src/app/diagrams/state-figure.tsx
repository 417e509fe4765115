import { FLASH, isOn, MARK, type StateMark, sizeOf, widthOf } from './states.ts';

/** What a mark is made of, in a square of 18: a line, and what is filled where it is at work. */
const SHAPES = {
  shaft: {
    line: 'M9 3.5 A5.5 5.5 0 0 1 14.5 9 M9 14.5 A5.5 5.5 0 0 1 3.5 9',
    full: 'M17.5 8 L11.5 8 L14.5 12.5 Z M0.5 10 L6.5 10 L3.5 5.5 Z',
  },
  still: { line: 'M3.5 9 A5.5 5.5 0 1 1 14.5 9 A5.5 5.5 0 1 1 3.5 9 M7 9 H11', full: '' },
  flame: { line: '', full: 'M9 2 C10 6 14 7.5 14 11.5 A5 4.5 0 0 1 4 11.5 C4 9 6 8.5 6.5 6 C8 7 8.5 5 9 2 Z' },
  noFlame: { line: 'M9 2 C10 6 14 7.5 14 11.5 A5 4.5 0 0 1 4 11.5 C4 9 6 8.5 6.5 6 C8 7 8.5 5 9 2 Z M2 16 L16 2', full: '' },
  glow: {
    line: 'M4 12 L6.5 7 L9 12 L11.5 7 L14 12 M9 1.5 V4 M2.5 3 L4.5 5 M15.5 3 L13.5 5 M9 14 V16.5 M3 16 L4.5 14.5 M15 16 L13.5 14.5',
    full: '',
  },
  dark: { line: 'M4 12 L6.5 7 L9 12 L11.5 7 L14 12', full: '' },
  hum: {
    line: 'M6 4.5 L4 7 L6 9 L4 11 L6 13.5 M12 4.5 L14 7 L12 9 L14 11 L12 13.5',
    full: 'M7.5 9 A1.5 1.5 0 1 1 10.5 9 A1.5 1.5 0 1 1 7.5 9',
  },
} as const;

/** A lamp's light over time, one round of it: a step up and down for each flash, a high line where it is steady, a low one where it is dark. */
function flashLine(flashes: number): string {
  const [low, high, x] = [13.5, 4.5, MARK];
  if (!Number.isFinite(flashes)) return `M${x} ${high} h16`;
  if (flashes === 0) return `M${x} ${low} h16`;
  return `M${x} ${low} ${Array.from({ length: flashes }, () => `V${high} h${FLASH / 2} V${low} h${FLASH / 2}`).join(' ')}`;
}

const shapeOf = (mark: Exclude<StateMark, { is: 'lamp' }>) => {
  if (mark.on) return SHAPES[mark.is];
  return SHAPES[mark.is === 'flame' ? 'noFlame' : mark.is === 'glow' ? 'dark' : 'still'];
};

/** Marks side by side, their upper left corner there. */
export function StateFigures({ marks, x, y }: { readonly marks: readonly StateMark[]; readonly x: number; readonly y: number }) {
  return (
    <>
      {marks.map((mark, index) => (
        <StateFigure key={mark.is} mark={mark} x={x + sizeOf(marks.slice(0, index)).width} y={y} />
      ))}
    </>
  );
}

/** A mark, its upper left corner there. */
function StateFigure({ mark, x, y }: { readonly mark: StateMark; readonly x: number; readonly y: number }) {
  return (
    <g class="diagram-state" data-on={String(isOn(mark))} data-mark={mark.is} transform={`translate(${x} ${y})`}>
      <rect class="diagram-state-box" x={0.5} y={0.5} width={widthOf(mark) - 1} height={MARK - 1} rx={5} />
      {mark.is === 'lamp' ? (
        <>
          <circle cx={9} cy={9} r={4.5} class={mark.flashes > 0 ? 'diagram-lit' : 'diagram-line'} />
          <path class="diagram-line" d={flashLine(mark.flashes)} />
        </>
      ) : (
        <>
          <path class="diagram-line" d={shapeOf(mark).line} />
          <path class="diagram-lit" d={shapeOf(mark).full} />
        </>
      )}
    </g>
  );
}
