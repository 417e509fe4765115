import type { Action } from '../attempt/actions.ts';
import type { BenchView } from '../attempt/view.ts';
import { namingText, partName, placeName, pointName, positionName, span, t, thingName, type Values, wireName } from './words.ts';

function wireEndPlace(view: BenchView, wire: string, end: 'from' | 'to'): string {
  const home = view.wires.find((each) => each.id === wire)?.ends[end].home;
  return home === undefined ? '' : pointName(view, home);
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
      return { key: 'name', values: { fault: namingText(action) } };
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

/** What to do next, for somebody who does not stand before the thing: with its name. */
export function nextText(view: BenchView, action: Action): string {
  const words = doText(view, action);
  switch (action.name) {
    case 'pull':
    case 'turn':
    case 'mat':
    case 'seat':
    case 'unplug':
    case 'plug':
    case 'look':
      return t('action:doOn', { thing: partName(action.part), words });
    case 'lift':
    case 'land':
    case 'tug':
      return t('action:doOn', { thing: wireName(action.wire), words });
    case 'wait':
    case 'watch':
      return action.seconds > 0 ? t('action:do.wait', { span: span(action.seconds) }) : words;
    default:
      return words;
  }
}
