import type { Assembly } from '../../rig/assemble.ts';
import type { Ladder } from '../../rig/ladder.ts';
import { number, partName, t } from '../words.ts';
import { labelAt } from './labels.ts';

/** A title for each ladder, no two alike: of several between the same lines, each has its number. */
export function ladderTitles(assembly: Assembly, ladders: readonly Ladder[]): string[] {
  const titles = ladders.map(({ supply, hot, common }) =>
    t('diagram:circuit', { part: partName(supply), hot: labelAt(assembly, hot), common: labelAt(assembly, common) }),
  );
  return titles.map((title, index) => {
    const same = titles.flatMap((each, place) => (each === title ? [place] : []));
    return same.length === 1 ? title : `${title} (${number(same.indexOf(index) + 1)})`;
  });
}
