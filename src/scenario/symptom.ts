import type { Bench } from '../attempt/bench.ts';
import { signsOf } from '../attempt/notices.ts';
import { heatInto } from '../world/room.ts';
import { NONE_BTU, shortCycles } from './cycling.ts';

/** What a customer calls it, from what they can tell by living there. */
export const SYMPTOMS = [
  'blank',
  'shortCycles',
  'noHeat',
  'littleHeat',
  'noCooling',
  'littleCooling',
  'heatsByItself',
  'coolsByItself',
  'chatters',
  'nothingBlows',
  'blowsByItself',
  'runsByItself',
  'otherwise',
] as const;
export type Symptom = (typeof SYMPTOMS)[number];

/** What is heard meanwhile. */
export const HEARD = ['nothing', 'air', 'something'] as const;
export type Heard = (typeof HEARD)[number];

/** Less than this share of what a sound system brings is little. */
const LITTLE_SHARE = 0.75;

interface Living {
  /** Into each room, Btu/h. */
  readonly heat: readonly number[];
  readonly blank: boolean;
  readonly chatters: boolean;
  readonly air: boolean;
  /** Parts that are heard to run. */
  readonly running: number;
}

function living(bench: Bench): Living {
  const { world } = bench;
  const { parts, rig } = world.assembly;
  const signs = parts.flatMap((part) => signsOf(bench, part));
  const movers = new Set(rig.rooms.flatMap((room) => room.sources.flatMap(({ air }) => air ?? [])));
  const runs = (part: (typeof parts)[number]) =>
    signsOf(bench, part).some((sign) => sign.key === 'running' && !STILL.has(sign.value));
  return {
    heat: rig.rooms.map((_, room) => heatInto(world, room)),
    blank: signs.some((sign) => sign.key === 'display' && sign.value === 'blank'),
    chatters: signs.some((sign) => sign.key === 'chatter' && sign.value === 1),
    air: parts.some((part) => movers.has(part.id) && runs(part)),
    running: parts.filter(runs).length,
  };
}

/** Values of the sign `running` that are standing still. */
const STILL: ReadonlySet<string | number> = new Set(['off', 'hum', 0]);

/**
 * What the customer would call it, and what they hear: the end of their story beside what a sound system would do. Both benches stand at
 * that end, and are left there; half an hour is lived on to hear whether it starts again and again.
 */
export function symptomOf(faulty: Bench, sound: Bench): { readonly symptom: Symptom; readonly heard: Heard } {
  const is = living(faulty);
  const should = living(sound);
  const heard = is.air ? 'air' : is.running > 0 ? 'something' : 'nothing';
  if (!is.blank && shortCycles(faulty, sound)) return { symptom: 'shortCycles', heard };
  return { symptom: symptom(is, should), heard };
}

function symptom(is: Living, should: Living): Symptom {
  if (is.blank && !should.blank) return 'blank';
  for (const [room, wanted] of should.heat.entries()) {
    const got = is.heat[room] ?? 0;
    const share = got / wanted;
    if (wanted > NONE_BTU) {
      if (got < NONE_BTU) return 'noHeat';
      if (share < LITTLE_SHARE) return 'littleHeat';
    } else if (wanted < -NONE_BTU) {
      if (got > -NONE_BTU) return 'noCooling';
      if (share < LITTLE_SHARE) return 'littleCooling';
    } else if (got > NONE_BTU) return 'heatsByItself';
    else if (got < -NONE_BTU) return 'coolsByItself';
  }
  if (is.chatters && !should.chatters) return 'chatters';
  if (is.air !== should.air) return is.air ? 'blowsByItself' : 'nothingBlows';
  return is.running > should.running ? 'runsByItself' : 'otherwise';
}
