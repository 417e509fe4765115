import type { BenchView } from '../../attempt/view.ts';
import { listed, pointName, readingText, t } from '../words.ts';
import { EARTH, type Readings } from './values.ts';

// keys: drill:figure.about.*
// keys: drill:figure.key.*
// keys: drill:figure.list.*

interface Props {
  readonly view: BenchView;
  /** One for each drawing. */
  readonly readings: readonly (Readings | undefined)[];
  /** Volts are read to the ladder's right rail. */
  readonly isLadder?: boolean;
}

/** What the values in a drawing are, how live and dead are told apart, and the same in words. */
export function Legend({ view, readings, isLadder = false }: Props) {
  const found = readings.flatMap((each) => (each && each.readings.length > 0 ? [each] : []));
  const [first] = found;
  if (first === undefined) return null;
  const { of } = first;
  const ends = new Set(found.flatMap((each) => each.readings.map(({ to }) => to)));
  const names = [...ends].map((to) => (to === EARTH ? t('drill:figure.earth') : pointName(view, to)));
  return (
    <div class="drill-legend">
      <p>{t(`drill:figure.about.${isLadder ? 'ladder' : of}`, { points: listed(names) })}</p>
      <ul class="drill-keys">
        {[true, false].map((alive) => (
          <li key={String(alive)}>
            <svg viewBox="0 0 36 18" width={36} height={18} aria-hidden="true">
              <g class="diagram-value" data-alive={String(alive)}>
                <rect x={1} y={1} width={34} height={16} rx={alive ? 4 : 0} />
              </g>
            </svg>
            {t(`drill:figure.key.${of}.${alive ? 'alive' : 'not'}`)}
          </li>
        ))}
      </ul>
      <details class="light-codes">
        <summary>{t(`drill:figure.list.${of}`)}</summary>
        {found.map((each, index) => (
          <ul key={index} class="drill-volts">
            {each.readings.map(({ point, shown }) => (
              <li key={point}>
                <span>{pointName(view, point)}</span> <b>{readingText(shown)}</b>
              </li>
            ))}
          </ul>
        ))}
      </details>
    </div>
  );
}
