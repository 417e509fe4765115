import { writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import i18next from 'i18next';
import { csvOf, longTable } from '../classroom/gradebookCsv.ts';
import { PACKAGE_KINDS } from '../classroom/lms/manifests.ts';
import { builtApp } from '../host/app-files.ts';
import { dataError, isDataError } from '../rig/errors.ts';
import { GRADES } from '../scenario/grade.ts';
import type { Measured } from '../scenario/measure.ts';
import { SKILLS } from '../scenario/skills.ts';
import type { Naming } from '../suspects/hypotheses.ts';
import { separableFaults } from '../suspects/separable.ts';
import { checkFiles } from './check.ts';
import { drill, itemText, kindsText } from './drill.ts';
import { rigById, shippedLibrary, wordsOf } from './files.ts';
import { generate, type Order, writeTickets } from './generate.ts';
import { exitCodeOf, gradeFolder } from './grade.ts';
import { csvWords, gradebookText } from './gradeText.ts';
import { netlist } from './netlist.ts';
import { packageFile } from './package.ts';
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

const figure = (value: number, digits: number) =>
  new Intl.NumberFormat(i18next.language, { maximumFractionDigits: digits }).format(value);

const listed = (namings: readonly Naming[]) => namings.map(({ target, mode }) => `${target}:${mode}`).join(', ');

/** A ticket and what solving it showed, for people. */
function measuredText(name: string, { seconds, bitsPerStep, grade, suspects, total, alike, skills }: Measured): string {
  const values = { name, minutes: figure(seconds / 60, 1), bits: figure(bitsPerStep, 2), suspects, total };
  return [
    i18next.t('cli:measured', { ...values, grade: i18next.t(`app:grade.${grade}`) }),
    i18next.t('cli:skills', { skills: skills.map((skill) => i18next.t(`keeping:skill.${skill}`)).join(', ') }),
    ...(alike.length > 0 ? [i18next.t('cli:alike', { faults: listed(alike) })] : []),
  ].join('\n');
}

/** A whole number from 1 up. @throws DataError where it is none, or more than the most */
function wholeOf(value: string, path: string, most: number): number {
  const number = Number(value);
  if (!Number.isInteger(number) || number < 1) throw dataError('data.tooSmall', path, { limit: 1 });
  if (number > most) throw dataError('data.tooBig', path, { limit: most });
  return number;
}

/** What is asked of `generate`. @throws DataError where there is nothing of that name */
function orderOf(values: { rig?: string; skill?: string; grade?: string; count?: string; seed?: string }): Order {
  const library = shippedLibrary();
  const one = <T extends string>(options: readonly T[], value: string | undefined, path: string): T | undefined => {
    const found = options.find((each) => each === value);
    if (value !== undefined && found === undefined) throw dataError('data.value', path, { options: options.join(', ') });
    return found;
  };
  return {
    rigs: values.rig === undefined ? [...library.rigs.values()] : [rigById(library, values.rig)],
    skill: one(SKILLS, values.skill, '--skill'),
    grade: one(GRADES, values.grade, '--grade'),
    count: wholeOf(values.count ?? '10', '--count', 10_000),
    seed: wholeOf(values.seed ?? '1', '--seed', 1_000_000),
  };
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
      faults: { type: 'string' },
      quick: { type: 'boolean' },
      rig: { type: 'string' },
      skill: { type: 'string' },
      grade: { type: 'string' },
      count: { type: 'string' },
      seed: { type: 'string' },
      out: { type: 'string' },
      assignment: { type: 'string' },
      for: { type: 'string' },
      pass: { type: 'string' },
      /** A built app, in place of the one that is built here. */
      app: { type: 'string' },
      attempt: { type: 'string' },
      overrules: { type: 'string' },
      csv: { type: 'string' },
      list: { type: 'boolean' },
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
  if (command === 'check' && values.faults !== undefined) {
    const { classes, unseen, ...counts } = separableFaults(rigById(shippedLibrary(), values.faults));
    if (values.json) say(JSON.stringify({ ...counts, classes, unseen }, undefined, 2));
    else {
      say(i18next.t('cli:faults', { ...counts, classes: classes.length, unseen: unseen.length }));
      for (const each of classes) say(i18next.t('cli:class', { faults: listed(each) }));
      if (unseen.length > 0) say(i18next.t('cli:unseen', { faults: listed(unseen) }));
    }
    return 0;
  }
  if (command === 'check' && first !== undefined) {
    const results = checkFiles(positionals.slice(1), values.quick !== true);
    for (const { file, error, measured } of results) {
      if (error) say(explain(error));
      else if (measured) say(measuredText(file, measured));
      else say(i18next.t('cli:ok', { file }));
    }
    return results.some(({ error }) => error !== undefined) ? 1 : 0;
  }
  if (command === 'generate') {
    const order = orderOf(values);
    const { made, rejected, seconds } = generate(order);
    if (values.out !== undefined) writeTickets(values.out, made);
    if (values.json) say(JSON.stringify(made, undefined, 2));
    else for (const { ticket, measured } of made) say(measuredText(ticket.id, measured));
    const refused = [...rejected].map(([code, count]) => i18next.t(`cli:rejected.${code}`, { count })).join(', ');
    if (!values.json) {
      say(i18next.t('cli:generated', { count: made.length, wanted: order.count, seconds: figure(seconds, 1) }));
      if (refused !== '') say(i18next.t('cli:refused', { refused }));
    }
    return made.length === order.count ? 0 : 1;
  }
  if (command === 'drill' && (first !== undefined || values.list)) {
    if (first === undefined || values.list) {
      say(kindsText());
      return 0;
    }
    const count = wholeOf(values.count ?? '10', '--count', 100_000);
    const items = drill(first, count, wholeOf(values.seed ?? '1', '--seed', 1_000_000_000));
    if (values.json) say(JSON.stringify(items, undefined, 2));
    else for (const item of items) say(itemText(item));
    return items.length === count ? 0 : 1;
  }
  if (command === 'package' && values.assignment !== undefined && values.for !== undefined && values.out !== undefined) {
    const kind = PACKAGE_KINDS.find((each) => each === values.for);
    if (!kind) throw dataError('data.value', '--for', { options: PACKAGE_KINDS.join(', ') });
    const passAt = values.pass === undefined ? undefined : Number(values.pass);
    if (passAt !== undefined && !(passAt >= 0 && passAt <= 100)) throw dataError('data.tooBig', '--pass', { limit: 100 });
    const app = values.app ?? (await builtApp(() => process.stderr.write(`${i18next.t('host:building')}\n`)));
    const bytes = await packageFile(kind, values.assignment, values.out, { language: i18next.language, passAt, app });
    say(i18next.t('cli:packed', { file: values.out, title: values.assignment, kind, kilobytes: figure(bytes / 1000, 0) }));
    return 0;
  }
  if (command === 'grade' && first !== undefined && values.assignment !== undefined) {
    const { gradebook, broken } = gradeFolder(values.assignment, first, values.overrules, values.attempt);
    if (values.csv !== undefined) writeFileSync(values.csv, csvOf(longTable(gradebook, csvWords(gradebook.assignment))));
    if (values.json) say(JSON.stringify({ gradebook, broken: broken.map(({ error }) => explain(error)) }, undefined, 2));
    else for (const line of [...broken.map(({ error }) => explain(error)), gradebookText(gradebook)]) say(line);
    return exitCodeOf(gradebook, broken);
  }
  say(i18next.t('cli:usage'));
  say(i18next.t('gradebook:cli.usage'));
  return values.help === true ? 0 : 2;
}

try {
  process.exitCode = await run(process.argv.slice(2));
} catch (error) {
  process.stderr.write(`${explain(error)}\n`);
  process.exitCode = 1;
}
