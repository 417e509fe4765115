import { z } from 'zod';
import { definePart } from './part.ts';

const SCREWS = ['R', 'C', 'Y', 'G', 'O', 'W2', 'E', 'W'] as const;

/** The low-voltage screws of a heat pump's air handler, where the thermostat's and the outdoor unit's cables meet; W goes to the heaters. */
export const airHandlerStrip = definePart({
  kind: 'airHandlerStrip',
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
