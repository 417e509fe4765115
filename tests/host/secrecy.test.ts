/**
 * The fault stays on the host. Two tickets that are alike but for what is wrong are worked on in the same way, each on a host of its own, and
 * every byte to the browser is kept: they are the same until what was observed differs, and no byte says what is wrong.
 * BELLWIRE_FULL=1 takes every rig and more of its suspects.
 */
import { afterAll, describe, expect, it } from 'vitest';
import type { Action } from '../../src/attempt/actions.ts';
import { type Attempt, begin, perform, viewOf } from '../../src/attempt/attempt.ts';
import { levels } from '../../src/attempt/notices.ts';
import type { Host } from '../../src/host/host.ts';
import { assemble } from '../../src/rig/assemble.ts';
import { type Fault, possibleFaults } from '../../src/rig/faults.ts';
import type { Ticket } from '../../src/scenario/ticket.ts';
import { fingerprint } from '../../src/suspects/apart.ts';
import { gatherField } from '../../src/suspects/field.ts';
import { anyAction } from '../attempt/wander.ts';
import { randomNumbers } from '../circuit/random-network.ts';
import { oneOfEachRig, rigOf } from '../scenario/shipped.ts';
import { type Browser, enrol, newFolder, openLab, seated, smallAssignment } from './lab.ts';

const FULL = process.env.BELLWIRE_FULL !== undefined;
const TICKETS = FULL ? oneOfEachRig : oneOfEachRig.filter(({ rig }) => rig === 'trainingBoard' || rig === 'twoWireHeat');
const SUSPECTS = FULL ? 8 : 4;
const STEPS = FULL ? 60 : 25;
const BEGAN = Date.UTC(2026, 2, 2, 13);

const folders: ReturnType<typeof newFolder>[] = [];
afterAll(() => {
  for (const { remove } of folders) remove();
});

/** A host that has this ticket up, and a trainee who has it open. */
async function hostOf(ticket: Ticket): Promise<{ readonly host: Host; readonly ana: Browser; readonly hands: { at: number } }> {
  const place = newFolder();
  folders.push(place);
  const hands = { at: BEGAN };
  const host = await openLab(place.folder, hands);
  enrol(host, 1);
  const { $schema: _, ...own } = ticket;
  host.room.putUp(smallAssignment({ minutes: 60, items: [{ kind: 'own', ticket: { ...own, told: TOLD } }] }));
  const ana = seated(host, 't1');
  await ana.ask({ kind: 'open', assignment: 'week-9', item: 0 });
  return { host, ana, hands };
}
const TOLD = { symptom: 'otherwise', heard: 'nothing', voice: 1, job: 12345 } as const;

/** A step at a host: all that came back. */
async function stepAt({ ana, hands }: Awaited<ReturnType<typeof hostOf>>, seq: number, action: Action): Promise<string> {
  const from = ana.texts.length;
  hands.at += 1000;
  await ana.ask({ kind: 'act', seq, action });
  return ana.texts.slice(from).join('\n');
}

/** Members of the suspects that nobody tells from the ticket's own fault on arriving. */
function suspectsOf(ticket: Ticket): readonly (readonly Fault[])[] {
  const rig = rigOf(ticket);
  const assembly = assemble(rig);
  const seen = ({ arrival, bench }: Attempt) => fingerprint({ ...arrival, levels: levels(bench) });
  const own = seen(begin(ticket, rig, assembly));
  const alike = gatherField({ ...ticket, suspects: undefined }, assembly)
    .twins.map(({ bench }) => bench.world.faults)
    .filter((faults) => seen(begin({ ...ticket, faults }, rig, assembly)) === own);
  return alike.filter((_, index) => index % Math.max(1, Math.floor(alike.length / SUSPECTS)) === 0).slice(0, SUSPECTS);
}

/** An action that may be refused: with a part or a wire that lies anywhere. */
function anywhere({ assembly }: Attempt, random: () => number): Action {
  const part = assembly.parts[Math.floor(random() * assembly.parts.length)]!;
  const wire = assembly.wires[Math.floor(random() * assembly.wires.length)]!.id;
  const acts: readonly Action[] = [
    { name: 'look', part: part.id },
    { name: 'tug', wire },
    { name: 'lift', wire, end: 'from' },
    { name: 'pull', part: part.id },
    { name: 'unplug', part: part.id },
    { name: 'probe', lead: 'red', at: `${part.id}.${part.kind.terminals[0]?.id ?? 'R'}` },
  ];
  return acts[Math.floor(random() * acts.length)]!;
}

