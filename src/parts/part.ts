import type { z } from 'zod';

/** Where a fault can lie, as a technician splits the job. */
export const SECTIONS = ['supply', 'thermostat', 'cable', 'equipment'] as const;
export type Section = (typeof SECTIONS)[number];

/** What a part may do to whoever touches it. */
export const HAZARDS = ['lineVoltage', 'gas', 'charge'] as const;
export type Hazard = (typeof HAZARDS)[number];

/** One way for a part to be wrong. */
export interface Mode {
  readonly id: string;
  /** How common it is beside the other modes; common practice, no source. */
  readonly weight: number;
  /** Member severities of a mode that has a magnitude, in the unit the part's docstring names. */
  readonly magnitudes?: readonly number[];
  /** Comes and goes by itself: thought of only where a ticket asks for intermittents. */
  readonly intermittent?: boolean;
}

/** A fault that is in force on one part: its mode and, where the mode has one, its magnitude. */
export interface ActiveFault {
  readonly mode: string;
  readonly magnitude: number;
}

/**
 * A part's changing state: numbers only, so that a snapshot can be cloned cheaply.
 * `due` is the simulated time in seconds at which the part wants to react again (Infinity: never).
 */
export interface PartState {
  due: number;
  [field: string]: number;
}

export type Parameters = Record<string, number | string | boolean>;

/** What a part may know of its surroundings while it conducts, reacts or shows itself. */
export interface Site<P extends Parameters = Parameters> {
  readonly id: string;
  readonly params: Readonly<P>;
  readonly fault: ActiveFault | undefined;
  /** Simulated seconds since the attempt's world began. */
  readonly now: number;
  /** Line frequency, Hz. */
  readonly hertz: number;
  /** Numbers of flashes by meaning, as this rig prints them. */
  readonly codes: Readonly<Record<string, number>>;
  /** Temperature of the room in which it stands, °F. */
  readonly roomFahrenheit: number;
  readonly outdoorFahrenheit: number;
  /** RMS volts between two of the part's terminals (or inner nodes). */
  volts(a: string, b: string): number;
  /** DC volts from `a` to `b`. */
  dcVolts(a: string, b: string): number;
  /** RMS amps through one of the part's branches, by its place in `branches`. */
  amps(branch: number): number;
  /** Complex amps through a branch: real and imaginary part, from → to. */
  phasor(branch: number): { readonly re: number; readonly im: number };
  /** DC amps through a branch, from → to. */
  dcAmps(branch: number): number;
  /** What the part that the rig links under this role delivers mechanically, 0…1 (draft, flame, airflow, glow…). */
  link(role: string): number;
  /** Heat that the part linked under this role gives off, Btu/h. */
  heat(role: string): number;
}

/** How a part tells the solver what it is in its present state. Branches by their place in the kind's `branches`. */
export interface Stamp {
  /** A contact: closed is `ohms` (25 mΩ unless told), open is above 1 GΩ with 3 pF. */
  contact(branch: number, closed: boolean, ohms?: number): void;
  /** A series R–L branch, ohms and henries. */
  coil(branch: number, ohms: number, henries: number): void;
  resistor(branch: number, ohms: number): void;
  capacitor(branch: number, farads: number): void;
  /** EMF in series with `ohms`: rms AC volts at `degrees`, and DC volts, both driving current from → to. */
  source(branch: number, ohms: number, acVolts: number, dcVolts: number, degrees?: number): void;
  open(branch: number): void;
  /** One of the kind's transformers: winding ohms, magnetising henries seen from the primary, turns secondary/primary. */
  transformer(index: number, primaryOhms: number, secondaryOhms: number, magnetisingHenries: number, turnsRatio: number): void;
}

export const SENSES = ['see', 'hear', 'inspect'] as const;
/**
 * Something that a person standing there can perceive. `see`: plain to the eye where the part is uncovered (`through`: also
 * with the cover on); `hear`: in the same place; `inspect`: only by looking closely (the action `look`).
 */
export interface Sign {
  readonly key: string;
  readonly value: number | string;
  readonly sense: (typeof SENSES)[number];
  readonly through?: boolean;
  /** A slow drift (a room's temperature): seen, but no reason to stop waiting; told apart from 2 up when it is a number. */
  readonly minor?: boolean;
  /** Shown, but no observation: it follows from what is known (seconds left on a clock). */
  readonly quiet?: boolean;
}

/** Something a hand can operate on a part: a switch with positions or a setting with a range. */
export interface Control {
  readonly id: string;
  /** Within reach although a cover hides the part (a breaker's lever). */
  readonly through?: boolean;
  readonly positions?: readonly string[];
  /** `step` is between one setting and the next, `press` what one press of a key moves. */
  readonly range?: { readonly from: number; readonly to: number; readonly step: number; readonly press: number };
}

/** Sounds that parts make; each has a recipe. */
export const PART_SOUNDS = [
  'inducer',
  'blower',
  'blowerHum',
  'compressor',
  'compressorHum',
  'condenserFan',
  'condenserFanHum',
  'chatter',
  'contactor',
  'gasValve',
  'relay',
  'zoneValve',
  'circulator',
  'circulatorHum',
  'circulatorAir',
] as const;
export type PartSound = (typeof PART_SOUNDS)[number];

