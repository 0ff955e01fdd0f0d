import fc from 'fast-check';
import { expect, test } from 'vitest';
import { legAngles } from '../../src/engine/legAngles.ts';
import { isImpossible } from '../../src/engine/outcome.ts';

const deg = Math.PI / 180;
const base = { hip: { x: -0.75, z: 0.3 }, pad: { x: 0.05, z: 0.16 }, floor: 0, thigh: 0.44, shin: 0.43, foot: 0.2, ankleHeight: 0.09 };
const legOf = (v: Parameters<typeof legAngles>[0]) => {
  const r = legAngles(v);
  if (isImpossible(r)) throw new Error(`${r.impossible} ${r.by}`);
  return r;
};

test('bones keep their lengths, the heel its floor, and the knee is above the line from hip to ankle', () => {
  fc.assert(fc.property(fc.double({ min: -0.9, max: -0.55, noNaN: true }), fc.double({ min: 0.1, max: 0.5, noNaN: true }), fc.double({ min: 0, max: 0.19, noNaN: true }), (x, z, up) => {
    const v = { ...base, hip: { x, z }, pad: { x: 0.05, z: up } };
    const r = legAngles(v);
    if (isImpossible(r)) return;
    const far = (a: { x: number; z: number }, b: { x: number; z: number }): number => Math.hypot(a.x - b.x, a.z - b.z);
    expect(far(v.hip, r.kneePoint)).toBeCloseTo(0.44, 9);
    expect(far(r.kneePoint, r.anklePoint)).toBeCloseTo(0.43, 9);
    expect(far(r.heel, v.pad)).toBeCloseTo(0.2, 9);
    expect(far(r.heel, r.anklePoint)).toBeCloseTo(0.09, 9);
    expect(r.heel.z).toBe(0);
    expect((r.anklePoint.x - v.hip.x) * (r.kneePoint.z - v.hip.z) - (r.anklePoint.z - v.hip.z) * (r.kneePoint.x - v.hip.x)).toBeGreaterThanOrEqual(-1e-9);
  }));
});

test('two equal bones over a right angle: the hip is root two of one bone away', () => {
  const r = legOf({ ...base, thigh: 0.4, shin: 0.4, pad: { x: 0.2, z: 0 }, hip: { x: 0 - 0.4 * Math.SQRT2, z: 0.09 } });
  expect(r.knee).toBeCloseTo(90 * deg, 9);
  // Flat foot, ankle level with the hip: the shin leans 45° back from the sole.
  expect(r.ankle).toBeCloseTo(135 * deg, 9);
});

test('a seat farther back straightens the knee; at full stretch it is straight, and beyond it the leg lacks the rest', () => {
  const at = (x: number) => legAngles({ ...base, hip: { x, z: 0.3 } });
  expect(legOf({ ...base, hip: { x: -0.8, z: 0.3 } }).knee).toBeGreaterThan(legOf(base).knee);
  const far = at(-1.2);
  expect(far).toMatchObject({ impossible: 'too-far' });
  expect(legOf({ ...base, hip: { x: -1.2 + (far as { by: number }).by / Math.cos(Math.atan2(0.2, 1.05)) + 0.02, z: 0.3 } }).knee).toBeGreaterThan(150 * deg);
});

test('a pad higher than a foot is long lifts the heel, by what is missing', () => {
  const r = legAngles({ ...base, pad: { x: 0.05, z: 0.25 } });
  expect(r).toMatchObject({ impossible: 'pad-too-high' });
  expect((r as { by: number }).by).toBeCloseTo(0.05, 9);
});

test('a leg folded beyond its bones, and bones of no length', () => {
  expect(legAngles({ ...base, thigh: 0.6, shin: 0.3, hip: { x: -0.2, z: 0.1 } })).toMatchObject({ impossible: 'too-near' });
  expect(() => legAngles({ ...base, thigh: 0 })).toThrow(/thigh/);
});
