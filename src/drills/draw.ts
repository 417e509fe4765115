/** Items by number: whoever has the rigs draws the same ones. */
import type { RigData } from '../rig/schema.ts';
import { randomOf, shuffled } from '../scenario/random.ts';
import { choicesOf, type Offer, placesByLot } from './choices.ts';
import { type Draft, type DrillKind, flawsOf, type Item, type Share } from './item.ts';
import { drawSetting, type Setting } from './setting.ts';

/** Numbers that share a house and its story. */
export const PER_HOUSE = 24;
/** Lots cast for one number before it is left without an item. */
const TRIES = 40;
/** Drafts of one number that are looked at for one whose right choice stands where the lot would have it. */
const PATIENCE = 3;
/** Houses that are kept. */
const MOST_HOUSES = 6;

/** Draws items of any kind over these rigs. */
export interface Bank {
  /** The item of a kind and a number; undefined where that number has none. @param number 0 … 2³¹ − 1 */
  item(kind: DrillKind, number: number): Item | undefined;
}

/** Items over these rigs: the houses stand on one after another. */
export const createBank = (rigs: readonly RigData[]): Bank => bankOver((house) => rigs[house % rigs.length]);

/** @param rigAt the rig of a house, the same one each time */
export function bankOver(rigAt: (house: number) => RigData | undefined): Bank {
  const houses = new Map<number, Setting>();
  function settingOf(house: number): Setting | undefined {
    const known = houses.get(house);
    const rig = known ? undefined : rigAt(house);
    const setting = known ?? (rig && drawSetting(rig, randomOf(house)));
    if (!setting) return undefined;
    houses.delete(house);
    houses.set(house, setting);
    const [oldest] = houses.keys();
    if (houses.size > MOST_HOUSES && oldest !== undefined) houses.delete(oldest);
    return setting;
  }
  return {
    item: (kind, number) => {
      const house = Math.floor(number / PER_HOUSE);
      const setting = settingOf(house);
      if (!setting) return undefined;
      const random = randomOf(number ^ hash(kind.id));
      const own: Share = (all) =>
        shuffled(randomOf(house ^ hash(kind.id)), all).filter((_, index) => index % PER_HOUSE === number % PER_HOUSE);
      const places = placesByLot(random);
      let best: { readonly draft: Draft; readonly offer: Offer } | undefined;
      for (let tries = 0, found = 0; tries < TRIES && found < PATIENCE; tries++) {
        const draft = kind.draft(setting, random, own);
        const offer = draft && choicesOf(draft, kind.choices, places);
        if (!draft || !offer) continue;
        found += 1;
        if (best === undefined || offer.off < best.offer.off) best = { draft, offer };
        if (offer.off === 0) break;
      }
      if (!best) return undefined;
      const { draft, offer } = best;
      const { scene, ask, given = [] } = draft;
      const choices = shuffled(random, [
        { said: draft.right, misconception: undefined },
        ...offer.wrong.map(({ said, misconception }) => ({ said, misconception })),
      ]);
      const right = choices.findIndex(({ misconception }) => misconception === undefined);
      const why = [...draft.why, ...offer.wrong.flatMap((each) => each.why ?? [])];
      const marked = [...new Set([...(draft.marked ?? []), ...offer.wrong.flatMap((each) => each.marked ?? [])])];
      const item = { kind: kind.id, number, skill: kind.skill, scene, ask, given, choices, right, why, marked };
      return flawsOf(item).length === 0 ? item : undefined;
    },
  };
}

/** So that one number is not the same lots for two kinds. */
function hash(text: string): number {
  let value = 0;
  for (const letter of text) value = (Math.imul(value, 31) + letter.charCodeAt(0)) | 0;
  return value;
}
