import { describe, expect, it } from 'vitest';
import { DISCERNMENT, toldApart } from '../../src/meter/apart.ts';
import type { MeterFunction } from '../../src/meter/functions.ts';
import { openLeads, readClamp, readMicroamps, readPort } from '../../src/meter/read.ts';
import { portOf } from './port.ts';

const acVolts = (volts: number, fn: MeterFunction = 'voltsAc') => readPort(fn, portOf({ acVolts: { re: volts, im: 0 } }));
const ohms = (dcOhms: number, fn: MeterFunction = 'ohms') => readPort(fn, portOf({ dcOhms }));

describe('a technician tells apart', () => {
  it('a number, OL and a live warning', () => {
    expect(toldApart(ohms(12), openLeads('ohms'))).toBe(true);
    expect(toldApart(ohms(12), acVolts(27, 'ohms'))).toBe(true);
    expect(toldApart(openLeads('ohms'), acVolts(27, 'ohms'))).toBe(true);
  });

  it('27 V from 13 V, and neither from itself', () => {
    expect(toldApart(acVolts(27), acVolts(13))).toBe(true);
    expect(toldApart(acVolts(27), acVolts(27))).toBe(false);
  });

  it('no sag of 0.3 V, and none of 1.5 V; 3 V on 27 V yes', () => {
    expect(toldApart(acVolts(27), acVolts(26.7))).toBe(false);
    expect(toldApart(acVolts(2), acVolts(0.6))).toBe(false);
    expect(toldApart(acVolts(2.2), acVolts(0.6))).toBe(true);
    // More than the floor, but within a tenth: 2.6 V of 27 V.
    expect(toldApart(acVolts(27), acVolts(24.4))).toBe(false);
    expect(toldApart(acVolts(27), acVolts(24))).toBe(true);
  });

  it('2 Ω and a tenth on ohms', () => {
    expect(toldApart(ohms(0.1), ohms(2.1))).toBe(false);
    expect(toldApart(ohms(0.1), ohms(2.2))).toBe(true);
    expect(toldApart(ohms(100), ohms(109))).toBe(false);
    expect(toldApart(ohms(100), ohms(112))).toBe(true);
  });

  it('tone from no tone, however close the ohms', () => {
    expect(toldApart(ohms(29.5, 'tone'), ohms(30.5, 'tone'))).toBe(true);
    expect(toldApart(ohms(28, 'tone'), ohms(29, 'tone'))).toBe(false);
  });

  it('0.1 A and 0.3 µA', () => {
    const amps = (re: number) => readClamp([{ re, im: 0 }]);
    expect(toldApart(amps(0.4), amps(0.3))).toBe(false);
    expect(toldApart(amps(0.45), amps(0.3))).toBe(true);
    expect(toldApart(readMicroamps(2.0e-6), readMicroamps(2.3e-6))).toBe(false);
    expect(toldApart(readMicroamps(2.0e-6), readMicroamps(2.5e-6))).toBe(true);
    expect(toldApart(readMicroamps(2e-6), readMicroamps(1))).toBe(true);
  });

  it('1 µF of capacitance', () => {
    const farads = (value: number) =>
      readPort('capacitance', portOf({ acOhms: 0, acReactance: -1 / (2 * Math.PI * 60 * value), dcOhms: 1e9 }));
    expect(toldApart(farads(5e-6), farads(4.2e-6))).toBe(false);
    expect(toldApart(farads(45e-6), farads(38e-6))).toBe(true);
  });

  it('nothing that the meter itself cannot: accuracy stands above an eye that is too keen', () => {
    const keen = { share: 0, floors: { ...DISCERNMENT.floors, voltsAc: 0 } };
    // 1 % and 3 counts of 27 V are 0.3 V.
    expect(toldApart(acVolts(27), acVolts(26.75), keen)).toBe(false);
    expect(toldApart(acVolts(27), acVolts(26.6), keen)).toBe(true);
  });

  it('the same in either order', () => {
    const readings = [0, 0.5, 2, 12, 26, 27, 30, 120].map((volts) => acVolts(volts));
    for (const a of readings) for (const b of readings) expect(toldApart(a, b)).toBe(toldApart(b, a));
  });
});
