import { strToU8, zipSync } from 'fflate';
import { beforeAll, describe, expect, it } from 'vitest';
import {
  type Book,
  dueOf,
  EMPTY,
  fileOf,
  gradedEntry,
  personOf,
  submissionOf,
  withContent,
  withoutTrainee,
} from '../../src/app/gradebook/book.ts';
import { type Content, contentOf, type HandedIn } from '../../src/app/gradebook/contents.ts';
import { opened } from '../../src/app/gradebook/dropped.ts';
import { BY_CODE, nextSorting, sortedRows } from '../../src/app/gradebook/sort.ts';
import { doubtText } from '../../src/app/gradebook/words.ts';
import { loadAssignment } from '../../src/classroom/assignment.ts';
import { DOUBTS, doubt } from '../../src/classroom/doubts.ts';
import { createGrader } from '../../src/classroom/grade.ts';
import type { Row } from '../../src/classroom/gradebook.ts';
import type { Overrule } from '../../src/classroom/overrules.ts';
import type { Submission } from '../../src/classroom/submission.ts';
import { answered, SMALL_EXAM } from '../classroom/crowd.ts';
import { library } from '../scenario/shipped.ts';
import { speakEnglish } from './english.ts';

const assignment = loadAssignment({
  format: 'bellwire-assignment',
  version: 1,
  id: 'week-9',
  title: 'Week nine',
  mode: 'graded',
  seed: 1,
  items: library.tickets.slice(0, 2).map(({ id }) => ({ kind: 'shipped', ticket: id })),
});
const digest = '0'.repeat(32);

function submission(code: string, item = 0, changes: Partial<Submission> = {}): Submission {
  return {
    format: 'bellwire-submission',
    version: 1,
    rules: 1,
    assignment: { id: 'week-9', digest },
    trainee: { code, name: `Name of ${code}` },
    item,
    attempt: 1,
    ticket: { id: `ticket${item}`, digest },
    rig: digest,
    began: '2026-03-02T13:00:00Z',
    stamps: [],
    log: { steps: [] },
    seals: [],
    ended: 'closed',
    seal: digest,
    ...changes,
  };
}

const overrule = (trainee: string, points: number, at: string): Overrule => ({
  trainee,
  item: 0,
  points,
  reason: 'seen',
  by: 'M. N.',
  at,
});
const text = (json: unknown) => JSON.stringify(json);
const content = (json: unknown, file = 'a.json') => contentOf(text(json), file);
const bookOf = (...all: readonly Content[]): Book => all.reduce(withContent, EMPTY);
const handed = (json: Submission, file = 'a.json'): HandedIn => {
  const found = content(json, file);
  if (found.kind !== 'handedIn') throw new Error('not handed in');
  return found.handedIn;
};
const overrulesFile = (overrules: readonly Overrule[], of = 'week-9') =>
  content({ format: 'bellwire-overrules', version: 1, assignment: of, overrules });
const throws = (code: string, path?: string) => expect.objectContaining({ code, ...(path === undefined ? {} : { path }) });

describe('what a file is', () => {
  it('is told by its format, and what is none of ours says what would be', () => {
    expect(content(assignment)).toMatchObject({ kind: 'assignment', assignment: { id: 'week-9' } });
    expect(content(submission('ana')).kind).toBe('handedIn');
    for (const json of [{ format: 'bellwire-ticket' }, {}, [], 3, null])
      expect(() => content(json)).toThrow(throws('classroom.format', 'format'));
    expect(() => contentOf('{"format":', 'a.json')).toThrow(throws('data.notJson'));
    expect(() => contentOf(undefined, 'a.json')).toThrow(throws('data.large'));
    expect(() => content(submission('ana', 0, { attempt: 0 }))).toThrow(throws('data.tooSmall', 'attempt'));
  });

  it('has a bound by its kind', () => {
    const long = { ...submission('ana'), log: 'x'.repeat(4_000_000) };
    expect(() => content(long)).toThrow(throws('data.large'));
    const whole = { format: 'bellwire-gradebook', version: 1, assignment, submissions: [{ file: 'a.json', submission: long }] };
    expect(content(whole)).toMatchObject({ kind: 'gradebook', problems: [] });
  });

  it('may be all that a host has, as its page saves it; one that is broken does not keep the others out', () => {
    const host = content({ assignment, submissions: [submission('ana'), { format: 'x' }] }, 'host.json');
    if (host.kind !== 'gradebook') throw new Error(host.kind);
    expect(host.handedIn).toMatchObject([{ file: 'week-9-ana-1-1.bellwire.json', hosted: true }]);
    expect(host.problems).toMatchObject([{ file: 'host.json', error: { path: expect.stringMatching(/^submissions\[1\] › /) } }]);
  });
});

