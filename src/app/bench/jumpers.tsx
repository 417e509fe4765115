import { useState } from 'preact/hooks';
import { doText } from '../action-words.ts';
import { useMarks } from '../guided/marks.ts';
import type { Bench } from '../use-attempt.ts';
import { t } from '../words.ts';
import { reachablePoints } from './points.ts';

/** Jumper leads: one fitted between any two points within reach, each taken off again. */
export function Jumpers({ bench }: { readonly bench: Bench }) {
  const marks = useMarks();
  const [from, setFrom] = useState('');
  const [to, setTo] = useState('');
  const points = reachablePoints(bench.view, bench.options);
  const valid = (point: string) => (points.some((each) => each.point === point) ? point : '');
  const choice = (id: string, value: string, set: (point: string) => void, words: string) => (
    <div class="field">
      <label for={id}>{words}</label>
      <select id={id} value={valid(value)} onChange={(event) => set(event.currentTarget.value)}>
        <option value="">{t('app:jumper.choose')}</option>
        {points.map((each) => (
          <option key={each.point} value={each.point}>
            {t('app:point.full', { terminal: each.letter, part: each.on })}
          </option>
        ))}
      </select>
    </div>
  );
  if (points.length < 2 && bench.view.jumpers.length === 0) return null;
  const ready = valid(from) !== '' && valid(to) !== '' && from !== to;
  return (
    <section class="list-jumpers" aria-labelledby="jumpers-title">
      <h3 id="jumpers-title">{t('app:jumper.title')}</h3>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          if (ready) bench.act({ name: 'jumper', from, to, on: true });
        }}
      >
        {choice('jumper-from', from, setFrom, t('app:jumper.from'))}
        {choice('jumper-to', to, setTo, t('app:jumper.to'))}
        <button type="submit" class="button small" disabled={!ready}>
          {t('app:jumper.fit')}
        </button>
      </form>
      {bench.view.jumpers.length > 0 && (
        <ul>
          {bench.view.jumpers.map((each) => {
            const off = { name: 'jumper', from: each.from, to: each.to, on: false } as const;
            return (
              <li key={`${each.from} ${each.to}`}>
                <button type="button" class="button small" data-marked={marks.does(off)} onClick={() => bench.act(off)}>
                  {doText(bench.view, off)}
                </button>
              </li>
            );
          })}
        </ul>
      )}
    </section>
  );
}
