import type { ComponentChildren } from 'preact';
import type { Evidence, ServiceReport, Setting } from '../../score/report.ts';
import { noticedTexts, readingWords } from '../step-words.ts';
import { Plates } from '../ticket-text.tsx';
import { siteOf } from '../ticket-words.ts';
import { clock, complaintText, listed, modeName, namingText, positionName, readingText, signText, t, thingName } from '../words.ts';
import type { Reported } from './use-report.ts';

type Sheet = Omit<Reported, 'number' | 'words'>;

interface Props {
  readonly reported: Sheet;
}

/** The report itself, as it lies on the table or comes out of the printer; its trainee's own words are put in as `children`. */
export function ReportSheet({ reported, children }: Props & { readonly children: ComponentChildren }) {
  const { ticket, rig, report, name } = reported;
  return (
    <>
      <dl class="ticket-facts report-facts">
        <Fact name={t('app:ticket.site')}>{siteOf(ticket.id, ticket.told)}</Fact>
        <Fact name={t('app:ticket.system')}>{t(`rig:name.${ticket.rig}`)}</Fact>
        <Fact name={t('app:ticket.weather')}>
          {t('app:ticket.outside', { temperature: positionName(ticket.weather.outdoorFahrenheit ?? rig.outdoorFahrenheit) })}
        </Fact>
        <Fact name={t('report:time')}>{t('app:debrief.inMinutes', { count: Math.max(1, Math.round(report.seconds / 60)) })}</Fact>
      </dl>
      <section aria-labelledby="report-complaint">
        <h2 id="report-complaint">{t('report:complaint')}</h2>
        <blockquote>{complaintText(ticket)}</blockquote>
      </section>
      <section aria-labelledby="report-plates">
        <h2 id="report-plates">{t('app:ticket.plates')}</h2>
        <Plates rig={rig} />
      </section>
      <Found named={report.named} />
      <Readings reported={reported} />
      <section aria-labelledby="report-done">
        <h2 id="report-done">{t('report:done.title')}</h2>
        {report.replaced.length === 0 ? (
          <p>{t('report:done.none')}</p>
        ) : (
          <ul>
            {report.replaced.map((target, index) => (
              <li key={`${index} ${target}`}>{thingName(target)}</li>
            ))}
          </ul>
        )}
      </section>
      <Proved report={report} />
      <SafeWork report={report} />
      {children}
      <dl class="report-sign">
        <Fact name={t('report:sign.name')}>{name}</Fact>
        <Fact name={t('report:sign.signature')} />
        <Fact name={t('report:sign.date')} />
      </dl>
    </>
  );
}

function Fact({ name, children }: { readonly name: string; readonly children?: ComponentChildren }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{children}</dd>
    </div>
  );
}

function Found({ named }: Pick<ServiceReport, 'named'>) {
  return (
    <section aria-labelledby="report-found">
      <h2 id="report-found">{t('report:found.title')}</h2>
      {named === undefined ? (
        <p>{t('report:found.none')}</p>
      ) : (
        <dl class="ticket-facts">
          <Fact name={t('report:found.section')}>{t(`app:section.${named.section}`)}</Fact>
          <Fact name={t('report:found.target')}>{thingName(named.target)}</Fact>
          <Fact name={t('report:found.mode')}>{modeName(named.mode)}</Fact>
          {named.also && <Fact name={t('report:found.second')}>{namingText(named.also)}</Fact>}
        </dl>
      )}
    </section>
  );
}

/** Controls of the thermostat as they stood, in a row. */
function settingsText(settings: readonly Setting[]): string {
  return listed(
    settings.map(({ control, value }) =>
      t('report:setting', { control: t(`parts:control.${control}`), value: positionName(value) }),
    ),
  );
}

function thermostatText({ settings, body }: Evidence): string {
  const stood = settingsText(settings);
  return body === undefined || body === 'seated' ? stood : `${stood}; ${t(`report:body.${body}`)}`;
}

