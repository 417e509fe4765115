import { CATALOGUE } from '../../src/parts/catalogue.ts';

/** Kinds that ship, in the catalogue's order: without those that smallRig.ts puts in for tests. */
export const SHIPPED_KINDS: readonly string[] = [...CATALOGUE.keys()].filter((kind) => !kind.startsWith('test'));
