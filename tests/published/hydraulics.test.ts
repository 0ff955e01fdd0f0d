import { describe, expect, test } from 'vitest';
import { boosterForce } from '../../src/engine/booster.ts';
import { circleArea } from '../../src/engine/circle.ts';
import { discAxle, effectiveRadius } from '../../src/engine/disc.ts';
import { strokeForPressure } from '../../src/engine/fluid.ts';
import { isImpossible } from '../../src/engine/outcome.ts';
import type { Impossible } from '../../src/engine/outcome.ts';
import { linePressure } from '../../src/engine/pressure.ts';
import { stoppingDistance } from '../../src/engine/stopping.ts';

/*
 * Answers printed by others, against the engine. Tolerance: 0.1 % or half a unit of the last printed figure,
 * whichever is larger. "From memory" in a name means that the figure was not checked against the text.
 */
const g = 9.80665;
const inch = 0.0254;
const poundForce = 0.45359237 * g;
const psi = poundForce / inch ** 2;

function possible<T>(x: T | Impossible): T {
  if (isImpossible(x)) throw new Error(`expected a result, found ${x.impossible}`);
  return x;
}
function agrees(found: number, printed: number, lastUnit: number): void {
  expect(Math.abs(found - printed)).toBeLessThanOrEqual(Math.max(0.001 * Math.abs(printed), lastUnit / 2));
}

describe('hydraulics and lever', () => {
  test('OpenStax College Physics 2e, 11.5: 100 N at a 5:1 lever on a 0.500 cm master makes 2.55e7 Pa and 1.25e4 N on each 2.50 cm piston', () => {
    // One master takes the whole rod force, as a bar does with its pivot on the front clevis.
    const p = linePressure({
      controlForce: 100, pedalRatio: 5, efficiency: 1, frontShare: 1, frontBore: 0.005, rearBore: 0.005, springForce: 0,
    });
    expect(p.rodForce).toBeCloseTo(500, 12);
    agrees(p.frontPressure, 2.55e7, 1e5);
    const wheel = possible(discAxle({
      pistonDiameter: 0.025, pistonsPerSide: 1, type: 'floating', friction: 0.4, outer: 0.13, inner: 0.09, law: 'worn-in',
      efficiency: 1, loadedRadius: 0.3, pushOut: 0, pressure: p.frontPressure,
    }));
    agrees(wheel.clampForce, 1.25e4, 100);
  });

  test('OpenStax College Physics 2e, 11.5: 120 N on 2.00 cm is 5.76e3 N of extra force on 14.0 cm', () => {
    const pressure = 120 / circleArea({ diameter: 0.02 }).area;
    agrees(pressure * circleArea({ diameter: 0.14 }).area - 120, 5.76e3, 10);
  });

  test('Esposito, Fluid Power with Applications, ex. 2.11 (read in a worked-solution companion): 10 in³ from 100 to 2000 psi shrinks 0.076 in³ at 250,000 psi', () => {
    const circuit = { takeUpVolume: 0, compliance: (10 * inch ** 3) / (250_000 * psi), bore: 0.02, portStroke: 0 };
    const shrunk = strokeForPressure({ ...circuit, pressure: 2000 * psi }).volume - strokeForPressure({ ...circuit, pressure: 100 * psi }).volume;
    agrees(shrunk / inch ** 3, 0.076, 0.001);
  });

  test('no published answer for a booster was found; by statics 500 mmHg on 254 mm is 3378 N gross', () => {
    const b = boosterForce({ rodForce: 1e5, boostGain: 4, cutInForce: 50, diameter: 0.254, diaphragms: 1, vacuum: 500 * 133.322387415, areaFactor: 1 });
    expect(Math.abs(b.assist - 3378)).toBeLessThanOrEqual(0.5);
  });
});

