import { describe, expect, test } from 'vitest';
import { circuitVolume } from '../../src/engine/circuitVolume.ts';
import { isImpossible } from '../../src/engine/outcome.ts';
import type { Impossible } from '../../src/engine/outcome.ts';
import { awgArea } from '../../src/engine/stopLamp.ts';
import { hoopStress, tubeStrength } from '../../src/engine/tube.ts';

/*
 * Answers printed by others, against the engine. Tolerance: 0.1 % or half a unit of the last printed figure,
 * whichever is larger. "From memory" in a name means that the figure was not checked against the text.
 */
const inch = 0.0254;
const psi = (0.45359237 * 9.80665) / inch ** 2;

function possible<T>(x: T | Impossible): T {
  if (isImpossible(x)) throw new Error(`expected a result, found ${x.impossible}`);
  return x;
}
function agrees(found: number, printed: number, lastUnit: number): void {
  expect(Math.abs(found - printed)).toBeLessThanOrEqual(Math.max(0.001 * Math.abs(printed), lastUnit / 2));
}

describe('tube', () => {
  test.each([
    [10, 325, 1],
    [25, 62.5, 0.1],
    [50, 25, 1],
  ])('Boresi & Schmidt, Advanced Mechanics of Materials, ex. 11.1 (read in a worked-solution companion): bore radius 10, outer 50 mm, 300 MPa inside: at %i mm the hoop stress is %f MPa', (radius, printed, lastUnit) => {
    const { stress } = possible(hoopStress({ pressure: 300e6, outerRadius: 0.05, boreRadius: 0.01, radius: radius / 1000 }));
    agrees(stress / 1e6, printed, lastUnit);
  });

  test('Boresi & Schmidt, same example: the tube formula gives the stress at the bore', () => {
    const t = possible(tubeStrength({ outsideDiameter: 0.1, wall: 0.04, tensileStrength: 325e6, pressure: 300e6 }));
    agrees(t.lame.stress / 1e6, 325, 1);
    agrees(t.lame.safetyFactor!, 1, 0.01);
  });

  test('4.75 × 0.71 mm line, stress per unit pressure by three formulas: 2.35 on the bore, 2.93 by Lamé, 3.35 on the outside (recomputed here; half a unit of the last figure)', () => {
    const t = possible(tubeStrength({ outsideDiameter: 4.75e-3, wall: 0.71e-3, tensileStrength: 290e6, pressure: 1e7 }));
    expect(Math.abs(t.bore.stressPerPressure - 2.35)).toBeLessThanOrEqual(0.005);
    expect(Math.abs(t.lame.stressPerPressure - 2.93)).toBeLessThanOrEqual(0.005);
    expect(Math.abs(t.outside.stressPerPressure - 3.35)).toBeLessThanOrEqual(0.005);
  });

  test('SAE J527 (read in a text that quotes it): a 3/16 × 0.028 in tube has a bore of 0.1315 in', () => {
    const t = possible(tubeStrength({ outsideDiameter: (3 / 16) * inch, wall: 0.028 * inch, tensileStrength: 290e6, pressure: 1e7 }));
    expect(Math.abs(t.boreDiameter / inch - 0.1315)).toBeLessThanOrEqual(1e-12);
  });

  test('SAE J527, same tube: at the 170 MPa it must yield above, the bore is at 58 MPa of pressure, twice the hose proof of FMVSS 106', () => {
    const t = possible(tubeStrength({ outsideDiameter: (3 / 16) * inch, wall: 0.028 * inch, tensileStrength: 170e6, pressure: 4000 * psi }));
    expect(t.lame.safetyFactor!).toBeGreaterThan(2);
    expect(Math.abs(t.lame.burst / 1e6 - 57.9)).toBeLessThanOrEqual(0.05);
  });
});

const bare = {
  pistonDiameter: 0.05, pistonsPerSide: 1, type: 'floating' as const, gapPerPad: 0, knockBack: 0, fluidVolume: 0, bulkModulus: 1.6e9, hoses: 0, hoseLength: 0, hoseExpansion: 0,
  hosePressure: 1000 * psi, caliperGive: 0, caliperPressure: 7e6, padGive: 0, padPressure: 1e7, airVolume: 0, polytropic: 1,
};

describe('fluid', () => {
  test('Esposito, Fluid Power with Applications, ex. 2.11 (read in a worked-solution companion): 10 in³ from 100 to 2000 psi shrinks 0.076 in³ at 250,000 psi', () => {
    const at = (pounds: number) => circuitVolume({ ...bare, fluidVolume: 10 * inch ** 3, bulkModulus: 250_000 * psi, pressure: pounds * psi }).total;
    agrees((at(2000) - at(100)) / inch ** 3, 0.076, 0.001);
  });
});

describe('wire', () => {
  test('American Wire Gauge, from memory: 16 is 1.31 mm² and 18 is 0.823 mm²', () => {
    agrees(awgArea({ gauge: 16 }).area * 1e6, 1.31, 0.01);
    agrees(awgArea({ gauge: 18 }).area * 1e6, 0.823, 0.001);
  });
});
