import type { DrillKind } from './item.ts';
import { contacts } from './kinds/contacts.ts';
import { impossible } from './kinds/impossible.ts';
import { ladder } from './kinds/ladder.ts';
import { leadsApart } from './kinds/leadsApart.ts';
import { loadCurrent } from './kinds/loadCurrent.ts';
import { loopDrop } from './kinds/loopDrop.ts';
import { nextEvent } from './kinds/nextEvent.ts';
import { pinBehind } from './kinds/pinBehind.ts';
import { reading } from './kinds/reading.ts';
import { safeOrder } from './kinds/safeOrder.ts';
import { stillPossible } from './kinds/stillPossible.ts';
import { tellsMost } from './kinds/tellsMost.ts';
import { vaSum } from './kinds/vaSum.ts';
import { whichFault } from './kinds/whichFault.ts';

/** Every kind of drill, in the order in which they are listed. */
export const DRILL_KINDS: readonly DrillKind[] = [
  reading,
  leadsApart,
  contacts,
  pinBehind,
  nextEvent,
  stillPossible,
  tellsMost,
  whichFault,
  impossible,
  safeOrder,
  loopDrop,
  loadCurrent,
  vaSum,
  ladder,
];
