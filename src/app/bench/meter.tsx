import type { MeterView } from '../../attempt/view.ts';
import type { MeterFunction } from '../../meter/functions.ts';
import { useMarks } from '../guided/marks.ts';
import { hasKeyboard } from '../has-keyboard.ts';
import type { Bench } from '../use-attempt.ts';
import { digitsText, hasWords, pointName, t, thingName, unitText } from '../words.ts';
import { KeySymbol } from './key-symbol.tsx';
import { type Lead, type Leads, METER_KEYS } from './use-leads.ts';

interface Props {
  readonly bench: Bench;
  readonly leads: Leads;
}

/** The meter: its display, a key for every function, and where its leads and clamp are. */
export function MeterPanel({ bench, leads }: Props) {
  const { meter } = bench.view;
  const marks = useMarks();
  // Where the panel is drawn in, the line at its foot has no room: it stands over the leads as long as one of them is free.
  const begins = leads.held !== undefined || meter.red === undefined || meter.black === undefined;
  const choose = (fn: MeterFunction) => bench.act({ name: 'meter', fn });
  return (
    <section class="meter" aria-label={t('meter:title')}>
      <Display meter={meter} />
      <fieldset class="meter-keys" aria-label={t('meter:keys')}>
        {METER_KEYS.map((fn, index) => (
          <button
            key={fn}
            type="button"
            aria-keyshortcuts={leads.keys ? String(index + 1) : undefined}
            aria-pressed={meter.fn === fn}
            aria-disabled={!meter.tools.includes(fn)}
            data-marked={marks.does({ name: 'meter', fn })}
            onClick={() => choose(fn)}
          >
            <KeySymbol fn={fn} />
            <span>{t(`meter:key.${fn}`)}</span>
          </button>
        ))}
      </fieldset>
      {meter.fn !== 'ampsAc' && begins && <p class="meter-line">{hint(meter, leads)}</p>}
      {meter.fn === 'ampsAc' ? (
        <ClampLine bench={bench} />
      ) : (
        <div class="meter-jacks">
          <Jack bench={bench} leads={leads} lead="red" />
          <Jack bench={bench} leads={leads} lead="black" />
        </div>
      )}
      <div class="meter-foot">
        <button type="button" class="meter-off" aria-pressed={meter.fn === 'off'} onClick={() => choose('off')}>
          {t('meter:key.off')}
        </button>
        <p>{hint(meter, leads)}</p>
      </div>
    </section>
  );
}

function hint(meter: MeterView, leads: Leads): string {
  if (meter.fn === 'ampsAc') return t('meter:hint.clamp');
  if (leads.held !== undefined) return t(`meter:hint.${leads.held}`);
  return leads.keys && hasKeyboard() ? t('meter:hint.pickOrKey') : t('meter:hint.pick');
}

/** The display alone; the dock of small screens shows it too. */
export function Display({ meter }: { readonly meter: MeterView }) {
  const { reading } = meter;
  const corner = reading.tone ? 'meter:tone.on' : meter.fn === 'tone' ? 'meter:tone.off' : '';
  return (
    <div class="display" data-kind={reading.kind} data-tone={reading.tone}>
      <span class="display-fn" title={t(`meter:fn.${meter.fn}`)}>
        {t(`meter:fn.${meter.fn}`)}
      </span>
      <output class="display-digits" data-testid="digits">
        {digitsText(reading)}
      </output>
      <span class="display-corner">
        {reading.tone && <ToneWaves />}
        {corner !== '' && t(corner)}
      </span>
      <span class="display-unit">{reading.kind === 'blank' ? '' : unitText(reading)}</span>
    </div>
  );
}

/** The tone, for eyes. */
function ToneWaves() {
  return (
    <svg class="tone-waves" viewBox="0 0 24 16" aria-hidden="true" focusable="false">
      <circle cx="4" cy="8" r="2.5" />
      <path d="M9 3 Q13 8 9 13 M14 2 Q18 8 14 14 M19 1 Q24 8 19 15" />
    </svg>
  );
}

function Jack({ bench, leads, lead }: Props & { readonly lead: Lead }) {
  const at = bench.view.meter[lead];
  const held = leads.held === lead;
  const marks = useMarks();
  return (
    <div class={`jack jack-${lead}`}>
      <button type="button" aria-pressed={held} data-marked={marks.lead(lead)} onClick={() => leads.pick(held ? undefined : lead)}>
        <span class="jack-hole" aria-hidden="true" />
        <span class="jack-name">{t(`meter:jack.${lead}`)}</span>
      </button>
      {at !== undefined && (
        <button
          type="button"
          class="jack-off"
          aria-label={t(`meter:jack.takeOff.${lead}`)}
          onClick={() => bench.act({ name: 'probe', lead, at: null })}
        >
          {t('meter:jack.off')}
        </button>
      )}
      <p>{held ? t('meter:jack.held') : at === undefined ? t('meter:jack.free') : pointName(bench.view, at)}</p>
    </div>
  );
}

/** The clamp: what is inside, how often, and every conductor that it can go round from here. */
function ClampLine({ bench }: { readonly bench: Bench }) {
  const { view, options } = bench;
  const { clamp, turns } = view.meter;
  const around = options.flatMap((each) =>
    each.name === 'clamp' && each.around !== null && each.turns === 1 ? [each.around] : [],
  );
  return (
    <div class="clamp">
      <label for="clamp-around">{t('meter:clamp.around')}</label>
      <select
        id="clamp-around"
        value={clamp ?? ''}
        onChange={(event) =>
          bench.act({ name: 'clamp', around: event.currentTarget.value === '' ? null : event.currentTarget.value, turns: 1 })
        }
      >
        <option value="">{t('meter:clamp.nothing')}</option>
        {clamp !== undefined && !around.includes(clamp) && <option value={clamp}>{thingName(clamp)}</option>}
        {around.map((each) => (
          <option key={each} value={each}>
            {hasWords(`rig:cable.${each}`) ? t('meter:clamp.cable', { cable: thingName(each) }) : thingName(each)}
          </option>
        ))}
      </select>
      {clamp !== undefined && (
        <>
          <label for="clamp-turns">{t('meter:clamp.turns')}</label>
          <select
            id="clamp-turns"
            value={turns}
            onChange={(event) => bench.act({ name: 'clamp', around: clamp, turns: Number(event.currentTarget.value) })}
          >
            {Array.from({ length: 10 }, (_, index) => index + 1).map((each) => (
              <option key={each} value={each}>
                {each}
              </option>
            ))}
          </select>
        </>
      )}
    </div>
  );
}
