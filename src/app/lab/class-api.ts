/** What the instructor's page asks of the host. */
import { z } from 'zod';
import { CAUTIONS, type Classroom, classSchema, type Pins, pinsSchema } from '../../classroom/room.ts';
import { ask, askFor } from './api.ts';

const tokenAnswer = z.object({ token: z.string() });
const putUpAnswer = z.object({ id: z.string(), cautions: z.array(z.enum(CAUTIONS)) });
const handedAnswer = z.object({ assignment: z.unknown(), submissions: z.array(z.unknown()) });

/** Everything that was handed in at one assignment. */
export type Handed = z.infer<typeof handedAnswer>;

const at = (path: string) => `/api/instructor/${path}`;
const one = (code: string) => at(`trainees/${encodeURIComponent(code)}`);
const work = (id: string) => at(`assignments/${encodeURIComponent(id)}`);

/** @throws Refused */
export async function enterClass(password: string): Promise<string> {
  return (await askFor(tokenAnswer, at('sign-in'), { method: 'POST', body: { password } })).token;
}

/** All that wants the instructor's token; each throws Refused. */
export interface ClassApi {
  readonly token: string;
  readonly room: () => Promise<Classroom>;
  readonly signOut: () => Promise<unknown>;
  readonly putRoster: (csv: string) => Promise<Pins>;
  readonly newPin: (code: string) => Promise<Pins>;
  readonly exportOne: (code: string) => Promise<string>;
  readonly eraseOne: (code: string) => Promise<unknown>;
  readonly putUp: (assignment: unknown) => Promise<z.infer<typeof putUpAnswer>>;
  readonly takeDown: (id: string) => Promise<unknown>;
  readonly pause: (paused: boolean) => Promise<unknown>;
  readonly extend: (assignment: string, minutes: number, trainee?: string) => Promise<unknown>;
  readonly handed: (id: string) => Promise<Handed>;
  readonly csv: (id: string) => Promise<string>;
}

export function classApi(token: string): ClassApi {
  const post = (path: string, body?: unknown) => ask(path, { method: 'POST', token, ...(body === undefined ? {} : { body }) });
  return {
    token,
    room: () => askFor(classSchema, at('class'), { token }),
    signOut: () => post(at('sign-out')),
    putRoster: (csv) => askFor(pinsSchema, at('roster'), { method: 'POST', token, body: { csv } }),
    newPin: (code) => askFor(pinsSchema, `${one(code)}/pin`, { method: 'POST', token }),
    exportOne: async (code) => (await ask(one(code), { token })).text(),
    eraseOne: (code) => ask(one(code), { method: 'DELETE', token }),
    putUp: (body) => askFor(putUpAnswer, at('assignments'), { method: 'POST', token, body }),
    takeDown: (id) => ask(work(id), { method: 'DELETE', token }),
    pause: (paused) => post(at('pause'), { paused }),
    extend: (assignment, minutes, trainee) =>
      post(at('extend'), { assignment, minutes, ...(trainee === undefined ? {} : { trainee }) }),
    handed: (id) => askFor(handedAnswer, `${work(id)}/submissions`, { token }),
    csv: async (id) => (await ask(`${work(id)}/gradebook.csv`, { token })).text(),
  };
}
