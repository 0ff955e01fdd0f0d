import { lusolve } from 'mathjs';
import { describe, expect, test } from 'vitest';
import { adhesion } from '../../src/engine/adhesion.ts';
import { standardGravity } from '../../src/engine/constants.ts';
import { idealDistribution } from '../../src/engine/distribution.ts';
import { axleLoads } from '../../src/engine/loads.ts';
import { lockOrder, lockOrderWithValve } from '../../src/engine/lockOrder.ts';
import { isImpossible } from '../../src/engine/outcome.ts';
import type { Impossible } from '../../src/engine/outcome.ts';
import { brakesPerRodForce } from '../../src/engine/valve.ts';

function possible<T>(x: T | Impossible): T {
  if (isImpossible(x)) throw new Error(`expected a result, found ${x.impossible}`);
  return x;
}
const inch = 0.0254;
const pound = 0.45359237;
const lbf = pound * standardGravity;
const psi = lbf / inch ** 2;

describe('axle loads and splits against printed examples', () => {
  test('Halliday, Resnick, Walker, Fundamentals of Physics 8e ch. 12, emergency stop (figures partly from memory): 3536 and 1964 N a wheel', () => {
    const mass = 11000 / standardGravity;
    const s = possible(axleLoads({ frontLoad: mass * (2.4 / 4.2), rearLoad: mass * (1.8 / 4.2), wheelbase: 4.2, cgHeight: 0.75, rate: 0.4 }));
    expect(Math.abs(s.frontDynamic / 2 - 3536)).toBeLessThan(0.5);
    expect(Math.abs(s.rearDynamic / 2 - 1964)).toBeLessThan(0.5);
    expect(0.4 * standardGravity).toBeCloseTo(3.92, 2);
    // All four wheels slide, so each brakes with 0.40 times its load: that is the ideal split at z = 0.40.
    const ideal = possible(idealDistribution({ rearFraction: s.rearFraction, heightRatio: s.heightRatio, rate: 0.4, weight: 11000 }));
    expect(ideal.frontForce / 2).toBeCloseTo(0.4 * (s.frontDynamic / 2), 6);
    expect(ideal.rearForce / 2).toBeCloseTo(0.4 * (s.rearDynamic / 2), 6);
  });

  test('Jazar, Vehicle Dynamics, ex. 40: 2000 and 1800 N a wheel on 2.34 m put the mass center 1.1084 m behind the front axle', () => {
    const s = possible(axleLoads({ frontLoad: 4000 / standardGravity, rearLoad: 3600 / standardGravity, wheelbase: 2.34, cgHeight: 0.5, rate: 0 }));
    expect(s.rearFraction * 2.34).toBeCloseTo(1.1084, 4);
    expect((1 - s.rearFraction) * 2.34).toBeCloseTo(1.2316, 4);
  });

  test('Jazar, Vehicle Dynamics, eq. 2.72–2.74, a car held by four brakes nose up: the equations as printed, solved by mathjs', () => {
    const [a1, a2, h, weight, slope] = [1.35, 1.15, 0.62, 1500 * standardGravity, 0.22];
    const phi = Math.atan(slope);
    // Unknown: total holding force, front and rear axle load.
    const solved = lusolve(
      [[1, 0, 0], [0, 1, 1], [-h, -a1, a2]],
      [weight * Math.sin(phi), weight * Math.cos(phi), 0],
    ) as number[][];
    const s = possible(axleLoads({ frontLoad: (1500 * a2) / 2.5, rearLoad: (1500 * a1) / 2.5, wheelbase: 2.5, cgHeight: h, rate: 0, grade: slope }));
    expect(-s.groundForce).toBeCloseTo(solved[0]?.[0] as number, 6);
    expect(s.frontDynamic).toBeCloseTo(solved[1]?.[0] as number, 6);
    expect(s.rearDynamic).toBeCloseTo(solved[2]?.[0] as number, 6);
  });

  test('CommonRoad vehicle parameters, three cars: ideal front share at 0.8 g 81.7, 73.0 and 77.6 %', () => {
    const cars = [
      { m: 1225.9, a: 0.8839, b: 1.5088, h: 0.5578, front: 81.7 },
      { m: 1093.3, a: 1.1562, b: 1.4227, h: 0.5749, front: 73.0 },
      { m: 1478.9, a: 1.1508, b: 1.3211, h: 0.7478, front: 77.6 },
    ];
    for (const { m, a, b, h, front } of cars) {
      const loads = possible(axleLoads({ frontLoad: (m * b) / (a + b), rearLoad: (m * a) / (a + b), wheelbase: a + b, cgHeight: h, rate: 0.8 }));
      expect(Math.abs(100 * loads.frontDynamicFraction - front)).toBeLessThan(0.05);
      const ideal = possible(idealDistribution({ rearFraction: loads.rearFraction, heightRatio: loads.heightRatio, rate: 0.8, weight: m * standardGravity }));
      expect(Math.abs(100 * ideal.frontShare - front)).toBeLessThan(0.05);
    }
  });

  test('Gillespie, Fundamentals of Vehicle Dynamics ch. 3, 100 psi row (from memory): 330 and 231 lb of brake force, 0.138 g', () => {
    const gain = (perBrake: number) => (2 * perBrake * inch * lbf) / psi / (12.11 * inch);
    const mass = (2210 + 1864) * pound;
    // Equal bores and a centered bar put the same pressure in both circuits, as the single cylinder of the example does.
    const brakes = { frontShare: 0.5, frontBore: 0.02, rearBore: 0.02, frontGain: gain(20), rearGain: gain(14) };
    const perNewton = brakesPerRodForce(brakes);
    const rodForce = (100 * psi) / perNewton.frontPressure;
    const front = perNewton.front * rodForce;
    const rear = perNewton.rear * rodForce;
    expect(Math.abs(front / lbf - 330)).toBeLessThan(0.5);
    expect(Math.abs(rear / lbf - 231)).toBeLessThan(0.5);
    const rate = (front + rear) / (mass * standardGravity);
    expect(Math.abs(rate - 0.138)).toBeLessThan(0.0005);

    // On a road with just the grip that the harder working axle needs, lock comes at those 100 psi.
    const truck = { rearFraction: 1864 / 4074, heightRatio: 20.5 / 108.5 };
    const grip = possible(adhesion({ ...truck, rearBrakeFraction: perNewton.rearBrakeFraction, rate })).needed;
    const lock = lockOrderWithValve({ ...brakes, ...truck, mass, grip, knee: 290 * psi, slope: 0.3 });
    expect(lock.frontPressure / psi).toBeCloseTo(100, 6);
    expect(lock.bestRate).toBeCloseTo(rate, 9);
  });
});

