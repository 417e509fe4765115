import i18next from 'i18next';

/**
 * How numbers are written: as in the reader's own region of the language (a Mexican writes 26.8, an Argentine 26,8), where the
 * browser tells it.
 */
export function numberLocale(): string {
  const asked = typeof navigator === 'undefined' ? [] : (navigator.languages ?? []);
  return asked.find((tag) => tag.toLowerCase().split('-')[0] === i18next.language) ?? i18next.language;
}
