/** The host is killed while a room works: whatever it has answered is there when it runs again. BELLWIRE_FULL=1 kills it 50 times. */
import { afterEach, beforeEach, expect, it } from 'vitest';
import type { Action } from '../../src/attempt/actions.ts';
import { randomNumbers } from '../circuit/random-network.ts';
import { enrol, newFolder, openLab, paperAssignment, smallAssignment } from './lab.ts';
import { connect, type HostProcess, nextOf, startHost } from './process.ts';

const FULL = process.env.BELLWIRE_FULL !== undefined;
const KILLS = FULL ? 50 : 3;
const TRAINEES = FULL ? 40 : 12;

let place: ReturnType<typeof newFolder>;
let running: HostProcess | undefined;
beforeEach(() => {
  place = newFolder();
});
afterEach(async () => {
  await running?.kill();
  place.remove();
});

const pass = (milliseconds: number) => new Promise((done) => setTimeout(done, milliseconds));

interface Worker {
  readonly token: string;
  /** What the host has answered, in order. */
  readonly kept: Action[];
  /** Sent, and not answered. */
  pending: Action | undefined;
  options: readonly Action[];
  /** Attempts that are over, with what they had. */
  lost: number;
  resumed: number;
}

/** Works until the host is gone. */
async function work(worker: Worker, port: number, turn: () => number): Promise<void> {
  try {
    const client = await connect(port, worker.token);
    const opened = await client.ask({ kind: 'open', assignment: 'week-9', item: 0 });
    if (opened.kind !== 'opened') throw new Error(JSON.stringify(opened));
    worker.resumed += 1;
    const found = opened.steps.map(({ action }) => action);
    for (const [index, action] of worker.kept.entries())
      if (JSON.stringify(found[index]) !== JSON.stringify(action)) worker.lost += 1;
    // What was on its way may have been done; sending it again shows whether it was, and does it once.
    if (found.length > worker.kept.length + 1) throw new Error('more than was sent');
    worker.options = opened.options;
    for (let last = worker.pending; worker.kept.length < 480; last = undefined) {
      const seq = worker.kept.length + 1;
      const action: Action = last ?? nextOf(worker.options, turn());
      worker.pending = action;
      const answer = await client.ask({ kind: 'act', seq, action });
      worker.pending = undefined;
      if (answer.kind !== 'acted') throw new Error(`${seq} ${JSON.stringify(action)}: ${JSON.stringify(answer)}`);
      worker.kept.push(answer.step.action);
      worker.options = answer.options;
      await pass(20);
    }
  } catch (error) {
    if (!(error instanceof Error) || !/gone|ECONN|socket hang up|closed before/.test(error.message)) throw error;
  }
}

it('loses no step that it has answered, and all go on', { timeout: 1_800_000 }, async () => {
  const host = await openLab(place.folder, { at: Date.now() });
  enrol(host, TRAINEES);
  host.room.putUp(smallAssignment());
  const workers = Array.from(
    { length: TRAINEES },
    (_, index): Worker => ({
      token: host.sessions.begin(`t${index + 1}`),
      kept: [],
      pending: undefined,
      options: [],
      lost: 0,
      resumed: 0,
    }),
  );
  await host.close();
  const random = randomNumbers(50);
  const turn = () => Math.floor(random() * 1000);
  let underLoad = 0;
  for (let kill = 0; kill < KILLS; kill++) {
    running = await startHost(place.folder);
    const answered = () => workers.reduce((sum, { kept }) => sum + kept.length, 0);
    const before = answered();
    const all = Promise.all(workers.map((each) => work(each, running!.port, turn)));
    for (let tries = 0; tries < 500 && answered() === before; tries++) await pass(20);
    await pass(random() * 1000);
    await running.kill();
    await all;
    if (answered() > before) underLoad += 1;
  }
  const after = await openLab(place.folder, { at: Date.now() });
  for (const [index, worker] of workers.entries()) {
    const [row] = after.records.attemptsOf(`t${index + 1}`, 'week-9');
    const steps = after.records.steps(row!.id).map(({ action }) => JSON.parse(action));
    expect(steps.slice(0, worker.kept.length), `t${index + 1}`).toEqual(worker.kept);
    expect(steps.length).toBeLessThanOrEqual(worker.kept.length + 1);
    expect(after.attempts.get(row!.id).attempt.steps).toHaveLength(steps.length);
  }
  expect(workers.reduce((sum, { lost }) => sum + lost, 0)).toBe(0);
  const steps = workers.reduce((sum, { kept }) => sum + kept.length, 0);
  console.log(
    `${KILLS} kills, ${steps} steps answered, none lost; ${workers.reduce((sum, each) => sum + each.resumed, 0)} times taken up`,
  );
  expect(underLoad).toBe(KILLS);
  await after.close();
});

it('loses no choice at a paper that it has answered', { timeout: 300_000 }, async () => {
  const host = await openLab(place.folder, { at: Date.now() });
  enrol(host, TRAINEES);
  host.room.putUp(paperAssignment());
  const tokens = Array.from({ length: TRAINEES }, (_, index) => host.sessions.begin(`t${index + 1}`));
  await host.close();
  running = await startHost(place.folder);
  const { port } = running;
  const random = randomNumbers(51);
  // By trainee and question: what the host has kept, and what was on its way.
  const kept = tokens.map((): (number | null)[] => [null, null, null, null]);
  const onWay: ({ readonly question: number; readonly choice: number } | undefined)[] = tokens.map(() => undefined);
  let answered = 0;
  const all = tokens.map(async (token, who) => {
    try {
      const client = await connect(port, token);
      await client.ask({ kind: 'open', assignment: 'week-9', item: 2 });
      for (;;) {
        const sent = { question: Math.floor(random() * 4), choice: Math.floor(random() * 4) };
        onWay[who] = sent;
        const answer = await client.ask({ kind: 'choose', ...sent });
        onWay[who] = undefined;
        if (answer.kind !== 'chosen') throw new Error(JSON.stringify(answer));
        kept[who]![sent.question] = sent.choice;
        answered += 1;
        await pass(110);
      }
    } catch (error) {
      if (!(error instanceof Error) || !/gone|ECONN|socket hang up|closed before/.test(error.message)) throw error;
    }
  });
  for (let tries = 0; tries < 500 && answered < 3 * TRAINEES; tries++) await pass(20);
  await running.kill();
  await Promise.all(all);
  const after = await openLab(place.folder, { at: Date.now() });
  for (const [who, own] of kept.entries()) {
    const [row] = after.records.attemptsOf(`t${who + 1}`, 'week-9');
    const found = after.papers.choices(after.papers.get(row!.id));
    const sent = onWay[who];
    for (const [question, choice] of own.entries())
      expect([choice, ...(sent?.question === question ? [sent.choice] : [])], `t${who + 1} ${question}`).toContain(found[question]);
  }
  expect(answered).toBeGreaterThanOrEqual(3 * TRAINEES);
  await after.close();
});
