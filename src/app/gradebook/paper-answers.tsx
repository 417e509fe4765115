import type { PaperSetting } from '../../classroom/assignment.ts';
import type { PaperResult } from '../../classroom/gradeAnswers.ts';
import { number, percent, t } from '../words.ts';
import { answersBySkill } from './views/paper-figures.ts';

// keys: drill:misconception.*

/** What answers came to, each under the name that it has in the table that is saved. */
export function paperFacts(setting: PaperSetting, { right, asked, passed }: PaperResult): (readonly [string, string])[] {
  const answers = t('classview:skills.share', { shown: number(right), asked: number(asked) });
  if (setting.kind !== 'exam' || passed === undefined) return [['answersRight', answers]];
  const mark = t(passed ? 'gradebook:paper.passed' : 'gradebook:paper.notPassed', { pass: percent(setting.exam.pass) });
  return [
    ['answersRight', answers],
    ['passed', mark],
  ];
}

interface Props {
  readonly paper: PaperResult;
  readonly heading: 'h3' | 'h4';
}

/** By skill, and every answer that was not right, with what it comes from. */
export function PaperAnswers({ paper: { answers }, heading: Heading }: Props) {
  const wrong = answers.filter(({ right }) => !right);
  return (
    <div class="paper-answers">
      <section>
        <Heading>{t('gradebook:paper.bySkill')}</Heading>
        <ul class="paper-skills">
          {answersBySkill(answers).map(({ skill, shown, asked }) => (
            <li key={skill} data-skill={skill}>
              {t('classview:report.skill', {
                skill: t(`drill:skill.${skill}`),
                share: t('classview:skills.share', { shown: number(shown), asked: number(asked) }),
              })}
            </li>
          ))}
        </ul>
      </section>
      <section>
        <Heading>
          {wrong.length === 0 ? t('gradebook:paper.allRight') : t('gradebook:paper.wrong', { count: wrong.length })}
        </Heading>
        {wrong.length > 0 && (
          <ul class="paper-wrong">
            {wrong.map(({ kind, misconception }, index) => (
              <li key={index}>
                <b>{t(`drill:kind.${kind}.name`)}</b>{' '}
                {misconception === undefined ? t('gradebook:paper.open') : t(`drill:misconception.${misconception}`)}
              </li>
            ))}
          </ul>
        )}
      </section>
    </div>
  );
}
