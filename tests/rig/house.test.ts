import { expect, it } from 'vitest';
import { begin, logOf, perform, replay, viewOf } from '../../src/attempt/attempt.ts';
import { assemble } from '../../src/rig/assemble.ts';
import { layHouse } from '../../src/rig/house.ts';
import { loadTicket } from '../../src/scenario/ticket.ts';
import { prepareGround } from '../../src/suspects/ground.ts';
import { reach, testsAt } from '../../src/suspects/library.ts';
import { standsOf } from '../../src/suspects/stands.ts';
import { rigOf, take, ticket } from '../scenario/shipped.ts';

const base = ticket('fanButNoCooling');
const rig = rigOf(base);
const house = {
  cables: { outdoorCable: { feet: 160, awg: 20 } },
  colours: { statY: 'brown' as const },
  rooms: { [rig.rooms[0]!.id]: { lossBtuPerHourFahrenheit: 900 } },
};

it('a house says how far a cable runs and of what, and what it does not say is the rig’s', () => {
  const laid = layHouse(rig, house);
  const ohms = (which: typeof rig, wire: string) => assemble(which).wireById.get(wire)!.ohms;
  // Four times as far, and one step of two gauges thinner: the area goes by 10^(-2/10), AWG's own rule.
  expect(ohms(laid, 'outY') / ohms(rig, 'outY')).toBeCloseTo(4 * 10 ** (2 / 10), 1);
  expect(ohms(laid, 'statY')).toBe(ohms(rig, 'statY'));
  expect(laid.wires.find((wire) => wire.id === 'statY')!.colour).toBe('brown');
  expect(laid.rooms[0]).toEqual({ ...rig.rooms[0], lossBtuPerHourFahrenheit: 900 });
  expect(layHouse(rig, undefined)).toBe(rig);
});

it.each([
  ['house.unknown', 'house.cables.nowhere', { cables: { nowhere: { feet: 10 } } }],
  ['house.unknown', 'house.colours.doorHot', { colours: { doorHot: 'red' as const } }],
  ['house.unknown', 'house.rooms.attic', { rooms: { attic: {} } }],
  ['house.sameColour', 'house.colours.statY', { colours: { statY: 'green' as const } }],
])('%s where a house does not fit the rig: %s', (code, path, wrong) => {
  expect(() => layHouse(rig, wrong)).toThrow(expect.objectContaining({ code, path }));
});

it('a ticket’s house is in the view', () => {
  const job = loadTicket({ ...JSON.parse(JSON.stringify(base)), house });
  const view = viewOf(begin(job, rigOf(job)));
  expect(view.wires.find((wire) => wire.id === 'statY')!.colour).toBe('brown');
});

it('a meter that lacks a function refuses it, here and in the replay, and no test asks for it', { timeout: 120_000 }, () => {
  const tools = ['voltsAc', 'ohms'] as const;
  const job = loadTicket({ ...JSON.parse(JSON.stringify(base)), tools });
  const attempt = begin(job, rig);
  expect(perform(attempt, { name: 'meter', fn: 'ampsAc' })).toMatchObject({ ok: false, refusal: { code: 'notCarried' } });
  expect(viewOf(attempt).meter.tools).toEqual(tools);
  take(attempt, { name: 'meter', fn: 'voltsAc' }, { name: 'meter', fn: 'off' });
  const rich = begin(base, rig);
  take(rich, { name: 'meter', fn: 'ampsAc' });
  expect(() => replay(job, rig, logOf(rich))).toThrow(expect.objectContaining({ code: 'log.refused' }));
  const asked = (of: typeof job) => {
    const { field } = prepareGround(of, rig);
    const truth = begin(of, rig).bench;
    const still = standsOf(truth).filter((stand) => stand.call === undefined);
    const tests = reach(truth, still).flatMap((each) => testsAt(truth, field.twins, each));
    return new Set(tests.flatMap(({ actions }) => actions.flatMap((action) => (action.name === 'meter' ? [action.fn] : []))));
  };
  expect([...asked(job)].filter((fn) => !job.tools!.includes(fn))).toEqual([]);
  expect([...asked(base)].filter((fn) => !job.tools!.includes(fn)).length).toBeGreaterThan(0);
});
