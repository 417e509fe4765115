import { z } from 'zod';
import { definePart, type PartKind, type Section } from './part.ts';

/** A row of screws where wires meet, with nothing behind it but metal. @param labels what is printed where it is not the screw's id */
export function rowOfScrews(
  kind: string,
  section: Section,
  replaceMinutes: number,
  ids: readonly string[],
  labels: Readonly<Record<string, string>> = {},
): PartKind {
  return definePart({
    kind,
    section,
    strip: ids,
    parameters: z.strictObject({}),
    terminals: ids.map((id) => ({ id, label: labels[id] ?? id })),
    branches: [],
    modes: [],
    replaceMinutes,
    initial: () => ({ due: Number.POSITIVE_INFINITY }),
    conduct() {},
    signs: () => [],
  });
}

/** A row of screws on a board, one for each letter. */
export const terminalStrip = rowOfScrews('terminalStrip', 'equipment', 15, ['R', 'W', 'Y', 'G', 'C']);

/** The low-voltage screws of a heat pump's air handler, where the thermostat's and the outdoor unit's cables meet; W goes to the heaters. */
export const airHandlerStrip = rowOfScrews('airHandlerStrip', 'equipment', 30, ['R', 'C', 'Y', 'G', 'O', 'W2', 'E', 'W']);

/** The low-voltage terminal strip of a packaged unit with two stages; X is spare. */
export const unitStrip = rowOfScrews('unitStrip', 'equipment', 30, ['R', 'C', 'W1', 'W2', 'Y1', 'Y2', 'G', 'X']);

/** A strip of six screws where cables meet. What the screws serve for is the rig's, in `labels`. */
export const junctionStrip = rowOfScrews('junctionStrip', 'cable', 20, ['1', '2', '3', '4', '5', '6']);

/** A thermostat's sub-base: screws for the cable in front of the sockets. */
export const subbase = rowOfScrews('subbase', 'thermostat', 15, ['R', 'W', 'Y', 'G', 'C']);

/** The heat pump thermostat's sub-base. */
export const heatPumpSubbase = rowOfScrews('heatPumpSubbase', 'thermostat', 15, ['R', 'C', 'Y', 'G', 'O', 'W2', 'E'], { O: 'O/B' });

/** The two-stage thermostat's sub-base: seven screws for the cable and a spare one. */
export const twoStageSubbase = rowOfScrews('twoStageSubbase', 'thermostat', 15, ['R', 'C', 'W1', 'W2', 'Y1', 'Y2', 'G', 'X']);
