import { z } from 'zod';

/** A moment as ISO 8601 has it, with its offset from UTC. */
export const instantSchema = z.iso.datetime({ offset: true });

/** Seconds since 1970 of a moment that {@link instantSchema} has passed. It reads a text, no clock. */
export function secondsOf(instant: string): number {
  // biome-ignore lint/style/noRestrictedGlobals: it is given the moment
  return Date.parse(instant) / 1000;
}
