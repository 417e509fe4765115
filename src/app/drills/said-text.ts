import i18next from 'i18next';
import type { HistoryAct } from '../../attempt/job.ts';
import type { BenchView } from '../../attempt/view.ts';
import type { Sentence } from '../../drills/item.ts';
import type { Said } from '../../drills/said.ts';
import type { Point } from '../../rig/points.ts';
import { nextText } from '../action-words.ts';
import { noticeText } from '../step-words.ts';
import { length, ohmsByLength } from '../units.ts';
import {
  listed,
  namingText,
  number,
  partName,
  placeName,
  pointName,
  positionName,
  readingText,
  spotOf,
  t,
  wireName,
} from '../words.ts';

// keys: drill:kind.*
// keys: drill:misconception.*
// keys: drill:skill.*

/** What a drill says, in words. @param view the drill's circuit as it stands after the scene's steps */
export function saidText(view: BenchView, said: Said): string {
  switch (said.is) {
    case 'reading':
      return said.reading.kind === 'live' ? t('drill:said.live', { shown: readingText(said.reading) }) : readingText(said.reading);
    case 'function':
      return t(`meter:fn.${said.fn}`);
    case 'leads':
      return leadsText(view, said);
    case 'point':
      return pointName(view, said.point);
    case 'points':
      return said.points.length === 0 ? t('drill:said.none') : pointsText(view, said.points);
    case 'part':
      return partName(said.part);
    case 'parts':
      return said.parts.length === 0 ? t('drill:said.noLoad') : listed(said.parts.map(partName));
    case 'place':
      return placeName(said.place);
    case 'wire':
      return wireName(said.wire);
    case 'acts':
      return actsText(said.acts);
    case 'fault':
      return said.naming ? namingText(said.naming) : t('drill:said.sound');
    case 'faults':
      return said.namings.length === 0 ? t('drill:said.none') : apart(said.namings.map(namingText));
    case 'notice':
      return noticeText(view, said.notice);
    case 'actions':
      return stepsText(view, said)?.join(' → ') ?? '';
    case 'quantity':
      if (said.unit === 'ft') return length(said.value, 1);
      if (said.unit === 'Ω/kft') return ohmsByLength(said.value);
      return t('drill:said.quantity', { value: number(said.value, decimalsOf(said.value)), unit: said.unit });
    case 'number':
      return number(said.value, Number.isInteger(said.value) ? 0 : 1);
  }
}

/**
 * A view in whose words the pins of a body are called by the screws that they meet, as in a diagram. On a body that is turned over they
 * keep their places: which is which there is a question of its own.
 */
export function letteredView(view: BenchView): BenchView {
  const parts = view.parts.map((part) => {
    if (part.body === undefined || part.body === 'turned') return part;
    const base = view.parts.find(({ id }) => id === part.base);
    const terminals = part.terminals.map((terminal) => {
      const screw = base?.terminals.find(({ id }) => id === terminal.id)?.label;
      return terminal.label === '' ? { ...terminal, label: screw === undefined || screw === '' ? terminal.id : screw } : terminal;
    });
    return { ...part, terminals };
  });
  return { ...view, parts };
}

/** What is done one after another, each step by itself; nothing where no steps are told. */
export const stepsText = (view: BenchView, said: Said): readonly string[] | undefined =>
  said.is === 'actions' ? said.actions.map((action) => capitals(nextText(view, action))) : undefined;

/** Things whose names have commas of their own. */
const apart = (texts: readonly string[]): string => texts.join(t('drill:said.apart'));

/** A function and where its leads are; on one part its name is told once. */
function leadsText(view: BenchView, { fn, red, black }: Extract<Said, { is: 'leads' }>): string {
  const [to, from] = [spotOf(view, red), spotOf(view, black)];
  const values = { fn: t(`meter:fn.${fn}`) };
  return to.part === from.part
    ? t('drill:said.leadsOn', { ...values, red: to.terminal, black: from.terminal, part: to.part })
    : t('drill:said.leads', { ...values, red: pointName(view, red), black: pointName(view, black) });
}

/** Points by part, each with its name once: a point's own name has a comma, so parts are kept apart by more. */
function pointsText(view: BenchView, points: readonly Point[]): string {
  const byPart = new Map<string, string[]>();
  for (const { part, terminal } of points.map((point) => spotOf(view, point)))
    byPart.set(part, [...(byPart.get(part) ?? []), terminal]);
  return apart([...byPart].map(([part, terminals]) => t('app:point.full', { terminal: listed(terminals), part })));
}

/** How controls stand, by part. */
function actsText(acts: readonly HistoryAct[]): string {
  const byPart = new Map<string, string[]>();
  for (const act of acts) {
    if (act.name === 'wait') continue;
    const value = positionName(act.name === 'set' ? act.value : act.position);
    const setting = t('drill:said.setting', { control: t(`parts:control.${act.control}`), value });
    byPart.set(act.part, [...(byPart.get(act.part) ?? []), setting]);
  }
  return listed(
    [...byPart].map(([part, settings]) => t('drill:said.stands', { part: partName(part), settings: settings.join(', ') })),
  );
}

/** Names stand in lower case, as within a sentence: where they begin one, they have a capital. */
const capitals = (text: string): string =>
  text.replace(/(^|[.?!] )(\p{Ll})/gu, (_, before: string, first: string) => before + first.toLocaleUpperCase(i18next.language));

/** Less than this is nothing, whatever its unit: it is told without decimals. */
const NOTHING = 0.0005;

/** Three figures, as a sum by hand has them. */
const decimalsOf = (value: number): number =>
  Math.abs(value) < NOTHING ? 0 : Math.max(0, 2 - Math.floor(Math.log10(Math.max(Math.abs(value), 0.01))));

/** A sentence of a kind. @param part where its words stand: `ask`, `given` or `why` */
export function sentenceText(view: BenchView, kind: string, part: 'ask' | 'given' | 'why', { key, values }: Sentence): string {
  const words = Object.fromEntries(Object.entries(values).map(([name, said]) => [name, saidText(view, said)]));
  return capitals(t(`drill:kind.${kind}.${part}.${key}`, words));
}
