import i18next from 'i18next';
import type { Assignment, PaperSetting } from '../classroom/assignment.ts';
import type { Doubt } from '../classroom/doubts.ts';
import type { Gradebook } from '../classroom/gradebook.ts';
import { type CsvWords, namingKey } from '../classroom/gradebookCsv.ts';
import type { PaperAnalysis } from '../classroom/paperAnalysis.ts';
import { differingWeights } from '../classroom/weights.ts';

const t = (key: string, values: Record<string, unknown> = {}): string => i18next.t(key, values);

function doubtText({ code, step, values }: Doubt): string {
  const words = t(code === 'sameLog' ? `gradebook:doubt.sameLog.${values.why}` : `gradebook:doubt.${code}`, values);
  return step === undefined ? words : `${words} (${t('gradebook:atStep', { step })})`;
}

// keys: drill:exam.of.*
// keys: drill:misconception.*

/** What an assignment's place is called. Exercises go by the ids of their kinds, as everywhere on the command line. */
function itemName({ items, papers }: Assignment, item: number): string {
  const paper = papers?.[item - items.length];
  return t(paper === undefined ? 'gradebook:itemName' : `gradebook:paperName.${paper.kind}`, { item: item + 1 });
}

function itemTitle(assignment: Assignment, item: number): string {
  const name = itemName(assignment, item);
  const paper = assignment.papers?.[item - assignment.items.length];
  return paper === undefined ? name : t('classview:items.one', { name, title: paperTitle(paper) });
}

function paperTitle(setting: PaperSetting): string {
  if (setting.kind === 'drills') return setting.drills.join(', ');
  const { title, exam } = setting;
  const key = `drill:exam.of.${exam.id}.name`;
  return title ?? (i18next.exists(key) ? t(key) : exam.id);
}

const weighted = (name: string, weight: number): string => t('gradebook:weighted', { name, weight });

const figure = (value: number | undefined, digits: number): string =>
  value === undefined
    ? '–'
    : new Intl.NumberFormat(i18next.language, { minimumFractionDigits: digits, maximumFractionDigits: digits }).format(value);

/** Words for a gradebook's CSV. Faults stand as `part:mode`, as everywhere on the command line. */
export function csvWords(assignment: Assignment): CsvWords {
  return {
    column: (column) => t(`gradebook:column.${column}`),
    item: (item) => itemTitle(assignment, item),
    weighted,
    naming: namingKey,
    doubt: doubtText,
    yes: t('gradebook:yes'),
    no: t('gradebook:no'),
  };
}

/** The table, the doubts and the items, for people. */
export function gradebookText({ assignment, rows, analyses, papers, counts, openDoubts }: Gradebook): string {
  const weights = differingWeights(assignment);
  const items =
    rows[0]?.cells.map(({ item }) => {
      const [name, weight] = [itemName(assignment, item), weights?.[item]];
      return weight === undefined ? name : weighted(name, weight);
    }) ?? [];
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
          t('gradebook:cli.doubt', { trainee: trainee.code, item: itemName(assignment, item), file, doubt: doubtText(doubt) }),
        ),
    ),
  );
  const analysed = analyses
    .filter(({ ticket }) => ticket === undefined)
    .map(({ item, count, difficulty, discrimination }) =>
      t('gradebook:cli.analysis', {
        item: itemName(assignment, item),
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
    ...papers.flatMap((each) => paperLines(assignment, each)),
    ...doubts,
    openDoubts === 0 ? t('gradebook:noDoubts') : t('gradebook:doubtsLeft', { count: openDoubts }),
  ].join('\n');
}

/** So many of the commonest misconceptions are told. */
const TOLD = 3;

function paperLines(
  assignment: Assignment,
  { item, count, difficulty, passedCount, kinds, misconceptions }: PaperAnalysis,
): string[] {
  const apart = kinds
    .filter(({ discrimination }) => discrimination !== undefined)
    .sort((a, b) => (a.discrimination ?? 0) - (b.discrimination ?? 0));
  const passed = passedCount === undefined ? '' : t('gradebook:cli.passed', { count: passedCount });
  const head = { item: itemTitle(assignment, item), count, difficulty: figure(difficulty, 2), passed };
  return [
    t('gradebook:cli.paper', head),
    ...(kinds.length === 0
      ? []
      : [t('gradebook:cli.kinds', { kinds: kinds.map(({ kind, right, asked }) => `${kind} ${right}/${asked}`).join(', ') })]),
    ...(apart.length === 0
      ? []
      : [
          t('gradebook:cli.apart', {
            kinds: apart.map(({ kind, discrimination }) => `${kind} ${figure(discrimination, 2)}`).join(', '),
          }),
        ]),
    ...misconceptions
      .slice(0, TOLD)
      .map(({ misconception, answers }) =>
        t('gradebook:cli.misconception', { answers: `${answers} ×`, what: t(`drill:misconception.${misconception}`) }),
      ),
  ];
}
