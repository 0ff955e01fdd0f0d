import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { capsuleGap, segmentDistance } from '../../src/engine/capsule.ts';
import type { Point } from '../../src/engine/capsule.ts';

const range = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const point = (x: number, y: number, z: number): Point => ({ x, y, z });
const anyPoint = fc.record({ x: range(-1, 1), y: range(-1, 1), z: range(-1, 1) });
const anyPair = fc.record({ a1: anyPoint, a2: anyPoint, b1: anyPoint, b2: anyPoint });
const apart = (p: Point, q: Point) => Math.hypot(p.x - q.x, p.y - q.y, p.z - q.z);
const between = (p: Point, q: Point, k: number) => point(p.x + k * (q.x - p.x), p.y + k * (q.y - p.y), p.z + k * (q.z - p.z));

function crossLength(p: { a1: Point; a2: Point; b1: Point; b2: Point }): number {
  const u = point(p.a2.x - p.a1.x, p.a2.y - p.a1.y, p.a2.z - p.a1.z);
  const v = point(p.b2.x - p.b1.x, p.b2.y - p.b1.y, p.b2.z - p.b1.z);
  return Math.hypot(u.y * v.z - u.z * v.y, u.z * v.x - u.x * v.z, u.x * v.y - u.y * v.x);
}

/** Distance along A to B is convex in both parameters, so thirding the interval twice, one inside the other, cannot miss. */
function byThirds(p: { a1: Point; a2: Point; b1: Point; b2: Point }): number {
  const least = (f: (k: number) => number) => {
    let [lo, hi] = [0, 1];
    for (let i = 0; i < 90; i += 1) {
      const l = lo + (hi - lo) / 3;
      const r = hi - (hi - lo) / 3;
      if (f(l) < f(r)) hi = r;
      else lo = l;
    }
    return f((lo + hi) / 2);
  };
  return least((s) => least((t) => apart(between(p.a1, p.a2, s), between(p.b1, p.b2, t))));
}

