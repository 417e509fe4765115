import { z } from 'zod';
import { METER_FUNCTIONS } from '../meter/functions.ts';
import { WIRE_ENDS } from '../rig/points.ts';

const id = z.string().min(1).max(80);
const point = z.string().min(1).max(120);

export const HINT_DEPTHS = ['where', 'kind', 'exact'] as const;
export type HintDepth = (typeof HINT_DEPTHS)[number];

/** Every action that a trainee can take, by name: the shape of its arguments. What each does and costs stands in registry.ts. */
export const ACTION_SCHEMAS = {
  walk: z.strictObject({ name: z.literal('walk'), to: id }),
  cover: z.strictObject({ name: z.literal('cover'), cover: id, open: z.boolean() }),
  operate: z.strictObject({ name: z.literal('operate'), part: id, control: id, position: id }),
  set: z.strictObject({ name: z.literal('set'), part: id, control: id, value: z.number().min(-200).max(500) }),
  pull: z.strictObject({ name: z.literal('pull'), part: id }),
  turn: z.strictObject({ name: z.literal('turn'), part: id }),
  mat: z.strictObject({ name: z.literal('mat'), part: id }),
  seat: z.strictObject({ name: z.literal('seat'), part: id }),
  meter: z.strictObject({ name: z.literal('meter'), fn: z.enum(METER_FUNCTIONS) }),
  probe: z.strictObject({ name: z.literal('probe'), lead: z.enum(['red', 'black']), at: point.nullable() }),
  clamp: z.strictObject({ name: z.literal('clamp'), around: id.nullable(), turns: z.int().min(1).max(10) }),
  jumper: z.strictObject({ name: z.literal('jumper'), from: point, to: point, on: z.boolean() }),
  lift: z.strictObject({ name: z.literal('lift'), wire: id, end: z.enum(WIRE_ENDS) }),
  land: z.strictObject({ name: z.literal('land'), wire: id, end: z.enum(WIRE_ENDS) }),
  tug: z.strictObject({ name: z.literal('tug'), wire: id }),
  unplug: z.strictObject({ name: z.literal('unplug'), part: id }),
  plug: z.strictObject({ name: z.literal('plug'), part: id }),
  look: z.strictObject({ name: z.literal('look'), part: id }),
  wait: z.strictObject({ name: z.literal('wait'), seconds: z.number().min(1).max(7200) }),
  /** Wait until something changes; the seconds that it took are kept, so that every replay waits as long. Zero asks for it to be found. */
  watch: z.strictObject({ name: z.literal('watch'), seconds: z.number().min(0).max(7200) }),
  replace: z.strictObject({ name: z.literal('replace'), target: id }),
  /** Help, at the ticket's price: where the fault may still be, which kind of reading tells most, or the exact next step. */
  hint: z.strictObject({ name: z.literal('hint'), depth: z.enum(HINT_DEPTHS) }),
  name: z.strictObject({
    name: z.literal('name'),
    target: id,
    mode: id,
    /** A second fault, on a job that asks for pairs. */
    also: z.strictObject({ target: id, mode: id }).optional(),
    evidence: z.array(z.int().min(1)).max(40),
  }),
  close: z.strictObject({ name: z.literal('close') }),
} as const;

export type ActionName = keyof typeof ACTION_SCHEMAS;
export type ActionOf<N extends ActionName> = z.infer<(typeof ACTION_SCHEMAS)[N]>;
export type Action = { [N in ActionName]: ActionOf<N> }[ActionName];
export const ACTION_NAMES = Object.keys(ACTION_SCHEMAS) as readonly ActionName[];

export const actionSchema = z.discriminatedUnion('name', [
  ACTION_SCHEMAS.walk,
  ACTION_SCHEMAS.cover,
  ACTION_SCHEMAS.operate,
  ACTION_SCHEMAS.set,
  ACTION_SCHEMAS.pull,
  ACTION_SCHEMAS.turn,
  ACTION_SCHEMAS.mat,
  ACTION_SCHEMAS.seat,
  ACTION_SCHEMAS.meter,
  ACTION_SCHEMAS.probe,
  ACTION_SCHEMAS.clamp,
  ACTION_SCHEMAS.jumper,
  ACTION_SCHEMAS.lift,
  ACTION_SCHEMAS.land,
  ACTION_SCHEMAS.tug,
  ACTION_SCHEMAS.unplug,
  ACTION_SCHEMAS.plug,
  ACTION_SCHEMAS.look,
  ACTION_SCHEMAS.wait,
  ACTION_SCHEMAS.watch,
  ACTION_SCHEMAS.replace,
  ACTION_SCHEMAS.hint,
  ACTION_SCHEMAS.name,
  ACTION_SCHEMAS.close,
]);

/** Whether two actions are the same one, whatever the order in which their fields stand. */
export function sameAction(a: Action, b: Action): boolean {
  return JSON.stringify(Object.entries(a).sort()) === JSON.stringify(Object.entries(b).sort());
}
