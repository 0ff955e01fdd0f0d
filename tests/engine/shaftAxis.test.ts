import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Euler, Vector3 } from 'three';
import { axisAngles, pitchedAxis, shaftAxis } from '../../src/engine/shaftAxis.ts';

const deg = Math.PI / 180;
const angle = fc.double({ min: -80 * deg, max: 80 * deg, noNaN: true });

describe('shaftAxis', () => {
  test('points straight ahead for a level shaft, down for one that falls, left for one that goes left', () => {
    expect(shaftAxis({ reading: 'along', fall: 0, plan: 0 }).axis).toEqual({ x: 1, y: 0, z: -0 });
    expect(shaftAxis({ reading: 'along', fall: 30 * deg, plan: 0 }).axis.z).toBeCloseTo(-0.5, 12);
    expect(shaftAxis({ reading: 'along', fall: 0, plan: 30 * deg }).axis.y).toBeCloseTo(0.5, 12);
  });

  test('is the direction that `three` turns to by the two angles', () => {
    fc.assert(fc.property(angle, angle, (fall, plan) => {
      const other = new Vector3(1, 0, 0).applyEuler(new Euler(0, fall, plan, 'ZYX'));
      const { axis } = shaftAxis({ reading: 'along', fall, plan });
      expect(Math.hypot(axis.x - other.x, axis.y - other.y, axis.z - other.z)).toBeLessThan(1e-12);
    }), { numRuns: 60 });
  });

  test('read in side view, its shadow on the plane fore and aft falls by just that angle', () => {
    fc.assert(fc.property(angle, angle, (fall, plan) => {
      const { axis } = shaftAxis({ reading: 'side', fall, plan });
      expect(Math.atan2(-axis.z, axis.x)).toBeCloseTo(fall, 12);
      expect(Math.atan2(axis.y, axis.x)).toBeCloseTo(plan, 12);
    }), { numRuns: 60 });
  });

  test('the side view always reads the steeper, and both agree where the shaft runs straight ahead', () => {
    fc.assert(fc.property(angle, angle, (fall, plan) => {
      expect(Math.abs(shaftAxis({ reading: 'side', fall, plan }).slope)).toBeLessThanOrEqual(Math.abs(fall) + 1e-15);
    }), { numRuns: 60 });
    expect(shaftAxis({ reading: 'side', fall: 40 * deg, plan: 0 }).slope).toBeCloseTo(40 * deg, 14);
    expect(shaftAxis({ reading: 'side', fall: 40 * deg, plan: 20 * deg }).slope / deg).toBeCloseTo(38.26, 2);
  });

  test('an angle finder and a string read back the angles that made the direction', () => {
    fc.assert(fc.property(angle, angle, (fall, plan) => {
      const back = axisAngles({ axis: shaftAxis({ reading: 'along', fall, plan }).axis });
      expect(back.slope).toBeCloseTo(fall, 12);
      expect(back.plan).toBeCloseTo(plan, 12);
    }), { numRuns: 60 });
  });

  test('turns with a body that pitches nose up: it falls by that much less', () => {
    const { axis } = shaftAxis({ reading: 'along', fall: 25 * deg, plan: 0 });
    expect(axisAngles({ axis: pitchedAxis({ axis, pitch: 1 * deg }).axis }).slope / deg).toBeCloseTo(24, 10);
  });

  test('a shaft that does not run forward is refused with its angle', () => {
    expect(() => shaftAxis({ reading: 'along', fall: Math.PI / 2, plan: 0 })).toThrow(/fall: expected an angle inside ±90°/);
    expect(() => axisAngles({ axis: { x: 2, y: 0, z: 0 } })).toThrow(/axis/);
  });
});
