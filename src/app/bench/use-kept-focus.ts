import { useLayoutEffect, useRef } from 'preact/hooks';
import type { BenchView } from '../../attempt/view.ts';

/**
 * Keeps the place of whoever works by keyboard or screen reader: when an action takes its own button away (pull, lift), the
 * focus goes to the name of the thing that it was on, or of the place when the thing has gone too. Gives the listener that
 * remembers where the focus was.
 */
export function useKeptFocus(view: BenchView, place: string): (event: FocusEvent) => void {
  const last = useRef<string>();
  useLayoutEffect(() => {
    if (document.activeElement !== document.body || last.current === undefined) return;
    const title = document.getElementById(last.current) ?? document.getElementById(place);
    title?.focus({ preventScroll: true });
  }, [view, place]);
  return (event) => {
    const focused = event.target;
    if (!(focused instanceof HTMLElement)) return;
    last.current =
      focused.getAttribute('aria-describedby') ??
      focused.closest('[aria-labelledby]')?.getAttribute('aria-labelledby') ??
      undefined;
  };
}
