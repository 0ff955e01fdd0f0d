import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { boreWindow } from '../../src/engine/boreWindow.ts';
import { circleArea } from '../../src/engine/circle.ts';
import { standardGravity } from '../../src/engine/constants.ts';
import { strokeForPressure } from '../../src/engine/fluid.ts';

const inch = 0.0254;
const lbf = 0.45359237 * standardGravity;
const psi = lbf / inch ** 2;
const front = { clevisForce: 0.62 * 500 * 6.2 * 0.85, springForce: 0, pressure: 65.0e5, takeUpVolume: 1.874e-6, compliance: 0.051e-11, portStroke: 0.001, usableStroke: 0.0224 };
// Evenly spread: fc.double would spend most of its trials within a hair of 0.
const range = (min: number, max: number) => fc.integer({ min: 0, max: 1_000_000 }).map((k) => min + ((max - min) * k) / 1_000_000);
const circuit = fc.record({
  clevisForce: range(0, 3000), springForce: range(0, 60), pressure: range(1e5, 1.2e7), takeUpVolume: range(0, 5e-6), compliance: range(0, 1e-12),
  portStroke: range(0, 0.002), usableStroke: range(0.005, 0.03),
});

describe('boreWindow', () => {
  test.each([
    [5 / 8, 0.307, 5.05, 326], [0.7, 0.385, 4.03, 260], [3 / 4, 0.442, 3.51, 226], [13 / 16, 0.518, 2.99, 193], [7 / 8, 0.601, 2.58, 166], [1, 0.785, 1.97, 127],
  ])('a bore of %f in has %f in² of area, %f mm of stroke per cm³ and %f psi for 100 lbf, and is the only bore for just these', (d, area, stroke, pressure) => {
    expect(circleArea({ diameter: d * inch }).area / inch ** 2).toBeCloseTo(area, 3);
    const cm3 = { ...front, takeUpVolume: 1e-6, compliance: 0, portStroke: 0 };
    const exactStroke = 1e-6 / circleArea({ diameter: d * inch }).area;
    expect(Math.abs(exactStroke * 1e3 - stroke)).toBeLessThanOrEqual(0.0051);
    const exactPressure = (100 * lbf) / circleArea({ diameter: d * inch }).area;
    expect(Math.abs(exactPressure / psi - pressure)).toBeLessThanOrEqual(0.51);
    const only = boreWindow({ ...cm3, clevisForce: 100 * lbf, pressure: exactPressure, usableStroke: exactStroke });
    expect(only.lowest / inch).toBeCloseTo(d, 12);
    expect(only.highest / inch).toBeCloseTo(d, 12);
  });

  test('one step of 1/16 in near 3/4 in changes the bore’s pressure by 15 to 18 %: down for the larger, up for the smaller way back', () => {
    const up = (12 / 13) ** 2;
    expect(Math.round(100 * (1 - up))).toBe(15);
    expect(Math.round(100 * (1 / up - 1))).toBe(17);
    const at = (p: number) => boreWindow({ ...front, pressure: p }).highest;
    expect(at(65e5 * up) / at(65e5)).toBeCloseTo(13 / 12, 12);
  });

  test('the reference truck’s front at 0.8 g and 500 N has room for bores from 17.6 to 17.9 mm only', () => {
    const w = boreWindow(front);
    expect(w.lowest * 1e3).toBeCloseTo(17.57, 2);
    expect(w.highest * 1e3).toBeCloseTo(17.89, 2);
    expect(w.empty).toBe(false);
    expect(boreWindow({ ...front, usableStroke: 0.0214 }).empty).toBe(true);
  });

  test('at its lowest a bore uses all the stroke it may, and at its highest it takes all the push', () => {
    fc.assert(
      fc.property(circuit, (c) => {
        const w = boreWindow(c);
        if (w.lowest < Infinity && w.lowest > 1e-6) expect(strokeForPressure({ ...c, bore: w.lowest }).stroke).toBeCloseTo(c.usableStroke, 12);
        if (w.highest > 1e-6) expect((c.pressure * circleArea({ diameter: w.highest }).area + c.springForce) / c.clevisForce).toBeCloseTo(1, 9);
      }),
    );
  });

  test('whether any bore will do asks for work alone: pressure × volume against push × way', () => {
    let empties = 0;
    fc.assert(
      fc.property(circuit, (c) => {
        const asked = c.pressure * (c.takeUpVolume + c.compliance * c.pressure);
        const given = Math.max(0, c.clevisForce - c.springForce) * (c.usableStroke - c.portStroke);
        fc.pre(Math.abs(asked - given) > 1e-9 * (asked + given));
        if (asked > given) empties += 1;
        expect(boreWindow(c).empty).toBe(asked > given);
      }),
      { numRuns: 500 },
    );
    expect(empties).toBeGreaterThan(50);
    expect(empties).toBeLessThan(450);
  });

  test('more push opens it upward, more stroke downward, more fluid closes it from below, more pressure from both sides', () => {
    fc.assert(
      fc.property(circuit.filter((c) => c.clevisForce > c.springForce + 1), (c) => {
        const w = boreWindow(c);
        expect(boreWindow({ ...c, clevisForce: c.clevisForce * 1.1 }).highest).toBeGreaterThan(w.highest);
        expect(boreWindow({ ...c, clevisForce: c.clevisForce * 1.1 }).lowest).toBe(w.lowest);
        expect(boreWindow({ ...c, usableStroke: c.usableStroke * 1.1 + 0.001 }).lowest).toBeLessThanOrEqual(w.lowest);
        expect(boreWindow({ ...c, takeUpVolume: c.takeUpVolume + 1e-7 }).lowest).toBeGreaterThan(w.lowest);
        const harder = boreWindow({ ...c, pressure: c.pressure * 1.1 });
        expect(harder.highest).toBeLessThan(w.highest);
        expect(harder.lowest).toBeGreaterThanOrEqual(w.lowest);
      }),
    );
  });

  test('with no stroke left after the port no bore is large enough; with all the push in the spring none is small enough', () => {
    expect(boreWindow({ ...front, usableStroke: 0.001 })).toMatchObject({ lowest: Infinity, empty: true });
    expect(boreWindow({ ...front, clevisForce: 20, springForce: 30 })).toMatchObject({ highest: 0, empty: true });
    expect(boreWindow({ ...front, pressure: 0 }).highest).toBe(Infinity);
    expect(() => boreWindow({ ...front, pressure: -1 })).toThrow(/pressure/);
  });
});
