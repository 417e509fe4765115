import i18next from 'i18next';
import { beforeAll, expect, test } from 'vitest';
import { nameWires, wireNameOf } from '../../src/app/wire-names.ts';
import { wireName } from '../../src/app/words.ts';
import { wordsOf } from '../../src/cli/files.ts';
import type { RigData } from '../../src/rig/schema.ts';
import { library } from '../scenario/shipped.ts';
import { speakEnglish } from './english.ts';

beforeAll(speakEnglish);

const written = () => Object.keys((wordsOf('en') as { rig: { wire: Record<string, string> } }).rig.wire);
const first = library.rigs.get('furnaceAndCondenser');

/** The furnace's rig with other ids for its wires, so that none has words. */
const wordless: RigData = { ...first!, wires: first!.wires.map((wire) => ({ ...wire, id: `${wire.id}Wordless` })) };

test('a wire without words is named by where it runs: a conductor by its letter and cable, others by what they join', () => {
  nameWires([wordless]);
  expect(wireName('statYWordless')).toBe('Y conductor, thermostat cable');
  expect(wireName('limitRolloutWordless')).toBe('wire from high limit to roll-out switch');
  expect(wireName('gasOutWordless')).toBe('wire from control board GV to gas valve');
  expect(wireName('pinYWordless')).toBe('Y pin and socket');
  // Words that are written stay.
  expect(wireName('statY')).toBe(i18next.t('rig:wire.statY'));
});

test('an id that several rigs give to a wire means the same wire in all of them', () => {
  const names = new Map<string, Set<string>>();
  for (const rig of library.rigs.values()) {
    for (const wire of rig.wires) {
      if (written().includes(wire.id)) continue;
      names.set(wire.id, (names.get(wire.id) ?? new Set()).add(wireNameOf(rig, wire)));
    }
  }
  expect([...names].filter(([, each]) => each.size > 1).map(([id, each]) => `${id}: ${[...each].join(' | ')}`)).toEqual([]);
});
