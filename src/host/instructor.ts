/** What the instructor asks of the host over HTTP. All but signing in wants the instructor's token. */
import type { FastifyInstance, FastifyRequest } from 'fastify';
import { codeSchema } from '../classroom/assignment.ts';
import { type Classroom, extendSchema, instructorSignInSchema, type Pins, pauseSchema, rosterSchema } from '../classroom/room.ts';
import { dataError } from '../rig/errors.ts';
import { roomAddresses } from './addresses.ts';
import { instructorNames, traineeNames, tried } from './guard.ts';
import type { Host } from './host.ts';
import type { TraineeRow } from './records.ts';
import { bearerOf, checked } from './requests.ts';
import { exportOf, gradebookCsv, submissionsOf } from './results.ts';
import { type RosterRow, readRoster } from './roster.ts';
import { hashSecret, makePin, verifySecret } from './secrets.ts';

const ONE = '/api/instructor/trainees/:code';

export function instructorRoutes(app: FastifyInstance, host: Host): void {
  const { records, room, hub, attempts, papers, sessions, clock, guard } = host;

  app.post('/api/instructor/sign-in', async ({ body, ip }) => {
    const { password } = checked(instructorSignInSchema, body);
    const right = await tried(
      guard,
      instructorNames(ip),
      'password',
      async () => (await verifySecret(password, records.setting('password'))) || undefined,
    );
    if (right === undefined) throw dataError('lab.wrongPassword', 'password');
    return { token: sessions.begin(undefined) };
  });

  app.register(async (inner) => {
    inner.addHook('onRequest', async (request) => {
      const session = sessions.find(bearerOf(request));
      if (!session || session.trainee !== undefined) throw dataError('lab.signedOut', 'authorization');
    });

    inner.post('/api/instructor/sign-out', async (request) => {
      const session = sessions.find(bearerOf(request));
      if (session) sessions.end(session);
      return {};
    });

    inner.get(
      '/api/instructor/class',
      async (): Promise<Classroom> => ({
        code: host.classCode,
        addresses: roomAddresses(app.server.address()),
        paused: clock.paused(),
        trainees: records.trainees().map(({ code, name }) => ({ code, name })),
        assignments: room.assignments().map((assignment) => ({
          id: assignment.id,
          title: assignment.title,
          items: assignment.items.length,
          papers: assignment.papers?.length ?? 0,
          finished: finishedAt(assignment.id),
          cautions: room.cautions(assignment),
        })),
      }),
    );

    function finishedAt(id: string): number {
      papers.settleAll(id);
      return records.attemptsAt(id).filter(({ ended }) => ended !== null).length;
    }

    inner.post('/api/instructor/roster', { bodyLimit: 2_000_000 }, async ({ body }) =>
      takeRoster(readRoster(checked(rosterSchema, body).csv)),
    );

    async function takeRoster(rows: readonly RosterRow[]): Promise<Pins> {
      const pins: Pins['pins'] = [];
      const kept: TraineeRow[] = [];
      let added = 0;
      for (const { code, name, pin } of rows) {
        const before = records.trainee(code);
        if (!before) added += 1;
        if (before && pin === undefined) {
          kept.push({ ...before, name });
          continue;
        }
        const fresh = pin ?? makePin();
        kept.push({ code, name, pin: await hashSecret(fresh) });
        pins.push({ code, name, pin: fresh });
      }
      records.setTrainees(kept);
      return { added, changed: rows.length - added, pins };
    }

    inner.post(`${ONE}/pin`, async (request): Promise<Pins> => {
      const row = traineeOf(request);
      sessions.endAllOf(row.code);
      hub.signOut(row.code, 'ended');
      guard.right(traineeNames(row.code, '').own);
      const pin = makePin();
      records.setTrainees([{ ...row, pin: await hashSecret(pin) }]);
      return { added: 0, changed: 1, pins: [{ code: row.code, name: row.name, pin }] };
    });

    inner.get(ONE, async (request) => {
      const ids = records.assignments().map(({ id }) => id);
      return exportOf(records, clock, ids, traineeOf(request).code);
    });

    inner.delete(ONE, async (request) => {
      const { code } = traineeOf(request);
      hub.signOut(code, 'ended');
      attempts.forget(code);
      return { erased: records.erase(code) };
    });

    function traineeOf({ params }: FastifyRequest): TraineeRow {
      const { code } = params as { code: string };
      const row = codeSchema.safeParse(code).success ? records.trainee(code) : undefined;
      if (!row) throw dataError('lab.noTrainee', 'code', { code });
      return row;
    }

    inner.post('/api/instructor/assignments', { bodyLimit: 20_000_000 }, async ({ body }) => {
      const assignment = room.putUp(body);
      papers.prepare(records.trainees().map(({ code }) => code));
      return { id: assignment.id, cautions: room.cautions(assignment) };
    });

    inner.delete('/api/instructor/assignments/:id', async ({ params }) => {
      const { id } = params as { id: string };
      if (!room.takeDown(id)) throw dataError('lab.noAssignment', 'assignment', { id });
      return {};
    });

    inner.post('/api/instructor/pause', async ({ body }) => {
      const { paused } = checked(pauseSchema, body);
      hub.setPaused(paused);
      return { paused };
    });

    inner.post('/api/instructor/extend', async ({ body }) => {
      const { assignment, trainee, minutes } = checked(extendSchema, body);
      if (!room.assignment(assignment)) throw dataError('lab.noAssignment', 'assignment', { id: assignment });
      attempts.extend(assignment, trainee, minutes * 60);
      hub.tellTime(trainee);
      return {};
    });

    inner.get('/api/instructor/assignments/:id/submissions', async ({ params }) => {
      const assignment = assignmentOf(params);
      return { assignment, submissions: submissionsOf(host, assignment.id) };
    });

    inner.get('/api/instructor/assignments/:id/gradebook.csv', async ({ params }, reply) => {
      const assignment = assignmentOf(params);
      const codes = records.trainees().map(({ code }) => code);
      const csv = await gradebookCsv(host, assignment, submissionsOf(host, assignment.id), codes);
      return reply.type('text/csv; charset=utf-8').send(csv);
    });

    function assignmentOf(params: unknown) {
      const { id } = params as { id: string };
      const found = room.assignment(id);
      if (!found) throw dataError('lab.noAssignment', 'assignment', { id });
      return found;
    }
  });
}
