import { z } from 'zod';
import { rigId as id } from './id.ts';
import { placeSchema } from './places.ts';

/** `part.terminal` */
const terminalRef = z.string().regex(/^[a-z][A-Za-z0-9]{0,39}\.[A-Za-z0-9]{1,20}$/, { error: 'rig.terminalRef' });
const spot = z.strictObject({ x: z.number().min(0).max(4000), y: z.number().min(0).max(4000) });

export const WIRE_COLOURS = ['red', 'white', 'yellow', 'green', 'blue', 'black', 'brown', 'orange', 'grey', 'copper'] as const;

const partSchema = z.strictObject({
  id,
  kind: z.string().min(1).max(40),
  place: id,
  /** Cover that hides it when closed. */
  cover: id.optional(),
  at: spot,
  /** What this maker prints at its terminals, where it is not what the kind has. */
  labels: z.record(z.string().max(20), z.string().max(12)).default({}),
  /** Numbers of flashes by meaning, as this maker prints them on the door, where they are not the kind's own. */
  codes: z.record(z.string().max(40), z.int().min(1).max(12)).default({}),
  /** The removable body that carries it: it goes where that goes, and shows when that is turned over. */
  rides: id.optional(),
  params: z.record(z.string().max(40), z.union([z.number(), z.string().max(80), z.boolean()])).default({}),
  /** Parts that act on this one mechanically, by role. */
  links: z.record(z.string().max(40), id).default({}),
  /** Multiplies every mode's weight: how likely a suspect this part is on this rig. */
  weight: z.number().min(0).max(100).default(1),
});

const wireSchema = z.strictObject({
  id,
  from: terminalRef,
  to: terminalRef,
  colour: z.enum(WIRE_COLOURS),
  awg: z.int().min(4).max(30).default(18),
  feet: z.number().min(0.05).max(1000).default(2),
  /** The jacket that it shares with others. */
  cable: id.optional(),
  /** Soldered or made up at the factory: no hand lifts it, and it does not fail. */
  fixed: z.boolean().default(false),
  /** A pin and socket between a removable body and its base: apart whenever the body is off. */
  pin: z.boolean().default(false),
  weight: z.number().min(0).max(100).default(1),
});

const roomSchema = z.strictObject({
  id,
  /** °F at the start. */
  startFahrenheit: z.number().min(-20).max(120),
  /** Heat lost per °F between inside and outside, Btu/(h·°F). */
  lossBtuPerHourFahrenheit: z.number().min(10).max(5000),
  /** Heat that warms air and furnishings by one °F, Btu/°F. */
  massBtuPerFahrenheit: z.number().min(50).max(50000),
  gainsBtuPerHour: z.number().min(-50000).max(50000).default(0),
  /** Parts whose heat comes here: by the air that another part moves, or straight from it (a radiator); `share` of it where rooms share. */
  sources: z.array(z.strictObject({ part: id, air: id.optional(), share: z.number().min(0).max(1).default(1) })).max(12),
});

export const rigSchema = z.strictObject({
  /** Where an editor finds the JSON Schema of this; nothing reads it. */
  $schema: z.string().max(200).optional(),
  format: z.literal('bellwire-rig'),
  version: z.literal(1),
  id,
  hertz: z.union([z.literal(50), z.literal(60)]),
  start: id,
  places: z.array(placeSchema).min(1).max(12),
  /** °F outside, where a ticket does not tell. */
  outdoorFahrenheit: z.number().min(-60).max(130),
  /** Rooms whose temperature is reckoned: most houses are one. */
  rooms: z.array(roomSchema).min(1).max(4),
  covers: z
    .array(
      z.strictObject({
        id,
        place: id,
        lineVoltage: z.boolean().default(false),
        /** The part that knows whether the cover is home (a door that a switch leans on). */
        panel: id.optional(),
        seconds: z.number().min(0).max(600).default(30),
        at: z.strictObject({ x: z.number(), y: z.number(), width: z.number(), height: z.number() }),
      }),
    )
    .max(20),
  parts: z.array(partSchema).min(1).max(120),
  wires: z.array(wireSchema).min(1).max(200),
  cables: z
    .array(
      z.strictObject({ id, section: z.enum(['cable', 'equipment']), picofaradsPerFoot: z.number().min(0).max(200).default(20) }),
    )
    .max(10),
});

export type RigData = z.infer<typeof rigSchema>;
export type RigPart = RigData['parts'][number];
export type RigWire = RigData['wires'][number];
