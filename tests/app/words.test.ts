import { beforeAll, describe, expect, test } from 'vitest';
import { doneText, doText } from '../../src/app/action-words.ts';
import { findingsOf, readingsOf } from '../../src/app/bench/readings.ts';
import { retell } from '../../src/app/retell.ts';
import { findingText, noticedShort, noticedTexts, readingWords, stepSpoken, tellStep } from '../../src/app/step-words.ts';
import { clock, hasWords, modeName, readingSpoken, readingText, span, terminalName } from '../../src/app/words.ts';
import { optionsOf, viewOf } from '../../src/attempt/attempt.ts';
import type { BenchView, StepView } from '../../src/attempt/view.ts';
import { namingsOf } from '../../src/suspects/hypotheses.ts';
import { library, oneOfEachRig, rigOf, start, take, ticket } from '../scenario/shipped.ts';
import { black, lift, mat, meter, open, pull, red, SOLUTIONS, seat, turn, wait, walk } from '../score/solutions.ts';
import { speakEnglish } from './english.ts';

beforeAll(speakEnglish);

function lastOf(view: BenchView): StepView {
  const last = view.steps.at(-1);
  if (last === undefined) throw new Error('no step');
  return last;
}

test('times on the job read as a clock, and waits in the short form', () => {
  expect(clock(3725)).toBe('01:02:05');
  expect(clock(59.6)).toBe('00:01:00');
  expect([15, 300, 150].map(span)).toEqual(['15 s', '5 min', '2 min 30 s']);
});

test('a supply reading is named by its terminals and shown with its unit', () => {
  const attempt = start('fanButNoCooling');
  take(attempt, pull('thermostat'), red('subbase.R'), black('subbase.C'), meter('voltsAc'));
  const view = viewOf(attempt);
  const step = lastOf(view);
  expect(readingWords(tellStep(view, step))).toBe('R to C, sub-base');
  expect(step.reading && readingText(step.reading)).toMatch(/^2\d\.\d\d V~$/);
  expect(step.reading && readingSpoken(step.reading)).toMatch(/^2\d\.\d\d volts AC$/);
  expect(stepSpoken(view, step)).toMatch(/^meter on volts AC\. Meter: 2\d\.\d\d volts AC$/);
});

test('ohms on a live circuit is told as live, with no number', () => {
  const attempt = start('fanButNoCooling');
  take(attempt, pull('thermostat'), red('subbase.R'), black('subbase.C'), meter('ohms'));
  const { reading } = lastOf(viewOf(attempt));
  expect(reading?.kind).toBe('live');
  expect(reading && readingText(reading)).toBe('LIVE');
});

test('the notebook has a reading once, however long the leads stay', () => {
  const job = ticket('fanButNoCooling');
  const steps = [
    pull('thermostat'),
    red('subbase.R'),
    black('subbase.C'),
    meter('voltsDc'),
    wait(15),
    wait(15),
    lift('statR', 'to'),
  ];
  expect(readingsOf(retell(job, rigOf(job), steps).told).map((each) => each.step.number)).toEqual([4, 7]);
});

test('a step under a standing reading is told by what it showed, and a walk that shows nothing says so', () => {
  const job = ticket('quietAfterTheStorm');
  const { told } = retell(job, rigOf(job), [
    walk('furnace'),
    meter('voltsAc'),
    red('floatSwitch.a'),
    black('floatSwitch.b'),
    { name: 'look', part: 'drainPan' },
    wait(15),
    walk('hallway'),
    walk('furnace'),
  ]);
  expect(readingsOf(told).map((each) => each.step.number)).toEqual([4]);
  expect(told[4] && findingText(told[4])).toBe('drain pan: full of water');
  expect(told[3] && findingText(told[3])).toMatch(/^2\d\.\d\d V~$/);
  expect(told[7] && findingText(told[7])).toBe('nothing new seen or heard');
  // What got the meter ready proves nothing; all else may, were it that nothing followed.
  expect(findingsOf(told).map((each) => each.step.number)).toEqual([1, 4, 5, 6, 7, 8]);
});

test('who puts a thing right has seen it since: what a look at it once showed is drawn no more', () => {
  const attempt = start('quietAfterTheStorm');
  const pan = () => viewOf(attempt).parts.find((part) => part.id === 'drainPan')?.signs.water;
  take(attempt, walk('furnace'), { name: 'look', part: 'drainPan' });
  expect(pan()).toBe('full');
  take(attempt, { name: 'name', target: 'drainPan', mode: 'full', evidence: [] }, { name: 'replace', target: 'drainPan' });
  expect(pan()).toBeUndefined();
});

