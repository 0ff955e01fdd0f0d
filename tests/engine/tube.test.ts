import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isImpossible } from '../../src/engine/outcome.ts';
import type { Impossible } from '../../src/engine/outcome.ts';
import { hoopStress, hoseMargin, tubeStrength } from '../../src/engine/tube.ts';

function possible<T>(x: T | Impossible): T {
  if (isImpossible(x)) throw new Error(`expected a result, found ${x.impossible}`);
  return x;
}
const inch = 0.0254;
const psi = (0.45359237 * 9.80665) / inch ** 2;
const line = { outsideDiameter: (3 / 16) * inch, wall: 0.028 * inch, tensileStrength: 290e6, pressure: 10e6 };
// Evenly spread: fc.double would spend most of its trials within a hair of 0.
const range = (min: number, max: number) =>
  fc.integer({ min: 0, max: 1_000_000 }).map((k) => min + ((max - min) * k) / 1_000_000);
const anyTube = fc.tuple(range(0.003, 0.012), range(0.02, 0.45)).map(([outsideDiameter, part]) => ({ outsideDiameter, wall: outsideDiameter * part }));

describe('hoopStress', () => {
  test('all of the wall together holds the two halves: the sum of stress across it is p times the bore', () => {
    fc.assert(fc.property(anyTube, range(1e5, 5e7), ({ outsideDiameter, wall }, pressure) => {
      const outerRadius = outsideDiameter / 2;
      const boreRadius = outerRadius - wall;
      const n = 2000;
      let held = 0;
      for (let i = 0; i < n; i += 1) {
        held += (possible(hoopStress({ pressure, outerRadius, boreRadius, radius: boreRadius + ((i + 0.5) * wall) / n })).stress * wall) / n;
      }
      expect(Math.abs(held / (pressure * boreRadius) - 1)).toBeLessThan(2e-5);
    }), { numRuns: 40 });
  });

  test('it is largest at the bore and falls outward; there it is the bore’s less the pressure', () => {
    fc.assert(fc.property(anyTube, range(0, 1), range(0, 1), ({ outsideDiameter, wall }, a, b) => {
      const t = { pressure: 1e7, outerRadius: outsideDiameter / 2, boreRadius: outsideDiameter / 2 - wall };
      const at = (part: number) => possible(hoopStress({ ...t, radius: Math.min(t.outerRadius, t.boreRadius + part * wall) })).stress;
      expect(at(Math.min(a, b))).toBeGreaterThanOrEqual(at(Math.max(a, b)) - 1e-3);
      expect(Math.abs(at(0) - at(1) - 1e7)).toBeLessThan(1);
    }));
  });

  test('a radius outside the wall is a mistake of the caller, a bore as wide as the tube has no answer', () => {
    expect(() => hoopStress({ pressure: 1, outerRadius: 2, boreRadius: 1, radius: 2.5 })).toThrow(/radius/);
    expect(() => hoopStress({ pressure: 1, outerRadius: 2, boreRadius: 1, radius: 0.5 })).toThrow(/radius/);
    const r = hoopStress({ pressure: 1, outerRadius: 2, boreRadius: 3, radius: 2 });
    expect(isImpossible(r) && r.impossible).toBe('wall-not-positive');
    expect(isImpossible(r) && r.by).toBe(1);
  });
});

