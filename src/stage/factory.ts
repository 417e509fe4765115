import type { PartView, WireEndView } from '../attempt/view.ts';
import type { AssembledPart, Assembly } from '../rig/assemble.ts';
import { endPoint, MAT_PLACE, type Point, terminalPoint, type WireEnd } from '../rig/points.ts';
import { type Scene, type SceneView, sceneOf } from './layout.ts';

/** Bodies that are drawn off their bases, by id: turned over beside it, or with pigtails on the mat. The others are left out. */
export type BodiesOff = Readonly<Record<string, 'turned' | 'mat'>>;

/** A place of a rig as the factory drew it: every cover off, bodies off their bases and nothing known of any state. */
function factoryView(assembly: Assembly, place: string, off: BodiesOff): SceneView {
  const { rig } = assembly;
  const removable = assembly.parts.filter(({ kind }) => kind.removable === true);
  const bodies = new Set(removable.map(({ id }) => id));
  const shown = assembly.parts.filter(({ id, data }) => !bodies.has(id) && (data.rides === undefined || !bodies.has(data.rides)));
  const landed = new Map<Point, string[]>();
  const wires = rig.wires.filter(({ pin, from, to }) => {
    const ends = [from, to].map((point) => point.split('.')[0] ?? '');
    return !pin && ends.every((id) => shown.some((part) => part.id === id));
  });
  for (const { id, from, to } of wires) for (const point of [from, to]) landed.set(point, [...(landed.get(point) ?? []), id]);
  const placeOf = (point: Point): string => assembly.partById.get(point.split('.')[0] ?? '')?.data.place ?? '';
  const end = (id: string, which: WireEnd, home: Point): WireEndView => ({
    home,
    landedOn: home,
    lifted: false,
    place: placeOf(home),
    visible: placeOf(home) === place,
    liftable: false,
    point: endPoint(id, which),
  });
  return {
    place,
    looks: Object.fromEntries(rig.places.map((each) => [each.id, each])),
    parts: [
      ...shown.map((part) => partView(part, place, landed)),
      ...removable.flatMap((part) => bodyView(assembly, partView(part, place, landed), off[part.id], place)),
    ],
    wires: wires.map(({ id, cable, colour, from, to }) => ({
      id,
      cable,
      colour,
      ends: { from: end(id, 'from', from), to: end(id, 'to', to) },
    })),
    covers: rig.covers.map(({ id, place: where, lineVoltage, at }) => ({ id, place: where, open: true, lineVoltage, at })),
  };
}

function partView({ id, kind, data }: AssembledPart, place: string, landed: ReadonlyMap<Point, readonly string[]>): PartView {
  return {
    id,
    kind: kind.kind,
    section: kind.section,
    place: data.place,
    at: data.at,
    cover: data.cover,
    visible: data.place === place,
    signs: {},
    terminals: kind.terminals.map((terminal) => {
      const point = terminalPoint(id, terminal.id);
      return {
        point,
        id: terminal.id,
        label: data.labels[terminal.id] ?? terminal.label,
        reachable: true,
        wires: landed.get(point) ?? [],
      };
    }),
    controls: [],
    body: undefined,
    carrier: data.rides,
    base: undefined,
    pulledOut: undefined,
    hazards: [],
    sounds: {},
    codes: {},
  };
}

/** A body off its base: its pins are called by the screws that they meet. */
function bodyView(assembly: Assembly, part: PartView, body: BodiesOff[string] | undefined, place: string): PartView[] {
  if (body === undefined) return [];
  const where = body === 'mat' ? MAT_PLACE : part.place;
  const terminals = part.terminals.map((terminal) => {
    const screw = assembly.rig.wires.find(({ pin, to }) => pin === true && to === terminal.point)?.from ?? '';
    const [base = '', id = ''] = screw.split('.');
    const plate = assembly.partById.get(base);
    const printed = plate?.data.labels[id] ?? plate?.kind.terminals.find((each) => each.id === id)?.label;
    return printed === undefined || printed === '' ? terminal : { ...terminal, label: printed };
  });
  return [{ ...part, terminals, body, place: where, visible: where === place }];
}

/** Where everything of a place stands and how its wires run, as it left the factory: for a wiring diagram. */
export function factoryScene(assembly: Assembly, place: string, off: BodiesOff = {}): Scene {
  return sceneOf(factoryView(assembly, place, off));
}