test('what opening the blower door stops is told with the door', () => {
  const job = ticket('humsOutside');
  const { told } = retell(job, rigOf(job), [walk('furnace'), open('blowerDoor')]);
  expect(told[1] && noticedShort(told[1], 9)).toMatch(/status light off/);
});

test('opening the blower door is told with what it lets one see', () => {
  const attempt = start('fanButNoCooling');
  take(attempt, walk('furnace'), open('blowerDoor'));
  const view = viewOf(attempt);
  const noticed = noticedTexts(view, lastOf(view));
  expect(noticed.length).toBeGreaterThan(0);
  expect(new Set(noticed).size).toBe(noticed.length);
});

test('unmarked pins are counted from the left as they are seen, mirrored when turned over; on the mat they carry tags', () => {
  const attempt = start('fanButNoCooling');
  const names = () => {
    const body = viewOf(attempt).parts.find((part) => part.id === 'thermostat');
    if (body === undefined) throw new Error('no thermostat');
    return body.terminals.map((terminal) => terminalName(body, terminal));
  };
  take(attempt, pull('thermostat'), turn('thermostat'));
  expect(names()).toEqual([
    'pin 5 from the left',
    'pin 4 from the left',
    'pin 3 from the left',
    'pin 2 from the left',
    'C',
    '+',
    '−',
  ]);
  take(attempt, mat('thermostat'));
  expect(names()).toEqual(['R', 'W', 'Y', 'G', 'C', '+', '−']);
});

test('what was jotted down keeps the names of its time: pins seen from behind, then with pigtails on the mat', () => {
  const job = ticket('fanButNoCooling');
  const behind = [pull('thermostat'), turn('thermostat'), meter('tone'), red('thermostat.R'), black('thermostat.Y')];
  const onTheMat = [mat('thermostat'), red('thermostat.R'), black('thermostat.Y'), seat('thermostat')];
  const { told } = retell(job, rigOf(job), [...behind, ...onTheMat]);
  expect(told.filter((each) => each.measured !== '').map(readingWords)).toEqual([
    'pin 5 from the left to pin 3 from the left, thermostat',
    'R to Y, thermostat',
  ]);
});

/** A key that has no words comes back as itself, without its namespace, or inside braces. */
const WORDLESS = /\{\{|undefined|(part|wire|cable|place|cover|mode|control|position|fn|do)\.[a-z]/;

describe('every solution of every ticket', () => {
  test.each(Object.entries(SOLUTIONS))('%s: each action on offer and each step taken has words', (id, solution) => {
    const attempt = start(id);
    const steps = [...solution.search, { name: 'name' as const, ...solution.name, evidence: [] }, ...solution.after];
    for (const action of steps) {
      const before = viewOf(attempt);
      for (const option of optionsOf(attempt)) {
        const words = doText(before, option);
        if (words === '' || WORDLESS.test(words)) throw new Error(`${JSON.stringify(option)} has no words: ${words}`);
      }
      take(attempt, action);
      const view = viewOf(attempt);
      const step = lastOf(view);
      for (const words of [doneText(view, step.action), stepSpoken(view, step)]) expect(words).not.toMatch(WORDLESS);
      expect(step.unsafe === undefined || hasWords(`app:unsafe.${step.unsafe}`)).toBe(true);
    }
  });
});

test('whatever can be named has words, on every rig', () => {
  const wordless = [...library.rigs.values()]
    .flatMap((rig) => namingsOf(rig))
    .filter(
      ({ target, mode }) => !(hasWords(`rig:part.${target}`) || hasWords(`rig:wire.${target}`)) || WORDLESS.test(modeName(mode)),
    );
  expect([...new Set(wordless.map(({ target, mode }) => `${target}:${mode}`))]).toEqual([]);
});

test('no two terminals of a part have the same name: nobody could say which of them a lead is on', () => {
  for (const each of oneOfEachRig) {
    for (const part of viewOf(start(each.id)).parts) {
      const names = part.terminals.map((terminal) => terminalName(part, terminal));
      expect(new Set(names).size, `${each.rig}: ${part.id}: ${names.join()}`).toBe(names.length);
    }
  }
});
