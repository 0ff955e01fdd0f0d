import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bendsTighter, lineSlack } from '../../src/engine/lineSlack.ts';

const range = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const radius = (length: number, distance: number): number => lineSlack({ length, distance }).gentlestRadius ?? Infinity;

describe('lineSlack', () => {
  test('of a quarter circle finds its radius', () => {
    expect(lineSlack({ length: Math.PI / 2, distance: Math.SQRT2 })).toEqual({ slack: expect.closeTo(Math.PI / 2 - Math.SQRT2, 12), gentlestRadius: expect.closeTo(1, 9) });
  });

  test('finds the radius of any arc from its length and chord', () => {
    fc.assert(fc.property(range(0.01, 10), range(0.02, 2 * Math.PI - 0.01), (r, angle) => {
      expect(radius(r * angle, 2 * r * Math.sin(angle / 2)) / r).toBeCloseTo(1, 5);
    }));
  });

  test('with its ends together is one full loop, straight it bends nowhere, and too short it lacks the rest', () => {
    expect(radius(2 * Math.PI, 0)).toBeCloseTo(1, 12);
    expect(lineSlack({ length: 1, distance: 1 })).toEqual({ slack: 0 });
    expect(lineSlack({ length: 1, distance: 1.2 })).toEqual({ slack: expect.closeTo(-0.2, 12) });
  });

  test('bends more gently the farther its ends are apart, and scales as a whole', () => {
    fc.assert(fc.property(range(0.1, 5), range(0, 0.97), range(0.001, 0.02), (length, part, more) => {
      expect(radius(length, length * (part + more))).toBeGreaterThan(radius(length, length * part));
      expect(radius(2 * length, 2 * length * part) / radius(length, length * part)).toBeCloseTo(2, 6);
    }));
  });

  // Curves in space that bend nowhere tighter than radius 1, made of short arcs with a turning normal.
  test('no curve in space bends more gently than it says', () => {
    fc.assert(fc.property(fc.array(fc.tuple(range(0, 1), range(-Math.PI, Math.PI)), { minLength: 3, maxLength: 12 }), range(0.3, 2 * Math.PI), (bends, length) => {
      let [p, t, n]: [V, V, V] = [[0, 0, 0], [1, 0, 0], [0, 1, 0]];
      const step = length / bends.length;
      for (const [curvature, roll] of bends) {
        n = add(scale(n, Math.cos(roll)), scale(cross(t, n), Math.sin(roll)));
        const turn = curvature * step;
        const [along, across] = curvature < 1e-9 ? [step, 0] : [Math.sin(turn) / curvature, (1 - Math.cos(turn)) / curvature];
        p = add(p, add(scale(t, along), scale(n, across)));
        [t, n] = [add(scale(t, Math.cos(turn)), scale(n, Math.sin(turn))), add(scale(n, Math.cos(turn)), scale(t, -Math.sin(turn)))];
      }
      const tightest = Math.max(...bends.map(([curvature]) => curvature));
      expect(radius(length, Math.min(length, Math.hypot(...p)))).toBeGreaterThanOrEqual((1 / tightest) * (1 - 1e-6));
    }), { numRuns: 400 });
  });

  test('and the question whether it must bend tighter have one answer', () => {
    fc.assert(fc.property(range(0.1, 5), range(0, 0.999), range(0.01, 3), (length, part, r) => {
      const gentlest = radius(length, length * part);
      fc.pre(Math.abs(gentlest - r) > 1e-6 * r);
      expect(bendsTighter({ length, distance: length * part, radius: r })).toBe(gentlest < r);
    }), { numRuns: 500 });
    expect([1.4, 1.5].map((distance) => bendsTighter({ length: Math.PI / 2, distance, radius: 1 }))).toEqual([true, false]);
  });

  test('refuses a length or distance that cannot be', () => {
    for (const p of [{ length: 0, distance: 1 }, { length: 1, distance: -1 }, { length: NaN, distance: 1 }]) expect(() => lineSlack(p)).toThrow(RangeError);
  });
});

type V = readonly [number, number, number];
const add = (a: V, b: V): V => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
const scale = (a: V, k: number): V => [a[0] * k, a[1] * k, a[2] * k];
const cross = (a: V, b: V): V => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
