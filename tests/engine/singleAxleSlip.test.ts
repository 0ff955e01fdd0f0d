import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { singleAxleSlip } from '../../src/engine/singleAxleSlip.ts';

const truck = { grip: 0.9, rearLoadFraction: 0.42, cgHeight: 0.58, wheelbase: 2.743 };
// Evenly spread: fc.double would spend most of its trials within a hair of 0.
const range = (min: number, max: number) =>
  fc.integer({ min: 0, max: 1_000_000 }).map((k) => min + ((max - min) * k) / 1_000_000);

describe('singleAxleSlip', () => {
  test('force wanted equals force gripped at the limit: z × weight = μ × the load left on that axle', () => {
    fc.assert(
      fc.property(range(0.1, 1.2), range(0.2, 0.7), range(0.3, 0.9), range(2, 3.5), (grip, rearLoadFraction, cgHeight, wheelbase) => {
        const p = { grip, rearLoadFraction, cgHeight, wheelbase };
        const rear = singleAxleSlip({ ...p, axle: 'rear' }).rate;
        // Moments about the front contact: rear load × L = weight × a − (z × weight) × h, weight taken as 1.
        expect(rear).toBeCloseTo((grip * (rearLoadFraction * wheelbase - rear * cgHeight)) / wheelbase, 12);
        const front = singleAxleSlip({ ...p, axle: 'front' });
        if (front.limitedBy === 'tires') {
          // … and about the rear contact.
          const load = ((1 - rearLoadFraction) * wheelbase + front.rate * cgHeight) / wheelbase;
          expect(front.rate).toBeCloseTo(grip * load, 10);
          expect(load).toBeLessThanOrEqual(1 + 1e-12);
        }
      }),
    );
  });

  test('with no height of the center of gravity each axle holds μ times its static load', () => {
    expect(singleAxleSlip({ ...truck, cgHeight: 0, axle: 'rear' }).rate).toBeCloseTo(0.9 * 0.42, 14);
    expect(singleAxleSlip({ ...truck, cgHeight: 0, axle: 'front' }).rate).toBeCloseTo(0.9 * 0.58, 14);
  });

  test('the two limits together never reach μ, and the front alone always beats the rear alone in an empty pickup', () => {
    const rear = singleAxleSlip({ ...truck, axle: 'rear' }).rate;
    const front = singleAxleSlip({ ...truck, axle: 'front' }).rate;
    expect(front).toBeGreaterThan(2 * rear);
    expect(rear).toBeCloseTo(0.3176, 4); // 0.378 / 1.19030
    expect(front).toBeCloseTo(0.6447, 4); // 0.522 / 0.80970
  });

  test('where grip × h/L passes the rear load fraction, the rear wheels lift before the front tires slide', () => {
    const tall = { grip: 1.1, rearLoadFraction: 0.3, cgHeight: 1, wheelbase: 2 };
    expect(singleAxleSlip({ ...tall, axle: 'front' })).toEqual({ rate: 0.6, limitedBy: 'rear-lift' });
  });

  test('where grip × h/L is 1 or more the front-only formula has no answer, and the limit is still finite', () => {
    for (const grip of [2, 2.5]) {
      const s = singleAxleSlip({ grip, rearLoadFraction: 0.42, cgHeight: 1, wheelbase: 2, axle: 'front' });
      expect(s.limitedBy).toBe('rear-lift');
      expect(s.rate).toBeCloseTo(0.84, 14);
    }
    expect(Number.isFinite(singleAxleSlip({ grip: 2, rearLoadFraction: 1, cgHeight: 1, wheelbase: 2, axle: 'front' }).rate)).toBe(true);
  });

  test('the front limit is continuous where lift takes over from sliding, and then equals the grip', () => {
    const at = (grip: number) => singleAxleSlip({ ...truck, grip, axle: 'front' }).rate;
    const lift = 0.42 / (0.58 / 2.743);
    expect(at(lift * (1 - 1e-9))).toBeCloseTo(at(lift * (1 + 1e-9)), 6);
    expect(at(lift)).toBeCloseTo(lift, 9);
  });

  test('more grip never lowers a limit', () => {
    fc.assert(
      fc.property(range(0.1, 3), range(0, 1), range(0, 1), range(0.1, 1), fc.constantFrom('front' as const, 'rear' as const), (grip, rearLoadFraction, cgHeight, more, axle) => {
        const p = { rearLoadFraction, cgHeight, wheelbase: 2.5, axle };
        expect(singleAxleSlip({ ...p, grip: grip + more }).rate).toBeGreaterThanOrEqual(singleAxleSlip({ ...p, grip }).rate - 1e-12);
      }),
    );
  });

  test('a rear load fraction above 1 or a truck without wheelbase is a mistake of the caller', () => {
    expect(() => singleAxleSlip({ ...truck, rearLoadFraction: 1.2, axle: 'rear' })).toThrow(/rearLoadFraction/);
    expect(() => singleAxleSlip({ ...truck, wheelbase: 0, axle: 'rear' })).toThrow(/wheelbase/);
  });
});
