import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { standardGravity } from '../../src/engine/constants.ts';
import { criticalRateWithValve, lockOrder, lockOrderWithValve } from '../../src/engine/lockOrder.ts';
import { isImpossible } from '../../src/engine/outcome.ts';
import type { Impossible } from '../../src/engine/outcome.ts';
import { bisect } from '../../src/engine/roots.ts';
import { brakesPerRodForce, valveOutlet } from '../../src/engine/valve.ts';

function possible<T>(x: T | Impossible): T {
  if (isImpossible(x)) throw new Error(`expected a result, found ${x.impossible}`);
  return x;
}
const range = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const truckA = { rearFraction: 0.42, heightRatio: 0.58 / 2.743 };
const bar = { frontShare: 0.62, frontBore: 0.01778, rearBore: 0.01778, frontGain: 122.84e-5, rearGain: 63.4e-5 };
const installed = { ...bar, knee: 2e6, slope: 0.43, mass: 1340, ...truckA };
const anyLoads = fc.record({ rearFraction: range(0.2, 0.8), heightRatio: range(0.05, 0.4) });
const anySplit = range(0.02, 0.98);

describe('lockOrder', () => {
  test('reference truck A: rear brake fraction 0.240 makes the critical rate 0.85, as printed', () => {
    const { rearBrakeFraction } = brakesPerRodForce(bar);
    const { criticalRate } = possible(lockOrder({ rearBrakeFraction, ...truckA, grip: 0.8 }));
    expect(criticalRate).toBeCloseTo(0.85, 2);
  });

  test('braking harder step by step until a contact reaches its grip finds the same rates', () => {
    fc.assert(
      fc.property(anySplit, anyLoads, range(0.1, 1), range(0, 0.03), (rearBrakeFraction, loads, grip, rollingResistance) => {
        const s = possible(lockOrder({ rearBrakeFraction, ...loads, grip, rollingResistance }));
        const contact = (rate: number) => {
          const brakes = rate - rollingResistance;
          const rear = loads.rearFraction - loads.heightRatio * rate;
          const pushRear = rearBrakeFraction * brakes + rollingResistance * rear;
          const pushFront = (1 - rearBrakeFraction) * brakes + rollingResistance * (1 - rear);
          return { spareFront: grip * (1 - rear) - pushFront, spareRear: grip * rear - pushRear };
        };
        const slack = (rate: number) => Math.min(contact(rate).spareFront, contact(rate).spareRear);
        const found = bisect(slack, rollingResistance, loads.rearFraction / loads.heightRatio);
        expect(s.bestRate).toBeCloseTo(found, 9);
      }),
    );
  });

  test('the front locks first exactly where the grip is below the critical rate, with rolling resistance or without', () => {
    fc.assert(
      fc.property(anySplit, anyLoads, range(0.1, 1), range(0, 0.03), (rearBrakeFraction, loads, grip, rollingResistance) => {
        const s = possible(lockOrder({ rearBrakeFraction, ...loads, grip, rollingResistance }));
        fc.pre(Math.abs(s.margin) > 1e-6);
        expect(s.first).toBe(s.margin > 0 ? 'front' : 'rear');
        expect(s.margin).toBeCloseTo(s.criticalRate - grip, 12);
      }),
    );
  });

  test('on a grip equal to the critical rate both lock together and the truck stops at z = grip', () => {
    fc.assert(
      fc.property(anyLoads, range(0.2, 0.9), range(0, 0.03), (loads, grip, rollingResistance) => {
        const rearBrakeFraction = loads.rearFraction - loads.heightRatio * grip;
        fc.pre(rearBrakeFraction > 0.01);
        const s = possible(lockOrder({ rearBrakeFraction, ...loads, grip, rollingResistance }));
        expect(s.first).toBe('together');
        expect(s.bestRate).toBeCloseTo(grip, 9);
      }),
    );
  });

  test('no split stops the truck harder than the grip allows, rolling resistance included', () => {
    fc.assert(
      fc.property(anySplit, anyLoads, range(0.1, 1.2), range(0, 0.05), (rearBrakeFraction, loads, grip, rollingResistance) => {
        expect(possible(lockOrder({ rearBrakeFraction, ...loads, grip, rollingResistance })).bestRate).toBeLessThanOrEqual(grip + 1e-12);
      }),
    );
  });

  test('more rear brake brings rear lock earlier and front lock later', () => {
    const at = (rearBrakeFraction: number) => possible(lockOrder({ rearBrakeFraction, ...truckA, grip: 0.8 }));
    expect(at(0.3).rearLockRate).toBeLessThan(at(0.25).rearLockRate as number);
    expect(at(0.3).frontLockRate).toBeGreaterThan(at(0.25).frontLockRate as number);
  });

  test('front brakes alone stop at μ(1 − ψ)/(1 − μχ), rear brakes alone at μψ/(1 + μχ), and the idle axle never locks', () => {
    const grip = 0.7;
    const lean = grip * truckA.heightRatio;
    const front = possible(lockOrder({ rearBrakeFraction: 0, ...truckA, grip }));
    expect(front.bestRate).toBeCloseTo((grip * 0.58) / (1 - lean), 12);
    expect(front).toMatchObject({ rearLockRate: undefined, first: 'front' });
    const rear = possible(lockOrder({ rearBrakeFraction: 1, ...truckA, grip }));
    expect(rear.bestRate).toBeCloseTo((grip * 0.42) / (1 + lean), 12);
    expect(rear).toMatchObject({ frontLockRate: undefined, first: 'rear' });
  });

  test('a front axle that gains load faster than brake force never locks', () => {
    const s = possible(lockOrder({ rearBrakeFraction: 0.9, ...truckA, grip: 0.8 }));
    expect(s.frontLockRate).toBeUndefined();
    expect(s.first).toBe('rear');
  });

  test('a tall truck with front brakes alone tips before they lock', () => {
    expect(lockOrder({ rearBrakeFraction: 0, rearFraction: 0.2, heightRatio: 0.4, grip: 1.2 })).toEqual({
      impossible: 'rear-axle-lifts', by: expect.closeTo(0.7, 12),
    });
  });

  test('ice slicker than the tires roll is refused', () => {
    expect(lockOrder({ rearBrakeFraction: 0.3, ...truckA, grip: 0.01, rollingResistance: 0.02 })).toMatchObject({
      impossible: 'grip-not-above-rolling-resistance',
    });
  });

  test('a bed load raises the critical rate of the same brakes', () => {
    const at = (loads: typeof truckA) => possible(lockOrder({ rearBrakeFraction: 0.24, ...loads, grip: 0.8 })).criticalRate;
    expect(at({ rearFraction: 0.521, heightRatio: 0.224 })).toBeGreaterThan(at(truckA));
  });
});

