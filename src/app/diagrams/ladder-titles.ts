import type { Assembly } from '../../rig/assemble.ts';
import type { Ladder } from '../../rig/ladder.ts';
import { number, partName, t } from '../words.ts';
import { labelAt } from './labels.ts';

/** A title for each ladder, no two alike: of several between the same lines, each has its number. */
export function ladderTitles(assembly: Assembly, ladders: readonly Ladder[]): string[] {
  const titles = ladders.map(({ supply, hot, common }) => {
    const [from, to] = [labelAt(assembly, hot), labelAt(assembly, common)];
    // A supply that prints nothing inside it is called by its name alone.
    return from === '' || to === '' ? partName(supply) : t('diagram:circuit', { part: partName(supply), hot: from, common: to });
  });
  return titles.map((title, index) => {
    const same = titles.flatMap((each, place) => (each === title ? [place] : []));
    return same.length === 1 ? title : `${title} (${number(same.indexOf(index) + 1)})`;
  });
}
