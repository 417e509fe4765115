import { useEffect, useState } from 'preact/hooks';

/** A value that pages look at; each change calls back. */
export interface Store<T> {
  readonly get: () => T;
  readonly watch: (changed: () => void) => () => void;
}

export interface OwnStore<T> extends Store<T> {
  readonly set: (change: Partial<T>) => void;
}

export function storeOf<T extends object>(first: T): OwnStore<T> {
  let value = first;
  const watchers = new Set<() => void>();
  return {
    get: () => value,
    set: (change) => {
      value = { ...value, ...change };
      for (const changed of watchers) changed();
    },
    watch: (changed) => {
      watchers.add(changed);
      return () => watchers.delete(changed);
    },
  };
}

export function useStore<T>(store: Store<T>): T {
  const [value, setValue] = useState(() => store.get());
  useEffect(() => {
    const take = () => setValue(() => store.get());
    take();
    return store.watch(take);
  }, [store]);
  return value;
}
