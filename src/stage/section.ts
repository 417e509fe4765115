import type { BenchView } from '../attempt/view.ts';
import type { RigPlace } from '../rig/places.ts';
import type { Box } from './pen.ts';

/** A section through the house: where each place stands in it, in its own units, and the lines of the building. */
export interface Section {
  readonly width: number;
  readonly height: number;
  readonly rooms: ReadonlyMap<string, Box>;
  /** The building from its ceiling to its lowest floor. */
  readonly walls: Box;
  /** Outlines as x, y, x, y… */
  readonly roof: readonly number[];
  /** Height of the ground. */
  readonly ground: number;
}

const ROOM = { width: 78, height: 58 } as const;
const OUTSIDE = { width: 66, height: 52 } as const;
const GAP = 3;
/** Where the first room's upper left corner is: under the roof, or under what stands on a flat one, which is higher for its long names. */
const LEFT = 16;
const ROOF = 60;
const ALOFT = 94;
/** What stays free beside the roof where nothing stands outside: a key for the sound, which is no narrower in a wide house. */
const CORNER = 54;
/** How far in from the walls what stands on a flat roof begins. */
const INSET = 5;
/** How far the eaves reach beyond the walls. */
const EAVES = 11;

type Cell = { readonly column: number; readonly storey: number };
type Spread = NonNullable<RigPlace['section']>;

const isCell = (section: Spread | undefined): section is Cell => typeof section === 'object';

/** What a place takes of the section where the rig does not say, by how it looks. */
function usual(place: RigPlace | undefined): Spread | undefined {
  if (place?.section !== undefined) return place.section;
  switch (place?.look) {
    case 'yard':
      return 'outside';
    case 'roof':
    case 'attic':
      return place.look;
    default:
      return undefined;
  }
}

/** The cells of places that name none: free ones in order, two beside each other, from the top storey down. */
function cellsOf(view: Pick<BenchView, 'places' | 'looks'>): ReadonlyMap<string, Cell> {
  const told = new Map<string, Cell>();
  const open: string[] = [];
  for (const id of view.places) {
    const section = usual(view.looks[id]);
    if (isCell(section)) told.set(id, section);
    else if (section === undefined) open.push(id);
  }
  const key = ({ column, storey }: Cell): string => `${String(column)} ${String(storey)}`;
  const used = new Set([...told.values()].map(key));
  const top = Math.max(told.size === 0 ? Math.ceil(open.length / 2) - 1 : 0, ...[...told.values()].map(({ storey }) => storey));
  for (let index = 0; open.length > 0; index += 1) {
    const cell = { column: index % 2, storey: top - Math.floor(index / 2) };
    if (used.has(key(cell))) continue;
    told.set(open.shift() ?? '', cell);
  }
  return told;
}

/** Lays out the section through the house of a view's places. */
export function sectionOf(view: Pick<BenchView, 'places' | 'looks'>): Section {
  const cells = cellsOf(view);
  const storeys = [...cells.values()].map(({ storey }) => storey);
  const [top, foot] = [Math.max(0, ...storeys), Math.min(0, ...storeys)];
  const columns = Math.max(2, ...[...cells.values()].map(({ column }) => column + 1));
  const under = view.places.some((id) => usual(view.looks[id]) === 'roof') ? ALOFT + 16 : ROOF;
  const across = columns * ROOM.width + (columns - 1) * GAP;
  const floorOf = (storey: number): number => under + (top - storey + 1) * (ROOM.height + GAP) - GAP;
  const ground = floorOf(0) + 2;
  const walls = { x: LEFT - GAP, y: under - 6, width: across + GAP * 2, height: floorOf(foot) + 2 - (under - 6) };
  const rooms = new Map<string, Box>();
  for (const [id, { column, storey }] of cells)
    rooms.set(id, { x: LEFT + column * (ROOM.width + GAP), y: floorOf(storey) - ROOM.height, ...ROOM });

  const named = (section: Spread): string[] => view.places.filter((id) => usual(view.looks[id]) === section);
  const outside = named('outside');
  outside.forEach((id, index) => {
    const x = LEFT + across + EAVES + index * (OUTSIDE.width + GAP);
    rooms.set(id, { x, y: floorOf(0) - OUTSIDE.height, ...OUTSIDE });
  });
  const onTop = named('roof');
  const aloft = [...onTop, ...named('attic')];
  const room = across - (onTop.length > 0 ? INSET * 2 : 0);
  const most = Math.min(ROOM.width, (room - GAP * (aloft.length - 1)) / Math.max(1, aloft.length));
  const left = LEFT + (across - aloft.length * most - (aloft.length - 1) * GAP) / 2;
  const high = onTop.length > 0 ? ALOFT : 44;
  aloft.forEach((id, index) => {
    rooms.set(id, { x: left + index * (most + GAP), y: walls.y - 3 - high, width: most, height: high });
  });

  const end = LEFT + across;
  return {
    // A corner beside the roof stays free, whether something stands below it or not.
    width: end + EAVES + Math.max(CORNER, outside.length * (OUTSIDE.width + GAP) - GAP),
    height: floorOf(foot) + 5,
    rooms,
    walls,
    ground,
    roof:
      onTop.length > 0
        ? [LEFT - EAVES, walls.y, end + EAVES, walls.y]
        : [LEFT - EAVES - 3, 58, LEFT + across / 2, aloft.length > 0 ? 2 : 8, end + EAVES + 3, 58],
  };
}

/** Pairs of places that a cable joins. */
export function cablesOf(view: Pick<BenchView, 'wires'>): (readonly [string, string])[] {
  const pairs = new Map<string, readonly [string, string]>();
  for (const { cable, ends } of view.wires)
    if (cable !== undefined && ends.from.place !== ends.to.place)
      pairs.set(`${cable} ${ends.from.place} ${ends.to.place}`, [ends.from.place, ends.to.place]);
  return [...pairs.values()];
}
