import { METER_FUNCTIONS, type MeterFunction } from '../meter/functions.ts';
import type { Assembly } from '../rig/assemble.ts';
import type { Fault } from '../rig/faults.ts';
import type { Point } from '../rig/points.ts';
import { advance } from '../world/time.ts';
import { createWorld, settle, stateOf, type World } from '../world/world.ts';
import type { Job } from './job.ts';

/** A trainee's hands, eyes and meter in a world: everything but the log. A twin is a bench too. */
export interface Bench {
  readonly world: World;
  /** World time at which the technician arrived, seconds. */
  readonly arrived: number;
  place: string;
  fn: MeterFunction;
  /** What this technician's meter can do. */
  readonly tools: readonly MeterFunction[];
  red: Point | undefined;
  black: Point | undefined;
  clamp: string | undefined;
  turns: number;
  /** The microamps input's own fuse has opened. */
  meterFuseOpen: boolean;
  /** Last value seen or heard of each sign, by `part.key`. */
  readonly seen: Map<string, string | number>;
}

/** A world after its customer's story, with the technician standing at the start. */
export function createBench(
  assembly: Assembly,
  faults: readonly Fault[],
  job: Pick<Job, 'weather' | 'complaint' | 'tools'>,
): Bench {
  const world = createWorld(assembly, faults, job.weather);
  for (const act of job.complaint.history) {
    if (act.name === 'wait') {
      advance(world, act.seconds);
      continue;
    }
    const part = assembly.partById.get(act.part);
    const site = part && world.sites[part.index];
    if (!part?.kind.operate || !site) continue;
    part.kind.operate(site, stateOf(world, part), act.control, act.name === 'set' ? act.value : act.position);
    settle(world);
  }
  return {
    world,
    arrived: world.state.time,
    place: assembly.rig.start,
    fn: 'off',
    tools: job.tools ?? METER_FUNCTIONS,
    red: undefined,
    black: undefined,
    clamp: undefined,
    turns: 1,
    meterFuseOpen: false,
    seen: new Map(),
  };
}

/** Whether the customer's story ends as they told it. */
export function complaintHolds(bench: Bench, job: Pick<Job, 'complaint'>): boolean {
  const { world } = bench;
  return job.complaint.observed.every(({ part: id, sign, is }) => {
    const part = world.assembly.partById.get(id);
    const site = part && world.sites[part.index];
    if (!part || !site) return false;
    const found = part.kind.signs(site, stateOf(world, part)).find((candidate) => candidate.key === sign);
    return found?.value === is;
  });
}
