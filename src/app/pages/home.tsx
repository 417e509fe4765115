import type { ComponentChildren } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import '../css/pages.css';
import { GRADES } from '../../scenario/grade.ts';
import { board, byGrade, byRig, type Listed, measureOf } from '../board.ts';
import { readExamTickets } from '../drills/exam-tickets.ts';
import { GuidedStart } from '../guided/start.tsx';
import { nextOf } from '../keeping/skills.ts';
import { LabStart, useLabHost } from '../lab-link.tsx';
import { OfflineNote } from '../offline/note.tsx';
import { hrefOf } from '../router.ts';
import { Cautions, PageHead, useTitle } from '../shell.tsx';
import { hasBegun, readBest, readFinished, readRunning } from '../storage.ts';
import { siteOf, titleOf } from '../ticket-words.ts';
import { useOpenFolds } from '../use-open-folds.ts';
import { number, t } from '../words.ts';

/** The tickets on the board, what this is, and the cautions. */
export function HomePage() {
  useTitle(t('app:home.title'));
  const isLab = useLabHost();
  return (
    <>
      <PageHead>
        <a class="back" href={hrefOf('progress')}>
          {t('keeping:link')}
        </a>
        <a class="back" href={hrefOf('guide')}>
          {t('guide:link')}
        </a>
        <a class="back" href={hrefOf('settings')}>
          {t('settings:title')}
        </a>
        <a class="back" href={hrefOf('take')}>
          {t('app:home.take')}
        </a>
        <a class="back" href={hrefOf('build')}>
          {t('app:home.make')}
        </a>
        <a class="back" href={hrefOf('gradebook')}>
          {t('app:home.gradebook')}
        </a>
      </PageHead>
      <main class="sheet home">
        <div class="home-intro">
          <h1 tabIndex={-1}>{t('app:home.headline')}</h1>
          <p class="lead">{t('app:home.what')}</p>
          {isLab && <LabStart />}
          <p>{t('app:home.how')}</p>
          <GuidedStart isFirst={!isLab} />
          <div class="home-practise">
            <a class="button" href={hrefOf('drills')}>
              {t('app:home.drills')}
            </a>
            <a class="button" href={hrefOf('exams')}>
              {t('app:home.exams')}
            </a>
            <p>{t('app:home.practise')}</p>
          </div>
        </div>
        <Board />
        <Cautions />
        <OfflineNote />
      </main>
    </>
  );
}

const RIGS = [...byRig(board).keys()];

interface ChoiceProps {
  readonly label: string;
  readonly value: string;
  readonly choose: (value: string) => void;
  readonly options: readonly (readonly [value: string, words: string])[];
}

/** One of these, or all. */
function Choice({ label, value, choose, options }: ChoiceProps) {
  return (
    <label class="choice">
      <span>{label}</span>
      <select value={value} onChange={(event) => choose(event.currentTarget.value)}>
        <option value="">{t('app:home.all')}</option>
        {options.map(([each, words]) => (
          <option key={each} value={each}>
            {words}
          </option>
        ))}
      </select>
    </label>
  );
}

/** All tickets, by system; those of one system or grade, when asked for. */
function Board() {
  const [rig, setRig] = useState('');
  const [grade, setGrade] = useState('');
  const { next, done, system } = useStand();
  useOpenFolds();
  const shown = board.filter((each) => (rig === '' || each.rig === rig) && (grade === '' || measureOf(each.id)?.grade === grade));
  return (
    <section class="home-board" aria-labelledby="tickets-title">
      <h2 id="tickets-title">{t('app:home.tickets')}</h2>
      <div class="board-choices">
        <Choice
          label={t('app:ticket.system')}
          value={rig}
          choose={(chosen) => {
            folds.delete(chosen);
            setRig(chosen);
          }}
          options={RIGS.map((each) => [each, t(`rig:name.${each}`)])}
        />
        <Choice
          label={t('app:home.grade')}
          value={grade}
          choose={setGrade}
          options={GRADES.map((each) => [each, t(`app:grade.${each}`)])}
        />
      </div>
      {shown.length === 0 && <p>{t('app:home.none')}</p>}
      {[...byRig(shown)].map(([id, tickets]) => (
        <RigFold key={id} rig={id} usual={id === rig || id === system}>
          <summary>
            <h3>{t(`rig:name.${id}`)}</h3>
            <span class="board-done">
              {t('app:home.done', {
                done: number(tickets.filter((each) => done.has(each.id)).length),
                total: number(tickets.length),
              })}
            </span>
          </summary>
          <ol class="tickets">
            {tickets.map((ticket) => (
              <TicketRow key={ticket.id} ticket={ticket} next={ticket.id === next} />
            ))}
          </ol>
        </RigFold>
      ))}
    </section>
  );
}

