import type { BenchView, StepView } from '../../attempt/view.ts';
import { KNOWN_SOURCE_VOLTS } from '../../score/required.ts';

/** The ticket that the guide goes through. */
export const GUIDED_TICKET = 'quietAfterTheStorm';

/** The switch that the guide measures across, the part that lifts it, and what else the guide speaks of, by their ids on the rig. */
export const SWITCH = 'floatSwitch';
export const CAUSE = { target: 'drainPan', mode: 'full' } as const;
export const ENDS = [`${SWITCH}.a`, `${SWITCH}.b`] as const;
export const CLOSET = 'furnace';
export const OUTSIDE = 'outdoor';

/** What the guide's ideas ask of an attempt. All of it is read off the view. */
export interface Facts {
  /** Step that showed the control voltage across the switch. */
  readonly measured: number | undefined;
  /** Step that showed the water. */
  readonly seen: number | undefined;
  readonly named: boolean;
  readonly namedRight: boolean;
  readonly repaired: boolean;
  /** A sound part was replaced. */
  readonly replacedOther: boolean;
  readonly heardBlower: boolean;
  readonly heardCompressor: boolean;
}

function across(step: StepView): boolean {
  const ends = [step.red, step.black];
  return ENDS.every((end) => ends.includes(end));
}

function showsLive(step: StepView): boolean {
  const { reading } = step;
  return reading?.kind === 'number' && reading.unit === 'V~' && Math.abs(reading.value) >= KNOWN_SOURCE_VOLTS;
}

/**
 * Whether a part was seen or heard to run from a step on. A change is noticed once: whoever goes back to what runs on notices nothing
 * new, and hears it all the same.
 */
function witnessed(view: BenchView, from: number, id: string, running: string): boolean {
  const place = view.parts.find((each) => each.id === id)?.place;
  let known: number | string | undefined;
  return view.steps.some((step, index) => {
    known = step.noticed.findLast((each) => each.part === id && each.key === 'running')?.value ?? known;
    return index >= from && step.place === place && known === running;
  });
}

export function factsOf(view: BenchView): Facts {
  const { steps } = view;
  const naming = steps.find((step) => step.action.name === 'name')?.action;
  const replaced = steps.flatMap(({ action }) => (action.name === 'replace' ? [action.target] : []));
  // Only what is heard after both counts as proof.
  const from = Math.max(
    steps.findLastIndex((step) => step.action.name === 'replace'),
    steps.findIndex((step) => step.action.name === 'name'),
  );
  const repaired = replaced.includes(CAUSE.target);
  return {
    measured: steps.find((step) => across(step) && showsLive(step))?.number,
    seen: steps.find((step) => step.noticed.some((each) => each.part === CAUSE.target && each.value === CAUSE.mode))?.number,
    named: naming !== undefined,
    namedRight:
      naming?.name === 'name' && naming.target === CAUSE.target && naming.mode === CAUSE.mode && naming.also === undefined,
    repaired,
    replacedOther: replaced.some((target) => target !== CAUSE.target),
    heardBlower: repaired && witnessed(view, from, 'blower', 'cool'),
    heardCompressor: repaired && witnessed(view, from, 'compressor', 'run'),
  };
}
