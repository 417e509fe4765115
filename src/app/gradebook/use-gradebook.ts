import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { type Gradebook, gradebookOf } from '../../classroom/gradebook.ts';
import { goOn, pause, useBook } from './store.ts';

/** While it is being graded, a class is worked out anew this often at most, milliseconds: it compares everybody's log with everybody's. */
const PAUSE = 1000;

/** The book that is open, and its class worked out; grading goes on as long as a page shows it. */
export function useGradebook(): ReturnType<typeof useBook> & { readonly gradebook: Gradebook | undefined } {
  const state = useBook();
  const { book, work } = state;
  const { assignment, entries, overrules, counts } = book;
  useEffect(() => {
    if (work !== 'stopped') void goOn();
    return pause;
  }, []);
  const last = useRef(0);
  const [slow, setSlow] = useState(book);
  useEffect(() => {
    const due = work === 'grading' ? Math.max(0, last.current + PAUSE - performance.now()) : 0;
    const timer = setTimeout(() => {
      last.current = performance.now();
      setSlow(book);
    }, due);
    return () => clearTimeout(timer);
  }, [book, work]);
  const shown = work === 'grading' && slow.assignment === assignment ? slow.entries : entries;
  const gradebook = useMemo(
    () => assignment && gradebookOf({ assignment, entries: [...shown.values()], overrules, counts }),
    [assignment, shown, overrules, counts],
  );
  return { ...state, gradebook };
}
