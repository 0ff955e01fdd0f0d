import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { circuitFailure } from '../../src/engine/circuitFailure.ts';
import { circleArea } from '../../src/engine/circle.ts';
import { footToRoad, footWhere } from '../../src/engine/footToRoad.ts';
import type { Pedal } from '../../src/engine/footToRoad.ts';
import { lockOrder } from '../../src/engine/lockOrder.ts';
import { isImpossible } from '../../src/engine/outcome.ts';
import type { Impossible } from '../../src/engine/outcome.ts';
import { atTargetRate, criteria, deadFindings, mastersFindings, pairBench, pedalFindings, usualLimits, withDead } from '../../src/engine/pairScore.ts';
import type { Criterion, Masters, PairBench, TruckForPairs } from '../../src/engine/pairScore.ts';

const deg = Math.PI / 180;
const truckA: TruckForPairs = {
  frontLoad: 0.58 * 1340, rearLoad: 0.42 * 1340, wheelbase: 2.743, cgHeight: 0.58, payload: 350, payloadAhead: 0.25, payloadHeight: 0.75, grip: 0.9,
  targetRate: 0.8, driverForce: 500, efficiency: 0.85, springForce: 0, freePlay: 0, floorTravel: 0.14,
  frontGain: 122.84e-5, rearGain: 63.4e-5, pushOut: 0, frontStroke: 0.028, rearStroke: 0.028, portStroke: 0.001,
  frontTakeUpVolume: 1.874e-6, rearTakeUpVolume: 0.884e-6, frontCompliance: 0.051e-11, rearCompliance: 0.033e-11, barSpacing: 0.0635, stopAngle: 12 * deg,
};
function possible<T>(x: T | Impossible): T {
  if (isImpossible(x)) throw new Error(`expected a result, found ${x.impossible}`);
  return x;
}
const bench = (over: Partial<TruckForPairs> = {}): PairBench => possible(pairBench({ ...truckA, ...over }));
const areas = ({ frontBore, rearBore }: { frontBore: number; rearBore: number }) => ({
  frontArea: circleArea({ diameter: frontBore }).area, rearArea: circleArea({ diameter: rearBore }).area,
});
/** Every criterion's finding by its name. */
function findings(b: PairBench, masters: Masters, pedalRatio: number): Record<Criterion, number> {
  const at = atTargetRate(b, masters);
  const list = [...mastersFindings(b, { masters, at }), ...pedalFindings(b, { masters, at, pedalRatio }), ...deadFindings(b, { masters, pedalRatio })];
  expect(list.length).toBe(criteria.length);
  return Object.fromEntries(criteria.map((c, i) => [c, list[i]])) as Record<Criterion, number>;
}
const mastersA = { ...areas({ frontBore: 0.01778, rearBore: 0.01778 }), frontShare: 0.62 };

// Evenly spread: fc.double would spend most of its trials within a hair of 0.
const range = (min: number, max: number) => fc.integer({ min: 0, max: 1_000_000 }).map((k) => min + ((max - min) * k) / 1_000_000);
const orNone = (min: number, max: number) => fc.oneof(fc.constant(0), range(min, max));
const anyTruck: fc.Arbitrary<TruckForPairs> = fc.record({
  frontLoad: range(600, 1200), rearLoad: range(400, 900), wheelbase: range(2.3, 3.2), cgHeight: range(0.4, 0.8),
  payload: orNone(50, 600), payloadAhead: range(-0.4, 0.6), payloadHeight: range(0.5, 1), grip: range(0.3, 1.1), targetRate: range(0.2, 1),
  driverForce: range(150, 900), efficiency: range(0.6, 1), springForce: orNone(5, 60), freePlay: orNone(0, 0.003), floorTravel: fc.oneof(range(0.01, 0.1), range(0.1, 0.25)),
  frontGain: range(5e-4, 2e-3), rearGain: range(3e-4, 1.5e-3), pushOut: orNone(1e4, 4e6), frontStroke: range(0.015, 0.036), rearStroke: range(0.015, 0.036),
  portStroke: range(0, 0.002), frontTakeUpVolume: range(0, 4e-6), rearTakeUpVolume: range(0, 4e-6), frontCompliance: range(1e-13, 1e-12), rearCompliance: range(1e-13, 1e-12),
  barSpacing: range(0.05, 0.08), stopAngle: fc.oneof(fc.constant(undefined), range(5 * deg, 40 * deg)), frontLead: fc.oneof(fc.constant(undefined), range(-0.004, 0.004)),
});
// A short master beside a long one, and a floor out of the way: the bar can get to its other stop.
const unequal = anyTruck.chain((t) => fc.record({ short: range(0.008, 0.015), stop: range(5 * deg, 10 * deg), frontShort: fc.boolean() }).map(({ short, stop, frontShort }) => ({
  ...t, frontStroke: frontShort ? short : 0.036, rearStroke: frontShort ? 0.036 : short, stopAngle: stop, floorTravel: 0.4, driverForce: 900,
})));
const anyMasters = fc.record({ frontBore: range(0.0155, 0.0255), rearBore: range(0.0155, 0.0255), frontShare: range(0.2, 0.8), pedalRatio: range(4, 8) });

