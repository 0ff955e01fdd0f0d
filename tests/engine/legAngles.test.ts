import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { legAngles, pushOffPath } from '../../src/engine/legAngles.ts';
import { isImpossible } from '../../src/engine/outcome.ts';

const deg = Math.PI / 180;
const base = { hip: { x: -0.75, z: 0.3 }, heel: { x: -0.15, z: 0.02 }, ball: { x: 0, z: 0.16 }, thigh: 0.44, shin: 0.43, ankleHeight: 0.09 };
const legOf = (v: Parameters<typeof legAngles>[0]) => {
  const r = legAngles(v);
  if (isImpossible(r)) throw new Error(`${r.impossible} ${r.by}`);
  return r;
};
const far = (a: { x: number; z: number }, b: { x: number; z: number }): number => Math.hypot(a.x - b.x, a.z - b.z);

test('bones keep their lengths, and the knee is above the line from hip to ankle', () => {
  fc.assert(fc.property(fc.double({ min: -0.9, max: -0.55, noNaN: true }), fc.double({ min: 0.1, max: 0.5, noNaN: true }), fc.double({ min: 0, max: 0.19, noNaN: true }), (x, z, up) => {
    const v = { ...base, hip: { x, z }, ball: { x: 0.02, z: up } };
    const r = legAngles(v);
    if (isImpossible(r)) return;
    expect(far(v.hip, r.kneePoint)).toBeCloseTo(0.44, 9);
    expect(far(r.kneePoint, r.anklePoint)).toBeCloseTo(0.43, 9);
    expect(far(v.heel, r.anklePoint)).toBeCloseTo(0.09, 9);
    expect((r.anklePoint.x - v.hip.x) * (r.kneePoint.z - v.hip.z) - (r.anklePoint.z - v.hip.z) * (r.kneePoint.x - v.hip.x)).toBeGreaterThanOrEqual(-1e-9);
  }));
});

test('two equal bones over a right angle: the hip is root two of one bone away', () => {
  const r = legOf({ ...base, thigh: 0.4, shin: 0.4, heel: { x: 0, z: 0 }, ball: { x: 0.2, z: 0 }, hip: { x: -0.4 * Math.SQRT2, z: 0.09 } });
  expect(r.knee).toBeCloseTo(90 * deg, 9);
  // Flat foot, ankle level with the hip: the shin leans 45° back from the sole.
  expect(r.ankle).toBeCloseTo(135 * deg, 9);
  expect(r.sole).toBeCloseTo(0.2, 12);
});

test('a seat farther back straightens the knee; beyond full stretch the leg lacks what is left', () => {
  expect(legOf({ ...base, hip: { x: -0.85, z: 0.3 } }).knee).toBeGreaterThan(legOf(base).knee);
  const ankle = legOf(base).anklePoint;
  const short = legAngles({ ...base, hip: { x: ankle.x - 0.9, z: ankle.z } });
  expect(short).toMatchObject({ impossible: 'too-far' });
  expect((short as { by: number }).by).toBeCloseTo(0.03, 9);
  expect(legOf({ ...base, hip: { x: ankle.x - 0.87, z: ankle.z } }).knee).toBeGreaterThan(179 * deg);
});

test('a leg folded beyond its bones, a foot of no length, and a thigh of none', () => {
  expect(legAngles({ ...base, thigh: 0.6, shin: 0.3, hip: { x: -0.2, z: 0.1 } })).toMatchObject({ impossible: 'too-near' });
  expect(legAngles({ ...base, ball: base.heel })).toEqual({ impossible: 'no-foot' });
  expect(() => legAngles({ ...base, thigh: 0 })).toThrow(/thigh/);
});

test('the sole leans with its heel and ball: 45° for as far forward as up, 90° flat on the floor', () => {
  expect(legOf({ ...base, heel: { x: -0.1, z: 0 }, ball: { x: 0, z: 0.1 } }).lean).toBeCloseTo(45 * deg, 12);
  expect(legOf({ ...base, heel: { x: -0.2, z: 0 }, ball: { x: 0, z: 0 } }).lean).toBeCloseTo(90 * deg, 12);
});

describe('the leg against the way of the pad', () => {
  const ball = { x: 0, z: 0.2 };
  test('along it where the arm hangs back by as much as the leg slopes down', () => {
    expect(pushOffPath({ hip: { x: -0.6, z: 0.2 + 0.6 * Math.tan(12 * deg) }, ball, armAngle: -12 * deg }).off).toBeCloseTo(0, 12);
  });
  test('every degree the pedal swings forward goes on top', () => {
    const hip = { x: -0.6, z: 0.36 };
    const off = (armAngle: number): number => pushOffPath({ hip, ball, armAngle }).off;
    expect(off(10 * deg)).toBeCloseTo(24.931 * deg, 4);
    expect(off(20 * deg) - off(0)).toBeCloseTo(20 * deg, 12);
  });
  test('agrees with the pad’s velocity and the push, by their scalar product', () => {
    fc.assert(fc.property(fc.double({ min: -1, max: 1, noNaN: true }), fc.double({ min: -0.2, max: 0.6, noNaN: true }), (armAngle, up) => {
      const hip = { x: -0.6, z: 0.2 + up };
      const length = Math.hypot(0.6, up);
      const along = (0.6 / length) * Math.cos(armAngle) + (-up / length) * Math.sin(armAngle);
      expect(Math.cos(pushOffPath({ hip, ball, armAngle }).off)).toBeCloseTo(along, 12);
    }));
  });
});
