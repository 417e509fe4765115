import { z } from 'zod';
import { has } from './modes.ts';
import { definePart, type Parameters, type PartKind, type PartSounds, type Site } from './part.ts';

const MOTION = { off: 0, run: 1, hum: 2 } as const;
const NAMES = ['off', 'run', 'hum'] as const;

type MotorParameters = { coolingBtuPerHour: number; heatingBtuPerHour: number };
type MotorState = { due: number; motion: number; overload: number; stopped: number; hurried: number };

interface Winding {
  readonly ohms: number;
  /** Reactance at 60 Hz. */
  readonly reactance: number;
}

interface SplitCapacitorMotor {
  readonly sounds: PartSounds;
  readonly kind: string;
  readonly replaceMinutes: number;
  readonly main: Winding;
  readonly start: Winding;
  /** What the main and the start winding look like at speed. */
  readonly mainRunning: Winding;
  readonly startRunning: Winding;
  readonly minimumVolts: number;
  /** |Imain|·|Istart|·sin(angle) needed at standstill, A². */
  readonly startTorque: number;
  /** Locked-rotor seconds until the overload opens, and until it closes again. */
  readonly overloadSeconds: number;
  readonly coolSeconds: number;
  /** A restart sooner than this after stopping is against full pressure and needs three times the torque; 0: none. */
  readonly equaliseSeconds: number;
}

/** What a compressor at speed brings into the house, Btu/h: out of it, unless its reversing valve stands for heating. */
function pumped(site: Site<MotorParameters>): number {
  if (site.link('reversing') < 0.5) return -site.params.coolingBtuPerHour;
  return site.params.heatingBtuPerHour * heatingShare(site.outdoorFahrenheit);
}

/** Torque of a two-phase machine at standstill: proportional to the product of the winding currents and the sine between them. */
function torque<P extends Parameters>(site: Site<P>): number {
  const main = site.phasor(0);
  const start = site.phasor(1);
  return Math.abs(main.re * start.im - main.im * start.re);
}

/** °F outside at which a heat pump's heating is rated, and by how much of that it falls with each °F below: to 0.6 at 17 °F. */
const RATED_FAHRENHEIT = 47;
const FALL_PER_FAHRENHEIT = 0.4 / 30;

/**
 * Heat that a heat pump brings in, as a share of what it is rated for. 47 and 17 °F are the usual rating points (AHRI 210/240, from
 * memory); the line between, and the ends where it is cut off, are typical, no source.
 */
export function heatingShare(outdoorFahrenheit: number): number {
  return Math.min(1.2, Math.max(0.3, 1 + (outdoorFahrenheit - RATED_FAHRENHEIT) * FALL_PER_FAHRENHEIT));
}

/**
 * A permanent-split-capacitor motor with its windings brought out (common, run, start). It starts when its capacitor gives enough
 * torque; locked, it hums until its overload opens. Figures typical; no source.
 */
function splitCapacitorMotor(motor: SplitCapacitorMotor, heat: boolean): PartKind {
  const henries = (winding: Winding) => winding.reactance / (2 * Math.PI * 60);
  return definePart<MotorParameters, MotorState>({
    kind: motor.kind,
    section: 'equipment',
    sounds: motor.sounds,
    parameters: z.strictObject({
      coolingBtuPerHour: z.number().min(0).max(120_000).default(0),
      heatingBtuPerHour: z.number().min(0).max(120_000).default(0),
    }),
    terminals: [
      { id: 'C', label: 'C' },
      { id: 'S', label: 'S' },
      { id: 'R', label: 'R' },
    ],
    inner: ['c'],
    branches: [
      ['R', 'c'],
      ['S', 'c'],
      ['c', 'C'],
      ['c', 'earth'],
    ],
    modes: [
      { id: 'mainOpen', weight: 0.4 },
      { id: 'startOpen', weight: 0.4 },
      { id: 'seized', weight: 0.6 },
      { id: 'overloadOpen', weight: 0.3 },
      { id: 'toEarth', weight: 0.3 },
    ],
    ...(heat ? { optionalLinks: ['reversing'] } : {}),
    lineVoltage: true,
    replaceMinutes: motor.replaceMinutes,
    initial: () => ({ due: Number.POSITIVE_INFINITY, motion: MOTION.off, overload: 0, stopped: -1e9, hurried: 0 }),
    conduct(site, state, stamp) {
      const running = state.motion === MOTION.run;
      const main = running ? motor.mainRunning : motor.main;
      const start = running ? motor.startRunning : motor.start;
      if (has(site, 'mainOpen')) stamp.open(0);
      else stamp.coil(0, main.ohms, henries(main));
      if (has(site, 'startOpen')) stamp.open(1);
      else stamp.coil(1, start.ohms, henries(start));
      stamp.contact(2, state.overload === 0 && !has(site, 'overloadOpen'));
      if (has(site, 'toEarth')) stamp.resistor(3, 0.5);
      else stamp.open(3);
    },
    react(site, state) {
      const volts = site.volts('R', 'c');
      const powered = volts >= motor.minimumVolts && state.overload === 0;
      if (state.overload === 1) {
        if (site.now < state.due) return false;
        state.overload = 0;
        state.due = Number.POSITIVE_INFINITY;
        return true;
      }
      if (!powered) {
        state.due = Number.POSITIVE_INFINITY;
        if (state.motion === MOTION.off) return false;
        if (state.motion === MOTION.run) state.stopped = site.now;
        state.motion = MOTION.off;
        return true;
      }
      if (state.motion === MOTION.run) return false;
      if (state.motion === MOTION.off) {
        const hurried = motor.equaliseSeconds > 0 && site.now - state.stopped < motor.equaliseSeconds;
        if (hurried) state.hurried += 1;
        if (!has(site, 'seized') && torque(site) >= motor.startTorque * (hurried ? 3 : 1)) state.motion = MOTION.run;
        else {
          state.motion = MOTION.hum;
          state.due = site.now + motor.overloadSeconds;
        }
        return true;
      }
      if (site.now < state.due) return false;
      state.motion = MOTION.off;
      state.overload = 1;
      state.due = site.now + motor.coolSeconds;
      return true;
    },
    drive: (_site, state) => (state.motion === MOTION.run ? 1 : 0),
    ...(heat ? { heat: (site, state) => (state.motion === MOTION.run ? pumped(site) : 0) } : {}),
    signs: (_site, state) => [{ key: 'running', value: NAMES[state.motion] ?? 'off', sense: 'hear' }],
    harm: (state) => ({ code: 'shortCycle', count: state.hurried }),
  });
}

