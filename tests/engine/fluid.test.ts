import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { discAxle } from '../../src/engine/disc.ts';
import { pressureForStroke, strokeForPressure } from '../../src/engine/fluid.ts';
import { isImpossible } from '../../src/engine/outcome.ts';
import { linePressure } from '../../src/engine/pressure.ts';

const bar = 1e5;
const cc = 1e-6;
const front = { takeUpVolume: 1.874 * cc, compliance: (0.051 * cc) / bar, bore: 0.01778, portStroke: 0.001 };
const rear = { takeUpVolume: 0.884 * cc, compliance: (0.033 * cc) / bar, bore: 0.01778, portStroke: 0.001 };
// Evenly spread: fc.double would spend most of its trials within a hair of 0.
const positive = (min: number, max: number) =>
  fc.integer({ min: 0, max: 1_000_000 }).map((k) => min + ((max - min) * k) / 1_000_000);

describe('strokeForPressure', () => {
  // Reference truck A, strokes printed to 0.1 mm, pad travel to 1 mm, tilt to 0.1 degree.
  test.each([
    [222, 14.5, 6.9, 72, 6.9],
    [500, 22.1, 9.9, 108, 11.0],
  ])('the reference truck at %i N uses the strokes, pad travel and bar tilt of its table', (force, xf, xr, pad, tilt) => {
    const p = linePressure({
      controlForce: force, pedalRatio: 6.2, efficiency: 0.85, frontShare: 0.62, frontBore: 0.01778, rearBore: 0.01778, springForce: 0,
    });
    const f = strokeForPressure({ ...front, pressure: p.frontPressure }).stroke * 1e3;
    const r = strokeForPressure({ ...rear, pressure: p.rearPressure }).stroke * 1e3;
    expect(Math.abs(f - xf)).toBeLessThanOrEqual(0.05);
    expect(Math.abs(r - xr)).toBeLessThanOrEqual(0.05);
    expect(Math.abs(6.2 * (0.62 * f + 0.38 * r) - pad)).toBeLessThanOrEqual(0.5);
    expect(Math.abs((Math.asin((f - r) / 63.5) * 180) / Math.PI - tilt)).toBeLessThanOrEqual(0.05);
  });

  test('with no pressure the stroke is the take-up alone', () => {
    const { stroke, volume } = strokeForPressure({ ...front, pressure: 0 });
    expect(volume).toBe(front.takeUpVolume);
    expect(stroke).toBeCloseTo(1.874 * cc / (Math.PI / 4 * 0.01778 ** 2) + 0.001, 15);
  });

  test('a circuit that neither gives nor gaps moves its piston to the port and no farther', () => {
    expect(strokeForPressure({ takeUpVolume: 0, compliance: 0, bore: 0.02, portStroke: 0.001, pressure: 1e7 }).stroke).toBe(0.001);
  });

  test('1 cm³ of air in a 3/4 in circuit costs 3.5 mm of rod and 21 mm of pad at 6:1 (derived vector)', () => {
    const bled = { ...front, bore: 0.01905, pressure: 50 * bar };
    const lost = strokeForPressure({ ...bled, takeUpVolume: front.takeUpVolume + 1 * cc }).stroke - strokeForPressure(bled).stroke;
    expect(Math.abs(lost * 1e3 - 3.5)).toBeLessThanOrEqual(0.05);
    expect(Math.abs(6 * lost * 1e3 - 21)).toBeLessThanOrEqual(0.5);
  });

  test('0.25 mm of knock-back in each 54 mm caliper is 1.15 cm³ and 17.7 mm of pad on the reference truck (derived vector)', () => {
    const volume = 2 * (Math.PI / 4) * 0.054 ** 2 * 0.25e-3;
    expect(Math.abs(volume / cc - 1.15)).toBeLessThanOrEqual(0.005);
    const before = strokeForPressure({ ...front, pressure: 0 }).stroke;
    const after = strokeForPressure({ ...front, takeUpVolume: front.takeUpVolume + volume, pressure: 0 }).stroke;
    expect(Math.abs((after - before) * 0.62 * 6.2 * 1e3 - 17.7)).toBeLessThanOrEqual(0.05);
  });

  test('0.15 mm of gap per pad on two 54 mm floating calipers swallows 1.37 cm³ (derived vector)', () => {
    const axle = discAxle({
      pistonDiameter: 0.054, pistonsPerSide: 1, type: 'floating', friction: 0.38, outer: 0.13, inner: 0.086, law: 'worn-in',
      efficiency: 0.98, loadedRadius: 0.3, pushOut: 0, pressure: 0,
    });
    if (isImpossible(axle)) throw new Error(axle.impossible);
    expect(Math.abs((2 * axle.volumeArea * 0.15e-3) / cc - 1.37)).toBeLessThanOrEqual(0.005);
  });

  test('doubling every bore leaves the travel alone: four times the area drinks four times the volume', () => {
    const small = strokeForPressure({ ...front, pressure: 4e6 }).stroke;
    const big = strokeForPressure({
      ...front, bore: 2 * front.bore, takeUpVolume: 4 * front.takeUpVolume, compliance: 4 * front.compliance, pressure: 4e6,
    }).stroke;
    expect(big).toBeCloseTo(small, 14);
  });

  test('more pressure, more air, more give or a smaller bore never shortens the stroke', () => {
    fc.assert(
      fc.property(positive(0, 1.5e7), positive(0, 3e-6), positive(0, 1e-12), positive(0.012, 0.03), positive(1, 2), (pressure, v, k, bore, more) => {
        const base = { takeUpVolume: v, compliance: k, bore, portStroke: 0.001, pressure };
        const x = strokeForPressure(base).stroke;
        expect(strokeForPressure({ ...base, pressure: pressure * more }).stroke).toBeGreaterThanOrEqual(x);
        expect(strokeForPressure({ ...base, takeUpVolume: v * more }).stroke).toBeGreaterThanOrEqual(x);
        expect(strokeForPressure({ ...base, compliance: k * more }).stroke).toBeGreaterThanOrEqual(x);
        expect(strokeForPressure({ ...base, bore: bore / more }).stroke).toBeGreaterThanOrEqual(x);
      }),
    );
  });

  test('negative pressure, volume or give is a mistake of the caller', () => {
    expect(() => strokeForPressure({ ...front, pressure: -1 })).toThrow(/pressure/);
    expect(() => strokeForPressure({ ...front, compliance: -1, pressure: 0 })).toThrow(/compliance/);
    expect(() => strokeForPressure({ ...front, bore: 0, pressure: 0 })).toThrow(/diameter/);
  });
});

