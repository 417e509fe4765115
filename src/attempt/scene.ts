import type { AssembledPart, AssembledWire } from '../rig/assemble.ts';
import { endPoint, terminalPoint, WIRE_ENDS, type WireEnd } from '../rig/points.ts';
import { stateOf } from '../world/world.ts';
import { baseOf, bodyOf, canLift, controlReachable, isVisible, movedEnds, placeOf, terminalsReachable, wireEnd } from './access.ts';
import type { Bench } from './bench.ts';
import { hazardsOf } from './hazards.ts';
import type { Job } from './job.ts';
import { idleReading } from './measure.ts';
import { perceives, signsOf } from './notices.ts';
import type { BenchView, PartView, StepView, WireEndView, WireView } from './view.ts';

/** The attempt as a screen may draw it: nothing in it that the trainee could not perceive. */
export function drawView(job: Job, bench: Bench, steps: readonly StepView[], phase: BenchView['phase']): BenchView {
  const { world } = bench;
  const { rig } = world.assembly;
  const landings = landingsOf(bench);
  return {
    ticket: job.id,
    rig: job.rig,
    phase,
    seconds: world.state.time - bench.arrived,
    place: bench.place,
    places: rig.places.map(({ id }) => id),
    looks: Object.fromEntries(rig.places.map((place) => [place.id, place])),
    parts: world.assembly.parts.map((part) => partView(bench, part, landings)),
    wires: world.assembly.wires.filter((wire) => !wire.data.pin).map((wire) => wireView(bench, wire)),
    covers: rig.covers.map((cover, index) => ({
      id: cover.id,
      place: cover.place,
      open: world.state.covers[index] === 1,
      lineVoltage: cover.lineVoltage,
      at: cover.at,
    })),
    jumpers: world.state.jumpers,
    meter: {
      fn: bench.fn,
      tools: bench.tools,
      red: bench.red,
      black: bench.black,
      clamp: bench.clamp,
      turns: bench.turns,
      reading: idleReading(bench),
    },
    steps,
  };
}

/** Wires by the terminal that they are landed on now. */
function landingsOf(bench: Bench): ReadonlyMap<string, string[]> {
  const landings = new Map<string, string[]>();
  const moved = movedEnds(bench);
  for (const wire of bench.world.assembly.wires) {
    if (wire.data.pin) continue;
    for (const end of WIRE_ENDS) {
      const now = wireEnd(bench, wire, end, moved);
      if (now.lifted) continue;
      const there = landings.get(now.terminal);
      if (there) there.push(wire.id);
      else landings.set(now.terminal, [wire.id]);
    }
  }
  return landings;
}

function partView(bench: Bench, part: AssembledPart, landings: ReadonlyMap<string, string[]>): PartView {
  const visible = isVisible(bench, part);
  const reachable = terminalsReachable(bench, part);
  const state = stateOf(bench.world, part);
  const signs: Record<string, string | number> = {};
  for (const sign of signsOf(bench, part)) {
    // What was found by looking closely stays known for as long as it stands in view.
    if (perceives(bench, part, sign)) signs[sign.key] = sign.value;
    else if (visible && sign.sense === 'inspect') {
      const known = bench.seen.get(`${part.id}.${sign.key}`);
      if (known !== undefined) signs[sign.key] = known;
    }
  }
  return {
    id: part.id,
    kind: part.kind.kind,
    section: part.kind.section,
    place: placeOf(bench, part),
    at: part.data.at,
    cover: part.data.cover,
    visible,
    signs,
    terminals: part.kind.terminals.map((terminal) => {
      const point = terminalPoint(part.id, terminal.id);
      return {
        point,
        id: terminal.id,
        label: part.data.labels[terminal.id] ?? terminal.label,
        reachable,
        wires: visible ? (landings.get(point) ?? []) : [],
      };
    }),
    controls: (part.kind.controls ?? [])
      .filter((control) => controlReachable(bench, part, control))
      .map((control) => ({ ...control, value: part.kind.reads?.(state, control.id) ?? '' })),
    body: bodyOf(bench, part),
    base: baseOf(bench.world.assembly, part),
    carrier: part.data.rides,
    pulledOut: part.kind.pluggable ? state.out === 1 : undefined,
    hazards: hazardsOf(part.kind),
    codes: part.codes,
    sounds: part.kind.sounds ?? {},
  };
}

function wireView(bench: Bench, wire: AssembledWire): WireView {
  const end = (which: WireEnd): WireEndView => {
    const now = wireEnd(bench, wire, which);
    const visible = isVisible(bench, now.part);
    return {
      home: wire.data[which],
      landedOn: now.lifted || !visible ? undefined : now.terminal,
      lifted: now.lifted,
      place: placeOf(bench, now.part),
      visible,
      liftable: canLift(wire) && visible && !now.lifted,
      point: endPoint(wire.id, which),
    };
  };
  return { id: wire.id, cable: wire.data.cable, colour: wire.data.colour, ends: { from: end('from'), to: end('to') } };
}
