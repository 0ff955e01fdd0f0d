import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { brakingRate } from '../../src/engine/brakingRate.ts';
import { discAxle } from '../../src/engine/disc.ts';
import { isImpossible } from '../../src/engine/outcome.ts';
import type { Impossible } from '../../src/engine/outcome.ts';
import { tireRadius } from '../../src/engine/tireRadius.ts';
import type { TireChange } from '../../src/engine/tireRadius.ts';

function possible<T>(x: T | Impossible): T {
  if (isImpossible(x)) throw new Error(`expected a result, found ${x.impossible}`);
  return x;
}
const reference: TireChange = {
  frontBefore: 0.3, rearBefore: 0.3, frontAfter: 0.33, rearAfter: 0.33, rate: 0.81, rearBrakeFraction: 0.24, rearFraction: 0.42, cgHeight: 0.58,
  wheelbase: 2.743, grip: 0.8, speedometerAxle: 'rear',
};
// Evenly spread: fc.double would spend most of its trials within a hair of 0.
const range = (min: number, max: number) =>
  fc.integer({ min: 0, max: 1_000_000 }).map((k) => min + ((max - min) * k) / 1_000_000);
const anyChange: fc.Arbitrary<TireChange> = fc.record({
  frontBefore: range(0.26, 0.36), rearBefore: range(0.26, 0.36), frontAfter: range(0.26, 0.36), rearAfter: range(0.26, 0.36), rate: range(0.1, 0.9),
  rearBrakeFraction: range(0.1, 0.5), rearFraction: range(0.3, 0.6), cgHeight: range(0.45, 0.75), wheelbase: range(2.4, 3.3), grip: range(0.2, 1),
  speedometerAxle: fc.constantFrom('front' as const, 'rear' as const),
});

