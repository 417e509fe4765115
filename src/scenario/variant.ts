import type { HistoryAct } from '../attempt/job.ts';
import { METER_FUNCTIONS, type MeterFunction } from '../meter/functions.ts';
import { type AssembledPart, assemble } from '../rig/assemble.ts';
import { type House, layHouse } from '../rig/house.ts';
import { type RigData, WIRE_COLOURS } from '../rig/schema.ts';

/** A number from 0 up to 1, another each time; whoever calls brings it, so that a seed decides everything. */
export type Random = () => number;

/** A house where a rig may hang, its weather, what its customer did, and the meter of whoever comes: all of a ticket but what is wrong. */
export interface Variant {
  readonly rig: RigData;
  readonly house: House;
  readonly weather: { readonly outdoorFahrenheit: number; readonly startFahrenheit: number };
  readonly history: readonly HistoryAct[];
  readonly tools: readonly MeterFunction[] | undefined;
}

/** What a drawn house may have; common practice, no source. */
const CABLE_FEET = { from: 15, to: 150 } as const;
const CABLE_AWG = [18, 18, 18, 20, 22] as const;
const ROOM_SHARE = { from: 0.75, to: 1.3 } as const;
/** °F outside and in the rooms at the start, by what is called for. */
const WEATHER = {
  heat: { outdoor: { from: -5, to: 45 }, start: { from: 58, to: 66 } },
  cool: { outdoor: { from: 82, to: 102 }, start: { from: 77, to: 84 } },
  neither: { outdoor: { from: 55, to: 75 }, start: { from: 68, to: 74 } },
} as const;
/** °F between the room and what is asked for. */
const ASKED = { from: 4, to: 9 } as const;
const STORY_SECONDS = [900, 1200, 1800] as const;
/** Meters that some technicians carry: without the clamp, without capacitance and microamps, or plain. */
const METERS: readonly (readonly MeterFunction[] | undefined)[] = [
  undefined,
  undefined,
  undefined,
  METER_FUNCTIONS.filter((fn) => fn !== 'off' && fn !== 'ampsAc'),
  METER_FUNCTIONS.filter((fn) => fn !== 'off' && fn !== 'capacitance' && fn !== 'microampsDc'),
  METER_FUNCTIONS.filter((fn) => fn === 'voltsAc' || fn === 'voltsDc' || fn === 'ohms' || fn === 'tone'),
];

function pick<T>(random: Random, from: readonly T[]): T {
  return from[Math.floor(random() * from.length)] as T;
}

interface Span {
  readonly from: number;
  readonly to: number;
}

function whole(random: Random, { from, to }: Span, step = 1): number {
  return from + step * Math.floor(random() * ((to - from) / step + 1));
}

export function drawVariant(plain: RigData, random: Random): Variant {
  const house = drawHouse(plain, random);
  const rig = layHouse(plain, house);
  const callers = assemble(rig).parts.filter((part) => part.kind.calls !== undefined);
  const caller = pick(random, callers);
  const call = pick(random, caller.kind.calls ?? []);
  const { weather, history } = drawStory(random, caller, call?.acts ?? []);
  return { rig, house, weather, history, tools: pick(random, METERS) };
}

function drawHouse(rig: RigData, random: Random): House {
  const share = () => ROOM_SHARE.from + random() * (ROOM_SHARE.to - ROOM_SHARE.from);
  return {
    cables: Object.fromEntries(
      rig.cables.map(({ id }) => [id, { feet: whole(random, CABLE_FEET, 5), awg: pick(random, CABLE_AWG) }]),
    ),
    colours: Object.fromEntries(rig.cables.flatMap(({ id }) => drawColours(rig, id, random))),
    rooms: Object.fromEntries(
      rig.rooms.map((room) => [
        room.id,
        {
          lossBtuPerHourFahrenheit: Math.round(room.lossBtuPerHourFahrenheit * share()),
          massBtuPerFahrenheit: Math.round(room.massBtuPerFahrenheit * share()),
        },
      ]),
    ),
  };
}

/** Half of all cables are landed by the usual colours; in the others one conductor has one that nobody expects. */
function drawColours(rig: RigData, cable: string, random: Random): [string, (typeof WIRE_COLOURS)[number]][] {
  const wires = rig.wires.filter((wire) => wire.cable === cable);
  const free = WIRE_COLOURS.filter((colour) => colour !== 'copper' && !wires.some((wire) => wire.colour === colour));
  const odd = pick(random, wires);
  const colour = pick(random, free);
  return random() < 0.5 && odd && colour ? [[odd.id, colour]] : [];
}

/** What one thermostat is asked for, in weather that goes with it, and how long ago. */
function drawStory(
  random: Random,
  caller: AssembledPart,
  acts: readonly { readonly control: string; readonly value: string | number }[],
): Pick<Variant, 'weather' | 'history'> {
  const asked = acts.find((each) => typeof each.value === 'number');
  const range = caller.kind.controls?.find((control) => control.id === asked?.control)?.range;
  const middle = range ? (range.from + range.to) / 2 : 0;
  const way = asked === undefined ? 'neither' : Number(asked.value) > middle ? 'heat' : 'cool';
  const startFahrenheit = whole(random, WEATHER[way].start);
  const outdoorFahrenheit = whole(random, WEATHER[way].outdoor);
  const degrees = whole(random, ASKED) * (way === 'heat' ? 1 : -1);
  const history = acts.map(({ control, value }): HistoryAct => {
    if (typeof value === 'string') return { name: 'operate', part: caller.id, control, position: value };
    return { name: 'set', part: caller.id, control, value: Math.round(startFahrenheit + degrees) };
  });
  return {
    weather: { outdoorFahrenheit, startFahrenheit },
    history: [...history, { name: 'wait', seconds: pick(random, STORY_SECONDS) }],
  };
}
