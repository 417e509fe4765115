import { z } from 'zod';
import { assignmentSchema } from '../../src/classroom/assignment.ts';
import { gradebookFileSchema } from '../../src/classroom/gradebookFile.ts';
import { overrulesSchema } from '../../src/classroom/overrules.ts';
import { submissionSchema } from '../../src/classroom/submission.ts';
import { rigSchema } from '../../src/rig/schema.ts';
import { ticketSchema } from '../../src/scenario/ticket.ts';

/** JSON Schema files by path, made from what reads the files, so that an editor completes and checks them. */
export const JSON_SCHEMAS: Readonly<Record<string, string>> = {
  'scenarios/schemas/rig.json': schemaText(rigSchema),
  'scenarios/schemas/ticket.json': schemaText(ticketSchema),
  'scenarios/schemas/assignment.json': schemaText(assignmentSchema),
  'scenarios/schemas/submission.json': schemaText(submissionSchema),
  'scenarios/schemas/gradebook.json': schemaText(gradebookFileSchema),
  'scenarios/schemas/overrules.json': schemaText(overrulesSchema),
};

function schemaText(schema: z.ZodType): string {
  return `${JSON.stringify(z.toJSONSchema(schema, { io: 'input', unrepresentable: 'any' }), undefined, 2)}\n`;
}
