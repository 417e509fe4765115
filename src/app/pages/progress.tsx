import { useState } from 'preact/hooks';
import '../css/pages.css';
import '../css/progress.css';
import { byGrade } from '../board.ts';
import { useExamTickets } from '../drills/exam-tickets.ts';
import { FileSection } from '../keeping/file-section.tsx';
import { PinGate, ProfilesSection } from '../keeping/profiles-section.tsx';
import { ResultsChart } from '../keeping/results-chart.tsx';
import { ResultsTable } from '../keeping/results-table.tsx';
import { LATEST, nextOf, scored, skillsOf } from '../keeping/skills.ts';
import { type Progress, useProgress } from '../keeping/use-progress.ts';
import { tickets } from '../library.ts';
import { hrefOf } from '../router.ts';
import { BackHead, PageHead, useTitle } from '../shell.tsx';
import { titleOf } from '../ticket-words.ts';
import { number, percent, t } from '../words.ts';

/** Results over time, skills, what to practise next; profiles; all of it out to a file and back. */
export function ProgressPage() {
  const [again, setAgain] = useState(0);
  const progress = useProgress(again);
  useTitle(t('keeping:title'));
  return (
    <>
      <BackHead />
      <main class="sheet progress">
        <h1 tabIndex={-1}>{t('keeping:title')}</h1>
        {progress.state === 'denied' && <p role="alert">{t('keeping:denied')}</p>}
        {progress.state === 'ready' && (
          <>
            <p role="status" class="progress-status">
              {progress.left > 0 && t('keeping:working', { count: progress.left })}
              {progress.unread > 0 && ` ${t('keeping:unread', { count: progress.unread })}`}
            </p>
            <NextUp progress={progress} />
            <Results progress={progress} />
            <Skills progress={progress} />
          </>
        )}
        <ProfilesSection />
        <FileSection onRead={() => setAgain(again + 1)} />
      </main>
    </>
  );
}

/** In place of every page while the PIN of the profile at work was not given in this tab. */
export function PinGatePage() {
  useTitle(t('keeping:title'));
  return (
    <>
      <PageHead />
      <PinGate />
    </>
  );
}

interface Props {
  readonly progress: Progress;
}

function NextUp({ progress }: Props) {
  const barred = useExamTickets();
  const next = barred && nextOf(byGrade(tickets), progress.finished, barred);
  if (next === undefined) return null;
  const { skill } = next;
  const values = skill && {
    skill: t(`keeping:skill.${skill.id}`),
    points: number(skill.points),
    of: number(skill.of),
    attempts: number(skill.attempts),
  };
  return (
    <section class="slip" aria-labelledby="next-title">
      <h2 id="next-title">{t('keeping:next.title')}</h2>
      <p data-testid="why">
        {t(`keeping:next.${next.why}`, values)}
        {next.why === 'weakest' &&
          ` ${next.latest === undefined ? t('keeping:next.fresh') : t('keeping:next.worst', { points: number(next.latest.total) })}`}
      </p>
      <p>
        <a class="button act" href={hrefOf('ticket', next.ticket)}>
          {titleOf(next.ticket)}
        </a>
      </p>
    </section>
  );
}

function Results({ progress }: Props) {
  const [which, setWhich] = useState('');
  const all = scored(progress.finished);
  const tried = tickets.filter((ticket) => all.some((each) => each.ticket === ticket.id));
  const shown = all.filter((each) => which === '' || each.ticket === which);
  return (
    <section class="slip" aria-labelledby="results-title">
      <h2 id="results-title">{t('keeping:chart.title')}</h2>
      {all.length === 0 ? (
        <p>{t('keeping:chart.none')}</p>
      ) : (
        <>
          <p>{t('keeping:chart.text')}</p>
          <label class="choice">
            <span>{t('keeping:chart.which')}</span>
            <select value={which} onChange={(event) => setWhich(event.currentTarget.value)}>
              <option value="">{t('keeping:chart.all')}</option>
              {tried.map((ticket) => (
                <option key={ticket.id} value={ticket.id}>
                  {titleOf(ticket.id)}
                </option>
              ))}
            </select>
          </label>
          <ResultsChart results={shown} />
          <ResultsTable results={shown} />
        </>
      )}
    </section>
  );
}

function Skills({ progress }: Props) {
  return (
    <section class="slip" aria-labelledby="skills-title">
      <h2 id="skills-title">{t('keeping:skills.title')}</h2>
      <p>{t('keeping:skills.how', { latest: LATEST })}</p>
      <ul class="skills">
        {skillsOf(tickets, progress.finished).map((skill) => (
          <li key={skill.id}>
            <span class="skill-name">{t(`keeping:skill.${skill.id}`)}</span>
            {skill.level !== undefined && (
              <span class="skill-bar" aria-hidden="true">
                <span style={{ width: `${skill.level * 100}%` }} />
              </span>
            )}
            <span>
              {skill.level === undefined
                ? t('keeping:skills.untried')
                : t('keeping:skills.level', { level: percent(skill.level), points: number(skill.points), of: number(skill.of) })}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}
