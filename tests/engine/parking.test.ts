import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { axleLoads } from '../../src/engine/loads.ts';
import { isImpossible } from '../../src/engine/outcome.ts';
import { gradeHeld, parkingCable, parkingDemand, parkingTorque } from '../../src/engine/parking.ts';
import { bisect } from '../../src/engine/roots.ts';

const g = 9.80665;
// Evenly spread: fc.double would spend most of its trials within a hair of 0.
const range = (min: number, max: number) =>
  fc.integer({ min: 0, max: 1_000_000 }).map((k) => min + ((max - min) * k) / 1_000_000);
const truck = {
  forwardTorque: 387, reverseTorque: 387, coolingLoss: 0.15, mass: 1340, loadedRadius: 0.3, rearLoadFraction: 0.42, cgHeight: 0.58, wheelbase: 2.743, grip: 0.7,
};
const anyTruck = fc.record({
  forwardTorque: range(0, 1500), reverseTorque: range(0, 1500), coolingLoss: range(0, 0.3), mass: range(900, 2500), loadedRadius: range(0.26, 0.36),
  rearLoadFraction: range(0.3, 0.6), cgHeight: range(0.4, 0.8), wheelbase: range(2.4, 3.4), grip: range(0.1, 1.1),
});

describe('parkingDemand', () => {
  test('the reference truck on 20 % pulls with 2577 N and asks 387 N·m of each rear wheel; 30 % asks 566', () => {
    const d = parkingDemand({ mass: 1340, grade: 0.2, loadedRadius: 0.3 });
    expect(Math.abs(d.gradeForce - 2577)).toBeLessThanOrEqual(0.5);
    expect(Math.abs(d.torquePerWheel - 387)).toBeLessThanOrEqual(0.5);
    expect(Math.abs(parkingDemand({ mass: 1340, grade: 0.3, loadedRadius: 0.3 }).torquePerWheel - 566)).toBeLessThanOrEqual(0.5);
  });

  test('nothing on the level, and never more than the weight however steep', () => {
    expect(parkingDemand({ mass: 1340, grade: 0, loadedRadius: 0.3 }).gradeForce).toBe(0);
    expect(parkingDemand({ mass: 1340, grade: 1e9, loadedRadius: 0.3 }).gradeForce).toBeCloseTo(1340 * g, 6);
    expect(() => parkingDemand({ mass: 1340, grade: -0.1, loadedRadius: 0.3 })).toThrow(/grade/);
  });

  test('a wheel’s torque over its radius, twice, is the pull of the hill', () => {
    const d = parkingDemand({ mass: 1500, grade: 0.18, loadedRadius: 0.31 });
    expect((2 * d.torquePerWheel) / 0.31).toBeCloseTo(d.gradeForce, 9);
    expect(d.gradeForce).toBeCloseTo(1500 * g * Math.sin(Math.atan(0.18)), 9);
  });
});

describe('parkingCable', () => {
  const cable = { leverForce: 300, leverRatio: 8, frontWrap: Math.PI, rearWrap: 1.5 * Math.PI, cableFriction: 0.15, intermediateRatio: 1 };

  test('without friction the hand’s work comes out at the two wheels: pull × lever ratio, half each', () => {
    const c = parkingCable({ ...cable, cableFriction: 0 });
    expect(2 * c.wheelTension).toBeCloseTo(2400, 9);
    expect(c.efficiency).toBe(1);
  });

  test('pulling a cable round a bend in 10,000 small steps loses the same', () => {
    const steps = 10_000;
    let tension = 2400;
    for (let i = 0; i < steps; i += 1) tension -= (0.15 * tension * Math.PI) / steps;
    expect(Math.abs(parkingCable(cable).frontTension / tension - 1)).toBeLessThan(0.15 ** 2 * Math.PI ** 2 / steps);
    expect(parkingCable(cable).wheelTension).toBeCloseTo(369.4, 1);
  });

  test('only the sum of the bends counts, and each more takes its part', () => {
    const a = parkingCable(cable);
    const b = parkingCable({ ...cable, frontWrap: 2 * Math.PI, rearWrap: 0.5 * Math.PI });
    expect(b.wheelTension).toBeCloseTo(a.wheelTension, 9);
    expect(parkingCable({ ...cable, rearWrap: 2 * Math.PI }).wheelTension / a.wheelTension).toBeCloseTo(Math.exp((-0.15 * Math.PI) / 2), 12);
    expect((2 * a.wheelTension) / (300 * 8)).toBeCloseTo(a.efficiency, 12);
    expect(parkingCable({ ...cable, intermediateRatio: 2 }).wheelTension).toBeCloseTo(2 * a.wheelTension, 9);
    expect(() => parkingCable({ ...cable, rearWrap: -1 })).toThrow(/rearWrap/);
  });
});

