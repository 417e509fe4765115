import { useEffect, useId, useRef, useState } from 'preact/hooks';
import type { JudgedStep } from '../../score/debrief.ts';
import { number, t } from '../words.ts';
import { countY, inLines, type Plot, stairsPath, stepX, ticksOf } from './chart-scale.ts';

interface Props {
  readonly start: number;
  /** Steps until the fault was named. */
  readonly steps: readonly JudgedStep[];
  /** Suspects left after each step of the short way. */
  readonly shortWay: readonly number[];
  /** Left out where a step is told by its number alone. */
  readonly words?: (step: JudgedStep) => string;
  readonly chosen?: number | undefined;
  /** Left out where nothing is to be chosen. */
  readonly onChoose?: (step: number) => void;
  /** Of the plot, CSS pixels. */
  readonly height?: number;
}

/** Columns narrower than this carry numbers alone. This and the next two are pixels at a text size of 100 %; they grow with it. */
const WORDS_FROM = 72;
/** How wide a letter of a step's words is at the most usual, and how high a line of them. */
const LETTER = 7;
const LINE = 17;
const MOST_LINES = 4;

/** The text size in force: 1 at 100 %. */
function textSize(): number {
  return Number.parseFloat(getComputedStyle(document.documentElement).fontSize) / 16 || 1;
}

/**
 * Suspects left after each step, on a log scale. Wasted steps are hatched and say so. Hidden from screen readers, who have
 * the table and the list of steps.
 */
export function SuspectsChart({ start, steps, shortWay, words = () => '', chosen, onChoose, height = 216 }: Props) {
  const hatch = useId();
  const host = useRef<HTMLDivElement>(null);
  const [width, setWidth] = useState(860);
  const [size, setSize] = useState(textSize);
  useEffect(() => {
    const element = host.current;
    if (element === null) return undefined;
    const observer = new ResizeObserver(([entry]) => {
      if (entry === undefined) return;
      setWidth(Math.max(280, Math.round(entry.contentRect.width)));
      setSize(textSize());
    });
    observer.observe(element);
    return () => observer.disconnect();
  }, []);

  const columns = Math.max(1, steps.length, shortWay.length);
  const line = LINE * size;
  const foot = 20 * size;
  const plot: Plot = { left: 48 * size, top: 34 * size, width: width - 48 * size - 12, height };
  const column = plot.width / columns;
  const letters = Math.floor((column - 10) / (LETTER * size));
  // Words stand upright where they fit; where not, the number leads to the list of steps.
  const lines = steps.map((step) => {
    const said = words(step);
    return said === '' || column < WORDS_FROM * size ? undefined : inLines(said, letters, MOST_LINES);
  });
  const worded = lines.some((each) => each !== undefined);
  const below = worded ? foot + 10 + MOST_LINES * line : foot * 2;
  const bottom = plot.top + plot.height;
  const left = steps.map((step) => step.left);
  const stairs = stairsPath(plot, start, left, columns);
  const shortStairs = stairsPath(plot, start, shortWay, columns);
  // Halvings lie evenly apart; of a low chart's each second or third is told.
  const halving = height / Math.log2(Math.max(2, start));
  const skip = Math.max(1, Math.ceil((15 * size) / halving));
  const ticks = ticksOf(start).filter((tick, index) => index % skip === 0 && (tick === 1 || Math.log2(tick) * halving > 12 * size));
  const every = Math.max(1, Math.ceil((22 * size) / column));

  return (
    <div class="chart" ref={host}>
      <svg width={width} height={bottom + below} viewBox={`0 0 ${width} ${bottom + below}`} aria-hidden="true" focusable="false">
        <defs>
          <pattern id={hatch} width="10" height="10" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
            <rect class="chart-hatch" width="4.5" height="10" />
          </pattern>
        </defs>
        <text class="chart-axis" x={plot.left} y={16 * size}>
          {t('app:debrief.chart.axis')}
        </text>
        {[...new Set([...ticks, 1])].map((tick) => (
          <g key={tick}>
            <path class="chart-line" d={`M${plot.left} ${countY(plot, start, tick)} H${plot.left + plot.width}`} />
            <text class="chart-tick" x={plot.left - 12} y={countY(plot, start, tick) + 5 * size}>
              {number(tick)}
            </text>
          </g>
        ))}
        <path class="chart-area" d={`${stairs} V${bottom} H${plot.left} Z`} />
        {shortWay.length > 0 && <path class="chart-short" d={shortStairs} />}
        {steps.map((step, index) =>
          step.kind === 'wasted' ? (
            <rect
              key={step.number}
              fill={`url(#${hatch})`}
              x={stepX(plot, columns, index)}
              y={plot.top - 6}
              width={column}
              height={plot.height + 10}
            />
          ) : null,
        )}
        <path class="chart-stairs" d={stairs} />
        {steps.map((step, index) => {
          const x = stepX(plot, columns, index + 0.5);
          const shown = worded || index % every === 0 || (step.kind === 'wasted' && column >= 18 * size);
          return (
            <g key={step.number} class={`chart-step ${step.kind} ${chosen === step.number ? 'chosen' : ''}`}>
              {shown && (
                <text class="chart-number" x={x} y={bottom + foot}>
                  {step.number}
                </text>
              )}
              {lines[index]?.map((row, at) => (
                <text key={`${at} ${row}`} class="chart-words" x={x} y={bottom + foot + (at + 1) * line}>
                  {row}
                </text>
              ))}
              {onChoose !== undefined && (
                // biome-ignore lint/a11y/noStaticElementInteractions: for pointers only; the keyboard has the list of steps below
                <rect
                  class="chart-hit"
                  x={stepX(plot, columns, index)}
                  y={plot.top - 6}
                  width={column}
                  height={plot.height + foot + 14 + (worded ? MOST_LINES * line : 0)}
                  onClick={() => onChoose(step.number)}
                >
                  <title>{t('app:debrief.chart.pick', { step: step.number, words: words(step) })}</title>
                </rect>
              )}
            </g>
          );
        })}
      </svg>
      <ul class="chart-key" aria-hidden="true">
        {shortWay.length > 0 && (
          <li>
            <span class="chart-key-short" /> {t('app:debrief.shortWayLine')}
          </li>
        )}
        {steps.some((step) => step.kind === 'wasted') && (
          <li class="wasted">
            <span class="chart-key-hatch" /> {t('app:debrief.chart.wasted')}
          </li>
        )}
      </ul>
    </div>
  );
}
