import { expect, test } from 'vitest';
import { draw, examine, survey } from '../../src/app/engine/making.ts';
import { loadAssignmentDraft, newAssignment } from '../../src/app/making/assignment-draft.ts';
import { newDraft, proposed, said, toggled, withFaults, withSuspects } from '../../src/app/making/draft.ts';
import { loadDraft } from '../../src/app/making/kept.ts';
import { benchTickets, examPaper, KINDS_BY_SKILL, loadOf, moved, roomFor, ticked } from '../../src/app/making/papers.ts';
import { isOnlyHere } from '../../src/app/making/reach.ts';
import { type Assignment, loadAssignment, type PaperSetting } from '../../src/classroom/assignment.ts';
import type { Blueprint } from '../../src/drills/exam.ts';
import { DRILL_KINDS } from '../../src/drills/kinds.ts';
import { possibleFaults } from '../../src/rig/faults.ts';
import { layHouse } from '../../src/rig/house.ts';
import type { RigData } from '../../src/rig/schema.ts';
import { checkTicket } from '../../src/scenario/check.ts';
import { loadTicket, type Ticket } from '../../src/scenario/ticket.ts';
import { library, rigOf, ticket } from '../scenario/shipped.ts';

function rig(id: string): RigData {
  const found = library.rigs.get(id);
  if (found === undefined) throw new Error(`no rig ${id}`);
  return found;
}

const furnace = rig('furnaceAndCondenser');

function broken(target: string, mode: string, plain = furnace): Ticket {
  const fault = possibleFaults(plain).find((each) => each.target === target && each.mode === mode)?.members[0];
  return withFaults(newDraft(plain), fault ? [fault] : []);
}

function propose(draft: Ticket, plain = furnace): Ticket {
  const { offers } = examine({ json: draft, rig: plain });
  return { ...draft, complaint: { ...draft.complaint, ...proposed(offers) } };
}

test('of every rig, a fault chosen and the signs taken as offered make a ticket that stands', () => {
  for (const plain of library.rigs.values()) {
    const stood = possibleFaults(plain)
      .filter(({ weight }) => weight > 0.5)
      .some(({ members: [fault] }) => {
        const draft = propose(withFaults(newDraft(plain), fault ? [fault] : []), plain);
        const { error } = examine({ json: draft, rig: plain });
        if (error === undefined) checkTicket(loadTicket(draft), plain);
        return error === undefined;
      });
    expect(stood, plain.id).toBe(true);
  }
});

test('a draft without signs yet is told what its customer could tell, and what is still missing', () => {
  const found = examine({ json: broken('thermostat', 'coolRelayStuckOpen'), rig: furnace });
  expect(found.offers.some(({ faulty, sound }) => faulty !== sound)).toBe(true);
  expect(found.error).toMatchObject({ code: 'data.tooSmall', path: 'complaint.observed' });
});

test('a sign that a sound system shows too is no complaint, and one that this fault does not show is named', () => {
  const draft = propose(broken('thermostat', 'coolRelayStuckOpen'));
  const { offers } = examine({ json: draft, rig: furnace });
  const alike = offers.find(({ faulty, sound, plain }) => plain && faulty === sound && faulty !== undefined);
  if (alike === undefined) throw new Error('everything differs');
  const sound = { ...draft, complaint: { ...draft.complaint, observed: toggled([], alike, alike.faulty) } };
  expect(examine({ json: sound, rig: furnace }).error?.code).toBe('ticket.noComplaint');
  const other = { ...draft, complaint: { ...draft.complaint, observed: draft.complaint.works } };
  expect(examine({ json: other, rig: furnace }).error).toMatchObject({ code: 'ticket.noComplaint', path: 'complaint.observed' });
});

test('a fault that nobody notices in this story is told as no complaint, not as an empty list', () => {
  const draft = propose(broken('thermostat', 'heatRelayStuckOpen'));
  expect(draft.complaint.works).toEqual([]);
  expect(examine({ json: draft, rig: furnace }).error).toMatchObject({ code: 'ticket.noComplaint', path: 'complaint.observed' });
});