function pedalOf(t: TruckForPairs, m: { frontBore: number; rearBore: number; frontShare: number; pedalRatio: number }): Pedal {
  return { ...t, ...m, mass: t.frontLoad + t.rearLoad };
}

describe('atTargetRate', () => {
  test('is the least push at which the whole chain of footToRoad reaches the rate, with its pressures and strokes', () => {
    let oneAxleOnly = 0;
    fc.assert(
      fc.property(anyTruck, anyMasters, (t, m) => {
        const pedal = pedalOf(t, m);
        const foot = footWhere({ pedal, excess: (s) => s.rate - t.targetRate, upTo: 1e6 }) as number;
        const chain = footToRoad({ ...pedal, controlForce: foot });
        if (Math.min(chain.frontForce, chain.rearForce) === 0) oneAxleOnly += 1;
        const at = atTargetRate(bench(t), { ...areas(m), frontShare: m.frontShare });
        expect(at.rodForce / (m.pedalRatio * t.efficiency) / foot).toBeCloseTo(1, 9);
        for (const key of ['frontPressure', 'rearPressure', 'frontStroke', 'rearStroke'] as const) {
          expect(Math.abs(at[key] - chain[key])).toBeLessThanOrEqual(1e-8 * Math.max(chain[key], key.endsWith('Pressure') ? 1e5 : 1e-3));
        }
      }),
      { numRuns: 600 },
    );
    expect(oneAxleOnly).toBeGreaterThan(3);
  });

  test.each([
    [0.359, { controlForce: [222, 0.5], frontPressure: [29.2e5, 5e3], rearPressure: [17.9e5, 5e3], frontStroke: [14.5e-3, 5e-5], rearStroke: [6.9e-3, 5e-5], padTravel: [0.072, 5e-4] }],
    [0.648, { controlForce: [400, 0.5], frontPressure: [52.6e5, 5e3], rearPressure: [32.3e5, 5e3] }],
    [0.81, { controlForce: [500, 0.5], frontPressure: [65.8e5, 5e3], rearPressure: [40.3e5, 5e3], frontStroke: [22.1e-3, 5e-5], rearStroke: [9.9e-3, 5e-5], padTravel: [0.108, 5e-4] }],
  ] as const)('gives the reference truck’s table row at %f g, as far as the rate is printed', (targetRate, expected) => {
    const b = bench({ targetRate });
    const at = atTargetRate(b, mastersA);
    const found = findings(b, mastersA, 6.2);
    const all: Record<string, number> = { ...at, controlForce: found.effort, padTravel: found['pad-travel'] };
    // The rate is printed to 0.0005, so each value may be off by that part of itself besides half its own last figure.
    for (const [key, [value, half]] of Object.entries(expected)) expect(Math.abs((all[key] as number) - value), key).toBeLessThanOrEqual(half + (value * 0.0005) / targetRate);
    expect(at.rearBrakeFraction).toBeCloseTo(0.24, 3);
  });
});

