/** The display, recomputed by ngspice: the item's own circuit, put together anew, with the meter wired in between its two points. */
import { describe, expect, it } from 'vitest';
import { createBank } from '../../src/drills/draw.ts';
import type { Item } from '../../src/drills/item.ts';
import { reading } from '../../src/drills/kinds/reading.ts';
import type { Reading } from '../../src/meter/read.ts';
import { library } from '../scenario/shipped.ts';
import { abs, solvedBySpice, walked } from './by-ngspice.ts';
import { MANY } from './worlds.ts';

const FULL = process.env.BELLWIRE_FULL !== undefined;
const bank = createBank([...library.rigs.values()]);
const numbers = Array.from({ length: FULL ? MANY : 10 }, (_, index) => (FULL ? index : index * 43 + 1));
const items = numbers.flatMap((number) => bank.item(reading, number) ?? []);
/** More of the same houses, to see what is asked for: another simulator takes its time. */
const more = numbers.flatMap((number) => [1, 2, 3].flatMap((next) => bank.item(reading, number + next) ?? []));

/** What each function puts across the circuit, the largest value that it shows, and its accuracy: common practice, no source. */
const METER: Readonly<Record<string, { ohms: number; farads: number; most: number; percent: number; counts: number }>> = {
  voltsAc: { ohms: 10e6, farads: 100e-12, most: 600, percent: 1, counts: 3 },
  voltsLoaded: { ohms: 3000, farads: 100e-12, most: 600, percent: 2, counts: 3 },
  voltsDc: { ohms: 10e6, farads: 100e-12, most: 600, percent: 0.5, counts: 2 },
  ohms: { ohms: 3000, farads: 0, most: 60e6, percent: 0.9, counts: 2 },
};
/** From here on ohms say that the circuit is live, volts. */
const LIVE_VOLTS = 0.5;
/** What the ohms function drives through the circuit here: any current would do, it is linear. */
const TEST_AMPS = 1e-3;

type Shown = { readonly kind: 'number'; readonly value: number } | { readonly kind: 'overload' | 'live' };

async function shown(item: Item): Promise<Shown> {
  const { leads } = item.ask.values;
  if (leads?.is !== 'leads') throw new Error('no leads');
  const { fn, red, black } = leads;
  const { ohms, farads, most } = METER[fn]!;
  const attempt = walked(item.scene);
  const burdened = await solvedBySpice(attempt, (node) => [
    `rmeter__ ${node(red)} ${node(black)} ${ohms}`,
    ...(farads > 0 ? [`cmeter__ ${node(red)} ${node(black)} ${farads}`] : []),
  ]);
  const within = (value: number): Shown => (Math.abs(value) > most ? { kind: 'overload' } : { kind: 'number', value });
  if (fn === 'voltsAc' || fn === 'voltsLoaded') return within(abs(burdened.ac(red, black)));
  if (fn === 'voltsDc') return within(burdened.dc(red, black));
  if (abs(burdened.ac(red, black)) > LIVE_VOLTS || Math.abs(burdened.dc(red, black)) > LIVE_VOLTS) return { kind: 'live' };
  const still = await solvedBySpice(attempt);
  const driven = await solvedBySpice(attempt, (node) => [`imeter__ ${node(black)} ${node(red)} dc ${TEST_AMPS} ac 0`]);
  return within((driven.dc(red, black) - still.dc(red, black)) / TEST_AMPS);
}

const displays = (item: Item): Reading[] => item.choices.flatMap(({ said }) => (said.is === 'reading' ? [said.reading] : []));

describe('what the meter reads', () => {
  it('is asked of volts and ohms, with something on the display, without, and where no number is honest', () => {
    expect(items.length).toBeGreaterThan(numbers.length / 2);
    const right = [...items, ...more].map((item) => displays(item)[item.right]!);
    expect(new Set(right.map(({ fn }) => fn)).size).toBeGreaterThan(1);
    expect(new Set(right.map(({ kind }) => kind)).size).toBeGreaterThan(1);
  });

  it('follows from what the reason tells of the two points', () => {
    const told = [...items, ...more].flatMap((item) => {
      const shown = displays(item)[item.right]!;
      const volts = item.why.find(({ key }) => key === 'toCommon' || key === 'toEarth')?.values;
      if (!volts || item.why.some(({ key }) => key === 'burden')) return [];
      const [red = 0, black = 0] = [volts.redVolts, volts.blackVolts].map((said) =>
        said?.is === 'reading' ? said.reading.value : said?.is === 'quantity' ? said.value : 0,
      );
      const how = item.why.find(({ key }) => ['opposite', 'floating'].includes(key))?.key;
      const follows = how === 'opposite' ? red + black : Math.abs(red - black);
      return [{ number: item.number, how, off: Math.abs(follows - shown.value), room: 1 + shown.value / 20 }];
    });
    const unexplained = told.filter(({ how }) => how === 'floating');
    const others = told.filter((each) => !unexplained.includes(each));
    // What is held by nothing is told so, and nothing is reckoned with it.
    expect(unexplained.length).toBeLessThan(1 + told.length / 10);
    expect(unexplained.filter(({ off, room }) => off <= room)).toEqual([]);
    expect(others.length).toBeGreaterThan(3);
    expect(others.filter(({ off, room }) => off > room)).toEqual([]);
  });

  it('is what ngspice finds, to the last digit and 0.1 %; a wrong choice is off by more than the accuracy', {
    timeout: 1_800_000,
  }, async () => {
    for (const item of items) {
      const found = await shown(item);
      displays(item).forEach((display, index) => {
        const what = `${item.number}: ${display.fn} ${display.kind} ${display.text}, ngspice ${JSON.stringify(found)}`;
        const alike = display.kind === found.kind;
        if (index === item.right) expect(alike, what).toBe(true);
        if (!alike || found.kind !== 'number') {
          expect(alike, what).toBe(index === item.right);
          return;
        }
        const off = Math.abs(display.value - found.value);
        const { percent, counts } = METER[display.fn]!;
        if (index === item.right)
          expect(off, what).toBeLessThanOrEqual(display.resolution / 2 + 1e-3 * Math.abs(found.value) + 1e-3);
        else expect(off, what).toBeGreaterThan((percent / 100) * Math.abs(found.value) + counts * display.resolution);
      });
    }
  });
});
