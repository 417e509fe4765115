/** The host on the wire: the built app, the trainees' and the instructor's messages, and the walls around them. */
import fastifyHelmet from '@fastify/helmet';
import fastifyRateLimit from '@fastify/rate-limit';
import fastifyStatic from '@fastify/static';
import fastifyWebsocket from '@fastify/websocket';
import fastify, { type FastifyInstance } from 'fastify';
import type { WebSocket } from 'ws';
import { type Failure, LARGEST_MESSAGE, type SignedIn, signInSchema } from '../classroom/protocol.ts';
import { instructorHelloSchema, type ToInstructor } from '../classroom/room.ts';
import { type DataError, dataError, isDataError } from '../rig/errors.ts';
import { inlineScriptHashes } from './app-files.ts';
import { traineeNames, tried } from './guard.ts';
import type { Host } from './host.ts';
import { instructorRoutes } from './instructor.ts';
import { bearerOf, checked, isSameOrigin, statusOf } from './requests.ts';
import { sameText, verifySecret } from './secrets.ts';

/** Requests from one address in a minute; a room behind one address opens the app at the same time. */
const REQUESTS_A_MINUTE = 6000;
/** Waiting to be sent to one browser, bytes: one that takes no more is let go. */
const MOST_UNSENT = 8_000_000;

/** @param app folder of the built app */
export async function createServer(host: Host, app: string): Promise<FastifyInstance> {
  const server = fastify({ bodyLimit: LARGEST_MESSAGE, logger: false, trustProxy: false, forceCloseConnections: true });
  await server.register(fastifyHelmet, {
    contentSecurityPolicy: {
      useDefaults: false,
      directives: {
        defaultSrc: ["'none'"],
        scriptSrc: ["'self'", ...inlineScriptHashes(app)],
        styleSrc: ["'self'"],
        imgSrc: ["'self'", 'data:', 'blob:'],
        fontSrc: ["'self'"],
        mediaSrc: ["'self'", 'blob:', 'data:'],
        connectSrc: ["'self'"],
        workerSrc: ["'self'"],
        manifestSrc: ["'self'"],
        baseUri: ["'none'"],
        formAction: ["'none'"],
        frameAncestors: ["'none'"],
        objectSrc: ["'none'"],
      },
    },
    // The room speaks plain HTTP: a promise of HTTPS would shut it out.
    strictTransportSecurity: false,
    // Means nothing without HTTPS.
    crossOriginOpenerPolicy: false,
    originAgentCluster: false,
    referrerPolicy: { policy: 'no-referrer' },
  });
  await server.register(fastifyRateLimit, {
    max: REQUESTS_A_MINUTE,
    timeWindow: '1 minute',
    errorResponseBuilder: (_, { ttl }) => dataError('lab.tooMany', 'request', { seconds: Math.ceil(ttl / 1000) }),
  });
  await server.register(fastifyWebsocket, { options: { maxPayload: LARGEST_MESSAGE } });
  server.setErrorHandler((error, _, reply) => {
    const told = failureOf(error);
    const { seconds } = told.values;
    if (seconds !== undefined) reply.header('retry-after', String(seconds));
    const failure: Failure = { error: { code: told.code, path: told.path, values: told.values } };
    return reply.code(statusOf(told.code)).send(failure);
  });
  server.setNotFoundHandler((request, reply) =>
    reply.code(404).send({ error: { code: 'lab.noPage', path: request.url.slice(0, 200), values: {} } }),
  );
  server.addHook('onRequest', async (request, reply) => {
    // By this a page knows who serves it.
    reply.header('bellwire-lab', '1');
    if (!request.url.startsWith('/api/')) return;
    reply.header('cache-control', 'no-store');
    if (request.method !== 'GET' && request.headers.origin !== undefined && !isSameOrigin(request))
      throw dataError('lab.otherOrigin', 'origin');
  });
  await server.register(fastifyStatic, { root: app, index: 'index.html', cacheControl: false });
  traineeRoutes(server, host);
  instructorRoutes(server, host);
  sockets(server, host);
  const beat = setInterval(host.tick, 1000);
  server.addHook('onClose', async () => clearInterval(beat));
  return server;
}

