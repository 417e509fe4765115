import type { ActiveFault, Mode } from './part.ts';

/** Whether this very mode is in force. */
export function has(site: { readonly fault: ActiveFault | undefined }, mode: string): boolean {
  return site.fault?.mode === mode;
}

/** The mode's magnitude where it is in force, else what the sound part has. */
export function magnitude(site: { readonly fault: ActiveFault | undefined }, mode: string, sound: number): number {
  return site.fault?.mode === mode ? site.fault.magnitude : sound;
}

/** Ohms of a good closed contact; common practice, no source. */
export const GOOD_CONTACT_OHMS = 0.025;

/** The usual ways of a switch that ought to be closed at rest. Weights: common practice, no source. */
export const SWITCH_MODES: readonly Mode[] = [
  { id: 'stuckOpen', weight: 1 },
  { id: 'stuckClosed', weight: 0.2 },
];
