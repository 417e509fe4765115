import { act, moveHands } from '../attempt/act.ts';
import type { Action, ActionOf } from '../attempt/actions.ts';
import type { Bench } from '../attempt/bench.ts';
import { carries } from '../attempt/doing/measuring.ts';
import { measure } from '../attempt/measure.ts';
import { kindOf } from '../attempt/registry.ts';
import type { Reading } from '../meter/read.ts';
import { endPoint } from '../rig/points.ts';
import { alike, leadsTo, type PossibleReading } from './readings.ts';
import type { Stand } from './route.ts';
import { goBack, takeSnapshot } from './snapshot.ts';

/**
 * How often the display is looked at, seconds: as long as the shortest wait that a hand can ask for, so that whoever goes this way sees the
 * same. And for how long: a flame that is lit for a few seconds at a time, try after try, is met by then; common practice, no source.
 */
const LOOK_SECONDS = 15;
const LONGEST_SECONDS = 300;

/**
 * Microamps with the meter in series: with the power off the wire comes off, the meter goes between it and its terminal, the power comes
 * back and the display is watched. Only for the wire of a part whose current is that small; undefined where it tells nothing.
 * @param stand isolated, so that nothing is live while the meter is put in
 */
export function seriesReading(
  truth: Bench,
  twins: readonly Bench[],
  stand: Stand,
  lift: ActionOf<'lift'>,
): PossibleReading | undefined {
  const { assembly } = truth.world;
  const wire = assembly.wireById.get(lift.wire);
  const terminal = wire?.data[lift.end];
  if (stand.live || !wire || terminal === undefined || !carries(truth, 'microampsDc')) return undefined;
  if (!assembly.parts.some((part) => part.kind.microamps === true && [wire.fromPart, wire.toPart].includes(part.index)))
    return undefined;
  const planned = plan(truth, stand, lift, terminal);
  if (!planned) return undefined;
  const homes = twins.map((twin) => takeSnapshot(twin, true));
  for (const twin of twins) for (const action of planned.actions) act(twin, action);
  let best: { readonly outcomes: Int32Array; readonly wait: number } | undefined;
  for (let wait = LOOK_SECONDS; wait <= LONGEST_SECONDS; wait += LOOK_SECONDS) {
    const readings = twins.flatMap((twin): readonly Reading[] => {
      act(twin, { name: 'wait', seconds: LOOK_SECONDS });
      const reading = measure(twin);
      return reading ? [reading] : [];
    });
    const outcomes = readings.length === twins.length ? alike(readings) : undefined;
    if (outcomes && (!best || countOf(outcomes) > countOf(best.outcomes))) best = { outcomes, wait };
  }
  twins.forEach((twin, index) => {
    const home = homes[index];
    if (home) goBack(twin, home);
  });
  return (
    best && {
      actions: [...planned.actions, { name: 'wait', seconds: best.wait }],
      seconds: planned.seconds + best.wait,
      outcomes: best.outcomes,
    }
  );
}

const countOf = (outcomes: Int32Array): number => new Set(outcomes).size;

/** Wire off, meter in, power on; undefined where a hand cannot do that from here. The bench is left as it was. */
function plan(
  truth: Bench,
  stand: Stand,
  lift: ActionOf<'lift'>,
  terminal: string,
): { readonly actions: readonly Action[]; readonly seconds: number } | undefined {
  const { parts, partById } = truth.world.assembly;
  const home = takeSnapshot(truth, true);
  const actions: Action[] = [];
  let seconds = 0;
  let possible = true;
  const go = (action: Action): void => {
    possible &&= kindOf(action).refusal(truth, action) === undefined;
    if (!possible) return;
    seconds += kindOf(action).seconds(truth, action);
    moveHands(truth, action);
    actions.push(action);
  };
  go(lift);
  for (const action of leadsTo(truth, 'microampsDc', endPoint(lift.wire, lift.end), terminal)) go(action);
  for (const part of parts) {
    const by = part.kind.bypass;
    if (!by || part.data.cover === undefined || !stand.covers.includes(part.data.cover)) continue;
    go({ name: 'operate', part: part.id, control: by.control, position: by.on });
  }
  for (const id of stand.isolate ?? []) {
    const by = partById.get(id)?.kind.isolator;
    if (by) go({ name: 'operate', part: id, control: by.control, position: by.on });
  }
  goBack(truth, home);
  return possible ? { actions, seconds } : undefined;
}
