import fc from 'fast-check';
import { lusolve, matrix, multiply, transpose } from 'mathjs';
import { describe, expect, test } from 'vitest';
import { brokenLine, lineFit } from '../../src/engine/brokenLine.ts';
import type { BrokenLine, Line, Point } from '../../src/engine/brokenLine.ts';
import { isImpossible } from '../../src/engine/outcome.ts';
import type { Impossible } from '../../src/engine/outcome.ts';

function line(points: readonly Point[]): Line {
  const fit: Line | Impossible = lineFit({ points });
  if (isImpossible(fit)) throw new Error(`expected a line, found ${fit.impossible}`);
  return fit;
}
const broken = (points: readonly Point[]): BrokenLine => {
  const fit = brokenLine({ points });
  if (fit === undefined) throw new Error('expected a broken line, found none');
  return fit;
};
// Evenly spread: fc.double would spend most of its trials within a hair of 0.
const range = (min: number, max: number) => fc.integer({ min: 0, max: 1_000_000 }).map((k) => min + ((max - min) * k) / 1_000_000);
const cloud = (min: number, max: number) => fc.array(fc.record({ x: range(0, 10), y: range(-5, 5) }), { minLength: min, maxLength: max });

/** Normal deviates from a seed: the same readings on every machine. */
function normals(seed: number): () => number {
  let state = seed;
  const uniform = (): number => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}

/** Least Σ e² of y over the given columns, by mathjs' solver: no formula of ours. */
function leastSquares(columns: readonly (readonly number[])[], y: readonly number[]): number {
  const x = transpose(matrix(columns.map((c) => [...c])));
  const weights = (lusolve(multiply(transpose(x), x), multiply(transpose(x), matrix([...y]))).toArray() as number[][]).map((w) => w[0] as number);
  return y.reduce((sum, value, k) => sum + (value - columns.reduce((fit, c, j) => fit + (weights[j] as number) * (c[k] as number), 0)) ** 2, 0);
}

describe('lineFit', () => {
  test('three points worked by hand: slope 0.5 ± 0.866', () => {
    const fit = line([{ x: 1, y: 1 }, { x: 2, y: 3 }, { x: 3, y: 2 }]);
    expect(fit.slope).toBeCloseTo(0.5, 15);
    expect(fit.intercept).toBeCloseTo(1, 15);
    expect(fit.squares).toBeCloseTo(1.5, 15);
    expect(fit.slopeError).toBeCloseTo(Math.sqrt(1.5 / 2), 15);
  });

  test('what is left over leans neither up nor down: it sums to nothing, and so does its moment', () => {
    fc.assert(
      fc.property(cloud(3, 12).filter((p) => p.some(({ x }) => Math.abs(x - p[0]!.x) > 0.1)), (points) => {
        const { slope, intercept } = line(points);
        const left = points.map(({ x, y }) => ({ x, e: y - intercept - slope * x }));
        expect(Math.abs(left.reduce((s, { e }) => s + e, 0))).toBeLessThan(1e-9 * (1 + Math.abs(slope)));
        expect(Math.abs(left.reduce((s, { x, e }) => s + x * e, 0))).toBeLessThan(1e-8 * (1 + Math.abs(slope)));
      }),
    );
  });

  test('the error of the slope is what slopes of repeated noise scatter by', () => {
    const noise = normals(11);
    const slopes: number[] = [];
    let claimed = 0;
    for (let k = 0; k < 4000; k += 1) {
      const fit = line(Array.from({ length: 6 }, (_, i) => ({ x: i, y: 3 + 2 * i + 0.2 * noise() })));
      slopes.push(fit.slope);
      claimed += (fit.slopeError as number) ** 2 / 4000;
    }
    const mean = slopes.reduce((a, b) => a + b, 0) / slopes.length;
    expect(mean).toBeCloseTo(2, 2);
    expect(slopes.reduce((s, m) => s + (m - mean) ** 2, 0) / slopes.length / claimed).toBeCloseTo(1, 1);
  });

  test('two points make a line that says nothing of its error; points above one another make none', () => {
    const fit = line([{ x: 1, y: 1 }, { x: 3, y: 5 }]);
    expect(fit).toMatchObject({ slope: 2, slopeError: undefined, scatter: undefined });
    expect(lineFit({ points: [{ x: 1.1, y: 0 }, { x: 1.1, y: 1 }, { x: 1.1, y: 2 }] })).toEqual({ impossible: 'x-all-alike' });
    expect(() => lineFit({ points: [{ x: 1, y: 1 }] })).toThrow(/two or more/);
    expect(() => lineFit({ points: [{ x: 1, y: 1 }, { x: NaN, y: 1 }] })).toThrow(/x: expected/);
  });
});

