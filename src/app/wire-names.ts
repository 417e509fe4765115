import i18next from 'i18next';
import { CATALOGUE } from '../parts/catalogue.ts';
import type { RigData, RigWire } from '../rig/schema.ts';

/** Names given here, and the rig that they are for, by language: they change with the rig; those in locales/ stay. */
const given = new Map<string, { readonly rig: RigData; readonly wires: ReadonlySet<string> }>();

/**
 * Gives each wire of a rig that has no name in locales/ one by where it runs: a cable's conductor by its letter, another wire by what it
 * joins. They are found as `rig:wire.ID`, like those that are written, until another rig is named.
 */
export function nameWires(rig: RigData): void {
  const language = i18next.language;
  const before = given.get(language);
  if (before?.rig === rig) return;
  const wires = new Set(before?.wires);
  for (const wire of rig.wires) {
    const key = `wire.${wire.id}`;
    if (!wires.has(wire.id) && i18next.exists(`rig:${key}`)) continue;
    wires.add(wire.id);
    i18next.addResource(language, 'rig', key, nameOf(rig, wire));
  }
  given.set(language, { rig, wires });
}

function nameOf(rig: RigData, wire: RigWire): string {
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
