import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FUNCTION_SPECS, METER_FUNCTIONS, PREFIX_VALUES } from '../../src/meter/functions.ts';
import { accuracyOf, openLeads, readClamp, readMicroamps, readPort } from '../../src/meter/read.ts';
import { chain, portBetween, portOf } from './port.ts';

const volts = (re: number) => portOf({ acVolts: { re, im: 0 } });

describe('the display', () => {
  it.each([
    [0, '0.000', ''],
    [0.0004, '0.000', ''],
    [5.9994, '5.999', ''],
    [6.0001, '6.000', ''],
    [6.001, '6.00', ''],
    [26.84, '26.84', ''],
    [59.996, '60.00', ''],
    [120.04, '120.0', ''],
    [600, '600.0', ''],
  ])('shows %f V in the lowest range that holds it, as %s', (value, text, prefix) => {
    expect(readPort('voltsAc', volts(value))).toMatchObject({ kind: 'number', text, prefix, unit: 'V~' });
  });

  it('says OL above 600 V', () => {
    expect(readPort('voltsAc', volts(601))).toMatchObject({ kind: 'overload', text: 'OL', value: 0 });
  });

  it.each([
    [0.04, '0.0', ''],
    [12.34, '12.3', ''],
    [600, '600.0', ''],
    [601, '0.601', 'k'],
    [4700, '4.700', 'k'],
    [47_000, '47.00', 'k'],
    [470_000, '470.0', 'k'],
    [4.7e6, '4.700', 'M'],
    [47e6, '47.00', 'M'],
  ])('shows %f Ω as %s with prefix %s', (ohms, text, prefix) => {
    const reading = readPort('ohms', portOf({ dcOhms: ohms }));
    expect(reading).toMatchObject({ kind: 'number', text, prefix, unit: 'Ω' });
    expect(reading.value).toBeCloseTo(Number(text) * PREFIX_VALUES[reading.prefix], 9);
  });

  it('says OL above 60 MΩ, which every open contact is', () => {
    expect(readPort('ohms', portOf({ dcOhms: 61e6 }))).toMatchObject({ kind: 'overload', text: 'OL' });
    expect(readPort('ohms', portOf({ dcOhms: 1e9 }))).toMatchObject({ kind: 'overload', text: 'OL' });
  });

  it('shows direct volts with their sign, and no sign on zero', () => {
    expect(readPort('voltsDc', portOf({ dcVolts: -3.004 }))).toMatchObject({ text: '-3.004', value: -3.004 });
    expect(readPort('voltsDc', portOf({ dcVolts: -0.0001 }))).toMatchObject({ text: '0.000', value: 0 });
  });

  it('is blank when off', () => {
    expect(readPort('off', volts(27))).toMatchObject({ kind: 'blank', text: '', unit: '' });
  });

  it('never rounds further than half a last digit, in any range', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-3, max: 6e7, noNaN: true }), (ohms) => {
        const reading = readPort('ohms', portOf({ dcOhms: ohms }));
        expect(reading.kind).toBe('number');
        expect(Math.abs(reading.value - ohms)).toBeLessThanOrEqual(reading.resolution * 0.5000001);
        expect(Number(reading.text.replace('.', ''))).toBeLessThanOrEqual(6000);
      }),
    );
  });
});

