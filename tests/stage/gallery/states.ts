import type { PartView } from '../../../src/attempt/view.ts';
import { CATALOGUE } from '../../../src/parts/catalogue.ts';

type Signs = PartView['signs'];

/** Values that a sign takes; `undefined` is a sign that is not there (not looked at yet, or out of earshot). */
type Values = Readonly<Record<string, readonly (string | number | undefined)[]>>;

const MOTOR: Values = { running: ['off', 'hum', 'run'] };
const FAN_DISPLAY: Signs = { display: 'on', mode: 'cool', fan: 'auto', set: 72, room: 80, call: 'cool', guard: 0 };

/** What a thermostat with a display shows. */
const DISPLAY: Values = {
  display: ['on', 'blank'],
  mode: ['off', 'heat', 'cool'],
  fan: ['auto', 'on'],
  set: [72, 68],
  room: [80, 71],
  call: ['none', 'heat', 'cool', 'fan', 'waiting'],
  guard: [0, 95],
  // Its relay is heard; the call shows on the display.
  tick: [undefined],
};

/** What the view tells of each kind of part, sign by sign. A kind without signs looks the same always. */
export const SIGNS: Readonly<Record<string, Values>> = {
  service: {},
  earthBar: {},
  subbase: {},
  cells: {},
  splice: {},
  highLimit: {},
  highPressureSwitch: {},
  breakerSinglePole: { lever: ['on', 'off', 'tripped'] },
  breakerTwoPole: { lever: ['on', 'off', 'tripped'] },
  serviceSwitch: { lever: ['on', 'off'] },
  disconnect: { position: ['in', 'out'] },
  transformer: { body: [undefined, 'sound', 'burnt'], hum: [0, 1] },
  bladeFuse: { element: [undefined, 'whole', 'blown'] },
  panelDoor: { seat: [undefined, 'home', 'ajar'] },
  doorSwitch: { plunger: ['in', 'out', 'held'] },
  drainPan: { water: [undefined, 'dry', 'full'] },
  floatSwitch: { float: [undefined, 'down', 'up'] },
  rollout: { button: [undefined, 'in', 'out'] },
  pressureSwitch: { hose: [undefined, 'on', 'off'] },
  inducer: { running: [0, 1] },
  igniter: { glow: [0, 1] },
  gasValve: { lever: ['on', 'off'], click: [0, 1] },
  burner: { flame: [0, 1] },
  flameSensor: { rod: [undefined, 'clean', 'coated'] },
  blower: { running: ['off', 'hum', 'heat', 'cool'] },
  filter: { dirt: [undefined, 'clean', 'dirty'] },
  furnaceBoard: { light: ['off', 'steady', '1', '2', '4', '5', '6', '7'] },
  // Its thump and its chatter are heard; the armature shows both.
  contactor: { armature: ['out', 'in', 'chatter'], thump: [undefined], chatter: [undefined] },
  dualCapacitor: { case: [undefined, 'flat', 'swollen'] },
  controlRelay: { armature: ['out', 'in'] },
  lockoutRelay: { armature: ['out', 'in'] },
  timeDelayRelay: { armature: ['out', 'in'], delay: [undefined, 30, 600] },
  fanInterlock: { coils: [undefined, 1, 5], chatter: [0, 1] },
  refrigerantCircuit: { joints: [undefined, 'dry', 'oily'] },
  lowPressureSwitch: {},
  condensatePump: { water: [undefined, 'low', 'high', 'full'], running: [0, 1] },
  unitStrip: {},
  twoStageSubbase: {},
  compressor: MOTOR,
  condenserFan: MOTOR,
  batteryThermostat: DISPLAY,
  commonWireThermostat: { ...DISPLAY, heatSetting: [undefined, 'electric', 'gas'] },
  heatSequencer: { discs: [0, 1, 2] },
  heatStrip: {},
  // Its click and its chatter are heard; the armature shows both.
  fanRelay: { armature: ['out', 'in', 'chatter'], snap: [undefined], chatter: [undefined] },
  reversingValve: { pull: [undefined, 0, 1] },
  outdoorCoil: { frost: ['clear', 'frosted', 'iced', 'melting'], line: [undefined, 'even', 'hot', 'cold'] },
  defrostControl: { light: ['off', 'steady', '1', '2', '3'], relay: [0, 1] },
  outdoorThermostat: { dial: [undefined, 35, 0, 60] },
  heatPumpSubbase: {},
  airHandlerStrip: {},
  register: { air: ['still', 'room', 'cold', 'warm', 'hot'], supply: [undefined, 96] },
  heatPumpThermostat: {
    ...DISPLAY,
    call: ['none', 'heat', 'cool', 'fan', 'waiting', 'auxiliary'],
    emergency: [undefined, 'off', 'on'],
    reversing: [undefined, 'O', 'B'],
    auxiliary: [undefined, 'one', 'none'],
  },
  powerStealingThermostat: DISPLAY,
  supplyPlenum: { returnAir: [undefined, 72], supplyAir: [undefined, 121, 54] },
  humidistat: { percent: ['35', 'off', '25', '45'] },
  humidifierValve: {
    drip: ['none', 'runs'],
    tap: ['on', 'off'],
  },
  twoStageThermostat: { ...DISPLAY, stage: [0, 1, 2], stages: [undefined, 1] },
  mechanicalThermostat: {
    mode: ['heat', 'off', 'cool'],
    fan: ['auto', 'on'],
    set: [68, 72],
    room: [66, 71],
    call: ['none', 'heat', 'cool', 'fan'],
    // The rhythm of its calls is heard.
    rhythm: [undefined],
    anticipator: [undefined, 'a040', 'a020'],
    level: [undefined, 'level', 'tilted'],
  },
  standingPilotValve: { knob: ['on', 'pilot', 'off'], pilot: [1, 0], click: [0, 1], couple: [undefined, 'whole', 'burnt'] },
  fanLimitControl: { click: [0, 1], fanPointer: [undefined, 'usual', 'high'] },
  plugInSupply: { warmth: [undefined, 'warm', 'cold'] },
  pilotLamp: { lamp: ['dark', 'dim', 'bright'] },
  toggleSwitch: { lever: ['on', 'off'] },
  dualSupplyThermostat: DISPLAY,
  dualSubbase: { jumper: ['out', 'in'] },
  zoneValve: { travel: ['shut', 'opening', 'open', 'closing'], lever: ['auto', 'open'], motor: [0, 1] },
  circulator: { running: ['off', 'run', 'hum', 'gurgle'] },
  aquastat: { dial: [undefined, 180, 100] },
  boilerVessel: { gauge: [140, 180] },
  // Its relay is heard; the circulator shows what it does.
  boilerControl: { light: ['off', 'steady', '1', '2', '4', '6'], pump: [undefined] },
  junctionStrip: {},
  baseboard: { pipe: [undefined, 'hot', 'cold'] },
  terminalStrip: {},
};

