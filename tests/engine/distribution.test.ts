import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { idealCurve, idealDistribution } from '../../src/engine/distribution.ts';
import { axleLoads, withPayload } from '../../src/engine/loads.ts';
import { isImpossible } from '../../src/engine/outcome.ts';
import type { Impossible } from '../../src/engine/outcome.ts';

function possible<T>(x: T | Impossible): T {
  if (isImpossible(x)) throw new Error(`expected a result, found ${x.impossible}`);
  return x;
}
const range = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const truckA = { rearFraction: 0.42, heightRatio: 0.58 / 2.743, weight: 1340 * 9.80665 };

describe('idealDistribution', () => {
  test('reference truck A wants rear shares 0.357, 0.293, 0.251 and 0.230 at 0.3, 0.6, 0.8 and 0.9 g, as printed', () => {
    const share = (rate: number) => possible(idealDistribution({ ...truckA, rate })).rearShare;
    expect([0.3, 0.6, 0.8, 0.9].map((z) => Number(share(z).toFixed(3)))).toEqual([0.357, 0.293, 0.251, 0.23]);
  });

  test('each axle brakes with z times the load it carries at that moment, so both use the grip alike', () => {
    fc.assert(
      fc.property(range(300, 1500), range(300, 1500), range(2, 4), range(0.2, 0.9), range(0.01, 1.2), (frontLoad, rearLoad, wheelbase, cgHeight, rate) => {
        const loads = axleLoads({ frontLoad, rearLoad, wheelbase, cgHeight, rate });
        fc.pre(!isImpossible(loads));
        const { rearFraction, heightRatio, frontDynamic, rearDynamic, mass } = possible(loads);
        const weight = mass * 9.80665;
        const ideal = possible(idealDistribution({ rearFraction, heightRatio, rate, weight }));
        expect(ideal.frontForce / frontDynamic).toBeCloseTo(rate, 9);
        expect(Math.abs(ideal.rearForce - rate * rearDynamic)).toBeLessThan(1e-9 * weight);
        expect(ideal.frontForce + ideal.rearForce).toBeCloseTo(rate * weight, 6);
      }),
    );
  });

  test('a truck with half its weight on each axle starts at 50/50 and moves to the front from there', () => {
    const at = (rate: number) => possible(idealDistribution({ ...truckA, rearFraction: 0.5, rate }));
    expect(at(0).rearShare).toBe(0.5);
    expect(at(0.4).frontShare).toBeGreaterThan(at(0.2).frontShare);
  });

  test('a CG on the ground would leave the share where the scales put it', () => {
    expect(possible(idealDistribution({ ...truckA, heightRatio: 1e-12, rate: 1 })).rearShare).toBeCloseTo(0.42, 11);
  });

  test('350 kg in the bed raises the ideal rear share at 0.8 g by about nine points', () => {
    const laden = possible(
      withPayload({ frontLoad: 777.2, rearLoad: 562.8, wheelbase: 2.743, cgHeight: 0.58, payload: 350, payloadAhead: 0.25, payloadHeight: 0.75 }),
    );
    const share = (rearFraction: number, heightRatio: number) =>
      possible(idealDistribution({ rearFraction, heightRatio, weight: 1, rate: 0.8 })).rearShare;
    const rise = share(laden.rearFraction, laden.cgHeight / 2.743) - share(0.42, 0.58 / 2.743);
    expect(rise).toBeGreaterThan(0.085);
    expect(rise).toBeLessThan(0.095);
  });

  test('past rear lift there is no split to speak of', () => {
    expect(idealDistribution({ ...truckA, heightRatio: 0.6, rate: 0.8 })).toEqual({ impossible: 'rear-axle-lifts', by: expect.closeTo(0.1, 12) });
  });

  test('a caller who hands over nonsense is told what is wrong', () => {
    expect(() => idealDistribution({ ...truckA, rearFraction: 1, rate: 0 })).toThrow(/rearFraction/);
    expect(() => idealDistribution({ ...truckA, rate: -0.1 })).toThrow(/rate/);
  });
});

describe('idealCurve', () => {
  test('ends at the rate asked for, or at rear lift with no rear force left', () => {
    const low = idealCurve({ ...truckA, upTo: 1, steps: 4 });
    expect(low.points.map((p) => p.rate)).toEqual([0, 0.25, 0.5, 0.75, 1]);
    const high = idealCurve({ ...truckA, upTo: 9, steps: 7 });
    expect(high.points).toHaveLength(8);
    expect(high.points[7]?.rate).toBe(high.liftRate);
    expect(high.points[7]?.rearForce).toBeCloseTo(0, 8);
  });

  test('rear against front force is one parabola: eliminating z by hand gives every point', () => {
    // With X = F_f/W and Y = F_r/W: z = X + Y, and Y = z ψ − χ z², so (X + Y) ψ − χ (X + Y)² − Y = 0.
    for (const p of idealCurve({ ...truckA, upTo: 1.9, steps: 50 }).points) {
      const x = p.frontForce / truckA.weight;
      const y = p.rearForce / truckA.weight;
      expect((x + y) * 0.42 - truckA.heightRatio * (x + y) ** 2 - y).toBeCloseTo(0, 12);
    }
  });

  test('the rear force is largest at the peak rate, halfway to rear lift', () => {
    const { peakRate } = idealCurve({ ...truckA, upTo: 1, steps: 1 });
    const rear = (rate: number) => possible(idealDistribution({ ...truckA, rate })).rearForce;
    expect(rear(peakRate)).toBeGreaterThan(rear(peakRate * 1.01));
    expect(rear(peakRate)).toBeGreaterThan(rear(peakRate * 0.99));
  });
});
