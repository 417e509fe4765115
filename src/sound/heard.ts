import type { BenchView, PartView } from '../attempt/view.ts';
import type { SoundName } from './recipes.ts';

function lastingOf(part: PartView): SoundName[] {
  return Object.entries(part.sounds.lasting ?? {}).flatMap(([key, values]) => {
    const value = part.signs[key];
    const name = value === undefined ? undefined : values[String(value)];
    return name === undefined ? [] : [name];
  });
}

/** The sounds that last in a view: what the meter and the parts in earshot are doing now. Each name is a key under `stage:caption.`. */
export function soundsOf(view: BenchView): readonly SoundName[] {
  const names = new Set<SoundName>(view.parts.filter((part) => part.place === view.place).flatMap(lastingOf));
  if (view.meter.reading.tone) names.add('tone');
  return [...names];
}

/** The sounds that strike once between two views of the same place; none when there was no view before or the trainee has walked. */
export function strikesBetween(before: BenchView | undefined, after: BenchView): readonly SoundName[] {
  if (before === undefined || before.place !== after.place || before.ticket !== after.ticket) return [];
  const was = new Map(before.parts.map((part) => [part.id, part]));
  const names = new Set<SoundName>();
  for (const lead of ['red', 'black'] as const)
    if (after.meter[lead] !== undefined && after.meter[lead] !== before.meter[lead]) names.add('seat');
  for (const part of after.parts) {
    for (const [key, values] of Object.entries(part.sounds.strikes ?? {})) {
      const now = part.signs[key];
      const then = was.get(part.id)?.signs[key];
      if (now === undefined || then === undefined || now === then) continue;
      const name = values[String(now)] ?? values['*'];
      if (name !== undefined) names.add(name);
    }
  }
  return [...names];
}
