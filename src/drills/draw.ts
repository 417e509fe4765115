/** Items by number: whoever has the rigs draws the same ones. */
import type { RigData } from '../rig/schema.ts';
import { randomOf, shuffled } from '../scenario/random.ts';
import { type Choice, type Draft, type DrillKind, flawsOf, type Item, type Share } from './item.ts';
import { saidApart } from './said.ts';
import { drawSetting, type Setting } from './setting.ts';

/** Numbers that share a house and its story. */
export const PER_HOUSE = 24;
/** Lots cast for one number before it is left without an item. */
const TRIES = 40;
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
      for (let tries = 0; tries < TRIES; tries++) {
        const draft = kind.draft(setting, random, own);
        const choices = draft && choicesOf(draft, kind.choices);
        if (!draft || !choices) continue;
        const mixed = shuffled(random, choices);
        const right = mixed.findIndex(({ misconception }) => misconception === undefined);
        const { scene, ask, why, given = [], marked = [] } = draft;
        const item = { kind: kind.id, number, skill: kind.skill, scene, ask, given, choices: mixed, right, why, marked };
        if (flawsOf(item).length === 0) return item;
      }
      return undefined;
    },
  };
}

/** The right choice and the first wrong ones that can be told from it and from each other; undefined where there are too few. */
function choicesOf({ right, wrong }: Draft, count: number): Choice[] | undefined {
  const choices: Choice[] = [{ said: right, misconception: undefined }];
  for (const { said, misconception } of wrong) {
    if (choices.length === count) break;
    if (choices.every((each) => saidApart(each.said, said))) choices.push({ said, misconception });
  }
  return choices.length === count ? choices : undefined;
}

/** So that one number is not the same lots for two kinds. */
function hash(text: string): number {
  let value = 0;
  for (const letter of text) value = (Math.imul(value, 31) + letter.charCodeAt(0)) | 0;
  return value;
}