describe('a book', () => {
  it('takes submissions before their assignment, each once whatever its file is called, and wants them graded item by item', () => {
    const first = bookOf(
      content(submission('bo', 1), 'b.json'),
      content(submission('ana', 0), 'a.json'),
      content(submission('bo', 1), 'again.json'),
    );
    expect(dueOf(first)).toEqual([]);
    const book = withContent(first, content(assignment));
    expect(dueOf(book).map(({ file }) => file)).toEqual(['a.json', 'b.json']);
    const [next] = dueOf(book);
    const graded = { ...book, entries: new Map([[next!.key, gradedEntry(next!, { doubts: [], result: undefined })]]) };
    expect(dueOf(graded).map(({ file }) => file)).toEqual(['b.json']);
    expect(submissionOf(graded, [...graded.entries.values()][0]!)?.trainee.code).toBe('ana');
  });

  it('does not mix two assignments, and says which is open', () => {
    const book = bookOf(content(assignment));
    const other = { ...assignment, seed: 2 };
    expect(() => withContent(book, content(other))).toThrow(throws('classroom.anotherOpen'));
    expect(withContent(book, content(assignment))).toEqual(book);
    expect(() => withContent(EMPTY, overrulesFile([]))).toThrow(throws('classroom.noAssignment'));
    expect(() => withContent(book, overrulesFile([], 'week-8'))).toThrow(throws('classroom.otherOverrules'));
  });

  it('keeps every overrule, and of two files’ the later in force', () => {
    const [late, early] = [overrule('ana', 80, '2026-03-04T10:00:00Z'), overrule('ana', 40, '2026-03-03T23:00:00-02:00')];
    const book = bookOf(content(assignment), overrulesFile([late]), overrulesFile([early, late]));
    expect(book.overrules.map(({ points }) => points)).toEqual([40, 80]);
    // One file's own order is what its maker decided last.
    expect(bookOf(content(assignment), overrulesFile([late, early])).overrules.map(({ points }) => points)).toEqual([80, 40]);
  });

  it('comes out of its own file as it went in', () => {
    const book = bookOf(
      content(assignment),
      content(submission('ana')),
      overrulesFile([overrule('ana', 80, '2026-03-04T10:00:00Z')]),
    );
    expect(bookOf(content(fileOf({ ...book, counts: 'last' })))).toEqual({ ...book, counts: 'last' });
    expect(fileOf(EMPTY)).toBeUndefined();
  });

  it('leaves out a host’s over time, and remembers whose clock it was', () => {
    const marked = { doubts: [doubt('overTime'), doubt('edited')], result: undefined };
    const codes = (each: HandedIn) => gradedEntry(each, marked).doubts.map(({ code }) => code);
    expect(codes(handed(submission('ana')))).toEqual(['overTime', 'edited']);
    const host = bookOf(content({ assignment, submissions: [submission('ana')] }));
    const [again] = [...bookOf(content(fileOf(host))).handedIn.values()];
    expect(codes(again!)).toEqual(['edited']);
  });

  it('without a trainee has nothing of them; a copy for one names nobody else, and no fault', () => {
    const [ana, bo] = [handed(submission('ana')), handed(submission('bo'), 'b.json')];
    const copied = gradedEntry(ana, { doubts: [doubt('othersLog', 1, { trainee: 'bo' })], result: undefined });
    const book: Book = {
      ...bookOf(
        content(assignment),
        overrulesFile([overrule('ana', 10, '2026-03-04T10:00:00Z'), overrule('bo', 20, '2026-03-04T11:00:00Z')]),
      ),
      handedIn: new Map([ana, bo].map((each) => [each.key, each])),
      entries: new Map([[ana.key, copied]]),
    };
    expect(text(fileOf(withoutTrainee(book, 'ana')))).not.toContain('ana');
    expect(withoutTrainee(book, 'ana').entries.size).toBe(0);
    const person = text(personOf(book, 'ana'));
    expect(person).toContain('"reason":"seen"');
    expect(person).toContain('othersLog');
    expect(person).not.toMatch(/"bo"|Name of bo|"items":\[|"truth"/);
  });
});

describe('a copy for a trainee', () => {
  it('has which of their answers were right, and not which choice would have been', () => {
    const setting = { ...assignment, items: [], papers: [SMALL_EXAM] };
    const sheet = answered(setting, 'ana', 0, 2);
    const handedIn = content(sheet);
    if (handedIn.kind !== 'handedIn') throw new Error(handedIn.kind);
    const { submission: _, ...marked } = createGrader(setting, library, ['ana']).grade(sheet);
    const entry = gradedEntry(handedIn.handedIn, marked);
    const book: Book = { ...bookOf(content(setting), handedIn), entries: new Map([[handedIn.handedIn.key, entry]]) };
    const [own] = (personOf(book, 'ana') as { submissions: { points: number; answers: object[] }[] }).submissions;
    expect(own).toMatchObject({ points: 66.7, submission: { choices: sheet.choices } });
    expect(own!.answers.map((each) => Object.values(each)).map(([, right]) => right)).toEqual([
      false,
      false,
      true,
      true,
      true,
      true,
    ]);
    expect(text(own)).not.toContain('misconception');
  });
});

describe('what a hand brings', () => {
  const zip = (files: Record<string, string>) =>
    new File(
      [new Uint8Array(zipSync(Object.fromEntries(Object.entries(files).map(([name, inside]) => [name, strToU8(inside)]))))],
      'all.zip',
    );

  it('is read out of a zip file, but for what is none of ours', async () => {
    const file = zip({ 'class/ana.json': text(submission('ana')), 'class/notes.txt': 'x' });
    const { files, problems } = await opened([{ name: 'all.zip', file }]);
    expect(problems).toEqual([]);
    expect(files.map(({ name }) => name)).toEqual(['all.zip/class/ana.json']);
    expect(contentOf(await files[0]?.text(), 'a.json').kind).toBe('handedIn');
  });

  it('says which zip file is damaged, and reads the others', async () => {
    const good = { name: 'a.json', file: new File(['{}'], 'a.json') };
    const { files, problems } = await opened([{ name: 'torn.zip', file: new File(['PK no'], 'torn.zip') }, good]);
    expect(files.map(({ name }) => name)).toEqual(['a.json']);
    expect(problems).toMatchObject([{ file: 'torn.zip', error: { code: 'classroom.zip' } }]);
  });

  it('is not unpacked to more than a class can be', async () => {
    const bytes = new DataView(await zip({ 'a.json': '{}', 'b.json': '{}' }).arrayBuffer());
    // PKWARE APPNOTE 4.3.12: the unpacked size stands 24 bytes into each header of the central directory.
    for (let at = 0; at < bytes.byteLength - 28; at++)
      if (bytes.getUint32(at, true) === 0x02014b50) bytes.setUint32(at + 24, 60_000_000, true);
    const file = new File([bytes.buffer as ArrayBuffer], 'all.zip');
    const { files, problems } = await opened([{ name: 'all.zip', file }]);
    expect(files).toEqual([]);
    expect(problems).toMatchObject([{ error: { code: 'data.large' } }]);
  });
});

describe('rows', () => {
  const row = (code: string, points: number | undefined, open = 0): Row => ({
    trainee: { code, name: code.toUpperCase() },
    cells: [0, 1].map((item) => ({
      item,
      entry: undefined,
      result: undefined,
      attempts: 0,
      points,
      overrule: undefined,
      doubts: [],
      open: item < open,
    })),
    total: points ?? 0,
  });
  const rows = [row('a', 50, 1), row('b', undefined), row('c', 90, 2)];
  const order = (...args: Parameters<typeof nextSorting>) =>
    sortedRows(rows, nextSorting(...args))
      .map(({ trainee }) => trainee.code)
      .join('');

  it('stand by whatever heading was pressed, the most first; who has no points is last either way', () => {
    expect(order(BY_CODE, 0)).toBe('cab');
    expect(order({ by: 0, isDown: true }, 0)).toBe('acb');
    expect(order(BY_CODE, 'doubts')).toBe('cab');
    expect(order(BY_CODE, 'total')).toBe('cab');
    expect(order(BY_CODE, 'code')).toBe('cba');
    expect(order(BY_CODE, 'name')).toBe('abc');
  });
});

describe('a doubt', () => {
  beforeAll(speakEnglish);

  it('has words of its own, whichever it is', () => {
    const said = DOUBTS.map((code) => doubtText(doubt(code, 3, { why: 'pace', reason: 'notHere', rig: 'trainingBoard' })));
    expect(new Set(said).size).toBe(DOUBTS.length);
    for (const words of said) expect(words).not.toMatch(/gradebook:|refusal:|rig:/);
    expect(doubtText(doubt('refused', 3, { reason: 'openWatch' }))).toContain('a wait without a length');
  });
});
