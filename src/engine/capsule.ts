import { requireFinite, requireNonNegative } from './require.ts';

/** A point in the axes of the frame (m): x forward, y left, z up. */
export interface Point {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/**
 * Shortest distance between two straight pieces, and where.
 *
 *   minimize |A(s) − B(t)|²,  A(s) = a1 + s (a2 − a1),  B(t) = b1 + t (b2 − b1),  0 ≤ s, t ≤ 1
 *
 * The square is a bowl over (s, t), so its least value on the unit square is either at the bowl's own bottom or on an
 * edge, and an edge is one end of a piece against the whole of the other. All five candidates are taken and the
 * nearest kept. Parallel pieces have no bottom of their own and pieces of no length are points: the edges serve both.
 * Each candidate is a pair of points that exist, so a rounding error can make the answer too long by a hair but
 * cannot invent a distance shorter than there is.
 *
 * Clamping the nearest points of the two *infinite* lines one after the other, as is often done, gives too large a
 * distance: the unsafe side.
 *
 * a1, a2, b1, b2 (m, any size) → distance (m), onA, onB (the two nearest points), s, t. Where several pairs are equally
 * near (parallel pieces) one of them is given.
 *
 * @throws RangeError if a coordinate is not finite
 * Source: derived. Worked value: (27.83, 31.74, −26.60)-(13.43, 21.77, 46.81) and (77.54, 7.53, 6.22)-(26.99, 12.39,
 * 11.18) → 15.651394495590; as infinite lines 13.2407097.
 */
export interface Nearest {
  readonly distance: number;
  readonly onA: Point;
  readonly onB: Point;
  readonly s: number;
  readonly t: number;
}

export function segmentDistance({ a1, a2, b1, b2 }: {
  readonly a1: Point;
  readonly a2: Point;
  readonly b1: Point;
  readonly b2: Point;
}): Nearest {
  for (const [name, { x, y, z }] of Object.entries({ a1, a2, b1, b2 })) {
    requireFinite({ [`${name}.x`]: x, [`${name}.y`]: y, [`${name}.z`]: z });
  }
  const u = minus(a2, a1);
  const v = minus(b2, b1);
  const candidates = [
    { s: 0, t: nearestOn(b1, v, a1) },
    { s: 1, t: nearestOn(b1, v, a2) },
    { s: nearestOn(a1, u, b1), t: 0 },
    { s: nearestOn(a1, u, b2), t: 1 },
  ];
  // The bowl's bottom, from cross products: u·u v·v − (u·v)² is the same square but cancels to noise near parallel.
  const normal = cross(u, v);
  const square = dot(normal, normal);
  if (square > 0) {
    const s = dot(cross(minus(b1, a1), v), normal) / square;
    // What error s still has is kept out of t: t is the best partner of that s.
    if (s > 0 && s < 1) candidates.push({ s, t: nearestOn(b1, v, along(a1, u, s)) });
  }
  let best: Nearest | undefined;
  for (const { s, t } of candidates) {
    const onA = s === 1 ? a2 : along(a1, u, s);
    const onB = t === 1 ? b2 : along(b1, v, t);
    const gap = minus(onA, onB);
    const distance = Math.hypot(gap.x, gap.y, gap.z);
    if (best === undefined || distance < best.distance) best = { distance, onA, onB, s, t };
  }
  return best as Nearest;
}

/**
 * Free gap between two round parts, each a straight piece with a radius all round and round ends.
 *
 *   gap = d − r_A − r_B     gapLessError = gap − 2 σ_gap     σ_gap = σ √[(1 − s)² + s² + (1 − t)² + t²]
 *
 * The nearest points sit at s and t along the pieces. An end misplaced by e along the line of the gap moves the point
 * by its part of the way, (1 − s) e or s e; the four ends are independent. So σ_gap is σ in the middle of both parts and
 * √2 σ where end meets end. To first order an error across the gap does not count.
 *
 * radiusA, radiusB (m, 0 or more; for a joint the circle its ears sweep); measurementError σ (m): 1 sigma of one end's
 * position in any one direction (a tape read to ± 5 mm at best nine times in ten: 0.003).
 * gap below 0: the parts overlap by that much along the line between their middles.
 *
 * Neglected: bent parts (use several pieces), flat ends (the round end reaches r further: on the safe side), error of
 * the radii, movement under load (sweep the states and take the least gap).
 *
 * @throws RangeError if a radius or the error is negative; as segmentDistance
 * Source: derived. Worked value: the two pieces above as mm with radii 4 and 5 → gap 6.651 mm.
 */
export function capsuleGap(p: {
  readonly a1: Point;
  readonly a2: Point;
  readonly radiusA: number;
  readonly b1: Point;
  readonly b2: Point;
  readonly radiusB: number;
  readonly measurementError: number;
}): {
  readonly gap: number;
  readonly gapLessError: number;
  readonly gapError: number;
  readonly distance: number;
  readonly onA: Point;
  readonly onB: Point;
  readonly s: number;
  readonly t: number;
} {
  const { radiusA, radiusB, measurementError } = p;
  requireNonNegative({ radiusA, radiusB, measurementError });
  const nearest = segmentDistance(p);
  const gap = nearest.distance - radiusA - radiusB;
  return { gap, ...lessError({ gap, ...nearest, measurementError }), ...nearest };
}

/** What the measuring error makes of a gap whose nearest points lie at s and t: as capsuleGap, where these are known. */
export function lessError({ gap, s, t, measurementError }: { readonly gap: number; readonly s: number; readonly t: number; readonly measurementError: number }): { readonly gapError: number; readonly gapLessError: number } {
  const gapError = measurementError * Math.hypot(1 - s, s, 1 - t, t);
  return { gapError, gapLessError: gap - 2 * gapError };
}

const minus = (p: Point, q: Point): Point => ({ x: p.x - q.x, y: p.y - q.y, z: p.z - q.z });
const dot = (p: Point, q: Point): number => p.x * q.x + p.y * q.y + p.z * q.z;
const cross = (p: Point, q: Point): Point => ({
  x: p.y * q.z - p.z * q.y,
  y: p.z * q.x - p.x * q.z,
  z: p.x * q.y - p.y * q.x,
});
const along = (p: Point, d: Point, k: number): Point => ({ x: p.x + k * d.x, y: p.y + k * d.y, z: p.z + k * d.z });

/** Where on a piece, as a part of its length from 0 to 1, the nearest point to q lies; 0 for a piece of no length. */
function nearestOn(start: Point, direction: Point, q: Point): number {
  const square = dot(direction, direction);
  if (square === 0) return 0;
  return Math.min(1, Math.max(0, dot(minus(q, start), direction) / square));
}
