import type { Step } from '../attempt/attempt.ts';
import type { Assembly } from '../rig/assemble.ts';

/** At least this on the display proves a meter on a known source, volts. */
export const KNOWN_SOURCE_VOLTS = 15;
/** Less than this is a dead reading of an AC circuit, which is worth nothing from a meter that was never proved, volts. */
export const DEAD_VOLTS = 5;

/** Volts that a step read; without limit where the display had no room for them. */
export function voltsRead(step: Step): number | undefined {
  const { reading } = step.observation;
  if (!reading || (reading.unit !== 'V~' && reading.unit !== 'V=')) return undefined;
  return reading.kind === 'number' ? Math.abs(reading.value) : Number.POSITIVE_INFINITY;
}

/** Whether a step read an AC circuit dead. */
export function readsDead(step: Step): boolean {
  return step.observation.reading?.unit === 'V~' && (voltsRead(step) ?? DEAD_VOLTS) < DEAD_VOLTS;
}

/** Step number of the first dead reading that was taken before the meter had shown a live one; undefined when there is none. */
export function firstUnproved(steps: readonly Step[]): number | undefined {
  for (const step of steps) {
    const volts = voltsRead(step);
    if (volts === undefined) continue;
    if (volts >= KNOWN_SOURCE_VOLTS) return undefined;
    if (readsDead(step)) return step.view.number;
  }
  return undefined;
}

/** Work that a live circuit does not allow. */
export const needsDead = (step: Step): boolean =>
  step.view.fn === 'ohms' ||
  step.view.fn === 'tone' ||
  step.view.fn === 'capacitance' ||
  step.action.name === 'lift' ||
  step.action.name === 'replace';

/**
 * Whether safe working or proof asks for a step: proving the meter on a known source, isolating and checking for absence of
 * voltage before work on a dead circuit, and putting back what was opened, lifted, jumpered or switched off.
 */
export function isRequired(assembly: Assembly, steps: readonly Step[], index: number): boolean {
  const step = steps[index];
  if (!step) return false;
  const { action } = step;
  switch (action.name) {
    case 'land':
    case 'seat':
    case 'plug':
      return true;
    case 'jumper':
      return !action.on;
    case 'cover':
      return !action.open;
    case 'operate': {
      const part = assembly.partById.get(action.part);
      if (part?.kind.section !== 'supply') return part?.kind.bypassed !== undefined && action.position === 'out';
      return action.position === 'on' || action.position === 'in' || steps.slice(index + 1).some(needsDead);
    }
    default:
      break;
  }
  const volts = voltsRead(step);
  if (volts === undefined || (action.name !== 'probe' && action.name !== 'meter')) return false;
  const earlier = steps.slice(0, index);
  if (volts >= KNOWN_SOURCE_VOLTS) return !earlier.some((each) => (voltsRead(each) ?? 0) >= KNOWN_SOURCE_VOLTS);
  const isolated = earlier.some((each) => each.action.name === 'operate' && ['off', 'out'].includes(each.action.position));
  return readsDead(step) && isolated && steps.slice(index + 1).some(needsDead) && !earlier.some(needsDead);
}
