import type { Gradebook } from '../../../classroom/gradebook.ts';
import { number, percent, t } from '../../words.ts';
import { questionSkills, type Shown, type SkillColumn } from './paper-figures.ts';

interface Props {
  readonly gradebook: Gradebook;
}

const MARKS = ['all', 'part', 'none', 'unasked'] as const;
type Mark = (typeof MARKS)[number];

function markOf({ shown, asked }: Shown): Mark {
  if (asked === 0) return 'unasked';
  if (shown === 0) return 'none';
  return shown === asked ? 'all' : 'part';
}

const shareText = ({ shown, asked }: Shown): string =>
  asked === 0 ? t('classview:skills.unasked') : t('classview:skills.share', { shown: number(shown), asked: number(asked) });

/** Habits at tickets, or what questions ask for: where their words stand. */
type Subject = 'skills' | 'questions';

const skillName = (of: Subject, skill: string): string => t(of === 'skills' ? `keeping:skill.${skill}` : `drill:skill.${skill}`);

/** What each trainee showed of what was asked for, and the class as a whole: at tickets, and in exercises and exams. */
export function SkillsMap({ gradebook: { rows, skills, papers } }: Props) {
  const questions = questionSkills(papers, rows.length);
  if (questions.length === 0)
    return skills.length === 0 ? <p>{t('classview:skills.nothing')}</p> : <SkillsView of="skills" rows={rows} skills={skills} />;
  return (
    <>
      {skills.length > 0 && (
        <>
          <h3>{t('classview:skills.title')}</h3>
          <SkillsView of="skills" rows={rows} skills={skills} />
        </>
      )}
      <h3>{t('classview:questions.title')}</h3>
      <SkillsView of="questions" rows={rows} skills={questions} />
    </>
  );
}

interface ViewProps extends Pick<Gradebook, 'rows'> {
  readonly of: Subject;
  readonly skills: readonly SkillColumn[];
}

function SkillsView({ of, rows, skills }: ViewProps) {
  return (
    <div class="skills-view" data-of={of}>
      <p>{t(`classview:${of}.how`)}</p>
      <ul class="skills-key">
        {MARKS.map((mark) => (
          <li key={mark}>
            <span class="skill-mark" data-mark={mark} style={{ '--share': '50%' }} />
            {t(`classview:${of}.mark.${mark}`)}
          </li>
        ))}
      </ul>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what may scroll must be reached by the keyboard */}
      <div class="skills-scroll" role="img" tabIndex={0} aria-label={t(`classview:${of}.alt`)}>
        <div class="skills-map" style={{ '--skills': skills.length }}>
          <div class="skills-row skills-heads">
            <span />
            {skills.map(({ skill }) => (
              <span key={skill} class="skills-head">
                {skillName(of, skill)}
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
                <Mark key={skill} share={trainees[row] ?? NOTHING} />
              ))}
            </div>
          ))}
        </div>
      </div>
      {/* On paper the map says it in less room. */}
      <details class="skills-table" data-lazy>
        <summary>{t('classview:asTable')}</summary>
        <SkillsTable of={of} rows={rows} skills={skills} />
      </details>
    </div>
  );
}

const NOTHING: Shown = { shown: 0, asked: 0 };

const Mark = ({ share }: { readonly share: Shown }) => (
  <span class="skill-mark" data-mark={markOf(share)} style={{ '--share': `${(100 * share.shown) / Math.max(1, share.asked)}%` }} />
);

function SkillsTable({ of, rows, skills }: ViewProps) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what may scroll must be reached by the keyboard
    <section class="classview-scroll" tabIndex={0} aria-label={t(`classview:${of}.caption`)}>
      <table>
        <caption class="unseen">{t(`classview:${of}.caption`)}</caption>
        <thead>
          <tr>
            <th scope="col">{t('gradebook:column.trainee')}</th>
            {skills.map(({ skill }) => (
              <th key={skill} scope="col">
                {skillName(of, skill)}
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
                <td key={skill}>{shareText(trainees[row] ?? NOTHING)}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