function Readings({ reported: { report, told, view } }: Props) {
  const rows = report.evidence.flatMap((each) => {
    const step = told[each.step.number - 1];
    return step === undefined ? [] : [{ ...each, told: step }];
  });
  const readings = rows.flatMap((row) =>
    row.step.reading && row.told.measured !== '' ? [{ ...row, reading: row.step.reading }] : [],
  );
  const noticed = rows.flatMap(({ step, told: { done } }) => {
    const found = noticedTexts(view, step);
    return found.length === 0 ? [] : [{ number: step.number, done, found }];
  });
  return (
    <section aria-labelledby="report-evidence">
      <h2 id="report-evidence">{t('report:evidence.title')}</h2>
      {readings.length === 0 ? (
        <p>{t('report:evidence.none')}</p>
      ) : (
        <table class="report-readings">
          <thead>
            <tr>
              <th scope="col">{t('report:evidence.leads')}</th>
              <th scope="col">{t('report:evidence.fn')}</th>
              <th scope="col">{t('report:evidence.value')}</th>
              <th scope="col">{t('report:evidence.thermostat')}</th>
            </tr>
          </thead>
          <tbody>
            {readings.map((row) => (
              <tr key={row.step.number}>
                <th scope="row">{readingWords(row.told)}</th>
                <td>{t(`meter:fn.${row.step.fn}`)}</td>
                <td class="report-value">{readingText(row.reading)}</td>
                <td>{thermostatText(row)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {noticed.length > 0 && (
        <>
          <h3>{t('report:evidence.seen')}</h3>
          <ul>
            {noticed.map(({ number, done, found }) => (
              <li key={number}>{t('action:on', { thing: done, words: listed(found) })}</li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}

function Proved({ report: { proof } }: { readonly report: ServiceReport }) {
  const call = settingsText(proof.call);
  return (
    <section aria-labelledby="report-proof">
      <h2 id="report-proof">{t('report:proof.title')}</h2>
      {call !== '' && <p>{t(proof.proved ? 'report:proof.call' : 'report:proof.left', { call })}</p>}
      {!proof.proved && <p>{t('report:proof.unseen')}</p>}
      {proof.witnessed.length > 0 && (
        <>
          <p>{t(proof.proved ? 'report:proof.seen' : 'report:proof.partly')}</p>
          <ul>
            {proof.witnessed.map(({ part, sign, is }) => (
              <li key={`${part} ${sign}`}>{t('app:notice', { part: thingName(part), words: signText(sign, is) })}</li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}

function SafeWork({ report: { power, covers, back } }: { readonly report: ServiceReport }) {
  const names = (closed: boolean) => covers.filter((each) => each.closed === closed).map((each) => t(`rig:cover.${each.cover}`));
  const [shut, open] = [names(true), names(false)];
  const notes = [
    ...power.map(({ part, off, on }) =>
      on === undefined
        ? t('report:safe.leftOff', { part: thingName(part), off: clock(off) })
        : t('report:safe.off', { part: thingName(part), off: clock(off), on: clock(on) }),
    ),
    ...(shut.length > 0 ? [t('report:safe.shut', { covers: listed(shut) })] : []),
    ...(open.length > 0 ? [t('report:safe.open', { covers: listed(open) })] : []),
    ...(['jumpers', 'bypasses', 'apart'] as const).flatMap((what) =>
      back[what] === undefined ? [] : [t(`report:safe.${what}.${back[what] ? 'back' : 'left'}`)],
    ),
  ];
  return (
    <section aria-labelledby="report-safe">
      <h2 id="report-safe">{t('report:safe.title')}</h2>
      {notes.length === 0 ? (
        <p>{t('report:safe.none')}</p>
      ) : (
        <ul>
          {notes.map((note) => (
            <li key={note}>{note}</li>
          ))}
        </ul>
      )}
      {power.length > 0 && <p class="quiet">{t('report:safe.clock')}</p>}
    </section>
  );
}