export const compressor = splitCapacitorMotor(
  {
    kind: 'compressor',
    sounds: { lasting: { running: { run: 'compressor', hum: 'compressorHum' } } },
    replaceMinutes: 240,
    main: { ohms: 1.2, reactance: 3.8 },
    start: { ohms: 3.5, reactance: 10 },
    mainRunning: { ohms: 20, reactance: 11 },
    startRunning: { ohms: 40, reactance: 20 },
    minimumVolts: 150,
    startTorque: 45,
    overloadSeconds: 8,
    coolSeconds: 300,
    equaliseSeconds: 180,
  },
  true,
);

export const condenserFan = splitCapacitorMotor(
  {
    kind: 'condenserFan',
    sounds: { lasting: { running: { run: 'condenserFan', hum: 'condenserFanHum' } } },
    replaceMinutes: 60,
    main: { ohms: 40, reactance: 90 },
    start: { ohms: 60, reactance: 120 },
    mainRunning: { ohms: 180, reactance: 110 },
    startRunning: { ohms: 120, reactance: 160 },
    minimumVolts: 150,
    startTorque: 0.5,
    overloadSeconds: 60,
    coolSeconds: 300,
    equaliseSeconds: 0,
  },
  false,
);

/** A run capacitor of two sections in one can, microfarads. A drifted section keeps the fraction that its magnitude tells. */
export const dualCapacitor = definePart({
  kind: 'dualCapacitor',
  section: 'equipment',
  parameters: z.strictObject({
    compressorMicrofarads: z.number().min(1).max(100).default(35),
    fanMicrofarads: z.number().min(1).max(20).default(5),
  }),
  terminals: [
    { id: 'C', label: 'C' },
    { id: 'HERM', label: 'HERM' },
    { id: 'FAN', label: 'FAN' },
  ],
  branches: [
    ['C', 'HERM'],
    ['C', 'FAN'],
  ],
  modes: [
    { id: 'compressorSectionOpen', weight: 0.8 },
    { id: 'compressorSectionWeak', weight: 1, magnitudes: [0.2, 0.4] },
    { id: 'fanSectionOpen', weight: 0.8 },
    { id: 'fanSectionWeak', weight: 0.6, magnitudes: [0.2, 0.4] },
  ],
  lineVoltage: true,
  keepsCharge: true,
  replaceMinutes: 20,
  initial: () => ({ due: Number.POSITIVE_INFINITY }),
  conduct(site, _state, stamp) {
    const keeps = (open: string, weak: string) => (has(site, open) ? 0.001 : has(site, weak) ? (site.fault?.magnitude ?? 1) : 1);
    stamp.capacitor(0, site.params.compressorMicrofarads * 1e-6 * keeps('compressorSectionOpen', 'compressorSectionWeak'));
    stamp.capacitor(1, site.params.fanMicrofarads * 1e-6 * keeps('fanSectionOpen', 'fanSectionWeak'));
  },
  signs: (site) => [
    {
      key: 'case',
      value: has(site, 'compressorSectionOpen') || has(site, 'fanSectionOpen') ? 'swollen' : 'flat',
      sense: 'inspect',
    },
  ],
});