/** Systems that a hand has opened or closed, as it left them: they stay so while the tab lives, whatever page lies between. */
const folds = new Map<string, boolean>();

interface FoldProps {
  readonly rig: string;
  /** Whether it is open as long as no hand says otherwise. */
  readonly usual: boolean;
  readonly children: ComponentChildren;
}

/** The tickets of one system behind its name. */
function RigFold({ rig, usual, children }: FoldProps) {
  return (
    <details
      class="board-rig"
      open={folds.get(rig) ?? usual}
      onToggle={({ currentTarget: { open } }) => (open === usual ? folds.delete(rig) : folds.set(rig, open))}
    >
      {children}
    </details>
  );
}

interface Stand {
  /** The ticket to go on with, by the same rule as the page of progress. */
  readonly next: string | undefined;
  /** The system that is open: the next ticket's, or the first where nothing is suggested; undefined until that is known. */
  readonly system: string | undefined;
  /** Tickets that were finished at least once. */
  readonly done: ReadonlySet<string>;
}

/** How the profile at work stands; what was finished is read only where there is something. */
function useStand(): Stand {
  const [stand, setStand] = useState<Stand>({ next: undefined, system: undefined, done: new Set() });
  useEffect(() => {
    let current = true;
    const find = async () => {
      const finished = (await hasBegun()) ? await readFinished() : [];
      const next = nextOf(byGrade(board), finished, await readExamTickets())?.ticket;
      return { next, system: rigOf(next), done: new Set(finished.map(({ ticket }) => ticket)) };
    };
    // Who keeps nothing is shown no suggestion.
    find()
      .catch(() => ({ next: undefined, system: RIGS[0], done: new Set<string>() }))
      .then((found) => current && setStand(found));
    return () => {
      current = false;
    };
  }, []);
  return stand;
}

const rigOf = (ticket: string | undefined): string | undefined => board.find(({ id }) => id === ticket)?.rig;

function TicketRow({ ticket, next }: { readonly ticket: Listed; readonly next: boolean }) {
  const measure = measureOf(ticket.id);
  const [best, setBest] = useState<number>();
  const [running, setRunning] = useState(false);
  useEffect(() => {
    let current = true;
    void Promise.all([readBest(ticket.id), readRunning(ticket.id)]).then(([score, log]) => {
      if (!current) return;
      setBest(score);
      setRunning(log !== undefined);
    });
    return () => {
      current = false;
    };
  }, [ticket.id]);
  return (
    <li class="ticket-row">
      <a href={hrefOf('ticket', ticket.id)}>
        <span class="ticket-title">{titleOf(ticket.id)}</span>
        <span class="ticket-site">{siteOf(ticket.id)}</span>
      </a>
      {measure !== undefined && (
        <span class="ticket-rig">
          {t('app:home.measure', {
            grade: t(`app:grade.${measure.grade}`),
            minutes: number(Math.max(1, Math.round(measure.seconds / 60))),
          })}
        </span>
      )}
      {next && <span class="ticket-next">{t('app:home.next')}</span>}
      <span class="ticket-best">
        {running ? t('app:home.running') : best === undefined ? t('app:home.fresh') : t('app:home.best', { score: best })}
      </span>
    </li>
  );
}
