import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cgAfterDrop, cgByAxleLift } from '../../src/engine/cgHeight.ts';
import { isImpossible } from '../../src/engine/outcome.ts';
import type { Impossible } from '../../src/engine/outcome.ts';

function possible<T>(x: T | Impossible): T {
  if (isImpossible(x)) throw new Error(`expected a result, found ${x.impossible}`);
  return x;
}
const range = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const truckA = { frontLoad: 777.2, rearLoad: 562.8, wheelbase: 2.743, loadedRadius: 0.3, scaleError: 1, angleError: 0.003, radiusError: 0.002 };
const anyTruck = fc.record({
  frontLoad: range(400, 1400), rearLoad: range(300, 1400), wheelbase: range(2.2, 3.6), loadedRadius: range(0.25, 0.4),
});

/**
 * The front reading, by placing the truck in the tilted state point by point: front axle center at the origin, the
 * line to the rear axle center rising backward by θ, the CG off that line by a right angle. Moments of vertical forces.
 */
function weigh(truck: { frontLoad: number; rearLoad: number; wheelbase: number; loadedRadius: number }, cgHeight: number, lift: number): number {
  const mass = truck.frontLoad + truck.rearLoad;
  const behindFront = (truck.rearLoad / mass) * truck.wheelbase;
  const theta = Math.asin(lift / truck.wheelbase);
  const back = { x: -Math.cos(theta), z: Math.sin(theta) };
  const up = { x: Math.sin(theta), z: Math.cos(theta) };
  const rearX = truck.wheelbase * back.x;
  const cgX = behindFront * back.x + (cgHeight - truck.loadedRadius) * up.x;
  return (mass * (cgX - rearX)) / -rearX;
}

/** Numbers that look random and are the same at every run. */
function seeded(seed: number) {
  let state = seed >>> 0;
  const uniform = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
  return () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
}

