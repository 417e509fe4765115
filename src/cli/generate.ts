import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import type { RigData } from '../rig/schema.ts';
import { drawTickets, type Made, type Rejection, sameness, type Wishes } from '../scenario/generate.ts';
import type { Grade } from '../scenario/grade.ts';
import type { Skill } from '../scenario/skills.ts';
import type { Random } from '../scenario/variant.ts';

export interface Order {
  readonly rigs: readonly RigData[];
  readonly skill: Skill | undefined;
  readonly grade: Grade | undefined;
  readonly count: number;
  readonly seed: number;
}

export interface Generated {
  readonly made: readonly Made[];
  readonly rejected: ReadonlyMap<Rejection | 'twice', number>;
  /** Of the processor, for all of it. */
  readonly seconds: number;
}

/** Draws for each ticket that is wanted, before the wish is given up. */
const MOST_DRAWS = 60;
/** Houses of each rig in an order of many, and the most tickets from one: with fewer houses it is quicker, and the tickets are more alike. */
const HOUSES = 3;
const MOST_PER_HOUSE = 50;

/** Random numbers from a seed: xoroshiro128+ (Blackman and Vigna). */
export function seeded(seed: number): Random {
  const generator = xoroshiro128plus(seed);
  return () => uniformFloat64(generator);
}

/** Draws tickets until there are as many as were asked for, spread over the rigs in turn; the same order gives the same tickets. */
export function generate({ rigs, skill, grade, count, seed }: Order, tell: (made: Made) => void = () => {}): Generated {
  const began = process.cpuUsage();
  const rejected = new Map<Rejection | 'twice', number>();
  const seen = new Set<string>();
  const made: Made[] = [];
  const perVariant = Math.min(MOST_PER_HOUSE, Math.max(1, Math.ceil(count / rigs.length / HOUSES)));
  const wishes: Wishes = { skill, grade, perVariant };
  const shelves = rigs.map((rig, index) =>
    drawTickets(rig, seeded(seed * 1000 + index), wishes, (job) => `made${seed}${rig.id.slice(0, 12)}${job}`),
  );
  for (let draw = 0; made.length < count && draw < count * MOST_DRAWS; draw++) {
    const next = shelves[draw % shelves.length]?.next().value;
    if (!next) break;
    if ('rejected' in next) {
      rejected.set(next.rejected, (rejected.get(next.rejected) ?? 0) + 1);
      continue;
    }
    const key = sameness(next.made);
    if (seen.has(key)) {
      rejected.set('twice', (rejected.get('twice') ?? 0) + 1);
      continue;
    }
    seen.add(key);
    made.push(next.made);
    tell(next.made);
  }
  const used = process.cpuUsage(began);
  return { made, rejected, seconds: (used.user + used.system) / 1e6 };
}

export function writeTickets(folder: string, made: readonly Made[]): void {
  mkdirSync(folder, { recursive: true });
  for (const { ticket } of made) writeFileSync(join(folder, `${ticket.id}.json`), `${JSON.stringify(ticket, undefined, 2)}\n`);
}
