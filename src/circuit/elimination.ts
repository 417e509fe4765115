/**
 * Sparse symmetric elimination, in the form a network wants.
 *
 * A nodal matrix is kept as the admittances *between* nodes and the admittance of each node *to earth*, not as
 * its diagonal. Eliminating a node is then the star-mesh transform, and needs additions only: the diagonal is the
 * sum of what is joined to the node. Conductances from 1 nS of leakage to 50 S of a closed contact can meet in one
 * node, and no subtraction loses the small one. In the words of linear algebra it is LDLᵀ without pivoting, which
 * exists for every passive network (the real part is positive definite).
 *
 * The order and the fill are worked out once for a topology; factoring and solving are then flat loops.
 */

/** What to do, worked out once for a pattern. Rows are renumbered by the order in which they are eliminated. */
export interface EliminationPlan {
  readonly size: number;
  /** Row → when it is eliminated. */
  readonly positions: Int32Array;
  /** When it is eliminated → row. */
  readonly order: Int32Array;
  /** Edges of the k-th eliminated row stand at starts[k] … starts[k + 1] − 1. */
  readonly starts: Int32Array;
  /** Each edge's other end, a position later than its own. */
  readonly ends: Int32Array;
  /** For every pair of edges of one row, in turn: the edge that the star-mesh transform adds to. */
  readonly fill: Int32Array;
}

/** Numbers of one factorisation. Slots: one an edge, then one a row (to earth), then one that nothing reads. */
export interface ComplexFactor {
  readonly re: Float64Array;
  readonly im: Float64Array;
  /** Edge admittance ÷ the eliminated row's total. */
  readonly shareRe: Float64Array;
  readonly shareIm: Float64Array;
  /** 1 ÷ the eliminated row's total. */
  readonly inverseRe: Float64Array;
  readonly inverseIm: Float64Array;
}

/** As {@link ComplexFactor}, for direct current. */
export interface RealFactor {
  readonly re: Float64Array;
  readonly share: Float64Array;
  readonly inverse: Float64Array;
}

/**
 * Orders the rows by least degree and finds the fill.
 * @param pairs joined rows; both ends in 0 … size − 1; repeats and loops are fine.
 */
export function planElimination(size: number, pairs: Iterable<readonly [number, number]>): EliminationPlan {
  const neighbours = Array.from({ length: size }, () => new Set<number>());
  for (const [a, b] of pairs) {
    if (a === b) continue;
    at(neighbours, a).add(b);
    at(neighbours, b).add(a);
  }
  const order = new Int32Array(size);
  const positions = new Int32Array(size).fill(-1);
  const rows: number[][] = [];
  for (let k = 0; k < size; k++) {
    const row = leastDegree(neighbours, positions);
    order[k] = row;
    positions[row] = k;
    const around = [...at(neighbours, row)];
    rows.push(around);
    for (const a of around) {
      const others = at(neighbours, a);
      others.delete(row);
      for (const b of around) if (a !== b) others.add(b);
    }
  }

  const starts = new Int32Array(size + 1);
  const ends: number[] = [];
  const edgeOf = new Map<number, number>();
  rows.forEach((around, k) => {
    const later = around.map((row) => at(positions, row)).sort((a, b) => a - b);
    for (const end of later) {
      edgeOf.set(k * size + end, ends.length);
      ends.push(end);
    }
    starts[k + 1] = ends.length;
  });
  const fill: number[] = [];
  for (let k = 0; k < size; k++) {
    const later = ends.slice(starts[k], starts[k + 1]);
    later.forEach((a, i) => {
      for (const b of later.slice(i + 1)) fill.push(edgeOf.get(a * size + b) as number);
    });
  }
  return { size, positions, order, starts, ends: Int32Array.from(ends), fill: Int32Array.from(fill) };
}

/** The slot of the admittance between two rows, of a row to earth (b = −1), or the unread slot (a = b, or both earth). */
export function slotBetween(plan: EliminationPlan, a: number, b: number): number {
  const edges = plan.ends.length;
  if (a === b) return edges + plan.size;
  if (a < 0) return edges + at(plan.positions, b);
  if (b < 0) return edges + at(plan.positions, a);
  const k = Math.min(at(plan.positions, a), at(plan.positions, b));
  const end = Math.max(at(plan.positions, a), at(plan.positions, b));
  const edge = plan.ends.subarray(plan.starts[k], plan.starts[k + 1]).indexOf(end);
  if (edge < 0) throw new RangeError(`no edge between rows ${a} and ${b} in this plan`);
  return at(plan.starts, k) + edge;
}

