import { useEffect, useMemo, useState } from 'preact/hooks';
import { type Fault, type PossibleFault, possibleFaults } from '../../rig/faults.ts';
import type { RigData } from '../../rig/schema.ts';
import type { Ticket } from '../../scenario/ticket.ts';
import { type ChosenFault, FaultChoice, NOTHING_CHOSEN } from '../bench/fault-choice.tsx';
import { namingText, number, t } from '../words.ts';
import { withFaults, withSuspects } from './draft.ts';
import { SelectField, Slip, Tick } from './fields.tsx';

interface Props {
  readonly draft: Ticket;
  readonly rig: RigData;
  readonly onDraft: (draft: Ticket) => void;
}

/** What is really wrong: one fault, or two. */
export function FaultSection({ draft, rig, onDraft }: Props) {
  const possible = useMemo(() => possibleFaults(rig, draft.suspects?.intermittents), [rig, draft.suspects?.intermittents]);
  const [two, setTwo] = useState(draft.faults.length > 1);
  const [first, second] = draft.faults;
  return (
    <Slip title={t('builder:fault.title')}>
      <OneFault
        id="first"
        possible={possible}
        fault={first}
        onFault={(fault) => onDraft(withFaults(draft, second === undefined ? [fault] : [fault, second]))}
      />
      <Tick
        checked={two}
        onChange={(checked) => {
          setTwo(checked);
          if (!checked) onDraft(withFaults(draft, draft.faults.slice(0, 1)));
        }}
      >
        {t('builder:fault.two')}
      </Tick>
      {two && first !== undefined && (
        <OneFault id="second" possible={possible} fault={second} onFault={(fault) => onDraft(withFaults(draft, [first, fault]))} />
      )}
    </Slip>
  );
}

interface OneProps {
  readonly id: string;
  readonly possible: readonly PossibleFault[];
  readonly fault: Fault | undefined;
  readonly onFault: (fault: Fault) => void;
}

function chosenOf(possible: readonly PossibleFault[], fault: Fault | undefined): ChosenFault {
  const found = possible.find((each) => each.target === fault?.target && each.mode === fault.mode);
  return found === undefined ? NOTHING_CHOSEN : { section: found.section, target: found.target, mode: found.mode };
}

/** Where, what, how, and how much where that differs. */
function OneFault({ id, possible, fault, onFault }: OneProps) {
  const [chosen, setChosen] = useState(() => chosenOf(possible, fault));
  useEffect(() => {
    // Another ticket was opened, or its data were edited.
    if (fault !== undefined) setChosen(chosenOf(possible, fault));
  }, [possible, fault]);
  const members = possible.find((each) => each.target === fault?.target && each.mode === fault.mode)?.members ?? [];
  return (
    <div class="make-fault">
      <FaultChoice
        id={id}
        namings={possible}
        chosen={chosen}
        where={t('builder:fault.where')}
        what={t('builder:fault.what')}
        onChoose={(next) => {
          setChosen(next);
          const found = possible.find((each) => each.target === next.target && each.mode === next.mode)?.members[0];
          if (found !== undefined) onFault(found);
        }}
      />
      {fault !== undefined && members.length > 1 && (
        <SelectField
          label={t('builder:fault.magnitude')}
          value={String(fault.magnitude)}
          options={members.map(
            ({ magnitude }) => [String(magnitude), number(magnitude, Number.isInteger(magnitude) ? 0 : 2)] as const,
          )}
          onValue={(value) => onFault({ ...fault, magnitude: Number(value) })}
        />
      )}
    </div>
  );
}

/** What else must be thought of on this job, beside every single lasting fault. */
export function SuspectsSection({ draft, rig, onDraft }: Props) {
  const possible = useMemo(() => possibleFaults(rig, draft.suspects?.intermittents), [rig, draft.suspects?.intermittents]);
  const [adding, setAdding] = useState(0);
  const pairs = draft.suspects?.pairs ?? [];
  return (
    <Slip title={t('builder:suspects.title')} folded>
      <Tick
        checked={draft.suspects?.intermittents === true}
        onChange={(intermittents) => onDraft(withSuspects(draft, { ...draft.suspects, intermittents }))}
      >
        {t('builder:suspects.intermittents')}
      </Tick>
      <h3>{t('builder:suspects.pairs')}</h3>
      <p>{t('builder:suspects.pairsText')}</p>
      <ul class="make-list">
        {pairs.map((pair) => (
          <li key={`${pair.target} ${pair.mode}`}>
            <span>{namingText(pair)}</span>
            <button
              type="button"
              class="button small"
              onClick={() => onDraft(withSuspects(draft, { ...draft.suspects, pairs: pairs.filter((each) => each !== pair) }))}
            >
              {t('builder:remove')}
              <span class="unseen"> {namingText(pair)}</span>
            </button>
          </li>
        ))}
      </ul>
      {pairs.length < 4 && (
        <OneFault
          key={adding}
          id="pair"
          possible={possible}
          fault={undefined}
          onFault={(fault) => {
            setAdding(adding + 1);
            onDraft(withSuspects(draft, { ...draft.suspects, pairs: [...pairs, fault] }));
          }}
        />
      )}
    </Slip>
  );
}
