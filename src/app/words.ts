/** Keys and values from the rooms below, put into words: names of points and parts, steps, readings, times. */
import i18next from 'i18next';
import type { Job } from '../attempt/job.ts';
import type { Refusal } from '../attempt/kind.ts';
import type { BenchView, PartView, TerminalView } from '../attempt/view.ts';
import type { MeterFunction } from '../meter/functions.ts';
import type { Reading } from '../meter/read.ts';
import type { Point } from '../rig/points.ts';
import type { Ticket } from '../scenario/ticket.ts';
import { wordsIdOf } from './guests.ts';
import { numberLocale } from './number-locale.ts';
import { bareDegrees, degreeStep, temperature } from './units.ts';

export type Values = Readonly<Record<string, unknown>>;

/** The words under a key (`namespace:path`), with values filled in. */
export function t(key: string, values: Values = {}): string {
  return i18next.t(key, values);
}

export function hasWords(key: string): boolean {
  return i18next.exists(key);
}

export function number(value: number, digits = 0): string {
  return new Intl.NumberFormat(numberLocale(), { minimumFractionDigits: digits, maximumFractionDigits: digits }).format(value);
}

/** Time on the job as a clock: hours, minutes, seconds. */
export function clock(seconds: number): string {
  const whole = Math.round(seconds);
  const two = (value: number) => String(value).padStart(2, '0');
  return `${two(Math.floor(whole / 3600))}:${two(Math.floor(whole / 60) % 60)}:${two(whole % 60)}`;
}

/** A span of time in the trade's short form: "15 s", "5 min", "2 min 30 s". */
export function span(seconds: number): string {
  const whole = Math.round(seconds);
  const minutes = Math.floor(whole / 60);
  const rest = whole % 60;
  if (minutes === 0) return t('app:span.seconds', { seconds: rest });
  if (rest === 0) return t('app:span.minutes', { minutes });
  return t('app:span.both', { minutes, seconds: rest });
}

export const partName = (id: string): string => t(`rig:part.${id}`);
export const placeName = (id: string): string => t(`rig:place.${id}`);
export const wireName = (id: string): string => t(`rig:wire.${id}`);

/** A failure mode in words; `shortTo:other` and its like name a second wire. */
export function modeName(mode: string): string {
  const at = mode.indexOf(':');
  if (at < 0) return t(`parts:mode.${mode}`);
  const [base, other] = [mode.slice(0, at), mode.slice(at + 1)];
  return t(`parts:mode.${base}`, { other: hasWords(`rig:wire.${other}`) ? wireName(other) : other });
}

/** A part's, wire's or cable's name, whichever the id belongs to. */
export function thingName(id: string): string {
  for (const group of ['part', 'wire', 'cable']) {
    const key = `rig:${group}.${id}`;
    if (hasWords(key)) return t(key);
  }
  return id;
}

/** A fault as it is named, and the second one of a pair with it. */
export function namingText(naming: {
  readonly target: string;
  readonly mode: string;
  readonly also?: { readonly target: string; readonly mode: string } | undefined;
}): string {
  const words = t('app:fault.one', { target: thingName(naming.target), mode: modeName(naming.mode) });
  return naming.also === undefined ? words : t('app:fault.pair', { first: words, second: namingText(naming.also) });
}

/** A share of all, in whole per cent. */
export function percent(share: number): string {
  return new Intl.NumberFormat(numberLocale(), { style: 'percent', maximumFractionDigits: 0 }).format(share);
}

/** Several things in one sentence, as the language strings them together. */
export function listed(words: readonly string[]): string {
  return new Intl.ListFormat(i18next.language, { type: 'conjunction' }).format(words);
}

/** What is printed at a terminal, or where an unmarked one sits as the trainee sees it (a body turned over is mirrored). */
export function terminalName(part: PartView, terminal: TerminalView): string {
  if (terminal.label !== '') {
    // Two that have the same letters printed are told apart by their order.
    const same = part.terminals.filter((each) => each.label === terminal.label);
    return same.length === 1 ? terminal.label : `${terminal.label} (${same.indexOf(terminal) + 1})`;
  }
  // On the mat each pin has a pigtail with its letter on a tag.
  if (part.body === 'mat') return terminal.id;
  if (part.terminals.length === 2) return t(terminal === part.terminals[0] ? 'app:terminal.first' : 'app:terminal.second');
  // Of a fixed part with more, what it is says more than its place: a breaker's line and load stand above each other.
  const own = `app:terminal.named.${terminal.id}`;
  if (part.body === undefined && hasWords(own)) return t(own);
  // Contacts of cells, marked + and −, are not in the row of pins.
  const row = part.terminals.filter((each) => !/^[+−]$/.test(each.label));
  const index = row.indexOf(terminal);
  return t('app:terminal.unmarked', { place: part.body === 'turned' ? row.length - index : index + 1 });
}

interface Spot {
  readonly terminal: string;
  readonly part: string;
}

/** A point's own name and its part's. */
export function spotOf(view: BenchView, point: Point): Spot {
  const at = point.indexOf('@');
  if (at >= 0) return { terminal: t('app:terminal.bareEnd'), part: wireName(point.slice(0, at)) };
  const dot = point.indexOf('.');
  const part = view.parts.find((each) => each.id === point.slice(0, dot));
  const terminal = part?.terminals.find((each) => each.point === point);
  if (part === undefined || terminal === undefined) return { terminal: point.slice(dot + 1), part: thingName(point.slice(0, dot)) };
  return { terminal: terminalName(part, terminal), part: partName(part.id) };
}

