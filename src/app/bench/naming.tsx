import { useMemo, useState } from 'preact/hooks';
import { namingsOf } from '../../suspects/hypotheses.ts';
import type { Guide } from '../guided/ideas.ts';
import { GuideWords } from '../guided/panel.tsx';
import { findingText, readingWords } from '../step-words.ts';
import type { Bench } from '../use-attempt.ts';
import { namingText, placeName, t } from '../words.ts';
import { Dialog } from './dialog.tsx';
import { type ChosenFault, FaultChoice, NOTHING_CHOSEN } from './fault-choice.tsx';
import { findingsOf } from './readings.ts';

interface Props {
  readonly bench: Bench;
  readonly onDone: () => void;
  readonly guide: Guide | undefined;
}

/** Readings that an action takes at most. */
const MOST_EVIDENCE = 40;

/** Names the fault: where it lies, what it is on, how it failed, and which readings prove it. */
export function NamingDialog({ bench, onDone, guide }: Props) {
  const { rig } = bench;
  const { intermittents, pairs } = bench.naming;
  const namings = useMemo(() => namingsOf(rig, { intermittents }), [rig, intermittents]);
  const [first, setFirst] = useState(NOTHING_CHOSEN);
  const [second, setSecond] = useState<ChosenFault>();
  const [evidence, setEvidence] = useState<readonly number[]>([]);
  const findings = findingsOf(bench.told);
  const wanted = guide?.action?.name === 'name' ? guide.action : undefined;
  const ready = first.mode !== '' && (second === undefined || second.mode !== '');
  const fault = {
    target: first.target,
    mode: first.mode,
    ...(second === undefined ? {} : { also: { target: second.target, mode: second.mode } }),
  };

  const confirm = (event: Event) => {
    event.preventDefault();
    if (!ready) return;
    bench.act({ name: 'name', ...fault, evidence: [...evidence] });
    onDone();
  };
  const tick = (step: number, on: boolean) =>
    setEvidence(on ? [...evidence, step].sort((a, b) => a - b) : evidence.filter((each) => each !== step));

  const chosen = wanted !== undefined && first.target === wanted.target && first.mode === wanted.mode;
  const marked = (step: number) => (chosen && wanted.evidence.includes(step) && !evidence.includes(step)) || undefined;
  const done = (chosen && wanted.evidence.every((step) => evidence.includes(step))) || undefined;
  return (
    <Dialog title={t('app:naming.title')} onDone={onDone}>
      <p>{t('app:naming.once')}</p>
      {guide !== undefined && wanted !== undefined && (
        <div class="guided-window">
          <GuideWords guide={guide} />
        </div>
      )}
      <form class="naming" onSubmit={confirm}>
        <FaultChoice
          id="naming"
          namings={namings}
          chosen={first}
          onChoose={setFirst}
          where={t('app:naming.section')}
          what={t('app:naming.target')}
          marked={wanted}
        />
        {pairs && (
          <label class="choice">
            <input
              type="checkbox"
              checked={second !== undefined}
              onChange={(event) => setSecond(event.currentTarget.checked ? NOTHING_CHOSEN : undefined)}
            />
            {t('app:naming.second')}
          </label>
        )}
        {second !== undefined && (
          <FaultChoice
            id="naming-second"
            namings={namings.filter((each) => each.target !== first.target)}
            chosen={second}
            onChoose={setSecond}
            where={t('app:naming.secondSection')}
            what={t('app:naming.secondTarget')}
          />
        )}
        <fieldset>
          <legend>{t('app:naming.evidence')}</legend>
          {findings.length === 0 ? (
            <p>{t('app:naming.noReadings')}</p>
          ) : (
            <ul class="evidence">
              {findings.map((told) => (
                <li key={told.step.number}>
                  <label class="choice" data-marked={marked(told.step.number)}>
                    <input
                      type="checkbox"
                      checked={evidence.includes(told.step.number)}
                      disabled={evidence.length >= MOST_EVIDENCE && !evidence.includes(told.step.number)}
                      onChange={(event) => tick(told.step.number, event.currentTarget.checked)}
                    />
                    <span>
                      {t('app:naming.reading', {
                        step: told.step.number,
                        what: told.measured === '' ? told.done : readingWords(told),
                        place: placeName(told.step.place),
                      })}{' '}
                      <b>{findingText(told)}</b>
                    </span>
                  </label>
                </li>
              ))}
            </ul>
          )}
        </fieldset>
        <div class="window-foot">
          <button type="submit" class="button act" disabled={!ready} data-marked={done}>
            {ready ? t('app:naming.confirm', { fault: namingText(fault) }) : t('app:naming.incomplete')}
          </button>
        </div>
      </form>
    </Dialog>
  );
}
