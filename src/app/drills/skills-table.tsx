import { DRILL_SKILLS, type DrillSkill } from '../../drills/item.ts';
import { DRILL_KINDS } from '../../drills/kinds.ts';
import { difficulty, expectedRight, mastery, type Practice } from '../../drills/practice.ts';
import { numberLocale } from '../number-locale.ts';
import { number, percent, t } from '../words.ts';
import { SHELF } from './use-drills.ts';

interface Props {
  readonly practice: Practice;
  /** Milliseconds since 1970. */
  readonly now: number;
}

/** Elo's scale has no zero of its own: what is kept from 0 on is shown from here on, so that no rating is a negative number. */
const START = 1000;

const skills = DRILL_SKILLS.filter((skill) => DRILL_KINDS.some((kind) => kind.skill === skill));

/** Without grouping, as players write them. */
const ratingText = (rating: number): string =>
  new Intl.NumberFormat(numberLocale(), { useGrouping: false, maximumFractionDigits: 0 }).format(START + rating);

/** The two ratings of a skill and the chance that they make; nothing before the first answer. */
function ratingsOf(practice: Practice, skill: DrillSkill): readonly string[] | undefined {
  const own = practice.skills[skill]?.rating;
  const hard = difficulty(practice, SHELF, skill);
  if (own === undefined || hard === undefined) return undefined;
  return [ratingText(own), ratingText(hard), percent(expectedRight(own, hard))];
}

/** What somebody knows, by skill: how much is mastered, how often they were right, and how hard it is for them by Elo's model. */
export function SkillsTable({ practice, now }: Props) {
  const heads = (['you', 'exercises', 'chance'] as const).map((each) => t(`drill:rating.${each}`));
  const rated = skills.map((skill) => [skill, ratingsOf(practice, skill)] as const);
  const cells = (ratings: readonly string[] | undefined, wide: string) =>
    heads.map((head, index) => (
      <td key={head} class={`drill-figure ${wide}`}>
        {ratings?.[index] ?? '–'}
      </td>
    ));
  return (
    <>
      <table class="drill-skills">
        <thead>
          <tr>
            <th scope="col">{t('drill:page.skill')}</th>
            <th scope="col">{t('drill:page.mastery')}</th>
            <th scope="col">{t('drill:page.right')}</th>
            <th scope="col">{t('drill:page.streak')}</th>
            {heads.map((head) => (
              <th key={head} scope="col" class="drill-wide">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rated.map(([skill, ratings]) => {
            const found = practice.skills[skill];
            const share = mastery(practice, SHELF, skill, now);
            return (
              <tr key={skill}>
                <th scope="row">{t(`drill:skill.${skill}`)}</th>
                <td>
                  <span class="drill-track" aria-hidden="true">
                    <span style={{ width: `${share * 100}%` }} />
                  </span>
                  {percent(share)}
                </td>
                <td>{t('drill:page.of', { right: number(found?.right ?? 0), asked: number(found?.asked ?? 0) })}</td>
                <td>{number(found?.streak ?? 0)}</td>
                {cells(ratings, 'drill-wide')}
              </tr>
            );
          })}
        </tbody>
      </table>
      <p>{t('drill:page.masteryAbout')}</p>
      <p>{t('drill:rating.streak')}</p>
      <p class="drill-wide">{t('drill:rating.about', { start: ratingText(0) })}</p>
      <details class="light-codes drill-narrow">
        <summary>{t('drill:rating.title')}</summary>
        <table class="drill-skills">
          <thead>
            <tr>
              <th scope="col">{t('drill:page.skill')}</th>
              {heads.map((head) => (
                <th key={head} scope="col">
                  {head}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rated.map(([skill, ratings]) => (
              <tr key={skill}>
                <th scope="row">{t(`drill:skill.${skill}`)}</th>
                {cells(ratings, '')}
              </tr>
            ))}
          </tbody>
        </table>
        <p>{t('drill:rating.about', { start: ratingText(0) })}</p>
      </details>
    </>
  );
}
