import { wireOhms } from '../circuit/wire.ts';
import { CATALOGUE } from '../parts/catalogue.ts';
import type { Parameters, PartKind } from '../parts/part.ts';
import type { RigData, RigPart, RigWire } from './schema.ts';

export interface AssembledPart {
  readonly index: number;
  readonly id: string;
  readonly kind: PartKind;
  readonly data: RigPart;
  readonly params: Parameters;
  /** Part index by role. */
  readonly links: Readonly<Record<string, number>>;
  /** Place in `rooms` of the room whose air it stands in. */
  readonly room: number;
  /** Number of flashes by meaning. */
  readonly codes: Readonly<Record<string, number>>;
}

export interface AssembledWire {
  readonly index: number;
  readonly id: string;
  readonly data: RigWire;
  /** Of the copper, one way, at 20 °C. */
  readonly ohms: number;
  /** Part indices at its ends. */
  readonly fromPart: number;
  readonly toPart: number;
}

/** A rig put together: everything that no fault and no action changes, shared by all twins. */
export interface Assembly {
  readonly rig: RigData;
  readonly parts: readonly AssembledPart[];
  readonly partById: ReadonlyMap<string, AssembledPart>;
  readonly wires: readonly AssembledWire[];
  readonly wireById: ReadonlyMap<string, AssembledWire>;
  readonly coverIndex: ReadonlyMap<string, number>;
  /** Wirings worked out so far, by what was landed elsewhere, jumpered or metered in series (wiring.ts). */
  readonly wirings: Map<string, unknown>;
}

function roomOf(rig: RigData, place: string): number {
  const room = rig.places.find((each) => each.id === place)?.room;
  return Math.max(
    0,
    rig.rooms.findIndex((each) => each.id === room),
  );
}

/** Puts a checked rig together. */
export function assemble(rig: RigData): Assembly {
  const order = new Map(rig.parts.map((part, index) => [part.id, index]));
  const indexOf = (id: string) => order.get(id) ?? -1;
  const parts = rig.parts.map((data, index): AssembledPart => {
    const kind = CATALOGUE.get(data.kind);
    if (!kind) throw new Error(`no such kind of part: ${data.kind}`);
    return {
      index,
      id: data.id,
      kind,
      data,
      params: kind.parameters.parse(data.params),
      room: roomOf(rig, data.place),
      codes: { ...kind.codes, ...data.codes },
      links: Object.fromEntries(Object.entries(data.links).map(([role, id]) => [role, indexOf(id)])),
    };
  });
  const wires = rig.wires.map(
    (data, index): AssembledWire => ({
      index,
      id: data.id,
      data,
      ohms: wireOhms(data.awg, data.feet),
      fromPart: indexOf(data.from.split('.')[0] ?? ''),
      toPart: indexOf(data.to.split('.')[0] ?? ''),
    }),
  );
  return {
    rig,
    parts,
    partById: new Map(parts.map((part) => [part.id, part])),
    wires,
    wireById: new Map(wires.map((wire) => [wire.id, wire])),
    coverIndex: new Map(rig.covers.map((cover, index) => [cover.id, index])),
    wirings: new Map(),
  };
}