export function createComplexFactor(plan: EliminationPlan): ComplexFactor {
  const edges = plan.ends.length;
  const numbers = (count: number) => new Float64Array(count);
  return {
    re: numbers(edges + plan.size + 1),
    im: numbers(edges + plan.size + 1),
    shareRe: numbers(edges),
    shareIm: numbers(edges),
    inverseRe: numbers(plan.size),
    inverseIm: numbers(plan.size),
  };
}

export function createRealFactor(plan: EliminationPlan): RealFactor {
  const edges = plan.ends.length;
  return {
    re: new Float64Array(edges + plan.size + 1),
    share: new Float64Array(edges),
    inverse: new Float64Array(plan.size),
  };
}

/**
 * Factors in place the admittances stamped into `re` and `im`.
 * @returns −1, or the row whose total vanished or overflowed.
 */
export function factorComplex(plan: EliminationPlan, factor: ComplexFactor): number {
  const { size, starts, ends, fill } = plan;
  const { re, im, shareRe, shareIm, inverseRe, inverseIm } = factor;
  const earth = ends.length;
  let next = 0;
  for (let k = 0; k < size; k++) {
    const first = starts[k]!;
    const last = starts[k + 1]!;
    const earthRe = re[earth + k]!;
    const earthIm = im[earth + k]!;
    let totalRe = earthRe;
    let totalIm = earthIm;
    for (let e = first; e < last; e++) {
      totalRe += re[e]!;
      totalIm += im[e]!;
    }
    const square = totalRe * totalRe + totalIm * totalIm;
    if (!(square > 0 && square < Infinity)) return plan.order[k]!;
    const invRe = totalRe / square;
    const invIm = -totalIm / square;
    inverseRe[k] = invRe;
    inverseIm[k] = invIm;
    for (let e = first; e < last; e++) {
      const sRe = re[e]! * invRe - im[e]! * invIm;
      const sIm = re[e]! * invIm + im[e]! * invRe;
      shareRe[e] = sRe;
      shareIm[e] = sIm;
      const end = earth + ends[e]!;
      re[end]! += sRe * earthRe - sIm * earthIm;
      im[end]! += sRe * earthIm + sIm * earthRe;
    }
    for (let a = first; a < last; a++) {
      const sRe = shareRe[a]!;
      const sIm = shareIm[a]!;
      for (let b = a + 1; b < last; b++) {
        const target = fill[next++]!;
        re[target]! += sRe * re[b]! - sIm * im[b]!;
        im[target]! += sRe * im[b]! + sIm * re[b]!;
      }
    }
  }
  return -1;
}

/** As {@link factorComplex}, for direct current. */
export function factorReal(plan: EliminationPlan, factor: RealFactor): number {
  const { size, starts, ends, fill } = plan;
  const { re, share, inverse } = factor;
  const earth = ends.length;
  let next = 0;
  for (let k = 0; k < size; k++) {
    const first = starts[k]!;
    const last = starts[k + 1]!;
    const toEarth = re[earth + k]!;
    let total = toEarth;
    for (let e = first; e < last; e++) total += re[e]!;
    if (!(total > 0 && total < Infinity)) return plan.order[k]!;
    const inv = 1 / total;
    inverse[k] = inv;
    for (let e = first; e < last; e++) {
      share[e] = re[e]! * inv;
      re[earth + ends[e]!]! += share[e]! * toEarth;
    }
    for (let a = first; a < last; a++) {
      const s = share[a]!;
      for (let b = a + 1; b < last; b++) re[fill[next++]!]! += s * re[b]!;
    }
  }
  return -1;
}

/** Currents pushed into the rows (by position) become what each row held when it was eliminated. */
export function forwardComplex(plan: EliminationPlan, factor: ComplexFactor, re: Float64Array, im: Float64Array): void {
  const { size, starts, ends } = plan;
  const { shareRe, shareIm } = factor;
  for (let k = 0; k < size; k++) {
    const bRe = re[k]!;
    const bIm = im[k]!;
    if (bRe === 0 && bIm === 0) continue;
    for (let e = starts[k]!; e < starts[k + 1]!; e++) {
      const end = ends[e]!;
      re[end]! += shareRe[e]! * bRe - shareIm[e]! * bIm;
      im[end]! += shareRe[e]! * bIm + shareIm[e]! * bRe;
    }
  }
}