describe('cgByAxleLift', () => {
  test('finds the height that a truck weighed point by point was given, from one lift or four', () => {
    fc.assert(
      fc.property(anyTruck, range(0.4, 1), fc.array(range(0.05, 0.3), { minLength: 1, maxLength: 4 }), (truck, cgHeight, parts) => {
        const lifts = parts.map((part) => ({ lift: part * truck.wheelbase, frontReading: weigh(truck, cgHeight, part * truck.wheelbase) }));
        const s = possible(cgByAxleLift({ ...truckA, ...truck, lifts }));
        expect(s.cgHeight).toBeCloseTo(cgHeight, 9);
        for (const one of s.perLift) expect(one.cgHeight).toBeCloseTo(cgHeight, 8);
        if (lifts.length > 1) expect(s.residual).toBeCloseTo(0, 8);
        else expect(s.residual).toBeUndefined();
      }),
    );
  });

  test('5 lb on the gain of a 2950 lb truck, wheelbase 108 in: ± 1.64, 1.08, 0.80 in at 6.4, 9.6, 12.8°, as printed', () => {
    const rows = [12, 18, 24].map((lift) => {
      const truck = { frontLoad: 1711, rearLoad: 1239, wheelbase: 108, loadedRadius: 12 };
      const frontReading = weigh(truck, 23, lift);
      // The printed error is of the difference of two readings; each alone is then smaller by √2.
      const s = possible(
        cgByAxleLift({ ...truck, lifts: [{ lift, frontReading }], scaleError: 5 / Math.SQRT2, angleError: 0, radiusError: 0 }),
      );
      return { angle: ((s.perLift[0]?.angle as number) * 180) / Math.PI, spread: s.spread };
    });
    expect(rows.map((r) => Number(r.angle.toFixed(1)))).toEqual([6.4, 9.6, 12.8]);
    expect(rows.map((r) => Number(r.spread.toFixed(2)))).toEqual([1.64, 1.08, 0.8]);
  });

  test('one lift: the spread is the root of squares of scale, angle and radius errors', () => {
    const lift = 0.6;
    const s = possible(cgByAxleLift({ ...truckA, lifts: [{ lift, frontReading: weigh(truckA, 0.58, lift) }] }));
    const theta = Math.asin(lift / 2.743);
    const scale = (Math.SQRT2 * 1 * 2.743) / (1340 * Math.tan(theta));
    const angle = (0.003 * 0.28) / (Math.sin(theta) * Math.cos(theta));
    expect(s.spread).toBeCloseTo(Math.hypot(scale, angle, 0.002), 9);
  });

  test('the spread is what 20 000 noisy weighings scatter by', () => {
    const noise = seeded(7);
    const lifts = [0.3, 0.45, 0.6];
    const found: number[] = [];
    let told = 0;
    for (let i = 0; i < 20000; i += 1) {
      const frontLoad = 777.2 + noise();
      const readings = lifts.map((lift) => ({
        lift: 2.743 * Math.sin(Math.asin(lift / 2.743) + 0.003 * noise()),
        frontReading: weigh(truckA, 0.58, lift) + noise(),
      }));
      const s = possible(
        cgByAxleLift({ ...truckA, frontLoad, rearLoad: 1340 - frontLoad, loadedRadius: 0.3 + 0.002 * noise(), lifts: readings }),
      );
      found.push(s.cgHeight);
      told += s.spread / 20000;
    }
    const mean = found.reduce((sum, h) => sum + h, 0) / found.length;
    const scatter = Math.sqrt(found.reduce((sum, h) => sum + (h - mean) ** 2, 0) / found.length);
    expect(mean).toBeCloseTo(0.58, 3);
    expect(scatter / told).toBeGreaterThan(0.97);
    expect(scatter / told).toBeLessThan(1.03);
  });

  test('the fitted line leaves the least weighted sum of squares, tried against neighbors', () => {
    const lifts = [0.3, 0.45, 0.6].map((lift, i) => ({ lift, frontReading: weigh(truckA, 0.58, lift) + ([2, -3, 1][i] as number) }));
    const s = possible(cgByAxleLift({ ...truckA, lifts }));
    const cost = (slope: number) =>
      s.perLift.reduce((sum, { gain, tangent }) => {
        const sigma = Math.hypot(1, s.slope * (1 + tangent ** 2) * 0.003);
        return sum + ((gain - slope * tangent) / sigma) ** 2;
      }, 0);
    expect(cost(s.slope)).toBeLessThan(cost(s.slope * 1.0005));
    expect(cost(s.slope)).toBeLessThan(cost(s.slope * 0.9995));
  });

  test('a higher lift and a better scale each narrow the spread, and three lifts narrow it against the middle one', () => {
    const at = (lifts: number[], scaleError = 1) =>
      possible(cgByAxleLift({ ...truckA, scaleError, lifts: lifts.map((lift) => ({ lift, frontReading: weigh(truckA, 0.58, lift) })) })).spread;
    expect(at([0.6])).toBeLessThan(at([0.4]));
    expect(at([0.6], 0.5)).toBeLessThan(at([0.6]));
    expect(at([0.35, 0.5, 0.65])).toBeLessThan(at([0.5]));
  });

  test('with no errors given every lift counts alike and the spread is nothing', () => {
    const lifts = [0.3, 0.6].map((lift) => ({ lift, frontReading: weigh(truckA, 0.58, lift) }));
    const s = possible(cgByAxleLift({ ...truckA, scaleError: 0, angleError: 0, radiusError: 0, lifts }));
    expect(s.spread).toBe(0);
    expect(s.cgHeight).toBeCloseTo(0.58, 12);
  });

  test('a truck whose CG lies at axle height gains nothing', () => {
    const s = possible(cgByAxleLift({ ...truckA, lifts: [{ lift: 0.5, frontReading: 777.2 }] }));
    expect(s.cgHeight).toBeCloseTo(0.3, 12);
  });

  test('readings that cannot be are refused with a reason', () => {
    const one = (lift: number, frontReading: number) => cgByAxleLift({ ...truckA, lifts: [{ lift, frontReading }] });
    expect(one(3, 800)).toEqual({ impossible: 'lift-not-below-wheelbase', by: expect.closeTo(0.257, 12) });
    expect(one(0.5, 1400)).toEqual({ impossible: 'reading-above-total', by: expect.closeTo(60, 9) });
    expect(one(0.3, 600)).toMatchObject({ impossible: 'cg-not-above-ground' });
    expect(() => cgByAxleLift({ ...truckA, lifts: [] })).toThrow(/lifts/);
  });
});

