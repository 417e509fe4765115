import { useEffect, useState } from 'preact/hooks';
import { type Action, HINT_DEPTHS, type HintDepth } from '../../attempt/actions.ts';
import { DEFAULT_RUBRIC } from '../../score/rubric.ts';
import type { Hint } from '../../suspects/hints.ts';
import { useAnswer } from '../engine/use-answer.ts';
import { instructor } from '../instruct.ts';
import type { Bench } from '../use-attempt.ts';
import { percent, placeName, t } from '../words.ts';
import { Dialog } from './dialog.tsx';

/** A hint that was paid for, in words. */
export interface HintTold {
  /** Steps that had been taken when it was asked. */
  readonly step: number;
  readonly title: string;
  readonly lines: readonly string[];
  /** Whether the lines are to be done one after another. */
  readonly ordered: boolean;
}

interface Props {
  readonly bench: Bench;
  readonly last: HintTold | undefined;
  readonly onTold: (told: HintTold) => void;
  readonly onDone: () => void;
}

/** The three depths of help, each with its price. What could not be worked out is not paid. */
export function HintDialog({ bench, last, onTold, onDone }: Props) {
  const { ticket, whole, rig, view } = bench;
  const { state, ask } = useAnswer(whole, rig, 'hint');
  const recalled = useAnswer(whole, rig, 'hint');
  const [asked, setAsked] = useState<HintDepth>();
  // After a reload the words are gone, but the log says what was asked and where: the same question has the same answer, and is paid.
  useEffect(() => {
    if (last !== undefined) return;
    const actions = view.steps.map((step) => step.action);
    const at = actions.findLastIndex((action) => action.name === 'hint');
    const paid = actions[at];
    if (paid?.name !== 'hint') return;
    const before = actions.slice(0, at);
    void recalled
      .ask({ actions: before, depth: paid.depth })
      .then((hint) => hint !== undefined && onTold({ step: at, ...hintWords(bench, hint, before) }));
    // Once, when the window opens: later hints come with their words.
  }, []);
  const prices = (ticket.rubric ?? DEFAULT_RUBRIC).hints;

  const take = async (depth: HintDepth) => {
    setAsked(depth);
    const actions = view.steps.map((step) => step.action);
    const hint = await ask({ actions, depth });
    if (hint === undefined) return;
    bench.act({ name: 'hint', depth });
    const told: HintTold = { step: actions.length, ...hintWords(bench, hint, actions) };
    onTold(told);
    bench.say([told.title, ...told.lines].join(' '));
  };

  return (
    <Dialog title={t('app:hint.title')} onDone={onDone}>
      <p>{t('app:hint.price')}</p>
      <ul class="hint-depths">
        {HINT_DEPTHS.map((depth) => (
          <li key={depth}>
            <button type="button" class="button" disabled={state === 'busy'} onClick={() => void take(depth)}>
              <span>{t(`app:hint.take.${depth}`)}</span>
              <b>{prices[depth] === 0 ? t('app:hint.free') : t('app:hint.points', { count: prices[depth] })}</b>
            </button>
          </li>
        ))}
      </ul>
      <div role="status" class="hint-told" aria-busy={state === 'busy'} data-depth={asked}>
        {(state === 'busy' || recalled.state === 'busy') && <p>{t('app:hint.working')}</p>}
        {state === 'failed' && <p>{t('app:hint.failed')}</p>}
        {last !== undefined && state !== 'busy' && (
          <section data-testid="hint">
            <h3>{last.step === 0 ? t('app:hint.first') : t('app:hint.last', { step: last.step })}</h3>
            {last.title !== '' && <p>{last.title}</p>}
            {last.ordered ? <ol>{lines(last)}</ol> : <ul>{lines(last)}</ul>}
          </section>
        )}
      </div>
    </Dialog>
  );
}

function lines(told: HintTold) {
  return told.lines.map((line, index) => <li key={`${index} ${line}`}>{line}</li>);
}

/** A hint in words. `actions` are the steps that had been taken when it was asked. */
function hintWords(bench: Bench, hint: Hint, actions: readonly Action[]): Omit<HintTold, 'step'> {
  if ('done' in hint) return { title: t('app:hint.done'), lines: [], ordered: false };
  switch (hint.depth) {
    case 'where':
      return {
        title: t('app:hint.whereTitle'),
        lines: hint.sections.map(({ section, share }) =>
          t('app:hint.where', { section: t(`app:section.${section}`), share: percent(share) }),
        ),
        ordered: false,
      };
    case 'kind': {
      const { how } = hint;
      const place = placeName(hint.place);
      const byHand = how === 'look' || how === 'tug' || how === 'watch';
      return {
        title: byHand ? t(`app:hint.${how}`, { place }) : t('app:hint.measure', { place, fn: t(`meter:fn.${how}`) }),
        lines: [],
        ordered: false,
      };
    }
    case 'exact': {
      return {
        title: t('app:hint.exactTitle'),
        lines: bench.whole === undefined ? [] : instructor(bench.whole, bench.rig)(actions, hint.actions),
        ordered: true,
      };
    }
  }
}
