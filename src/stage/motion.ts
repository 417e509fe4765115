import type { BenchView, CoverView } from '../attempt/view.ts';
import { drawLid, leaningBox } from './covers.ts';
import { paintWalk, WALK_MILLISECONDS } from './house.ts';
import type { Box, Pen } from './pen.ts';
import type { PlaceLook } from './place.ts';
import { partsHere } from './placing.ts';
import type { Surface } from './surface.ts';
import { lookOf } from './surroundings.ts';
import type { Lead } from './targets.ts';

const COVER_MILLISECONDS = 340;
const SEAT_MILLISECONDS = 420;
/** Texture pixels in a scene unit: what moves this fast need not be sharp. */
const ROUGH = 0.7;

/** How far a probe has yet to go to sit, and how its lead sways, scene units. */
export interface Seating {
  readonly lift: number;
  readonly sway: number;
}

/** Short movements that follow what has already happened: they delay nothing, and the next press ends them. */
export interface Following {
  /** A new view came after another one. */
  follow(before: BenchView | undefined, after: BenchView): void;
  /** Draws the moment; true while something moves or has just come to rest. */
  place(milliseconds: number, bounds: Box): boolean;
  /** Nothing when the lead is at rest. */
  seating(lead: Lead): Seating | undefined;
  end(): void;
}

type Move =
  | { readonly kind: 'walk'; readonly from: string; readonly view: BenchView }
  | { readonly kind: 'cover'; readonly cover: CoverView; readonly index: number; readonly look: PlaceLook }
  | { readonly kind: 'seat'; readonly lead: Lead };

const LENGTH = { walk: WALK_MILLISECONDS, cover: COVER_MILLISECONDS, seat: SEAT_MILLISECONDS } as const;

function moveOf(before: BenchView, after: BenchView): Move | undefined {
  if (before.place !== after.place) return { kind: 'walk', from: before.place, view: after };
  const here = after.covers.filter((cover) => cover.place === after.place);
  const index = here.findIndex((cover) => before.covers.find((each) => each.id === cover.id)?.open !== cover.open);
  const cover = here[index];
  if (cover !== undefined) return { kind: 'cover', cover, index, look: lookOf(after, partsHere(after)) };
  const lead = (['red', 'black'] as const).find(
    (each) => after.meter[each] !== undefined && after.meter[each] !== before.meter[each],
  );
  return lead === undefined ? undefined : { kind: 'seat', lead };
}

/** Follows views with movements on a sheet of its own; under reduced motion there are none. */
export function createFollowing(sheet: Surface, still: () => boolean): Following {
  let move: Move | undefined;
  let began: number | undefined;
  let share = 1;
  let clean = true;
  const mix = (a: number, b: number, t: number): number => a + (b - a) * t;

  const paint = (pen: Pen, bounds: Box): void => {
    if (move?.kind === 'walk') paintWalk(pen, bounds, move.view, move.from, share);
    if (move?.kind !== 'cover') return;
    const { look } = move;
    const away = leaningBox(move.cover, move.index, look);
    const on = move.cover.at;
    const t = move.cover.open ? share : 1 - share;
    const eased = t * t * (3 - 2 * t);
    drawLid(
      pen,
      {
        x: mix(on.x, away.x, eased),
        y: mix(on.y, away.y, eased) - Math.sin(Math.PI * eased) * 30,
        width: mix(on.width, away.width, eased),
        height: mix(on.height, away.height, eased),
      },
      look.coverLook,
    );
  };

  return {
    follow(before, after) {
      move = before === undefined || still() ? undefined : moveOf(before, after);
      began = undefined;
      share = 0;
    },
    place(milliseconds, bounds) {
      if (move === undefined) {
        if (clean) return false;
        clean = true;
        sheet.drop();
        return true;
      }
      began ??= milliseconds;
      share = Math.min(1, (milliseconds - began) / LENGTH[move.kind]);
      if (move.kind !== 'seat') {
        sheet.paint(bounds, ROUGH, (pen) => paint(pen, bounds));
        clean = false;
      }
      if (share >= 1) move = undefined;
      return true;
    },
    seating(lead) {
      if (move?.kind !== 'seat' || move.lead !== lead) return undefined;
      const fall = Math.min(1, share / 0.3);
      return { lift: 12 * (1 - fall) ** 2, sway: 26 * Math.exp(-share * 4) * Math.cos(share * 14) * (1 - share) };
    },
    end() {
      move = undefined;
    },
  };
}
