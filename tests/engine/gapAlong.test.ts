import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { gapAlong } from '../../src/engine/gapAlong.ts';

const any = fc.record({ x: fc.double({ min: -2, max: 2, noNaN: true }), y: fc.double({ min: -2, max: 2, noNaN: true }), z: fc.double({ min: -2, max: 2, noNaN: true }) });
const o = { x: 0, y: 0, z: 0 };

describe('gapAlong', () => {
  test('turns negative when a part has come through the other', () => {
    expect(gapAlong({ a: o, b: { x: 0, y: 0, z: 0.1 }, dx: 0, dy: 0, dz: -0.12 })).toBeCloseTo(-0.02, 12);
  });
  test('does not change when the parts slide past each other', () => {
    expect(gapAlong({ a: o, b: { x: 0.1, y: 0, z: 0 }, dx: 0, dy: 0, dz: -0.5 })).toBeCloseTo(0.1, 12);
  });
  test('of a sloped face loses the drop times the sine of its angle from upright', () => {
    const angle = Math.PI / 4;
    expect(gapAlong({ a: o, b: { x: -Math.cos(angle), y: 0, z: Math.sin(angle) }, dx: 0, dy: 0, dz: -0.0762 })).toBeCloseTo(1 - 0.0762 * Math.sin(angle), 12);
  });
  test('is never more than the distance of the points, and equals it where nothing moved', () => {
    fc.assert(fc.property(any, any, any, (a, b, d) => {
      const gap = gapAlong({ a, b, dx: d.x, dy: d.y, dz: d.z });
      expect(gap).toBeLessThanOrEqual(Math.hypot(b.x - a.x + d.x, b.y - a.y + d.y, b.z - a.z + d.z) + 1e-12);
      expect(gapAlong({ a, b, dx: 0, dy: 0, dz: 0 })).toBeCloseTo(Math.hypot(b.x - a.x, b.y - a.y, b.z - a.z), 12);
      expect(gapAlong({ a: b, b: a, dx: -d.x, dy: -d.y, dz: -d.z })).toBeCloseTo(Math.hypot(b.x - a.x, b.y - a.y, b.z - a.z) === 0 ? Math.hypot(d.x, d.y, d.z) : gap, 9);
    }));
  });
  test('of two points at one place is how far they part', () => {
    expect(gapAlong({ a: o, b: o, dx: 0.3, dy: 0, dz: 0.4 })).toBeCloseTo(0.5, 12);
  });
  test('refuses what is no number', () => {
    expect(() => gapAlong({ a: o, b: o, dx: NaN, dy: 0, dz: 0 })).toThrow(RangeError);
  });
});