describe('burden', () => {
  it('of 10 MΩ beside 100 pF barely loads a supply', () => {
    expect(readPort('voltsAc', portOf({ acVolts: { re: 0, im: 27 }, acOhms: 2 })).text).toBe('27.00');
  });

  it('halves a direct voltage behind 10 MΩ', () => {
    expect(readPort('voltsDc', portOf({ dcVolts: 3, dcOhms: 10e6 })).text).toBe('1.500');
  });

  it('lets an open conductor beside a live one read volts, and loaded volts show that nothing is behind them', () => {
    // 27 V – 1 Ω – R; R to the open conductor by 1 nF (50 ft at 20 pF/ft); the conductor leaks to earth by 1 GΩ.
    // In nanosiemens at 60 Hz: 1 nF is j377, the open contact beside it 1, each leak 1, the meter 100 + j37.7.
    //   AC volts: 27 × |1 + j377| / |(1 + 1 + 1 + 100) + j(377 + 37.7)| = 27 × 377.0 / 427.3 = 23.82 V
    //   loaded:   the meter is 333 333 + j37.7, so 27 × 377.0 / 333 337 = 30.5 mV
    const { topology, values } = chain({ acVolts: 27, ohms: 1 }, { farads: 1e-9 }, {});
    const port = portBetween(topology, values, 2, 0);
    const unloaded = readPort('voltsAc', port);
    expect(unloaded.value).toBeCloseTo(23.82, 2);
    expect(readPort('voltsLoaded', port).value).toBeCloseTo(0.031, 3);
    // A borrowed voltage is no live circuit: the ohms function still gives its honest OL.
    expect(readPort('ohms', port).kind).toBe('overload');
  });

  it('lets two equal neighbours, one live and one earthed, show half the supply less the burden', () => {
    // j377 from R and j377 to the earthed conductor: 27 × 377.0 / |104 + j(754 + 37.7)| = 27 × 377.0 / 798.5 = 12.75 V.
    const { topology, values } = chain({ acVolts: 27, ohms: 1 }, { farads: 1e-9 }, { farads: 1e-9 });
    expect(readPort('voltsAc', portBetween(topology, values, 2, 0)).value).toBeCloseTo(12.75, 2);
  });

  it('lets a corroded splice of 2 kΩ read full volts unloaded and sag loaded', () => {
    const { topology, values } = chain({ acVolts: 27, ohms: 1 }, { ohms: 2000 }, {});
    const port = portBetween(topology, values, 2, 0);
    expect(readPort('voltsAc', port).value).toBeCloseTo(26.99, 2);
    // 27 × 3000 / 5001
    expect(readPort('voltsLoaded', port).value).toBeCloseTo(16.2, 1);
  });

  it('by divider equals the burden wired into the network', () => {
    const { topology, values } = chain({ acVolts: 27, ohms: 5 }, { ohms: 4e6, farads: 2e-10 }, { ohms: 3e6, henries: 500 });
    const { burdenOhms, burdenFarads } = FUNCTION_SPECS.voltsAc;
    const wired = {
      topology: { ...topology, branches: [...topology.branches, { name: 'meter', from: 2, to: 0 }] },
      values: { ...values },
    };
    for (const key of ['ohms', 'henries', 'farads', 'acVolts', 'acVoltsImaginary', 'dcVolts'] as const) {
      wired.values[key] = Float64Array.from([...values[key], 0]);
    }
    wired.values.ohms[3] = burdenOhms;
    wired.values.farads[3] = burdenFarads;
    const { acVolts } = portBetween(wired.topology, wired.values, 2, 0);
    const reading = readPort('voltsAc', portBetween(topology, values, 2, 0));
    expect(reading.value).toBeCloseTo(Math.hypot(acVolts.re, acVolts.im), 2);
  });
});

describe('ohms and tone', () => {
  it('the tone sounds below 30 Ω and not at 30', () => {
    expect(readPort('tone', portOf({ dcOhms: 29.9 }))).toMatchObject({ tone: true, text: '29.9' });
    expect(readPort('tone', portOf({ dcOhms: 30 }))).toMatchObject({ tone: false, text: '30.0' });
    expect(readPort('tone', portOf({ dcOhms: 601 }))).toMatchObject({ tone: false, kind: 'overload' });
    expect(readPort('ohms', portOf({ dcOhms: 1 })).tone).toBe(false);
  });

  it.each(['ohms', 'tone', 'capacitance'] as const)('%s on a live circuit gives no number', (fn) => {
    const live = { kind: 'live', value: 0, text: '', tone: false };
    expect(readPort(fn, portOf({ acVolts: { re: 0, im: 27 }, dcOhms: 12, acOhms: 12 }))).toMatchObject(live);
    expect(readPort(fn, portOf({ dcVolts: -3, dcOhms: 1 }))).toMatchObject(live);
    expect(readPort(fn, portOf({ acVolts: { re: 0.51, im: 0 } })).kind).toBe('live');
    expect(readPort(fn, portOf({ acVolts: { re: 0.49, im: 0 } })).kind).not.toBe('live');
  });

  it('sees a dead supply’s winding, not its volts', () => {
    const { topology, values } = chain({ ohms: 1.2 }, { ohms: 0.03 }, { ohms: 12 });
    // 12 Ω of coil beside 1.23 Ω of winding and contact.
    expect(readPort('ohms', portBetween(topology, values, 2, 0)).text).toBe('1.1');
  });
});

describe('the clamp', () => {
  const amps = { re: 0.3, im: -0.4 };
  it('reads one conductor', () => {
    expect(readClamp([amps])).toMatchObject({ text: '0.50', unit: 'A~' });
  });
  it('reads the sum around a whole cable: nothing', () => {
    expect(readClamp([amps, { re: -0.3, im: 0.4 }])).toMatchObject({ text: '0.00', value: 0 });
  });
  it('reads ten times as much when wrapped ten times', () => {
    expect(readClamp([amps], 10)).toMatchObject({ text: '5.00', value: 5 });
  });
  it('changes range at 60 A and says OL above 600', () => {
    expect(readClamp([{ re: 61, im: 0 }]).text).toBe('61.0');
    expect(readClamp([{ re: 601, im: 0 }]).kind).toBe('overload');
  });
  it('reads nothing without a conductor, whatever the leads touch', () => {
    expect(readPort('ampsAc', volts(27)).text).toBe('0.00');
  });
});