describe('disc brakes', () => {
  test('Bhandari, Design of Machine Elements, ex. 12.12 (read in a worked-solution companion): 150 and 100 mm at even pressure act at 126.667 mm', () => {
    const { radius } = possible(effectiveRadius({ outer: 0.15, inner: 0.1, law: 'uniform-pressure' }));
    expect(Math.abs(radius * 1e3 - 126.667)).toBeLessThanOrEqual(0.0005);
  });

  test('Bhandari, same example: two pads of 77.543° at 2 MPa and 0.35 hold 1500 N·m', () => {
    const padArea = ((77.543 * Math.PI) / 180 / 2) * (0.15 ** 2 - 0.1 ** 2);
    const axle = possible(discAxle({
      pistonDiameter: Math.sqrt((4 * padArea) / Math.PI), pistonsPerSide: 1, type: 'opposed', friction: 0.35, outer: 0.15, inner: 0.1,
      law: 'uniform-pressure', efficiency: 1, loadedRadius: 0.3, pushOut: 0, pressure: 2e6,
    }));
    // The angle is printed to 0.001°, so the torque agrees to 1 part in 77,543 of half that.
    expect(Math.abs(axle.torquePerWheel / 1500 - 1)).toBeLessThan(0.0005 / 77.543 + 1e-6);
  });

  test('Shigley, Mechanical Engineering Design, ex. 16-3, from memory: 13,000 lbf·in on two pads needs 3748 lbf and 2121 psi in 1.5 in cylinders, worn in', () => {
    const axle = possible(discAxle({
      pistonDiameter: 1.5 * inch, pistonsPerSide: 1, type: 'opposed', friction: 0.37, outer: 5.5 * inch, inner: 3.875 * inch, law: 'worn-in',
      efficiency: 1, loadedRadius: 0.3, pushOut: 0, pressure: 2121 * psi,
    }));
    agrees(axle.clampForce / poundForce, 3748, 1);
    agrees(axle.torquePerWheel / (poundForce * inch), 13_000, 1);
  });

  test('Shigley, same example, from memory: 315.8 psi at the inner edge of a worn-in 108° pad is the same 3748 lbf', () => {
    // Worn in, pressure × radius is the same all over the pad, so the force is θ p_a r_i (r_o − r_i).
    const force = ((108 * Math.PI) / 180) * 315.8 * 3.875 * (5.5 - 3.875);
    agrees(force, 3748, 1);
    const radius = possible(effectiveRadius({ outer: 5.5, inner: 3.875, law: 'worn-in' })).radius;
    agrees(2 * 0.37 * force * radius, 13_000, 1);
  });
});

describe('stopping distance', () => {
  // OpenStax College Physics 2e, 2.5: 30.0 m/s, dry 7.00 and wet 5.00 m/s², 0.500 s to react.
  test.each([
    [7, 0, 64.3, 0.1],
    [5, 0, 90.0, 0.1],
    [7, 0.5, 79.3, 0.1],
    [5, 0.5, 105, 1],
  ])('OpenStax College Physics 2e, 2.5: 30.0 m/s at %f m/s² after %f s of reaction stops in %f m', (deceleration, reactionTime, printed, lastUnit) => {
    const s = possible(stoppingDistance({ speed: 30, rate: deceleration / g, reactionTime, buildUpTime: 0, grade: 0 }));
    agrees(s.stoppingDistance, printed, lastUnit);
  });

  // The form S = 0.10 V + k V² (m, km/h) is 0.36 s of undiminished speed and then the mean deceleration.
  const formula = (kmh: number, k: number) => 0.1 * kmh + k * kmh ** 2;
  const stop = (kmh: number, deceleration: number) =>
    possible(stoppingDistance({ speed: kmh / 3.6, rate: deceleration / g, reactionTime: 0.36, buildUpTime: 0, grade: 0 })).stoppingDistance;

  test('FMVSS 135 S7.5: 70 m from 100 km/h is what 0.10 V + 0.0060 V² and 6.43 m/s² ask (UN R13-H, as quoted by a text that transposes it)', () => {
    expect(formula(100, 0.006)).toBeCloseTo(70, 12);
    for (const kmh of [60, 80, 100]) expect(Math.abs(stop(kmh, 6.43) - formula(kmh, 0.006))).toBeLessThanOrEqual(0.00005 * kmh ** 2);
  });

  test('FMVSS 135 S7.10, S7.11, from memory and agreeing with this sum: 168 m from 100 km/h is 0.10 V + 0.0158 V² and 2.44 m/s²', () => {
    expect(formula(100, 0.0158)).toBeCloseTo(168, 12);
    for (const kmh of [60, 80, 100]) expect(Math.abs(stop(kmh, 2.44) - formula(kmh, 0.0158))).toBeLessThanOrEqual(0.00005 * kmh ** 2);
  });

  test('UN R13, light commercial service stop, from memory and agreeing with this sum: 0.15 v + v²/130 from 80 km/h is 5.0 m/s² after 0.54 s', () => {
    const s = possible(stoppingDistance({ speed: 80 / 3.6, rate: 5 / g, reactionTime: 0.54, buildUpTime: 0, grade: 0 }));
    // 25.92 × 5.0 = 129.6, printed as 130: half a unit there is 0.4 % of the second term.
    expect(Math.abs(s.stoppingDistance - (0.15 * 80 + 80 ** 2 / 130))).toBeLessThanOrEqual((0.5 / 130) * (80 ** 2 / 130));
  });

  test('California Vehicle Code 26454(b): 25 ft from 20 mph is a rate of 0.53', () => {
    const rate = 0.53;
    const s = possible(stoppingDistance({ speed: (20 * 1609.344) / 3600, rate, reactionTime: 0, buildUpTime: 0, grade: 0 }));
    agrees(s.stoppingDistance / 0.3048, 25, 1);
  });
});
