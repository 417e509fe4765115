import { CATALOGUE } from '../parts/catalogue.ts';
import type { PartKind } from '../parts/part.ts';
import { dataError, pathText, shapeError } from './errors.ts';
import { MAT_PLACE } from './points.ts';
import { type RigData, rigSchema } from './schema.ts';

/**
 * Checks a rig from outside: its shape, and that everything that it names is there.
 * @throws DataError with a code, and the path inside the file
 */
export function loadRig(json: unknown): RigData {
  const parsed = rigSchema.safeParse(json);
  if (!parsed.success) throw shapeError(parsed.error.issues);
  const rig = parsed.data;
  checkNames(rig);
  for (const [index, part] of rig.parts.entries()) checkPart(rig, part, index);
  checkCircles(rig);
  checkWires(rig);
  checkLooks(rig);
  return rig;
}

function checkNames(rig: RigData): void {
  const seen = new Set<string>();
  for (const list of ['places', 'rooms', 'covers', 'parts', 'wires', 'cables'] as const) {
    const group = list === 'parts' || list === 'wires' || list === 'cables' ? 'thing' : list;
    rig[list].forEach((item, index) => {
      const key = `${group} ${item.id}`;
      if (seen.has(key)) throw dataError('rig.twice', `${list}[${index}].id`, { id: item.id });
      seen.add(key);
    });
  }
  const places = new Set(rig.places.map((place) => place.id));
  const parts = new Set(rig.parts.map((part) => part.id));
  const need = (set: ReadonlySet<string>, id: string, path: string) => {
    if (!set.has(id)) throw dataError('rig.unknown', path, { id });
  };
  need(places, rig.start, 'start');
  rig.covers.forEach((cover, index) => {
    need(places, cover.place, `covers[${index}].place`);
    if (cover.panel !== undefined) need(parts, cover.panel, `covers[${index}].panel`);
  });
  const rooms = new Set(rig.rooms.map((room) => room.id));
  rig.places.forEach((place, index) => {
    if (place.room !== undefined) need(rooms, place.room, `places[${index}].room`);
  });
  rig.rooms.forEach(({ sources }, index) => {
    sources.forEach(({ part, air }, place) => {
      need(parts, part, `rooms[${index}].sources[${place}].part`);
      if (air !== undefined) need(parts, air, `rooms[${index}].sources[${place}].air`);
    });
  });
}

function checkPart(rig: RigData, part: RigData['parts'][number], index: number): void {
  const path = `parts[${index}]`;
  const kind = CATALOGUE.get(part.kind);
  if (!kind) throw dataError('rig.kind', `${path}.kind`, { kind: part.kind });
  const params = kind.parameters.safeParse(part.params);
  if (!params.success) throw shapeError(params.error.issues, pathText(['parts', index, 'params']));
  if (!rig.places.some((place) => place.id === part.place)) throw dataError('rig.unknown', `${path}.place`, { id: part.place });
  if (part.cover !== undefined && rig.covers.find((cover) => cover.id === part.cover)?.place !== part.place) {
    throw dataError('rig.cover', `${path}.cover`, { id: part.cover });
  }
  if (part.rides !== undefined && !kindOf(rig, part.rides)?.removable)
    throw dataError('rig.rides', `${path}.rides`, { id: part.rides });
  for (const role of [...(kind.links ?? []), ...(kind.optionalLinks ?? [])]) {
    const id = part.links[role];
    if (id === undefined && kind.optionalLinks?.includes(role)) continue;
    if (id === undefined) throw dataError('rig.link', `${path}.links`, { role });
    if (!kindOf(rig, id)?.drive) throw dataError('rig.drive', `${path}.links.${role}`, { id });
  }
  for (const role of Object.keys(part.links)) {
    if (!kind.links?.includes(role) && !kind.optionalLinks?.includes(role))
      throw dataError('rig.role', `${path}.links.${role}`, { role });
  }
  for (const terminal of Object.keys(part.labels)) {
    if (!kind.terminals.some((each) => each.id === terminal))
      throw dataError('rig.terminal', `${path}.labels.${terminal}`, { point: `${part.id}.${terminal}` });
  }
  for (const code of Object.keys(part.codes)) {
    if (kind.codes?.[code] === undefined) throw dataError('rig.code', `${path}.codes.${code}`, { code });
  }
  if (kind.removable && part.place === MAT_PLACE) throw dataError('rig.matPlace', `${path}.place`, {});
}

/** What drives a part mechanically must not be driven by it in turn: each asks the other for ever. */
function checkCircles(rig: RigData): void {
  const place = new Map(rig.parts.map((part, index) => [part.id, index]));
  const cleared = new Set<number>();
  const follow = (index: number, above: readonly number[]): void => {
    if (cleared.has(index)) return;
    for (const [role, id] of Object.entries(rig.parts[index]?.links ?? {})) {
      const driver = place.get(id) ?? -1;
      if (driver === index || above.includes(driver)) throw dataError('rig.circle', `parts[${index}].links.${role}`, { id });
      if (driver >= 0) follow(driver, [...above, index]);
    }
    cleared.add(index);
  };
  for (const index of rig.parts.keys()) follow(index, []);
}

function kindOf(rig: RigData, id: string): PartKind | undefined {
  const part = rig.parts.find((candidate) => candidate.id === id);
  return part && CATALOGUE.get(part.kind);
}

function checkWires(rig: RigData): void {
  const cables = new Set(rig.cables.map((cable) => cable.id));
  rig.wires.forEach((wire, index) => {
    const path = `wires[${index}]`;
    for (const end of ['from', 'to'] as const) {
      const [part = '', terminal = ''] = wire[end].split('.');
      const kind = kindOf(rig, part);
      if (!kind?.terminals.some((candidate) => candidate.id === terminal))
        throw dataError('rig.terminal', `${path}.${end}`, { point: wire[end] });
    }
    if (wire.from === wire.to) throw dataError('rig.loop', `${path}.to`, { point: wire.to });
    if (wire.cable !== undefined && !cables.has(wire.cable)) throw dataError('rig.unknown', `${path}.cable`, { id: wire.cable });
    if (wire.cable !== undefined && (wire.fixed || wire.pin))
      throw dataError('rig.cableFixed', `${path}.cable`, { id: wire.cable });
    if (wire.pin && !kindOf(rig, wire.to.split('.')[0] ?? '')?.removable)
      throw dataError('rig.pin', `${path}.to`, { point: wire.to });
  });
}

/** No two places stand in one cell of the house, and what belongs to covers has its cover. */
function checkLooks(rig: RigData): void {
  const cells = new Set<string>();
  rig.places.forEach(({ id, section, lean, tags }, index) => {
    if (typeof section === 'object') {
      const cell = `${section.column} ${section.storey}`;
      if (cells.has(cell)) throw dataError('rig.cell', `places[${index}].section`, { id });
      cells.add(cell);
    }
    const covers = rig.covers.filter((cover) => cover.place === id).length;
    for (const [key, list] of Object.entries({ lean, tags }))
      if (list !== undefined && list.length > covers)
        throw dataError('rig.coverless', `places[${index}].${key}[${covers}]`, { id });
  });
}
