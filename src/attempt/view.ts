import type { MeterFunction } from '../meter/functions.ts';
import type { Reading } from '../meter/read.ts';
import type { Control, Hazard, PartSounds, Section } from '../parts/part.ts';
import type { RigPlace } from '../rig/places.ts';
import type { BodyPosition, Point, WireEnd } from '../rig/points.ts';
import type { Action } from './actions.ts';

export interface TerminalView {
  readonly point: Point;
  /** Terminal id within the part. */
  readonly id: string;
  /** What is printed there (a fault may make this wrong); empty: nothing printed. */
  readonly label: string;
  /** Whether a probe reaches it from where the trainee stands. */
  readonly reachable: boolean;
  /** Wires landed there now. */
  readonly wires: readonly string[];
}

export interface ControlView extends Control {
  readonly value: string | number;
}

export interface PartView {
  readonly id: string;
  readonly kind: string;
  readonly section: Section;
  readonly place: string;
  /** Where its face stands in the place's scene: the face's top left corner, in scene units (800 wide, 648 high). */
  readonly at: { readonly x: number; readonly y: number };
  readonly cover: string | undefined;
  /** In the trainee's place and not behind a closed cover. */
  readonly visible: boolean;
  /** What can be seen or heard of it from here, by sign key; only these may be drawn. */
  readonly signs: Readonly<Record<string, number | string>>;
  readonly terminals: readonly TerminalView[];
  readonly controls: readonly ControlView[];
  readonly body: BodyPosition | undefined;
  /** Of a removable body: the part that its pins go into. */
  readonly base: string | undefined;
  /** The removable body that carries it, by its id. */
  readonly carrier: string | undefined;
  /** For a fuse or other plug-in: out of its holder. */
  readonly pulledOut: boolean | undefined;
  /** What it may do to whoever touches it. */
  readonly hazards: readonly Hazard[];
  /** What its status light's flashes mean, as printed on its door. */
  readonly codes: Readonly<Record<string, number>>;
  /** What it sounds like, by sign and value. */
  readonly sounds: PartSounds;
}

export interface WireEndView {
  /** Terminal where the rig lands it; a fault or the trainee may have it elsewhere: see `landedOn`. */
  readonly home: Point;
  readonly landedOn: Point | undefined;
  readonly lifted: boolean;
  readonly place: string;
  readonly visible: boolean;
  /** May be lifted by hand here and now. */
  readonly liftable: boolean;
  /** Bare end that a probe reaches, when lifted. */
  readonly point: Point;
}

export interface WireView {
  readonly id: string;
  /** Cable whose jacket it shares, if any. */
  readonly cable: string | undefined;
  readonly colour: string;
  readonly ends: Readonly<Record<WireEnd, WireEndView>>;
}

export interface CoverView {
  readonly id: string;
  readonly place: string;
  readonly open: boolean;
  readonly lineVoltage: boolean;
  readonly at: { readonly x: number; readonly y: number; readonly width: number; readonly height: number };
}

export interface MeterView {
  readonly fn: MeterFunction;
  /** What this meter can do. */
  readonly tools: readonly MeterFunction[];
  readonly red: Point | undefined;
  readonly black: Point | undefined;
  /** Wire or cable id inside the clamp. */
  readonly clamp: string | undefined;
  readonly turns: number;
  readonly reading: Reading;
}

export interface StepView {
  /** 1-based. */
  readonly number: number;
  readonly action: Action;
  /** Simulated seconds on the job after the step. */
  readonly seconds: number;
  readonly place: string;
  /** The meter's function then. */
  readonly fn: MeterFunction;
  /** The meter's display after a step that made a reading; undefined when the step made none. */
  readonly reading: Reading | undefined;
  readonly red: Point | undefined;
  readonly black: Point | undefined;
  /** What changed that the trainee could perceive, in order. */
  readonly noticed: readonly Notice[];
  readonly unsafe: string | undefined;
}

/** A change that somebody standing there saw or heard. */
export interface Notice {
  readonly part: string;
  readonly key: string;
  readonly value: number | string;
  readonly sense: 'see' | 'hear' | 'inspect';
  /** A slow drift, read closely: a number that is told apart like a level (see `Sign`). */
  readonly minor?: boolean;
}

/** Everything that a screen needs to draw an attempt: plain data, derived afresh after each action. */
export interface BenchView {
  readonly ticket: string;
  readonly rig: string;
  readonly phase: 'working' | 'named' | 'closed';
  /** Simulated seconds on the job. */
  readonly seconds: number;
  readonly place: string;
  readonly places: readonly string[];
  /** What the rig says of each place's looks, by the place's id. */
  readonly looks: Readonly<Record<string, RigPlace>>;
  readonly parts: readonly PartView[];
  readonly wires: readonly WireView[];
  readonly covers: readonly CoverView[];
  readonly jumpers: readonly { readonly from: Point; readonly to: Point }[];
  readonly meter: MeterView;
  readonly steps: readonly StepView[];
}