describe('parkingTorque', () => {
  const caliper = { kind: 'caliper' as const, wheelTension: 4931, gain: 1, efficiency: 1, friction: 0.35, effectiveRadius: 0.112 };
  const shoe = { kind: 'shoe' as const, wheelTension: 1137, gain: 1, efficiency: 1, forwardFactor: 4, reverseFactor: 4, drumRadius: 0.085 };

  test('what holds the reference truck on 20 %: 4931 N of clamp, or 1137 N at the shoes of factor 4; on 30 % 7225 N', () => {
    const need = (grade: number) => parkingDemand({ mass: 1340, grade, loadedRadius: 0.3 }).torquePerWheel;
    const perNewton = { caliper: parkingTorque({ ...caliper, wheelTension: 1 }).forward, shoe: parkingTorque({ ...shoe, wheelTension: 1 }).forward };
    expect(Math.abs(need(0.2) / perNewton.caliper - 4931)).toBeLessThanOrEqual(0.5);
    expect(Math.abs(need(0.2) / perNewton.shoe - 1137)).toBeLessThanOrEqual(0.5);
    expect(Math.abs(need(0.3) / perNewton.caliper - 7225)).toBeLessThanOrEqual(0.5);
  });

  test('a caliper holds alike both ways, shoes by their own factor each way', () => {
    const c = parkingTorque(caliper);
    expect(c.forward).toBe(c.reverse);
    expect(c.forward).toBeCloseTo(2 * 0.35 * 4931 * 0.112, 9);
    const s = parkingTorque({ ...shoe, reverseFactor: 2.5 });
    expect(s.reverse / s.forward).toBeCloseTo(2.5 / 4, 12);
  });

  test('lever, ramp and losses multiply the cable’s pull', () => {
    expect(parkingTorque({ ...caliper, wheelTension: 370, gain: 15, efficiency: 0.8 }).clampForce).toBeCloseTo(4440, 9);
    expect(() => parkingTorque({ ...caliper, efficiency: 1.1 })).toThrow(/efficiency/);
    expect(() => parkingTorque({ ...shoe, reverseFactor: 0 })).toThrow(/reverseFactor/);
  });
});

