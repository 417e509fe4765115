import i18next from 'i18next';
import type { Doubt } from '../classroom/doubts.ts';
import type { Gradebook } from '../classroom/gradebook.ts';
import { type CsvWords, namingKey } from '../classroom/gradebookCsv.ts';

const t = (key: string, values: Record<string, unknown> = {}): string => i18next.t(key, values);

function doubtText({ code, step, values }: Doubt): string {
  const words = t(code === 'sameLog' ? `gradebook:doubt.sameLog.${values.why}` : `gradebook:doubt.${code}`, values);
  return step === undefined ? words : `${words} (${t('gradebook:atStep', { step })})`;
}

/** Words for a gradebook's CSV. Faults stand as `part:mode`, as everywhere on the command line. */
export function csvWords(): CsvWords {
  return {
    column: (column) => t(`gradebook:column.${column}`),
    item: (item) => t('gradebook:itemName', { item: item + 1 }),
    naming: namingKey,
    doubt: doubtText,
    yes: t('gradebook:yes'),
    no: t('gradebook:no'),
  };
}

/** The table, the doubts and the items, for people. */
export function gradebookText({ rows, analyses, counts, openDoubts }: Gradebook): string {
  const figure = (value: number | undefined, digits: number) =>
    value === undefined
      ? '–'
      : new Intl.NumberFormat(i18next.language, { minimumFractionDigits: digits, maximumFractionDigits: digits }).format(value);
  const items = rows[0]?.cells.map(({ item }) => t('gradebook:itemName', { item: item + 1 })) ?? [];
  const table = [
    [t('gradebook:cli.head'), ...items, t('gradebook:column.total')],
    ...rows.map(({ trainee, cells, total }) => [
      trainee.code,
      ...cells.map(({ points, open, overrule }) => `${figure(points, 0)}${open ? ' ?' : ''}${overrule ? ' *' : ''}`),
      figure(total, 1),
    ]),
  ];
  const widths = table[0]?.map((_, column) => Math.max(...table.map((line) => line[column]?.length ?? 0))) ?? [];
  const doubts = rows.flatMap(({ trainee, cells }) =>
    cells.flatMap(({ doubts: all, item, open }) =>
      all
        .filter(() => open)
        .map(({ doubt, entry: { file } }) =>
          t('gradebook:cli.doubt', { trainee: trainee.code, item: item + 1, file, doubt: doubtText(doubt) }),
        ),
    ),
  );
  const analysed = analyses
    .filter(({ ticket }) => ticket === undefined)
    .map(({ item, count, difficulty, discrimination }) =>
      t('gradebook:cli.analysis', {
        item: item + 1,
        count,
        difficulty: figure(difficulty, 2),
        discrimination: figure(discrimination, 2),
      }),
    );
  return [
    ...table.map((line) =>
      line.map((cell, column) => (column === 0 ? cell.padEnd(widths[0] ?? 0) : cell.padStart(widths[column] ?? 0))).join('  '),
    ),
    t(`gradebook:counts.said.${counts}`),
    ...analysed,
    ...doubts,
    openDoubts === 0 ? t('gradebook:noDoubts') : t('gradebook:doubtsLeft', { count: openDoubts }),
  ].join('\n');
}