describe('tubeStrength', () => {
  test('derived vectors: 290 MPa on 3/16 × 0.028 in bursts at 86.6 MPa = 12,560 psi by the outside diameter, on 1/4 in at 65.0', () => {
    const { outside } = possible(tubeStrength(line));
    expect(Math.abs(outside.burst / 1e6 - 86.6)).toBeLessThanOrEqual(0.05);
    expect(Math.abs(outside.burst / psi - 12_560)).toBeLessThanOrEqual(5);
    // 64.96: a printed 64.9 is cut off, not rounded.
    expect(Math.abs(possible(tubeStrength({ ...line, outsideDiameter: 0.25 * inch })).outside.burst / 1e6 - 64.96)).toBeLessThanOrEqual(0.005);
  });

  test('Barlow on the bore says least and on the outside most; Lamé lies between, nearer the outside', () => {
    fc.assert(fc.property(anyTube, (tube) => {
      const { bore, lame, outside } = possible(tubeStrength({ ...line, ...tube }));
      expect(bore.stress).toBeLessThan(lame.stress);
      expect(lame.stress).toBeLessThan(outside.stress);
      expect(lame.stress).toBeGreaterThan((bore.stress + outside.stress) / 2);
      expect(outside.burst).toBeLessThan(lame.burst);
      expect(outside.stressPerPressure - bore.stressPerPressure).toBeCloseTo(1, 9); // the two diameters differ by 2t
    }));
  });

  test('a thin tube has one answer: the three agree as the wall goes to nothing', () => {
    const { bore, lame, outside } = possible(tubeStrength({ ...line, outsideDiameter: 1, wall: 1e-6 }));
    expect(lame.stress / outside.stress).toBeCloseTo(1, 5);
    expect(bore.stress / outside.stress).toBeCloseTo(1, 5);
  });

  test('stress times safety factor is the tensile strength, in all three', () => {
    fc.assert(fc.property(anyTube, range(1e5, 5e7), (tube, pressure) => {
      const t = possible(tubeStrength({ ...line, ...tube, pressure }));
      for (const f of [t.bore, t.lame, t.outside]) {
        expect((f.stress * f.safetyFactor!) / 290e6).toBeCloseTo(1, 9);
        expect(f.burst / pressure / f.safetyFactor!).toBeCloseTo(1, 12);
      }
      expect(t.boreDiameter).toBeCloseTo(tube.outsideDiameter - 2 * tube.wall, 15);
    }));
  });

  test('the bore yields by hoop, axial and radial stress together, sooner than a thick wall does by hoop stress alone', () => {
    fc.assert(fc.property(anyTube, (tube) => {
      const t = possible(tubeStrength({ ...line, ...tube }));
      const [D, d] = [tube.outsideDiameter, t.boreDiameter];
      const hoop = t.lame.stressPerPressure;
      const along = d ** 2 / (D ** 2 - d ** 2); // what the fluid pushes off the closed end, over the metal
      const mises = Math.sqrt(((hoop - along) ** 2 + (along + 1) ** 2 + (hoop + 1) ** 2) / 2);
      expect(t.yieldPerPressure / mises).toBeCloseTo(1, 9);
      expect(t.yieldPerPressure).toBeLessThan(hoop + 1); // Tresca is the stricter rule
    }));
    const brake = possible(tubeStrength(line));
    expect(brake.yieldPerPressure).toBeCloseTo(3.409, 3);
    expect(brake.yieldPerPressure).toBeGreaterThan(brake.lame.stressPerPressure);
  });

  test('a thicker wall, or a smaller tube of the same wall, is stronger; the size of both together does not matter', () => {
    fc.assert(fc.property(anyTube, range(1.01, 1.1), (tube, more) => {
      const k = (over: Partial<typeof tube>) => possible(tubeStrength({ ...line, ...tube, ...over }));
      for (const f of ['bore', 'lame', 'outside'] as const) {
        expect(k({ wall: tube.wall * more })[f].burst).toBeGreaterThan(k({})[f].burst);
        expect(k({ outsideDiameter: tube.outsideDiameter * more })[f].burst).toBeLessThan(k({})[f].burst);
        expect(k({ outsideDiameter: tube.outsideDiameter * more, wall: tube.wall * more })[f].burst / k({})[f].burst).toBeCloseTo(1, 9);
      }
    }));
  });

  test('no wall gives no factor, and neither does a wall that fills the tube', () => {
    for (const wall of [0, -1e-4]) {
      const r = tubeStrength({ ...line, wall });
      expect(isImpossible(r) && r.impossible).toBe('wall-not-positive');
      expect(isImpossible(r) && r.by).toBeCloseTo(-wall, 15);
    }
    const full = tubeStrength({ ...line, wall: 3e-3 });
    expect(isImpossible(full) && full.impossible).toBe('wall-fills-tube');
    expect(isImpossible(full) && full.by).toBeCloseTo(6e-3 - (3 / 16) * inch, 15);
    expect(isImpossible(tubeStrength({ ...line, outsideDiameter: 4e-3, wall: 2e-3 }))).toBe(true);
  });

  test('at no pressure there is no factor; negative pressure is a mistake of the caller', () => {
    const t = possible(tubeStrength({ ...line, pressure: 0 }));
    expect(t.lame.stress).toBe(0);
    expect(t.lame.safetyFactor).toBeUndefined();
    expect(() => tubeStrength({ ...line, pressure: -1 })).toThrow(/pressure/);
    expect(() => tubeStrength({ ...line, wall: NaN })).toThrow(/wall/);
    expect(() => tubeStrength({ ...line, tensileStrength: 0 })).toThrow(/tensileStrength/);
  });
});

describe('hoseMargin', () => {
  test('proof and burst figures over the pressure', () => {
    const m = possible(hoseMargin({ proof: 4000 * psi, burst: 5000 * psi, pressure: 1000 * psi }));
    expect(m.proofFactor).toBeCloseTo(4, 12);
    expect(m.burstFactor).toBeCloseTo(5, 12);
    expect(possible(hoseMargin({ proof: 1, burst: 1, pressure: 0 }))).toEqual({ proofFactor: undefined, burstFactor: undefined });
  });

  test('a hose cannot burst below the pressure it was proved at', () => {
    const r = hoseMargin({ proof: 5e6, burst: 4e6, pressure: 1e6 });
    expect(isImpossible(r) && r.impossible).toBe('burst-below-proof');
    expect(isImpossible(r) && r.by).toBe(1e6);
    expect(() => hoseMargin({ proof: 0, burst: 1, pressure: 1 })).toThrow(/proof/);
  });
});