test('an error before the complaint is told with its path, and nothing is offered', () => {
  const draft = broken('thermostat', 'coolRelayStuckOpen');
  const wrong = { ...draft, faults: [{ target: 'nothing', mode: 'open', magnitude: 0 }] };
  expect(examine({ json: wrong, rig: furnace })).toMatchObject({
    error: { code: 'ticket.target', path: 'faults[0].target' },
    offers: [],
  });
  expect(examine({ json: { ...draft, house: { cables: { none: {} } } }, rig: furnace }).error?.code).toBe('house.unknown');
  for (const hostile of [null, 7, 'x', [], {}, { complaint: null }, { ...draft, complaint: 3 }, { ...draft, faults: null }])
    expect(examine({ json: hostile, rig: furnace }).error).toBeDefined();
});

test('a shipped ticket is surveyed to what its own measure says', () => {
  const shipped = ticket('darkHeatLamp');
  const found = survey({ ticket: shipped, rig: rigOf(shipped) });
  expect(found.error).toBeUndefined();
  expect(found.measured.suspects).toBeGreaterThan(1);
  expect(found.measured.seconds).toBeGreaterThan(0);
  expect(found.actions.length).toBeGreaterThan(0);
});

test('a second fault stands among the pairs while it is there, and leaves them with it', () => {
  const [first, second, third] = possibleFaults(furnace).flatMap(({ members: [fault] }) => fault ?? []);
  if (!first || !second || !third) throw new Error('few faults');
  const pair = withFaults(newDraft(furnace), [first, second]);
  expect(pair.suspects?.pairs).toEqual([second]);
  expect(withFaults(pair, [first, third]).suspects?.pairs).toEqual([third]);
  expect(withFaults(pair, [first]).suspects).toBeUndefined();
  expect(withSuspects(pair, { intermittents: true }).suspects).toEqual({ intermittents: true });
});

test('figures that nobody gave are not written', () => {
  expect(said({ feet: undefined, awg: undefined })).toBeUndefined();
  expect(said({ main: {}, other: { feet: 3 } })).toEqual({ other: { feet: 3 } });
  expect(said({ gains: 0 })).toEqual({ gains: 0 });
});

test('a kept draft comes back as it was, lists empty or not; what is none is refused', () => {
  const draft = newDraft(furnace);
  expect(loadDraft(JSON.parse(JSON.stringify(draft)))).toEqual(draft);
  expect(loadDraft(ticket('fanButNoCooling'))).toEqual(ticket('fanButNoCooling'));
  expect(() => loadDraft({ ...draft, rig: 7 })).toThrow();
});

test('the story of each call of each rig can be lived', () => {
  for (const plain of library.rigs.values()) {
    const { complaint } = newDraft(plain);
    expect(complaint.history.at(-1)).toEqual({ name: 'wait', seconds: 900 });
    expect(complaint.history.length).toBeGreaterThan(1);
  }
});

test('draws go on from the last, and the same recipe begins alike', () => {
  const plain = rig('twoWireHeat');
  const recipe = { rig: plain.id, seed: 5 };
  const drawn = Array.from({ length: 12 }, () => draw({ recipe, rig: plain }));
  const made = drawn.flatMap((each) => ('made' in each ? [each.made] : []));
  expect(made.length).toBeGreaterThan(0);
  for (const { ticket: each, seconds } of made) {
    checkTicket(loadTicket(each), layHouse(plain, each.house));
    expect(seconds).toBeGreaterThan(0);
  }
  draw({ recipe: { ...recipe, seed: 6 }, rig: plain });
  const again = Array.from({ length: 12 }, () => draw({ recipe, rig: plain }));
  expect(again).toEqual(drawn);
});

const exam = {
  kind: 'exam',
  exam: { id: 'own', items: 30, minutes: 45, pass: 0.7, skills: { sums: 1 } },
} as const satisfies PaperSetting;
const drills: PaperSetting = { kind: 'drills', drills: ['reading', 'contacts'], count: 10 };
const setOf = (rest: object) =>
  loadAssignment({ format: 'bellwire-assignment', version: 1, id: 'a', title: 'A', mode: 'graded', seed: 1, items: [], ...rest });

test('an exam that ships goes into an assignment with its questions, and without its bench', () => {
  const blueprint = { format: 'bellwire-exam', version: 1, bench: { tickets: { apprentice: 2 } } } as const;
  // Two tickets of thirty-two things to do leave the questions thirty of them.
  const paper = examPaper({ ...blueprint, ...exam.exam, minutes: 48 });
  expect(paper).toEqual(exam);
  expect(setOf({ papers: [paper] }).papers).toEqual([exam]);
});

