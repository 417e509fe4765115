import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { Action } from '../../attempt/actions.ts';
import type { BenchView } from '../../attempt/view.ts';
import type { Box } from '../../stage/pen.ts';
import { useMarks } from '../guided/marks.ts';
import { lessMotion, setting, watchSettings } from '../settings.ts';
import { pressed } from '../units.ts';
import type { Bench } from '../use-attempt.ts';
import { stageWords, t } from '../words.ts';
import type { Leads } from './use-leads.ts';

interface Props {
  readonly bench: Bench;
  readonly leads: Leads;
  readonly onList: () => void;
}

type Stage = Awaited<ReturnType<typeof import('../../stage/stage.ts').mountStage>>;

/** A press of a setting's key moves it by a step of the reader's scale, whatever the key moves inside. */
function inSteps(view: BenchView, action: Action): Action {
  if (action.name !== 'set') return action;
  const control = view.parts.find((part) => part.id === action.part)?.controls.find((each) => each.id === action.control);
  if (control?.range === undefined || control.value === action.value) return action;
  const now = Number(control.value);
  return { ...action, value: pressed(now, action.value > now ? 1 : -1, control.range) };
}

/** The drawn bench. Phaser is fetched only here; where it cannot start, the list bench takes over. */
export function DrawnBench({ bench, leads, onList }: Props) {
  const host = useRef<HTMLDivElement>(null);
  const [stage, setStage] = useState<Stage>();
  const [whole, setWhole] = useState(true);
  const [failed, setFailed] = useState(false);
  /** Why the last press did nothing. */
  const [told, setTold] = useState('');
  /** Where the guide's idea is done in the scene, CSS pixels from the host's corner. */
  const [mark, setMark] = useState<Box>();
  const { onStage } = useMarks();
  const latest = useRef({ bench, leads });
  latest.current = { bench, leads };

  useEffect(() => {
    let mounted: Stage | undefined;
    let current = true;
    const start = async () => {
      const { mountStage } = await import('../../stage/stage.ts');
      if (!current || host.current === null) return;
      mounted = await mountStage(host.current, {
        t: stageWords,
        still: lessMotion,
        textScale: () => Number(setting('text')) / 100,
        onAction: (action) => latest.current.bench.act(inSteps(latest.current.bench.view, action)),
        onHold: (lead) => latest.current.leads.pick(lead),
        onMark: setMark,
        onSight: setWhole,
        announce: (words) => {
          latest.current.bench.say(words);
          setTold(words);
        },
      });
      if (current) setStage(mounted);
      else mounted.destroy();
    };
    start().catch(() => current && setFailed(true));
    return () => {
      current = false;
      mounted?.destroy();
    };
  }, []);

  // Before the next press, however quick the hand: the stage must hold what the page shows.
  useLayoutEffect(() => stage?.show(bench.view), [stage, bench.view]);
  useEffect(() => stage && watchSettings(() => stage.settle()), [stage]);
  useEffect(() => setTold(''), [bench.view, leads.held, leads.tool]);
  useLayoutEffect(() => stage?.holdLead(leads.held), [stage, leads.held]);
  useLayoutEffect(() => stage?.tool(leads.tool), [stage, leads.tool]);
  useLayoutEffect(() => stage?.point(onStage), [stage, onStage]);

  return (
    <div class="drawn">
      <div class="drawn-host" ref={host} />
      {mark !== undefined && (
        <div class="drawn-marks" aria-hidden="true">
          <span class="drawn-mark" style={{ left: mark.x, top: mark.y, width: mark.width, height: mark.height }} />
        </div>
      )}
      {told !== '' && bench.refused === undefined && <p class="note drawn-told">{told}</p>}
      {stage !== undefined && !whole && (
        <button type="button" class="button small drawn-whole" onClick={() => stage.whole()}>
          {t('stage:sight.whole')}
        </button>
      )}
      {stage === undefined && (
        <p class="drawn-wait" role="status">
          {failed ? t('app:drawn.failed') : t('app:drawn.loading')}{' '}
          <button type="button" class="button" onClick={onList}>
            {t('app:drawn.toList')}
          </button>
        </p>
      )}
    </div>
  );
}
