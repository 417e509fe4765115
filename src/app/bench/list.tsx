import type { Action } from '../../attempt/actions.ts';
import type { ControlView, PartView, TerminalView, WireView } from '../../attempt/view.ts';
import type { Bench } from '../use-attempt.ts';
import {
  doText,
  noticedTexts,
  partName,
  placeName,
  pointName,
  positionName,
  signText,
  t,
  terminalName,
  wireName,
} from '../words.ts';
import { Jumpers } from './jumpers.tsx';
import type { Leads } from './use-leads.ts';

interface Props {
  readonly bench: Bench;
  readonly leads: Leads;
}

const HAND = ['pull', 'turn', 'mat', 'seat', 'unplug', 'plug', 'look'] as const;

/**
 * The bench as a list: the place's covers, parts, terminals and wires, each with the actions that are allowed now. What is
 * allowed comes from the registry; nothing here knows a rule.
 */
export function ListBench({ bench, leads }: Props) {
  const { view, options } = bench;
  const covers = view.covers.filter((each) => each.place === view.place);
  // Some things are heard or worked through a closed cover.
  const parts = view.parts.filter(
    (part) => part.place === view.place && (part.visible || signsOf(part).length > 0 || part.controls.length > 0),
  );
  const last = view.steps.at(-1);
  const noticed = last === undefined ? [] : noticedTexts(view, last);
  const wires = view.wires.filter((wire) => wireActions(options, wire).length > 0);
  return (
    <div class="list">
      <div class="list-head">
        <h2 id="list-place">{placeName(view.place)}</h2>
        <label class="choice">
          <input type="checkbox" checked={leads.keys} onChange={(event) => leads.setKeys(event.currentTarget.checked)} />
          {t('app:list.keys')}
        </label>
      </div>
      {noticed.length > 0 && (
        <section class="list-noticed" aria-labelledby="noticed-title">
          <h3 id="noticed-title">{t('app:list.noticed')}</h3>
          <ul>
            {noticed.map((words) => (
              <li key={words}>{words}</li>
            ))}
          </ul>
        </section>
      )}
      {covers.length > 0 && (
        <section class="list-covers" aria-label={t('app:list.covers')}>
          {covers.map((cover) => (
            <Do key={cover.id} bench={bench} action={{ name: 'cover', cover: cover.id, open: !cover.open }} />
          ))}
        </section>
      )}
      <div class="list-parts">
        {parts.map((part) => (
          <PartCard key={part.id} bench={bench} leads={leads} part={part} />
        ))}
      </div>
      {wires.length > 0 && (
        <section class="list-wires" aria-labelledby="wires-title">
          <h3 id="wires-title">{t('app:list.wires')}</h3>
          <ul>
            {wires.map((wire) => (
              <WireRow key={wire.id} bench={bench} leads={leads} wire={wire} />
            ))}
          </ul>
        </section>
      )}
      <Jumpers bench={bench} />
    </div>
  );
}

/** A button that takes an action. */
function Do({
  bench,
  action,
  words,
  pressed,
}: {
  readonly bench: Bench;
  readonly action: Action;
  readonly words?: string;
  readonly pressed?: boolean;
}) {
  return (
    <button type="button" class="button small" aria-pressed={pressed} onClick={() => bench.act(action)}>
      {words ?? doText(bench.view, action)}
    </button>
  );
}

function signsOf(part: PartView): readonly { readonly key: string; readonly words: string }[] {
  // What a control's own buttons show is not said twice.
  return Object.entries(part.signs)
    .filter(([key]) => !part.controls.some((control) => control.id === key))
    .map(([key, value]) => ({ key, words: signText(key, value) }))
    .filter((each) => each.words !== '');
}