/** The induced-draft motor: one winding, shaded pole. */
export const inducer = definePart({
  kind: 'inducer',
  sounds: { lasting: { running: { '1': 'inducer' } } },
  section: 'equipment',
  parameters: z.strictObject({}),
  terminals: [
    { id: 'a', label: '' },
    { id: 'b', label: '' },
  ],
  branches: [['a', 'b']],
  modes: [
    { id: 'windingOpen', weight: 0.8 },
    { id: 'seized', weight: 0.7 },
  ],
  lineVoltage: true,
  replaceMinutes: 45,
  initial: () => ({ due: Number.POSITIVE_INFINITY, running: 0 }),
  conduct(site, state, stamp) {
    if (has(site, 'windingOpen')) stamp.open(0);
    else stamp.coil(0, state.running === 1 ? 70 : 20, 0.15);
  },
  react(site, state) {
    const running = site.volts('a', 'b') >= 85 && !has(site, 'seized') && !has(site, 'windingOpen') ? 1 : 0;
    if (running === state.running) return false;
    state.running = running;
    return true;
  },
  drive: (_site, state) => state.running,
  signs: (_site, state) => [{ key: 'running', value: state.running, sense: 'hear' }],
});

/** The indoor blower: two speed taps and a capacitor of its own. Drive is airflow as a fraction, after the filter. For 240 V it is wound for half the current. */
export const blower = definePart<{ volts: 120 | 240 }, { due: number; speed: number; hum: number }>({
  kind: 'blower',
  sounds: { lasting: { running: { heat: 'blower', cool: 'blower', hum: 'blowerHum' } } },
  section: 'equipment',
  parameters: z.strictObject({ volts: z.union([z.literal(120), z.literal(240)]).default(120) }),
  terminals: [
    { id: 'HEAT', label: 'heat' },
    { id: 'COOL', label: 'cool' },
    { id: 'N', label: 'N' },
  ],
  branches: [
    ['HEAT', 'N'],
    ['COOL', 'N'],
  ],
  modes: [
    { id: 'windingOpen', weight: 0.4 },
    { id: 'seized', weight: 0.5 },
    { id: 'capacitorOpen', weight: 0.8 },
  ],
  links: ['filter'],
  lineVoltage: true,
  replaceMinutes: 90,
  initial: () => ({ due: Number.POSITIVE_INFINITY, speed: 0, hum: 0 }),
  conduct(site, state, stamp) {
    if (has(site, 'windingOpen')) {
      stamp.open(0);
      stamp.open(1);
      return;
    }
    const turns = (site.params.volts / 120) ** 2;
    stamp.coil(0, (state.speed === 1 ? 24 : 12) * turns, 0.05 * turns);
    stamp.coil(1, (state.speed === 2 ? 18 : 8) * turns, 0.04 * turns);
  },
  react(site, state) {
    const least = 85 * (site.params.volts / 120);
    const heat = site.volts('HEAT', 'N') >= least;
    const cool = site.volts('COOL', 'N') >= least;
    const stuck = has(site, 'seized') || has(site, 'capacitorOpen');
    const wanted = has(site, 'windingOpen') ? 0 : cool ? 2 : heat ? 1 : 0;
    const speed = stuck ? 0 : wanted;
    const hum = stuck && wanted > 0 ? 1 : 0;
    if (speed === state.speed && hum === state.hum) return false;
    state.speed = speed;
    state.hum = hum;
    return true;
  },
  drive: (site, state) => (state.speed === 2 ? 1 : state.speed === 1 ? 0.9 : 0) * site.link('filter'),
  signs: (_site, state) => [
    {
      key: 'running',
      value: state.hum === 1 ? 'hum' : state.speed === 2 ? 'cool' : state.speed === 1 ? 'heat' : 'off',
      sense: 'hear',
    },
  ],
});

/** The air filter: clean, or so dirty that it lets only a fraction of the air through. */
export const filter = definePart({
  kind: 'filter',
  section: 'equipment',
  parameters: z.strictObject({}),
  terminals: [],
  branches: [],
  modes: [{ id: 'dirty', weight: 1.2, magnitudes: [0.35] }],
  replaceMinutes: 5,
  initial: () => ({ due: Number.POSITIVE_INFINITY }),
  conduct() {},
  drive: (site) => (has(site, 'dirty') ? (site.fault?.magnitude ?? 1) : 1),
  signs: (site) => [{ key: 'dirt', value: has(site, 'dirty') ? 'dirty' : 'clean', sense: 'inspect' }],
});
