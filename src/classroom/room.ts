/** What an instructor's browser and the lab host say to each other; see host/instructor.ts for what is asked where. */
import { z } from 'zod';
import { codeSchema } from './assignment.ts';
import { tokenSchema } from './protocol.ts';

export const instructorSignInSchema = z.strictObject({ password: z.string().min(1).max(200) });

/** Columns: code, name, pin; a PIN that is missing is made. */
export const rosterSchema = z.strictObject({ csv: z.string().min(1).max(1_000_000) });
export const pauseSchema = z.strictObject({ paused: z.boolean() });
/** For one trainee's attempts at an assignment, or for everybody's where none is named. */
export const extendSchema = z.strictObject({
  assignment: codeSchema,
  trainee: codeSchema.optional(),
  minutes: z.number().min(1).max(1440),
});

/** On `/api/instructor/live`, first and only. */
export const instructorHelloSchema = z.strictObject({ kind: z.literal('hello'), token: tokenSchema });

/** A trainee as the instructor sees them. */
export const seatSchema = z.strictObject({
  trainee: codeSchema,
  name: z.string(),
  connected: z.boolean(),
  /** What is open on their screen. */
  at: z
    .strictObject({
      assignment: codeSchema,
      item: z.int(),
      number: z.int(),
      /** At a ticket steps that were taken, at a paper choices that were made. */
      steps: z.int(),
      /** At a paper: the question that is on the screen, from 1, and how many there are. */
      question: z.strictObject({ at: z.int(), of: z.int() }).optional(),
      phase: z.enum(['working', 'named', 'closed']),
      secondsLeft: z.number().optional(),
      /** Since the last step, seconds. */
      idleSeconds: z.number(),
      /** Worked out by and by: faults that still fit after so many steps, and since when nothing was learnt, seconds. */
      suspects: z.strictObject({ steps: z.int(), left: z.int(), atStart: z.int(), stuckSeconds: z.number() }).optional(),
    })
    .optional(),
});
export type Seat = z.infer<typeof seatSchema>;

export const toInstructorSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('room'), paused: z.boolean(), seats: z.array(seatSchema) }),
  z.strictObject({ kind: z.literal('signedOut') }),
]);
export type ToInstructor = z.infer<typeof toInstructorSchema>;

export const CAUTIONS = ['shipped', 'notGraded'] as const;
export type Caution = (typeof CAUTIONS)[number];

/** The answer to `GET /api/instructor/class`. */
export const classSchema = z.strictObject({
  code: z.string(),
  /** Where the host is found on the network, as `http://192.168.1.20:8780`. */
  addresses: z.array(z.string()),
  paused: z.boolean(),
  trainees: z.array(z.strictObject({ code: codeSchema, name: z.string() })),
  assignments: z.array(
    z.strictObject({
      id: codeSchema,
      title: z.string(),
      items: z.int(),
      /** Submissions there are. */
      finished: z.int(),
      /** Exercises and exams. */
      papers: z.int(),
      /** What an instructor should know of it: `shipped`: answers to its tickets stand in the app that every browser has. */
      cautions: z.array(z.enum(CAUTIONS)),
    }),
  ),
});
export type Classroom = z.infer<typeof classSchema>;

/** PINs that were made, to be handed out: the host keeps only their hashes. */
export const pinsSchema = z.strictObject({
  added: z.int(),
  changed: z.int(),
  pins: z.array(z.strictObject({ code: codeSchema, name: z.string(), pin: z.string() })),
});
export type Pins = z.infer<typeof pinsSchema>;
