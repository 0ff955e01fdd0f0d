import { isImpossible } from './outcome.ts';
import type { Impossible } from './outcome.ts';
import { requireFinite } from './require.ts';

/**
 * The straight line nearest to measured points, by least squares of y, and how well it is known.
 *
 *   m = Σ (x − x̄)(y − ȳ)/Σ (x − x̄)²     b = ȳ − m x̄     σ² = Σ e²/(n − 2)     error of m = σ/√Σ (x − x̄)²
 *
 * points: two or more. scatter σ and slopeError: one standard deviation, undefined with two points, where any line fits.
 * squares: Σ e². meanX x̄, spreadX Σ (x − x̄)²: for errors elsewhere on the line.
 *
 * Neglected: errors of x itself. With errors of 2 % in x spread over a range of ten to one, m comes out low by about 0.2 %.
 * Impossible 'x-all-alike': points above one another hold no line. @throws RangeError on fewer than two, or not finite ones
 * Source: derived (normal equations). Worked value: (1, 1) (2, 3) (3, 2) → slope 0.5 ± 0.866.
 */
export interface Point {
  readonly x: number;
  readonly y: number;
}

export interface Line {
  readonly slope: number;
  readonly intercept: number;
  readonly slopeError: number | undefined;
  readonly scatter: number | undefined;
  readonly squares: number;
  readonly meanX: number;
  readonly spreadX: number;
  readonly count: number;
}

export function lineFit({ points }: { readonly points: readonly Point[] }): Line | Impossible {
  const count = points.length;
  if (count < 2) throw new RangeError(`points: expected two or more, found ${count}`);
  let meanX = 0;
  let meanY = 0;
  for (const { x, y } of points) {
    requireFinite({ x, y });
    meanX += x / count;
    meanY += y / count;
  }
  if (points.every(({ x }) => x === points[0]?.x)) return { impossible: 'x-all-alike' };
  let spreadX = 0;
  let together = 0;
  for (const { x, y } of points) {
    spreadX += (x - meanX) ** 2;
    together += (x - meanX) * (y - meanY);
  }
  const slope = together / spreadX;
  const squares = points.reduce((sum, { x, y }) => sum + (y - meanY - slope * (x - meanX)) ** 2, 0);
  const scatter = count > 2 ? Math.sqrt(squares / (count - 2)) : undefined;
  return {
    slope, intercept: meanY - slope * meanX, slopeError: scatter === undefined ? undefined : scatter / Math.sqrt(spreadX),
    scatter, squares, meanX, spreadX, count,
  };
}

/**
 * Two straight lines that meet at a knee, nearest to measured points, and the chance that one line would have done.
 *
 *   y = y_k + m_1 (x − x_k) up to x_k,  y_k + m_2 (x − x_k) above      Σ e² least over y_k, m_1, m_2 and x_k
 *
 * For a knee held at x_k the rest is linear. Between two neighboring points the best knee is where the separate lines
 * through the points before and after meet, if they meet between the two; otherwise it is at a point. All of these
 * are tried, so the least Σ e² of any knee from the third point to the last but one is found, not searched.
 *
 * chance: (Σ e² of two lines/Σ e² of one)^((n − 4)/2), the tail of Fisher's F with 2 and n − 4 degrees of freedom; 1 where
 * one line fits perfectly. A knee picked to fit makes it a rough figure: see gaugeFit.ts for what it is worth.
 * Errors are one standard deviation, from σ² = Σ e²/(n − 4) and the height error of each line where they meet,
 * v = σ² (1/n + (x_k − x̄)²/Σ (x − x̄)²): x_k moves by (δ_1 − δ_2)/(m_2 − m_1), y_k by (m_2 δ_1 − m_1 δ_2)/(m_2 − m_1).
 *
 * undefined: fewer than five points, or no place for a knee (too few different x).
 * Neglected: as lineFit. @throws RangeError on points that are not finite
 * Source: derived. Worked value: (0, 0) (1, 1) (2, 2) (3, 2.5) (4, 3) → knee at (2, 2), slopes 1 and 0.5.
 */
