import { t } from '../words.ts';

interface Props {
  readonly places: readonly { readonly words: string; readonly done: boolean; readonly flagged: boolean }[];
  readonly at: number;
  readonly onGo: (place: number) => void;
}

/** Every place of a paper, with what has been done about it. */
export function PlacesNav({ places, at, onGo }: Props) {
  return (
    <nav aria-label={t('drill:exam.questions')}>
      <ol class="exam-places">
        {places.map(({ words, done, flagged }, place) => {
          const state = done ? 'answered' : 'open';
          return (
            <li key={place}>
              <button
                type="button"
                class="button"
                aria-current={place === at ? 'true' : undefined}
                data-state={state}
                onClick={() => onGo(place)}
              >
                {words}
                {flagged && <span aria-hidden="true"> ⚑</span>}
                <span class="unseen">
                  {t(`drill:exam.state.${state}`)}
                  {flagged && ` ${t('drill:exam.state.flagged')}`}
                </span>
              </button>
            </li>
          );
        })}
      </ol>
    </nav>
  );
}
