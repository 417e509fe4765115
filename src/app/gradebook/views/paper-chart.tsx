import type { Gradebook } from '../../../classroom/gradebook.ts';
import type { PaperAnalysis } from '../../../classroom/paperAnalysis.ts';
import { number, percent, t } from '../../words.ts';
import { itemTitle } from '../words.ts';

interface Props {
  readonly assignment: Gradebook['assignment'];
  readonly analysis: PaperAnalysis;
}

/** How many answers were right by kind of question, the hardest first: bars, each with its figures. */
export function PaperChart({ assignment, analysis: { item, kinds } }: Props) {
  const id = `paper-chart-${item}`;
  const [hardest] = kinds;
  if (hardest === undefined) return null;
  return (
    <figure class="plot paper-chart" aria-labelledby={id}>
      <figcaption>
        <h3 id={id}>{t('classview:paper.chart', { name: itemTitle(assignment, item) })}</h3>
        <p>
          {t('classview:paper.chartSaid', {
            kind: t(`drill:kind.${hardest.kind}.name`),
            share: percent(hardest.right / hardest.asked),
          })}
        </p>
      </figcaption>
      <ul>
        {kinds.map(({ kind, right, asked }) => (
          <li key={kind}>
            <span>{t(`drill:kind.${kind}.name`)}</span>
            <span class="paper-bar" aria-hidden="true">
              <span style={{ width: percentStyle(right, asked) }} />
            </span>
            <span class="paper-bar-figures">
              {t('classview:paper.bar', { right: number(right), asked: number(asked), share: percent(right / asked) })}
            </span>
          </li>
        ))}
      </ul>
    </figure>
  );
}

const percentStyle = (right: number, asked: number): string => `${(100 * right) / asked}%`;
