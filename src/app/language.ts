import i18next from 'i18next';

const files = import.meta.glob<Record<string, unknown>>('/locales/*/*.json', { eager: true, import: 'default' });

/** Loads every word of the locales into i18next; `language` as in locales/ (English is always the fallback). */
export async function startLanguage(language: string): Promise<void> {
  const resources: Record<string, Record<string, Record<string, unknown>>> = {};
  for (const [path, words] of Object.entries(files)) {
    const [, , folder, file] = path.split('/');
    if (folder === undefined || file === undefined) continue;
    resources[folder] = { ...resources[folder], [file.replace('.json', '')]: words };
  }
  await i18next.init({
    lng: language,
    fallbackLng: 'en',
    defaultNS: 'app',
    resources,
    // Preact escapes what it renders.
    interpolation: { escapeValue: false },
    returnNull: false,
  });
  document.documentElement.lang = i18next.resolvedLanguage ?? 'en';
}
