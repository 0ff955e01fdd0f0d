import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { circuitFailure, failureAtForce, failureAtTravel } from '../../src/engine/circuitFailure.ts';
import type { CircuitFailure } from '../../src/engine/circuitFailure.ts';
import { isImpossible } from '../../src/engine/outcome.ts';
import type { Impossible } from '../../src/engine/outcome.ts';

const deg = Math.PI / 180;
const reference: Omit<CircuitFailure, 'dead'> = {
  pedalRatio: 6.2, efficiency: 0.85, barSpacing: 0.0635, barOffset: 0.00762, stopAngle: 12 * deg,
  frontBore: 0.01778, rearBore: 0.01778, frontStroke: 0.028, rearStroke: 0.028,
  frontTakeUpVolume: 1.874e-6, rearTakeUpVolume: 0.884e-6, frontCompliance: 0.051e-11, rearCompliance: 0.033e-11,
  frontPortStroke: 0.001, rearPortStroke: 0.001, floorTravel: 0.3,
  frontGain: 122.8e-5, rearGain: 63.4e-5, mass: 1340, rearLoadFraction: 0.42, cgHeight: 0.58, wheelbase: 2.743, grip: 0.9,
};
// Evenly spread: fc.double would spend most of its trials within a hair of 0.
const range = (min: number, max: number) =>
  fc.integer({ min: 0, max: 1_000_000 }).map((k) => min + ((max - min) * k) / 1_000_000);
const anyTruck: fc.Arbitrary<CircuitFailure> = fc.record({
  dead: fc.constantFrom('front' as const, 'rear' as const),
  pedalRatio: range(4, 8), efficiency: range(0.6, 1), barSpacing: range(0.05, 0.08), barOffset: range(-0.015, 0.015),
  stopAngle: fc.oneof(fc.constant(undefined), range(0, 40 * deg)),
  frontBore: range(0.0155, 0.0255), rearBore: range(0.0155, 0.0255), frontStroke: range(0.015, 0.036), rearStroke: range(0.015, 0.036),
  frontTakeUpVolume: range(0, 5e-6), rearTakeUpVolume: range(0, 5e-6), frontCompliance: range(1e-13, 1e-12), rearCompliance: range(1e-13, 1e-12),
  frontPortStroke: range(0, 0.002), rearPortStroke: range(0, 0.002),
  floorTravel: fc.oneof(range(0.02, 0.12), range(0.12, 0.3)),
  frontGain: range(5e-4, 2e-3), rearGain: range(3e-4, 1.5e-3), mass: range(900, 2500), rearLoadFraction: range(0.3, 0.55), cgHeight: range(0.4, 0.8),
  wheelbase: range(2.3, 3.2), grip: range(0.2, 1.1), freePlay: fc.oneof(fc.constant(0), range(0, 0.0015)),
  // As a part of the way to the stop, which a lead at rest may not pass.
  frontLead: fc.oneof(fc.constant(0), range(-1, 1)),
}).map((t) => ({ ...t, frontLead: t.frontLead * Math.min(0.012, t.barSpacing * Math.sin(t.stopAngle ?? Math.PI / 2)) }));
function possible<T>(x: T | Impossible): T {
  if (isImpossible(x)) throw new Error(`expected a result, found ${x.impossible}`);
  return x;
}

/**
 * An outside answer that knows no regimes. Pedal and bar are rigid; the fluid is a one-sided spring; every stop (two
 * master bottoms, the bar's stop both ways, the floor) is a very stiff one-sided spring; each return spring is a trace.
 * The potential is convex, so at rest the two clevises' force balances are solved by halving one inside the other.
 */
