/** Keys and values from the rooms below, put into words: names of points and parts, steps, readings, times. */
import i18next from 'i18next';
import type { Action } from '../attempt/actions.ts';
import type { BenchView, Notice, PartView, StepView, TerminalView } from '../attempt/view.ts';
import type { MeterFunction } from '../meter/functions.ts';
import type { Reading } from '../meter/read.ts';
import type { Point } from '../rig/points.ts';

export type Values = Readonly<Record<string, unknown>>;

/** The words under a key (`namespace:path`), with values filled in. */
export function t(key: string, values: Values = {}): string {
  return i18next.t(key, values);
}

export function hasWords(key: string): boolean {
  return i18next.exists(key);
}

export function number(value: number, digits = 0): string {
  return new Intl.NumberFormat(i18next.language, { minimumFractionDigits: digits, maximumFractionDigits: digits }).format(value);
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
  return at < 0 ? t(`parts:mode.${mode}`) : t(`parts:mode.${mode.slice(0, at)}`, { other: wireName(mode.slice(at + 1)) });
}

/** A part's, wire's or cable's name, whichever the id belongs to. */
export function thingName(id: string): string {
  for (const group of ['part', 'wire', 'cable']) {
    const key = `rig:${group}.${id}`;
    if (hasWords(key)) return t(key);
  }
  return id;
}

/** What is printed at a terminal, or where an unmarked one sits as the trainee sees it (a body turned over is mirrored). */
export function terminalName(part: PartView, terminal: TerminalView): string {
  if (terminal.label !== '') return terminal.label;
  // On the mat each pin has a pigtail with its letter on a tag.
  if (part.body === 'mat') return terminal.id;
  if (part.terminals.length === 2) return t(terminal === part.terminals[0] ? 'app:terminal.first' : 'app:terminal.second');
  // Contacts of cells, marked + and −, are not in the row of pins.
  const row = part.terminals.filter((each) => !/^[+−]$/.test(each.label));
  const index = row.indexOf(terminal);
  return t('app:terminal.unmarked', { place: part.body === 'turned' ? row.length - index : index + 1 });
}

interface Spot {
  readonly terminal: string;
  readonly part: string;
}

