/** The worker's part in drills: drawing items. */
import { bankOver } from '../../drills/draw.ts';
import type { Item } from '../../drills/item.ts';
import { DRILL_KINDS } from '../../drills/kinds.ts';
import { drawnItem } from '../../drills/paper.ts';
import type { RigData } from '../../rig/schema.ts';

let rigNow: RigData | undefined;
/** Keeps the houses, so that a house's next item is quickly drawn. */
const bank = bankOver(() => rigNow);

export function drill({
  kind: id,
  number,
  rig,
}: {
  readonly kind: string;
  readonly number: number;
  readonly rig: RigData;
}): Item | null {
  rigNow = rig;
  const kind = DRILL_KINDS.find((each) => each.id === id);
  return (kind && drawnItem(bank, kind, { number })) ?? null;
}
