/**
 * Exact confidence interval of a share (Clopper and Pearson, Biometrika 26, 1934): the true share lies in it in at least so many of all cases,
 * whatever it is.
 * @param right 0 … asked
 * @param asked from 1
 * @param confidence 0…1
 */
export function shareInterval(right: number, asked: number, confidence = 0.95): { readonly low: number; readonly high: number } {
  const tail = (1 - confidence) / 2;
  return {
    low: right === 0 ? 0 : root((share) => 1 - atMost(right - 1, asked, share) - tail),
    high: right === asked ? 1 : root((share) => tail - atMost(right, asked, share)),
  };
}

/** Where a rising function of 0…1 crosses zero. */
function root(of: (share: number) => number): number {
  let [low, high] = [0, 1];
  for (let step = 0; step < 60; step++) {
    const middle = (low + high) / 2;
    if (of(middle) < 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Chance of at most so many right of those asked, by the binomial distribution. */
function atMost(right: number, asked: number, share: number): number {
  let sum = 0;
  let logs = 0;
  for (let count = 0; count <= right; count++) {
    if (count > 0) logs += Math.log((asked - count + 1) / count);
    sum += Math.exp(logs + count * Math.log(share) + (asked - count) * Math.log1p(-share));
  }
  return Math.min(1, sum);
}
