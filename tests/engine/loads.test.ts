import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { standardGravity } from '../../src/engine/constants.ts';
import { axleLoads, withPayload } from '../../src/engine/loads.ts';
import { isImpossible } from '../../src/engine/outcome.ts';
import type { Impossible } from '../../src/engine/outcome.ts';

function possible<T>(x: T | Impossible): T {
  if (isImpossible(x)) throw new Error(`expected a result, found ${x.impossible}`);
  return x;
}
const range = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const truckA = { frontLoad: 0.58 * 1340, rearLoad: 0.42 * 1340, wheelbase: 2.743, cgHeight: 0.58 };
const anyTruck = fc.record({
  frontLoad: range(300, 1500), rearLoad: range(300, 1500), wheelbase: range(2, 4), cgHeight: range(0.2, 0.9),
});

describe('axleLoads', () => {
  test('reference truck A at 0.8 g carries 0.251 of its weight on the rear, as printed', () => {
    expect(possible(axleLoads({ ...truckA, rate: 0.8 })).rearDynamicFraction).toBeCloseTo(0.251, 3);
  });

  test('standing on the level, the loads are the scale readings times gravity', () => {
    const s = possible(axleLoads({ ...truckA, rate: 0 }));
    expect(s.frontDynamic).toBeCloseTo(truckA.frontLoad * standardGravity, 9);
    expect(s.rearDynamic).toBeCloseTo(truckA.rearLoad * standardGravity, 9);
    expect(s.transfer).toBe(0);
    expect(s.mass).toBeCloseTo(1340, 9);
    expect(s.rearFraction).toBeCloseTo(0.42, 12);
    expect(s.heightRatio).toBeCloseTo(0.58 / 2.743, 12);
  });

  test('forces across the road and moments about the center of gravity balance at any rate and grade', () => {
    fc.assert(
      fc.property(anyTruck, range(0, 1.2), range(-0.3, 0.3), (truck, rate, grade) => {
        const s = axleLoads({ ...truck, rate, grade });
        fc.pre(!isImpossible(s));
        const x = possible(s);
        const weight = x.mass * standardGravity;
        const a = (truck.rearLoad / x.mass) * truck.wheelbase;
        const theta = Math.atan(grade);
        expect(Math.abs(x.frontDynamic + x.rearDynamic - weight * Math.cos(theta))).toBeLessThan(1e-9 * weight);
        const moment = x.frontDynamic * a - x.rearDynamic * (truck.wheelbase - a) - x.groundForce * truck.cgHeight;
        expect(Math.abs(moment)).toBeLessThan(1e-9 * weight * truck.wheelbase);
        expect(Math.abs(x.groundForce + weight * Math.sin(theta) - weight * rate)).toBeLessThan(1e-9 * weight);
        expect(x.frontDynamicFraction + x.rearDynamicFraction).toBeCloseTo(1, 12);
      }),
    );
  });

  test('the load that moves grows with rate and height and falls with wheelbase', () => {
    const at = (change: object) => possible(axleLoads({ ...truckA, rate: 0.5, ...change })).transfer;
    expect(at({ rate: 0.6 })).toBeGreaterThan(at({}));
    expect(at({ cgHeight: 0.7 })).toBeGreaterThan(at({}));
    expect(at({ wheelbase: 3.2 })).toBeLessThan(at({}));
    expect(at({ rate: 1 })).toBeCloseTo(2 * at({}), 9);
    expect(at({ cgHeight: 1e-9 })).toBeCloseTo(0, 5);
  });

  test('the rear carries nothing at the rear lift rate, and past it there is no answer', () => {
    const tall = { ...truckA, cgHeight: 1.4 };
    const { rearLiftRate } = possible(axleLoads({ ...tall, rate: 0 }));
    expect(rearLiftRate).toBeCloseTo((0.42 * 2.743) / 1.4, 12);
    expect(possible(axleLoads({ ...tall, rate: rearLiftRate })).rearDynamic).toBeCloseTo(0, 6);
    expect(axleLoads({ ...tall, rate: rearLiftRate + 0.1 })).toEqual({ impossible: 'rear-axle-lifts', by: expect.closeTo(0.1, 12) });
  });

  test('the rear lift rate still unloads the rear on a grade', () => {
    const { rearLiftRate } = possible(axleLoads({ ...truckA, rate: 0, grade: -0.2 }));
    expect(possible(axleLoads({ ...truckA, rate: rearLiftRate, grade: -0.2 })).rearDynamic).toBeCloseTo(0, 6);
  });

  test('parked nose up the rear is heavier than parked nose down, and the brakes hold W sin θ either way', () => {
    const up = possible(axleLoads({ ...truckA, rate: 0, grade: 0.2 }));
    const down = possible(axleLoads({ ...truckA, rate: 0, grade: -0.2 }));
    expect(up.rearDynamic).toBeGreaterThan(down.rearDynamic);
    const hold = 1340 * standardGravity * Math.sin(Math.atan(0.2));
    expect(up.groundForce).toBeCloseTo(-hold, 8);
    expect(down.groundForce).toBeCloseTo(hold, 8);
  });

  test('a rear parking brake at grip 0.7 slips at 34.5 % nose up and 25.6 % nose down, as printed for truck A', () => {
    const spare = (grade: number) => {
      const s = possible(axleLoads({ ...truckA, rate: 0, grade }));
      return 0.7 * s.rearDynamic - Math.abs(s.groundForce);
    };
    expect(spare(0.3445)).toBeGreaterThan(0);
    expect(spare(0.3455)).toBeLessThan(0);
    expect(spare(-0.2555)).toBeGreaterThan(0);
    expect(spare(-0.2565)).toBeLessThan(0);
  });

  test('speeding up hard enough lifts the front', () => {
    const { heightRatio } = possible(axleLoads({ ...truckA, rate: 0 }));
    const lift = -0.58 / heightRatio;
    expect(possible(axleLoads({ ...truckA, rate: lift })).frontDynamic).toBeCloseTo(0, 6);
    expect(axleLoads({ ...truckA, rate: lift - 0.2 })).toEqual({ impossible: 'front-axle-lifts', by: expect.closeTo(0.2, 12) });
  });

  test('mirroring the truck front to back and the direction of braking swaps the two loads', () => {
    fc.assert(
      fc.property(anyTruck, range(0, 0.5), (truck, rate) => {
        const one = axleLoads({ ...truck, rate });
        const other = axleLoads({ ...truck, frontLoad: truck.rearLoad, rearLoad: truck.frontLoad, rate: -rate });
        fc.pre(!isImpossible(one));
        expect(possible(other).rearDynamic).toBeCloseTo(possible(one).frontDynamic, 7);
      }),
    );
  });

  test('a caller who hands over nonsense is told what is wrong', () => {
    expect(() => axleLoads({ ...truckA, wheelbase: 0, rate: 0 })).toThrow(/wheelbase/);
    expect(() => axleLoads({ ...truckA, rate: Number.NaN })).toThrow(/rate/);
    expect(() => axleLoads({ ...truckA, cgHeight: -1, rate: 0 })).toThrow(RangeError);
  });
});

