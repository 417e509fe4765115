import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import { type Assignment, type AssignmentItem, MOST_ITEMS, type PaperSetting, placesOf } from '../../classroom/assignment.ts';
import { sharesOf, withWeight } from '../../classroom/weights.ts';
import { type Blueprint, MOST_QUESTIONS } from '../../drills/exam.ts';
import { ticketCount } from '../../drills/examBench.ts';
import { posted } from '../drills/begin-exam.ts';
import { blueprints } from '../drills/blueprints.ts';
import { paperName } from '../paper-words.ts';
import { number, percent, t } from '../words.ts';
import { DrillsMaker } from './drills-maker.tsx';
import { NumberField, SelectField, Slip, TextField, Tick } from './fields.tsx';
import { KindTicks } from './kind-ticks.tsx';
import { PaperSample } from './paper-sample.tsx';
import { benchTickets, EXERCISE_SECONDS, type ExamSetting, examPaper, loadOf, minutesTaken, moved, roomFor } from './papers.ts';
import { WeightField } from './weight-field.tsx';

interface Props {
  readonly draft: Assignment;
  readonly onPapers: (papers: PaperSetting[]) => void;
  /** An exam, and tickets that come with it. */
  readonly onExam: (setting: PaperSetting, tickets: AssignmentItem[]) => void;
}

/** The exercises and exams of an assignment. */
export function PapersSection({ draft, onPapers, onExam }: Props) {
  const { items, papers = [] } = draft;
  const shares = sharesOf(draft);
  const [sample, setSample] = useState<PaperSetting>();
  /** Of the exam that was added last: where its bench part has gone. */
  const [said, setSaid] = useState('');
  const list = useRef<HTMLOListElement>(null);
  /** A paper that was moved keeps the hand's place. */
  const held = useRef<{ readonly at: number; readonly by: -1 | 1 }>();
  useLayoutEffect(() => {
    if (held.current === undefined) return;
    const { at, by } = held.current;
    held.current = undefined;
    const buttons = list.current?.children[at]?.querySelectorAll<HTMLButtonElement>('[data-by]:not(:disabled)') ?? [];
    ([...buttons].find((each) => Number(each.dataset.by) === by) ?? buttons[0])?.focus();
  });
  return (
    <Slip title={t('builder:papers.title')}>
      <p>{t('builder:papers.text')}</p>
      <ol class="make-list make-papers" ref={list}>
        {papers.map((setting, at) => {
          const name = paperName(setting);
          const put = (next: PaperSetting) => onPapers(papers.map((each, other) => (other === at ? next : each)));
          const move = (by: -1 | 1) => (
            <button
              type="button"
              class="button small"
              data-by={by}
              disabled={papers[at + by] === undefined}
              onClick={() => {
                held.current = { at: at + by, by };
                onPapers(moved(papers, at, by));
              }}
            >
              {t(by < 0 ? 'builder:papers.up' : 'builder:papers.down')}
              <span class="unseen"> {name}</span>
            </button>
          );
          return (
            <li key={at} data-kind={setting.kind}>
              <PaperFields draft={draft} setting={setting} name={name} onSetting={put} />
              <WeightField
                name={name}
                weight={setting.weight}
                share={shares?.[items.length + at]}
                onWeight={(weight) => put(withWeight(setting, weight))}
              />
              <div class="make-buttons">
                {move(-1)}
                {move(1)}
                <button type="button" class="button small" onClick={() => setSample(setting)}>
                  {t('builder:papers.look')}
                  <span class="unseen"> {name}</span>
                </button>
                <button type="button" class="button small" onClick={() => onPapers(papers.filter((_, other) => other !== at))}>
                  {t('builder:remove')}
                  <span class="unseen"> {name}</span>
                </button>
              </div>
            </li>
          );
        })}
      </ol>
      <p role="status" data-testid="papers-sum">
        {papers.length === 0 ? t('builder:papers.none') : sumText(draft)}
      </p>
      <p role="status" data-testid="exam-said">
        {papers.some(({ kind }) => kind === 'exam') && said}
      </p>
      {roomFor(draft) > 0 ? (
        <>
          <ExamMaker
            draft={draft}
            onExam={(blueprint, tickets) => {
              const setting = examPaper(blueprint);
              setSaid(benchText(blueprint, setting, tickets.length));
              onExam(setting, tickets);
            }}
          />
          <h3>{t('builder:papers.drills')}</h3>
          <DrillsMaker onDrills={(setting) => onPapers([...papers, setting])} />
        </>
      ) : (
        <p>{t('builder:papers.full')}</p>
      )}
      {sample !== undefined && <PaperSample assignment={draft} setting={sample} onDone={() => setSample(undefined)} />}
    </Slip>
  );
}

function sumText(draft: Assignment): string {
  const { questions, exams, drills } = loadOf(draft);
  return [
    t('builder:papers.sum', { count: questions }),
    ...(exams === undefined ? [] : [t('builder:papers.sumExams', { count: exams })]),
    ...(drills === undefined ? [] : [t('builder:papers.sumDrills', { count: drills, seconds: number(EXERCISE_SECONDS) })]),
  ].join(' ');
}

