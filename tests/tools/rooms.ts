/**
 * The rooms of the house, highest first. A room may import only from rooms below it; this list is the only place that
 * says which is higher.
 */
export const ROOMS = [
  'app',
  'stage',
  'sound',
  'cli',
  'host',
  'classroom',
  'drills',
  'scenario',
  'score',
  'suspects',
  'attempt',
  'meter',
  'world',
  'rig',
  'parts',
  'diagnosis',
  'circuit',
] as const;

export type Room = (typeof ROOMS)[number];

/** The rooms that run alike in a browser, a worker and Node: from here down no DOM, no clock, no global random. */
export const BELOW_THE_LINE: readonly Room[] = ROOMS.slice(ROOMS.indexOf('classroom'));

/** The only libraries that rooms below the line may import. */
export const LIBRARIES_BELOW_THE_LINE: readonly string[] = [
  'zod',
  '@noble/hashes',
  'simple-statistics',
  'papaparse',
  'fflate',
  'pure-rand',
  'ts-fsrs',
];

/** Rooms that a person's browser never loads, so the pages must not import them although they are lower. */
export const NOT_FOR_PAGES: readonly Room[] = ['cli', 'host'];