describe('gradeHeld', () => {
  test('on tires of 0.7 the reference truck slides at 34.5 % nose up and 25.6 % nose down', () => {
    const { noseUp, noseDown } = gradeHeld(truck);
    expect(Math.abs(noseUp.byTires * 100 - 34.5)).toBeLessThanOrEqual(0.05);
    expect(Math.abs(noseDown.byTires * 100 - 25.6)).toBeLessThanOrEqual(0.05);
  });

  test('the free body agrees: at that grade the pull of the hill is grip × rear axle load, both ways', () => {
    fc.assert(
      fc.property(anyTruck, (t) => {
        for (const [side, sign] of [['noseUp', 1], ['noseDown', -1]] as const) {
          const held = gradeHeld(t)[side];
          if (held.limitedBy === 'front-lift' || held.limitedByCooled === 'front-lift') continue;
          const loads = axleLoads({
            frontLoad: t.mass * (1 - t.rearLoadFraction), rearLoad: t.mass * t.rearLoadFraction, wheelbase: t.wheelbase, cgHeight: t.cgHeight, rate: 0, grade: sign * held.byTires,
          });
          if (isImpossible(loads)) throw new Error(loads.impossible);
          expect(Math.abs(loads.groundForce) / (t.grip * loads.rearDynamic)).toBeCloseTo(1, 9);
        }
      }),
    );
  });

  test('the grade by the brake asks for just the torque there is', () => {
    const t = { ...truck, reverseTorque: 300, forwardTorque: 450 };
    const { noseUp, noseDown } = gradeHeld(t);
    for (const [grade, torque] of [[noseUp.byBrake, 300], [noseUp.byBrakeCooled, 255], [noseDown.byBrake, 450], [noseDown.byBrakeCooled, 382.5]] as const) {
      expect(parkingDemand({ mass: 1340, grade: grade as number, loadedRadius: 0.3 }).torquePerWheel).toBeCloseTo(torque, 9);
    }
  });

  test('nose down is never the better way for the tires, and the two part by the load the hill moves', () => {
    fc.assert(
      fc.property(anyTruck, (t) => {
        const { noseUp, noseDown } = gradeHeld(t);
        expect(noseDown.byTires).toBeLessThan(noseUp.byTires);
        expect(noseDown.byTires).toBeLessThan(t.grip * t.rearLoadFraction);
      }),
    );
    const flat = gradeHeld({ ...truck, cgHeight: 0 });
    expect(flat.noseUp.byTires).toBeCloseTo(0.7 * 0.42, 12);
    expect(flat.noseDown.byTires).toBeCloseTo(0.7 * 0.42, 12);
  });

  test('what is held is the lesser of brake and tires; cooling never helps and costs only what the brake limits', () => {
    fc.assert(
      fc.property(anyTruck, (t) => {
        for (const held of Object.values(gradeHeld(t))) {
          expect(held.grade).toBe(Math.min(held.byBrake ?? Infinity, held.byTires));
          expect(held.gradeCooled).toBeLessThanOrEqual(held.grade);
          expect(held.limitedBy === 'brake').toBe((held.byBrake ?? Infinity) < held.byTires);
          if (held.limitedByCooled !== 'brake') expect(held.gradeCooled).toBe(held.byTires);
        }
      }),
    );
  });

  test('15 % of the clamp lost to cooling takes the truck that just holds 20 % down to 16.9 %', () => {
    const { noseUp } = gradeHeld({ ...truck, reverseTorque: parkingDemand({ mass: 1340, grade: 0.2, loadedRadius: 0.3 }).torquePerWheel });
    expect(noseUp.grade).toBeCloseTo(0.2, 12);
    expect(noseUp.gradeCooled * 100).toBeCloseTo(16.9, 1);
    expect(noseUp.limitedByCooled).toBe('brake');
  });

  test('a brake stronger than the weight would hold a wall; then the tires alone say what is held', () => {
    const { noseDown } = gradeHeld({ ...truck, forwardTorque: 2500 });
    expect(noseDown.byBrake).toBeUndefined();
    expect(noseDown).toMatchObject({ limitedBy: 'tires', limitedByCooled: 'tires' });
    expect(noseDown.grade).toBe(noseDown.byTires);
  });

  test('a tall, tail-heavy truck on gripping tires tips back before it slides, at the grade where its front load is gone', () => {
    const tall = { ...truck, reverseTorque: 5000, rearLoadFraction: 0.85, cgHeight: 1.2, wheelbase: 2, grip: 1 };
    const { noseUp } = gradeHeld(tall);
    expect(noseUp.limitedBy).toBe('front-lift');
    const tips = bisect((grade) => (isImpossible(axleLoads({ frontLoad: 150, rearLoad: 850, wheelbase: 2, cgHeight: 1.2, rate: 0, grade })) ? 1 : -1), 0, 2);
    expect(noseUp.grade).toBeCloseTo(tips, 9);
  });

  test('a cooling loss above all there is, or a negative torque, is a mistake of the caller', () => {
    expect(() => gradeHeld({ ...truck, coolingLoss: 1.2 })).toThrow(/coolingLoss/);
    expect(() => gradeHeld({ ...truck, forwardTorque: -1 })).toThrow(/forwardTorque/);
    expect(() => gradeHeld({ ...truck, rearLoadFraction: 1.2 })).toThrow(/rearLoadFraction/);
  });
});