function stiffSprings(t: CircuitFailure, controlForce: number): { pressure: number; good: number; dead: number; padTravel: number } {
  const stiff = 1e13; // N/m: 5 kN moves it by 0.5 nm
  const trace = 1e-3;
  const f = t.dead === 'rear';
  const bore = f ? t.frontBore : t.rearBore;
  const area = Math.PI * (bore / 2) ** 2;
  const [v0, k, port] = f ? [t.frontTakeUpVolume, t.frontCompliance, t.frontPortStroke] : [t.rearTakeUpVolume, t.rearCompliance, t.rearPortStroke];
  const goodMax = f ? t.frontStroke : t.rearStroke;
  const deadMax = f ? t.rearStroke : t.frontStroke;
  // Weights of the two clevises in the motion of the pivot, from its distance to the front clevis.
  const frontWeight = (t.barSpacing / 2 + t.barOffset) / t.barSpacing;
  const wGood = f ? frontWeight : 1 - frontWeight;
  const wDead = 1 - wGood;
  const spread = t.barSpacing * Math.sin(t.stopAngle ?? Math.PI / 2);
  const lead = (f ? -1 : 1) * (t.frontLead ?? 0); // dead clevis ahead at rest
  const play = t.freePlay ?? 0;
  const push = controlForce * t.pedalRatio * t.efficiency;
  const contact = (depth: number) => (depth > 0 ? stiff * depth : 0);
  const fluid = (x: number) => Math.max(0, (area * (x - port) - v0) / k);
  const onPivot = (xg: number, xd: number) => push - contact(play + wGood * xg + wDead * xd - t.floorTravel / t.pedalRatio);
  const stop = (xg: number, xd: number) => contact(xd + lead - xg - spread) - contact(xg - xd - lead - spread); // force holding back the dead end
  const deadBalance = (xg: number, xd: number) => contact(xd - deadMax) + stop(xg, xd) + trace * xd - wDead * onPivot(xg, xd);
  const goodBalance = (xg: number, xd: number) => area * fluid(xg) + contact(xg - goodMax) - stop(xg, xd) + trace * xg - wGood * onPivot(xg, xd);
  const halve = (h: (x: number) => number) => {
    let [lo, hi] = [-1e-4, 0.12];
    for (let i = 0; i < 64; i += 1) {
      const mid = (lo + hi) / 2;
      if (h(mid) > 0) hi = mid;
      else lo = mid;
    }
    return (lo + hi) / 2;
  };
  const deadFor = (xg: number) => halve((xd) => deadBalance(xg, xd));
  const good = halve((xg) => goodBalance(xg, deadFor(xg)));
  const dead = deadFor(good);
  return { pressure: fluid(good), good, dead, padTravel: t.pedalRatio * (play + wGood * good + wDead * dead) };
}

describe('circuitFailure against stiff springs that know no regimes', () => {
  test('pressure, strokes and pad travel agree for any pedal and any push, in every regime a pushed pedal can be in', () => {
    const regimesMet = new Set<string>();
    fc.assert(
      fc.property(anyTruck, range(5, 2000), (truck, controlForce) => {
        const mine = possible(failureAtForce({ ...truck, controlForce }));
        const springs = stiffSprings(truck, controlForce);
        regimesMet.add(mine.regime);
        expect(Math.abs(mine.pressure - springs.pressure)).toBeLessThan(200 + 1e-6 * mine.pressure); // Pa
        expect(Math.abs(mine.padTravel - springs.padTravel)).toBeLessThan(1e-6);
        // With the pad on the floor and no pressure the bar lies loose on its pivot: no force says where.
        if (mine.regime === 'on-floor' && mine.pressure === 0) return;
        expect(Math.abs(mine.goodStroke - springs.good)).toBeLessThan(1e-6);
        expect(Math.abs(mine.deadStroke - springs.dead)).toBeLessThan(1e-6);
      }),
      { numRuns: 1500 },
    );
    expect([...regimesMet].sort()).toEqual(['flat-spot', 'good-bottomed', 'on-bar-stop', 'on-dead-master', 'on-floor', 'on-opposite-stop']);
  });

  test('so do the sweeps of the reference truck, either circuit dead, with stop, without, and with a low floor', () => {
    for (const dead of ['front', 'rear'] as const) {
      for (const stopAngle of [12 * deg, 24 * deg, undefined]) {
        for (const floorTravel of [0.08, 0.13, 0.3]) {
          for (let controlForce = 20; controlForce <= 1500; controlForce += 74) {
            const truck = { ...reference, dead, stopAngle, floorTravel };
            const mine = possible(failureAtForce({ ...truck, controlForce }));
            const springs = stiffSprings(truck, controlForce);
            expect(Math.abs(mine.pressure - springs.pressure)).toBeLessThan(200 + 1e-6 * mine.pressure);
            expect(Math.abs(mine.padTravel - springs.padTravel)).toBeLessThan(1e-6);
          }
        }
      }
    }
  });
});

