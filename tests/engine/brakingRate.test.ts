import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { brakingRate } from '../../src/engine/brakingRate.ts';
import { discAxle } from '../../src/engine/disc.ts';
import { isImpossible } from '../../src/engine/outcome.ts';
import { linePressure } from '../../src/engine/pressure.ts';

function gain(pistonDiameter: number, radius: number): number {
  const axle = discAxle({
    pistonDiameter, pistonsPerSide: 1, type: 'floating', friction: 0.38, outer: radius + 0.02, inner: radius - 0.02, law: 'worn-in',
    efficiency: 0.98, loadedRadius: 0.3, pushOut: 0, pressure: 0,
  });
  if (isImpossible(axle)) throw new Error(axle.impossible);
  return axle.gain;
}
const truck = { frontGain: gain(0.054, 0.108), rearGain: gain(0.0381, 0.112), mass: 1340 };
// Evenly spread: fc.double would spend most of its trials within a hair of 0.
const range = (min: number, max: number) =>
  fc.integer({ min: 0, max: 1_000_000 }).map((k) => min + ((max - min) * k) / 1_000_000);

describe('brakingRate', () => {
  // Reference truck A, braking rate printed to 0.001.
  test.each([
    [222, 0.359],
    [400, 0.648],
    [500, 0.81],
  ])('the reference truck at %i N reaches the braking rate of its table', (controlForce, z) => {
    const p = linePressure({
      controlForce, pedalRatio: 6.2, efficiency: 0.85, frontShare: 0.62, frontBore: 0.01778, rearBore: 0.01778, springForce: 0,
    });
    const r = brakingRate({ ...truck, ...p });
    expect(Math.abs(r.rate - z)).toBeLessThanOrEqual(0.0005);
    expect(Math.abs((r.rearFraction ?? NaN) - 0.24)).toBeLessThanOrEqual(0.0005);
  });

  test('no pressure, no force, no rate, and no share of nothing', () => {
    expect(brakingRate({ ...truck, frontPressure: 0, rearPressure: 0 })).toEqual({ frontForce: 0, rearForce: 0, rate: 0, rearFraction: undefined });
  });

  test('equal gains and pressures share the force half and half', () => {
    expect(brakingRate({ frontGain: 1e-3, rearGain: 1e-3, mass: 1000, frontPressure: 4e6, rearPressure: 4e6 }).rearFraction).toBe(0.5);
  });

  test('a force equal to the weight is 1 g', () => {
    expect(brakingRate({ frontGain: 1e-3, rearGain: 0, mass: 1000, frontPressure: 9806650, rearPressure: 1e6 }).rate).toBeCloseTo(1, 14);
  });

  test('mass × deceleration is the sum of the axle forces, and the rate rises with either pressure', () => {
    fc.assert(
      fc.property(range(0, 3e-3), range(0, 3e-3), range(0, 1e7), range(0, 1e7), range(500, 3000), (frontGain, rearGain, frontPressure, rearPressure, mass) => {
        const p = { frontGain, rearGain, frontPressure, rearPressure, mass };
        const r = brakingRate(p);
        expect(r.rate * 9.80665 * mass).toBeCloseTo(r.frontForce + r.rearForce, 6);
        expect(brakingRate({ ...p, frontPressure: frontPressure + 1e5 }).rate).toBeGreaterThanOrEqual(r.rate);
        expect(brakingRate({ ...p, rearPressure: rearPressure + 1e5 }).rate).toBeGreaterThanOrEqual(r.rate);
      }),
    );
  });

  test('a truck of no mass is a mistake of the caller', () => {
    expect(() => brakingRate({ ...truck, mass: 0, frontPressure: 0, rearPressure: 0 })).toThrow(/mass/);
  });
});