describe('cgAfterDrop', () => {
  const inch = 0.0254;
  const stock = {
    mass: 1340, stockCgHeight: 0.58, bodyMass: 430, bodyDrop: 0, sprungMass: 1180, frontSuspensionDrop: 0, rearSuspensionDrop: 0,
    frontLoad: 777.2, rearLoad: 562.8,
  };

  test('430 kg by 3 in of 1340 kg is 0.96 in, 1180 kg by 5 in is 4.40 in, as printed', () => {
    const body = possible(cgAfterDrop({ ...stock, bodyDrop: 3 * inch }));
    expect(-body.byBody / inch).toBeCloseTo(0.96, 2);
    const low = possible(cgAfterDrop({ ...stock, frontSuspensionDrop: 5 * inch, rearSuspensionDrop: 5 * inch }));
    expect(-low.bySuspension / inch).toBeCloseTo(4.4, 2);
  });

  test('lowering only the front moves the CG by the front load share of it, only the rear by the rear share', () => {
    const front = possible(cgAfterDrop({ ...stock, frontSuspensionDrop: 0.1 }));
    const rear = possible(cgAfterDrop({ ...stock, rearSuspensionDrop: 0.1 }));
    expect(-front.change).toBeCloseTo((1180 / 1340) * 0.1 * 0.58, 12);
    expect(-rear.change).toBeCloseTo((1180 / 1340) * 0.1 * 0.42, 12);
  });

  test('moving a heap of lumps one by one and taking the mean height gives the same', () => {
    fc.assert(
      fc.property(
        fc.array(fc.record({ m: range(5, 200), x: range(-3, 0.5), z: range(0.2, 1.4), body: fc.boolean() }), { minLength: 3, maxLength: 20 }),
        range(-0.1, 0.1), range(-0.1, 0.15), range(-0.1, 0.15),
        (lumps, bodyDrop, frontSuspensionDrop, rearSuspensionDrop) => {
          const sum = (f: (l: (typeof lumps)[number]) => number) => lumps.reduce((total, l) => total + f(l), 0);
          const mass = sum((l) => l.m);
          const wheelbase = 2.743;
          const rearFraction = -sum((l) => l.m * l.x) / mass / wheelbase;
          fc.pre(rearFraction > 0.05 && rearFraction < 0.95);
          const drop = (l: (typeof lumps)[number]) => {
            const back = -l.x / wheelbase;
            return (l.body ? bodyDrop : 0) + frontSuspensionDrop * (1 - back) + rearSuspensionDrop * back;
          };
          const s = possible(
            cgAfterDrop({
              mass, stockCgHeight: sum((l) => l.m * l.z) / mass, bodyMass: sum((l) => (l.body ? l.m : 0)), bodyDrop, sprungMass: mass,
              frontSuspensionDrop, rearSuspensionDrop, frontLoad: mass * (1 - rearFraction), rearLoad: mass * rearFraction,
            }),
          );
          expect(s.cgHeight).toBeCloseTo(sum((l) => l.m * (l.z - drop(l))) / mass, 9);
        },
      ),
    );
  });

  test('nothing moved, nothing changed; all of it moved, all of the drop', () => {
    expect(possible(cgAfterDrop(stock)).cgHeight).toBe(0.58);
    const all = possible(cgAfterDrop({ ...stock, sprungMass: 1340, frontSuspensionDrop: 0.08, rearSuspensionDrop: 0.08 }));
    expect(all.change).toBeCloseTo(-0.08, 12);
    const s = possible(cgAfterDrop({ ...stock, bodyDrop: 0.07, frontSuspensionDrop: 0.05, rearSuspensionDrop: 0.1 }));
    expect(s.byBody + s.bySuspension).toBeCloseTo(s.change, 15);
  });

  test('masses that do not fit in one another, or a CG under the road, are refused', () => {
    expect(cgAfterDrop({ ...stock, bodyMass: 1200 })).toEqual({ impossible: 'body-above-sprung-mass', by: 20 });
    expect(cgAfterDrop({ ...stock, sprungMass: 1400 })).toEqual({ impossible: 'sprung-above-total-mass', by: 60 });
    expect(cgAfterDrop({ ...stock, frontSuspensionDrop: 1, rearSuspensionDrop: 1 })).toMatchObject({ impossible: 'cg-not-above-ground' });
  });
});
