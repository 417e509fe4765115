import i18next from 'i18next';
import { CATALOGUE } from '../parts/catalogue.ts';
import type { RigData, RigWire } from '../rig/schema.ts';

/**
 * Gives each wire that has no name in locales/ one by where it runs, in the language that is spoken now: they are then found as
 * `rig:wire.ID`, like those that are written. An id means one wire in all rigs: a test holds that none would get two names. As long as
 * the words to put them together from are still on their way, none gets any.
 */
export function nameWires(rigs: Iterable<RigData>): void {
  const { language } = i18next;
  if (!i18next.exists('rig:conductor')) return;
  for (const rig of rigs) {
    for (const wire of rig.wires) {
      if (i18next.getResource(language, 'rig', `wire.${wire.id}`) === undefined)
        i18next.addResource(language, 'rig', `wire.${wire.id}`, wireNameOf(rig, wire));
    }
  }
}

/** A wire's name by where it runs: a cable's conductor by its letter, another wire by what it joins. */
export function wireNameOf(rig: RigData, wire: RigWire): string {
  const [from, to] = [endOf(rig, wire.from), endOf(rig, wire.to)];
  const letter = to.label || from.label || i18next.t(`app:colour.${wire.colour}`);
  if (wire.pin) return i18next.t('rig:pin', { letter });
  if (wire.cable !== undefined) return i18next.t('rig:conductor', { letter, cable: i18next.t(`rig:cable.${wire.cable}`) });
  return i18next.t('rig:wireBetween', { from: from.name, to: to.name });
}

function endOf(rig: RigData, point: string): { readonly label: string; readonly name: string } {
  const [id = '', terminal = ''] = point.split('.');
  const part = rig.parts.find((each) => each.id === id);
  const printed = CATALOGUE.get(part?.kind ?? '')?.terminals.find((each) => each.id === terminal)?.label ?? '';
  const label = part?.labels[terminal] ?? printed;
  return { label, name: `${i18next.t(`rig:part.${id}`)} ${label}`.trim() };
}