function PartCard({ bench, leads, part }: Props & { readonly part: PartView }) {
  const signs = signsOf(part);
  const hand = bench.options.filter((each) => 'part' in each && each.part === part.id && HAND.some((name) => name === each.name));
  const terminals = part.terminals.filter((each) => each.reachable);
  const title = `part-${part.id}`;
  return (
    <section class="card" aria-labelledby={title} data-part={part.id}>
      <h3 id={title}>
        {partName(part.id)}
        {part.lineVoltage && <span class="tag">{t('app:list.lineVoltage')}</span>}
      </h3>
      {part.body !== undefined && <p>{t(`app:body.${part.body}`)}</p>}
      {part.pulledOut === true && <p>{t('app:list.pulledOut')}</p>}
      {signs.length > 0 && (
        <ul class="signs">
          {signs.map((each) => (
            <li key={each.key}>{each.words}</li>
          ))}
        </ul>
      )}
      {part.controls.map((control) => (
        <ControlRow key={control.id} bench={bench} part={part} control={control} />
      ))}
      {hand.length > 0 && (
        <div class="card-hand">
          {hand.map((action) => (
            <Do key={action.name} bench={bench} action={action} />
          ))}
        </div>
      )}
      {terminals.length > 0 && (
        <ul class="terminals" aria-label={t('app:list.terminals', { part: partName(part.id) })}>
          {terminals.map((terminal) => (
            <TerminalRow key={terminal.point} bench={bench} leads={leads} part={part} terminal={terminal} />
          ))}
        </ul>
      )}
    </section>
  );
}

function ControlRow({ bench, part, control }: { readonly bench: Bench; readonly part: PartView; readonly control: ControlView }) {
  const name = t(`parts:control.${control.id}`);
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
  const { from, to, step } = control.range;
  const set = (event: SubmitEvent) => {
    event.preventDefault();
    if (!(event.currentTarget instanceof HTMLFormElement)) return;
    const value = Number(new FormData(event.currentTarget).get('value'));
    bench.act({ name: 'set', part: part.id, control: control.id, value });
  };
  return (
    <form class="control" onSubmit={set}>
      <label>
        {name}{' '}
        <input
          key={control.value}
          type="number"
          name="value"
          min={from}
          max={to}
          step={step}
          defaultValue={String(control.value)}
        />
      </label>
      <button type="submit" class="button small">
        {t('app:list.set', { control: name })}
      </button>
    </form>
  );
}

interface TerminalProps extends Props {
  readonly part: PartView;
  readonly terminal: TerminalView;
}

function TerminalRow({ bench, part, terminal }: TerminalProps) {
  const { view } = bench;
  const name = terminalName(part, terminal);
  return (
    <li data-point={terminal.point}>
      <span class="terminal-name">
        <b>{name}</b> <small>{terminal.wires.map(wireName).join(', ')}</small>
      </span>
      {(['red', 'black'] as const).map((lead) => (
        <LeadButton key={lead} bench={bench} lead={lead} point={terminal.point} name={pointName(view, terminal.point)} />
      ))}
    </li>
  );
}

function LeadButton({
  bench,
  lead,
  point,
  name,
}: {
  readonly bench: Bench;
  readonly lead: 'red' | 'black';
  readonly point: string;
  readonly name: string;
}) {
  const here = bench.view.meter[lead] === point;
  return (
    <button
      type="button"
      class={`button small lead-${lead}`}
      aria-pressed={here}
      aria-label={t(`app:list.lead.${lead}`, { point: name })}
      onClick={() => bench.act({ name: 'probe', lead, at: here ? null : point })}
    >
      {t(here ? `app:list.on.${lead}` : `app:list.here.${lead}`)}
    </button>
  );
}

/** What a hand may do with a wire here and now. */
function wireActions(options: readonly Action[], wire: WireView): readonly Action[] {
  return options.filter((each) => {
    if (each.name === 'lift' || each.name === 'land' || each.name === 'tug') return each.wire === wire.id;
    return each.name === 'clamp' && each.around === wire.id && each.turns === 1;
  });
}

function WireRow({ bench, wire }: Props & { readonly wire: WireView }) {
  const { view } = bench;
  const ends = [wire.ends.from, wire.ends.to];
  return (
    <li data-wire={wire.id}>
      <span class="wire-name">
        <span class="swatch" style={{ background: `var(--wire-${wire.colour})` }} aria-hidden="true" />
        <span>
          {wireName(wire.id)} <small>{t('app:list.wireColour', { colour: t(`app:colour.${wire.colour}`) })}</small>
        </span>
      </span>
      <span class="wire-do">
        {wireActions(bench.options, wire).map((action) => (
          <Do key={`${action.name} ${'end' in action ? action.end : ''}`} bench={bench} action={action} />
        ))}
        {ends
          .filter((end) => end.lifted && end.visible)
          .flatMap((end) =>
            (['red', 'black'] as const).map((lead) => (
              <LeadButton
                key={`${end.point} ${lead}`}
                bench={bench}
                lead={lead}
                point={end.point}
                name={pointName(view, end.point)}
              />
            )),
          )}
      </span>
    </li>
  );
}