describe('microamps', () => {
  it('in series with a flame reads its rectified current', () => {
    // 24 V DC equivalent behind 8 MΩ of flame, and 1 kΩ of burden: 3.0 µA.
    expect(readPort('microampsDc', portOf({ dcVolts: 24, dcOhms: 8e6, acOhms: 8e6 }))).toMatchObject({
      kind: 'number',
      text: '3.0',
      unit: 'µA=',
      value: 3,
    });
  });
  it('has a sign', () => {
    expect(readMicroamps(-2.04e-6).text).toBe('-2.0');
  });
  it('says OL above 600 µA', () => {
    expect(readMicroamps(601e-6).kind).toBe('overload');
    expect(readPort('microampsDc', portOf({ dcVolts: 3, dcOhms: 3900, acOhms: 3900 })).kind).toBe('overload');
  });
  it('opens its fuse across a supply of 24 V, and of 120 V, AC', () => {
    expect(readPort('microampsDc', portOf({ acVolts: { re: 27, im: 0 }, acOhms: 1.6 })).kind).toBe('fuseOpen');
    expect(readPort('microampsDc', portOf({ acVolts: { re: 120, im: 0 }, acOhms: 0.2 })).kind).toBe('fuseOpen');
  });
  it('keeps its fuse where the circuit itself limits the current', () => {
    expect(readPort('microampsDc', portOf({ acVolts: { re: 27, im: 0 }, acOhms: 200 })).kind).toBe('overload');
  });
});

describe('capacitance', () => {
  /** A capacitor, disconnected and discharged. */
  const capacitor = (farads: number) => {
    const { topology, values } = chain({ ohms: 0.1 }, { farads });
    return readPort('capacitance', portBetween(topology, values, 1, 0));
  };
  const alone = (farads: number) => {
    const { topology, values } = chain({ farads }, {});
    return readPort('capacitance', portBetween(topology, values, 1, 0));
  };

  it.each([
    [45e-6, '45.00', 'µ'],
    [5e-6, '5.000', 'µ'],
    [330e-9, '330.0', 'n'],
    [470e-6, '470.0', 'µ'],
    [1000e-6, '1000', 'µ'],
  ])('reads %f F', (farads, text, prefix) => {
    expect(alone(farads)).toMatchObject({ kind: 'number', text, prefix, unit: 'F' });
  });
  it('reads a pair in series across the two hot terminals of a dual capacitor', () => {
    const { topology, values } = chain({}, { farads: 45e-6 }, { farads: 5e-6 });
    const reading = readPort('capacitance', portBetween(topology, values, 1, 0));
    // 45 × 5 / 50
    expect(reading.value).toBeCloseTo(4.5e-6, 8);
  });
  it('says OL on a shorted one, on one with a winding across it, and above 1000 µF', () => {
    expect(capacitor(45e-6).kind).toBe('overload');
    expect(alone(1.1e-3).kind).toBe('overload');
  });
  it('reads nothing on an open one', () => {
    expect(alone(3e-12)).toMatchObject({ kind: 'number', text: '0.0', prefix: 'n' });
  });
});

describe('a lead in the air', () => {
  it.each([
    ['voltsAc', 'number', '0.000'],
    ['voltsDc', 'number', '0.000'],
    ['voltsLoaded', 'number', '0.000'],
    ['ohms', 'overload', 'OL'],
    ['tone', 'overload', 'OL'],
    ['ampsAc', 'number', '0.00'],
    ['microampsDc', 'number', '0.0'],
    ['capacitance', 'number', '0.0'],
    ['off', 'blank', ''],
  ] as const)('on %s is a %s: %s', (fn, kind, text) => {
    expect(openLeads(fn)).toMatchObject({ kind, text, tone: false });
  });
});

describe('accuracy', () => {
  it('is percent of the reading and counts of its last digit', () => {
    // 1 % of 26.84 V and 3 counts of 10 mV.
    expect(accuracyOf(readPort('voltsAc', volts(26.84)))).toBeCloseTo(0.2984, 6);
    // 0.9 % of 4.7 kΩ and 2 counts of 1 Ω.
    expect(accuracyOf(readPort('ohms', portOf({ dcOhms: 4700 })))).toBeCloseTo(44.3, 6);
    expect(accuracyOf(openLeads('ohms'))).toBe(0);
  });

  it('and every function has ranges that reach what it claims', () => {
    for (const fn of METER_FUNCTIONS) {
      const { ranges, most } = FUNCTION_SPECS[fn];
      const range = ranges.at(-1);
      if (range === undefined) expect(fn).toBe('off');
      else expect(6000 * PREFIX_VALUES[range.prefix] * 10 ** -range.decimals).toBeGreaterThanOrEqual(most * 0.999999);
    }
  });
});
