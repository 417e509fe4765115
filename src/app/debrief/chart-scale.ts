/** Words in lines of at most so many letters; undefined where they need more lines than there are, or have a longer word. */
export function inLines(words: string, letters: number, most: number): readonly string[] | undefined {
  const lines: string[] = [];
  for (const word of words.split(' ')) {
    if (word.length > letters) return undefined;
    const last = lines.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= letters) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines.length <= most ? lines : undefined;
}

/** The figures behind the chart of suspects: where a count and a step fall. Pure, so that tests can hold it to its numbers. */

export interface Plot {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** Height on the page of a count of suspects; logarithmic, one suspect at the bottom, `most` at the top. */
export function countY(plot: Plot, most: number, count: number): number {
  const span = Math.log(Math.max(2, most));
  return plot.top + plot.height * (1 - Math.log(Math.max(1, count)) / span);
}

/** Left edge of a step's column; `index` counts from 0. */
export function stepX(plot: Plot, steps: number, index: number): number {
  return plot.left + (plot.width * index) / Math.max(1, steps);
}

/** Counts worth a line: 1, halvings of the start as far as they stay apart. */
export function ticksOf(most: number): readonly number[] {
  const ticks: number[] = [];
  for (let count = most; count >= 2; count /= 2) {
    const whole = Math.round(count);
    if (whole > 1 && !ticks.includes(whole)) ticks.push(whole);
  }
  return [...ticks, 1];
}

/** The staircase: flat through each step's column, falling at its end. `left[i]` are the suspects after step i of `steps` columns. */
export function stairsPath(plot: Plot, most: number, left: readonly number[], steps = left.length): string {
  const points: string[] = [`M${plot.left} ${countY(plot, most, most)}`];
  left.forEach((count, index) => {
    const x = stepX(plot, steps, index + 1);
    points.push(`H${x}`, `V${countY(plot, most, count)}`);
  });
  return points.join(' ');
}
