import type { PaperSetting } from '../../classroom/assignment.ts';
import type { Paper } from '../../classroom/papers.ts';
import { hasWords, number, percent, t } from '../words.ts';

// keys: drill:exam.of.*, drill:kind.*

/** An exam's own title, or what a paper is. */
export function paperTitle(setting: PaperSetting): string {
  if (setting.kind === 'drills') return t('take:paper.drills');
  const shipped = `drill:exam.of.${setting.exam.id}.name`;
  return setting.title ?? (hasWords(shipped) ? t(shipped) : t('take:paper.exam'));
}

/** What a paper asks for. */
export function paperAbout({ setting, minutes = 0 }: Paper): string {
  if (setting.kind === 'exam')
    return t('take:paper.examRules', {
      items: number(setting.exam.items),
      minutes: number(minutes),
      pass: percent(setting.exam.pass),
    });
  const kinds = [...new Set(setting.drills)].map((kind) => t(`drill:kind.${kind}.name`)).join(' · ');
  return t('take:paper.kinds', { count: setting.count, kinds });
}

/** Points of 100, to the tenth. */
export const pointsText = (points: number): string => number(points, Number.isInteger(points) ? 0 : 1);