export interface Shown {
  readonly name: string;
  readonly part: PartView;
}

/** A part of a kind as a view would hold it, standing alone. */
function partOf(kind: string, signs: Signs, more: Partial<PartView> = {}): PartView {
  const known = CATALOGUE.get(kind);
  if (known === undefined) throw new Error(`no kind ${kind}`);
  return {
    id: kind,
    kind,
    section: known.section,
    place: 'gallery',
    at: { x: 0, y: 0 },
    cover: undefined,
    visible: true,
    signs,
    terminals: known.terminals.map(({ id, label }) => ({ point: `${kind}.${id}`, id, label, reachable: true, wires: [] })),
    controls: [],
    body: known.removable === true ? 'pulled' : undefined,
    base: undefined,
    carrier: undefined,
    pulledOut: known.pluggable === true ? false : undefined,
    hazards: [],
    codes: known.codes ?? {},
    sounds: {},
    ...more,
  };
}

/** Every state of a kind that the view tells apart, each sign varied by itself from the first of its values. */
export function statesOf(kind: string): Shown[] {
  const values = Object.entries(SIGNS[kind] ?? {});
  const present = (entries: readonly (readonly [string, string | number | undefined])[]): Signs =>
    Object.fromEntries(entries.filter((entry): entry is readonly [string, string | number] => entry[1] !== undefined));
  const first: Signs =
    SIGNS[kind]?.display !== undefined ? FAN_DISPLAY : present(values.map(([key, all]) => [key, all[0]] as const));
  const states: Shown[] = [{ name: 'as it comes', part: partOf(kind, first) }];
  for (const [key, all] of values) {
    for (const value of all) {
      if (value === undefined || value === first[key]) continue;
      const signs = key === 'display' && value === 'blank' ? { display: 'blank' } : { ...first, [key]: value };
      states.push({ name: `${key}: ${String(value)}`, part: partOf(kind, signs) });
    }
  }
  const known = CATALOGUE.get(kind);
  if (known?.pluggable === true) states.push({ name: 'pulled out', part: partOf(kind, first, { pulledOut: true }) });
  if (known?.removable === true)
    for (const body of ['seated', 'turned', 'mat'] as const)
      states.push({ name: `body: ${body}`, part: partOf(kind, first, { body }) });
  return states;
}
