import { JOB_MODES } from '../../attempt/job.ts';
import { METER_FUNCTIONS } from '../../meter/functions.ts';
import { SKILLS } from '../../scenario/skills.ts';
import type { Ticket } from '../../scenario/ticket.ts';
import { t } from '../words.ts';
import { NumberField, SelectField, Slip, TextField, Tick } from './fields.tsx';
import { RubricFields } from './rubric-fields.tsx';

interface Props {
  readonly draft: Ticket;
  readonly onDraft: (draft: Ticket) => void;
}

const MOST_SKILLS = 6;
/** A meter can always be shut off. */
const FUNCTIONS = METER_FUNCTIONS.filter((fn) => fn !== 'off');

/** How it is to be worked on, and with what. */
export function RulesSection({ draft, onDraft }: Props) {
  const { tools } = draft;
  const putTools = (next: Ticket['tools']) => {
    const { tools: _, ...rest } = draft;
    onDraft(next === undefined ? rest : { ...rest, tools: next });
  };
  return (
    <Slip title={t('builder:rules.title')}>
      <SelectField
        label={t('builder:rules.mode')}
        value={draft.mode}
        options={JOB_MODES.map((each) => [each, t(`app:mode.${each}`)] as const)}
        onValue={(mode) => onDraft({ ...draft, mode })}
      />
      <fieldset>
        <legend>{t('builder:rules.tools')}</legend>
        <div class="choices">
          {FUNCTIONS.map((fn) => {
            const on = tools === undefined || tools.includes(fn);
            return (
              <Tick
                key={fn}
                checked={on}
                disabled={on && tools?.length === 1}
                onChange={(checked) => {
                  const next = FUNCTIONS.filter((each) => (each === fn ? checked : tools === undefined || tools.includes(each)));
                  putTools(next.length === FUNCTIONS.length ? undefined : next);
                }}
              >
                {t(`meter:fn.${fn}`)}
              </Tick>
            );
          })}
        </div>
      </fieldset>
      <h3>{t('builder:rubric.title')}</h3>
      <RubricFields
        rubric={draft.rubric}
        onRubric={(rubric) => {
          const { rubric: _, ...rest } = draft;
          onDraft(rubric === undefined ? rest : { ...rest, rubric });
        }}
      />
    </Slip>
  );
}

/** What it goes by in lists and files. */
export function ListSection({ draft, onDraft }: Props) {
  const skills = draft.skills ?? [];
  return (
    <Slip title={t('builder:list.title')} folded>
      <div class="make-row">
        <TextField label={t('builder:list.id')} value={draft.id} most={40} onValue={(id) => onDraft({ ...draft, id })} />
        <NumberField
          label={t('builder:list.order')}
          value={draft.order}
          from={0}
          to={10_000}
          step={1}
          onValue={(order) => onDraft({ ...draft, order: order ?? 0 })}
        />
      </div>
      <fieldset>
        <legend>{t('builder:list.skills')}</legend>
        <div class="choices choices-long">
          {SKILLS.map((skill) => (
            <Tick
              key={skill}
              checked={skills.includes(skill)}
              disabled={!skills.includes(skill) && skills.length >= MOST_SKILLS}
              onChange={(checked) => {
                const { skills: _, ...rest } = draft;
                const next = checked ? [...skills, skill] : skills.filter((each) => each !== skill);
                onDraft(next.length === 0 ? rest : { ...rest, skills: next });
              }}
            >
              {t(`keeping:skill.${skill}`)}
            </Tick>
          ))}
        </div>
      </fieldset>
    </Slip>
  );
}
