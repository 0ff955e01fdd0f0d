import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bisect, findRoot } from '../../src/engine/roots.ts';

describe('bisect', () => {
  test('x² − 2 between 1 and 2 is zero at √2, to the spacing of doubles', () => {
    expect(Math.abs(bisect((x) => x * x - 2, 1, 2) - Math.SQRT2)).toBeLessThan(3e-16);
  });

  test('the bracket may fall or rise, and may be given backward', () => {
    expect(bisect((x) => 3 - x, 0, 10)).toBeCloseTo(3, 14);
    expect(bisect((x) => x - 3, 10, 0)).toBeCloseTo(3, 14);
  });

  test('a zero at an end is that end', () => {
    expect(bisect((x) => x, 0, 5)).toBe(0);
    expect(bisect((x) => x - 5, 0, 5)).toBe(5);
  });

  test('the root is within the tolerance asked for', () => {
    const x = bisect((t) => t - 0.3, 0, 1, { tolerance: 1e-3 });
    expect(Math.abs(x - 0.3)).toBeLessThan(1e-3);
    expect(x).not.toBe(0.3);
  });

  test('a bracket whose ends have the same sign is refused by name', () => {
    expect(() => bisect((x) => x * x + 1, -1, 1)).toThrow(/bracket: expected opposite signs, found 2 at -1 and 2 at 1/);
    expect(() => bisect((x) => x, -Infinity, 1)).toThrow(RangeError);
    expect(() => bisect(() => NaN, 0, 1)).toThrow(RangeError);
    expect(() => bisect((x) => x, -1, 1, { tolerance: -1 })).toThrow(RangeError);
  });

  test('any cubic that rises gives back the root it was built on', () => {
    fc.assert(
      fc.property(fc.double({ min: -50, max: 50, noNaN: true }), (r) => {
        const x = bisect((t) => (t - r) ** 3 + (t - r), -100, 101);
        expect(Math.abs(x - r)).toBeLessThan(1e-12 * Math.max(1, Math.abs(r)));
      }),
    );
  });
});

describe('findRoot', () => {
  test('the first of three roots of sin from 1 to 10 is π', () => {
    expect(findRoot(Math.sin, 1, 10, 50)).toBeCloseTo(Math.PI, 14);
  });

  test('scanning downward meets the last of them first', () => {
    expect(findRoot(Math.sin, 10, 1, 50)).toBeCloseTo(3 * Math.PI, 13);
  });

  test('a function that never changes sign has no root to report', () => {
    expect(findRoot((x) => x * x + 1, -5, 5, 100)).toBeUndefined();
    expect(findRoot((x) => x - 1, 2, 2, 10)).toBeUndefined();
  });

  test('a stretch where the function has no value is passed over', () => {
    expect(findRoot((x) => Math.sqrt(x) - 1, -3, 3, 60)).toBeCloseTo(1, 14);
  });

  test('a count of steps that is not whole is a mistake of the caller', () => {
    expect(() => findRoot(Math.sin, 0, 1, 0)).toThrow(RangeError);
    expect(() => findRoot(Math.sin, 0, 1, 2.5)).toThrow(RangeError);
    expect(() => findRoot(Math.sin, 0, Infinity, 5)).toThrow(RangeError);
  });
});
