import { t } from '../words.ts';

interface Props {
  readonly at: number;
  /** How many places there are. */
  readonly places: number;
  readonly flagged: boolean;
  /** Whether going on is what is mostly done here. */
  readonly main: boolean;
  readonly onFlag: () => void;
  readonly onGo: (place: number) => void;
}

/** Back, flag and on, always in sight. */
export function TurnBar({ at, places, flagged, main, onFlag, onGo }: Props) {
  return (
    <div class="drill-do exam-turn">
      <button type="button" class="button" disabled={at === 0} onClick={() => onGo(at - 1)}>
        {t('drill:exam.before')}
      </button>
      <button type="button" class="button" aria-pressed={flagged} onClick={onFlag}>
        {t('drill:exam.flag')}
      </button>
      <button type="button" class={main ? 'button act' : 'button'} disabled={at === places - 1} onClick={() => onGo(at + 1)}>
        {t('drill:page.next')}
      </button>
    </div>
  );
}
