import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isImpossible } from '../../src/engine/outcome.ts';
import { locate } from '../../src/engine/placement.ts';
import type { Place, Reference } from '../../src/engine/placement.ts';
import { eigenSymmetric3 } from '../../src/engine/symmetric3.ts';
import type { Row3 } from '../../src/engine/symmetric3.ts';

const inch = 0.0254;
const placesOf = (references: readonly Reference[], rest: { tapeError?: number; markError?: number } = {}): readonly Place[] => {
  const r = locate({ references, ...rest });
  if (isImpossible(r)) throw new Error(`${r.impossible} ${r.by}`);
  return r.places;
};
const from = (mark: Row3, point: Row3): Reference => ({ from: mark, distance: Math.hypot(mark[0] - point[0], mark[1] - point[1], mark[2] - point[2]) });

test('three marks in a plane: the point below and its image above (worked by hand)', () => {
  const references: Reference[] = [{ from: [0, 0, 0], distance: 0.75829 }, { from: [0.9, 0, 0], distance: 0.46368 }, { from: [0.2, 0.6, 0], distance: 0.6442 }];
  const [below, above] = placesOf(references);
  expect(below?.point.map((x) => Math.round(x * 1e3))).toEqual([650, 250, -300]);
  expect(above?.point.map((x) => Math.round(x * 1e3))).toEqual([650, 250, 300]);
  const moved = placesOf([{ from: [0, 0, 0], distance: 0.76029 }, ...references.slice(1)])[0]?.point as Row3;
  expect(moved[0]).toBeCloseTo(0.6517, 4);
  expect(moved[1]).toBeCloseTo(0.252, 3);
  expect(Math.abs(moved[2] + 0.2998)).toBeLessThan(1e-4);
});

test('a factory pad 7 in over the bare floor and 9.5 in from a point of the dash (a fact of the trade, common practice, no source)', () => {
  const dash: Row3 = [0, 0.3, 15 * inch];
  const [first, second] = placesOf([{ from: dash, distance: 9.5 * inch }, { height: 7 * inch }, { lateral: 0.3 }]);
  const away = Math.sqrt(9.5 ** 2 - 8 ** 2) * inch;
  expect([first?.point[0], second?.point[0]].map((x) => Number(x).toFixed(6)).sort()).toEqual([(-away).toFixed(6), away.toFixed(6)].sort());
  for (const place of [first, second]) {
    expect(Math.hypot(place!.point[0] - dash[0], place!.point[2] - dash[2])).toBeCloseTo(9.5 * inch, 9);
    expect(place?.point[2]).toBeCloseTo(7 * inch, 9);
  }
});

test('any point comes back from its own distances, below the plane of the marks', () => {
  const place = fc.tuple(fc.double({ min: -0.6, max: 0.6, noNaN: true }), fc.double({ min: -0.4, max: 0.4, noNaN: true }), fc.double({ min: -0.9, max: -0.1, noNaN: true }));
  fc.assert(fc.property(place, (point) => {
    const [lower] = placesOf([from([0, 0, 0.02], point), from([0.5, -0.3, 0], point), from([0.1, 0.45, -0.03], point)]);
    expect(Math.hypot(...point.map((x, k) => x - (lower?.point[k] as number)))).toBeLessThan(1e-6);
  }), { numRuns: 200 });
});

describe('a fourth mark', () => {
  const point: Row3 = [0.3, 0.1, -0.5];
  const marks: Row3[] = [[0, 0, 0], [0.8, 0, 0], [0.1, 0.6, 0], [0.4, 0.2, 0.5]];

  test('off the plane settles which image it is', () => {
    const places = placesOf(marks.map((m) => from(m, point)));
    expect(places).toHaveLength(1);
    expect(places[0]?.worst).toBeLessThan(1e-9);
    expect(places[0]?.point[2]).toBeCloseTo(-0.5, 9);
  });

  test('shows a slip of the tape as a residual, and no other point fits better', () => {
    const references = marks.map((m) => from(m, point)).map((r, k) => (k === 1 && 'from' in r ? { ...r, distance: r.distance + 0.02 } : r));
    const best = placesOf(references)[0] as Place;
    expect(best.residual).toBeGreaterThan(0.002);
    const cost = (p: Row3): number => references.reduce((sum, r) => sum + ('from' in r ? (Math.hypot(...r.from.map((x, k) => x - (p[k] as number))) - r.distance) ** 2 : 0), 0);
    for (const nudge of [[1e-4, 0, 0], [0, 1e-4, 0], [0, 0, 1e-4], [-1e-4, 0, 0], [0, -1e-4, 0], [0, 0, -1e-4]]) {
      expect(cost(best.point.map((x, k) => x + (nudge[k] as number)) as unknown as Row3)).toBeGreaterThan(cost(best.point));
    }
  });
});

