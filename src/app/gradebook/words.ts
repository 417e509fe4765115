/** A gradebook's keys in words. */
import type { Doubt } from '../../classroom/doubts.ts';
import type { CsvWords } from '../../classroom/gradebookCsv.ts';
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

export const itemName = (item: number): string => t('gradebook:itemName', { item: item + 1 });

/** Who it is: the name, and the code where there is none. */
export const nameOf = ({ code, name }: { readonly code: string; readonly name: string }): string => name || code;

/** The table as the page tells it; namings in words too, since it is read by people. */
export function csvWords(): CsvWords {
  return {
    column: (column) => t(`gradebook:column.${column}`),
    item: itemName,
    naming: namingText,
    doubt: doubtText,
    yes: t('gradebook:yes'),
    no: t('gradebook:no'),
  };
}