describe('circuitFailure', () => {
  test('the reference truck at 500 N with the rear dead keeps the front’s ordinary 65.8 bar, at 151 mm of pad', () => {
    const r = possible(circuitFailure({ ...reference, dead: 'rear', controlForce: 500 }));
    expect(r.regime).toBe('on-dead-master');
    expect(Math.abs(r.pressure / 1e5 - 65.8)).toBeLessThanOrEqual(0.05); // its table, both circuits sound
    expect(Math.abs(r.goodStroke * 1e3 - 22.1)).toBeLessThanOrEqual(0.05);
    expect(r.padTravel * 1e3).toBeCloseTo(6.2 * (0.38 * 28 + 0.62 * 22.063), 1);
    expect(r.rateByPressure).toBeCloseTo((122.8 * 65.799) / (1340 * 9.80665), 4);
    expect(r.firstStop).toBe('bar-stop');
    expect(r.slipLimited).toBe(false);
    expect(r.rate).toBe(r.rateByPressure);
  });

  test('the reference truck at 500 N with the front dead sits in a flat spot, and its empty rear tires slide first', () => {
    const r = possible(circuitFailure({ ...reference, dead: 'front', controlForce: 500 }));
    expect(r.regime).toBe('flat-spot');
    expect(r.flatSpot!.to / r.flatSpot!.from).toBeCloseTo(1 / 0.38, 9);
    expect(r.slipLimited).toBe(true);
    expect(r.rate).toBe(r.slipLimit);
    expect(r.rate).toBeCloseTo((0.9 * 0.42) / (1 + (0.9 * 0.58) / 2.743), 12);
    expect(r.events.map((e) => e.kind)).toEqual(['bar-stop', 'first-pressure', 'axle-slides', 'dead-bottoms', 'flat-spot-ends']);
  });

  test('the axle that still brakes does so with its own gain: rate × weight = C × pressure', () => {
    fc.assert(
      fc.property(anyTruck, range(5, 2000), (truck, controlForce) => {
        const r = possible(failureAtForce({ ...truck, controlForce }));
        const force = (truck.dead === 'rear' ? truck.frontGain : truck.rearGain) * r.pressure;
        expect(Math.abs(r.rateByPressure * truck.mass * 9.80665 - force)).toBeLessThan(1e-9 * Math.max(1, force));
        expect(r.slipLimited).toBe(r.rateByPressure > r.slipLimit);
        expect(r.rate).toBe(Math.min(r.rateByPressure, r.slipLimit));
      }),
    );
  });

  test('with no floor or bottom in the way p = max(s P, min(P, p_lim))', () => {
    fc.assert(
      fc.property(anyTruck, range(5, 2000), (anyT, controlForce) => {
        const truck = { ...anyT, stopAngle: anyT.stopAngle ?? 20 * deg, floorTravel: 10 };
        const r = possible(circuitFailure({ ...truck, controlForce }));
        fc.pre(r.regime !== 'good-bottomed' && r.regime !== 'on-opposite-stop');
        const rear = truck.dead === 'rear';
        const bore = rear ? truck.frontBore : truck.rearBore;
        const area = (Math.PI / 4) * bore ** 2;
        const all = (controlForce * truck.pedalRatio * truck.efficiency) / area;
        const share = 0.5 + ((rear ? 1 : -1) * truck.barOffset) / truck.barSpacing;
        const [v0, k, port, deadMax] = rear
          ? [truck.frontTakeUpVolume, truck.frontCompliance, truck.frontPortStroke, truck.rearStroke]
          : [truck.rearTakeUpVolume, truck.rearCompliance, truck.rearPortStroke, truck.frontStroke];
        const limit = Math.max(0, ((deadMax - truck.barSpacing * Math.sin(truck.stopAngle) + (rear ? -1 : 1) * (truck.frontLead ?? 0) - port) * area - v0) / k);
        expect(Math.abs(r.pressure - Math.max(share * all, Math.min(all, limit)))).toBeLessThan(1e-6 * all + 1e-3);
      }),
    );
  });

  test('before the dead master bottoms, the good circuit has the whole foot: more pressure than with both circuits sound', () => {
    const r = possible(failureAtForce({ ...reference, dead: 'rear', controlForce: 100 }));
    expect(r.regime).toBe('on-bar-stop');
    expect(r.pressure).toBeCloseTo((100 * 6.2 * 0.85) / ((Math.PI / 4) * 0.01778 ** 2), 3);
    expect(r.tilt).toBeCloseTo(12 * deg, 12);
  });

  test('without a stop the good circuit has no more than its ordinary share from the first newton', () => {
    for (const controlForce of [20, 100, 300]) {
      const r = possible(circuitFailure({ ...reference, dead: 'rear', stopAngle: undefined, controlForce }));
      expect(r.pressure * (Math.PI / 4) * 0.01778 ** 2).toBeCloseTo(0.62 * controlForce * 6.2 * 0.85, 6);
      expect(r.firstStop).toBe('dead-bottoms');
      expect(r.flatSpot).toBeUndefined();
    }
  });

  test('a stop set at nothing is a bar welded square: all of the foot to the good circuit, both pistons in step', () => {
    const r = possible(circuitFailure({ ...reference, dead: 'rear', stopAngle: 0, controlForce: 200 }));
    expect(r.goodStroke).toBeCloseTo(r.deadStroke, 14);
    expect(r.tilt).toBeCloseTo(0, 12);
    expect(r.padTravel).toBeCloseTo(6.2 * r.goodStroke, 12);
    expect(r.pressure * (Math.PI / 4) * 0.01778 ** 2).toBeCloseTo(200 * 6.2 * 0.85, 6);
  });

  test('with a centered bar and like circuits it does not matter which one is dead', () => {
    const even = { ...reference, barOffset: 0, rearTakeUpVolume: reference.frontTakeUpVolume, rearCompliance: reference.frontCompliance };
    const f = possible(failureAtForce({ ...even, dead: 'front', controlForce: 300 }));
    const r = possible(failureAtForce({ ...even, dead: 'rear', controlForce: 300 }));
    expect(f.pressure).toBe(r.pressure);
    expect(f.padTravel).toBe(r.padTravel);
  });

  test('with no force the pedal has still dropped through its free run, and there is no pressure', () => {
    const r = possible(circuitFailure({ ...reference, dead: 'rear', controlForce: 0 }));
    expect(r.pressure).toBe(0);
    expect(r.rate).toBe(0);
    const start = r.events.find((e) => e.kind === 'first-pressure');
    expect(r.padTravel).toBeCloseTo(start!.padTravel, 12);
    expect(possible(failureAtForce({ ...reference, dead: 'rear', controlForce: 1e-6 })).padTravel).toBeCloseTo(r.padTravel, 8);
  });

  test('a floor met in the free run leaves no brakes at any force', () => {
    for (const controlForce of [0, 100, 1500]) {
      const r = possible(circuitFailure({ ...reference, dead: 'front', floorTravel: 0.075, controlForce }));
      expect(r.pressure).toBe(0);
      expect(r.regime).toBe('on-floor');
      expect(r.floorMargin).toBe(0);
      expect(r.ultimatePressure).toBe(0);
      expect(r.travelWithoutFloor).toBeGreaterThan(0.075);
    }
    expect(possible(circuitFailure({ ...reference, dead: 'front', floorTravel: 0.03, controlForce: 100 })).firstStop).toBe('pad-on-floor');
  });

  test('a floor met later caps the pressure at what the pedal had there', () => {
    const free = possible(failureAtForce({ ...reference, dead: 'rear', controlForce: 300 }));
    const floored = possible(circuitFailure({ ...reference, dead: 'rear', floorTravel: free.padTravel, controlForce: 1200 }));
    expect(floored.regime).toBe('on-floor');
    expect(floored.pressure).toBeCloseTo(free.pressure, 3);
    expect(floored.events.at(-1)!.kind).toBe('pad-on-floor');
    expect(floored.events.at(-1)!.controlForce).toBeCloseTo(300, 9);
  });

  test('past the good master’s own bottom no foot adds pressure', () => {
    const r = possible(circuitFailure({ ...reference, dead: 'rear', controlForce: 800 }));
    expect(r.regime).toBe('good-bottomed');
    expect(r.goodStroke).toBe(0.028);
    expect(r.pressure).toBe(possible(failureAtForce({ ...reference, dead: 'rear', controlForce: 1500 })).pressure);
    expect(r.pressure).toBe(r.ultimatePressure);
  });

  test('pushing harder never lowers pressure, rate or travel, and never passes what the stops allow', () => {
    fc.assert(
      fc.property(anyTruck, range(0, 2000), range(0, 500), (truck, force, more) => {
        const a = possible(circuitFailure({ ...truck, controlForce: force }));
        const b = possible(failureAtForce({ ...truck, controlForce: force + more }));
        expect(b.pressure).toBeGreaterThanOrEqual(a.pressure * (1 - 1e-12));
        expect(b.rate).toBeGreaterThanOrEqual(a.rate * (1 - 1e-12));
        expect(b.padTravel).toBeGreaterThanOrEqual(a.padTravel * (1 - 1e-12));
        expect(a.rate).toBeLessThanOrEqual(a.slipLimit);
        expect(a.floorMargin).toBeGreaterThanOrEqual(0);
        expect(a.pressure).toBeLessThanOrEqual(a.ultimatePressure * (1 + 1e-12));
      }),
    );
  });

  test('a lower carpet never hurts, a higher one never helps', () => {
    fc.assert(
      fc.property(anyTruck, range(0, 1500), range(0, 0.1), (truck, controlForce, lower) => {
        const high = possible(failureAtForce({ ...truck, controlForce }));
        const low = possible(failureAtForce({ ...truck, floorTravel: truck.floorTravel + lower, controlForce }));
        expect(low.pressure).toBeGreaterThanOrEqual(high.pressure * (1 - 1e-12) - 1e-3);
      }),
    );
  });

  test('events come in the order they are met, within the force looked at, and each is a state of the pedal', () => {
    fc.assert(
      fc.property(anyTruck, range(100, 2000), (truck, searchForce) => {
        const r = possible(circuitFailure({ ...truck, searchForce, controlForce: 100 }));
        r.events.forEach((e, k) => {
          expect(e.controlForce).toBeLessThanOrEqual(searchForce);
          const before = r.events[k - 1];
          if (before) {
            expect(e.controlForce).toBeGreaterThanOrEqual(before.controlForce * (1 - 1e-12));
            expect(e.padTravel).toBeGreaterThanOrEqual(before.padTravel - 1e-12);
          }
          // Pressure is the one thing force and travel both fix at every event.
          expect(Math.abs(possible(failureAtTravel({ ...truck, padTravel: e.padTravel })).pressure - e.pressure)).toBeLessThan(1 + 1e-9 * e.pressure);
          if (e.controlForce > 0) {
            expect(Math.abs(possible(failureAtForce({ ...truck, controlForce: e.controlForce })).pressure - e.pressure)).toBeLessThan(1 + 1e-9 * e.pressure);
          }
        });
        if (r.events.length > 0) expect(r.events[0]!.kind === r.firstStop || r.events[0]!.controlForce > 0).toBe(true);
      }),
    );
  });

  test('the axle slides in the list exactly where the pressure asks for the slip limit, and only if it is ever reached', () => {
    let slid = 0;
    fc.assert(
      fc.property(anyTruck, (truck) => {
        const r = possible(circuitFailure({ ...truck, searchForce: 1e7, controlForce: 1e7 }));
        const slide = r.events.find((e) => e.kind === 'axle-slides');
        expect(slide !== undefined).toBe(r.rateByPressure >= r.slipLimit);
        if (slide === undefined) return;
        slid += 1;
        const there = possible(failureAtForce({ ...truck, controlForce: slide.controlForce }));
        expect(Math.abs(there.rateByPressure / there.slipLimit - 1)).toBeLessThan(1e-9);
      }),
    );
    expect(slid).toBeGreaterThan(10);
  });

  test('a state found by force is found again by its travel', () => {
    fc.assert(
      fc.property(anyTruck, range(1, 2000), (truck, controlForce) => {
        const a = possible(failureAtForce({ ...truck, controlForce }));
        const b = possible(failureAtTravel({ ...truck, padTravel: a.padTravel }));
        expect(Math.abs(b.padTravel - a.padTravel)).toBeLessThan(1e-12);
        expect(Math.abs(b.pressure - a.pressure)).toBeLessThan(1 + 1e-9 * a.pressure);
        expect(b.controlForce).toBeLessThanOrEqual(controlForce * (1 + 1e-9) + 1e-6); // the least force that gets there
      }),
    );
  });

  test('by travel the pedal starts at rest, runs free, and stays at its end', () => {
    const at = (padTravel: number) => possible(failureAtTravel({ ...reference, dead: 'rear', padTravel }));
    expect(at(0)).toMatchObject({ goodStroke: 0, deadStroke: 0, pressure: 0, controlForce: 0, regime: 'free-run' });
    expect(at(0.02)).toMatchObject({ goodStroke: 0, pressure: 0, controlForce: 0, regime: 'free-run' });
    expect(at(0.02).tilt).toBeGreaterThan(0);
    expect(at(1).padTravel).toBeCloseTo(6.2 * 0.028, 12);
  });

  test('a shorter search names fewer events and changes nothing else', () => {
    const short = possible(circuitFailure({ ...reference, dead: 'rear', searchForce: 200, controlForce: 500 }));
    expect(short.events.map((e) => e.kind)).toEqual(['bar-stop', 'first-pressure', 'dead-bottoms']);
    expect(short.pressure).toBe(possible(circuitFailure({ ...reference, dead: 'rear', controlForce: 500 })).pressure);
  });

  test('a pivot outside the clevises has no answer; a negative push is a mistake of the caller', () => {
    const wrong = { ...reference, dead: 'rear' as const, barOffset: 0.04 };
    expect(isImpossible(circuitFailure({ ...wrong, controlForce: 1 }))).toBe(true);
    expect(isImpossible(failureAtForce({ ...wrong, controlForce: 1 }))).toBe(true);
    expect(isImpossible(failureAtTravel({ ...wrong, padTravel: 0.1 }))).toBe(true);
    expect(() => circuitFailure({ ...reference, dead: 'rear', controlForce: -1 })).toThrow(/controlForce/);
    expect(() => circuitFailure({ ...reference, dead: 'rear', mass: 0, controlForce: 1 })).toThrow(/mass/);
  });
});

