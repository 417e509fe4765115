import { isDataError } from '../../rig/errors.ts';
import type { Fault } from '../engine/making.ts';
import { hasWords, t } from '../words.ts';

/** What does not stand, in words: where, what, and the way out. @param file its name, where it came from one */
export function faultText({ code, path, values }: Fault, file = ''): string {
  const place = file === '' ? path : `${file} › ${path}`;
  return hasWords(`error:${code}`) ? t(`error:${code}`, { ...values, path: place }) : t('error:data.shape', { path: place });
}

/** The same for whatever was thrown. */
export function whyNot(error: unknown, file = ''): string {
  return isDataError(error) ? faultText(error, file) : t('builder:failed');
}