interface FieldsProps {
  readonly draft: Assignment;
  readonly setting: PaperSetting;
  readonly name: string;
  readonly onSetting: (setting: PaperSetting) => void;
}

/** What of a paper may be changed where it stands. */
function PaperFields({ draft, setting, name, onSetting }: FieldsProps) {
  const minutes = number(minutesTaken(draft, setting));
  if (setting.kind === 'drills')
    return (
      <div class="make-paper">
        <b>{name}</b>
        <span>{t('builder:papers.drillsRules', { count: setting.count, minutes })}</span>
        {setting.drills.length > 1 && (
          <ul class="make-kinds">
            {setting.drills.map((id) => (
              <li key={id}>{t(`drill:kind.${id}.name`)}</li>
            ))}
          </ul>
        )}
        <KindsOf name={name} drills={setting.drills} onDrills={(drills) => onSetting({ ...setting, drills })} />
        <div class="make-row">
          <NumberField
            label={t('builder:papers.count')}
            value={setting.count}
            from={3}
            to={60}
            step={1}
            onValue={(count = 3) => onSetting({ ...setting, count })}
          />
        </div>
      </div>
    );
  const { title: _, ...untitled } = setting;
  const { exam } = setting;
  const put = (next: Partial<typeof exam>) => onSetting({ ...setting, exam: { ...exam, ...next } });
  return (
    <div class="make-paper">
      <b>{name}</b>
      <span>{t('drill:exam.rules', { items: number(exam.items), minutes, pass: percent(exam.pass) })}</span>
      <div class="make-row">
        <NumberField
          label={t('builder:papers.items')}
          value={exam.items}
          from={5}
          to={MOST_QUESTIONS}
          step={1}
          onValue={(items = 5) => put({ items })}
        />
        <NumberField
          label={t('builder:papers.minutes')}
          value={exam.minutes}
          from={5}
          to={240}
          step={1}
          onValue={(own = 5) => put({ minutes: own })}
        />
        <NumberField
          label={t('builder:papers.pass')}
          value={Math.round(exam.pass * 100)}
          from={30}
          to={100}
          step={1}
          onValue={(pass = 30) => put({ pass: pass / 100 })}
        />
        <TextField
          label={t('builder:papers.name')}
          value={setting.title ?? ''}
          most={120}
          onValue={(title) => onSetting(title.trim() === '' ? untitled : { ...untitled, title: title.trim() })}
        />
      </div>
    </div>
  );
}

interface KindsProps {
  readonly name: string;
  readonly drills: readonly string[];
  readonly onDrills: (drills: string[]) => void;
}

/** The kinds of a set, to be changed where it stands. */
function KindsOf({ name, drills, onDrills }: KindsProps) {
  const [isOpen, setOpen] = useState(false);
  return (
    <details class="light-codes" data-lazy onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        {t('builder:papers.kinds')}
        <span class="unseen"> {name}</span>
      </summary>
      {isOpen && <KindTicks chosen={drills} onChosen={onDrills} some />}
    </details>
  );
}

/** What becomes of an exam's bench part in an assignment, and so of its minutes; nothing where it has none. */
function benchText({ bench, minutes: whole }: Blueprint, { exam }: ExamSetting, added: number): string {
  if (ticketCount(bench) === 0) return '';
  return [
    ...(added === 0 ? [] : [t('builder:papers.benchAdded', { count: added })]),
    t('builder:papers.benchMinutes', { minutes: number(exam.minutes), whole: number(whole) }),
  ].join(' ');
}

interface MakerProps {
  readonly draft: Assignment;
  readonly onExam: (blueprint: Blueprint, tickets: AssignmentItem[]) => void;
}

function ExamMaker({ draft, onExam }: MakerProps) {
  const [isWhole, setWhole] = useState(true);
  const [id, setId] = useState(blueprints[0]?.id ?? '');
  const blueprint = blueprints.find((each) => each.id === id);
  if (blueprint === undefined) return null;
  const tickets = ticketCount(blueprint.bench);
  const isFitting = placesOf(draft) + 1 + tickets <= MOST_ITEMS;
  return (
    <>
      <h3>{t('builder:papers.exam')}</h3>
      <div class="make-row">
        <SelectField
          label={t('builder:papers.which')}
          value={id}
          options={blueprints.map((each) => [each.id, t(`drill:exam.of.${each.id}.name`)] as const)}
          onValue={setId}
        />
        <button
          type="button"
          class="button"
          onClick={() => onExam(blueprint, isWhole && isFitting ? benchTickets(blueprint, draft, posted) : [])}
        >
          {t('builder:papers.addExam')}
        </button>
      </div>
      {tickets > 0 && (
        <Tick checked={isWhole && isFitting} disabled={!isFitting} onChange={setWhole}>
          {t('builder:papers.withBench', { count: tickets })}
        </Tick>
      )}
      <p>{t(`drill:exam.of.${id}.about`)}</p>
    </>
  );
}
