import { useEffect, useRef, useState } from 'preact/hooks';
import { number, t } from '../words.ts';
import type { Finished, Result } from './records.ts';

interface Props {
  readonly results: readonly (Finished & { readonly result: Result })[];
}

const HEIGHT = 200;
const LEFT = 44;
const TOP = 28;
const FOOT = 28;

/** Totals in the order in which attempts were finished; hidden from screen readers, who have the table below it. */
export function ResultsChart({ results }: Props) {
  const host = useRef<HTMLDivElement>(null);
  const [width, setWidth] = useState(640);
  useEffect(() => {
    const element = host.current;
    if (element === null) return undefined;
    const observer = new ResizeObserver(
      ([entry]) => entry !== undefined && setWidth(Math.max(240, Math.round(entry.contentRect.width))),
    );
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  const x = (index: number) => LEFT + 16 + ((width - LEFT - 32) * (index + 0.5)) / Math.max(1, results.length);
  const y = (total: number) => TOP + HEIGHT * (1 - total / 100);
  const line = results.map((each, index) => `${index === 0 ? 'M' : 'L'}${x(index)} ${y(each.result.total)}`).join(' ');
  const every = Math.max(1, Math.ceil((results.length * 30) / (width - LEFT)));
  return (
    <div class="results-chart" ref={host}>
      <svg
        width={width}
        height={TOP + HEIGHT + FOOT}
        viewBox={`0 0 ${width} ${TOP + HEIGHT + FOOT}`}
        aria-hidden="true"
        focusable="false"
      >
        <text x={LEFT} y={14}>
          {t('keeping:chart.axis')}
        </text>
        {[0, 25, 50, 75, 100].map((tick) => (
          <g key={tick}>
            <path class="results-rule" d={`M${LEFT} ${y(tick)} H${width}`} />
            <text x={LEFT - 8} y={y(tick) + 5} text-anchor="end">
              {number(tick)}
            </text>
          </g>
        ))}
        <path class="results-line" d={line} />
        {results.map((each, index) => (
          <g key={each.number}>
            {each.result.right ? (
              <circle class="results-found" cx={x(index)} cy={y(each.result.total)} r="6" />
            ) : (
              <path class="results-missed" d={`M${x(index) - 6} ${y(each.result.total) - 6} l12 12 m0 -12 l-12 12`} />
            )}
            {index % every === 0 && (
              <text x={x(index)} y={TOP + HEIGHT + 20} text-anchor="middle">
                {number(each.number)}
              </text>
            )}
          </g>
        ))}
      </svg>
      <ul class="results-key" aria-hidden="true">
        <li>
          <svg width="16" height="16" viewBox="-8 -8 16 16" aria-hidden="true" focusable="false">
            <circle class="results-found" r="6" />
          </svg>
          {t('keeping:table.found')}
        </li>
        <li>
          <svg width="16" height="16" viewBox="-8 -8 16 16" aria-hidden="true" focusable="false">
            <path class="results-missed" d="M-6 -6 l12 12 m0 -12 l-12 12" />
          </svg>
          {t('keeping:table.missed')}
        </li>
      </ul>
    </div>
  );
}
