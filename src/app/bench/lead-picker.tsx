import { useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { Bench } from '../use-attempt.ts';
import { t } from '../words.ts';
import { matching, reachablePoints } from './points.ts';
import type { Leads } from './use-leads.ts';

interface Props {
  readonly bench: Bench;
  readonly leads: Leads;
}

/** After R or B: the terminal's letter places the lead. Where several terminals carry the letter, the arrows choose among them. */
export function LeadPicker({ bench, leads }: Props) {
  if (leads.held === undefined || !leads.byKey) return null;
  return <Picker key={leads.held} bench={bench} leads={leads} />;
}

function Picker({ bench, leads }: Props) {
  const [typed, setTyped] = useState('');
  const [chosen, setChosen] = useState(0);
  const input = useRef<HTMLInputElement>(null);
  const before = useRef<Element | null>(document.activeElement);
  const points = useMemo(() => reachablePoints(bench.view, bench.options), [bench.view, bench.options]);
  const found = matching(points, typed);
  const lead = leads.held ?? 'red';

  useLayoutEffect(() => {
    input.current?.focus();
    const back = before.current;
    return () => {
      if (back instanceof HTMLElement && back.isConnected) back.focus();
    };
  }, []);

  const type = (text: string) => {
    setTyped(text);
    setChosen(0);
    const left = matching(points, text);
    const only = left[0];
    if (text.trim() !== '' && left.length === 1 && only !== undefined) leads.place(only.point);
  };
  const onKey = (event: KeyboardEvent) => {
    const step = { ArrowDown: 1, ArrowUp: -1 }[event.key];
    if (step !== undefined) {
      event.preventDefault();
      setChosen((chosen + step + found.length) % Math.max(1, found.length));
    } else if (event.key === 'Enter') {
      event.preventDefault();
      const point = found[chosen];
      if (point !== undefined) leads.place(point.point);
    } else if (event.key === 'Escape') {
      event.preventDefault();
      leads.pick(undefined);
    }
  };

  return (
    <div class={`picker picker-${lead}`}>
      <label for="picker-letter">{t(`app:picker.${lead}`)}</label>
      <input
        id="picker-letter"
        ref={input}
        value={typed}
        role="combobox"
        autocomplete="off"
        autocapitalize="characters"
        aria-expanded="true"
        aria-controls="picker-found"
        aria-activedescendant={found.length > 0 ? `picker-${chosen}` : undefined}
        onInput={(event) => type(event.currentTarget.value)}
        onKeyDown={onKey}
      />
      <button type="button" class="button small" onClick={() => leads.pick(undefined)}>
        {t('app:picker.leave')}
      </button>
      {found.length === 0 ? (
        <p role="status">{points.length === 0 ? t('app:picker.nothing') : t('app:picker.none')}</p>
      ) : (
        <p class="picker-hint">{t('app:picker.hint')}</p>
      )}
      <div id="picker-found" role="listbox" aria-label={t(`app:picker.${lead}`)}>
        {found.map((each, index) => (
          // The keyboard reaches these through the field above; a pointer takes them directly.
          <button
            key={each.point}
            type="button"
            id={`picker-${index}`}
            role="option"
            tabIndex={-1}
            aria-selected={index === chosen}
            onClick={() => leads.place(each.point)}
          >
            <b>{each.letter}</b> {each.on}
          </button>
        ))}
      </div>
    </div>
  );
}
