import { useState } from 'preact/hooks';
import type { Action } from '../../attempt/actions.ts';
import { type Naming, sameNaming } from '../../suspects/hypotheses.ts';
import type { WayBranch, WayTree } from '../../suspects/wayTree.ts';
import { useAnswer } from '../engine/use-answer.ts';
import { noticeText } from '../step-words.ts';
import { listed, namingText, readingText, t } from '../words.ts';
import type { Reviewed } from './use-debrief.ts';

/** The short way as a tree, grown when it is first opened. */
export function TreeFold({ reviewed }: { readonly reviewed: Reviewed }) {
  const { ticket, rig } = reviewed;
  const { answer, state, ask } = useAnswer(ticket, rig, 'tree');
  const asks = state === 'idle' || state === 'failed';
  return (
    <details
      class="debrief-fold"
      onToggle={(event) => event.currentTarget.open && asks && void ask({})}
      data-testid="tree"
      data-lazy
    >
      <summary>
        <h2>{t('app:debrief.tree.title')}</h2>
      </summary>
      <p role="status" aria-busy={state === 'busy'}>
        {state === 'busy' && t('app:debrief.tree.working')}
        {state === 'failed' && t('app:debrief.tree.failed')}
        {state === 'ready' && t('app:debrief.tree.text')}
      </p>
      {answer !== undefined && (
        <div class="tree">
          <TreeNode reviewed={reviewed} tree={answer} path={[]} />
        </div>
      )}
    </details>
  );
}

interface NodeProps {
  readonly reviewed: Reviewed;
  readonly tree: WayTree;
  /** All that has been done before this test. */
  readonly path: readonly Action[];
}

function TreeNode({ reviewed, tree, path }: NodeProps) {
  if (tree.kind === 'answer') return <Answers reviewed={reviewed} namings={tree.namings} />;
  const after = [...path, ...tree.actions];
  return (
    <>
      <ol class="tree-do">
        {reviewed.instruct(path, tree.actions).map((words, index) => (
          <li key={`${index} ${words}`}>{words}</li>
        ))}
      </ol>
      <ul class="tree-branches">
        {tree.branches.map((branch, index) => (
          <Branch key={`${index} ${branch.reading?.text}`} reviewed={reviewed} branch={branch} path={after} />
        ))}
      </ul>
    </>
  );
}

function Branch({ reviewed, branch, path }: Omit<NodeProps, 'tree'> & { readonly branch: WayBranch }) {
  const namings = namingsIn(branch.next);
  const true_ = namings.some((each) => sameNaming(each, reviewed.debrief.truth));
  const [open, setOpen] = useState(true_);
  const label = labelOf(reviewed, branch);
  if (branch.next.kind === 'answer')
    return (
      <li class={true_ ? 'tree-leaf true' : 'tree-leaf'}>
        <b>{label}</b>
        <Answers reviewed={reviewed} namings={branch.next.namings} />
      </li>
    );
  return (
    <li class={true_ ? 'true' : undefined}>
      <details open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
        <summary>
          <b>{label}</b> <span class="quiet">{t('app:debrief.tree.count', { count: namings.length })}</span>
        </summary>
        {open && <TreeNode reviewed={reviewed} tree={branch.next} path={path} />}
      </details>
    </li>
  );
}

function Answers({ reviewed, namings }: { readonly reviewed: Reviewed; readonly namings: readonly Naming[] }) {
  return (
    <ul class="tree-answers">
      {namings.map((each) => (
        <li key={namingText(each)}>
          {namingText(each)}
          {sameNaming(each, reviewed.debrief.truth) && <span class="tree-here">{t('app:debrief.tree.here')}</span>}
        </li>
      ))}
    </ul>
  );
}

/** Every fault at the leaves of a tree, once. */
function namingsIn(tree: WayTree): readonly Naming[] {
  const all = tree.kind === 'answer' ? tree.namings : tree.branches.flatMap((branch) => namingsIn(branch.next));
  return all.filter((each, index) => all.findIndex((other) => sameNaming(other, each)) === index);
}

/** What a branch shows: the reading, and what only it lets one notice. */
function labelOf({ view }: Reviewed, { reading, notices }: WayBranch): string {
  const noticed = listed(notices.map((notice) => noticeText(view, notice)).filter((words) => words !== ''));
  if (reading === undefined) return noticed === '' ? t('app:debrief.tree.otherwise') : noticed;
  return noticed === '' ? readingText(reading) : t('app:debrief.tree.both', { reading: readingText(reading), noticed });
}
