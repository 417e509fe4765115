import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { isDataError } from '../../src/rig/errors.ts';
import { checkTicket } from '../../src/scenario/check.ts';
import { inFile, loadLibrary } from '../../src/scenario/library.ts';
import { loadTicket, type Ticket } from '../../src/scenario/ticket.ts';
import { RIG } from '../attempt/trainee.ts';
import { wordKeys } from '../tools/locale-keys.ts';
import { leadsInto, mutated, renamed } from './mutate.ts';

const WORDS = wordKeys('.', 'en');

function filesIn(folder: string): Record<string, unknown> {
  const names = readdirSync(folder).filter((name) => name.endsWith('.json'));
  return Object.fromEntries(names.map((name) => [`${folder}/${name}`, JSON.parse(readFileSync(`${folder}/${name}`, 'utf8'))]));
}

const MUTANTS = 1000;
const MOST_MILLISECONDS = 2000;
const TICKET_FILES = filesIn('scenarios/tickets');
const FILES = Object.values(TICKET_FILES);

/** Loads and checks a mutant; the error's code and path, or 'sound'. */
function outcome(json: unknown, seed: number): { code: string; path: string } {
  try {
    const ticket: Ticket = loadTicket(json);
    checkTicket(ticket, RIG);
  } catch (error) {
    if (!isDataError(error)) throw new Error(`seed ${seed} ends in no data error`, { cause: error });
    return { code: error.code, path: error.path };
  }
  return { code: 'sound', path: '' };
}

function tryAll(mutate: (json: unknown, seed: number) => unknown): Map<string, number> {
  const codes = new Map<string, number>();
  for (let seed = 0; seed < MUTANTS; seed++) {
    const json = mutate(FILES[seed % FILES.length], seed);
    const start = performance.now();
    const { code, path } = outcome(json, seed);
    expect(performance.now() - start, `seed ${seed}`).toBeLessThan(MOST_MILLISECONDS);
    codes.set(code, (codes.get(code) ?? 0) + 1);
    if (code === 'sound') continue;
    expect(WORDS, `seed ${seed}`).toContain(`error:${code}`);
    expect(leadsInto(json, path), `seed ${seed}: ${code} at ${path}`).toBe(true);
  }
  return codes;
}

describe('a ticket file with something wrong in it gives one clear error with its place in the file, or is sound', () => {
  it(`${MUTANTS} files broken at random`, { timeout: 120_000 }, () => {
    const codes = tryAll(mutated);
    const misshapen = [...codes].filter(([code]) => code.startsWith('data.')).reduce((sum, [, count]) => sum + count, 0);
    expect(misshapen).toBeGreaterThan(MUTANTS / 2);
    expect(codes.get('sound')).toBeGreaterThan(10);
  });

  it(`${MUTANTS} files of the right shape that name something else than they should`, { timeout: 120_000 }, () => {
    const codes = tryAll(renamed);
    for (const code of ['ticket.rig', 'ticket.target', 'ticket.part', 'ticket.position', 'ticket.works', 'ticket.complaint']) {
      expect(codes.get(code), code).toBeGreaterThan(0);
    }
    expect(codes.get('sound')).toBeGreaterThan(10);
  });

  it('and the library puts the file before the path', () => {
    const broken = { ...TICKET_FILES, 'tickets/odd.json': { ...(FILES[0] as object), rig: 'noSuchRig' } };
    expect(() => loadLibrary(filesIn('scenarios/rigs'), broken)).toThrow(
      expect.objectContaining({ code: 'ticket.noRig', path: 'tickets/odd.json › rig' }),
    );
    expect(() => inFile('a.json', () => loadTicket({}))).toThrow(
      expect.objectContaining({ path: expect.stringMatching(/^a\.json › ./) }),
    );
  });
});

describe('each thing that a ticket may get wrong has an error of its own', () => {
  const ticket = (change: (json: Record<string, never>) => void): unknown => {
    const json = structuredClone(TICKET_FILES['scenarios/tickets/clicksButWontStart.json']) as Record<string, never>;
    change(json);
    return json;
  };
  // biome-ignore lint/suspicious/noExplicitAny: a file from outside has any shape
  const cases: readonly (readonly [string, string, (json: any) => void])[] = [
    ['ticket.rig', 'rig', (json) => (json.rig = 'other')],
    ['ticket.target', 'faults[0].target', (json) => (json.faults[0].target = 'nobody')],
    ['ticket.mode', 'faults[0].mode', (json) => (json.faults[0].mode = 'tired')],
    ['ticket.magnitude', 'faults[0].magnitude', (json) => (json.faults[0].magnitude = 81)],
    ['ticket.part', 'complaint.history[0].part', (json) => (json.complaint.history[0].part = 'nobody')],
    ['ticket.part', 'complaint.observed[1].part', (json) => (json.complaint.observed[1].part = 'nobody')],
    ['ticket.control', 'complaint.history[0].control', (json) => (json.complaint.history[0].control = 'volume')],
    ['ticket.position', 'complaint.history[0].position', (json) => (json.complaint.history[0].position = 'warm')],
    ['ticket.value', 'complaint.history[1].value', (json) => (json.complaint.history[1].value = 400)],
    ['ticket.works', 'complaint.works[0]', (json) => (json.complaint.works[0].is = 'off')],
    ['ticket.complaint', 'complaint.observed[0]', (json) => (json.complaint.observed[0].is = 'heat')],
    [
      'ticket.noComplaint',
      'complaint.observed',
      (json) => (json.complaint.observed = [{ part: 'blower', sign: 'running', is: 'cool' }]),
    ],
  ];
  it.each(cases)('%s at %s', (code, path, change) => {
    expect(outcome(ticket(change), 0)).toEqual({ code, path });
  });
});
