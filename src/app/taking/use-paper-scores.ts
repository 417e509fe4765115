import { useEffect, useRef } from 'preact/hooks';
import { paperResult } from '../../classroom/gradeAnswers.ts';
import type { Paper } from '../../classroom/papers.ts';
import type { Item } from '../../drills/item.ts';
import type { KeptPaper } from './records.ts';
import { isAt } from './sheet.ts';
import { itemStatus, rulesFor, tellsScore } from './status.ts';
import { amendPaper } from './store.ts';
import type { Taken } from './use-assigned.ts';
import { itemAt } from './use-items.ts';

/** What an attempt came to, worked out from questions that are drawn. @throws when the worker has died */
export async function resultAt(paper: Paper, kept: KeptPaper) {
  const items: (Item | null)[] = [];
  for (const place of paper.questions.keys()) items.push(await itemAt(paper, place));
  return paperResult(paper.setting, items, kept.choices);
}

/** Works out, one after another, the scores of papers that may be told and are not yet, and keeps them. */
export function usePaperScores({ assigned, papers, keptPapers }: Taken, now: number, onChange: () => Promise<void>): void {
  const tried = useRef(new Set<string>());
  const { assignment } = assigned;
  const due = papers
    .flatMap((paper) => {
      const status = itemStatus(
        rulesFor(assignment, paper),
        keptPapers.filter((each) => each.item === paper.item),
        now,
      );
      return tellsScore(assignment, status, now) ? status.ended.map((each) => ({ paper, each })) : [];
    })
    .find(({ paper, each }) => each.shown === undefined && isAt(each, paper) && !tried.current.has(`${each.item} ${each.number}`));
  const key = due && `${due.each.item} ${due.each.number}`;
  useEffect(() => {
    if (due === undefined || key === undefined) return;
    tried.current.add(key);
    const score = async () => {
      const { total, passed } = await resultAt(due.paper, due.each);
      // What is handed in from now on says it.
      await amendPaper(assigned.id, due.each, {
        shown: total,
        ...(passed === undefined ? {} : { passed }),
        saved: false,
      });
    };
    // One that cannot be worked out is handed in without; the grader works it out anew anyhow.
    void score()
      .catch(() => undefined)
      .then(onChange);
  }, [key]);
}
