/** What a learning system gives and keeps, turned into what the app understands, and back. */
import { expect, it } from 'vitest';
import { cmi5Asked } from '../../../src/app/lms/cmi5.ts';
import { codeOf, packResume, unpackResume } from '../../../src/app/lms/session.ts';
import { codeSchema } from '../../../src/classroom/assignment.ts';

it.each([
  ['a.lópez@school.example', 'a-lopez-school-example'],
  ['{7C-1}', '7C-1'],
  ['', 'Ana-Maria'],
  ['×××', 'Ana-Maria'],
  [`${'x'.repeat(39)}--y`, 'x'.repeat(39)],
])('the learner %j gets the code %s, which is one', (id, code) => {
  expect(codeOf({ id, name: 'Ana María' })).toBe(code);
  expect(codeSchema.safeParse(code).success).toBe(true);
});

it('resume data come back as they were; a long attempt fits what SCORM 1.2 keeps; anything else is nothing', () => {
  const steps = Array.from({ length: 150 }, (_, index) => ({
    at: index * 6.5,
    action: { name: 'probe', lead: index % 2 ? 'red' : 'black', at: `board.${'RCWYG'[index % 5]}` },
  }));
  const state = { code: 't1', items: [{ item: 0, attempt: 1, log: { steps }, stamps: steps.map(({ at }) => Math.round(at)) }] };
  const packed = packResume(state);
  expect(unpackResume(packed)).toEqual(state);
  expect(packed.length).toBeLessThan(4096);
  for (const other of ['', 'half way', packed.slice(0, -9), '<script>']) expect(unpackResume(other)).toBeUndefined();
});

it('only a whole launch by cmi5, over http, is taken for one', () => {
  const query = new URLSearchParams({
    endpoint: 'https://lrs.example/xapi',
    fetch: 'https://lms.example/token?x=1',
    actor: '{}',
    registration: 'r',
    activityId: 'tag:x',
  });
  expect(cmi5Asked(`?${query}`)).toMatchObject({ endpoint: 'https://lrs.example/xapi/', activityId: 'tag:x' });
  query.set('fetch', 'javascript:alert(1)');
  expect(cmi5Asked(`?${query}`)).toBeUndefined();
  query.delete('fetch');
  expect(cmi5Asked(`?${query}`)).toBeUndefined();
  expect(cmi5Asked('')).toBeUndefined();
});
