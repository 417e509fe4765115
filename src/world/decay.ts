/** Something that dies away: `height` now, falling to nothing with the time constant `tau`, seconds. */
export interface Decay {
  readonly height: number;
  readonly tau: number;
}

/** Halvings of a stretch of time: enough to come to the last bit of a double. */
const HALVINGS = 60;
/** By then the slower of two is gone, in time constants. */
const GONE = 40;

/**
 * Seconds until one decay, or the sum of two, first crosses `level` after now; Infinity when it never does. One is solved in closed form; the
 * sum of two turns at most once, so it crosses at most once before its turning and once behind it.
 */
export function crossingAfter(decays: readonly Decay[], level: number): number {
  const [a, b] = decays;
  if (!a) return Number.POSITIVE_INFINITY;
  if (!b || b.height === 0) return crossingOfOne(a, level);
  const over = (seconds: number) => a.height * Math.exp(-seconds / a.tau) + b.height * Math.exp(-seconds / b.tau) - level;
  const turn = turningOf(a, b);
  const end = GONE * Math.max(a.tau, b.tau);
  for (const [from, to] of turn > 0 && turn < end ? [[0, turn] as const, [turn, end] as const] : [[0, end] as const]) {
    const [first, last] = [over(from), over(to)];
    if (first !== 0 && first * last < 0) return bisected(over, from, to);
  }
  return Number.POSITIVE_INFINITY;
}

function crossingOfOne({ height, tau }: Decay, level: number): number {
  const share = level / height;
  return share > 0 && share < 1 ? -tau * Math.log(share) : Number.POSITIVE_INFINITY;
}

/** When the sum of two stands still: their slopes are equal and opposite. */
function turningOf(a: Decay, b: Decay): number {
  const ratio = -(b.height * a.tau) / (a.height * b.tau);
  return ratio > 0 && a.tau !== b.tau ? Math.log(ratio) / (1 / b.tau - 1 / a.tau) : Number.NaN;
}

function bisected(over: (seconds: number) => number, from: number, to: number): number {
  const rising = over(to) > 0;
  let [low, high] = [from, to];
  for (let halving = 0; halving < HALVINGS; halving += 1) {
    const middle = (low + high) / 2;
    if (over(middle) > 0 === rising) high = middle;
    else low = middle;
  }
  return high;
}