describe('pressureForStroke', () => {
  test('pressure to stroke and back is the pressure again', () => {
    fc.assert(
      fc.property(positive(0, 1.5e7), positive(0, 3e-6), positive(1e-13, 1e-12), positive(0.012, 0.03), (pressure, v, k, bore) => {
        const circuit = { takeUpVolume: v, compliance: k, bore, portStroke: 0.0012 };
        const { stroke } = strokeForPressure({ ...circuit, pressure });
        // Subtracting the take-up leaves about 1e-22 m³ of rounding, over k.
        expect(Math.abs(pressureForStroke({ ...circuit, stroke }).pressure - pressure)).toBeLessThan(1e-21 / k + 1e-9 * pressure);
      }),
    );
  });

  test('until the take-up is used there is no pressure, never a negative one', () => {
    expect(pressureForStroke({ ...front, stroke: 0 }).pressure).toBe(0);
    expect(pressureForStroke({ ...front, stroke: 0.0085 }).pressure).toBe(0);
    expect(pressureForStroke({ ...front, stroke: 0.0086 }).pressure).toBeGreaterThan(0);
  });

  test('the work done on the piston past the take-up is ½ k p²', () => {
    const from = strokeForPressure({ ...front, pressure: 0 }).stroke;
    const to = strokeForPressure({ ...front, pressure: 6e6 }).stroke;
    const area = (Math.PI / 4) * front.bore ** 2;
    const n = 2000;
    let work = 0;
    for (let i = 0; i < n; i += 1) work += (area * pressureForStroke({ ...front, stroke: from + ((i + 0.5) * (to - from)) / n }).pressure * (to - from)) / n;
    expect(work).toBeCloseTo(0.5 * front.compliance * 6e6 ** 2, 9);
  });

  test('a circuit with no give at all has no pressure to read off its stroke', () => {
    expect(() => pressureForStroke({ ...front, compliance: 0, stroke: 0.02 })).toThrow(/compliance/);
  });
});
