import type { Action } from '../../attempt/actions.ts';
import type { WireView } from '../../attempt/view.ts';
import type { Bench } from '../use-attempt.ts';
import { t, wireName } from '../words.ts';
import { Do, LeadButton } from './do.tsx';

/** What a hand may do with a wire here and now. */
export function wireActions(options: readonly Action[], wire: string): readonly Action[] {
  return options.filter((each) => {
    if (each.name === 'lift' || each.name === 'land' || each.name === 'tug') return each.wire === wire;
    return each.name === 'clamp' && each.around === wire && each.turns === 1;
  });
}

/** A wire within reach: its colour, what can be done with it, and its bare ends. */
export function WireRow({ bench, wire }: { readonly bench: Bench; readonly wire: WireView }) {
  const bare = [wire.ends.from, wire.ends.to].filter((end) => end.lifted && end.visible);
  const title = `wire-${wire.id}`;
  return (
    <li data-wire={wire.id}>
      <span class="wire-name">
        <span class="swatch" style={{ background: `var(--wire-${wire.colour})` }} aria-hidden="true" />
        <span id={title} tabIndex={-1}>
          {wireName(wire.id)} <small>{t(`app:colour.${wire.colour}`)}</small>
        </span>
      </span>
      <span class="wire-do">
        {wireActions(bench.options, wire.id).map((action) => (
          <Do key={`${action.name} ${'end' in action ? action.end : ''}`} bench={bench} action={action} about={title} />
        ))}
        {bare.flatMap((end) =>
          (['red', 'black'] as const).map((lead) => (
            <LeadButton key={`${end.point} ${lead}`} bench={bench} lead={lead} point={end.point} />
          )),
        )}
      </span>
    </li>
  );
}
