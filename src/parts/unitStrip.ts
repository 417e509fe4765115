import { z } from 'zod';
import { definePart } from './part.ts';

const SCREWS = ['R', 'C', 'W1', 'W2', 'Y1', 'Y2', 'G', 'X'] as const;

/** The low-voltage terminal strip of a packaged unit with two stages; X is spare. */
export const unitStrip = definePart({
  kind: 'unitStrip',
  section: 'equipment',
  strip: SCREWS,
  parameters: z.strictObject({}),
  terminals: SCREWS.map((id) => ({ id, label: id })),
  branches: [],
  modes: [],
  replaceMinutes: 30,
  initial: () => ({ due: Number.POSITIVE_INFINITY }),
  conduct() {},
  signs: () => [],
});
