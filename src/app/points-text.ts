import { number } from './words.ts';

/** Points to the tenth where they are not whole: an overrule, or a share of right answers, may be. */
export const pointsText = (points: number): string => number(points, Number.isInteger(points) ? 0 : 1);
