import type { Item } from '../../drills/item.ts';
import type { Question } from '../../drills/paper.ts';
import { engineAlone } from '../engine/engine.ts';
import { rigs } from '../library.ts';

/** Draws a paper's question in the page's worker; null where none of its systems has anything to ask. @throws when the worker has died */
export async function drawQuestion({ kind, draws }: Question): Promise<Item | null> {
  for (const { rig, number } of draws) {
    const found = rigs.get(rig);
    const item = found && (await engineAlone().ask('drill', { kind: kind.id, number, rig: found }));
    if (item) return item;
  }
  return null;
}
