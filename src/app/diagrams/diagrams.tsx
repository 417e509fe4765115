import '../css/diagrams.css';
import { useMemo } from 'preact/hooks';
import { laddersOf } from '../../rig/ladder.ts';
import { MAT_PLACE } from '../../rig/points.ts';
import type { RigData } from '../../rig/schema.ts';
import { assembledOf } from '../library.ts';
import { t } from '../words.ts';
import { LadderFigure } from './ladder.tsx';
import { ladderTitles } from './ladder-titles.ts';
import { DiagramSymbol } from './symbols.tsx';
import { WiringFigure } from './wiring.tsx';

const LEGEND = ['open', 'closed', 'fuse', 'coil', 'load', 'capacitor', 'supply', 'mains'] as const;

/** The ladder and wiring diagrams of a rig as it left the factory, drawn from its data. */
export function DiagramSheets({ rig }: { readonly rig: RigData }) {
  const assembly = assembledOf(rig);
  const ladders = useMemo(() => laddersOf(assembly), [assembly]);
  const titles = ladderTitles(assembly, ladders);
  return (
    <div class="diagrams">
      <p>{t('diagram:asBuilt')}</p>
      <h3>{t('diagram:ladder')}</h3>
      <ul class="diagram-legend" aria-label={t('diagram:legend')}>
        {LEGEND.map((each) => (
          <li key={each}>
            <svg viewBox="-24 -16 48 32" width={48} height={32} aria-hidden="true">
              <DiagramSymbol kind={each === 'open' || each === 'closed' ? 'contact' : each} closed={each === 'closed'} />
            </svg>
            {t(`diagram:symbol.${each}`)}
          </li>
        ))}
      </ul>
      {ladders.map((ladder, index) => (
        <LadderFigure key={titles[index]} assembly={assembly} ladder={ladder} title={titles[index] ?? ''} />
      ))}
      <h3>{t('diagram:wiring')}</h3>
      {rig.places
        .filter(({ id }) => id !== MAT_PLACE && assembly.parts.some(({ data }) => data.place === id))
        .map(({ id }) => (
          <WiringFigure key={id} assembly={assembly} place={id} />
        ))}
    </div>
  );
}
