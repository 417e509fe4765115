import type * as Plot from '@observablehq/plot';
import { useCallback, useMemo } from 'preact/hooks';
import { median } from 'simple-statistics';
import type { Gradebook } from '../../../classroom/gradebook.ts';
import { number, t } from '../../words.ts';
import { itemName } from '../words.ts';
import { type Bin, binsOf, type Placed, placedOf, type Spread, spreadsOf, wholeTicks } from './chart-data.ts';
import { PaperChart } from './paper-chart.tsx';
import { PlotFigure, type Room } from './plot-figure.tsx';

interface Props {
  readonly gradebook: Gradebook;
}

/** Height of a row of the points by item, and of the other charts, CSS pixels at a text size of 100 %. */
const ROW = 30;
const HEIGHT = 280;
/** Room for what an item is called, CSS pixels at a text size of 100 %. */
const NAMES = 100;

/** The class in charts: how it ended, what each item was worth to it, what each ticket tells, and which questions were hard. */
export function ClassCharts({ gradebook }: Props) {
  return (
    <div class="class-charts">
      <Totals gradebook={gradebook} />
      <Points gradebook={gradebook} />
      {gradebook.assignment.items.length > 0 && <Items gradebook={gradebook} />}
      {gradebook.papers.map((analysis) => (
        <PaperChart key={analysis.item} assignment={gradebook.assignment} analysis={analysis} />
      ))}
    </div>
  );
}

/** What all charts have alike. Everything is drawn at once and stays still. */
const frameOf = ({ width, size }: Room): Plot.PlotOptions => ({
  width,
  className: 'plot-chart',
  marginLeft: 44 * size,
  marginTop: 30 * size,
  marginBottom: 40 * size,
  marginRight: 20,
});

const LINES = { stroke: 'var(--paper-line)', strokeOpacity: 1 } as const;
const HALVES = [-1, -0.5, 0, 0.5, 1];
const POINTS = { ticks: [0, 20, 40, 60, 80, 100], tickFormat: (value: number) => number(value) } as const;

