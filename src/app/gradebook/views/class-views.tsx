import type { ComponentChild } from 'preact';
import { useState } from 'preact/hooks';
import '../../css/gradebook-views.css';
import type { Gradebook } from '../../../classroom/gradebook.ts';
import { useOpenFolds } from '../../use-open-folds.ts';
import { t } from '../../words.ts';
import { Results } from '../results.tsx';
import { ClassCharts } from './charts.tsx';
import { ItemsView } from './items.tsx';
import { SkillsMap } from './skills-map.tsx';

interface Props {
  readonly gradebook: Gradebook;
}

const VIEWS = ['results', 'skills', 'items', 'charts'] as const;
type View = (typeof VIEWS)[number];

const nameOf = (view: View): string => (view === 'results' ? t('gradebook:results') : t(`classview:view.${view}`));

const SHOWN: Readonly<Record<View, (props: Props) => ComponentChild>> = {
  results: Results,
  skills: SkillsMap,
  items: ItemsView,
  charts: ClassCharts,
};

/** The class, looked at in one of four ways. */
export function ClassViews({ gradebook }: Props) {
  const [view, setView] = useState<View>('results');
  const Shown = SHOWN[view];
  useOpenFolds();
  return (
    <section class={view === 'results' ? 'slip class-view' : 'slip class-view classview'} aria-labelledby="view-title">
      <nav class="class-views" aria-label={t('classview:view.choose')}>
        {VIEWS.map((each) => (
          <button key={each} type="button" class="button" aria-pressed={each === view} onClick={() => setView(each)}>
            {nameOf(each)}
          </button>
        ))}
      </nav>
      <h2 id="view-title">{nameOf(view)}</h2>
      <Shown gradebook={gradebook} />
    </section>
  );
}
