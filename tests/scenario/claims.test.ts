/** Skills that tickets ask for: each of the trade's habits somewhere, and a jumper only where one tells something. */
import { describe, expect, it } from 'vitest';
import type { Action } from '../../src/attempt/actions.ts';
import { begin, perform, refusalOf } from '../../src/attempt/attempt.ts';
import { SKILLS } from '../../src/scenario/skills.ts';
import { yardstickFor } from '../../src/score/score.ts';
import { followAttempt } from '../../src/suspects/follow.ts';
import { library, rigOf } from './shipped.ts';

describe('tickets', () => {
  it.each(SKILLS)('two or more ask for %s', (skill) => {
    expect(library.tickets.filter(({ skills }) => skills?.includes(skill)).length).toBeGreaterThanOrEqual(2);
  });
});

it('where the board does not see the flame that burns, the short way puts the meter in series with the rod, with the power off', {
  timeout: 60_000,
}, () => {
  const ticket = library.tickets.find(({ id }) => id === 'triesThreeTimes')!;
  const { par } = yardstickFor(ticket, rigOf(ticket));
  const at = par.actions.findIndex((action) => action.name === 'meter' && action.fn === 'microampsDc');
  const off = par.actions.findIndex((action) => action.name === 'operate' && action.position === 'off');
  expect(off).toBeGreaterThanOrEqual(0);
  expect(at).toBeGreaterThan(off);
  expect(par.left.at(-1)).toBe(1);
});

/** Calls that a jumper from the supply makes, by the letters of the screws. */
const CALLS = ['W', 'W1', 'Y', 'Y1', 'G'];

describe.each(library.tickets.filter(({ skills }) => skills?.includes('jumperAtTheBoard')).map((each) => [each.id, each] as const))(
  '%s',
  (_, ticket) => {
    it('a jumper from R to a call, away from the thermostat, tells some suspects from others', { timeout: 120_000 }, () => {
      const rig = rigOf(ticket);
      const strips = begin(ticket, rig).assembly.parts.filter(
        (part) => part.kind.calls === undefined && part.data.rides === undefined,
      );
      const gains = strips.flatMap((part) =>
        CALLS.flatMap((call) => {
          const [from, to] = [`${part.id}.R`, `${part.id}.${call}`];
          const attempt = begin(ticket, rig);
          const go = (action: Action): boolean => refusalOf(attempt, action) === undefined && perform(attempt, action).ok;
          go({ name: 'walk', to: part.data.place });
          if (part.data.cover !== undefined) go({ name: 'cover', cover: part.data.cover, open: true });
          for (const { id, kind } of attempt.assembly.parts) {
            if (kind.bypass) go({ name: 'operate', part: id, control: kind.bypass.control, position: kind.bypass.on });
          }
          if (!go({ name: 'jumper', from, to, on: true })) return [];
          go({ name: 'wait', seconds: 60 });
          return followAttempt(attempt)
            .columns.slice(-2)
            .map(({ gainBits }) => gainBits);
        }),
      );
      expect(Math.max(...gains, 0)).toBeGreaterThan(0.1);
    });
  },
);
