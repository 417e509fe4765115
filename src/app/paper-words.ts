/** What set exercises and exams are called. */
import type { PaperSetting } from '../classroom/assignment.ts';
import { DRILL_SKILLS } from '../drills/item.ts';
import { DRILL_KINDS } from '../drills/kinds.ts';
import { hasWords, listed, t } from './words.ts';

// keys: drill:exam.of.*

/** Its own title, the shipped exam's name, or what the exercises are about. */
export function paperTitle(setting: PaperSetting): string {
  if (setting.kind === 'drills') return aboutOf(setting.drills);
  const { title, exam } = setting;
  const key = `drill:exam.of.${exam.id}.name`;
  return title ?? (hasWords(key) ? t(key) : exam.id);
}

/** What it is, with its title. */
export const paperName = (setting: PaperSetting): string => t(`drill:set.named.${setting.kind}`, { title: paperTitle(setting) });

/** One kind by its name, several by the skills that they ask for. */
function aboutOf(drills: readonly string[]): string {
  const kinds = DRILL_KINDS.filter(({ id }) => drills.includes(id));
  const [only] = kinds;
  if (only === undefined) return drills.join(', ');
  if (kinds.length === 1) return t(`drill:kind.${only.id}.name`);
  if (kinds.length === DRILL_KINDS.length) return t('drill:set.every');
  return listed(
    DRILL_SKILLS.filter((skill) => kinds.some((kind) => kind.skill === skill)).map((skill) => t(`drill:skill.${skill}`)),
  );
}
