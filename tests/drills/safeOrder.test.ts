/** Safe orders, judged again by plain rules of NFPA 70E and OSHA 29 CFR 1910.333 (from memory), from what each order's steps read. */
import { describe, expect, it } from 'vitest';
import type { Action } from '../../src/attempt/actions.ts';
import { perform } from '../../src/attempt/attempt.ts';
import { createBank } from '../../src/drills/draw.ts';
import type { Item } from '../../src/drills/item.ts';
import { safeOrder } from '../../src/drills/kinds/safeOrder.ts';
import { library } from '../scenario/shipped.ts';
import { walked } from './by-ngspice.ts';
import { MANY } from './worlds.ts';

const FULL = process.env.BELLWIRE_FULL !== undefined;
const bank = createBank([...library.rigs.values()]);
const numbers = Array.from({ length: FULL ? MANY : 18 }, (_, index) => (FULL ? index : index * 13));
const items = numbers.flatMap((number) => bank.item(safeOrder, number) ?? []);

/** NFPA 70E: below 50 V nobody has to isolate; less than a tenth of that on a meter is absence of voltage. */
const LIVE_VOLTS = 50;
const ABSENT_VOLTS = 5;

interface Seen {
  readonly action: Action;
  /** AC volts on the display after it. */
  readonly volts: number | undefined;
  readonly onOhms: boolean;
}

/** Every step that led here, then those of an order. @throws where one cannot be taken */
function seen(item: Item, order: readonly Action[]): Seen[] {
  const attempt = walked(item.scene);
  for (const action of order) if (!perform(attempt, action).ok) throw new Error(`refused: ${JSON.stringify(action)}`);
  return attempt.steps.map(({ action, view }) => ({
    action,
    volts: view.reading?.unit === 'V~' ? view.reading.value : undefined,
    onOhms: view.fn === 'ohms',
  }));
}

const actionsOf = (item: Item, index: number): readonly Action[] => {
  const said = item.choices[index]?.said;
  return said?.is === 'actions' ? said.actions : [];
};

const RULES = {
  disconnected: 'disconnected from its source before work, and not given back meanwhile',
  tested: 'absence of voltage tested where the work is, after disconnecting and before work',
  proved: 'no test that reads dead before the tester was proved on a live source',
  provedAgain: 'tester proved on a live source after the test and before work',
  coversFirst: 'covers on before power comes back, and that last',
} as const;

/** Which rules an order breaks. */
function broken(item: Item, order: readonly Action[]): string[] {
  const steps = seen(item, order);
  const at = item.ask.values.at;
  const place = at?.is === 'point' ? at.point : '';
  const turned = (positions: readonly string[]) =>
    steps.findIndex(({ action }) => action.name === 'operate' && positions.includes(action.position));
  const off = turned(['off', 'out']);
  const on = turned(['on', 'in']);
  const work = steps.findIndex(({ action, onOhms }) => onOhms || action.name === 'replace' || action.name === 'lift');
  const test = steps.findIndex(
    ({ action, volts }, index) =>
      index > off && action.name === 'probe' && action.at === place && volts !== undefined && volts < ABSENT_VOLTS,
  );
  const proofs = steps.flatMap(({ action, volts = 0 }, index) => (action.name === 'probe' && volts > LIVE_VOLTS ? [index] : []));
  const rules: Readonly<Record<string, boolean>> = {
    [RULES.disconnected]: off >= 0 && off < work && !(on > off && on < work),
    [RULES.tested]: test > off && test < work,
    [RULES.provedAgain]: proofs.some((index) => index > test && index < work),
    [RULES.proved]: steps.every(
      ({ action, volts }, index) =>
        action.name !== 'probe' || volts === undefined || volts >= ABSENT_VOLTS || proofs.some((proof) => proof < index),
    ),
    [RULES.coversFirst]:
      on < 0 || (on > work && steps.every(({ action }, index) => action.name !== 'cover' || action.open || index < on)),
  };
  return Object.keys(rules).filter((rule) => rules[rule] === false);
}

describe('orders of work on a dead circuit', () => {
  it('are asked for with and without putting everything back', () => {
    expect(items.length).toBeGreaterThan(numbers.length / 2);
    expect(new Set(items.map(({ ask }) => ask.key))).toEqual(new Set(['work', 'whole']));
  });

  it('are of the same four to nine real steps', () => {
    for (const item of items) {
      const sorted = item.choices.map((_, index) =>
        actionsOf(item, index)
          .map((action) => JSON.stringify(action))
          .sort(),
      );
      for (const each of sorted) expect(each, `${item.number}`).toEqual(sorted[0]);
      expect(sorted[0]!.length).toBeGreaterThanOrEqual(4);
      expect(sorted[0]!.length).toBeLessThanOrEqual(9);
    }
  });

  it('keep every rule in one choice, and break one in each other', { timeout: 1_800_000 }, () => {
    const alone = new Set<string>();
    for (const item of items) {
      item.choices.forEach((_, index) => {
        const rules = broken(item, actionsOf(item, index));
        if (index === item.right) expect(rules, `${item.number}`).toEqual([]);
        else expect(rules.length, `${item.number} ${JSON.stringify(actionsOf(item, index))}`).toBeGreaterThan(0);
        for (const rule of rules.length === 1 ? rules : []) alone.add(rule);
      });
    }
    // Each of these mistakes is offered by itself, too.
    const each = [RULES.provedAgain, RULES.coversFirst, RULES.tested];
    expect([...alone]).toEqual(expect.arrayContaining(FULL ? [...each, RULES.proved] : each));
  });
});
