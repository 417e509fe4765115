/** The two views of one attempt. */
export type BenchKind = 'drawn' | 'list';

/** Which rail lies over the work on a small screen. */
export type Sheet = 'house' | 'meter' | 'coach' | undefined;
