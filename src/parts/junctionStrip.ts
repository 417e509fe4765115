import { z } from 'zod';
import { definePart } from './part.ts';

const SCREWS = ['1', '2', '3', '4', '5', '6'] as const;

/** A strip of six screws where cables meet: nothing in it but metal. What the screws serve for is the rig's, in `labels`. */
export const junctionStrip = definePart({
  kind: 'junctionStrip',
  section: 'cable',
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