describe('withDead', () => {
  test('puts pad, pressure and rate where circuitFailure puts them, either circuit dead, in every regime a push can meet', () => {
    const regimes = new Set<string>();
    fc.assert(
      fc.property(fc.oneof({ arbitrary: anyTruck, weight: 3 }, unequal), anyMasters, fc.constantFrom('front' as const, 'rear' as const), (t, m, dead) => {
        const spacing = t.barSpacing;
        const full = possible(circuitFailure({
          ...t, ...m, dead, barOffset: (m.frontShare - 0.5) * spacing, frontLead: t.frontLead ?? 0, frontPortStroke: t.portStroke, rearPortStroke: t.portStroke,
          mass: t.frontLoad + t.rearLoad, rearLoadFraction: t.rearLoad / (t.frontLoad + t.rearLoad), controlForce: t.driverForce,
        }));
        regimes.add(full.regime);
        const quick = withDead(bench(t), { ...areas(m), frontShare: m.frontShare, pedalRatio: m.pedalRatio, dead });
        expect(quick.padTravel).toBeCloseTo(full.travelWithoutFloor, 9);
        expect(Math.abs(quick.pressure - full.pressure)).toBeLessThanOrEqual(1e-8 * Math.max(full.pressure, 1e5));
        expect(quick.rate).toBeCloseTo(full.rate, 9);
      }),
      { numRuns: 2000 },
    );
    expect([...regimes].sort()).toEqual(['flat-spot', 'good-bottomed', 'on-bar-stop', 'on-dead-master', 'on-floor', 'on-opposite-stop']);
  });

  test('the reference truck at 500 N with its rear dead has 65.8 bar at 151 mm, with its front dead 77.0 bar at 142 mm', () => {
    const rear = withDead(bench({ floorTravel: 0.3 }), { ...mastersA, pedalRatio: 6.2, dead: 'rear' });
    expect(rear.pressure / 1e5).toBeCloseTo(65.8, 1);
    expect(rear.padTravel * 1e3).toBeCloseTo(151, 0);
    const front = withDead(bench({ floorTravel: 0.3 }), { ...mastersA, pedalRatio: 6.2, dead: 'front' });
    expect(front.pressure / 1e5).toBeCloseTo(77.0, 1);
    expect(Math.abs(front.padTravel * 1e3 - 142)).toBeLessThanOrEqual(0.51);
  });

  test('free play brings the pad down by i g_0 more, and takes its pressure only from a pad that meets the floor', () => {
    const high = { floorTravel: 0.3 };
    const with1mm = withDead(bench({ ...high, freePlay: 0.001 }), { ...mastersA, pedalRatio: 6.2, dead: 'rear' });
    const without = withDead(bench(high), { ...mastersA, pedalRatio: 6.2, dead: 'rear' });
    expect(with1mm.padTravel - without.padTravel).toBeCloseTo(0.0062, 12);
    expect(with1mm.pressure).toBe(without.pressure);
    const low = (freePlay: number) => withDead(bench({ floorTravel: 0.14, freePlay }), { ...mastersA, pedalRatio: 6.2, dead: 'rear' }).pressure;
    expect(low(0.001)).toBeLessThan(low(0));
  });
});

