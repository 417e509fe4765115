/** A gradebook's keys in words. */
import type { Assignment } from '../../classroom/assignment.ts';
import type { Doubt } from '../../classroom/doubts.ts';
import type { CsvWords } from '../../classroom/gradebookCsv.ts';
import { paperTitle } from '../paper-words.ts';
import { hasWords, namingText, t } from '../words.ts';

/** What a refusal names is not known here: only that it was refused. */
const BLANK = Object.fromEntries(['part', 'cover', 'wire', 'from', 'to', 'step', 'most'].map((name) => [name, '…']));

function valuesIn({ code, values }: Doubt): Readonly<Record<string, unknown>> {
  if (code === 'otherRig') return { rig: t(`rig:name.${values.rig}`) };
  if (code !== 'refused') return values;
  const key = `refusal:${values.reason}`;
  return { reason: hasWords(key) ? t(key, BLANK) : t('gradebook:openWatch') };
}

/** Why a submission is not simply believed, and at which step. */
export function doubtText(doubt: Doubt): string {
  const { code, step, values } = doubt;
  const words = t(code === 'sameLog' ? `gradebook:doubt.sameLog.${values.why}` : `gradebook:doubt.${code}`, valuesIn(doubt));
  return step === undefined ? words : `${words} (${t('gradebook:atStep', { step })})`;
}

/** What an assignment's place is, with its number: all are counted together. */
export function itemName({ items, papers }: Assignment, item: number): string {
  const paper = papers?.[item - items.length];
  return t(paper === undefined ? 'gradebook:itemName' : `gradebook:paperName.${paper.kind}`, { item: item + 1 });
}

/** The same with the title of its exercises or its exam. */
export function itemTitle(assignment: Assignment, item: number): string {
  const name = itemName(assignment, item);
  const paper = assignment.papers?.[item - assignment.items.length];
  return paper === undefined ? name : t('classview:items.one', { name, title: paperTitle(paper) });
}

/** Who it is: the name, and the code where there is none. */
export const nameOf = ({ code, name }: { readonly code: string; readonly name: string }): string => name || code;

/** The table as the page tells it; namings in words too, since it is read by people. */
export function csvWords(assignment: Assignment): CsvWords {
  return {
    column: (column) => t(`gradebook:column.${column}`),
    item: (item) => itemTitle(assignment, item),
    weighted: (name, weight) => t('gradebook:weighted', { name, weight }),
    naming: namingText,
    doubt: doubtText,
    yes: t('gradebook:yes'),
    no: t('gradebook:no'),
  };
}
