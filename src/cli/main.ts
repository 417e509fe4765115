import { parseArgs } from 'node:util';
import i18next from 'i18next';
import { isDataError } from '../rig/errors.ts';
import { checkFiles } from './check.ts';
import { wordsOf } from './files.ts';
import { netlist } from './netlist.ts';
import { par } from './par.ts';
import { play } from './play.ts';

await speak('en');

/** Every later word is of this language. @throws DataError where it is none of ours */
async function speak(language: string): Promise<void> {
  await i18next.init({ lng: language, resources: { [language]: wordsOf(language) }, interpolation: { escapeValue: false } });
}

const say = (text: string): void => {
  process.stdout.write(`${text}\n`);
};

function explain(error: unknown): string {
  if (isDataError(error)) return i18next.t(`error:${error.code}`, { ...error.values, path: error.path });
  return error instanceof Error ? error.message : String(error);
}

/** Rows of `play` for people: step, minutes, kind, gain, suspects left, and what was done. */
function playText(ticket: string, log: string): string {
  const { steps, debrief } = play(ticket, log);
  const number = (value: number, digits: number) =>
    new Intl.NumberFormat(i18next.language, { minimumFractionDigits: digits, maximumFractionDigits: digits }).format(value);
  const rows = steps.map((step) =>
    [
      String(step.step).padStart(3),
      number(step.seconds / 60, 1).padStart(7),
      i18next.t(`cli:kind.${step.kind}`).padEnd(12),
      number(step.gainBits, 2).padStart(5),
      String(step.left).padStart(4),
      JSON.stringify(step.action),
      step.reading ?? '',
    ].join('  '),
  );
  const items = Object.entries(debrief.items).map(
    ([item, line]) => `${i18next.t(`score:item.${item}`)}: ${number(line.points, 1)} / ${line.of}`,
  );
  return [i18next.t('cli:columns'), ...rows, ...items, i18next.t('cli:total', { total: debrief.total })].join('\n');
}

/** The reference way for people: minutes, suspects left, and the step. */
function parText(ticket: string): string {
  const way = par(ticket);
  const rows = way.actions.map(
    (action, index) => `${String(index + 1).padStart(3)}  ${String(way.left[index] ?? 0).padStart(4)}  ${JSON.stringify(action)}`,
  );
  const minutes = new Intl.NumberFormat(i18next.language, { maximumFractionDigits: 1 }).format(way.seconds / 60);
  return [i18next.t('cli:parColumns'), ...rows, i18next.t('cli:par', { count: way.actions.length, minutes })].join('\n');
}

async function run(args: readonly string[]): Promise<number> {
  const { values, positionals } = parseArgs({
    args: [...args],
    allowPositionals: true,
    options: {
      log: { type: 'string' },
      json: { type: 'boolean' },
      fault: { type: 'string' },
      help: { type: 'boolean' },
      lang: { type: 'string' },
    },
  });
  if (values.lang !== undefined) await speak(values.lang);
  const [command, first] = positionals;
  if (command === 'play' && first !== undefined && values.log !== undefined) {
    if (values.json) {
      const { steps, debrief } = play(first, values.log);
      say(JSON.stringify({ steps, debrief }, undefined, 2));
    } else say(playText(first, values.log));
    return 0;
  }
  if (command === 'par' && first !== undefined) {
    say(values.json ? JSON.stringify(par(first), undefined, 2) : parText(first));
    return 0;
  }
  if (command === 'netlist' && first !== undefined) {
    say(netlist(first, values.fault, values.log));
    return 0;
  }
  if (command === 'check' && first !== undefined) {
    const results = checkFiles(positionals.slice(1));
    for (const { file, error } of results) say(error ? explain(error) : i18next.t('cli:ok', { file }));
    return results.some(({ error }) => error !== undefined) ? 1 : 0;
  }
  say(i18next.t('cli:usage'));
  return values.help === true ? 0 : 2;
}

try {
  process.exitCode = await run(process.argv.slice(2));
} catch (error) {
  process.stderr.write(`${explain(error)}\n`);
  process.exitCode = 1;
}
