import { useEffect, useRef } from 'preact/hooks';
import { clock, t } from '../words.ts';
import { useNow } from './use-assigned.ts';

interface Props {
  /** Seconds since 1970. */
  readonly deadline: number;
  readonly onOver: () => void;
}

/** Told aloud when so many minutes are left; common practice, no source. */
const TOLD = [1, 5];

/** What is left of an attempt's time, among the bench's counts; at its end it says so once. */
export function Countdown({ deadline, onOver }: Props) {
  const left = Math.max(0, deadline - useNow());
  const over = left === 0;
  const ended = useRef(false);
  useEffect(() => {
    if (!over || ended.current) return;
    ended.current = true;
    onOver();
  }, [over, onOver]);
  const soon = TOLD.find((minutes) => left <= minutes * 60);
  return (
    <div class="take-countdown" data-soon={soon}>
      <dt>{t('take:left')}</dt>
      <dd>
        <span data-testid="left">{clock(Math.ceil(left))}</span>
        <span class="unseen" role="status">
          {soon !== undefined && t('take:soon', { count: soon })}
        </span>
      </dd>
    </div>
  );
}