describe('how sure', () => {
  test('the error ellipsoid is what many slips of the tape give', () => {
    const point: Row3 = [0.3, 0.1, -0.25];
    const marks: Row3[] = [[0, 0, 0], [0.8, 0, 0], [0.1, 0.6, 0]];
    const [exact] = placesOf(marks.map((m) => from(m, point)), { tapeError: 0.002 });
    // Central differences of each distance, combined as independent.
    const moves = marks.map((_, j) => {
      const shifted = (by: number): Row3 => placesOf(marks.map((m) => from(m, point)).map((r, k) => (k === j && 'from' in r ? { ...r, distance: r.distance + by } : r)))[0]?.point as Row3;
      const [up, down] = [shifted(1e-5), shifted(-1e-5)];
      return up.map((x, k) => ((x - (down[k] as number)) / 2e-5) * 0.002);
    });
    for (const axis of [0, 1, 2] as const) expect(exact?.sigma[axis]).toBeCloseTo(Math.hypot(...moves.map((m) => m[axis] as number)), 6);
    expect(exact?.longest).toBeGreaterThanOrEqual(Math.max(...(exact?.sigma ?? [])));
  });

  test('a point close to the plane of the marks is poorly seen across it: δz = r δr/z', () => {
    const near: Row3 = [0.3, 0.2, -0.04];
    const marks: Row3[] = [[0, 0, 0], [0.8, 0, 0], [0.1, 0.6, 0]];
    const [place] = placesOf(marks.map((m) => from(m, near)), { tapeError: 0.002 });
    expect(place?.weakness).toBeGreaterThan(5);
    expect(Math.abs(place?.direction[2] ?? 0)).toBeGreaterThan(0.9);
  });

  test('no error of tape and marks, no spread', () => {
    expect(placesOf([[0, 0, 0], [0.8, 0, 0], [0.1, 0.6, 0]].map((m) => from(m as unknown as Row3, [0.3, 0.1, -0.4])), { tapeError: 0 })[0]?.sigma).toEqual([0, 0, 0]);
  });
});

describe('what cannot be', () => {
  const point: Row3 = [0.3, 0.1, -0.4];
  test('marks on top of each other', () => {
    expect(locate({ references: [[0, 0, 0], [0, 0, 0.0002], [0.1, 0.6, 0]].map((m) => from(m as unknown as Row3, point)) })).toMatchObject({ impossible: 'marks-coincide' });
  });
  test('marks in one line, by the height of their triangle', () => {
    const r = locate({ references: [[0, 0, 0], [0.4, 0.001, 0], [0.8, 0, 0]].map((m) => from(m as unknown as Row3, point)) });
    expect(r).toMatchObject({ impossible: 'marks-in-line' });
    expect((r as { by: number }).by).toBeLessThan(0.003);
  });
  test('distances too short to meet, by what they miss', () => {
    const r = locate({ references: [{ from: [0, 0, 0], distance: 0.2 }, { from: [1, 0, 0], distance: 0.2 }, { from: [0, 1, 0], distance: 0.9 }] });
    expect(r).toMatchObject({ impossible: 'do-not-meet' });
    expect((r as { by: number }).by).toBeGreaterThan(0.1);
    expect((r as { by: number }).by).toBeLessThan(0.6);
  });
  test('two measurements, and a distance of nothing, are the programmer’s errors', () => {
    expect(() => locate({ references: [from([0, 0, 0], point), { height: 0 }] })).toThrow(/references/);
    expect(() => locate({ references: [{ from: [0, 0, 0], distance: 0 }, { height: 0 }, { lateral: 0 }] })).toThrow(/distance/);
  });
});

test('the half-axes of the error, squared and added along x, y and z, give its spread there', () => {
  const [place] = placesOf([[0, 0, 0], [0.8, 0, 0], [0.1, 0.6, 0]].map((m) => from(m as unknown as Row3, [0.3, 0.1, -0.25])));
  for (const axis of [0, 1, 2] as const) expect(Math.hypot(...(place?.axes ?? []).map((half) => half[axis]))).toBeCloseTo(place?.sigma[axis] as number, 12);
});

test('eigenvalues: their sum is the trace, and each vector is only stretched', () => {
  fc.assert(fc.property(fc.array(fc.double({ min: -5, max: 5, noNaN: true }), { minLength: 6, maxLength: 6 }), (n) => {
    const [a, b, c, d, e, f] = n as [number, number, number, number, number, number];
    const matrix = [[a, b, c], [b, d, e], [c, e, f]] as const;
    const { values, vectors } = eigenSymmetric3({ matrix });
    expect(values[0] + values[1] + values[2]).toBeCloseTo(a + d + f, 9);
    vectors.forEach((v, k) => matrix.forEach((row, r) => expect(row[0] * v[0] + row[1] * v[1] + row[2] * v[2]).toBeCloseTo((values[k] as number) * (v[r] as number), 8)));
  }));
});