export interface BrokenLine {
  readonly kneeX: number;
  readonly kneeY: number;
  readonly kneeXError: number;
  readonly kneeYError: number;
  readonly slopeBefore: number;
  readonly slopeAfter: number;
  readonly slopeBeforeError: number;
  readonly slopeAfterError: number;
  readonly squares: number;
  readonly chance: number;
}

export function brokenLine({ points }: { readonly points: readonly Point[] }): BrokenLine | undefined {
  if (points.length < 5) return undefined;
  const sorted = [...points].sort((a, b) => a.x - b.x);
  const one = lineFit({ points: sorted });
  if (isImpossible(one)) return undefined;
  let best: { readonly at: Hinge; readonly left: Line; readonly right: Line } | undefined;
  for (let split = 3; split <= sorted.length - 2; split += 1) {
    const from = (sorted[split - 1] as Point).x;
    const to = (sorted[split] as Point).x;
    const left = lineFit({ points: sorted.slice(0, split) });
    const right = lineFit({ points: sorted.slice(split) });
    if (from === to || isImpossible(left) || isImpossible(right)) continue;
    const meet = (left.intercept - right.intercept) / (right.slope - left.slope);
    for (const kneeX of meet >= from && meet <= to ? [from, meet, to] : [from, to]) {
      const at = hinge({ sorted, split, kneeX });
      if (best === undefined || at.squares < best.at.squares) best = { at, left, right };
    }
  }
  if (best === undefined) return undefined;
  const { at, left, right } = best;
  const freedom = sorted.length - 4;
  const variance = at.squares / freedom;
  const height = (line: Line): number => variance * (1 / line.count + (at.kneeX - line.meanX) ** 2 / line.spreadX);
  const bend = Math.abs(at.slopeAfter - at.slopeBefore);
  return {
    ...at,
    kneeXError: Math.sqrt(height(left) + height(right)) / bend,
    kneeYError: Math.sqrt(at.slopeAfter ** 2 * height(left) + at.slopeBefore ** 2 * height(right)) / bend,
    slopeBeforeError: Math.sqrt(variance / left.spreadX),
    slopeAfterError: Math.sqrt(variance / right.spreadX),
    chance: one.squares > 0 ? Math.min(1, (at.squares / one.squares) ** (freedom / 2)) : 1,
  };
}

type Hinge = Pick<BrokenLine, 'kneeX' | 'kneeY' | 'slopeBefore' | 'slopeAfter' | 'squares'>;

/** Least squares with the knee held: the first `split` points lie before it. */
function hinge({ sorted, split, kneeX }: { readonly sorted: readonly Point[]; readonly split: number; readonly kneeX: number }): Hinge {
  const sums = (side: readonly Point[]) => {
    const total = { d: 0, dd: 0, dy: 0, y: 0 };
    for (const { x, y } of side) {
      const d = x - kneeX;
      total.d += d;
      total.dd += d * d;
      total.dy += d * y;
      total.y += y;
    }
    return total;
  };
  const l = sums(sorted.slice(0, split));
  const r = sums(sorted.slice(split));
  const kneeY = (l.y + r.y - (l.dy * l.d) / l.dd - (r.dy * r.d) / r.dd) / (sorted.length - l.d ** 2 / l.dd - r.d ** 2 / r.dd);
  const slopeBefore = (l.dy - kneeY * l.d) / l.dd;
  const slopeAfter = (r.dy - kneeY * r.d) / r.dd;
  const squares = sorted.reduce((sum, { x, y }, k) => sum + (y - kneeY - (k < split ? slopeBefore : slopeAfter) * (x - kneeX)) ** 2, 0);
  return { kneeX, kneeY, slopeBefore, slopeAfter, squares };
}
