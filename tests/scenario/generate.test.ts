/** Tickets drawn from a seed: each sound, solved, and unlike the others. */
import { describe, expect, it } from 'vitest';

import { logOf, replay } from '../../src/attempt/attempt.ts';
import { generate } from '../../src/cli/generate.ts';
import { layHouse } from '../../src/rig/house.ts';
import { checkTicket } from '../../src/scenario/check.ts';
import { sameness } from '../../src/scenario/generate.ts';
import { GRADE_FIGURES, gradeOf } from '../../src/scenario/grade.ts';
import { solveTicket } from '../../src/scenario/solve.ts';
import { HEARD, SYMPTOMS } from '../../src/scenario/symptom.ts';
import { loadTicket, VOICES } from '../../src/scenario/ticket.ts';
import { proofOf } from '../../src/score/proof.ts';
import { debriefOf, yardstickFor } from '../../src/score/score.ts';
import { wordKeys } from '../tools/locale-keys.ts';
import { library } from './shipped.ts';

const RIG = library.rigs.get('furnaceAndCondenser')!;
const LONG = { timeout: 300_000 };
const order = { rigs: [RIG], skill: undefined, grade: undefined, count: 4, seed: 7 };

describe('drawn tickets', () => {
  it(
    'stand by themselves: read back from JSON, each is checked, solved and scored from nothing, and comes out the same',
    LONG,
    () => {
      const { made } = generate(order);
      expect(made).toHaveLength(order.count);
      for (const { ticket, measured } of made) {
        const read = loadTicket(JSON.parse(JSON.stringify(ticket)));
        const rig = layHouse(RIG, read.house);
        checkTicket(read, rig);
        // Its suspects are gathered anew here; the generator had them from the house that all its tickets share.
        const yardstick = yardstickFor(read, rig);
        expect(yardstick.par.seconds, ticket.id).toBe(measured.seconds);
        expect(gradeOf(yardstick.par)).toBe(measured.grade);
        const attempt = solveTicket(read, rig, yardstick);
        const debrief = debriefOf(attempt, undefined, yardstick);
        expect(debrief.suspectsAtStart).toBe(measured.suspects);
        expect(debrief.suspectsAtStart).toBeGreaterThan(1);
        expect(debrief.rightNaming).toBe(true);
        expect(proofOf(attempt).proved, ticket.id).toBe(true);
        expect(debrief.total).toBe(measured.total);
        expect(debrief.total).toBeGreaterThanOrEqual(90);
        expect(replay(read, rig, logOf(attempt)).steps).toHaveLength(attempt.steps.length);
      }
    },
  );

  it('are the same from the same seed, others from another, and none twice', LONG, () => {
    const few = { ...order, count: 2 };
    const [first, again, other] = [generate(few), generate(few), generate({ ...few, seed: 8 })];
    expect(again.made).toEqual(first.made);
    const keys = [...first.made, ...other.made].map(sameness);
    expect(new Set(keys).size).toBe(keys.length);
  });

  it('have the grade that was asked for, and say what was refused instead', LONG, () => {
    const { made, rejected } = generate({ ...order, grade: 'master', count: 1 });
    expect(made.map(({ measured }) => measured.grade)).toEqual(['master']);
    expect(rejected.get('grade') ?? 0).toBeGreaterThan(0);
  });

  it('tell the customer’s side by keys that have words in every language', () => {
    for (const language of ['en', 'es', 'fr']) {
      const words = wordKeys('.', language);
      const keys = [
        ...SYMPTOMS.map((symptom) => `ticket:made.title.${symptom}`),
        ...SYMPTOMS.flatMap((symptom) => Array.from({ length: VOICES }, (_, voice) => `ticket:made.say.${symptom}.${voice + 1}`)),
        ...HEARD.map((heard) => `ticket:made.heard.${heard}`),
      ];
      expect(keys.filter((key) => !words.has(key))).toEqual([]);
    }
  });
});

describe('a grade', () => {
  const par = (seconds: number, bitsPerStep: number) =>
    gradeOf({ actions: Array(10).fill({ name: 'close' }), seconds, gainBits: bitsPerStep * 10, left: [] });
  const { quickSeconds, longSeconds, littleBits, muchBits } = GRADE_FIGURES;

  it('rises with the time that the short way takes, and falls with what a step of it tells', () => {
    expect(par(quickSeconds, muchBits)).toBe('apprentice');
    expect(par(longSeconds, muchBits)).toBe('apprentice');
    expect(par(longSeconds, littleBits - 0.01)).toBe('journeyman');
    expect(par(longSeconds + 1, muchBits)).toBe('journeyman');
    expect(par(longSeconds + 1, littleBits - 0.01)).toBe('master');
  });
});
