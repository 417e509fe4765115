import { useCallback, useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { PER_HOUSE } from '../../drills/draw.ts';
import type { Item } from '../../drills/item.ts';
import { DRILL_KINDS } from '../../drills/kinds.ts';
import { type Asked, answered, numberFor, type Practice, setFor } from '../../drills/practice.ts';
import { engineAlone } from '../engine/engine.ts';
import type { Kept } from '../keeping/store.ts';
import { rigs } from '../library.ts';
import { keepPractice, readPractice } from './keep.ts';

export const SHELF = { kinds: DRILL_KINDS, rigs: [...rigs.keys()].sort() };

/** Items of a set: ten minutes at forty seconds each; common practice, no source. */
export const SET_ITEMS = 15;

export interface Drills {
  /** Undefined while it is read. */
  readonly practice: Practice | undefined;
  readonly kept: Kept;
  /** The next exercise could not be drawn. */
  readonly failed: boolean;
  /** Items of the set under way; undefined without one. */
  readonly set: readonly Asked[] | undefined;
  /** Place in the set. */
  readonly at: number;
  /** Undefined while it is drawn. */
  readonly item: Item | undefined;
  /** The place of the choice that was made. */
  readonly chosen: number | undefined;
  /** Whether each answer of the set so far was right. */
  readonly results: readonly boolean[];
  readonly begin: (kind?: string) => void;
  readonly choose: (choice: number) => void;
  readonly next: () => void;
  /** Ends the set with what was answered so far. */
  readonly stop: () => void;
  readonly leave: () => void;
}

/** A set that was left for the bench ("try it") goes on when one comes back. */
let underWay:
  | {
      readonly set: readonly Asked[];
      readonly at: number;
      readonly item: Item | undefined;
      readonly chosen: number | undefined;
      readonly results: readonly boolean[];
    }
  | undefined;

/** Practice: what was answered, and the set under way. */
export function useDrills(): Drills {
  const [practice, setPractice] = useState<Practice>();
  const [kept, setKept] = useState<Kept>('kept');
  const [state, setState] = useState(underWay);
  const [failed, setFailed] = useState(false);
  const began = useRef(0);
  underWay = state;

  useEffect(() => {
    readPractice().then(setPractice, () => {
      setPractice({ lot: 0, families: {}, skills: {} });
      setKept('failed');
    });
  }, []);

  const asked = state?.set[state.at];
  const drawn = state?.item !== undefined;
  useEffect(() => {
    if (practice === undefined || asked === undefined || drawn) return;
    let current = true;
    const rig = rigs.get(asked.rig);
    if (rig === undefined) return;
    const number = numberFor(practice, asked, SHELF.rigs, PER_HOUSE);
    engineAlone()
      .ask('drill', { kind: asked.kind.id, number, rig })
      .then((item) => {
        if (!current) return;
        began.current = performance.now();
        setState((now) => {
          if (now === undefined) return now;
          if (item !== null) return { ...now, item };
          // This system has nothing to ask of the kind here: the set goes on without it.
          return { ...now, set: now.set.filter((each) => each !== asked) };
        });
      })
      .catch(() => current && setFailed(true));
    return () => {
      current = false;
    };
  }, [practice === undefined, asked, drawn]);

  const begin = useCallback(
    (kind?: string) => {
      if (practice === undefined) return;
      setFailed(false);
      const kinds = kind === undefined ? DRILL_KINDS : DRILL_KINDS.filter(({ id }) => id === kind);
      const set = setFor(practice, { ...SHELF, kinds }, Date.now(), SET_ITEMS);
      setState({ set, at: 0, item: undefined, chosen: undefined, results: [] });
    },
    [practice],
  );
  const choose = useCallback(
    (choice: number) => {
      const now = state;
      const of = now?.set[now.at];
      if (now?.item === undefined || of === undefined || now.chosen !== undefined) return;
      const right = choice === now.item.right;
      const answer = { ...of, right, seconds: (performance.now() - began.current) / 1000, now: Date.now() };
      setState({ ...now, chosen: choice, results: [...now.results, right] });
      setPractice((before) => before && answered(before, answer));
      void keepPractice((before) => answered(before, answer)).then(setKept);
    },
    [state],
  );
  const next = useCallback(() => setState((now) => now && { ...now, at: now.at + 1, item: undefined, chosen: undefined }), []);
  const stop = useCallback(
    () =>
      setState((now) => {
        if (now === undefined || now.results.length === 0) return undefined;
        const set = now.set.slice(0, now.results.length);
        return { ...now, set, at: set.length, item: undefined, chosen: undefined };
      }),
    [],
  );
  const leave = useCallback(() => setState(undefined), []);
  return useMemo(
    () => ({
      practice,
      kept,
      failed,
      set: state?.set,
      at: state?.at ?? 0,
      item: state?.item,
      chosen: state?.chosen,
      results: state?.results ?? [],
      begin,
      choose,
      next,
      stop,
      leave,
    }),
    [practice, kept, failed, state, begin, choose, next, stop, leave],
  );
}
