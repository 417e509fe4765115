import { useEffect, useState } from 'preact/hooks';
import { clock, t } from '../words.ts';

/** Told aloud when so many minutes are left; common practice, no source. */
const TOLD = [1, 5];

/** The time that is left of an exam, told anew every second. @param left gives seconds, 0 once it is over */
export function TimeLeft({ left }: { readonly left: () => number }) {
  const [seconds, setSeconds] = useState(left);
  useEffect(() => {
    const timer = setInterval(() => setSeconds(left()), 1000);
    return () => clearInterval(timer);
  }, [left]);
  const soon = TOLD.find((minutes) => seconds <= minutes * 60);
  return (
    <>
      <b data-testid="time-left" data-soon={soon}>
        {clock(Math.ceil(seconds))}
      </b>
      <span class="unseen" role="status">
        {soon !== undefined && t('take:soon', { count: soon })}
      </span>
    </>
  );
}
