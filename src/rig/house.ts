import { z } from 'zod';
import { dataError } from './errors.ts';
import { type RigData, WIRE_COLOURS } from './schema.ts';

const id = z.string().min(1).max(40);

/** What differs from house to house where the same system hangs: how far its cables run and of what, which colours were used, and the rooms. */
export const houseSchema = z.strictObject({
  /** By cable: the length of every conductor in it, feet, and its gauge. */
  cables: z
    .record(id, z.strictObject({ feet: z.number().min(1).max(500).optional(), awg: z.int().min(14).max(24).optional() }))
    .optional(),
  /** By conductor of a cable: the colour that was landed there, for once not the usual. */
  colours: z.record(id, z.enum(WIRE_COLOURS)).optional(),
  /** By room. */
  rooms: z
    .record(
      id,
      z.strictObject({
        startFahrenheit: z.number().min(-20).max(120).optional(),
        lossBtuPerHourFahrenheit: z.number().min(10).max(5000).optional(),
        massBtuPerFahrenheit: z.number().min(50).max(50000).optional(),
        gainsBtuPerHour: z.number().min(-50000).max(50000).optional(),
      }),
    )
    .optional(),
});

export type House = z.infer<typeof houseSchema>;

/**
 * A rig as it hangs in a certain house; the rig itself where the house says nothing.
 * @throws DataError when the house names a cable, conductor or room that the rig has not, or gives one cable two conductors of a colour
 */
export function layHouse(rig: RigData, house: House | undefined): RigData {
  if (house === undefined) return rig;
  const { cables = {}, colours = {}, rooms = {} } = house;
  const known = (ids: Iterable<string>, path: string, has: (id: string) => boolean) => {
    for (const each of ids) if (!has(each)) throw dataError('house.unknown', `house.${path}.${each}`, { id: each });
  };
  known(Object.keys(cables), 'cables', (cable) => rig.cables.some((each) => each.id === cable));
  known(Object.keys(colours), 'colours', (wire) => rig.wires.some((each) => each.id === wire && each.cable !== undefined));
  known(Object.keys(rooms), 'rooms', (room) => rig.rooms.some((each) => each.id === room));
  const wires = rig.wires.map((wire) => {
    const cable = wire.cable === undefined ? undefined : cables[wire.cable];
    const colour = colours[wire.id] ?? wire.colour;
    return { ...wire, colour, feet: cable?.feet ?? wire.feet, awg: cable?.awg ?? wire.awg };
  });
  for (const wire of Object.keys(colours)) {
    const own = wires.find((each) => each.id === wire);
    const alike = wires.find((each) => each.id !== wire && each.cable === own?.cable && each.colour === own?.colour);
    if (alike) throw dataError('house.sameColour', `house.colours.${wire}`, { other: alike.id });
  }
  return { ...rig, wires, rooms: rig.rooms.map((room) => ({ ...room, ...given(rooms[room.id]) })) };
}

/** Only what is said: a figure that is left out is the rig's. */
function given<T extends object>(figures: T | undefined): { [K in keyof T]?: Exclude<T[K], undefined> } {
  return Object.fromEntries(Object.entries(figures ?? {}).filter(([, value]) => value !== undefined)) as never;
}
