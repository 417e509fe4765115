/** Something that warms and cools with one time constant: where it stood at `since`, and where it is heading. */
export interface Lag {
  readonly warmth: number;
  readonly target: number;
  readonly since: number;
}

/** Where it stands now. */
export function lagAt({ warmth, target, since }: Lag, now: number, tauSeconds: number): number {
  return target + (warmth - target) * Math.exp((since - now) / tauSeconds);
}

/** When it will have reached a level, seconds; Infinity when it is not heading there or stands there. */
export function lagReaches({ warmth, target, since }: Lag, level: number, tauSeconds: number): number {
  const share = (level - target) / (warmth - target);
  return share > 0 && share < 1 ? since - tauSeconds * Math.log(share) : Number.POSITIVE_INFINITY;
}
