import type { Job } from '../attempt/job.ts';
import { type Assembly, assemble } from '../rig/assemble.ts';
import type { RigData } from '../rig/schema.ts';
import { type Field, gatherField } from './field.ts';
import { goBack, type Snapshot, takeSnapshot } from './snapshot.ts';

/** A ticket's suspects as they stand when the technician arrives, gathered once and gone back to for every attempt. */
export interface Ground {
  readonly assembly: Assembly;
  readonly field: Field;
  readonly homes: readonly Snapshot[];
}

export function prepareGround(job: Job, rig: RigData): Ground {
  const assembly = assemble(rig);
  const field = gatherField(job, assembly);
  return { assembly, field, homes: field.twins.map((twin) => takeSnapshot(twin.bench)) };
}

/** The ground's field with every twin back where it stood on arrival. */
export function standOn(ground: Ground): Field {
  ground.field.twins.forEach(({ bench }, index) => {
    const home = ground.homes[index];
    if (home) goBack(bench, home);
  });
  return ground.field;
}
