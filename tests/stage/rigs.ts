import type { Action } from '../../src/attempt/actions.ts';
import { type Attempt, begin, perform, viewOf } from '../../src/attempt/attempt.ts';
import type { RigData } from '../../src/rig/schema.ts';
import { library } from '../scenario/shipped.ts';

/** Somewhere to stand in a sound rig: a place with its covers shut or off, and what comes off its base there. */
export interface RigStand {
  readonly name: string;
  readonly rig: RigData;
  readonly place: string;
  readonly attempt: Attempt;
}

/** A sound rig with nobody's complaint. */
function soundAttempt(rig: RigData): Attempt {
  const job = { id: rig.id, rig: rig.id, faults: [], weather: {}, complaint: { history: [], observed: [], works: [] } };
  return begin(job, rig);
}

function standing(rig: RigData, name: string, place: string, ...actions: readonly Action[]): RigStand {
  const attempt = soundAttempt(rig);
  if (place !== rig.start) perform(attempt, { name: 'walk', to: place });
  for (const action of actions) {
    const outcome = perform(attempt, action);
    if (!outcome.ok) throw new Error(`${name}: ${JSON.stringify(action)} refused: ${outcome.refusal.code}`);
  }
  return { name: `${rig.id}: ${name}`, rig, place: viewOf(attempt).place, attempt };
}

/** Every place of a rig, shut and open, and each removable body pulled, turned and on the mat. */
export function standsOf(rig: RigData): RigStand[] {
  const bodies = viewOf(soundAttempt(rig)).parts.filter((part) => part.body !== undefined);
  return rig.places.flatMap(({ id: place }): RigStand[] => {
    const covers = rig.covers.filter((cover) => cover.place === place);
    const opened = covers.map((cover): Action => ({ name: 'cover', cover: cover.id, open: true }));
    const here = bodies.filter((body) => body.place === place);
    return [
      standing(rig, `${place}, shut`, place),
      ...(opened.length === 0 ? [] : [standing(rig, `${place}, open`, place, ...opened)]),
      ...here.flatMap(({ id: part }): RigStand[] => [
        standing(rig, `${place}, ${part} pulled`, place, { name: 'pull', part }),
        standing(rig, `${place}, ${part} turned`, place, { name: 'pull', part }, { name: 'turn', part }),
        ...(rig.places.some(({ id }) => id === 'mat')
          ? [standing(rig, `mat, ${part} on it`, place, { name: 'pull', part }, { name: 'mat', part })]
          : []),
      ]),
    ];
  });
}

export const ALL_STANDS: readonly RigStand[] = [...library.rigs.values()].flatMap(standsOf);

/** Those where everything in the place can be reached. */
export const OPEN_STANDS: readonly RigStand[] = ALL_STANDS.filter(
  (stand) => !stand.name.endsWith(', shut') || !ALL_STANDS.some((other) => other.name === stand.name.replace(/shut$/, 'open')),
);