function Totals({ gradebook: { rows } }: Props) {
  const totals = useMemo(() => rows.map(({ total }) => total), [rows]);
  const bins = useMemo(() => binsOf(totals), [totals]);
  const draw = useCallback(
    (plot: typeof Plot, room: Room) => {
      const most = Math.max(1, ...bins.map(({ trainees }) => trainees));
      const ticks = wholeTicks(most);
      return plot.plot({
        ...frameOf(room),
        height: HEIGHT * room.size,
        x: { label: t('classview:charts.axis.total'), domain: [0, 100], ...POINTS },
        y: {
          label: t('classview:charts.axis.trainees'),
          domain: [0, most],
          ticks,
          tickFormat: (value: number) => number(value),
        },
        marks: [
          plot.gridY({ ...LINES, ticks }),
          plot.rectY(bins, { x1: 'from', x2: 'to', y: 'trainees', fill: 'var(--good)', insetLeft: 1, insetRight: 1 }),
          plot.text(bins, {
            filter: ({ trainees }: Bin) => trainees > 0,
            x: ({ from, to }: Bin) => (from + to) / 2,
            y: 'trainees',
            text: ({ trainees }: Bin) => number(trainees),
            dy: -8 * room.size,
            fill: 'var(--ink)',
          }),
          plot.ruleY([0], { stroke: 'var(--ink)' }),
        ],
      });
    },
    [bins],
  );
  if (totals.length === 0) return null;
  const said = t('classview:charts.totals.said', {
    count: totals.length,
    middle: number(median(totals)),
    lowest: number(Math.min(...totals)),
    highest: number(Math.max(...totals)),
  });
  return (
    <PlotFigure title={t('classview:charts.totals.title')} said={said} draw={draw}>
      <table>
        <thead>
          <tr>
            <th scope="col">{t('classview:charts.axis.total')}</th>
            <th scope="col">{t('classview:charts.axis.trainees')}</th>
          </tr>
        </thead>
        <tbody>
          {bins.map(({ from, to, trainees }) => (
            <tr key={from}>
              <th scope="row">
                {t(to === 100 ? 'classview:charts.totals.last' : 'classview:charts.totals.bin', {
                  from: number(from),
                  to: number(to),
                })}
              </th>
              <td>{number(trainees)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </PlotFigure>
  );
}

function Points({ gradebook: { assignment, rows } }: Props) {
  const spreads = useMemo(() => spreadsOf({ assignment, rows }), [assignment, rows]);
  const named = useCallback((item: number) => itemName(assignment, item - 1), [assignment]);
  const draw = useCallback(
    (plot: typeof Plot, room: Room) =>
      plot.plot({
        ...frameOf(room),
        height: (70 + ROW * spreads.length) * room.size,
        x: { label: t('classview:charts.axis.points'), domain: [0, 100], ...POINTS },
        marginLeft: NAMES * room.size,
        y: { label: t('classview:charts.axis.item'), type: 'band', padding: 0.35, tickFormat: named },
        marks: [
          plot.gridX({ ...LINES, ticks: POINTS.ticks }),
          plot.ruleY(spreads, { x1: 'lowest', x2: 'highest', y: 'item', stroke: 'var(--ink)', strokeWidth: 1.5 }),
          plot.barX(spreads, { x1: 'lower', x2: 'upper', y: 'item', fill: 'var(--paper)', stroke: 'var(--good)', strokeWidth: 2 }),
          plot.tickX(spreads, { x: 'median', y: 'item', stroke: 'var(--ink)', strokeWidth: 4 }),
        ],
      }),
    [spreads, named],
  );
  if (spreads.length === 0) return null;
  const [hardest] = [...spreads].sort((a, b) => a.median - b.median);
  const said = t('classview:charts.points.said', { item: named(hardest?.item ?? 1), middle: number(hardest?.median ?? 0) });
  return (
    <PlotFigure title={t('classview:charts.points.title')} said={said} draw={draw}>
      <table>
        <thead>
          <tr>
            <th scope="col">{t('classview:charts.axis.item')}</th>
            <th scope="col">{t('classview:charts.axis.trainees')}</th>
            {FIGURES.map((figure) => (
              <th key={figure} scope="col">
                {t(`classview:charts.points.${figure}`)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {spreads.map((spread) => (
            <tr key={spread.item}>
              <th scope="row">{named(spread.item)}</th>
              <td>{number(spread.trainees)}</td>
              {FIGURES.map((figure) => (
                <td key={figure}>{number(spread[figure])}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </PlotFigure>
  );
}

const FIGURES = ['lowest', 'lower', 'median', 'upper', 'highest'] as const satisfies readonly (keyof Spread)[];

function Items({ gradebook: { analyses } }: Props) {
  const placed = useMemo(() => placedOf({ analyses }), [analyses]);
  const draw = useCallback(
    (plot: typeof Plot, room: Room) =>
      plot.plot({
        ...frameOf(room),
        height: (HEIGHT + 40) * room.size,
        x: {
          label: t('classview:charts.axis.difficulty'),
          domain: [0, 1],
          ticks: [0, 0.25, 0.5, 0.75, 1],
          tickFormat: (value: number) => number(value, 2),
        },
        y: {
          label: t('classview:charts.axis.discrimination'),
          domain: [-1, 1],
          ticks: HALVES,
          tickFormat: (value: number) => number(value, 1),
        },
        marks: [
          plot.gridY({ ...LINES, ticks: HALVES }),
          plot.ruleY([0], { stroke: 'var(--ink-soft)' }),
          plot.dot(placed, { x: 'difficulty', y: 'discrimination', r: 5, fill: 'var(--good)' }),
          plot.text(placed, {
            x: 'difficulty',
            y: 'discrimination',
            text: ({ item }: Placed) => number(item),
            dx: 8,
            dy: -6,
            textAnchor: 'start',
            fill: 'var(--ink)',
          }),
        ],
      }),
    [placed],
  );
  if (placed.length === 0) return <p>{t('classview:charts.items.none')}</p>;
  return (
    <PlotFigure title={t('classview:charts.items.title')} said={t('classview:charts.items.said')} draw={draw}>
      <table>
        <thead>
          <tr>
            <th scope="col">{t('classview:charts.axis.item')}</th>
            <th scope="col">{t('classview:charts.axis.difficulty')}</th>
            <th scope="col">{t('classview:charts.axis.discrimination')}</th>
          </tr>
        </thead>
        <tbody>
          {placed.map(({ item, difficulty, discrimination }) => (
            <tr key={item}>
              <th scope="row">{number(item)}</th>
              <td>{number(difficulty, 2)}</td>
              <td>{number(discrimination, 2)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </PlotFigure>
  );
}