const anyInstalled = fc.record({
  frontShare: range(0.35, 0.75), frontBore: range(0.015, 0.026), rearBore: range(0.015, 0.026),
  frontGain: range(60e-5, 200e-5), rearGain: range(30e-5, 150e-5), knee: range(3e5, 8e6), slope: range(0, 1),
  mass: range(900, 2500), rearFraction: range(0.25, 0.6), heightRatio: range(0.1, 0.35),
});

describe('lockOrderWithValve', () => {
  test('agrees with pushing harder until an axle runs out of grip', () => {
    fc.assert(
      fc.property(anyInstalled, range(0.1, 1), (truck, grip) => {
        const s = lockOrderWithValve({ ...truck, grip });
        const weight = truck.mass * standardGravity;
        const area = (d: number) => (Math.PI * d * d) / 4;
        const spare = (push: number) => {
          const front = (truck.frontGain * truck.frontShare * push) / area(truck.frontBore);
          const { outlet } = valveOutlet({ inlet: ((1 - truck.frontShare) * push) / area(truck.rearBore), knee: truck.knee, slope: truck.slope });
          const rear = truck.rearGain * outlet;
          const moved = truck.heightRatio * (front + rear);
          return { front: grip * (weight * (1 - truck.rearFraction) + moved) - front, rear: grip * (weight * truck.rearFraction - moved) - rear };
        };
        const push = bisect((t) => Math.min(spare(t).front, spare(t).rear), 0, 1e6);
        expect(s.rodForce / push).toBeCloseTo(1, 9);
        expect(s.bestRate).toBeLessThanOrEqual(grip * (1 + 1e-12));
        if (s.first !== 'together') expect(spare(push)[s.first]).toBeLessThan(1e-6 * weight);
        expect(s.frontPressure).toBeCloseTo((truck.frontShare * s.rodForce) / area(truck.frontBore), 3);
        if (s.front) expect(Math.abs(spare(s.front.rodForce).front)).toBeLessThan(1e-8 * (weight + s.front.rodForce));
        expect(Math.abs(spare(s.rear.rodForce).rear)).toBeLessThan(1e-8 * (weight + s.rear.rodForce));
      }),
    );
  });

  test('with no valve it is lockOrder with the split of bar, bores and brakes', () => {
    fc.assert(
      fc.property(anyInstalled, range(0.1, 1), (truck, grip) => {
        const { rearBrakeFraction } = brakesPerRodForce(truck);
        const plain = possible(lockOrder({ rearBrakeFraction, rearFraction: truck.rearFraction, heightRatio: truck.heightRatio, grip }));
        // Just where the front stops ever locking, rounding decides: not a case to compare.
        fc.pre(Math.abs(1 - rearBrakeFraction - grip * truck.heightRatio) > 1e-9);
        for (const open of [{ ...truck, slope: 1 }, { ...truck, knee: 1e30 }]) {
          const s = lockOrderWithValve({ ...open, grip });
          expect(s.bestRate).toBeCloseTo(plain.bestRate, 9);
          // A push past any knee makes the valve work after all and can lock a front that else never would.
          const front = s.front?.valveReducing === true && open.slope < 1 ? undefined : s.front;
          expect(front === undefined).toBe(plain.frontLockRate === undefined);
          // Where the front hardly ever locks its rate runs off to infinity; the inverse stays well behaved.
          if (front) expect(1 / front.rate).toBeCloseTo(1 / (plain.frontLockRate as number), 9);
          expect(s.rear.rate).toBeCloseTo(plain.rearLockRate as number, 9);
        }
      }),
    );
  });

  test('the axle locks where its brake force is grip times load, worked out by hand for truck A', () => {
    const s = lockOrderWithValve({ ...installed, grip: 0.8 });
    const front = s.front as NonNullable<typeof s.front>;
    const forceFront = bar.frontGain * front.frontPressure;
    const forceRear = bar.rearGain * front.rearPressure;
    const load = 1340 * standardGravity * (0.58 + truckA.heightRatio * front.rate);
    expect(forceFront / load).toBeCloseTo(0.8, 9);
    expect((forceFront + forceRear) / (1340 * standardGravity)).toBeCloseTo(front.rate, 9);
    expect(front.valveReducing).toBe(true);
  });

  test('a lower knee keeps the rear turning for longer and costs a little best rate', () => {
    const at = (knee: number) => lockOrderWithValve({ ...installed, knee, grip: 0.8 });
    expect(at(1e6).rear.rodForce).toBeGreaterThan(at(2e6).rear.rodForce);
    expect(at(1e6).bestRate).toBeLessThan(at(2e6).bestRate);
  });

  test('a valve can turn a rear-first truck into a front-first one', () => {
    const rearHeavy = { ...installed, frontShare: 0.55, grip: 0.8 };
    expect(lockOrderWithValve({ ...rearHeavy, slope: 1 }).first).toBe('rear');
    expect(lockOrderWithValve({ ...rearHeavy, knee: 1e6 }).first).toBe('front');
  });

  test('heavier truck, same fractions: the rates stay and the push grows with the mass', () => {
    const one = lockOrderWithValve({ ...installed, slope: 1, grip: 0.8 });
    const two = lockOrderWithValve({ ...installed, slope: 1, mass: 2680, grip: 0.8 });
    expect(two.bestRate).toBeCloseTo(one.bestRate, 12);
    expect(two.rodForce).toBeCloseTo(2 * one.rodForce, 8);
  });
});

