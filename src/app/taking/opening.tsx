import type { ComponentChildren } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { Elsewhere } from '../keeping/elsewhere.tsx';
import { useHold } from '../keeping/hold.ts';
import { assignedHref, go } from '../router.ts';
import { Waiting } from '../waiting.tsx';
import { t } from '../words.ts';

interface Props<Opened> {
  /** Id of the kept assignment. */
  readonly id: string;
  /** Place in the assignment. */
  readonly item: number;
  /** What is kept of the attempt under way; undefined without one. Rejects where it can no longer be gone on with, or the browser denies its storage. */
  readonly open: (id: string, item: number) => Promise<Opened | undefined>;
  readonly children: (opened: Opened) => ComponentChildren;
}

/** An attempt under way, opened in one tab at a time; without one, back to the assignment. */
export function Opening<Opened>({ id, item, open, children }: Props<Opened>) {
  const { hold, takeOver } = useHold(`assigned ${id} ${item}`);
  if (hold === 'asking') return <Waiting />;
  if (hold !== 'mine') return <Elsewhere ticket="" back={assignedHref(id)} taken={hold === 'taken'} onTakeOver={takeOver} />;
  return (
    <Mine id={id} item={item} open={open}>
      {children}
    </Mine>
  );
}

function Mine<Opened>({ id, item, open, children }: Props<Opened>) {
  const [opened, setOpened] = useState<Opened>();
  const [failed, setFailed] = useState(false);
  useEffect(() => {
    let current = true;
    open(id, item).then(
      (found) => {
        if (!current) return;
        if (found === undefined) go(assignedHref(id), true);
        else setOpened(() => found);
      },
      () => current && setFailed(true),
    );
    return () => {
      current = false;
    };
  }, [id, item, open]);
  if (opened !== undefined) return <>{children(opened)}</>;
  if (!failed) return <Waiting />;
  return (
    <main class="waiting">
      <h1 tabIndex={-1}>{t('take:title')}</h1>
      <p role="alert">{t('take:lost')}</p>
      <a class="button" href={assignedHref(id)}>
        {t('take:back')}
      </a>
    </main>
  );
}
