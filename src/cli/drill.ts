import i18next from 'i18next';
import { type Bank, createBank } from '../drills/draw.ts';
import type { DrillKind, Item, Sentence } from '../drills/item.ts';
import { DRILL_KINDS } from '../drills/kinds.ts';
import type { Said } from '../drills/said.ts';
import { dataError } from '../rig/errors.ts';
import { shippedLibrary } from './files.ts';

// keys: drill:kind.*
// keys: drill:misconception.*
// keys: drill:skill.*

/** Numbers that are looked at for one that has an item. */
const MOST_EMPTY = 200;

/** Every kind, a line each. */
export function kindsText(): string {
  const longest = Math.max(...DRILL_KINDS.map(({ id }) => id.length));
  return DRILL_KINDS.map(({ id }) => `${id.padEnd(longest)}  ${i18next.t(`drill:kind.${id}.name`)}`).join('\n');
}

/**
 * Items of one kind, of the numbers from a seed on that have one.
 * @throws DataError where there is no such kind
 */
export function drill(id: string, count: number, seed: number): Item[] {
  const kind = DRILL_KINDS.find((each) => each.id === id);
  if (!kind) throw dataError('data.value', 'KIND', { options: DRILL_KINDS.map((each) => each.id).join(', ') });
  return [...itemsFrom(createBank([...shippedLibrary().rigs.values()]), kind, seed, count)];
}

function* itemsFrom(bank: Bank, kind: DrillKind, seed: number, count: number): Generator<Item> {
  let empty = 0;
  let made = 0;
  for (let number = seed; made < count && empty < MOST_EMPTY; number++) {
    const item = bank.item(kind, number);
    if (item) {
      made += 1;
      empty = 0;
      yield item;
    } else empty += 1;
  }
}

/** An item for people: what is asked, the choices, and which is right. Parts, faults and steps stand in their own notation, as everywhere on the command line. */
export function itemText({ kind, number, scene, ask, given, choices, right, why }: Item): string {
  const words = (part: string) => (sentence: Sentence) =>
    i18next.t(
      `drill:kind.${kind}.${part}.${sentence.key}`,
      Object.fromEntries(Object.entries(sentence.values).map(([key, said]) => [key, saidText(said)])),
    );
  return [
    `${kind} ${number}, ${scene.rig}: ${words('ask')(ask)}`,
    ...given.map(words('given')).map((line) => `    ${line}`),
    ...choices.map(({ said, misconception }, index) => {
      const because = misconception === undefined ? '' : `  (${i18next.t(`drill:misconception.${misconception}`)})`;
      return `  ${index === right ? '*' : ' '} ${saidText(said)}${because}`;
    }),
    ...why.map(words('why')).map((line) => `    ${line}`),
  ].join('\n');
}

function saidText(said: Said): string {
  switch (said.is) {
    case 'reading': {
      const { kind, text, prefix, unit } = said.reading;
      return kind === 'number' ? `${text} ${prefix}${unit}` : text === '' ? kind : text;
    }
    case 'function':
      return said.fn;
    case 'leads':
      return `${said.fn} ${said.red} ${said.black}`;
    case 'point':
      return said.point;
    case 'points':
      return said.points.join(', ') || '–';
    case 'part':
      return said.part;
    case 'parts':
      return said.parts.join(', ') || '–';
    case 'place':
      return said.place;
    case 'wire':
      return said.wire;
    case 'acts':
      return said.acts
        .map((act) => (act.name === 'wait' ? '' : `${act.part}.${act.control}=${act.name === 'set' ? act.value : act.position}`))
        .join(' ');
    case 'fault':
      return said.naming ? `${said.naming.target}:${said.naming.mode}` : '–';
    case 'faults':
      return said.namings.map(({ target, mode }) => `${target}:${mode}`).join(', ') || '–';
    case 'notice':
      return `${said.notice.part}.${said.notice.key}=${said.notice.value}`;
    case 'actions':
      return said.actions.map((action) => JSON.stringify(action)).join(' ');
    case 'quantity':
      return `${new Intl.NumberFormat(i18next.language, { maximumSignificantDigits: 3 }).format(said.value)} ${said.unit}`;
    case 'number':
      return new Intl.NumberFormat(i18next.language).format(said.value);
  }
}