function spotOf(view: BenchView, point: Point): Spot {
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

/** A reading as a notebook has it: "26.84 V~", "OL", "live". */
export function readingText(reading: Reading): string {
  return reading.kind === 'number' ? `${digitsText(reading)} ${unitText(reading)}` : digitsText(reading);
}

/** A reading as it is spoken: function, value, and whether the tone sounds. */
export function readingSpoken(reading: Reading): string {
  const value =
    reading.kind === 'number'
      ? t('meter:spoken.number', {
          digits: reading.text,
          unit: t(`meter:spokenUnit.${reading.prefix === '' ? 'plain' : reading.prefix}`, {
            unit: t(`meter:unitWord.${reading.fn}`),
          }),
        })
      : t(`meter:spoken.${reading.kind}`);
  return reading.tone ? t('meter:spoken.withTone', { value }) : value;
}

/** What a step measured, for the notebook: the pair of points or the wire in the clamp. */
export function measuredName(view: BenchView, step: StepView): string {
  if (step.fn === 'ampsAc') {
    const around = clampAt(view, step.number);
    return around === undefined ? t('meter:fn.ampsAc') : t('app:point.clamped', { wire: thingName(around) });
  }
  if (step.red === undefined || step.black === undefined) return t('app:point.leadsFree');
  return pairName(view, step.red, step.black);
}

/** Whether a step's reading speaks for itself: the meter was moved, and nothing else. */
function isMeterMove(step: StepView): boolean {
  return step.action.name === 'probe' || step.action.name === 'meter' || step.action.name === 'clamp';
}

/** What a reading is of: what was measured, and what had been done to the circuit in that step. */
export function readingWords(view: BenchView, step: StepView): string {
  const measured = measuredName(view, step);
  return isMeterMove(step) ? measured : t('app:point.after', { measured, done: doneText(view, step.action) });
}

/** A step in few words: what was measured and read when the meter was moved, else what was done. */
export function stepWords(view: BenchView, step: StepView): string {
  if (!isMeterMove(step) || step.reading === undefined || step.reading.kind === 'blank') return doneText(view, step.action);
  return `${measuredName(view, step)}: ${readingText(step.reading)}`;
}

function clampAt(view: BenchView, number: number): string | undefined {
  for (let index = number - 1; index >= 0; index -= 1) {
    const action = view.steps[index]?.action;
    if (action?.name === 'clamp') return action.around ?? undefined;
  }
  return undefined;
}

function wireEndPlace(view: BenchView, wire: string, end: 'from' | 'to'): string {
  const home = view.wires.find((each) => each.id === wire)?.ends[end].home;
  return home === undefined ? '' : pointName(view, home);
}

/** A control's position or value, in words. */
export function positionName(value: string | number): string {
  return typeof value === 'number' ? t('app:fahrenheit', { value: number(value) }) : t(`parts:position.${value}`);
}

/** Key under `action:` and its values; shared by what was done (`action:`) and what can be done (`action:do.`). */
function actionWords(view: BenchView, action: Action): { readonly key: string; readonly values: Values } {
  switch (action.name) {
    case 'walk':
      return { key: 'walk', values: { place: placeName(action.to) } };
    case 'cover':
      return { key: action.open ? 'coverOpen' : 'coverShut', values: { cover: t(`rig:cover.${action.cover}`) } };
    case 'operate':
      return {
        key: 'operate',
        values: {
          part: partName(action.part),
          control: t(`parts:control.${action.control}`),
          position: positionName(action.position),
        },
      };
    case 'set':
      return {
        key: 'set',
        values: { part: partName(action.part), control: t(`parts:control.${action.control}`), value: positionName(action.value) },
      };
    case 'pull':
    case 'turn':
    case 'mat':
    case 'seat':
    case 'unplug':
    case 'plug':
    case 'look':
      return { key: action.name, values: { part: partName(action.part) } };
    case 'meter':
      return { key: action.fn === 'off' ? 'meterOff' : 'meter', values: { fn: t(`meter:fn.${action.fn}`) } };
    case 'probe':
      return action.at === null
        ? { key: `${action.lead}Off`, values: {} }
        : { key: action.lead, values: { point: pointName(view, action.at) } };
    case 'clamp':
      if (action.around === null) return { key: 'clampOff', values: {} };
      return { key: action.turns > 1 ? 'clampTurns' : 'clamp', values: { wire: thingName(action.around), turns: action.turns } };
    case 'jumper':
      return {
        key: action.on ? 'jumperOn' : 'jumperOff',
        values: { from: pointName(view, action.from), to: pointName(view, action.to) },
      };
    case 'lift':
    case 'land':
      return { key: action.name, values: { wire: wireName(action.wire), point: wireEndPlace(view, action.wire, action.end) } };
    case 'tug':
      return { key: 'tug', values: { wire: wireName(action.wire) } };
    case 'wait':
      return { key: 'wait', values: { span: span(action.seconds) } };
    case 'watch':
      return { key: 'watch', values: { span: span(action.seconds) } };
    case 'replace':
      return { key: 'replace', values: { target: thingName(action.target) } };
    case 'hint':
      return { key: 'hint', values: { depth: t(`action:depth.${action.depth}`) } };
    case 'name':
      return { key: 'name', values: { target: thingName(action.target), mode: modeName(action.mode) } };
    case 'close':
      return { key: 'close', values: {} };
  }
}

/** What was done, short and in the past tense. */
export function doneText(view: BenchView, action: Action): string {
  const { key, values } = actionWords(view, action);
  return t(`action:${key}`, values);
}

/** What a button does, in the imperative. */
export function doText(view: BenchView, action: Action): string {
  const { key, values } = actionWords(view, action);
  return t(`action:do.${key}`, values);
}

/** A sign or a change of one, in words; empty when the sign has none (a face shows it, nobody would say it). */
export function signText(key: string, value: number | string): string {
  const exact = `parts:sign.${key}.${value}`;
  if (hasWords(exact)) return t(exact);
  const general = `parts:sign.${key}.value`;
  return hasWords(general) ? t(general, { value: typeof value === 'number' ? number(value) : value }) : '';
}

/** A change that was seen or heard, in words; empty when it has none. */
export function noticeText(view: BenchView, notice: Notice): string {
  const landed = notice.key.startsWith('landed.') && typeof notice.value === 'string';
  const words = landed ? landedText(view, String(notice.value)) : signText(notice.key, notice.value);
  return words === '' ? '' : t('app:notice', { part: thingName(notice.part), words });
}

function landedText(view: BenchView, at: Point): string {
  return at.includes('@') ? t('app:landedHome') : t('app:landedOn', { point: pointName(view, at) });
}

/** What was noticed in a step, in words, each thing once and as it stood in the end. */
export function noticedTexts(view: BenchView, step: StepView): readonly string[] {
  const last = new Map(step.noticed.map((each) => [`${each.part}.${each.key}`, each]));
  return [...last.values()].map((each) => noticeText(view, each)).filter((words) => words !== '');
}

/** What a step brought, as it is announced: what was done, what was noticed, what the meter says. */
export function stepSpoken(view: BenchView, step: StepView): string {
  const noticed = noticedTexts(view, step);
  const reading = step.reading === undefined ? [] : [t('app:meterSays', { reading: readingSpoken(step.reading) })];
  return [doneText(view, step.action), ...noticed, ...reading].join('. ');
}