describe('segmentDistance', () => {
  test('no pair on a fine grid over both pieces is nearer, and the best of the grid is hardly farther', () => {
    fc.assert(
      fc.property(anyPair, (p) => {
        const { distance } = segmentDistance(p);
        let grid = Infinity;
        for (let i = 0; i <= 100; i += 1) {
          for (let j = 0; j <= 100; j += 1) grid = Math.min(grid, apart(between(p.a1, p.a2, i / 100), between(p.b1, p.b2, j / 100)));
        }
        expect(distance).toBeLessThanOrEqual(grid + 1e-12);
        expect(grid - distance).toBeLessThan(0.04);
      }),
      { numRuns: 40, endOnFailure: true },
    );
  });

  test('agrees with a nested search that knows no formula', () => {
    fc.assert(
      fc.property(anyPair, (p) => {
        expect(Math.abs(segmentDistance(p).distance - byThirds(p))).toBeLessThan(1e-7);
      }),
      { numRuns: 60, endOnFailure: true },
    );
  });

  test('the points it names lie at the parameters it names, and are that far apart', () => {
    fc.assert(
      fc.property(anyPair, (p) => {
        const { distance, onA, onB, s, t } = segmentDistance(p);
        expect(s >= 0 && s <= 1 && t >= 0 && t <= 1).toBe(true);
        expect(apart(onA, between(p.a1, p.a2, s))).toBeLessThan(1e-12);
        expect(apart(onB, between(p.b1, p.b2, t))).toBeLessThan(1e-12);
        expect(apart(onA, onB)).toBeCloseTo(distance, 12);
      }),
    );
  });

  test('swapping the pieces or turning one end for end does not change the distance', () => {
    fc.assert(
      fc.property(anyPair, (p) => {
        const { distance } = segmentDistance(p);
        expect(segmentDistance({ a1: p.b1, a2: p.b2, b1: p.a1, b2: p.a2 }).distance).toBeCloseTo(distance, 12);
        expect(segmentDistance({ ...p, a1: p.a2, a2: p.a1 }).distance).toBeCloseTo(distance, 12);
      }),
    );
  });

  test('moving and turning both pieces together does not change the distance, scaling scales it', () => {
    fc.assert(
      fc.property(anyPair, anyPoint, range(-3, 3), range(0.01, 100), (p, shift, angle, size) => {
        const map = (q: Point) => {
          const turned = point(q.x * Math.cos(angle) - q.y * Math.sin(angle), q.x * Math.sin(angle) + q.y * Math.cos(angle), q.z);
          return point(size * (turned.x + shift.x), size * (turned.y + shift.y), size * (turned.z + shift.z));
        };
        const other = segmentDistance({ a1: map(p.a1), a2: map(p.a2), b1: map(p.b1), b2: map(p.b2) }).distance;
        expect(other / size).toBeCloseTo(segmentDistance(p).distance, 10);
      }),
    );
  });

  test('pieces of no length are points', () => {
    const a = point(0, 0, 0);
    expect(segmentDistance({ a1: a, a2: a, b1: point(3, 4, 0), b2: point(3, 4, 0) }).distance).toBe(5);
    expect(segmentDistance({ a1: a, a2: a, b1: point(-1, 2, 0), b2: point(1, 2, 0) })).toMatchObject({ distance: 2, t: 0.5 });
    expect(segmentDistance({ a1: a, a2: a, b1: a, b2: a }).distance).toBe(0);
  });

  test('parallel pieces side by side, end to end, and one inside the other', () => {
    const a = { a1: point(0, 0, 0), a2: point(1, 0, 0) };
    expect(segmentDistance({ ...a, b1: point(0.2, 0.3, 0), b2: point(0.8, 0.3, 0) }).distance).toBeCloseTo(0.3, 12);
    expect(segmentDistance({ ...a, b1: point(4, 4, 0), b2: point(9, 4, 0) }).distance).toBeCloseTo(5, 12);
    expect(segmentDistance({ ...a, b1: point(0.5, 0, 0), b2: point(2, 0, 0) }).distance).toBe(0);
    expect(segmentDistance({ ...a, b1: point(3, 0, 0), b2: point(2, 0, 0) })).toMatchObject({ distance: 1, s: 1, t: 1 });
  });

  test('nearly parallel pieces that cross at a hair keep the least distance', () => {
    for (const tip of [1e-3, 1e-6, 1e-9, 1e-12]) {
      const p = { a1: point(-1, 0, 0), a2: point(1, 0, 0), b1: point(-1, -tip, 1e-3), b2: point(1, tip, 1e-3) };
      expect(segmentDistance(p).distance).toBeCloseTo(1e-3, 12);
    }
  });

  test('pieces that cross touch, and lifting one by 7 mm makes 7 mm', () => {
    const a = { a1: point(-1, -1, 0), a2: point(1, 1, 0) };
    expect(segmentDistance({ ...a, b1: point(-1, 1, 0), b2: point(1, -1, 0) }).distance).toBeCloseTo(0, 12);
    expect(segmentDistance({ ...a, b1: point(-1, 1, 0.007), b2: point(1, -1, 0.007) })).toMatchObject({
      distance: expect.closeTo(0.007, 12), s: expect.closeTo(0.5, 12), t: expect.closeTo(0.5, 12),
    });
  });

  test('shortening a piece never brings the two nearer', () => {
    fc.assert(
      fc.property(anyPair, range(0, 1), (p, k) => {
        const shorter = segmentDistance({ ...p, a2: between(p.a1, p.a2, k) }).distance;
        expect(shorter).toBeGreaterThanOrEqual(segmentDistance(p).distance - 1e-12);
      }),
    );
  });

  test('a coordinate that is no number is a programmer error', () => {
    const a = point(0, 0, 0);
    expect(() => segmentDistance({ a1: a, a2: a, b1: a, b2: point(0, Number.NaN, 0) })).toThrow(/b2\.y/);
  });
});

