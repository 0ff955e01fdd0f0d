import { describe, expect, test } from 'vitest';
import { downGrade, singleStop } from '../../src/engine/heat.ts';
import { isImpossible } from '../../src/engine/outcome.ts';
import type { Impossible } from '../../src/engine/outcome.ts';

/* Tolerance: 0.1 % or half a unit of the last printed figure, whichever is larger. */
const poundForce = 0.45359237 * 9.80665;
const footPound = 0.3048 * poundForce;

function possible<T>(x: T | Impossible): T {
  if (isImpossible(x)) throw new Error(`expected a result, found ${x.impossible}`);
  return x;
}
function agrees(found: number, printed: number, lastUnit: number): void {
  expect(Math.abs(found - printed)).toBeLessThanOrEqual(Math.max(0.001 * Math.abs(printed), lastUnit / 2));
}

describe('heat of braking', () => {
  test('OpenStax College Physics 2e, 14.2: 10,000 kg held on the brakes for 75.0 m of descent, 10 % kept in 100 kg at 800 J/(kg·K), makes 9.2 K', () => {
    const speed = 15;
    const grade = 0.1;
    const d = downGrade({
      mass: 10_000, grade, speed, rollingCoefficient: 0, dragArea: 0, airDensity: 1.2, engineForce: 0, axleShare: 1, rotorFraction: 0.1,
      rotorMass: 50, specificHeat: 800, conductance: 1e-9, ambient: 300, limitTemperature: 309.2,
    });
    const wayDown = 75 / (speed * Math.sin(Math.atan(grade)));
    agrees((d.rotorPower * wayDown) / (50 * 800), 9.2, 0.1);
    // With hardly any cooling the engine's own time to 9.2 K is that of the descent, within half a unit of the last figure.
    expect(Math.abs((d.timeToLimit as number) / wayDown - 1)).toBeLessThan(0.05 / 9.2);
  });

  test('Wentzell, Machine Design, ex. 16.5 (read in a worked-solution companion): 3500 lb from 73 ft/s is 289,620 ft·lb, and 77.9 °F in 40 lb at 93 ft·lb/(lb·°F)', () => {
    const s = possible(singleStop({
      mass: 3500 * 0.45359237, speedFrom: 73 * 0.3048, speedTo: 0, rotatingFraction: 0, axleShare: 1, rotorFraction: 1, rotorMass: 20 * 0.45359237,
      specificHeat: (93 * footPound) / (0.45359237 * (5 / 9)),
    }));
    // The book's g is 32.2 ft/s², 0.08 % above the standard one.
    agrees(s.stopEnergy / footPound, 289_620, 1);
    agrees(s.rise / (5 / 9), 77.9, 0.1);
  });
});
