import { useEffect, useId, useMemo, useState } from 'preact/hooks';
import '../css/pages.css';
import '../css/making.css';
import { JOB_MODES } from '../../attempt/job.ts';
import { type Assignment, loadAssignment, MOST_ITEMS, placesOf } from '../../classroom/assignment.ts';
import { sharesOf } from '../../classroom/weights.ts';
import { leaveMaking } from '../engine/engine.ts';
import type { Fault } from '../engine/making.ts';
import { parseJson } from '../json-text.ts';
import { checkItems, loadAssignmentDraft, newAssignment, randomSeed } from '../making/assignment-draft.ts';
import { faultText, whyNot } from '../making/error-text.ts';
import { FileButton, NumberField, SelectField, Slip, TextField } from '../making/fields.tsx';
import { HandOn } from '../making/hand-on.tsx';
import { ItemsSection } from '../making/items-section.tsx';
import { JsonSection, MOST_CHARACTERS } from '../making/json-section.tsx';
import { keepMaking, readMaking } from '../making/kept.ts';
import { instantOf, localOf } from '../making/local-time.ts';
import { PackageMaker } from '../making/package-maker.tsx';
import { PapersSection } from '../making/papers-section.tsx';
import { RubricFields } from '../making/rubric-fields.tsx';
import { Ways } from '../making/ways.tsx';
import { BackHead, useTitle } from '../shell.tsx';
import { t } from '../words.ts';

/** Where an instructor sets tickets, exercises and exams, and how they are to be worked on. */
export function AssignPage() {
  const [draft, setDraft] = useState(() => readMaking('assignment', loadAssignmentDraft) ?? newAssignment(randomSeed()));
  const [said, setSaid] = useState('');
  const [wrong, setWrong] = useState<Fault>();
  useTitle(t('builder:assign.title'));
  useEffect(() => keepMaking('assignment', draft), [draft]);
  useEffect(() => leaveMaking, []);
  const checked = useMemo(() => {
    try {
      return { ready: loadAssignment(draft) };
    } catch (error) {
      return { why: whyNot(error) };
    }
  }, [draft]);
  /** What is undefined is not said. */
  const put = (next: Partial<Assignment>) =>
    setDraft(
      (before) =>
        Object.fromEntries(Object.entries({ ...before, ...next }).filter(([, value]) => value !== undefined)) as Assignment,
    );
  const open = async (text: string | undefined) => {
    const assignment = loadAssignment(parseJson(text, MOST_CHARACTERS));
    setWrong(undefined);
    setDraft(assignment);
    setWrong(await checkItems(assignment));
  };
  const lacking = draft.title.trim() === '' ? 'title' : placesOf(draft) === 0 ? 'items' : undefined;
  const why = wrong === undefined ? checked.why : faultText(wrong);
  return (
    <>
      <BackHead />
      <main class="sheet making">
        <div class="make-head">
          <h1 tabIndex={-1}>{t('builder:assign.title')}</h1>
          <Ways to="build" />
          <div class="make-buttons">
            <FileButton
              words={t('builder:open')}
              onText={(text, name) => {
                setSaid('');
                open(text).then(
                  () => setSaid(t('builder:opened', { file: name })),
                  (error) => setSaid(whyNot(error, name)),
                );
              }}
            />
            <button
              type="button"
              class="button"
              onClick={() => {
                setWrong(undefined);
                setSaid('');
                setDraft(newAssignment(randomSeed()));
              }}
            >
              {t('builder:fresh')}
            </button>
          </div>
          <p role="status" data-testid="said">
            {said}
          </p>
        </div>
        <div class="make-form">
          <Slip title={t('builder:assign.what')}>
            <TextField
              label={t('builder:assign.name')}
              value={draft.title}
              most={120}
              required
              onValue={(title) => put({ title })}
            />
            <Note note={draft.note} onNote={(note) => put({ note })} />
          </Slip>
          <ItemsSection
            items={draft.items}
            shares={sharesOf(draft)}
            most={MOST_ITEMS - (draft.papers?.length ?? 0)}
            onItems={(items) => {
              setWrong(undefined);
              put({ items });
            }}
          />
          <PapersSection
            draft={draft}
            onPapers={(papers) => {
              setWrong(undefined);
              put({ papers: papers.length === 0 ? undefined : papers });
            }}
            onExam={(setting, tickets) => {
              setWrong(undefined);
              put({ items: [...draft.items, ...tickets], papers: [...(draft.papers ?? []), setting] });
            }}
          />
          <RulesOf draft={draft} onDraft={put} />
          <JsonSection
            json={draft}
            onText={(text) => {
              loadAssignment(parseJson(text, MOST_CHARACTERS));
              void open(text);
            }}
          />
        </div>
        <aside class="make-side slip" aria-label={t('builder:assign.hand')}>
          <h2>{t('builder:assign.hand')}</h2>
          <p role="status" data-testid="assign-state" class={lacking === undefined && why !== undefined ? 'make-wrong' : ''}>
            {lacking === undefined ? (why ?? t('builder:assign.ready')) : t(`builder:assign.lacks.${lacking}`)}
          </p>
          <HandOn json={wrong === undefined ? checked.ready : undefined} name={draft.id} page="take" />
          <PackageMaker assignment={wrong === undefined ? checked.ready : undefined} />
          <p>{t('builder:assign.secrecy')}</p>
        </aside>
      </main>
    </>
  );
}