describe('findings', () => {
  const find = (over: Partial<TruckForPairs> = {}, masters = mastersA, pedalRatio = 6.2) => findings(bench(over), masters, pedalRatio);

  test('the critical rates are those of lockOrder, empty and with the load of withPayload', () => {
    const f = find();
    const split = atTargetRate(bench(), mastersA).rearBrakeFraction;
    const empty = possible(lockOrder({ rearBrakeFraction: split, rearFraction: 0.42, heightRatio: 0.58 / 2.743, grip: 0.9 }));
    expect(f['lock-empty']).toBeCloseTo(empty.criticalRate, 12);
    const laden = possible(lockOrder({ rearBrakeFraction: split, rearFraction: 0.521, heightRatio: 0.224, grip: 0.9 }));
    expect(Math.abs(f['lock-laden'] - laden.criticalRate)).toBeLessThan(0.006); // ψ and χ as printed, to 0.0005
    expect(find({ payload: 0 })['lock-laden']).toBeCloseTo(f['lock-empty'], 12);
  });

  test('twice the area of both masters takes twice the foot, and half the stroke beyond the port', () => {
    const wide = { ...mastersA, frontArea: 2 * mastersA.frontArea, rearArea: 2 * mastersA.rearArea };
    const [a, b] = [find(), find({}, wide)];
    expect(b.effort / a.effort).toBeCloseTo(2, 12);
    expect((a['front-stroke'] - 0.001) / (b['front-stroke'] - 0.001)).toBeCloseTo(2, 12);
    expect(b['lock-empty']).toBeCloseTo(a['lock-empty'], 12);
  });

  test('a higher ratio trades force for travel and changes nothing behind the bar', () => {
    const [a, b] = [find(), find({}, mastersA, 6.82)];
    expect(a.effort / b.effort).toBeCloseTo(1.1, 12);
    expect(b['pad-travel'] / a['pad-travel']).toBeCloseTo(1.1, 12);
    for (const same of ['front-stroke', 'rear-stroke', 'bar-tilt', 'lock-empty', 'lock-laden', 'share'] as const) expect(b[same]).toBe(a[same]);
  });

  test('a bar that leans back at rest by what the strokes will differ stands square at the target rate', () => {
    const apart = find()['bar-tilt'];
    expect(find({ frontLead: -apart })['bar-tilt']).toBeCloseTo(0, 12);
    expect(find({ frontLead: apart / 2 })['bar-tilt']).toBeCloseTo(1.5 * apart, 12);
  });

  test('no failed circuit can leave more rate than its axle’s tires hold', () => {
    fc.assert(
      fc.property(anyTruck, anyMasters, (t, m) => {
        const f = find(t, { ...areas(m), frontShare: m.frontShare }, m.pedalRatio);
        const b = bench(t);
        expect(f['front-dead-rate']).toBeLessThanOrEqual(b.rear.slip);
        expect(f['rear-dead-rate']).toBeLessThanOrEqual(b.front.slip);
      }),
    );
  });
});

describe('pairBench', () => {
  test('a load that lifts the front, and a bar that leans beyond its stop at rest, are answers and not errors', () => {
    expect(pairBench({ ...truckA, payload: 3000, payloadAhead: -2 })).toMatchObject({ impossible: 'front-axle-lifts' });
    const lean = pairBench({ ...truckA, frontLead: 0.02 });
    expect(isImpossible(lean) && lean.impossible).toBe('on-stop-at-rest');
    expect(isImpossible(lean) && lean.by).toBeCloseTo(0.02 - 0.0635 * Math.sin(12 * deg), 12);
  });

  test('limits left out are the usual ones, and the lock order asks for the larger of rate with margin and grip', () => {
    const order = criteria.indexOf('lock-empty');
    expect(bench().rules.limits[order]).toBeCloseTo(0.8 + usualLimits.rateMargin, 12);
    expect(bench({ grip: 1.1 }).rules.limits[order]).toBe(1.1);
    expect(bench({ limits: { rateMargin: 0 } }).rules.limits[order]).toBe(0.9);
    expect(bench({ limits: { strokePart: 0.9 } }).rules.limits[criteria.indexOf('front-stroke')]).toBeCloseTo(0.0252, 15);
  });

  test('every scale is above 0, also where the carpet leaves no room for its margin', () => {
    const { perRoom, limits } = bench({ floorTravel: 0.02 }).rules;
    expect(limits[criteria.indexOf('front-dead-travel')]).toBeCloseTo(-0.005, 12);
    for (const per of perRoom) expect(Math.abs(per)).toBeLessThan(1e6);
    for (const c of ['effort', 'front-stroke', 'pad-travel', 'front-dead-travel'] as const) expect(perRoom[criteria.indexOf(c)]).toBeLessThan(0);
  });

  test('a value outside its range is a mistake of the caller', () => {
    for (const over of [{ driverForce: 0 }, { efficiency: 1.1 }, { frontCompliance: 0 }, { stopAngle: 2 }, { stopAngle: 0 }, { grip: 0 }, { limits: { shareLow: 0.7 } }, { limits: { tiltPart: 1.2 } }]) {
      expect(() => pairBench({ ...truckA, ...over })).toThrow(RangeError);
    }
  });
});
