import type { Paper } from '../../classroom/papers.ts';
import { number, percent, t } from '../words.ts';

// keys: drill:kind.*

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