/** Carries on from {@link forwardComplex} to the voltages (by position). */
export function backComplex(plan: EliminationPlan, factor: ComplexFactor, re: Float64Array, im: Float64Array): void {
  const { size, starts, ends } = plan;
  const { shareRe, shareIm, inverseRe, inverseIm } = factor;
  for (let k = size - 1; k >= 0; k--) {
    let xRe = re[k]! * inverseRe[k]! - im[k]! * inverseIm[k]!;
    let xIm = re[k]! * inverseIm[k]! + im[k]! * inverseRe[k]!;
    for (let e = starts[k]!; e < starts[k + 1]!; e++) {
      const end = ends[e]!;
      xRe += shareRe[e]! * re[end]! - shareIm[e]! * im[end]!;
      xIm += shareRe[e]! * im[end]! + shareIm[e]! * re[end]!;
    }
    re[k] = xRe;
    im[k] = xIm;
  }
}

/**
 * What one ampere in at a row and out at another meets: the sum over what {@link forwardComplex} makes of it, taken as each row is done.
 * @param a @param b positions of the rows; size is earth
 * @param re @param im room for a right-hand side, of size + 1; left zero where they are zero on entering
 */
export function portComplex(
  plan: EliminationPlan,
  factor: ComplexFactor,
  a: number,
  b: number,
  re: Float64Array,
  im: Float64Array,
  out: { ohms: number; reactance: number },
): void {
  const { size, starts, ends } = plan;
  const { shareRe, shareIm, inverseRe, inverseIm } = factor;
  let ohms = 0;
  let reactance = 0;
  re[a] = 1;
  re[b] = -1;
  for (let k = Math.min(a, b); k < size; k++) {
    const wRe = re[k]!;
    const wIm = im[k]!;
    if (wRe === 0 && wIm === 0) continue;
    re[k] = 0;
    im[k] = 0;
    const squareRe = wRe * wRe - wIm * wIm;
    const squareIm = 2 * wRe * wIm;
    ohms += squareRe * inverseRe[k]! - squareIm * inverseIm[k]!;
    reactance += squareRe * inverseIm[k]! + squareIm * inverseRe[k]!;
    for (let e = starts[k]!; e < starts[k + 1]!; e++) {
      const end = ends[e]!;
      re[end]! += shareRe[e]! * wRe - shareIm[e]! * wIm;
      im[end]! += shareRe[e]! * wIm + shareIm[e]! * wRe;
    }
  }
  re[size] = 0;
  out.ohms = ohms;
  out.reactance = reactance;
}

/** As {@link portComplex}, for direct current: ohms. */
export function portReal(plan: EliminationPlan, factor: RealFactor, a: number, b: number, re: Float64Array): number {
  const { size, starts, ends } = plan;
  const { share, inverse } = factor;
  let ohms = 0;
  re[a] = 1;
  re[b] = -1;
  for (let k = Math.min(a, b); k < size; k++) {
    const w = re[k]!;
    if (w === 0) continue;
    re[k] = 0;
    ohms += w * w * inverse[k]!;
    for (let e = starts[k]!; e < starts[k + 1]!; e++) re[ends[e]!]! += share[e]! * w;
  }
  re[size] = 0;
  return ohms;
}

/** As {@link forwardComplex}, for direct current. */
export function forwardReal(plan: EliminationPlan, factor: RealFactor, re: Float64Array): void {
  const { size, starts, ends } = plan;
  const { share } = factor;
  for (let k = 0; k < size; k++) {
    const b = re[k]!;
    if (b === 0) continue;
    for (let e = starts[k]!; e < starts[k + 1]!; e++) re[ends[e]!]! += share[e]! * b;
  }
}

/** As {@link backComplex}, for direct current. */
export function backReal(plan: EliminationPlan, factor: RealFactor, re: Float64Array): void {
  const { size, starts, ends } = plan;
  const { share, inverse } = factor;
  for (let k = size - 1; k >= 0; k--) {
    let x = re[k]! * inverse[k]!;
    for (let e = starts[k]!; e < starts[k + 1]!; e++) x += share[e]! * re[ends[e]!]!;
    re[k] = x;
  }
}

/** The row not yet eliminated with fewest neighbours, the first of equals: the order must not depend on chance. */
function leastDegree(neighbours: readonly Set<number>[], positions: Int32Array): number {
  let best = -1;
  let least = Infinity;
  for (let row = 0; row < neighbours.length; row++) {
    const degree = at(neighbours, row).size;
    if (at(positions, row) < 0 && degree < least) {
      least = degree;
      best = row;
    }
  }
  return best;
}

function at<T>(list: ArrayLike<T>, index: number): T {
  const item = list[index];
  if (item === undefined) throw new RangeError(`row ${index} is outside this plan`);
  return item;
}