function Note({ note, onNote }: { readonly note: string | undefined; readonly onNote: (note: string | undefined) => void }) {
  const id = useId();
  return (
    <div class="make-field">
      <label for={id}>{t('builder:assign.note')}</label>
      <textarea
        id={id}
        class="make-note"
        rows={3}
        maxLength={2000}
        value={note ?? ''}
        onChange={(event) => onNote(event.currentTarget.value === '' ? undefined : event.currentTarget.value)}
      />
    </div>
  );
}

interface RulesProps {
  readonly draft: Assignment;
  readonly onDraft: (next: Partial<Assignment>) => void;
}

function RulesOf({ draft, onDraft }: RulesProps) {
  return (
    <Slip title={t('builder:rules.title')}>
      <div class="make-row">
        <SelectField
          label={t('builder:rules.mode')}
          value={draft.mode}
          options={JOB_MODES.map((each) => [each, t(`app:mode.${each}`)] as const)}
          onValue={(mode) => onDraft({ mode })}
        />
        <NumberField
          label={t('builder:assign.attempts')}
          value={draft.attempts}
          from={1}
          to={20}
          step={1}
          onValue={(attempts) => onDraft({ attempts: attempts ?? 1 })}
        />
        <NumberField
          label={t('builder:assign.minutes')}
          value={draft.minutes}
          from={1}
          to={1440}
          otherwise={t('builder:assign.noLimit')}
          onValue={(minutes) => onDraft({ minutes })}
        />
      </div>
      <div class="make-row">
        <When label={t('builder:assign.opens')} instant={draft.opens} onInstant={(opens) => onDraft({ opens })} />
        <When label={t('builder:assign.closes')} instant={draft.closes} onInstant={(closes) => onDraft({ closes })} />
      </div>
      <p>{t('builder:assign.hours')}</p>
      <h3>{t('builder:rubric.title')}</h3>
      <RubricFields rubric={draft.rubric} onRubric={(rubric) => onDraft({ rubric })} />
    </Slip>
  );
}

interface WhenProps {
  readonly label: string;
  readonly instant: string | undefined;
  readonly onInstant: (instant: string | undefined) => void;
}

function When({ label, instant, onInstant }: WhenProps) {
  const id = useId();
  return (
    <div class="make-field">
      <label for={id}>{label}</label>
      <input
        id={id}
        type="datetime-local"
        value={localOf(instant)}
        onChange={(event) => onInstant(instantOf(event.currentTarget.value))}
      />
    </div>
  );
}