/** Sounds by sign and value: those that last while the sign stands so, and those that strike once when it comes to stand so (`*`: at any change). */
export interface PartSounds {
  readonly lasting?: Readonly<Record<string, Readonly<Record<string, PartSound>>>>;
  readonly strikes?: Readonly<Record<string, Readonly<Record<string, PartSound>>>>;
}

export interface Terminal {
  readonly id: string;
  /** What the maker prints beside it; nothing printed when empty. */
  readonly label: string;
}

/** Something in the room's air that is warmer than it by `rise` now, °F, and goes to `target` exponentially: wakes when both together cross. */
export interface WarmedWatch {
  readonly fahrenheit: number;
  readonly rise: number;
  readonly target: number;
  readonly tauSeconds: number;
}

/** One kind of part: all that Bellwire knows of it, apart from its face and its words. */
export interface PartKind<P extends Parameters = Parameters, S extends PartState = PartState> {
  readonly kind: string;
  readonly section: Section;
  readonly parameters: z.ZodType<P>;
  readonly terminals: readonly Terminal[];
  /** Terminals in one row of screws, among which a conductor may have been landed on the wrong one. */
  readonly strip?: readonly string[];
  /** Nodes that no probe reaches. */
  readonly inner?: readonly string[];
  readonly branches: readonly (readonly [from: string, to: string])[];
  readonly transformers?: readonly (readonly [primary: readonly [string, string], secondary: readonly [string, string]])[];
  readonly modes: readonly Mode[];
  readonly controls?: readonly Control[];
  /** Roles that a rig must link to other parts. */
  readonly links?: readonly string[];
  /** Roles that a rig may link; without, `link` and `heat` give 0. */
  readonly optionalLinks?: readonly string[];
  /** Meanings of its status light, with the number of flashes where a rig does not print its own. */
  readonly codes?: Readonly<Record<string, number>>;
  /** What it sounds like. */
  readonly sounds?: PartSounds;
  /** How it stands when the story begins; a people's fault (breaker off, drain full) may show here. */
  initial(params: Readonly<P>, fault: ActiveFault | undefined): S;
  conduct(site: Site<P>, state: S, stamp: Stamp): void;
  /** Reacts to the solved network; true when anything changed that others could notice. */
  react?(site: Site<P>, state: S): boolean;
  /** What it delivers mechanically, 0…1. */
  drive?(site: Site<P>, state: S): number;
  /** Heat given off now, Btu/h; cooling is negative. */
  heat?(site: Site<P>, state: S): number;
  signs(site: Site<P>, state: S): readonly Sign[];
  /** Position or value of a control as it stands. */
  reads?(state: S, control: string): string | number;
  operate?(site: Site<P>, state: S, control: string, value: string | number): void;
  /** Room temperatures, °F, whose crossing the part wants to be woken for; plain, or with a warmth of its own upon the room's. */
  watches?(site: Site<P>, state: S): readonly (number | WarmedWatch)[];
  /** A body that comes off its base, with pins behind (a thermostat). */
  readonly removable?: boolean;
  /** Carries line voltage: hands off while live. */
  readonly lineVoltage?: boolean;
  /** Its current is microamps of DC, and is read with the meter in series with its wire. */
  readonly microamps?: boolean;
  /** Gas is in it while the supply is open. */
  readonly gas?: boolean;
  /** Keeps a charge when the power is off. */
  readonly keepsCharge?: boolean;
  /** Something pulled out and looked at by hand (a blade fuse). */
  readonly pluggable?: boolean;
  /** Minutes to replace or put right, common practice, no source. */
  readonly replaceMinutes: number;
  /** Ways to make it call, for whoever looks for a test: control and value, in order. */
  readonly calls?: readonly {
    readonly id: string;
    readonly acts: readonly { readonly control: string; readonly value: string | number }[];
  }[];
  /** The control that isolates what lies behind it, and its positions. */
  readonly isolator?: { readonly control: string; readonly off: string; readonly on: string };
  /** The control by which a hand bypasses it while a cover is off, and its positions. */
  readonly bypass?: { readonly control: string; readonly on: string; readonly off: string };
  /** Whether a safety stands bypassed by hand (a door switch held in). */
  bypassed?(state: S): boolean;
  /** Whether something else has ruined it (a fuse blown by a short): replacing it is no mistake. */
  spoilt?(state: S): boolean;
  /** Taken when the network will not settle and this part was among those that kept changing: stand as a chattering part does. */
  chatter?(state: S): void;
  /** Harm done to the part by how it was worked on (a compressor restarted too soon), counted. */
  harm?(state: S): { readonly code: string; readonly count: number };
}

/** Checks a kind's definition against its own parameters and state, and gives it as the catalogue keeps it. */
export function definePart<P extends Parameters, S extends PartState>(kind: PartKind<P, S>): PartKind {
  return kind as unknown as PartKind;
}
