import { z } from 'zod';
import { ACTION_SCHEMAS } from '../attempt/actions.ts';
import { JOB_MODES, type Job } from '../attempt/job.ts';
import { METER_FUNCTIONS } from '../meter/functions.ts';
import { shapeError } from '../rig/errors.ts';
import { houseSchema } from '../rig/house.ts';
import { rubricSchema } from '../score/rubric.ts';
import { HEARD, SYMPTOMS } from './symptom.ts';

const id = z.string().regex(/^[a-z][A-Za-z0-9]{0,39}$/, { error: 'ticket.id' });

/** Ways in which the same complaint is put. */
export const VOICES = 2;

const faultSchema = z.strictObject({ target: id, mode: z.string().min(1).max(80), magnitude: z.number().default(0) });

const observedSchema = z.strictObject({
  part: id,
  sign: z.string().min(1).max(40),
  is: z.union([z.number(), z.string().max(40)]),
});

export const ticketSchema = z.strictObject({
  /** Where an editor finds the JSON Schema of this; nothing reads it. */
  $schema: z.string().max(200).optional(),
  format: z.literal('bellwire-ticket'),
  version: z.literal(1),
  id,
  rig: id,
  mode: z.enum(JOB_MODES),
  /** Points and the price of hints, where they differ from the usual. */
  rubric: rubricSchema.optional(),
  /** Where it stands in the list. */
  order: z.number().int().min(0).max(10_000),
  /** Skills that it asks for, for the page of progress; their words are in locales/. */
  skills: z.array(id).min(1).max(6).optional(),
  /** What is really wrong: one fault, or a pair where `suspects` asks for pairs. */
  faults: z.array(faultSchema).min(1).max(2),
  /** Hypotheses beyond the single lasting faults. */
  suspects: z.strictObject({ intermittents: z.boolean().optional(), pairs: z.array(faultSchema).max(4).optional() }).optional(),
  weather: z
    .strictObject({
      outdoorFahrenheit: z.number().min(-60).max(130).optional(),
      startFahrenheit: z.number().min(-20).max(120).optional(),
    })
    .default({}),
  /** How this house differs from the rig's own. */
  house: houseSchema.optional(),
  /** What this technician's meter can do; all of it where left out. */
  tools: z.array(z.enum(METER_FUNCTIONS)).min(1).max(METER_FUNCTIONS.length).optional(),
  /** What the customer says, where nobody wrote it: put together from what they can tell. */
  told: z
    .strictObject({
      symptom: z.enum(SYMPTOMS),
      heard: z.enum(HEARD),
      voice: z.int().min(1).max(VOICES),
      job: z.int().min(1).max(1_000_000),
    })
    .optional(),
  complaint: z.strictObject({
    /** What the customer did: operating, setting, waiting. */
    history: z.array(z.discriminatedUnion('name', [ACTION_SCHEMAS.operate, ACTION_SCHEMAS.set, ACTION_SCHEMAS.wait])).max(20),
    /** What they saw or heard in the end. Each suspect must make the same. */
    observed: z.array(observedSchema).min(1).max(10),
    /** What stands so when the call works again: seen after the repair, it is the proof. */
    works: z.array(observedSchema).min(1).max(6),
  }),
});

/** A service ticket: who complains of what, and the fault that is really there. */
export type Ticket = z.infer<typeof ticketSchema> & Job;

/**
 * Checks a ticket's shape. What it names on its rig is checked by `checkTicket`.
 * @throws DataError with the path inside the file
 */
export function loadTicket(json: unknown): Ticket {
  const parsed = ticketSchema.safeParse(json);
  if (parsed.success) return parsed.data;
  throw shapeError(parsed.error.issues);
}
