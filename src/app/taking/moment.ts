import { numberLocale } from '../number-locale.ts';

/** A moment by the clock of this PC, with its time zone. */
export function momentText(instant: string): string {
  return new Intl.DateTimeFormat(numberLocale(), {
    weekday: 'short',
    year: 'numeric',
    month: 'long',
    day: 'numeric',
    hour: '2-digit',
    minute: '2-digit',
    timeZoneName: 'short',
  }).format(new Date(instant));
}