describe('brokenLine', () => {
  test('five points on two lines give the knee and both slopes', () => {
    const fit = broken([{ x: 0, y: 0 }, { x: 1, y: 1 }, { x: 2, y: 2 }, { x: 3, y: 2.5 }, { x: 4, y: 3 }]);
    expect(fit.kneeX).toBeCloseTo(2, 12);
    expect(fit.kneeY).toBeCloseTo(2, 12);
    expect(fit.slopeBefore).toBeCloseTo(1, 12);
    expect(fit.slopeAfter).toBeCloseTo(0.5, 12);
    expect(fit.chance).toBeLessThan(1e-6);
  });

  test('exact points give back any knee that has three readings before it and two after, in any order', () => {
    fc.assert(
      fc.property(range(2.05, 6.95), range(0.2, 3), range(-1, 0.9), range(-2, 2), (kneeX, before, part, kneeY) => {
        const points = Array.from({ length: 10 }, (_, i) => ({ x: i, y: kneeY + (i < kneeX ? before : before * part) * (i - kneeX) }));
        const fit = broken([...points].sort((a, b) => Math.sin(a.x * 9) - Math.sin(b.x * 9)));
        expect(fit.kneeX).toBeCloseTo(kneeX, 8);
        expect(fit.kneeY).toBeCloseTo(kneeY, 8);
        expect(fit.slopeBefore).toBeCloseTo(before, 8);
        expect(fit.slopeAfter).toBeCloseTo(before * part, 8);
      }),
    );
  });

  test('no knee on a fine grid fits better: solved there as a linear system by another library', () => {
    const noise = normals(3);
    for (let k = 0; k < 25; k += 1) {
      const n = 6 + (k % 5);
      const points = Array.from({ length: n }, (_, i) => ({ x: i + 0.3 * noise(), y: Math.min(i, 3 + 0.4 * (i - 3)) + 0.5 * noise() })).sort((a, b) => a.x - b.x);
      const { squares } = broken(points);
      const x = points.map((p) => p.x);
      const y = points.map((p) => p.y);
      const [first, last] = [x[2] as number, x[n - 2] as number];
      let best = Infinity;
      for (let j = 0; j < 400; j += 1) {
        const knee = first + ((last - first) * j) / 400;
        best = Math.min(best, leastSquares([x.map(() => 1), x, x.map((v) => Math.max(0, v - knee))], y));
      }
      expect(squares).toBeLessThanOrEqual(best * (1 + 1e-9));
      expect(squares).toBeGreaterThan(best * 0.98); // and the grid comes close: it is the same minimum
    }
  });

  test('the chance is the tail of F with 2 and n − 4 degrees of freedom, summed here from its density', () => {
    const noise = normals(17);
    for (const n of [6, 9, 12]) {
      const points = Array.from({ length: n }, (_, i) => ({ x: i, y: 2 * i + noise() }));
      const one = line(points).squares;
      const { squares, chance } = broken(points);
      const freedom = n - 4;
      const f = (one - squares) / 2 / (squares / freedom);
      // Density of F(2, ν): (1 + 2 f/ν)^−(ν/2 + 1). Integrated over u = 1/(1 + t) from f to infinity.
      let tail = 0;
      const steps = 20000;
      for (let k = 0; k < steps; k += 1) {
        const u = ((k + 0.5) / steps) / (1 + f);
        tail += (1 + (2 * (1 / u - 1)) / freedom) ** (-freedom / 2 - 1) / u ** 2 / (steps * (1 + f));
      }
      expect(chance).toBeCloseTo(tail, 5);
    }
  });

  test.each([5.4, 8.6])('a plain knee at %f of 0–11, and both slopes, scatter by the errors they claim', (kneeX) => {
    const noise = normals(23);
    const off = { kneeX: 0, kneeY: 0, slopeBefore: 0, slopeAfter: 0 };
    const claimed = { ...off };
    const truth = { kneeX, kneeY: kneeX, slopeBefore: 1, slopeAfter: 0.4 };
    for (let k = 0; k < 3000; k += 1) {
      const fit = broken(Array.from({ length: 12 }, (_, i) => ({ x: i, y: Math.min(i, kneeX + 0.4 * (i - kneeX)) + 0.03 * noise() })));
      for (const key of Object.keys(off) as (keyof typeof off)[]) {
        off[key] += (fit[key] - truth[key]) ** 2;
        claimed[key] += fit[`${key}Error`] ** 2;
      }
    }
    for (const key of Object.keys(off) as (keyof typeof off)[]) {
      expect(Math.sqrt(off[key] / claimed[key]), key).toBeGreaterThan(0.93);
      expect(Math.sqrt(off[key] / claimed[key]), key).toBeLessThan(1.07);
    }
  });

  test('four points, or too few different ones, hold no knee; a perfect line needs none', () => {
    const straight = Array.from({ length: 8 }, (_, i) => ({ x: i, y: 2 * i }));
    expect(brokenLine({ points: straight.slice(0, 4) })).toBeUndefined();
    expect(brokenLine({ points: [0, 0, 0, 0, 0, 1, 1].map((x) => ({ x, y: x })) })).toBeUndefined();
    expect(brokenLine({ points: [1, 1, 1, 1, 1].map((x, y) => ({ x, y })) })).toBeUndefined();
    expect(broken(straight).chance).toBe(1);
  });
});
