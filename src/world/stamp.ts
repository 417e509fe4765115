import { OPEN_OHMS, type Values } from '../circuit/network.ts';
import { GOOD_CONTACT_OHMS } from '../parts/modes.ts';
import type { Stamp } from '../parts/part.ts';
import type { Assembly } from '../rig/assemble.ts';
import { type Fault, splitMode } from '../rig/faults.ts';
import { BODY, type WorldState } from './state.ts';
import type { Wiring } from './wiring.ts';

/** Farads across an open contact. */
const OPEN_FARADS = 3e-12;
const LANDING_OHMS = 0.01;
const JUMPER_OHMS = 0.03;
const SHORT_OHMS = 0.05;
/** The microamps input; its diodes carry what 1 kΩ cannot, which matters only on a live supply, where the fuse opens. */
export const SERIES_METER_OHMS = 1000;

/** A stamp that writes into `values`, from a part's first branch and transformer on. */
export interface PlacedStamp extends Stamp {
  at(branch: number, transformer: number): void;
  /** Whether anything has been written that was not there before, as far as each of the two solutions goes; cleared by whoever solves. */
  changedAc: boolean;
  changedDc: boolean;
}

export function createStamp(values: Values): PlacedStamp {
  let base = 0;
  let transformerBase = 0;
  const put = (
    branch: number,
    ohms: number,
    henries: number,
    farads: number,
    volts: number,
    voltsImaginary: number,
    dcVolts: number,
  ) => {
    const slot = base + branch;
    if (values.ohms[slot] !== ohms) {
      values.ohms[slot] = ohms;
      stamp.changedAc = true;
      stamp.changedDc = true;
    }
    if (
      values.henries[slot] !== henries ||
      values.farads[slot] !== farads ||
      values.acVolts[slot] !== volts ||
      values.acVoltsImaginary[slot] !== voltsImaginary
    ) {
      values.henries[slot] = henries;
      values.farads[slot] = farads;
      values.acVolts[slot] = volts;
      values.acVoltsImaginary[slot] = voltsImaginary;
      stamp.changedAc = true;
    }
    if (values.dcVolts[slot] !== dcVolts) {
      values.dcVolts[slot] = dcVolts;
      stamp.changedDc = true;
    }
  };
  const stamp: PlacedStamp = {
    changedAc: true,
    changedDc: true,
    at(branch, transformer) {
      base = branch;
      transformerBase = transformer;
    },
    contact(branch, closed, ohms = GOOD_CONTACT_OHMS) {
      if (closed) put(branch, ohms, 0, 0, 0, 0, 0);
      else put(branch, OPEN_OHMS, 0, OPEN_FARADS, 0, 0, 0);
    },
    coil: (branch, ohms, henries) => put(branch, ohms, henries, 0, 0, 0, 0),
    resistor: (branch, ohms) => put(branch, ohms, 0, 0, 0, 0, 0),
    capacitor: (branch, farads) => put(branch, OPEN_OHMS, 0, farads, 0, 0, 0),
    source(branch, ohms, acVolts, dcVolts, degrees = 0) {
      const angle = (degrees * Math.PI) / 180;
      put(branch, ohms, 0, 0, acVolts * Math.cos(angle), acVolts * Math.sin(angle), dcVolts);
    },
    open: (branch) => put(branch, OPEN_OHMS, 0, OPEN_FARADS, 0, 0, 0),
    transformer(index, primaryOhms, secondaryOhms, magnetisingHenries, turnsRatio) {
      const slot = transformerBase + index;
      if (
        values.primaryOhms[slot] === primaryOhms &&
        values.secondaryOhms[slot] === secondaryOhms &&
        values.magnetisingHenries[slot] === magnetisingHenries &&
        values.turnsRatio[slot] === turnsRatio
      ) {
        return;
      }
      values.primaryOhms[slot] = primaryOhms;
      values.secondaryOhms[slot] = secondaryOhms;
      values.magnetisingHenries[slot] = magnetisingHenries;
      values.turnsRatio[slot] = turnsRatio;
      stamp.changedAc = true;
      stamp.changedDc = true;
    },
  };
  return stamp;
}

/** What the wires need to know of their world. */
interface Wired {
  readonly assembly: Assembly;
  readonly wiring: Wiring;
  readonly state: WorldState;
}

/**
 * Wires, pins, the neighbours in a jacket, jumpers and a meter in series, as they are now.
 * @param faults those in force
 */
export function stampWires({ wiring, assembly, state }: Wired, faults: readonly Fault[], stamp: PlacedStamp): void {
  stamp.at(0, 0);
  for (const wire of assembly.wires) {
    const own = wiring.wires[wire.index];
    if (!own) continue;
    const { ohms } = wire;
    const mine = faultOn(faults, wire.id);
    if (wire.data.pin) {
      const seated = state.bodies[wire.toPart] === BODY.seated;
      stamp.contact(own.body, seated && mine?.mode !== 'pinBent', ohms + LANDING_OHMS);
      continue;
    }
    if (own.landingFrom < 0) {
      stamp.resistor(own.body, ohms + LANDING_OHMS);
      continue;
    }
    stamp.contact(own.landingFrom, state.lifted[2 * wire.index] === 0 && mine?.mode !== 'looseFrom', LANDING_OHMS);
    stamp.contact(own.landingTo, state.lifted[2 * wire.index + 1] === 0 && mine?.mode !== 'looseTo', LANDING_OHMS);
    const parted = mine?.mode === 'open' || (mine?.mode === 'intermittent' && state.time >= (state.stirredUntil[wire.index] ?? 0));
    stamp.contact(own.body, !parted, ohms + (mine?.mode === 'poor' ? mine.magnitude : 0));
    if (own.earth >= 0) {
      if (mine?.mode === 'toEarth') stamp.resistor(own.earth, SHORT_OHMS);
      else stamp.open(own.earth);
    }
  }
  for (const pair of wiring.pairs) {
    const shorted = faults.some((fault) => fault.target === pair.a && fault.mode === pair.short);
    stamp.capacitor(pair.from, pair.farads);
    if (shorted) stamp.resistor(pair.to, SHORT_OHMS);
    else stamp.capacitor(pair.to, pair.farads);
  }
  for (const jumper of wiring.jumpers) stamp.resistor(jumper, JUMPER_OHMS);
  if (wiring.seriesMeter >= 0) stamp.resistor(wiring.seriesMeter, SERIES_METER_OHMS);
}

function faultOn(faults: readonly Fault[], wire: string): Fault | undefined {
  for (const fault of faults) if (fault.target === wire && splitMode(fault.mode).other === undefined) return fault;
  return undefined;
}
