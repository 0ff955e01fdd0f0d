import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { adhesion, minimumAdhesionLine } from '../../src/engine/adhesion.ts';
import { lockOrder } from '../../src/engine/lockOrder.ts';
import { isImpossible } from '../../src/engine/outcome.ts';
import type { Impossible } from '../../src/engine/outcome.ts';

function possible<T>(x: T | Impossible): T {
  if (isImpossible(x)) throw new Error(`expected a result, found ${x.impossible}`);
  return x;
}
const range = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const truckA = { rearBrakeFraction: 0.24, rearFraction: 0.42, heightRatio: 0.58 / 2.743 };
const anyTruck = fc.record({ rearBrakeFraction: range(0.01, 0.99), rearFraction: range(0.2, 0.8), heightRatio: range(0.05, 0.4) });

describe('adhesion', () => {
  test('what each axle uses, weighted by its load, is the braking rate', () => {
    fc.assert(
      fc.property(anyTruck, range(0, 1.2), (truck, rate) => {
        const s = adhesion({ ...truck, rate });
        fc.pre(!isImpossible(s));
        const { frontUtilized, rearUtilized } = possible(s);
        const rear = truck.rearFraction - truck.heightRatio * rate;
        expect(frontUtilized * (1 - rear) + rearUtilized * rear).toBeCloseTo(rate, 9);
      }),
    );
  });

  test('the axle that locks at some rate uses exactly the grip there, for either axle', () => {
    fc.assert(
      fc.property(anyTruck, range(0.05, 1.1), (truck, grip) => {
        const lock = lockOrder({ ...truck, grip });
        fc.pre(!isImpossible(lock));
        const { bestRate, first } = possible(lock);
        const s = possible(adhesion({ ...truck, rate: bestRate }));
        expect(s.needed).toBeCloseTo(grip, 8);
        expect(first === 'rear' ? s.rearUtilized : s.frontUtilized).toBeCloseTo(grip, 8);
        expect(s.efficiency).toBeCloseTo(bestRate / grip, 8);
      }),
    );
  });

  test('efficiency is braking rate over the grip needed, at most 1, and 1 only with the ideal split', () => {
    fc.assert(
      fc.property(anyTruck, range(0.01, 1), (truck, rate) => {
        const s = adhesion({ ...truck, rate });
        fc.pre(!isImpossible(s));
        const { efficiency, needed } = possible(s);
        expect(efficiency).toBeCloseTo(rate / needed, 9);
        expect(efficiency).toBeLessThanOrEqual(1 + 1e-12);
        const ideal = truck.rearFraction - truck.heightRatio * rate;
        if (Math.abs(ideal - truck.rearBrakeFraction) > 1e-3) expect(efficiency).toBeLessThan(1);
        expect(possible(adhesion({ ...truck, rearBrakeFraction: ideal, rate })).efficiency).toBeCloseTo(1, 12);
      }),
    );
  });

  test('efficiency has a value at standstill, the limit of gentle braking', () => {
    const still = possible(adhesion({ ...truckA, rate: 0 }));
    expect(still.frontUtilized).toBe(0);
    expect(still.efficiency).toBeCloseTo(possible(adhesion({ ...truckA, rate: 1e-9 })).efficiency, 8);
    expect(still.frontLeads).toBe(true);
  });

  test('the front works harder below the critical rate and the rear above it', () => {
    const critical = (0.42 - 0.24) / truckA.heightRatio;
    expect(possible(adhesion({ ...truckA, rate: critical - 0.01 })).frontLeads).toBe(true);
    expect(possible(adhesion({ ...truckA, rate: critical + 0.01 })).frontLeads).toBe(false);
  });

  test('front brakes alone use no rear grip, rear brakes alone no front grip', () => {
    expect(possible(adhesion({ ...truckA, rearBrakeFraction: 0, rate: 0.5 })).rearUtilized).toBe(0);
    expect(possible(adhesion({ ...truckA, rearBrakeFraction: 1, rate: 0.5 })).frontUtilized).toBe(0);
  });

  test('a braking rate at or past rear lift is refused', () => {
    expect(adhesion({ ...truckA, heightRatio: 0.6, rate: 0.8 })).toEqual({ impossible: 'rear-axle-lifts', by: expect.closeTo(0.1, 12) });
  });

  test('a share outside 0 to 1 is a programmer error', () => {
    expect(() => adhesion({ ...truckA, rearBrakeFraction: 1.2, rate: 0.5 })).toThrow(/rearBrakeFraction/);
  });
});

describe('minimumAdhesionLine', () => {
  test('z = 0.1 + 0.7 (k − 0.2) runs from k 0.2 at 0.10 to k 0.8 at 0.52 (from memory, not checked against the text)', () => {
    expect(minimumAdhesionLine({ rate: 0.1 }).minimumLine).toBeCloseTo(0.2, 12);
    expect(minimumAdhesionLine({ rate: 0.52 }).minimumLine).toBeCloseTo(0.8, 12);
    expect(minimumAdhesionLine({ rate: 0.09 }).minimumLine).toBeUndefined();
    expect(minimumAdhesionLine({ rate: 0.53 }).minimumLine).toBeUndefined();
  });

  test('a nearly ideal split meets the line and a rear-only brake does not', () => {
    expect(possible(adhesion({ ...truckA, rate: 0.4 })).meetsMinimum).toBe(true);
    expect(possible(adhesion({ ...truckA, rearBrakeFraction: 1, rate: 0.4 })).meetsMinimum).toBe(false);
    expect(possible(adhesion({ ...truckA, rate: 0.9 })).meetsMinimum).toBeUndefined();
  });
});
