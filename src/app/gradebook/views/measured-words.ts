import type { BenchView } from '../../../attempt/view.ts';
import { pairName, t, thingName } from '../../words.ts';

/**
 * What was measured, in words: "volts AC: R to C, sub-base".
 * @param measured as in `Result.measured`: the function, then its two points, or the wire in the clamp
 */
export function measuredText(view: BenchView, measured: string): string {
  const [fn = '', first = '', second] = measured.split(' ');
  return t('classview:measured', {
    fn: t(`meter:fn.${fn}`),
    what: second === undefined ? thingName(first) : pairName(view, first, second),
  });
}
