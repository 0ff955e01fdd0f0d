import { describe, expect, test } from 'vitest';
import { outline, throughWindow } from '../../src/calculators/scenes/window.ts';

const area = (points: readonly (readonly [number, number])[]): number => Math.abs(points.reduce((sum, p, k) => {
  const q = points[(k + 1) % points.length] as readonly [number, number];
  return sum + (p[0] * q[1] - p[1] * q[0]) / 2;
}, 0));

describe('a part seen through a window', () => {
  test('inside it is whole: a rod of length 2 and radius 0.5 covers about 2 + π/4, a ball about π/4', () => {
    expect(area(throughWindow(outline([[-1, 0], [1, 0]], 0.5), [-3, -3, 3, 3]))).toBeCloseTo(2 + Math.PI / 4, 1);
    expect(area(throughWindow(outline([[0, 0], [0, 0]], 0.5), [-3, -3, 3, 3]))).toBeCloseTo(Math.PI / 4, 1);
  });
  test('running out of it, it is cut off at the edge: what is left is the width times the window', () => {
    const cut = throughWindow(outline([[-10, 0.2], [10, 0.2]], 0.5), [-1, -1, 1, 1]);
    expect(area(cut)).toBeCloseTo(2, 9);
    for (const [x, y] of cut) expect(Math.max(Math.abs(x), Math.abs(y))).toBeLessThanOrEqual(1 + 1e-12);
  });
  test('across a corner only the corner is left, and outside nothing', () => {
    expect(area(throughWindow([[0, 2], [2, 0], [2, 2]], [0, 0, 1.5, 1.5]))).toBeCloseTo(0.5, 9);
    expect(throughWindow(outline([[5, 5], [6, 6]], 0.5), [-1, -1, 1, 1])).toEqual([]);
  });
});
