/** English words for tests that look for what a person reads. */
import i18next from 'i18next';
import { nameWires } from '../../src/app/wire-names.ts';
import { wordsOf } from '../../src/cli/files.ts';
import { library as shipped } from '../scenario/shipped.ts';

export async function speakEnglish(): Promise<void> {
  await i18next.init({
    lng: 'en',
    defaultNS: 'app',
    resources: { en: wordsOf('en') as Record<string, Record<string, unknown>> },
    interpolation: { escapeValue: false },
  });
  nameWires(shipped.rigs.values());
}