describe('withPayload', () => {
  const bed = { payload: 350, payloadAhead: 0.25, payloadHeight: 0.75 };

  test('reference truck A with 350 kg in the bed: rear 0.521, CG 0.615 m, height ratio 0.224, as printed', () => {
    const s = possible(withPayload({ ...truckA, ...bed }));
    expect(s.rearFraction).toBeCloseTo(0.521, 3);
    expect(s.cgHeight).toBeCloseTo(0.615, 3);
    expect(s.cgHeight / 2.743).toBeCloseTo(0.224, 3);
  });

  test('weight over an axle lands on that axle alone, halfway on both alike, behind the rear it lightens the front', () => {
    const at = (payloadAhead: number) => possible(withPayload({ ...truckA, ...bed, payloadAhead }));
    expect(at(0).frontLoad).toBeCloseTo(truckA.frontLoad, 9);
    expect(at(2.743).rearLoad).toBeCloseTo(truckA.rearLoad, 9);
    expect(at(2.743 / 2).frontLoad - truckA.frontLoad).toBeCloseTo(175, 9);
    expect(at(-0.5).frontLoad).toBeLessThan(truckA.frontLoad);
  });

  test('the parts make the whole: mass, first moment along the truck, first moment in height', () => {
    fc.assert(
      fc.property(anyTruck, range(0, 600), range(-0.8, 1.5), range(0, 2), (truck, payload, payloadAhead, payloadHeight) => {
        const s = withPayload({ ...truck, payload, payloadAhead, payloadHeight });
        fc.pre(!isImpossible(s));
        const x = possible(s);
        const empty = truck.frontLoad + truck.rearLoad;
        expect(x.mass).toBeCloseTo(empty + payload, 8);
        expect(x.frontLoad + x.rearLoad).toBeCloseTo(x.mass, 8);
        expect(x.frontLoad * truck.wheelbase).toBeCloseTo(truck.frontLoad * truck.wheelbase + payload * payloadAhead, 6);
        expect(x.mass * x.cgHeight).toBeCloseTo(empty * truck.cgHeight + payload * payloadHeight, 7);
      }),
    );
  });

  test('a load put in as two halves is the load put in at once', () => {
    const half = { ...bed, payload: 175 };
    const first = possible(withPayload({ ...truckA, ...half }));
    const second = possible(withPayload({ ...first, wheelbase: truckA.wheelbase, ...half }));
    const once = possible(withPayload({ ...truckA, ...bed }));
    expect(second.rearFraction).toBeCloseTo(once.rearFraction, 12);
    expect(second.cgHeight).toBeCloseTo(once.cgHeight, 12);
  });

  test('no payload changes nothing, and a payload at the height of the CG leaves the height', () => {
    expect(possible(withPayload({ ...truckA, ...bed, payload: 0 })).rearFraction).toBeCloseTo(0.42, 12);
    expect(possible(withPayload({ ...truckA, ...bed, payloadHeight: 0.58 })).cgHeight).toBeCloseTo(0.58, 12);
  });

  test('enough weight hung far behind lifts the front, by the kilograms that were missing', () => {
    const far = withPayload({ ...truckA, payload: 1000, payloadAhead: -2.743, payloadHeight: 0.5 });
    expect(far).toEqual({ impossible: 'front-axle-lifts', by: expect.closeTo(1000 - 777.2, 9) });
  });
});