describe('criticalRateWithValve', () => {
  /** Rear force minus ideal rear force at a rod force, over weight: another road to the same sign. */
  function excess(truck: typeof installed, push: number) {
    const c = brakesPerRodForce(truck);
    const weight = truck.mass * standardGravity;
    const { outlet } = valveOutlet({ inlet: c.rearInlet * push, knee: truck.knee, slope: truck.slope });
    const rear = truck.rearGain * outlet;
    const rate = (c.front * push + rear) / weight;
    return { rate, over: rear / weight - rate * (truck.rearFraction - truck.heightRatio * rate) };
  }

  test('finds every change of sign that a walk along the pedal finds', () => {
    fc.assert(
      fc.property(anyInstalled, (truck) => {
        const { crossings } = criticalRateWithValve(truck);
        const lift = truck.rearFraction / truck.heightRatio;
        const seen: { low: number; high: number; above: string }[] = [];
        const step = (lift * truck.mass * standardGravity) / brakesPerRodForce(truck).front / 4000;
        let before = excess(truck, step);
        for (let i = 2; before.rate < lift; i += 1) {
          const now = excess(truck, i * step);
          if (now.rate >= lift) break;
          if (now.over > 0 !== before.over > 0) seen.push({ low: before.rate, high: now.rate, above: now.over > 0 ? 'rear' : 'front' });
          before = now;
        }
        // The walk can miss two crossings inside one step, or one inside its first or last: never the other way round.
        for (const { low, high, above } of seen) {
          expect(crossings.some((c) => c.above === above && c.rate > low - 1e-9 && c.rate < high + 1e-9)).toBe(true);
        }
        crossings.forEach((c, i) => expect(c.above).toBe((i % 2 === 0) === (criticalRateWithValve(truck).startsWith === 'front') ? 'rear' : 'front'));
      }),
      { numRuns: 60, endOnFailure: true },
    );
  });

  test('on a grip equal to a crossing rate both axles lock together, at that rate', () => {
    fc.assert(
      fc.property(anyInstalled, (truck) => {
        for (const { rate } of criticalRateWithValve(truck).crossings) {
          if (rate > 1.5) continue;
          expect(lockOrderWithValve({ ...truck, grip: rate }).bestRate).toBeCloseTo(rate, 7);
        }
      }),
    );
  });

  test('a late, flat valve gives three crossings: rear, back to front, rear again', () => {
    const { crossings, startsWith, kneeRate } = criticalRateWithValve({ ...installed, frontShare: 0.5, knee: 3.4e6, slope: 0.1 });
    expect(startsWith).toBe('front');
    expect(crossings.map((c) => c.above)).toEqual(['rear', 'front', 'rear']);
    expect(crossings[0]?.rate).toBeLessThan(kneeRate);
    expect(crossings[1]?.rate).toBeGreaterThan(kneeRate);
  });

  test('with the valve wide open it is the plain critical rate', () => {
    const { rearBrakeFraction } = brakesPerRodForce(bar);
    const { crossings } = criticalRateWithValve({ ...installed, knee: 1e9 });
    expect(crossings).toHaveLength(1);
    expect(crossings[0]?.rate).toBeCloseTo((0.42 - rearBrakeFraction) / truckA.heightRatio, 12);
  });

  test('a split with too much rear at every rate starts with the rear and never crosses', () => {
    expect(criticalRateWithValve({ ...installed, frontShare: 0.3, slope: 1 })).toMatchObject({ startsWith: 'rear', crossings: [] });
  });
});
