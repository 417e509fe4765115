import { useEffect, useMemo, useState } from 'preact/hooks';
import { loadedFrom } from '../drills/scene.ts';
import { exerciseHref, sceneNow } from '../drills/try.ts';
import { go, hrefOf, rememberJob } from '../router.ts';
import { useTitle } from '../shell.tsx';
import { useAttempt } from '../use-attempt.ts';
import { t } from '../words.ts';
import { BenchScreen } from './bench.tsx';

/** A drill's circuit on the bench, as it stood when it was asked about: nothing is scored or kept. */
export function DrillBenchPage() {
  const scene = sceneNow();
  useTitle(t('drill:page.bench'));
  useEffect(() => {
    if (scene === undefined) go(hrefOf('drills'), true);
    else rememberJob(undefined);
  }, [scene]);
  const [begun, setBegun] = useState(0);
  if (scene === undefined) return null;
  return <Opened key={begun} scene={scene} onRestart={() => setBegun(begun + 1)} />;
}

function Opened({
  scene,
  onRestart,
}: {
  readonly scene: NonNullable<ReturnType<typeof sceneNow>>;
  readonly onRestart: () => void;
}) {
  const stood = useMemo(() => loadedFrom(scene), [scene]);
  return stood === undefined ? null : <AtWork stood={stood} onRestart={onRestart} />;
}

function AtWork({
  stood,
  onRestart,
}: {
  readonly stood: NonNullable<ReturnType<typeof loadedFrom>>;
  readonly onRestart: () => void;
}) {
  const { loaded, rig } = stood;
  const keeper = useMemo(() => ({ loaded, keep: async () => 'kept' as const, isOver: () => false }), [loaded]);
  const bench = useAttempt(loaded.ticket, rig, true, keeper);
  return bench === undefined ? null : (
    <BenchScreen
      bench={bench}
      onRestart={onRestart}
      free={{
        title: t('drill:page.bench'),
        line: t('drill:page.benchLine'),
        back: t('drill:page.backToDrill'),
        href: exerciseHref(),
      }}
    />
  );
}
