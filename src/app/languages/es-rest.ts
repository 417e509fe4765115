/** All other words of one language, so that they are fetched as one file. */
export const files = import.meta.glob<Record<string, unknown>>('/locales/es/*.json', {
  eager: true,
  import: 'default',
  query: '?rest',
});
