import type { ComponentType } from 'preact';
import { useState } from 'preact/hooks';
import type { RigData } from '../../rig/schema.ts';
import { t } from '../words.ts';

type Sheets = ComponentType<{ readonly rig: RigData }>;

/** The diagrams behind a fold: what draws them is fetched when a hand first opens it. */
export function Diagrams({ rig }: { readonly rig: RigData }) {
  const [Drawn, setDrawn] = useState<Sheets>();
  const load = async () => {
    const { DiagramSheets } = await import('./diagrams.tsx');
    setDrawn(() => DiagramSheets);
  };
  return (
    <details class="light-codes" data-lazy onToggle={(event) => event.currentTarget.open && Drawn === undefined && void load()}>
      <summary>{t('diagram:title')}</summary>
      {Drawn !== undefined && <Drawn rig={rig} />}
    </details>
  );
}