/** A message without what was seen and heard: there a word of a fault may stand because it shows (a pan that is full). */
const unseen = (text: string): string =>
  JSON.stringify(JSON.parse(text), (key, value) => (key === 'signs' || key === 'noticed' ? undefined : value));

const words = (text: string): Set<string> => new Set([...text.matchAll(/"([^"\\]*)"/g)].map(([, word = '']) => word));

describe.each(TICKETS.map((ticket) => [ticket.rig, ticket] as const))('on %s', (_, plain) => {
  const ticket: Ticket = { ...plain, mode: 'graded', suspects: undefined };
  const rig = rigOf(ticket);

  it('no byte tells two faults apart before an observation does, and none names a fault', { timeout: 600_000 }, async () => {
    const suspects = suspectsOf(ticket);
    expect(suspects.length).toBeGreaterThan(2);
    let compared = 0;
    let parted = 0;
    for (const [index, faults] of suspects.entries()) {
      const next = suspects[(index + 1) % suspects.length]!;
      const [one, other] = [await hostOf({ ...ticket, faults: [...faults] }), await hostOf({ ...ticket, faults: [...next] })];
      // The same work, followed beside the hosts, tells when an observation differs; the last world has nothing wrong.
      const [first, second, sound] = [faults, next, []].map((each) => begin({ ...ticket, faults: each }, rig));
      if (!first || !second || !sound) throw new Error('no world');
      const strip = (texts: readonly string[]) => texts.join('\n').replaceAll(/"token":"[^"]*"/g, '');
      expect(strip(one.ana.texts)).toBe(strip(other.ana.texts));
      const random = randomNumbers(index + 1);
      const said: string[] = [...one.ana.texts];
      let apart = false;
      const allowed = words(JSON.stringify([rig, ticket.complaint, viewOf(sound)]));
      for (let tried = 0; first.steps.length < STEPS; tried++) {
        const action = tried % 4 === 3 ? anywhere(first, random) : anyAction(first, random);
        const seq = first.steps.length + 1;
        const outcome = perform(first, action);
        const text = await stepAt(one, seq, action);
        said.push(text);
        expect(JSON.parse(text).kind).toBe(outcome.ok ? 'acted' : 'refused');
        perform(sound, action);
        for (const word of words(JSON.stringify([action, viewOf(sound)]))) allowed.add(word);
        if (apart) continue;
        const same = perform(second, action);
        const seen = first.steps.at(-1);
        apart =
          same.ok !== outcome.ok ||
          (outcome.ok && fingerprint(seen!.observation) !== fingerprint(second.steps.at(-1)!.observation));
        if (outcome.ok && same.ok)
          apart ||= seen!.view.seconds !== second.steps.at(-1)!.view.seconds || seen!.unsafe !== second.steps.at(-1)!.unsafe;
        const twin = await stepAt(other, seq, action);
        if (apart) parted += 1;
        else expect(twin, `step ${seq} ${JSON.stringify(action)}`).toBe(text);
        compared += 1;
      }
      const next1 = first.steps.length + 1;
      said.push(await stepAt(one, next1, { name: 'name', target: rig.parts[0]!.id, mode: 'none', evidence: [] }));
      said.push(await stepAt(one, next1 + 1, { name: 'close' }));
      const all = said.join('\n');
      expect(all).toContain('"kind":"ended"');
      expect(all).not.toMatch(/"(faults|suspects|works|magnitude|replacedSound|hypotheses|truth)"/);
      const modes = new Set(possibleFaults(rig, true).map(({ mode }) => mode));
      const told = [...words(all.split('\n').map(unseen).join('\n'))].filter((word) => modes.has(word) && !allowed.has(word));
      expect(told, JSON.stringify(faults)).toEqual([]);
      await one.host.close();
      await other.host.close();
    }
    // The test tells something only where both happen.
    expect(compared).toBeGreaterThan(suspects.length);
    expect(parted).toBeGreaterThan(0);
  });
});
