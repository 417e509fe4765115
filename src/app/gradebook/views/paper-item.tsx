import type { ComponentChildren } from 'preact';
import type { Gradebook } from '../../../classroom/gradebook.ts';
import type { PaperAnalysis } from '../../../classroom/paperAnalysis.ts';
import { number, percent, t } from '../../words.ts';
import { itemTitle } from '../words.ts';
import { KindsApart } from './kinds-apart.tsx';

interface Props {
  readonly assignment: Gradebook['assignment'];
  readonly analysis: PaperAnalysis;
}

/** So many of the hardest kinds and the commonest misconceptions are told. */
const TOLD = 5;

/** What exercises or an exam show about the class. */
export function PaperItem({ assignment, analysis: { item, count, difficulty, passedCount, kinds, misconceptions } }: Props) {
  const id = `item-${item}`;
  const hard = kinds.filter(({ right, asked }) => right < asked).slice(0, TOLD);
  return (
    <section class="item-analysis" data-paper={item} aria-labelledby={id}>
      <h3 id={id}>{itemTitle(assignment, item)}</h3>
      {difficulty === undefined ? (
        <p>{t('classview:items.nobody')}</p>
      ) : (
        <dl class="item-facts">
          {passedCount !== undefined && (
            <Fact name={t('classview:paper.passed')}>{t('classview:items.right', { right: number(passedCount), count })}</Fact>
          )}
          <Fact name={t('classview:items.difficulty')}>
            {t('classview:items.share', { difficulty: number(difficulty, 2), share: percent(difficulty) })}
          </Fact>
          <Fact name={t('classview:paper.kinds')}>
            {hard.length === 0 ? (
              t('gradebook:paper.allRight')
            ) : (
              <ul>
                {hard.map(({ kind, right, asked }) => (
                  <li key={kind}>
                    {t('classview:paper.kind', {
                      kind: t(`drill:kind.${kind}.name`),
                      right: number(right),
                      asked: number(asked),
                      share: percent(right / asked),
                    })}
                  </li>
                ))}
              </ul>
            )}
          </Fact>
          <Fact name={t('classview:items.discriminationName')}>
            <KindsApart kinds={kinds} />
          </Fact>
          <Fact name={t('classview:paper.misconceptions')}>
            {misconceptions.length === 0 ? (
              t('classview:paper.noMisconception')
            ) : (
              <ul>
                {misconceptions.slice(0, TOLD).map(({ misconception, answers, trainees }) => (
                  <li key={misconception}>
                    {t('classview:paper.misconception', {
                      what: t(`drill:misconception.${misconception}`),
                      answers: t('classview:paper.answers', { count: answers }),
                      trainees: t('classview:paper.trainees', { count: trainees }),
                    })}
                  </li>
                ))}
              </ul>
            )}
          </Fact>
        </dl>
      )}
    </section>
  );
}

function Fact({ name, children }: { readonly name: string; readonly children: ComponentChildren }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{children}</dd>
    </div>
  );
}