describe('a bar that leans at rest, and free play', () => {
  test('a rear clevis ahead at rest lengthens the lead with the front dead and shortens it with the rear dead', () => {
    const travel = (dead: 'front' | 'rear', frontLead: number) => possible(circuitFailure({ ...reference, dead, frontLead, controlForce: 100 })).deadStroke;
    expect(travel('front', -0.005) - travel('front', 0)).toBeCloseTo(0.005, 12);
    expect(travel('rear', -0.005) - travel('rear', 0)).toBeCloseTo(-0.005, 12);
  });

  test('so the lean that squares the bar under load costs the front-dead truck pressure: the dead master bottoms sooner', () => {
    const pressure = (frontLead: number) => possible(circuitFailure({ ...reference, dead: 'front', frontLead, controlForce: 400 })).pressure;
    expect(pressure(-0.00525)).toBeLessThan(pressure(0));
  });

  test('free play adds its own travel at the pad, the ratio times, and no pressure', () => {
    const at = (freePlay: number) => possible(circuitFailure({ ...reference, dead: 'rear', freePlay, controlForce: 300 }));
    expect(at(0.001).padTravel - at(0).padTravel).toBeCloseTo(6.2 * 0.001, 12);
    expect(at(0.001).pressure).toBeCloseTo(at(0).pressure, 6);
  });

  test('a bar that leans beyond its stop is not a bar', () => {
    expect(circuitFailure({ ...reference, dead: 'front', frontLead: 0.02, controlForce: 100 })).toMatchObject({ impossible: 'on-stop-at-rest' });
  });
});

