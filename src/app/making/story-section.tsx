import { useMemo } from 'preact/hooks';
import type { HistoryAct } from '../../attempt/job.ts';
import type { Control } from '../../parts/part.ts';
import { type AssembledPart, assemble } from '../../rig/assemble.ts';
import type { RigData } from '../../rig/schema.ts';
import type { Ticket } from '../../scenario/ticket.ts';
import { degreeSign, settingOf, shownDegrees, shownRange } from '../units.ts';
import { partName, positionName, t } from '../words.ts';
import { callersOf, storyOf, within } from './draft.ts';
import { NumberField, SelectField, Slip } from './fields.tsx';

interface Props {
  readonly draft: Ticket;
  readonly rig: RigData;
  readonly onDraft: (draft: Ticket) => void;
}

const MOST_ACTS = 20;

/** What the customer did before calling. */
export function StorySection({ draft, rig, onDraft }: Props) {
  const { history } = draft.complaint;
  const parts = useMemo(() => assemble(rig).parts.filter((part) => (part.kind.controls?.length ?? 0) > 0), [rig]);
  const callers = useMemo(() => callersOf(rig), [rig]);
  const put = (next: readonly HistoryAct[]) => onDraft({ ...draft, complaint: { ...draft.complaint, history: [...next] } });
  const at = (index: number, act: HistoryAct) => put(history.map((each, other) => (other === index ? act : each)));
  const first = callers[0] ?? parts[0];
  return (
    <Slip title={t('builder:story.title')}>
      <p>{t('builder:story.calls')}</p>
      <div class="make-buttons">
        {callers.flatMap((caller) =>
          (caller.kind.calls ?? []).map((call) => (
            <button
              key={`${caller.id} ${call.id}`}
              type="button"
              class="button small"
              onClick={() => put(storyOf(rig, caller, call.acts))}
            >
              {callers.length > 1 ? `${partName(caller.id)}: ${callText(call.acts)}` : callText(call.acts)}
            </button>
          )),
        )}
      </div>
      <ol class="make-list make-acts">
        {history.map((act, index) => (
          <li key={index}>
            <Act act={act} parts={parts} onAct={(next) => at(index, next)} />
            <button type="button" class="button small" onClick={() => put(history.filter((_, other) => other !== index))}>
              {t('builder:remove')}
              <span class="unseen"> {t('builder:story.act', { number: index + 1 })}</span>
            </button>
          </li>
        ))}
      </ol>
      {history.length < MOST_ACTS && (
        <div class="make-buttons">
          {first !== undefined && (
            <button
              type="button"
              class="button small"
              onClick={() => {
                const act = actOf(first, first.kind.controls?.[0]);
                if (act !== undefined) put([...history, act]);
              }}
            >
              {t('builder:story.add')}
            </button>
          )}
          <button type="button" class="button small" onClick={() => put([...history, { name: 'wait', seconds: 900 }])}>
            {t('builder:story.addWait')}
          </button>
        </div>
      )}
    </Slip>
  );
}

/** "System switch: cool, …": what is set for a call, without its degrees. */
function callText(acts: readonly { readonly control: string; readonly value: string | number }[]): string {
  return acts
    .map(({ control, value }) =>
      typeof value === 'string' ? `${t(`parts:control.${control}`)}: ${positionName(value)}` : t(`parts:control.${control}`),
    )
    .join(', ');
}

/** The first thing that a control can be put to. */
function actOf(part: AssembledPart, control: Control | undefined): HistoryAct | undefined {
  if (control === undefined) return undefined;
  const position = control.positions?.[0];
  if (position !== undefined) return { name: 'operate', part: part.id, control: control.id, position };
  const value = control.range && within((control.range.from + control.range.to) / 2, control.range);
  return value === undefined ? undefined : { name: 'set', part: part.id, control: control.id, value };
}

interface ActProps {
  readonly act: HistoryAct;
  readonly parts: readonly AssembledPart[];
  readonly onAct: (act: HistoryAct) => void;
}

function Act({ act, parts, onAct }: ActProps) {
  if (act.name === 'wait')
    return (
      <NumberField
        label={t('builder:story.wait')}
        value={act.seconds / 60}
        from={1}
        to={120}
        onValue={(minutes) => minutes !== undefined && onAct({ name: 'wait', seconds: Math.round(minutes * 60) })}
      />
    );
  const part = parts.find((each) => each.id === act.part);
  const control = part?.kind.controls?.find((each) => each.id === act.control);
  const change = (next: AssembledPart | undefined, id?: string) => {
    const found = next?.kind.controls?.find((each) => each.id === id) ?? next?.kind.controls?.[0];
    const made = next && actOf(next, found);
    if (made !== undefined) onAct(made);
  };
  return (
    <div class="make-act">
      <SelectField
        label={t('builder:story.part')}
        value={act.part}
        options={parts.map(({ id }) => [id, partName(id)] as const)}
        onValue={(id) => change(parts.find((each) => each.id === id))}
      />
      <SelectField
        label={t('builder:story.control')}
        value={act.control}
        options={(part?.kind.controls ?? []).map(({ id }) => [id, t(`parts:control.${id}`)] as const)}
        onValue={(id) => change(part, id)}
      />
      {act.name === 'operate' ? (
        <SelectField
          label={t('builder:story.position')}
          value={act.position}
          options={(control?.positions ?? []).map((each) => [each, positionName(each)] as const)}
          onValue={(position) => onAct({ ...act, position })}
        />
      ) : (
        control?.range !== undefined && (
          <NumberField
            label={t('builder:story.value', { unit: degreeSign() })}
            value={shownDegrees(act.value)}
            {...shownRange(control.range)}
            onValue={(value) => value !== undefined && control.range && onAct({ ...act, value: settingOf(value, control.range) })}
          />
        )
      )}
    </div>
  );
}
