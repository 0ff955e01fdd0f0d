import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { circleArea } from '../../src/engine/circle.ts';

const inch = 0.0254;
const poundForce = 0.45359237 * 9.80665;

describe('circleArea', () => {
  // Derived table of bores: area in², stroke per cm³ in mm, psi per 100 lbf on that piston, each as printed.
  test.each([
    [0.625, 0.307, 5.05, 326],
    [0.7, 0.385, 4.03, 260],
    [0.75, 0.442, 3.51, 226],
    [0.8125, 0.518, 2.99, 193],
    [0.875, 0.601, 2.58, 166],
    [1, 0.785, 1.97, 127],
  ])('a %f in bore has the area, stroke per cm³ and pressure per 100 lbf of the derived table', (bore, area, stroke, psi) => {
    const a = circleArea({ diameter: bore * inch }).area;
    expect(Math.abs(a / inch ** 2 - area)).toBeLessThanOrEqual(0.0005);
    expect(Math.abs(1e-6 / a / 1e-3 - stroke)).toBeLessThanOrEqual(0.005);
    expect(Math.abs((100 * poundForce) / a / (poundForce / inch ** 2) - psi)).toBeLessThanOrEqual(0.5);
  });

  test('two pipes joined by area follow Pythagoras on their diameters', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-3, max: 1, noNaN: true }), fc.double({ min: 1e-3, max: 1, noNaN: true }), (a, b) => {
        const both = circleArea({ diameter: Math.hypot(a, b) }).area;
        const sum = circleArea({ diameter: a }).area + circleArea({ diameter: b }).area;
        expect(Math.abs(both / sum - 1)).toBeLessThan(1e-12);
      }),
    );
  });

  test('the area is what a fine polygon inside the circle approaches', () => {
    const n = 1e7;
    const polygon = (n / 2) * 0.5 ** 2 * Math.sin((2 * Math.PI) / n);
    expect(circleArea({ diameter: 1 }).area).toBeCloseTo(polygon, 12);
  });

  test('a bore of nothing is a mistake of the caller', () => {
    expect(() => circleArea({ diameter: 0 })).toThrow(/diameter: expected a finite number above 0, found 0/);
    expect(() => circleArea({ diameter: NaN })).toThrow(RangeError);
  });
});