describe('push-out pressure', () => {
  test('takes the same rate off every push that more than fills the brakes, and moves neither pressure nor pedal', () => {
    fc.assert(fc.property(anyTruck, range(0, 5e5), range(0, 1500), (t, pushOut, controlForce) => {
      const [without, with_] = [possible(failureAtForce({ ...t, controlForce })), possible(failureAtForce({ ...t, pushOut, controlForce }))];
      expect(with_.pressure).toBe(without.pressure);
      expect(with_.padTravel).toBe(without.padTravel);
      const gain = t.dead === 'front' ? t.rearGain : t.frontGain;
      const lost = (gain * Math.min(pushOut, without.pressure)) / (t.mass * 9.80665);
      expect(without.rateByPressure - with_.rateByPressure).toBeCloseTo(lost, 9);
      expect(with_.rate).toBeLessThanOrEqual(with_.slipLimit);
    }), { numRuns: 200 });
  });

  test('puts off the slide until the pressure above it is what the tires hold', () => {
    const pushOut = 70 * 6894.757;
    const slide = (p: number) => possible(circuitFailure({ ...reference, dead: 'rear', pushOut: p, controlForce: 100, searchForce: 4000, frontStroke: 0.06, rearStroke: 0.06, floorTravel: 1 })).events.find(({ kind }) => kind === 'axle-slides');
    expect(slide(pushOut)!.pressure - slide(0)!.pressure).toBeCloseTo(pushOut, 3);
    expect(() => failureAtForce({ ...reference, dead: 'rear', pushOut: -1, controlForce: 100 })).toThrow(/pushOut/);
  });
});
