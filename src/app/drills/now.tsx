import type { Perceived } from '../../drills/perceived.ts';
import type { RigData } from '../../rig/schema.ts';
import { StateFigures } from '../diagrams/state-figure.tsx';
import { marksOf, sizeOf } from '../diagrams/states.ts';
import { LightCodes } from '../light-codes.tsx';
import { t } from '../words.ts';
import { perceivedText } from './perceived.ts';

interface Props {
  readonly perceived: readonly Perceived[];
  readonly rig: RigData;
  readonly place: string;
}

/** What is seen and heard at the moment that an exercise asks about: in words, each with its mark in the drawing, and the lights' labels. */
export function Now({ perceived, rig, place }: Props) {
  return (
    <section class="drill-now" aria-label={t('drill:now')}>
      <h3>{t('drill:now')}</h3>
      <ul>
        {perceived.map((each) => {
          const marks = marksOf(each.signs);
          const { width, height } = sizeOf(marks);
          return (
            <li key={each.part}>
              <span class="drill-sign">{perceivedText(each)}</span>
              {marks.length > 0 && (
                <svg viewBox={`0 0 ${width} ${height}`} width={width} height={height} aria-hidden="true">
                  <StateFigures marks={marks} x={0} y={0} />
                </svg>
              )}
            </li>
          );
        })}
      </ul>
      <LightCodes rig={rig} place={place} />
    </section>
  );
}
