import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isImpossible } from '../../src/engine/outcome.ts';
import { tubeStrength } from '../../src/engine/tube.ts';
import { tubeYield } from '../../src/engine/tubeYield.ts';

const inch = 0.0254;
const range = (min: number, max: number) => fc.integer({ min: 0, max: 1_000_000 }).map((k) => min + ((max - min) * k) / 1_000_000);
const anyTube = fc.record({ outerRadius: range(0.002, 0.006), part: range(0.4, 0.97), yieldStrength: range(8e7, 4e8) })
  .map(({ outerRadius, part, yieldStrength }) => ({ outerRadius, boreRadius: outerRadius * part, yieldStrength }));
const brake = { outerRadius: (3 / 32) * inch, boreRadius: (0.1315 / 2) * inch, yieldStrength: 170e6 };

describe('tubeYield', () => {
  test('the worked brake tube: 49.9 MPa at the bore, 69.6 MPa for the whole wall', () => {
    const r = tubeYield({ ...brake, pressure: 0 });
    expect(r.borePressure / 1e6).toBeCloseTo(49.87, 2);
    expect(r.wallPressure / 1e6).toBeCloseTo(69.64, 2);
    expect((r.wallPressure * (2 - 170 / 290)) / 1e6).toBeCloseTo(98.5, 1);
  });

  test('every ring of the wall is in balance: what counts, summed outward, holds the pressure at the bore', () => {
    // The radial stress grows by (hoop − radial)/r, and hoop less radial is 2/√3 of what counts.
    fc.assert(fc.property(anyTube, range(0.1, 0.999), (tube, part) => {
      const pressure = part * tubeYield({ ...tube, pressure: 0 }).wallPressure;
      const { counted } = tubeYield({ ...tube, pressure });
      const n = 4000;
      const step = (tube.outerRadius - tube.boreRadius) / n;
      let held = 0;
      for (let k = 0; k < n; k += 1) {
        const r = tube.boreRadius + (k + 0.5) * step;
        held += ((2 / Math.sqrt(3)) * counted(r) * step) / r;
      }
      expect(Math.abs(held / pressure - 1)).toBeLessThan(1e-4);
    }), { numRuns: 60 });
  });

  test('nothing counts for more than the yield strength, and it falls outward', () => {
    fc.assert(fc.property(anyTube, range(0, 2), range(0, 1), range(0, 1), (tube, part, x, y) => {
      const { counted, wallPressure } = tubeYield({ ...tube, pressure: 0 });
      expect(counted(tube.boreRadius)).toBe(0);
      const at = tubeYield({ ...tube, pressure: part * wallPressure });
      const radius = (p: number) => tube.boreRadius + p * (tube.outerRadius - tube.boreRadius);
      expect(at.counted(radius(Math.max(x, y)))).toBeLessThanOrEqual(at.counted(radius(Math.min(x, y))) + 1e-3);
      expect(at.counted(radius(x))).toBeLessThanOrEqual(tube.yieldStrength);
      expect(at.yieldedRadius).toBeGreaterThanOrEqual(tube.boreRadius);
      expect(at.yieldedRadius).toBeLessThanOrEqual(tube.outerRadius);
    }));
  });

  test('it begins where von Mises at the bore says, and more pressure yields more of the wall', () => {
    fc.assert(fc.property(anyTube, range(1, 1.4), range(1.001, 1.1), (tube, part, more) => {
      const strength = tubeStrength({ outsideDiameter: 2 * tube.outerRadius, wall: tube.outerRadius - tube.boreRadius, tensileStrength: 4e8, pressure: 1 });
      if (isImpossible(strength)) throw new Error(strength.impossible);
      const first = tube.yieldStrength / strength.yieldPerPressure;
      const r = tubeYield({ ...tube, pressure: first * 0.999999 });
      expect(r.borePressure / first).toBeCloseTo(1, 9);
      expect(r.yieldedRadius).toBe(tube.boreRadius);
      const pressure = first * part;
      fc.pre(pressure * more < r.wallPressure);
      expect(tubeYield({ ...tube, pressure: pressure * more }).yieldedRadius).toBeGreaterThan(tubeYield({ ...tube, pressure }).yieldedRadius);
    }));
  });

  test('the whole wall yields later than the bore, by little where it is thin', () => {
    fc.assert(fc.property(anyTube, (tube) => {
      const r = tubeYield({ ...tube, pressure: 0 });
      expect(r.wallPressure).toBeGreaterThan(r.borePressure);
      expect(tubeYield({ ...tube, pressure: r.wallPressure * 1.01 }).yieldedRadius).toBe(tube.outerRadius);
    }));
    const thin = tubeYield({ ...brake, boreRadius: brake.outerRadius * 0.9999, pressure: 0 });
    expect(thin.wallPressure / thin.borePressure).toBeCloseTo(1, 3);
  });

  test('a bore as wide as the tube is a mistake of the caller', () => {
    expect(() => tubeYield({ ...brake, boreRadius: brake.outerRadius, pressure: 1 })).toThrow(/boreRadius/);
    expect(() => tubeYield({ ...brake, pressure: -1 })).toThrow(/pressure/);
    expect(() => tubeYield({ ...brake, yieldStrength: 0, pressure: 1 })).toThrow(/yieldStrength/);
  });
});
