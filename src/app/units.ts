/** Degrees and lengths as the reader has them. Inside, temperatures are °F and lengths feet; they become °C and metres here and nowhere else. */
import { numberLocale } from './number-locale.ts';

export const DEGREES = ['fahrenheit', 'celsius'] as const;
export const LENGTHS = ['feet', 'metres'] as const;

export interface Units {
  readonly degrees: (typeof DEGREES)[number];
  readonly lengths: (typeof LENGTHS)[number];
}

/** The international foot, exact since 1959 (NIST SP 811, appendix B). */
const METRES_PER_FOOT = 0.3048;
/** What a thermostat's display shows, and a press of its key moves: whole °F, half °C (common practice, no source). */
const STEP = { fahrenheit: 1, celsius: 0.5 } as const;

let now: Units = { degrees: 'fahrenheit', lengths: 'feet' };

/** From here on, temperatures and lengths are told in these. */
export function measureIn(units: Units): void {
  now = units;
}

/** A number of degrees on the reader's scale: exact, not as a display has it. */
const toScale = (fahrenheit: number): number => (now.degrees === 'celsius' ? (fahrenheit - 32) / 1.8 : fahrenheit);
const fromScale = (degrees: number): number => (now.degrees === 'celsius' ? degrees * 1.8 + 32 : degrees);

const toStep = (degrees: number, way: (value: number) => number): number => {
  const step = STEP[now.degrees];
  // Adding 0 makes −0 a plain 0.
  return way(degrees / step) * step + 0;
};

/** What a display shows of a temperature in °F: degrees of the reader's scale, to its step. */
export const shownDegrees = (fahrenheit: number): number => toStep(toScale(fahrenheit), Math.round);

/** A setting's limits and step, °F. */
interface Range {
  readonly from: number;
  readonly to: number;
  readonly step: number;
  readonly press: number;
}

/** The settings that can be entered, on the reader's scale. */
export function shownRange({ from, to }: Pick<Range, 'from' | 'to'>): Omit<Range, 'press'> {
  return { from: toStep(toScale(from), Math.ceil), to: toStep(toScale(to), Math.floor), step: STEP[now.degrees] };
}

/**
 * The setting in °F, of those that the range has, for what was entered on the reader's scale: a whole °F that shows just that, else
 * the nearest. So whatever whole °F a display shows in °C can be set again from there.
 */
export function settingOf(entered: number, { from, to, step }: Range): number {
  const whole = Math.round(fromScale(entered));
  const finest = step < 1 && shownDegrees(whole) === entered ? 1 : step;
  const nearest = from + Math.round((fromScale(entered) - from) / finest) * finest;
  return Math.min(to, Math.max(from, nearest));
}

/** The setting in °F after a press of the key up (1) or down (−1): one step of what is shown, for each °F of its press. */
export function pressed(fahrenheit: number, way: 1 | -1, range: Range): number {
  return settingOf(shownDegrees(fahrenheit) + way * STEP[now.degrees] * range.press, range);
}

const written = (value: number, options: Intl.NumberFormatOptions): string =>
  new Intl.NumberFormat(numberLocale(), { maximumFractionDigits: 1, ...options }).format(value);

/** A temperature in °F as it is written: "72°F", "22.5 °C", with the sign and the space of the language. */
export const temperature = (fahrenheit: number): string =>
  written(shownDegrees(fahrenheit), { style: 'unit', unit: now.degrees, unitDisplay: 'short' });

/** A temperature in °F as people say it: only the number. */
export const bareDegrees = (fahrenheit: number): string => written(shownDegrees(fahrenheit), {});

/** One step of a setting: "1", "0.5". */
export const degreeStep = (): string => written(STEP[now.degrees], {});

/** The sign of the reader's scale: "°F", "°C". */
export const degreeSign = (): string => (now.degrees === 'celsius' ? '°C' : '°F');

/**
 * A length in feet as it is written: "50 ft", "15 m"; below ten of its unit to the tenth.
 * @param decimals most decimals, where the length is reckoned with: whole metres are too coarse for a sum
 */
export function length(feet: number, decimals?: number): string {
  const value = now.lengths === 'metres' ? feet * METRES_PER_FOOT : feet;
  return written(value, {
    style: 'unit',
    unit: now.lengths === 'metres' ? 'meter' : 'foot',
    unitDisplay: 'short',
    maximumFractionDigits: decimals ?? (value < 10 ? 1 : 0),
  });
}

/** Ohms of 1000 feet as the reader's wire table has them: "6.385 Ω/1000 ft", "20.95 Ω/km". */
export function ohmsByLength(ohms: number): string {
  const [value, unit] = now.lengths === 'metres' ? [ohms / METRES_PER_FOOT, 'Ω/km'] : [ohms, 'Ω/1000 ft'];
  return `${written(value, { maximumSignificantDigits: 4 })} ${unit}`;
}
