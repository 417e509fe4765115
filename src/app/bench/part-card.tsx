import type { ControlView, PartView, TerminalView } from '../../attempt/view.ts';
import { useMarks } from '../guided/marks.ts';
import { degreeSign, settingOf, shownDegrees, shownRange } from '../units.ts';
import type { Bench } from '../use-attempt.ts';
import { partName, positionName, signText, t, terminalName, wireName } from '../words.ts';
import { Do, LeadButton } from './do.tsx';

const HAND = ['pull', 'turn', 'mat', 'seat', 'unplug', 'plug', 'look'] as const;

interface Props {
  readonly bench: Bench;
  readonly part: PartView;
}

/** What can be seen or heard of a part, in words. What a control's own buttons show is not said twice. */
export function signsOf(part: PartView): readonly string[] {
  return Object.entries(part.signs)
    .filter(([key]) => !part.controls.some((control) => control.id === key))
    .map(([key, value]) => signText(key, value))
    .filter((words) => words !== '');
}

/** A part: what is perceived of it, its controls, what the hand can do with it, and its terminals. */
export function PartCard({ bench, part }: Props) {
  const signs = signsOf(part);
  const hand = bench.options.filter((each) => 'part' in each && each.part === part.id && HAND.some((name) => name === each.name));
  const terminals = part.terminals.filter((each) => each.reachable);
  const title = `part-${part.id}`;
  return (
    <section class="card" aria-labelledby={title} data-part={part.id}>
      <h3 id={title} tabIndex={-1}>
        {partName(part.id)}
        {part.hazards.includes('lineVoltage') && <span class="tag">{t('app:list.lineVoltage')}</span>}
      </h3>
      {part.body !== undefined && <p>{t(`app:body.${part.body}`)}</p>}
      {part.pulledOut === true && <p>{t('app:list.pulledOut')}</p>}
      {signs.length > 0 && (
        <ul class="signs">
          {signs.map((words) => (
            <li key={words}>{words}</li>
          ))}
        </ul>
      )}
      {part.controls.map((control) => (
        <ControlRow key={control.id} bench={bench} part={part} control={control} />
      ))}
      {hand.length > 0 && (
        <div class="card-hand">
          {hand.map((action) => (
            <Do key={action.name} bench={bench} action={action} about={title} />
          ))}
        </div>
      )}
      {terminals.length > 0 && (
        <ul class="terminals" aria-label={t('app:list.terminals', { part: partName(part.id) })}>
          {terminals.map((terminal) => (
            <TerminalRow key={terminal.point} bench={bench} part={part} terminal={terminal} />
          ))}
        </ul>
      )}
    </section>
  );
}

function ControlRow({ bench, part, control }: Props & { readonly control: ControlView }) {
  const name = t(`parts:control.${control.id}`);
  const { next } = useMarks();
  if (control.positions !== undefined) {
    return (
      <fieldset class="control" aria-label={`${partName(part.id)}: ${name}`}>
        <span>{name}</span>
        {control.positions.map((position) => (
          <Do
            key={position}
            bench={bench}
            action={{ name: 'operate', part: part.id, control: control.id, position }}
            words={positionName(position)}
            pressed={control.value === position}
          />
        ))}
      </fieldset>
    );
  }
  if (control.range === undefined) return null;
  const { range } = control;
  const { from, to, step } = shownRange(range);
  const unit = `unit-${part.id}-${control.id}`;
  const set = (event: SubmitEvent) => {
    event.preventDefault();
    if (!(event.currentTarget instanceof HTMLFormElement)) return;
    const entered = Number(new FormData(event.currentTarget).get('value'));
    bench.act({ name: 'set', part: part.id, control: control.id, value: settingOf(entered, range) });
  };
  return (
    <form class="control" onSubmit={set}>
      <label>
        <span>{name}</span>
        <input
          key={control.value}
          aria-describedby={unit}
          type="number"
          name="value"
          min={from}
          max={to}
          step={step}
          defaultValue={String(shownDegrees(Number(control.value)))}
        />
      </label>
      <span class="control-unit" id={unit}>
        {degreeSign()}
      </span>
      <button
        type="submit"
        class="button small"
        data-marked={(next?.name === 'set' && next.part === part.id && next.control === control.id) || undefined}
      >
        {t('app:list.set', { control: name })}
      </button>
    </form>
  );
}

function TerminalRow({ bench, part, terminal }: Props & { readonly terminal: TerminalView }) {
  return (
    <li data-point={terminal.point}>
      <span class="terminal-name">
        <b>{terminalName(part, terminal)}</b> <small>{terminal.wires.map(wireName).join(', ')}</small>
      </span>
      <LeadButton bench={bench} lead="red" point={terminal.point} />
      <LeadButton bench={bench} lead="black" point={terminal.point} />
    </li>
  );
}
