/** What the first page says in one language, as one file; see tests/tools/first-page.ts. */
export const files = import.meta.glob<Record<string, unknown>>('/locales/es/*.json', {
  eager: true,
  import: 'default',
  query: '?first',
});