/** "R on the sub-base". */
export function pointName(view: BenchView, point: Point): string {
  return t('app:point.full', { ...spotOf(view, point) });
}

/** "R to C, sub-base", or both parts named where they differ. */
export function pairName(view: BenchView, red: Point, black: Point): string {
  const from = spotOf(view, red);
  const to = spotOf(view, black);
  return from.part === to.part
    ? t('app:point.pair', { from: from.terminal, to: to.terminal, part: from.part })
    : t('app:point.pairApart', { from: from.terminal, fromPart: from.part, to: to.terminal, toPart: to.part });
}

const SUFFIX: Readonly<Record<MeterFunction, string>> = {
  off: '',
  voltsAc: 'V~',
  voltsDc: 'V DC',
  voltsLoaded: 'V~ Lo-Z',
  ohms: 'Ω',
  tone: 'Ω',
  ampsAc: 'A~',
  microampsDc: 'µA',
  capacitance: 'F',
};

/** Unit as it stands beside a reading, prefix and all. Symbols of IEC 80000-6, the same in every language. */
export function unitText(reading: Reading): string {
  return `${reading.prefix}${SUFFIX[reading.fn]}`;
}

/** The digits, or the display's word for having none. */
export function digitsText(reading: Reading): string {
  if (reading.kind === 'live') return t('meter:display.live');
  if (reading.kind === 'fuseOpen') return t('meter:display.fuseOpen');
  if (reading.kind === 'blank') return t('meter:display.blank');
  return reading.text;
}

/** The digits as the language writes them. The meter's own display has a point everywhere, as instruments do. */
function digitsInProse(reading: Reading): string {
  const decimal = new Intl.NumberFormat(numberLocale()).formatToParts(0.5).find((part) => part.type === 'decimal')?.value ?? '.';
  return reading.text.replace('.', decimal);
}

/** A reading as a notebook has it: "26.84 V~", "OL", "live". */
export function readingText(reading: Reading): string {
  return reading.kind === 'number' ? `${digitsInProse(reading)} ${unitText(reading)}` : digitsText(reading);
}

/** A reading as it is spoken: function, value, and whether the tone sounds. */
export function readingSpoken(reading: Reading): string {
  const value =
    reading.kind === 'number'
      ? t('meter:spoken.number', {
          digits: digitsInProse(reading),
          unit: t(`meter:spokenUnit.${reading.prefix === '' ? 'plain' : reading.prefix}`, {
            unit: t(`meter:unitWord.${reading.fn}`),
          }),
        })
      : t(`meter:spoken.${reading.kind}`);
  return reading.tone ? t('meter:spoken.withTone', { value }) : value;
}

/** A control's position or value, in words. */
export function positionName(value: string | number): string {
  return typeof value === 'number' ? temperature(value) : t(`parts:position.${value}`);
}

/** Signs whose number is a temperature, °F. */
const DEGREE_SIGNS: ReadonlySet<string> = new Set(['set', 'room', 'dial', 'supply', 'returnAir', 'supplyAir', 'gauge']);

/** A sign or a change of one, in words; empty when the sign has none (a face shows it, nobody would say it). */
export function signText(key: string, value: number | string): string {
  const exact = `parts:sign.${key}.${value}`;
  if (hasWords(exact)) return t(exact);
  const general = `parts:sign.${key}.value`;
  if (!hasWords(general)) return '';
  if (typeof value !== 'number') return t(general, { value });
  return t(general, { value: DEGREE_SIGNS.has(key) ? temperature(value) : number(value) });
}

/** Why an action was refused. The only settings that there are, are temperatures. */
export function refusalText(refusal: Refusal): string {
  const { from, to } = refusal.values;
  if (refusal.code === 'outOfRange')
    return t('refusal:outOfRange', { from: temperature(Number(from)), to: temperature(Number(to)) });
  if (refusal.code === 'betweenSteps') return t('refusal:betweenSteps', { step: degreeStep() });
  return t(`refusal:${refusal.code}`, refusal.values);
}

type Complained = Pick<Ticket, 'id' | 'told'> & { readonly complaint: Pick<Job['complaint'], 'history'> };

/** The customer's complaint. What they say that they set stands in the ticket's history, and is said on the reader's scale. */
export function complaintText(ticket: Complained): string {
  const set = ticket.complaint.history.flatMap((action) =>
    action.name === 'set' ? [[action.control, bareDegrees(action.value)] as const] : [],
  );
  if (ticket.told === undefined) {
    const key = `ticket:${wordsIdOf(ticket.id)}.complaint`;
    return hasWords(key) ? t(key, Object.fromEntries(set)) : t('lab:own.complaint');
  }
  const { symptom, heard, voice } = ticket.told;
  return `${t(`ticket:made.say.${symptom}.${voice}`)} ${t(`ticket:made.heard.${heard}`)}`;
}

/** The words that the drawn bench asks for, with its degrees on the reader's scale. */
export function stageWords(key: string, values: Values = {}): string {
  if (key === 'stage:handle.up' || key === 'stage:handle.down') return t(key, { ...values, step: degreeStep() });
  const degrees = key === 'stage:thermostat.degrees' || key === 'stage:thermostat.set' || key === 'stage:water';
  return t(key, degrees ? { ...values, value: bareDegrees(Number(values.value)) } : values);
}