describe('lock order against Wong, Theory of Ground Vehicles 3e ex. 3.3 (from memory)', () => {
  const wong = { frontFraction: 0.6, ahead: 1.27, wheelbase: 2.87, height: 0.508, rolling: 0.02 };
  const truck = { rearBrakeFraction: 0.4, rearFraction: wong.ahead / wong.wheelbase, heightRatio: wong.height / wong.wheelbase };
  const at = (grip: number) => possible(lockOrder({ ...truck, grip, rollingResistance: wong.rolling }));
  const without = (grip: number) => possible(lockOrder({ ...truck, grip }));

  /** Both axles by Wong's model, with the brake share (straight) or its complement (interchanged) before the rolling term. */
  function model(grip: number, interchanged: boolean) {
    const { rearFraction, heightRatio } = truck;
    const kFront = wong.frontFraction;
    const kRear = 1 - kFront;
    const frontTerm = (interchanged ? kRear : kFront) * wong.rolling;
    const rearTerm = (interchanged ? kFront : kRear) * wong.rolling;
    return {
      front: (grip * (1 - rearFraction) + frontTerm) / (kFront - grip * heightRatio),
      rear: (grip * rearFraction + rearTerm) / (kRear + grip * heightRatio),
    };
  }

  test('the order flips as printed: rear first on grip 0.8, front first on grip 0.2', () => {
    expect(at(0.8).first).toBe('rear');
    expect(at(0.2).first).toBe('front');
    expect(without(0.8).first).toBe('rear');
    expect(without(0.2).first).toBe('front');
  });

  test('the printed 0.99, 0.676, 0.212 and 0.231 come out with the shares before the rolling terms interchanged', () => {
    expect(Math.abs(model(0.8, true).front - 0.99)).toBeLessThan(0.005);
    expect(Math.abs(model(0.8, true).rear - 0.676)).toBeLessThan(0.0005);
    expect(Math.abs(model(0.2, true).front - 0.212)).toBeLessThan(0.0005);
    expect(Math.abs(model(0.2, true).rear - 0.231)).toBeLessThan(0.0005);
  });

  test('the printed figures do not come out with the shares as his own free body has them, nor from ours', () => {
    expect(Math.abs(model(0.8, false).rear - 0.676)).toBeGreaterThan(0.005);
    expect(Math.abs(model(0.2, false).front - 0.212)).toBeGreaterThan(0.005);
    expect(Math.abs(model(0.2, false).rear - 0.231)).toBeGreaterThan(0.005);
    expect(Math.abs((at(0.8).rearLockRate as number) - 0.676)).toBeGreaterThan(0.005);
  });

  test('with the shares straight his model lets the truck stop harder than the grip when both axles lock together; ours stops there at z = grip', () => {
    const { criticalRate } = without(0.5);
    const both = at(criticalRate);
    expect(both.bestRate).toBeCloseTo(criticalRate, 9);
    // In his model the two rates meet where K (z − f) = μ N at both, so z = μ + f: the road pushing with more than μ W.
    const straight = model(criticalRate - wong.rolling, false);
    expect(straight.front).toBeCloseTo(criticalRate, 9);
    expect(straight.rear).toBeCloseTo(criticalRate, 9);
    expect(straight.front).toBeGreaterThan(criticalRate - wong.rolling);
  });

  test('our values, and without rolling resistance all three agree', () => {
    // Worked by hand: grip less rolling 0.78 and 0.18, load shares 1.60/2.87 and 1.27/2.87, height ratio 0.508/2.87.
    expect(at(0.8).frontLockRate).toBeCloseTo((0.78 * 0.557491 + 0.6 * 0.02) / (0.6 - 0.78 * 0.177003), 5);
    expect(at(0.8).rearLockRate).toBeCloseTo((0.78 * 0.442509 + 0.4 * 0.02) / (0.4 + 0.78 * 0.177003), 5);
    expect(at(0.2).frontLockRate).toBeCloseTo(0.1977, 4);
    expect(at(0.2).rearLockRate).toBeCloseTo(0.203, 4);
    for (const grip of [0.2, 0.8]) {
      const plain = { front: (grip * (1 - truck.rearFraction)) / (0.6 - grip * truck.heightRatio), rear: (grip * truck.rearFraction) / (0.4 + grip * truck.heightRatio) };
      expect(without(grip).frontLockRate).toBeCloseTo(plain.front, 12);
      expect(without(grip).rearLockRate).toBeCloseTo(plain.rear, 12);
    }
  });
});