describe('tireRadius', () => {
  test('from pistons to road with both tires, the disc torque and braking rate say the same', () => {
    const pads = { pistonsPerSide: 1, type: 'floating' as const, friction: 0.38, outer: 0.13, inner: 0.086, law: 'worn-in' as const, efficiency: 0.98, pushOut: 0, pressure: 1e5 };
    const truck = (frontRadius: number, rearRadius: number) => brakingRate({
      frontGain: possible(discAxle({ ...pads, pistonDiameter: 0.054, loadedRadius: frontRadius })).gain,
      rearGain: possible(discAxle({ ...pads, pistonDiameter: 0.0381, loadedRadius: rearRadius })).gain,
      frontPressure: 65.8e5, rearPressure: 40.3e5, mass: 1340,
    });
    fc.assert(fc.property(range(0.26, 0.36), range(0.26, 0.36), range(0.26, 0.36), range(0.26, 0.36), (fb, rb, fa, ra) => {
      const [old, now] = [truck(fb, rb), truck(fa, ra)];
      const t = possible(tireRadius({ ...reference, frontBefore: fb, rearBefore: rb, frontAfter: fa, rearAfter: ra, rate: old.rate, rearBrakeFraction: old.rearFraction! }));
      expect(t.after.rate).toBeCloseTo(now.rate, 12);
      expect(t.after.rearBrakeFraction).toBeCloseTo(now.rearFraction!, 12);
    }));
  });

  test('the same tires change nothing', () => {
    const t = possible(tireRadius({ ...reference, frontAfter: 0.3, rearAfter: 0.3 }));
    expect(t.after).toEqual(t.before);
    expect([t.rateFactor, t.controlForceFactor, t.frontTorqueFactor, t.rearTorqueFactor, t.trueOverIndicated]).toEqual([1, 1, 1, 1, 1]);
    expect(Math.abs(t.before.criticalRate - 0.85)).toBeLessThanOrEqual(0.005); // reference truck A, printed 0.85
  });

  test('10 % more radius all round: rate 0.810 to 0.736, a tenth more foot and torque, 60 shown is 66, balance as it was', () => {
    const t = possible(tireRadius(reference));
    expect(t.after.rate).toBeCloseTo(0.81 / 1.1, 12);
    expect(t.controlForceFactor).toBeCloseTo(1.1, 12);
    expect(t.rearTorqueFactor).toBeCloseTo(1.1, 12);
    expect(60 * t.trueOverIndicated).toBeCloseTo(66, 12);
    expect(t.shareChange).toBeCloseTo(0, 12);
  });

  test('going and returning is where one started', () => {
    fc.assert(fc.property(anyChange, (p) => {
      const there = tireRadius(p);
      fc.pre(!isImpossible(there));
      if (isImpossible(there)) return;
      const back = tireRadius({
        ...p, frontBefore: p.frontAfter, rearBefore: p.rearAfter, frontAfter: p.frontBefore, rearAfter: p.rearBefore,
        rate: there.after.rate, rearBrakeFraction: there.after.rearBrakeFraction, cgHeight: there.after.cgHeight,
      });
      const after = possible(back).after;
      expect(after.rate).toBeCloseTo(p.rate, 12);
      expect(after.rearBrakeFraction).toBeCloseTo(p.rearBrakeFraction, 12);
      expect(after.cgHeight).toBeCloseTo(p.cgHeight, 12);
      expect(possible(back).trueOverIndicated * there.trueOverIndicated).toBeCloseTo(1, 12);
    }));
  });

  test('brake force of each axle times its radius is the torque, which a tire does not change', () => {
    fc.assert(fc.property(anyChange, (p) => {
      const t = tireRadius(p);
      fc.pre(!isImpossible(t));
      if (isImpossible(t)) return;
      const torque = (b: typeof t.before, front: number, rear: number) => [b.rate * (1 - b.rearBrakeFraction) * front, b.rate * b.rearBrakeFraction * rear];
      const [before, after] = [torque(t.before, p.frontBefore, p.rearBefore), torque(t.after, p.frontAfter, p.rearAfter)];
      expect(after[0]).toBeCloseTo(before[0]!, 12);
      expect(after[1]).toBeCloseTo(before[1]!, 12);
      // The same brake force at a longer arm needs more torque, axle by axle.
      expect(t.frontTorqueFactor * p.frontBefore).toBeCloseTo(p.frontAfter, 12);
      expect(t.rearTorqueFactor * p.rearBefore).toBeCloseTo(p.rearAfter, 12);
      // Pushing so much more brings the old rate back.
      expect(t.after.rate * t.controlForceFactor).toBeCloseTo(p.rate, 12);
    }));
  });

  test('a smaller front tire takes share from the rear and stops harder; a smaller rear one gives it share and may turn the lock order', () => {
    const smallFront = possible(tireRadius({ ...reference, frontAfter: 0.28, rearAfter: 0.3 }));
    expect(smallFront.shareChange).toBeLessThan(0);
    expect(smallFront.criticalRateChange).toBeGreaterThan(0);
    expect(smallFront.rateFactor).toBeGreaterThan(1);
    const smallRear = possible(tireRadius({ ...reference, frontAfter: 0.3, rearAfter: 0.26 }));
    expect(smallRear.shareChange).toBeGreaterThan(0);
    expect(smallRear.before.first).toBe('front');
    expect(smallRear.after.first).toBe('rear');
  });

  test('the center of gravity rises by the weighted mean of both axles: all of it when both rise alike', () => {
    expect(possible(tireRadius(reference)).after.cgHeight).toBeCloseTo(0.61, 12);
    // Share as it was, but a higher CG takes more load off the rear: 0.18/(0.61/2.743).
    expect(possible(tireRadius(reference)).after.criticalRate).toBeCloseTo((0.18 * 2.743) / 0.61, 12);
    // With 42 % of the weight on the rear axle the CG stands 42 % of the way back.
    expect(possible(tireRadius({ ...reference, rearAfter: 0.3 })).after.cgHeight).toBeCloseTo(0.58 + 0.58 * 0.03, 12);
    expect(possible(tireRadius({ ...reference, frontAfter: 0.3 })).after.cgHeight).toBeCloseTo(0.58 + 0.42 * 0.03, 12);
  });

  test('the speedometer follows its own axle only', () => {
    const p = { ...reference, frontAfter: 0.27, rearAfter: 0.33 };
    expect(possible(tireRadius({ ...p, speedometerAxle: 'front' })).trueOverIndicated).toBeCloseTo(0.9, 12);
    expect(possible(tireRadius({ ...p, speedometerAxle: 'rear' })).trueOverIndicated).toBeCloseTo(1.1, 12);
  });

  test('a taller truck with its rear in the air has no answer, nor one whose CG is under the road', () => {
    const lifts = tireRadius({ ...reference, rearBrakeFraction: 0, cgHeight: 1, grip: 1.2, rearFraction: 0.3 });
    expect(isImpossible(lifts) && lifts.impossible).toBe('rear-axle-lifts');
    const under = tireRadius({ ...reference, cgHeight: 0.01, frontAfter: 0.26, rearAfter: 0.26 });
    expect(isImpossible(under) && under.impossible).toBe('cg-below-ground');
    expect(isImpossible(under) && under.by).toBeCloseTo(0.03, 12);
  });

  test('a tire of no radius or a share above 1 is a mistake of the caller', () => {
    expect(() => tireRadius({ ...reference, rearAfter: 0 })).toThrow(/rearAfter/);
    expect(() => tireRadius({ ...reference, rate: -1 })).toThrow(/rate/);
    expect(() => tireRadius({ ...reference, rearBrakeFraction: 1.1 })).toThrow(/rearBrakeFraction/);
  });
});
