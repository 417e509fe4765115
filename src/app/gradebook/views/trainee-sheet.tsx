import type { Gradebook, Row } from '../../../classroom/gradebook.ts';
import { pointsText } from '../../points-text.ts';
import { number, t } from '../../words.ts';
import { ItemSheet } from './item-sheet.tsx';
import { placeOf, type Reviewed } from './use-reviews.ts';

interface Props {
  readonly gradebook: Gradebook;
  readonly row: Row;
  readonly found: ReadonlyMap<string, Reviewed>;
}

/** All that a trainee's work at an assignment came to: it begins on a sheet of its own. */
export function TraineeSheet({ gradebook: { assignment, skills, counts, rows }, row, found }: Props) {
  const { trainee, cells, total } = row;
  const at = rows.indexOf(row);
  const own = skills.flatMap(({ skill, trainees }) => {
    const share = trainees[at];
    return share === undefined || share.asked === 0 ? [] : [{ skill, ...share }];
  });
  const id = `sheet-${trainee.code}`;
  return (
    <article class="trainee-sheet" aria-labelledby={id}>
      <header>
        <div>
          <h2 id={id}>{trainee.name || trainee.code}</h2>
          <p>
            {t('classview:report.head', { code: trainee.code, title: assignment.title })}
            {assignment.attempts > 1 && ` ${t(`gradebook:counts.said.${counts}`)}`}
          </p>
        </div>
        <p class="sheet-total">
          <b>{pointsText(Math.round(total * 10) / 10)}</b> {t('app:debrief.of', { of: 100 })}
        </p>
      </header>
      {cells.map((cell) => (
        <ItemSheet
          key={cell.item}
          assignment={assignment}
          code={trainee.code}
          cell={cell}
          reviewed={found.get(placeOf(trainee.code, cell.item))}
        />
      ))}
      {assignment.items.length > 0 && (
        <section class="sheet-skills">
          <h3>{t('classview:view.skills')}</h3>
          {own.length === 0 ? (
            <p>{t('classview:skills.nothing')}</p>
          ) : (
            <div>
              <SkillList title={t('classview:report.shown')} skills={own.filter(({ shown, asked }) => shown === asked)} />
              <SkillList title={t('classview:report.practise')} skills={own.filter(({ shown, asked }) => shown < asked)} />
            </div>
          )}
        </section>
      )}
    </article>
  );
}

interface ListProps {
  readonly title: string;
  readonly skills: readonly { readonly skill: string; readonly shown: number; readonly asked: number }[];
}

function SkillList({ title, skills }: ListProps) {
  return (
    <div>
      <h4>{title}</h4>
      {skills.length === 0 ? (
        <p>{t('classview:report.none')}</p>
      ) : (
        <ul>
          {skills.map(({ skill, shown, asked }) => (
            <li key={skill}>
              {t('classview:report.skill', {
                skill: t(`keeping:skill.${skill}`),
                share: t('classview:skills.share', { shown: number(shown), asked: number(asked) }),
              })}
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}
