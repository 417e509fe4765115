import type { PaperAnalysis } from '../../../classroom/paperAnalysis.ts';
import { FEWEST_SHEETS } from '../../../classroom/restCorrelation.ts';
import { number, t } from '../../words.ts';
import { byChance, rated, restVerdict } from './discrimination.ts';

/** Whether each kind of question tells those who know the rest of the paper from those who do not, the worst first. */
export function KindsApart({ kinds }: Pick<PaperAnalysis, 'kinds'>) {
  const sheets = Math.max(0, ...kinds.map((each) => each.sheets));
  const all = rated(kinds);
  // With one kind alone no sheet has another beside it.
  if (kinds.length < 2) return <>{t('classview:paper.apart.alone')}</>;
  if (sheets < FEWEST_SHEETS) return <>{t('classview:paper.apart.few', { count: sheets, least: number(FEWEST_SHEETS) })}</>;
  if (all.length === 0) return <>{t('classview:paper.apart.alike')}</>;
  return (
    <>
      <p>{t('classview:paper.apart.about')}</p>
      <ul>
        {all.map((each) => (
          <li key={each.kind}>
            {t('classview:paper.apart.kind', {
              kind: t(`drill:kind.${each.kind}.name`),
              figure: number(each.discrimination, 2),
              words: t(`classview:paper.apart.verdict.${restVerdict(each)}`, { chance: number(byChance(each.sheets), 2) }),
            })}
          </li>
        ))}
      </ul>
    </>
  );
}
