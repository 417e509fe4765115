import { readFileSync } from 'node:fs';
import { setTimeout as pass } from 'node:timers/promises';
import { enrol, newFolder, openLab, smallAssignment } from '../host/lab.ts';
import { connect, nextOf, startHost } from '../host/process.ts';
import { oneOfEachRig } from '../scenario/shipped.ts';
import type { BenchFigure } from './circuit.bench.ts';

const TRAINEES = Number(process.env.BELLWIRE_TRAINEES ?? 200);
const SECONDS = Number(process.env.BELLWIRE_SECONDS ?? 300);

/** Processor time that a process has had so far, seconds, where the system tells it as Linux does (proc(5)); else 0. */
function processorSeconds(pid: number | undefined): number {
  try {
    const fields = readFileSync(`/proc/${pid}/stat`, 'utf8').split(') ')[1]?.split(' ') ?? [];
    return (Number(fields[11]) + Number(fields[12])) / 100;
  } catch {
    return 0;
  }
}

/**
 * A full room on one host, over loopback: 200 trainees who act once a second for five minutes, on every rig there is. The trainees are
 * simulated in the same machine and take their share of it. `BELLWIRE_TRAINEES` and `BELLWIRE_SECONDS` make it smaller.
 */
export async function bench(): Promise<BenchFigure[]> {
  const { folder, remove } = newFolder();
  const host = await openLab(folder, { at: Date.now() });
  enrol(host, TRAINEES);
  const items = oneOfEachRig.map(({ id }) => ({ kind: 'shipped' as const, ticket: id }));
  host.room.putUp(smallAssignment({ items }));
  const tokens = Array.from({ length: TRAINEES }, (_, index) => host.sessions.begin(`t${index + 1}`));
  await host.close();
  const running = await startHost(folder);
  const times: number[] = [];
  const opening: number[] = [];
  let bytes = 0;
  let refused = 0;
  const end = performance.now() + SECONDS * 1000;

  async function trainee(token: string, index: number): Promise<void> {
    // They come in over some seconds, as a class does.
    await pass((index / TRAINEES) * 5000);
    const client = await connect(running.port, token);
    const before = performance.now();
    const opened = await client.ask({ kind: 'open', assignment: 'week-9', item: index % items.length });
    if (opened.kind !== 'opened') throw new Error(JSON.stringify(opened));
    opening.push(performance.now() - before);
    let { options } = opened;
    let seq = opened.steps.length + 1;
    let due = performance.now();
    for (let turn = index; performance.now() < end && seq < 480; turn += 7) {
      due += 1000;
      await pass(Math.max(0, due - performance.now()));
      const from = performance.now();
      const answer = await client.ask({ kind: 'act', seq, action: nextOf(options, turn) });
      times.push(performance.now() - from);
      if (answer.kind === 'acted') {
        seq += 1;
        ({ options } = answer);
        if (turn % 70 === 0) bytes = Math.max(bytes, JSON.stringify(answer).length);
      } else refused += 1;
    }
    client.close();
  }

  const before = processorSeconds(running.child.pid);
  let busy = 0;
  try {
    await Promise.all(tokens.map(trainee));
    busy = processorSeconds(running.child.pid) - before;
  } finally {
    await running.kill();
    remove();
  }
  times.sort((a, b) => a - b);
  opening.sort((a, b) => a - b);
  const at = (sorted: readonly number[], share: number) =>
    sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? 0;
  return [
    { name: 'trainees', value: TRAINEES, unit: 'who act once a second' },
    { name: 'for', value: SECONDS, unit: 's' },
    { name: 'answers', value: times.length, unit: `of which ${refused} refused` },
    { name: 'p50 of an answer', value: at(times, 0.5), unit: 'ms' },
    { name: 'p95 of an answer', value: at(times, 0.95), unit: 'ms (aim: under 100)' },
    { name: 'p99 of an answer', value: at(times, 0.99), unit: 'ms' },
    { name: 'p95 of opening a ticket', value: at(opening, 0.95), unit: 'ms' },
    {
      name: 'processor time of the host',
      value: (busy * 1000) / Math.max(1, times.length),
      unit: 'ms an answer (0: not known here)',
    },
    { name: 'largest answer', value: bytes / 1024, unit: 'KB' },
  ];
}
