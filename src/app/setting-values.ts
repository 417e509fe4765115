/** What can be set, and to what. Each is a habit of its name: kept per profile, known before the first paint, and in the exported file. */
import { DEGREES, LENGTHS } from './units.ts';

export const SETTINGS = {
  degrees: DEGREES,
  lengths: LENGTHS,
  /** Size of the text, per cent. */
  text: ['100', '125', '150', '200'],
  contrast: ['system', 'standard', 'more'],
  motion: ['system', 'full', 'less'],
  sound: ['on', 'off'],
  /** Per cent. */
  volume: ['0', '10', '20', '30', '40', '50', '60', '70', '80', '90', '100'],
  keys: ['on', 'off'],
  bench: ['drawn', 'list'],
} as const;

export type SettingName = keyof typeof SETTINGS;
export type SettingValue<Name extends SettingName> = (typeof SETTINGS)[Name][number];

/** Regions that tell temperatures in °F: the USA with what belongs to it, and a few islands (from memory of CLDR's unitPreferenceData). */
const FAHRENHEIT_REGIONS = new Set(['US', 'PR', 'GU', 'VI', 'AS', 'MP', 'UM'].concat(['BS', 'BZ', 'FM', 'KY', 'LR', 'MH', 'PW']));
/** Regions that measure a house in feet (from memory of CLDR's measurementSystem, common practice). */
const FEET_REGIONS = new Set(['US', 'PR', 'GU', 'VI', 'AS', 'MP', 'UM', 'LR', 'MM']);

/** The region of the first of some BCP 47 tags that names one; else where its language is mostly spoken; else the USA. */
export function regionOf(tags: readonly string[]): string {
  const locales = tags.flatMap((tag) => {
    try {
      return [new Intl.Locale(tag)];
    } catch {
      return [];
    }
  });
  return locales.find((each) => each.region !== undefined)?.region ?? locales[0]?.maximize().region ?? 'US';
}

/** What holds as long as nobody chose. @param tags the languages that the browser asks for, best first */
export function defaultsFor(tags: readonly string[]): { readonly [Name in SettingName]: SettingValue<Name> } {
  const region = regionOf(tags);
  return {
    degrees: FAHRENHEIT_REGIONS.has(region) ? 'fahrenheit' : 'celsius',
    lengths: FEET_REGIONS.has(region) ? 'feet' : 'metres',
    text: '100',
    contrast: 'system',
    motion: 'system',
    sound: 'on',
    volume: '100',
    keys: 'on',
    bench: 'drawn',
  };
}

/** The value as it is kept, where it is one of the setting's; else what holds without one. */
export function legalOr<Name extends SettingName>(name: Name, kept: string, otherwise: SettingValue<Name>): SettingValue<Name> {
  const values: readonly SettingValue<Name>[] = SETTINGS[name];
  return values.find((each) => each === kept) ?? otherwise;
}
