/** A gradebook as tables, and those as CSV by RFC 4180. */
import Papa from 'papaparse';
import type { Naming } from '../suspects/hypotheses.ts';
import { placesOf } from './assignment.ts';
import type { Doubt } from './doubts.ts';
import { pointsIn } from './entry.ts';
import type { Cell, Gradebook } from './gradebook.ts';
import { differingWeights } from './weights.ts';

export const COLUMNS = [
  'trainee',
  'name',
  'item',
  'work',
  'ticket',
  'attempt',
  'attempts',
  'points',
  'replayed',
  'reason',
  'isolation',
  'economy',
  'safety',
  'proof',
  'right',
  'fault',
  'named',
  'minutes',
  'parMinutes',
  'steps',
  'wastedSteps',
  'answersRight',
  'answersAsked',
  'passed',
  'doubts',
  'file',
] as const;
export type Column = (typeof COLUMNS)[number];

/** How keys and values are put into words. */
export interface CsvWords {
  readonly column: (column: Column | 'total' | 'weight') => string;
  /** What an item is called, by its place: the heading of its column. */
  readonly item: (item: number) => string;
  /** The same, with what it counts. */
  readonly weighted: (item: string, weight: number) => string;
  readonly naming: (naming: Naming) => string;
  readonly doubt: (doubt: Doubt) => string;
  readonly yes: string;
  readonly no: string;
}

/** A fault, or a pair of them, as `part:mode`: the same in every language. */
export const namingKey = ({ target, mode, also }: Naming): string =>
  [`${target}:${mode}`, ...(also ? [`${also.target}:${also.mode}`] : [])].join(' + ');

export type Table = readonly (readonly (string | number)[])[];

const tenth = (value: number | undefined): number | string => (value === undefined ? '' : Math.round(value * 10) / 10);
const blank = (value: number | undefined): number | string => value ?? '';

/** One line for each trainee and item, with a heading. Weights are a last column, and only where they differ. */
export function longTable({ rows, assignment }: Gradebook, words: CsvWords): Table {
  const weights = differingWeights(assignment);
  const line = (trainee: { readonly code: string; readonly name: string }, cell: Cell): (string | number)[] => {
    const { entry, result, overrule } = cell;
    const values: Readonly<Record<Column, string | number>> = {
      trainee: trainee.code,
      name: trainee.name,
      item: cell.item + 1,
      work: words.item(cell.item),
      ticket: entry?.paper ? '' : (entry?.ticket ?? ''),
      attempt: blank(entry?.attempt),
      attempts: cell.attempts,
      points: tenth(cell.points),
      replayed: entry ? blank(pointsIn(entry)) : '',
      reason: overrule?.reason ?? '',
      isolation: tenth(result?.items.isolation),
      economy: tenth(result?.items.economy),
      safety: tenth(result?.items.safety),
      proof: tenth(result?.items.proof),
      right: result === undefined ? '' : result.rightNaming ? words.yes : words.no,
      fault: result ? words.naming(result.truth) : '',
      named: result?.named ? words.naming(result.named) : '',
      minutes: tenth(result?.minutes),
      parMinutes: tenth(result?.parMinutes),
      steps: blank(result?.steps),
      wastedSteps: blank(result?.wastedSteps),
      answersRight: blank(entry?.paper?.right),
      answersAsked: blank(entry?.paper?.asked),
      passed: entry?.paper?.passed === undefined ? '' : entry.paper.passed ? words.yes : words.no,
      doubts: cell.doubts.map(({ doubt }) => words.doubt(doubt)).join('; '),
      file: entry?.file ?? '',
    };
    return [...COLUMNS.map((column) => values[column]), ...(weights ? [blank(weights[cell.item])] : [])];
  };
  const head = [...COLUMNS, ...(weights ? (['weight'] as const) : [])].map(words.column);
  return [head, ...rows.flatMap(({ trainee, cells }) => cells.map((cell) => line(trainee, cell)))];
}

/** One line for each trainee: the points of every item, and the total. Where weights differ, each item's heading says its own. */
export function wideTable({ rows, assignment }: Gradebook, words: CsvWords): Table {
  const weights = differingWeights(assignment);
  const items = Array.from({ length: placesOf(assignment) }, (_, item) => {
    const weight = weights?.[item];
    return weight === undefined ? words.item(item) : words.weighted(words.item(item), weight);
  });
  return [
    [words.column('trainee'), words.column('name'), ...items, words.column('total'), words.column('doubts')],
    ...rows.map(({ trainee, cells, total }) => [
      trainee.code,
      trainee.name,
      ...cells.map(({ points }) => tenth(points)),
      tenth(total),
      cells.filter(({ open }) => open).length,
    ]),
  ];
}

/**
 * RFC 4180: lines end in CR LF, cells with commas, quotes or line ends stand in quotes. A text that a spreadsheet would take for a formula
 * (it begins with =, +, -, @, a tab or a line end) gets an apostrophe before it. Numbers have a decimal point in every language.
 */
export function csvOf(table: Table): string {
  return `${Papa.unparse(table as (string | number)[][], { newline: '\r\n', escapeFormulae: true })}\r\n`;
}
