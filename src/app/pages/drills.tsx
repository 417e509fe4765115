import '../css/pages.css';
import '../css/drills.css';
import { DRILL_KINDS } from '../../drills/kinds.ts';
import { setFor } from '../../drills/practice.ts';
import { ItemView } from '../drills/item-view.tsx';
import { SkillsTable } from '../drills/skills-table.tsx';
import { type Drills, SHELF, useDrills } from '../drills/use-drills.ts';
import { hrefOf } from '../router.ts';
import { BackHead, useTitle } from '../shell.tsx';
import { number, t } from '../words.ts';

/** Ten minutes of exercises on what somebody is weakest in. */
export function DrillsPage() {
  const drills = useDrills();
  useTitle(t('drill:page.title'));
  const { set, at, practice, kept } = drills;
  return (
    <>
      <BackHead />
      <main class="sheet drills">
        <h1 tabIndex={-1}>{t('drill:page.title')}</h1>
        {kept !== 'kept' && <p role="alert">{t(kept === 'full' ? 'keeping:full' : 'app:notKept')}</p>}
        {practice === undefined ? (
          <p role="status">{t('app:loading')}</p>
        ) : set === undefined ? (
          <Overview drills={drills} />
        ) : at < set.length ? (
          <Running drills={drills} />
        ) : (
          <Over drills={drills} />
        )}
      </main>
    </>
  );
}

function Overview({ drills }: { readonly drills: Drills }) {
  const { practice, begin } = drills;
  if (practice === undefined) return null;
  const now = Date.now();
  const first = setFor(practice, SHELF, now, 1)[0];
  return (
    <>
      <section class="slip" aria-labelledby="today-title">
        <h2 id="today-title">{t('drill:page.today')}</h2>
        <p>{t('drill:page.about')}</p>
        {first !== undefined && <p>{t('drill:page.first', { skill: t(`drill:skill.${first.kind.skill}`) })}</p>}
        <div class="drill-do">
          <button type="button" class="button act" onClick={() => begin()}>
            {t('drill:page.begin')}
          </button>
          <a class="button" href={hrefOf('exams')}>
            {t('drill:exam.title')}
          </a>
        </div>
      </section>
      <section class="slip" aria-labelledby="skills-title">
        <h2 id="skills-title">{t('drill:page.skills')}</h2>
        <SkillsTable practice={practice} now={now} />
      </section>
      <section class="slip" aria-labelledby="kinds-title">
        <h2 id="kinds-title">{t('drill:page.kinds')}</h2>
        <ul class="drill-kinds">
          {DRILL_KINDS.map(({ id }) => (
            <li key={id}>
              <button type="button" class="button" onClick={() => begin(id)}>
                {t(`drill:kind.${id}.name`)}
              </button>
              <span>{t(`drill:kind.${id}.about`)}</span>
            </li>
          ))}
        </ul>
      </section>
    </>
  );
}

function Running({ drills }: { readonly drills: Drills }) {
  const { set = [], at, item, chosen, failed, choose, next, stop } = drills;
  return (
    <>
      <div class="drill-bar">
        <p>{t('drill:page.place', { at: number(at + 1), of: number(set.length) })}</p>
        <button type="button" class="button" onClick={stop}>
          {t('drill:page.leave')}
        </button>
      </div>
      {failed ? (
        <p role="alert">{t('drill:page.failed')}</p>
      ) : item === undefined ? (
        <p role="status">{t('drill:page.drawing')}</p>
      ) : (
        <ItemView key={`${item.kind} ${item.number}`} item={item} chosen={chosen} onChoose={choose} onNext={next} />
      )}
    </>
  );
}

function Over({ drills }: { readonly drills: Drills }) {
  const { results, set = [], leave, begin } = drills;
  const wrong = [...new Set(set.filter((_, place) => results[place] === false).map(({ kind }) => kind.skill))];
  return (
    <section class="slip" aria-labelledby="over-title">
      <h2 id="over-title">{t('drill:page.over')}</h2>
      <p>{t('drill:page.result', { right: number(results.filter(Boolean).length), asked: number(results.length) })}</p>
      {wrong.length > 0 && (
        <>
          <p>{t('drill:page.weak')}</p>
          <ul>
            {wrong.map((skill) => (
              <li key={skill}>{t(`drill:skill.${skill}`)}</li>
            ))}
          </ul>
        </>
      )}
      <div class="drill-do">
        <button type="button" class="button act" onClick={() => begin()}>
          {t('drill:page.again')}
        </button>
        <button type="button" class="button" onClick={leave}>
          {t('drill:page.back')}
        </button>
      </div>
    </section>
  );
}