test('an exam’s bench tickets come with it as tickets of the assignment, and none that is there already', () => {
  const bench = { tickets: { apprentice: 2 } };
  const blueprint: Blueprint = { ...exam.exam, format: 'bellwire-exam', version: 1, bench };
  const posted = ['a', 'b', 'c', 'd'].map((id) => ({ id, rig: 'one', grade: id === 'd' ? 'master' : 'apprentice' }) as const);
  const items = benchTickets(blueprint, setOf({ items: [{ kind: 'shipped', ticket: 'b' }] }), posted);
  expect(items.map((item) => (item.kind === 'shipped' ? item.ticket : '')).sort()).toEqual(['a', 'c']);
  const { bench: _, ...without } = blueprint;
  expect(benchTickets(without, setOf({ papers: [exam] }), posted)).toEqual([]);
});

test('a kept assignment comes back with its papers, whether it has tickets and a title or not', () => {
  const draft = { ...newAssignment(5), papers: [drills, exam] };
  expect(loadAssignmentDraft(JSON.parse(JSON.stringify(draft)))).toEqual(draft);
  const more: Assignment = { ...draft, title: 'A', items: [{ kind: 'shipped', ticket: 'darkHeatLamp' }] };
  expect(loadAssignmentDraft(JSON.parse(JSON.stringify(more)))).toEqual(more);
});

test('kinds of exercise are ticked one by one or a skill at a time, and keep their order', () => {
  expect(KINDS_BY_SKILL.flatMap(({ kinds }) => kinds.map(({ id }) => id)).sort()).toEqual(DRILL_KINDS.map(({ id }) => id).sort());
  const sums = KINDS_BY_SKILL.find(({ skill }) => skill === 'sums')!.kinds.map(({ id }) => id);
  const some = ticked(ticked([], ['ladder'], true), sums, true);
  expect(some).toEqual(DRILL_KINDS.map(({ id }) => id).filter((id) => id === 'ladder' || sums.includes(id)));
  expect(ticked(some, sums, false)).toEqual(['ladder']);
});

test('papers change places as far as there are places', () => {
  expect(moved(['a', 'b', 'c'], 1, -1)).toEqual(['b', 'a', 'c']);
  expect(moved(['a', 'b', 'c'], 1, 1)).toEqual(['a', 'c', 'b']);
  expect(moved(['a', 'b'], 0, -1)).toEqual(['a', 'b']);
  expect(moved(['a', 'b'], 1, 1)).toEqual(['a', 'b']);
});

test('papers come to their questions, an exam’s time, and some time for exercises; the assignment’s own limit ends each', () => {
  expect(loadOf(setOf({ papers: [exam, drills, drills] }))).toEqual({ questions: 50, exams: 45, drills: 14 });
  expect(loadOf(setOf({ papers: [exam, drills], minutes: 5 }))).toEqual({ questions: 40, exams: 5, drills: 5 });
  expect(loadOf(setOf({ papers: [drills] }))).toMatchObject({ exams: undefined });
});

test('no more papers are let in than an assignment may have', () => {
  const items = Array.from({ length: 27 }, () => ({ kind: 'shipped', ticket: 'darkHeatLamp' }));
  const fits = (all: object) => {
    const made = setOf(all);
    const papers = [...(made.papers ?? []), ...Array.from({ length: roomFor(made) }, () => drills)];
    expect(() => loadAssignment({ ...made, papers })).not.toThrow();
    expect(() => loadAssignment({ ...made, papers: [...papers, drills] })).toThrow();
    return roomFor(made);
  };
  expect([fits({ papers: [exam] }), fits({ items, papers: [exam] })]).toEqual([9, 2]);
});

test('a link opens elsewhere only where the page came over the network', () => {
  const only = (url: string) => isOnlyHere(new URL(url));
  for (const url of ['http://localhost:5173/', 'http://127.0.0.1:4973/', 'http://[::1]/', 'file:///C:/bellwire.html'])
    expect(only(url), url).toBe(true);
  for (const url of ['http://192.168.1.20:8780/', 'https://school.example/bellwire/']) expect(only(url), url).toBe(false);
});
