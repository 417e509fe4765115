/** What a customer calls what has become of their house, and that asking leaves it as it was. */
import { describe, expect, it } from 'vitest';
import { createBench } from '../../src/attempt/bench.ts';
import { assemble } from '../../src/rig/assemble.ts';
import type { Fault } from '../../src/rig/faults.ts';
import { symptomOf } from '../../src/scenario/symptom.ts';
import { library } from './shipped.ts';

const assembly = assemble(library.rigs.get('furnaceAndCondenser')!);

function lived(mode: 'heat' | 'cool', faults: readonly Fault[]) {
  const heating = mode === 'heat';
  return createBench(assembly, faults, {
    weather: heating ? { outdoorFahrenheit: 0, startFahrenheit: 55 } : { outdoorFahrenheit: 100, startFahrenheit: 90 },
    complaint: {
      history: [
        { name: 'operate', part: 'thermostat', control: 'mode', position: mode },
        { name: 'set', part: 'thermostat', control: heating ? 'setHeat' : 'setCool', value: heating ? 75 : 70 },
        { name: 'wait', seconds: 1200 },
      ],
      observed: [],
      works: [],
    },
  });
}

const told = (mode: 'heat' | 'cool', fault: Omit<Fault, 'magnitude'>, magnitude = 0) =>
  symptomOf(lived(mode, [{ ...fault, magnitude }]), lived(mode, [])).symptom;

describe('short cycling', () => {
  it('is what a customer hears where a dirty filter lets the limit open again and again', () => {
    expect(told('heat', { target: 'filter', mode: 'dirty' }, 0.35)).toBe('shortCycles');
  });

  it('is what they hear where the condenser fan stands and the head pressure opens its switch again and again', () => {
    expect(told('cool', { target: 'condenserFan', mode: 'mainOpen' })).toBe('shortCycles');
  });

  it('is not what they hear of what never starts, or of a sound system that runs on', () => {
    expect(told('heat', { target: 'gasValve', mode: 'coilOpen' })).toBe('noHeat');
    expect(told('cool', { target: 'statY', mode: 'open' })).toBe('noCooling');
    expect(symptomOf(lived('heat', []), lived('heat', [])).symptom).toBe('otherwise');
  });

  it('is not the house’s own way: where a sound system would do the same, it is no complaint', () => {
    const dirty = [{ target: 'filter', mode: 'dirty', magnitude: 0.35 }];
    expect(symptomOf(lived('heat', dirty), lived('heat', dirty)).symptom).not.toBe('shortCycles');
  });

  it('is listened for without moving either clock', () => {
    const [faulty, sound] = [lived('heat', [{ target: 'filter', mode: 'dirty', magnitude: 0.35 }]), lived('heat', [])];
    const before = [structuredClone(faulty.world.state), structuredClone(sound.world.state)];
    symptomOf(faulty, sound);
    expect([faulty.world.state, sound.world.state]).toEqual(before);
  });
});
