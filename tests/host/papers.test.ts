/** Exercises and exams that are set beside tickets, on the lab host. */
import { afterEach, beforeEach, expect, it } from 'vitest';
import { signedInSchema } from '../../src/classroom/protocol.ts';
import type { Host } from '../../src/host/host.ts';
import { enrol, type Hands, newFolder, openLab, seated, smallAssignment } from './lab.ts';

let place: ReturnType<typeof newFolder>;
let hands: Hands;
let host: Host;

beforeEach(async () => {
  place = newFolder();
  hands = { at: Date.UTC(2026, 2, 2, 13) };
  host = await openLab(place.folder, hands);
  enrol(host, 3);
});
afterEach(async () => {
  await host.close();
  place.remove();
});

const DRILLS = { kind: 'drills', drills: ['reading', 'contacts'], count: 4 } as const;

it('exercises are taken at home, and the host says so to instructor and trainee; its tickets are worked on as ever', async () => {
  const put = host.room.putUp(smallAssignment({ papers: [{ ...DRILLS, drills: ['reading', 'contacts'] }] }));
  expect(host.room.cautions(put)).toEqual(['shipped', 'papersAtHome']);
  const ana = seated(host, 't1');
  const [listed] = ana.last('welcome').assignments;
  expect(signedInSchema.shape.assignments.element.parse(listed)).toMatchObject({ atHome: 1, items: [{ item: 0 }, { item: 1 }] });
  expect(await ana.ask({ kind: 'open', assignment: 'week-9', item: 2 })).toMatchObject({ kind: 'error', code: 'lab.noItem' });
  expect(await ana.ask({ kind: 'open', assignment: 'week-9', item: 0 })).toMatchObject({ kind: 'opened' });
  const only = smallAssignment({ items: [], papers: [{ ...DRILLS, drills: ['reading'] }] });
  expect(() => host.room.putUp({ ...only, id: 'only' })).toThrow(
    expect.objectContaining({ code: 'lab.papersOnly', path: 'items' }),
  );
  const unknown = { ...only, id: 'unknown', papers: [{ ...DRILLS, drills: ['mindReading'] }] };
  expect(() => host.room.putUp(unknown)).toThrow(expect.objectContaining({ code: 'classroom.noKind' }));
});
