import type { ComponentChildren } from 'preact';
import type { Box } from '../../stage/pen.ts';
import { cablesOf, type Section, sectionOf } from '../../stage/section.ts';
import { useMarks } from '../guided/marks.ts';
import type { Bench } from '../use-attempt.ts';
import { placeName, t } from '../words.ts';

interface Props {
  readonly bench: Bench;
  /** A small thing for the free corner beside the roof. */
  readonly children?: ComponentChildren;
}

/** A section through the house, as the rig's places say: each a button that walks there. */
export function House({ bench, children }: Props) {
  const { view } = bench;
  const marks = useMarks();
  const section = sectionOf(view);
  const walk = (place: string) => (
    <button
      key={place}
      type="button"
      class="room"
      aria-current={place === view.place ? 'location' : undefined}
      data-marked={marks.does({ name: 'walk', to: place })}
      style={roomStyle(section, section.rooms.get(place))}
      onClick={() => bench.act({ name: 'walk', to: place })}
    >
      {placeName(place)}
    </button>
  );
  const { width, height, walls, ground } = section;
  const foot = walls.y + walls.height;
  return (
    <section class="house" aria-labelledby="house-title">
      <h2 id="house-title">{t('app:house.title')}</h2>
      <nav class="house-section" aria-label={t('app:house.walk')} style={{ '--section-width': width, '--section-height': height }}>
        <svg viewBox={`0 0 ${width} ${height}`} preserveAspectRatio="none" aria-hidden="true" focusable="false">
          <path class="house-roof" d={`M${section.roof.join(' ')}`} />
          <path
            class="house-walls"
            d={`M${walls.x} ${walls.y} V${foot} M${walls.x + walls.width} ${walls.y} V${foot} M2 ${ground} H${width} M${walls.x} ${foot} H${walls.x + walls.width}`}
          />
          <path
            class="house-cable"
            d={cablesOf(view)
              .map(([from, to]) => cableWay(section, from, to))
              .join(' ')}
          />
        </svg>
        {view.places.map(walk)}
      </nav>
      {children}
    </section>
  );
}

/** A cable from room to room: through the floor where one is above the other, else through the wall. */
function cableWay({ rooms }: Section, from: string, to: string): string {
  const [a, b] = [rooms.get(from), rooms.get(to)];
  if (a === undefined || b === undefined) return '';
  const [upper, lower] = a.y <= b.y ? [a, b] : [b, a];
  const middle = (box: Box): number => box.x + box.width / 2;
  if (upper.y + upper.height <= lower.y) {
    const wall = upper.y + upper.height;
    return `M${middle(upper)} ${wall - 6} V${wall + 1.5} H${middle(lower)} V${lower.y + 5}`;
  }
  const [left, right] = a.x <= b.x ? [a, b] : [b, a];
  const y = right.y + right.height / 2;
  return `M${left.x + left.width - 5} ${y} H${right.x + 5}`;
}

function roomStyle({ width, height }: Section, room: Box | undefined): Record<string, string> | undefined {
  if (room === undefined) return undefined;
  return {
    left: `${(room.x / width) * 100}%`,
    top: `${(room.y / height) * 100}%`,
    width: `${(room.width / width) * 100}%`,
    height: `${(room.height / height) * 100}%`,
  };
}
