import { z } from 'zod';
import { definePart } from './part.ts';

const SCREWS = ['R', 'W', 'Y', 'G', 'C'] as const;

/** The row of low-voltage screws in an air handler, where the thermostat's and the outdoor unit's cables meet its own wires. */
export const lowVoltageStrip = definePart({
  kind: 'lowVoltageStrip',
  section: 'equipment',
  strip: SCREWS,
  parameters: z.strictObject({}),
  terminals: SCREWS.map((id) => ({ id, label: id })),
  branches: [],
  modes: [],
  replaceMinutes: 20,
  initial: () => ({ due: Number.POSITIVE_INFINITY }),
  conduct() {},
  signs: () => [],
});
