import type { BenchView } from '../../attempt/view.ts';
import type { Sentence } from '../../drills/item.ts';
import type { Said } from '../../drills/said.ts';
import { nextText } from '../action-words.ts';
import { noticeText } from '../step-words.ts';
import { length, ohmsByLength } from '../units.ts';
import { listed, namingText, number, partName, placeName, pointName, positionName, readingText, t, wireName } from '../words.ts';

// keys: drill:kind.*
// keys: drill:misconception.*
// keys: drill:skill.*

/** What a drill says, in words. @param view the drill's circuit as it stands after the scene's steps */
export function saidText(view: BenchView, said: Said): string {
  switch (said.is) {
    case 'reading':
      return readingText(said.reading);
    case 'function':
      return t(`meter:fn.${said.fn}`);
    case 'leads':
      return t('drill:said.leads', {
        fn: t(`meter:fn.${said.fn}`),
        red: pointName(view, said.red),
        black: pointName(view, said.black),
      });
    case 'point':
      return pointName(view, said.point);
    case 'points':
      return said.points.length === 0 ? t('drill:said.none') : listed(said.points.map((point) => pointName(view, point)));
    case 'part':
      return partName(said.part);
    case 'parts':
      return said.parts.length === 0 ? t('drill:said.none') : listed(said.parts.map(partName));
    case 'place':
      return placeName(said.place);
    case 'wire':
      return wireName(said.wire);
    case 'acts':
      return listed(
        said.acts.flatMap((act) =>
          act.name === 'wait'
            ? []
            : [
                t('drill:said.stands', {
                  part: partName(act.part),
                  control: t(`parts:control.${act.control}`),
                  value: positionName(act.name === 'set' ? act.value : act.position),
                }),
              ],
        ),
      );
    case 'fault':
      return said.naming ? namingText(said.naming) : t('drill:said.sound');
    case 'faults':
      return said.namings.length === 0 ? t('drill:said.none') : listed(said.namings.map(namingText));
    case 'notice':
      return noticeText(view, said.notice);
    case 'actions':
      return said.actions.map((action) => nextText(view, action)).join(' → ');
    case 'quantity':
      if (said.unit === 'ft') return length(said.value);
      if (said.unit === 'Ω/kft') return ohmsByLength(said.value);
      return t('drill:said.quantity', { value: number(said.value, decimalsOf(said.value)), unit: said.unit });
    case 'number':
      return number(said.value, Number.isInteger(said.value) ? 0 : 1);
  }
}

/** Three figures, as a sum by hand has them. */
const decimalsOf = (value: number): number => Math.max(0, 2 - Math.floor(Math.log10(Math.max(Math.abs(value), 0.01))));

/** A sentence of a kind. @param part where its words stand: `ask`, `given` or `why` */
export function sentenceText(view: BenchView, kind: string, part: 'ask' | 'given' | 'why', { key, values }: Sentence): string {
  const words = Object.fromEntries(Object.entries(values).map(([name, said]) => [name, saidText(view, said)]));
  return t(`drill:kind.${kind}.${part}.${key}`, words);
}
