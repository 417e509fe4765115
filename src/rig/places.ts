import { z } from 'zod';
import { rigId } from './id.ts';

/** What stands round the parts of a place: its wall and floor. */
export const PLACE_LOOKS = ['hall', 'mat', 'closet', 'yard', 'basement', 'attic', 'roof', 'workbench', 'utility'] as const;
export type PlaceLookName = (typeof PLACE_LOOKS)[number];

export const COVER_LOOKS = ['enamel', 'louvred', 'grey'] as const;
export const CABINET_FINISHES = ['enamel', 'weathered', 'grey', 'concrete', 'plywood'] as const;
export const PIPE_KINDS = ['conduit', 'whip', 'riser', 'suction', 'liquid', 'gas', 'water', 'flue', 'duct'] as const;

/** Of the drawn scene, 800 wide and 648 high; what is painted goes on beyond its edges. */
const along = z.number().min(-100).max(900);
const spot = z.strictObject({ x: along, y: along });
const box = z.strictObject({ x: along, y: along, width: z.number().min(4).max(900), height: z.number().min(4).max(900) });

/** Which cell of the section through the house a place takes: a column and a storey (0 is the ground floor, −1 the basement), or outside the walls. */
const sectionSchema = z.union([
  z.strictObject({ column: z.int().min(0).max(3), storey: z.int().min(-1).max(2) }),
  z.enum(['attic', 'outside', 'roof']),
]);

/**
 * A place to stand in, and how the drawn bench and the section through the house show it. All of its looks may be left out:
 * they are worked out from its parts and covers then.
 */
export const placeSchema = z.strictObject({
  id: rigId,
  walkSeconds: z.number().min(0).max(600),
  /** The room whose air its parts stand in; the first one where left out. */
  room: rigId.optional(),
  look: z.enum(PLACE_LOOKS).optional(),
  section: sectionSchema.optional(),
  /** Boxes drawn behind the parts, from back to front. */
  cabinets: z
    .array(box.extend({ finish: z.enum(CABINET_FINISHES) }))
    .max(8)
    .optional(),
  /** Conduits, pipes and ducts drawn on the wall, behind the cabinets. One that ends at the scene's edge goes on beyond it. */
  pipes: z
    .array(z.strictObject({ of: z.enum(PIPE_KINDS), along: z.array(spot).min(2).max(12) }))
    .max(12)
    .optional(),
  /** Holes where wires leave for other places. */
  exits: z.array(spot).max(12).optional(),
  /** Conduits and grommets through which wires go between enclosures: where they go in and where they come out. */
  joins: z
    .array(z.strictObject({ from: spot, to: spot }))
    .max(24)
    .optional(),
  coverLook: z.enum(COVER_LOOKS).optional(),
  /** Where covers that are off lean, in the order of the place's covers. */
  lean: z.array(box).max(20).optional(),
  /** Where the tags stand that put opened covers back, in the order of the place's covers. */
  tags: z.array(spot).max(20).optional(),
  /** Wires keep to lanes and run behind the faces; otherwise they hang freely. */
  harness: z.boolean().optional(),
  /** Scene units. */
  wireWidth: z.number().min(3).max(12).optional(),
});

export type RigPlace = z.infer<typeof placeSchema>;
