import type { ComponentChildren } from 'preact';
import { useMarks } from '../guided/marks.ts';
import type { Bench } from '../use-attempt.ts';
import { placeName, t } from '../words.ts';

/** Where each place stands in the section through the house, in the drawing's own units (220 by 200). */
const ROOMS: Readonly<Record<string, { readonly x: number; readonly y: number; readonly width: number; readonly height: number }>> =
  {
    mat: { x: 16, y: 60, width: 78, height: 58 },
    hallway: { x: 97, y: 60, width: 78, height: 58 },
    furnace: { x: 16, y: 121, width: 78, height: 58 },
    panel: { x: 97, y: 121, width: 78, height: 58 },
    outdoor: { x: 186, y: 127, width: 66, height: 52 },
  };
const WIDTH = 252;
const HEIGHT = 184;

interface Props {
  readonly bench: Bench;
  /** A small thing for the free corner beside the roof. */
  readonly children?: ComponentChildren;
}

/** A section through the house: each place a button that walks there. Places of a rig that the drawing does not know stand in a row beneath. */
export function House({ bench, children }: Props) {
  const { view } = bench;
  const marks = useMarks();
  const drawn = view.places.filter((place) => ROOMS[place] !== undefined);
  const others = view.places.filter((place) => ROOMS[place] === undefined);
  const walk = (place: string) => (
    <button
      key={place}
      type="button"
      class="room"
      aria-current={place === view.place ? 'location' : undefined}
      data-marked={marks.does({ name: 'walk', to: place })}
      style={roomStyle(place)}
      onClick={() => bench.act({ name: 'walk', to: place })}
    >
      {placeName(place)}
    </button>
  );
  return (
    <section class="house" aria-labelledby="house-title">
      <h2 id="house-title">{t('app:house.title')}</h2>
      <nav class="house-section" aria-label={t('app:house.walk')}>
        <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} preserveAspectRatio="none" aria-hidden="true" focusable="false">
          <path class="house-roof" d="M2 58 L95.5 8 L189 58" />
          <path class="house-walls" d="M13 54 V181 M178 54 V181 M2 181 H252" />
          <path class="house-cable" d="M136 112 V119.5 H55 V126 M170 153 H190" />
        </svg>
        {drawn.map(walk)}
      </nav>
      {children}
      {others.length > 0 && <div class="house-others">{others.map(walk)}</div>}
    </section>
  );
}

function roomStyle(place: string): Record<string, string> | undefined {
  const room = ROOMS[place];
  if (room === undefined) return undefined;
  return {
    left: `${(room.x / WIDTH) * 100}%`,
    top: `${(room.y / HEIGHT) * 100}%`,
    width: `${(room.width / WIDTH) * 100}%`,
    height: `${(room.height / HEIGHT) * 100}%`,
  };
}