describe('capsuleGap', () => {
  const crossed = { a1: point(-1, 0, 0), a2: point(1, 0, 0), b1: point(0, -1, 0.1), b2: point(0, 1, 0.1) };

  test('is the distance of the middles less both radii, and goes below nothing where the parts overlap', () => {
    expect(capsuleGap({ ...crossed, radiusA: 0.02, radiusB: 0.03, measurementError: 0 }).gap).toBeCloseTo(0.05, 12);
    expect(capsuleGap({ ...crossed, radiusA: 0.08, radiusB: 0.03, measurementError: 0 }).gap).toBeCloseTo(-0.01, 12);
  });

  test('two balls: the gap of their centers less their radii', () => {
    const a = point(0, 0, 0);
    const b = point(0.3, 0.4, 0);
    expect(capsuleGap({ a1: a, a2: a, radiusA: 0.1, b1: b, b2: b, radiusB: 0.15, measurementError: 0 }).gap).toBeCloseTo(0.25, 12);
  });

  test('an error of the ends counts once in the middle of both parts and √2 times where end meets end', () => {
    const at = (p: typeof crossed) => capsuleGap({ ...p, radiusA: 0, radiusB: 0, measurementError: 0.003 });
    expect(at(crossed).gapError).toBeCloseTo(0.003, 12);
    const ends = { a1: point(0, 0, 0), a2: point(1, 0, 0), b1: point(1.5, 0, 0.2), b2: point(3, 0, 1) };
    expect(at(ends).gapError).toBeCloseTo(0.003 * Math.SQRT2, 12);
    expect(at(ends).gapLessError).toBeCloseTo(at(ends).gap - 2 * at(ends).gapError, 12);
  });

  test('shifting one end along the gap moves the gap by its part of the way, the slope the error law rests on', () => {
    fc.assert(
      fc.property(anyPair, (p) => {
        const base = { ...p, radiusA: 0, radiusB: 0, measurementError: 1 };
        const one = capsuleGap(base);
        // Parallel pieces have no single nearest pair, so there the gap has no one slope.
        const turn = crossLength(p) / (apart(p.a1, p.a2) * apart(p.b1, p.b2));
        fc.pre(one.distance > 0.2 && apart(p.a1, p.a2) > 0.1 && apart(p.b1, p.b2) > 0.1 && turn > 0.1);
        const e = 1e-6;
        const way = point((one.onB.x - one.onA.x) / one.distance, (one.onB.y - one.onA.y) / one.distance, (one.onB.z - one.onA.z) / one.distance);
        const shifted = (q: Point, k: number) => point(q.x + k * e * way.x, q.y + k * e * way.y, q.z + k * e * way.z);
        const closes = (change: object) => (one.gap - capsuleGap({ ...base, ...change }).gap) / e;
        const parts = [
          closes({ a1: shifted(p.a1, 1) }), closes({ a2: shifted(p.a2, 1) }), closes({ b1: shifted(p.b1, -1) }), closes({ b2: shifted(p.b2, -1) }),
        ];
        expect(Math.hypot(...parts)).toBeCloseTo(one.gapError, 3);
      }),
    );
  });

  test('thicker parts leave less and a worse tape leaves less still', () => {
    const at = (radiusA: number, measurementError: number) => capsuleGap({ ...crossed, radiusA, radiusB: 0.02, measurementError }).gapLessError;
    expect(at(0.03, 0.002)).toBeLessThan(at(0.02, 0.002));
    expect(at(0.02, 0.004)).toBeLessThan(at(0.02, 0.002));
  });

  test('a negative radius is a programmer error', () => {
    expect(() => capsuleGap({ ...crossed, radiusA: -1, radiusB: 0, measurementError: 0 })).toThrow(/radiusA/);
  });
});
