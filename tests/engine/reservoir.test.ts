import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { circuitVolume } from '../../src/engine/circuitVolume.ts';
import { isImpossible } from '../../src/engine/outcome.ts';
import type { Impossible } from '../../src/engine/outcome.ts';
import { reservoir } from '../../src/engine/reservoir.ts';
import type { WearingAxle } from '../../src/engine/reservoir.ts';

function possible<T>(x: T | Impossible): T {
  if (isImpossible(x)) throw new Error(`expected a result, found ${x.impossible}`);
  return x;
}
const cc = 1e-6;
const front: WearingAxle = { pistonDiameter: 0.054, pistonsPerSide: 1, type: 'floating', newLining: 0.011, wornLining: 0.002 };
const cup = { fullVolume: 75 * cc, minimumVolume: 10 * cc, sloshShare: 0.15 };
// Evenly spread: fc.double would spend most of its trials within a hair of 0.
const range = (min: number, max: number) =>
  fc.integer({ min: 0, max: 1_000_000 }).map((k) => min + ((max - min) * k) / 1_000_000);
const anyAxle: fc.Arbitrary<WearingAxle> = fc.record({
  pistonDiameter: range(0.028, 0.065), pistonsPerSide: fc.integer({ min: 1, max: 3 }), type: fc.constantFrom('floating' as const, 'opposed' as const),
  newLining: range(0.006, 0.014), wornLining: range(0, 0.003), discWear: range(0, 0.001),
});

describe('reservoir', () => {
  test('9 mm of wear on each pad of two 54 mm floating calipers draws 82 cm³: a small cup of 60 to 75 cm³ runs dry first', () => {
    const r = possible(reservoir({ axles: [front], ...cup }));
    expect(Math.abs(r.wearVolume / cc - 82)).toBeLessThanOrEqual(0.5);
    expect(r.left).toBeLessThan(0);
    expect(r.left).toBeCloseTo(75 * cc - r.wearVolume, 15);
    expect(r.wornAtMinimum).toBeLessThan(1);
  });

  test('all pistons count, by what each of them moves', () => {
    const one = (Math.PI / 4) * 0.0381 ** 2;
    const axle = { ...front, pistonDiameter: 0.0381, pistonsPerSide: 2 };
    const volume = (type: 'floating' | 'opposed') => possible(reservoir({ axles: [{ ...axle, type }], ...cup })).wearVolume;
    expect(volume('opposed')).toBeCloseTo(2 * 4 * one * 0.009, 15); // two calipers, four pistons, each follows its own pad
    expect(volume('floating')).toBeCloseTo(2 * 2 * one * 0.018, 15); // two calipers, two pistons, each follows both pads
  });

  test('wear is a gap that never closes: it takes what the same gap takes in the ledger', () => {
    fc.assert(fc.property(anyAxle, (axle) => {
      const { gaps } = circuitVolume({
        ...axle, gapPerPad: axle.newLining - axle.wornLining + axle.discWear!, knockBack: 0, fluidVolume: 0, bulkModulus: 1, hoses: 0, hoseLength: 0, hoseExpansion: 0,
        hosePressure: 1, caliperGive: 0, caliperPressure: 1, padGive: 0, padPressure: 1, airVolume: 0, polytropic: 1, pressure: 0,
      }).items;
      expect(possible(reservoir({ axles: [axle], ...cup })).wearVolume).toBeCloseTo(gaps, 15);
    }));
  });

  test('fluid is kept: what is left and what is behind the pistons is what was filled in', () => {
    fc.assert(fc.property(fc.array(anyAxle, { minLength: 1, maxLength: 2 }), range(2e-5, 4e-4), range(0, 1.5e-5), range(0, 0.4), (axles, fullVolume, minimumVolume, sloshShare) => {
      const r = possible(reservoir({ axles, fullVolume, minimumVolume, sloshShare }));
      expect(r.left + r.wearByAxle.reduce((a, b) => a + b, 0)).toBeCloseTo(fullVolume, 15);
      expect(r.aboveMinimum).toBeCloseTo(r.left - minimumVolume, 15);
      // At that part of the wear, exactly the minimum is left.
      expect(fullVolume - r.wornAtMinimum * r.wearVolume).toBeCloseTo(minimumVolume, 15);
      expect(r.needed).toBeCloseTo(r.wearVolume + sloshShare * r.wearVolume + minimumVolume, 15);
      expect(r.shortBy > 0).toBe(r.needed > fullVolume);
      expect(r.shortBy).toBeGreaterThanOrEqual(0);
      const enough = possible(reservoir({ axles, fullVolume: fullVolume + r.shortBy, minimumVolume, sloshShare }));
      expect(enough.shortBy).toBeLessThan(1e-18);
      expect(enough.aboveMinimum).toBeGreaterThanOrEqual(-1e-18);
    }));
  });

  test('disc wear adds to pad wear, and a second axle on the same reservoir adds to the first', () => {
    const rear: WearingAxle = { ...front, pistonDiameter: 0.0381 };
    const v = (axles: WearingAxle[]) => possible(reservoir({ axles, ...cup })).wearVolume;
    expect(v([front, rear])).toBeCloseTo(v([front]) + v([rear]), 15);
    expect(v([{ ...front, discWear: 0.001 }])).toBeCloseTo((v([front]) * 10) / 9, 15);
  });

  test('a pad thicker when worn, or a minimum above the brim, cannot be', () => {
    const worn = reservoir({ axles: [{ ...front, wornLining: 0.012 }], ...cup });
    expect(isImpossible(worn) && worn.impossible).toBe('worn-not-thinner');
    expect(isImpossible(worn) && worn.by).toBeCloseTo(0.001, 15);
    const low = reservoir({ axles: [front], ...cup, minimumVolume: 80 * cc });
    expect(isImpossible(low) && low.impossible).toBe('minimum-above-full');
    expect(isImpossible(low) && low.by).toBeCloseTo(5 * cc, 15);
  });

  test('no axle, or a negative slosh, is a mistake of the caller', () => {
    expect(() => reservoir({ axles: [], ...cup })).toThrow(/axles/);
    expect(() => reservoir({ axles: [front], ...cup, sloshShare: -0.1 })).toThrow(/sloshShare/);
    expect(() => reservoir({ axles: [{ ...front, discWear: -1 }], ...cup })).toThrow(/discWear/);
  });
});