/** What may be told of an error: never its stack, nor words of a library. */
function failureOf(error: unknown): DataError {
  if (isDataError(error)) return error;
  const status = typeof error === 'object' && error !== null && 'statusCode' in error ? Number(error.statusCode) : 500;
  if (status === 413) return dataError('data.large', '(message)');
  if (status >= 400 && status < 500) return dataError('data.shape', '(message)');
  return dataError('lab.fault', 'request');
}

function traineeRoutes(server: FastifyInstance, host: Host): void {
  const { records, sessions, guard, room, hub, classCode, idleSeconds } = host;
  server.get('/api/lab', async () => ({ lab: true }));
  server.post('/api/sign-in', async ({ body, ip }): Promise<SignedIn> => {
    const { class: code, trainee, pin } = checked(signInSchema, body);
    // One answer whichever is wrong, and as slow, so that nobody learns who is on the roster.
    const row = await tried(guard, traineeNames(trainee, ip), 'pin', async () => {
      const found = records.trainee(trainee);
      const right = await verifySecret(pin, found?.pin);
      return sameText(code, classCode) && right ? found : undefined;
    });
    if (!row) throw dataError('lab.wrong', 'pin');
    // One place at a time: who sits down here is signed out there.
    hub.signOut(trainee, 'elsewhere');
    sessions.endAllOf(trainee);
    return { token: sessions.begin(trainee), name: row.name, trainee, idleSeconds, assignments: room.listed(trainee) };
  });
  server.post('/api/sign-out', async (request) => {
    const session = sessions.find(bearerOf(request));
    if (session?.trainee !== undefined) {
      sessions.end(session);
      hub.signOut(session.trainee, 'ended');
    }
    return {};
  });
}

/** What a socket says as text; undefined for bytes. */
const textOf = (data: unknown, isBinary: boolean): string | undefined => (isBinary ? undefined : String(data));

function sockets(server: FastifyInstance, { seat: sit, hub, sessions }: Host): void {
  const guarded = {
    websocket: true,
    preValidation: async (request: Parameters<typeof isSameOrigin>[0]) => {
      if (!isSameOrigin(request)) throw dataError('lab.otherOrigin', 'origin');
    },
  } as const;

  server.get('/api/live', guarded, (socket: WebSocket) => {
    const send = (text: string) => {
      if (socket.bufferedAmount > MOST_UNSENT) socket.terminate();
      else socket.send(text);
    };
    const seat = sit(send, () => socket.close(1000));
    socket.on('message', (data, isBinary) => seat.receive(textOf(data, isBinary) ?? ''));
    socket.on('error', () => socket.terminate());
    socket.on('close', () => {
      seat.gone();
      hub.left(seat);
    });
  });

  server.get('/api/instructor/live', guarded, (socket: WebSocket) => {
    let token: string | undefined;
    const send = (message: ToInstructor) => {
      if (socket.bufferedAmount < MOST_UNSENT) socket.send(JSON.stringify(message));
    };
    const isGood = () => {
      const session = token === undefined ? undefined : sessions.find(token);
      return session !== undefined && session.trainee === undefined;
    };
    const watcher = {
      send,
      tick() {
        if (isGood()) return;
        hub.watchers.delete(watcher);
        send({ kind: 'signedOut' });
        socket.close(1000);
      },
    };
    socket.on('message', (data, isBinary) => {
      const hello = instructorHelloSchema.safeParse(parsed(textOf(data, isBinary)));
      token = hello.success ? hello.data.token : undefined;
      watcher.tick();
      if (token === undefined || socket.readyState !== socket.OPEN) return;
      hub.watchers.add(watcher);
      send(hub.room());
    });
    socket.on('error', () => socket.terminate());
    socket.on('close', () => hub.watchers.delete(watcher));
  });
}

function parsed(text: string | undefined): unknown {
  try {
    return text === undefined ? undefined : JSON.parse(text);
  } catch {
    return undefined;
  }
}
