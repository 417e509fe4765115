import { numberLocale } from '../number-locale.ts';

/** An instant as the reader's clock and calendar have it. */
export const moment = (instant: string): string =>
  new Intl.DateTimeFormat(numberLocale(), { dateStyle: 'medium', timeStyle: 'short' }).format(new Date(instant));
