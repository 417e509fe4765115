import { z } from 'zod';
import { rigSchema } from '../../src/rig/schema.ts';
import { ticketSchema } from '../../src/scenario/ticket.ts';

/** JSON Schema files by path, made from what reads the files, so that an editor completes and checks them. */
export const JSON_SCHEMAS: Readonly<Record<string, string>> = {
  'scenarios/schemas/rig.json': schemaText(rigSchema),
  'scenarios/schemas/ticket.json': schemaText(ticketSchema),
};

function schemaText(schema: z.ZodType): string {
  return `${JSON.stringify(z.toJSONSchema(schema, { io: 'input', unrepresentable: 'any' }), undefined, 2)}\n`;
}
