import { useMemo, useState } from 'preact/hooks';
import { SECTIONS, type Section } from '../../parts/part.ts';
import { namingsOf } from '../../suspects/hypotheses.ts';
import { readingWords } from '../step-words.ts';
import type { Bench } from '../use-attempt.ts';
import { modeName, placeName, readingText, t, thingName } from '../words.ts';
import { Dialog } from './dialog.tsx';
import { readingsOf } from './readings.ts';

interface Props {
  readonly bench: Bench;
  readonly onDone: () => void;
}

/** Readings that an action takes at most. */
const MOST_EVIDENCE = 40;

/** Names the fault: where it lies, what it is on, how it failed, and which readings prove it. */
export function NamingDialog({ bench, onDone }: Props) {
  const namings = useMemo(() => namingsOf(bench.rig), [bench.rig]);
  const [section, setSection] = useState<Section>();
  const [target, setTarget] = useState('');
  const [mode, setMode] = useState('');
  const [evidence, setEvidence] = useState<readonly number[]>([]);
  const inSection = namings.filter((each) => each.section === section);
  const targets = [...new Set(inSection.map((each) => each.target))].sort((a, b) => thingName(a).localeCompare(thingName(b)));
  const modes = inSection.filter((each) => each.target === target).map((each) => each.mode);
  const readings = readingsOf(bench.told);
  const ready = target !== '' && mode !== '';

  const confirm = (event: Event) => {
    event.preventDefault();
    if (!ready) return;
    bench.act({ name: 'name', target, mode, evidence: [...evidence] });
    onDone();
  };
  const tick = (step: number, on: boolean) =>
    setEvidence(on ? [...evidence, step].sort((a, b) => a - b) : evidence.filter((each) => each !== step));

  return (
    <Dialog title={t('app:naming.title')} onDone={onDone}>
      <p>{t('app:naming.once')}</p>
      <form class="naming" onSubmit={confirm}>
        <fieldset>
          <legend>{t('app:naming.section')}</legend>
          <div class="choices">
            {SECTIONS.map((each) => (
              <label key={each} class="choice">
                <input
                  type="radio"
                  name="section"
                  checked={section === each}
                  onChange={() => {
                    setSection(each);
                    setTarget('');
                    setMode('');
                  }}
                />
                {t(`app:section.${each}`)}
              </label>
            ))}
          </div>
        </fieldset>
        {section !== undefined && (
          <div class="field">
            <label for="naming-target">{t('app:naming.target')}</label>
            <select
              id="naming-target"
              value={target}
              onChange={(event) => {
                setTarget(event.currentTarget.value);
                setMode('');
              }}
            >
              <option value="">{t('app:naming.choose')}</option>
              {targets.map((each) => (
                <option key={each} value={each}>
                  {thingName(each)}
                </option>
              ))}
            </select>
          </div>
        )}
        {target !== '' && (
          <fieldset>
            <legend>{t('app:naming.mode', { target: thingName(target) })}</legend>
            <div class="choices">
              {modes.map((each) => (
                <label key={each} class="choice">
                  <input type="radio" name="mode" checked={mode === each} onChange={() => setMode(each)} />
                  {modeName(each)}
                </label>
              ))}
            </div>
          </fieldset>
        )}
        <fieldset>
          <legend>{t('app:naming.evidence')}</legend>
          {readings.length === 0 ? (
            <p>{t('app:naming.noReadings')}</p>
          ) : (
            <ul class="evidence">
              {readings.map((told) => (
                <li key={told.step.number}>
                  <label class="choice">
                    <input
                      type="checkbox"
                      checked={evidence.includes(told.step.number)}
                      disabled={evidence.length >= MOST_EVIDENCE && !evidence.includes(told.step.number)}
                      onChange={(event) => tick(told.step.number, event.currentTarget.checked)}
                    />
                    <span>
                      {t('app:naming.reading', {
                        step: told.step.number,
                        what: readingWords(told),
                        place: placeName(told.step.place),
                      })}{' '}
                      <b>{told.step.reading !== undefined && readingText(told.step.reading)}</b>
                    </span>
                  </label>
                </li>
              ))}
            </ul>
          )}
        </fieldset>
        <button type="submit" class="button act" disabled={!ready}>
          {ready ? t('app:naming.confirm', { target: thingName(target), mode: modeName(mode) }) : t('app:naming.incomplete')}
        </button>
      </form>
    </Dialog>
  );
}
