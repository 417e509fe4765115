import { hasKeyboard } from '../has-keyboard.ts';
import { noticedTexts } from '../step-words.ts';
import type { Bench } from '../use-attempt.ts';
import { placeName, t } from '../words.ts';
import { Do } from './do.tsx';
import { Jumpers } from './jumpers.tsx';
import { PartCard, signsOf } from './part-card.tsx';
import { useKeptFocus } from './use-kept-focus.ts';
import type { Leads } from './use-leads.ts';
import { WireRow, wireActions } from './wire-row.tsx';

interface Props {
  readonly bench: Bench;
  readonly leads: Leads;
}

/**
 * The bench as a list: the place's covers, parts, terminals and wires, each with the actions that are allowed now. What is
 * allowed comes from the registry; nothing here knows a rule.
 */
export function ListBench({ bench, leads }: Props) {
  const { view, options } = bench;
  const remember = useKeptFocus(view, 'list-place');
  const covers = view.covers.filter((each) => each.place === view.place);
  // Some things are heard or worked through a closed cover.
  const parts = view.parts.filter(
    (part) => part.place === view.place && (part.visible || signsOf(part).length > 0 || part.controls.length > 0),
  );
  const wires = view.wires.filter((wire) => wireActions(options, wire.id).length > 0);
  return (
    <div class="list" onFocusIn={remember}>
      <div class="list-head">
        <h2 id="list-place" tabIndex={-1}>
          {placeName(view.place)}
        </h2>
        {hasKeyboard() && (
          <label class="choice">
            <input type="checkbox" checked={leads.keys} onChange={(event) => leads.setKeys(event.currentTarget.checked)} />
            {t('app:list.keys')}
          </label>
        )}
      </div>
      <Noticed bench={bench} />
      {covers.length > 0 && (
        <section class="list-covers" aria-label={t('app:list.covers')}>
          {covers.map((cover) => (
            <Do key={cover.id} bench={bench} action={{ name: 'cover', cover: cover.id, open: !cover.open }} />
          ))}
        </section>
      )}
      <div class="list-parts">
        {parts.map((part) => (
          <PartCard key={part.id} bench={bench} part={part} />
        ))}
      </div>
      {wires.length > 0 && (
        <section class="list-wires" aria-labelledby="wires-title">
          <h3 id="wires-title">{t('app:list.wires')}</h3>
          <ul>
            {wires.map((wire) => (
              <WireRow key={wire.id} bench={bench} wire={wire} />
            ))}
          </ul>
        </section>
      )}
      <Jumpers bench={bench} />
    </div>
  );
}

/** What the last step let one see or hear. */
function Noticed({ bench }: { readonly bench: Bench }) {
  const last = bench.view.steps.at(-1);
  const noticed = last === undefined ? [] : noticedTexts(bench.view, last);
  if (noticed.length === 0) return null;
  return (
    <section class="list-noticed" aria-labelledby="noticed-title">
      <h3 id="noticed-title">{t('app:list.noticed')}</h3>
      <ul>
        {noticed.map((words) => (
          <li key={words}>{words}</li>
        ))}
      </ul>
    </section>
  );
}
