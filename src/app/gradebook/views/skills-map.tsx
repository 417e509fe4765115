import type { Gradebook, SkillRow } from '../../../classroom/gradebook.ts';
import { number, percent, t } from '../../words.ts';

interface Props {
  readonly gradebook: Gradebook;
}

type Share = Pick<SkillRow, 'shown' | 'asked'>;

const MARKS = ['all', 'part', 'none', 'unasked'] as const;
type Mark = (typeof MARKS)[number];

function markOf({ shown, asked }: Share): Mark {
  if (asked === 0) return 'unasked';
  if (shown === 0) return 'none';
  return shown === asked ? 'all' : 'part';
}

const shareText = ({ shown, asked }: Share): string =>
  asked === 0 ? t('classview:skills.unasked') : t('classview:skills.share', { shown: number(shown), asked: number(asked) });

const skillName = (skill: string): string => t(`keeping:skill.${skill}`);

/** Which habits of the trade each trainee showed of those that their tickets asked for, and the class as a whole. */
export function SkillsMap({ gradebook: { rows, skills } }: Props) {
  if (skills.length === 0) return <p>{t('classview:skills.nothing')}</p>;
  return (
    <div class="skills-view">
      <p>{t('classview:skills.how')}</p>
      <ul class="skills-key">
        {MARKS.map((mark) => (
          <li key={mark}>
            <span class="skill-mark" data-mark={mark} />
            {t(`classview:skills.mark.${mark}`)}
          </li>
        ))}
      </ul>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what may scroll must be reached by the keyboard */}
      <div class="skills-scroll" role="img" tabIndex={0} aria-label={t('classview:skills.alt')}>
        <div class="skills-map" style={{ '--skills': skills.length }}>
          <div class="skills-row skills-heads">
            <span />
            {skills.map(({ skill }) => (
              <span key={skill} class="skills-head">
                {skillName(skill)}
              </span>
            ))}
          </div>
          <div class="skills-row skills-class">
            <span class="skills-who">{t('classview:skills.class')}</span>
            {skills.map(({ skill, shown, asked }) => (
              <span key={skill} class="skills-level">
                <span class="skills-bar">
                  <span style={{ height: `${(100 * shown) / asked}%` }} />
                </span>
                <span>{number((100 * shown) / asked)}</span>
              </span>
            ))}
          </div>
          {rows.map(({ trainee }, row) => (
            <div key={trainee.code} class="skills-row">
              <span class="skills-who">
                {trainee.code} <span>{trainee.name}</span>
              </span>
              {skills.map(({ skill, trainees }) => (
                <span key={skill} class="skill-mark" data-mark={markOf(trainees[row] ?? { shown: 0, asked: 0 })} />
              ))}
            </div>
          ))}
        </div>
      </div>
      {/* On paper the map says it in less room. */}
      <details class="skills-table" data-lazy>
        <summary>{t('classview:asTable')}</summary>
        <SkillsTable rows={rows} skills={skills} />
      </details>
    </div>
  );
}

function SkillsTable({ rows, skills }: Pick<Gradebook, 'rows' | 'skills'>) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what may scroll must be reached by the keyboard
    <section class="classview-scroll" tabIndex={0} aria-label={t('classview:skills.caption')}>
      <table>
        <caption class="unseen">{t('classview:skills.caption')}</caption>
        <thead>
          <tr>
            <th scope="col">{t('gradebook:column.trainee')}</th>
            {skills.map(({ skill }) => (
              <th key={skill} scope="col">
                {skillName(skill)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          <tr>
            <th scope="row">{t('classview:skills.class')}</th>
            {skills.map(({ skill, shown, asked }) => (
              <td key={skill}>
                {shareText({ shown, asked })} ({percent(shown / asked)})
              </td>
            ))}
          </tr>
          {rows.map(({ trainee }, row) => (
            <tr key={trainee.code}>
              <th scope="row">
                {trainee.code} {trainee.name}
              </th>
              {skills.map(({ skill, trainees }) => (
                <td key={skill}>{shareText(trainees[row] ?? { shown: 0, asked: 0 })}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
