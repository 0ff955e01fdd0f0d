import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { boosterForce, pedalEffort } from '../../src/engine/booster.ts';

const booster = { boostGain: 4, cutInForce: 50, diameter: 0.2286, diaphragms: 1, vacuum: 60e3 };
const truck = { ...booster, controlForce: 200, manualRatio: 6.2, boostedRatio: 3.6, efficiency: 0.85, springForce: 75 };
// Evenly spread: fc.double would spend most of its trials within a hair of 0.
const range = (min: number, max: number) =>
  fc.integer({ min: 0, max: 1_000_000 }).map((k) => min + ((max - min) * k) / 1_000_000);
const anyBooster = fc.record({
  boostGain: range(1.5, 7),
  // None at all, or an amount a gauge could show: 1e-300 Pa tests the arithmetic of subnormal numbers and not a booster.
  cutInForce: fc.oneof(fc.constant(0), range(1, 100)), vacuum: fc.oneof({ weight: 1, arbitrary: fc.constant(0) }, { weight: 9, arbitrary: range(100, 9e4) }),
  diameter: range(0.15, 0.3), diaphragms: fc.integer({ min: 1, max: 2 }), areaFactor: range(0.7, 1),
});
const anyTruck = fc.tuple(anyBooster, fc.record({
  controlForce: range(1, 1500), manualRatio: range(4, 8), boostedRatio: range(2.5, 5), efficiency: range(0.6, 1), springForce: range(0, 100),
})).map(([b, t]) => ({ ...b, ...t }));

describe('boosterForce', () => {
  test('500 mmHg on a 254 mm diaphragm pushes with 3378 N: pressure difference × area, by statics', () => {
    const mmHg = 133.322387415;
    const b = boosterForce({ rodForce: 1e5, ...booster, diameter: 0.254, vacuum: 500 * mmHg, areaFactor: 1 });
    expect(Math.abs(b.assist - 3378)).toBeLessThanOrEqual(0.5);
    expect(b.ranOut).toBe(true);
  });

  test('with no vacuum, and below cut-in, the rod goes straight through', () => {
    expect(boosterForce({ rodForce: 900, ...booster, vacuum: 0 }).output).toBe(900);
    expect(boosterForce({ rodForce: 49, ...booster }).output).toBe(49);
    expect(boosterForce({ rodForce: 0, ...booster }).output).toBe(0);
  });

  test('one newton more in is R newtons more out before run-out, and one after it', () => {
    const out = (rodForce: number) => boosterForce({ rodForce, ...booster }).output;
    const { runOutRodForce } = boosterForce({ rodForce: 0, ...booster });
    expect(out(301) - out(300)).toBeCloseTo(4, 10);
    expect(out(runOutRodForce + 2) - out(runOutRodForce + 1)).toBeCloseTo(1, 10);
  });

  test('output is continuous at cut-in and at run-out', () => {
    fc.assert(
      fc.property(anyBooster, (b) => {
        const { runOutRodForce } = boosterForce({ rodForce: 0, ...b });
        for (const at of [b.cutInForce, runOutRodForce]) {
          const step = boosterForce({ rodForce: at + 1e-6, ...b }).output - boosterForce({ rodForce: Math.max(0, at - 1e-6), ...b }).output;
          expect(step).toBeLessThanOrEqual(2e-6 * b.boostGain + 1e-9);
          expect(step).toBeGreaterThan(0);
        }
      }),
    );
  });

  test('the help never exceeds pressure difference × area, and more vacuum never helps less', () => {
    fc.assert(
      fc.property(anyBooster, range(0, 5000), (b, rodForce) => {
        const f = boosterForce({ rodForce, ...b });
        expect(f.assist).toBeLessThanOrEqual(b.diaphragms * b.vacuum * (Math.PI / 4) * b.diameter ** 2 + 1e-9);
        expect(boosterForce({ rodForce, ...b, vacuum: b.vacuum + 5000 }).assist).toBeGreaterThanOrEqual(f.assist);
        expect(f.ranOut).toBe(rodForce >= f.runOutRodForce);
      }),
    );
  });

  test('a second diaphragm doubles the help at run-out', () => {
    const one = boosterForce({ rodForce: 1e5, ...booster });
    expect(boosterForce({ rodForce: 1e5, ...booster, diaphragms: 2 }).assist).toBeCloseTo(2 * one.assist, 9);
  });

  test('left out, the area factor is 0.9', () => {
    const gross = boosterForce({ rodForce: 1e5, ...booster, areaFactor: 1 });
    expect(boosterForce({ rodForce: 1e5, ...booster }).assist).toBeCloseTo(0.9 * gross.assist, 9);
  });

  test('more vacuum than an atmosphere, a gain of 1 or half a diaphragm is a mistake of the caller', () => {
    expect(() => boosterForce({ rodForce: 1, ...booster, vacuum: 102e3 })).toThrow(/vacuum: expected at most 101325/);
    expect(() => boosterForce({ rodForce: 1, ...booster, boostGain: 1 })).toThrow(/boostGain/);
    expect(() => boosterForce({ rodForce: 1, ...booster, diaphragms: 1.5 })).toThrow(/diaphragms/);
    expect(() => boosterForce({ rodForce: 1, ...booster, areaFactor: 1.1 })).toThrow(/areaFactor/);
  });
});

describe('pedalEffort', () => {
  test('the worked value: 1054 N manual against 2298 N boosted, 2.18 times the foot', () => {
    // 200 × 3.6 × 0.85 = 612 N in; 612 + 3 × (612 − 50) = 2298 out; 200 × 6.2 × 0.85 = 1054. Run-out is far off at 789 N.
    const e = pedalEffort(truck);
    expect(e.manualRodForce).toBeCloseTo(1054, 9);
    expect(e.boostedRodForce).toBeCloseTo(2298, 9);
    expect(e.effortMultiplier).toBeCloseTo(2298 / 1054, 12);
    expect(e.failedRodForce).toBeCloseTo(612 - 75, 9);
    expect(e.ranOut).toBe(false);
  });

  test('pushed with its equivalent force, the manual pedal gives the boosted rod force; so does the dead booster’s', () => {
    fc.assert(
      fc.property(anyTruck, (t) => {
        const e = pedalEffort(t);
        const manual = pedalEffort({ ...t, controlForce: e.equivalentManualForce });
        expect(Math.abs(manual.manualRodForce / e.boostedRodForce - 1)).toBeLessThan(1e-12);
        const failed = pedalEffort({ ...t, controlForce: e.failedEquivalentForce });
        expect(Math.abs(failed.failedRodForce / e.boostedRodForce - 1)).toBeLessThan(1e-9);
        expect(e.effortMultiplier * t.controlForce).toBeCloseTo(e.equivalentManualForce, 8);
      }),
    );
  });

  test('at break-even both pedals push alike; beyond it the manual one leads, between it and run-out it trails', () => {
    let met = 0;
    fc.assert(
      fc.property(anyTruck, (t) => {
        const { breakEvenForce, runOutControlForce } = pedalEffort(t);
        if (breakEvenForce === undefined) return;
        met += 1;
        const at = (controlForce: number) => pedalEffort({ ...t, controlForce });
        const even = at(breakEvenForce);
        expect(Math.abs(even.manualRodForce / even.boostedRodForce - 1)).toBeLessThan(1e-9);
        expect(breakEvenForce).toBeGreaterThanOrEqual(runOutControlForce);
        expect(at(breakEvenForce * 1.01).manualRodForce).toBeGreaterThan(at(breakEvenForce * 1.01).boostedRodForce);
        const between = 0.5 * (breakEvenForce + runOutControlForce);
        expect(at(between).manualRodForce).toBeLessThanOrEqual(at(between).boostedRodForce * (1 + 1e-12));
      }),
    );
    expect(met).toBeGreaterThan(20);
  });

  test('where no break-even is named, a scan beyond run-out finds none', () => {
    let met = 0;
    fc.assert(
      fc.property(anyTruck, (t) => {
        const e = pedalEffort(t);
        if (e.breakEvenForce !== undefined) return;
        met += 1;
        const lead = (controlForce: number) => {
          const p = pedalEffort({ ...t, controlForce });
          return Math.sign(p.manualRodForce - p.boostedRodForce);
        };
        const first = lead(e.runOutControlForce * 1.0001);
        for (let k = 1; k <= 40; k += 1) expect(lead(e.runOutControlForce * (1.0001 + k * k * 0.1))).toBe(first);
      }),
    );
    expect(met).toBeGreaterThan(20);
  });

  test('at run-out the booster has just spent its help', () => {
    const { runOutControlForce } = pedalEffort(truck);
    expect(pedalEffort({ ...truck, controlForce: runOutControlForce * (1 + 1e-12) }).ranOut).toBe(true);
    expect(pedalEffort({ ...truck, controlForce: runOutControlForce * 0.999 }).ranOut).toBe(false);
  });

  test('a light foot cannot move a dead booster’s spring, and never pulls', () => {
    expect(pedalEffort({ ...truck, controlForce: 10 }).failedRodForce).toBe(0);
  });

  test('the multiplier at no force is the limit of a light foot, where an idle booster only has the shorter lever', () => {
    const zero = pedalEffort({ ...truck, controlForce: 0 }).effortMultiplier;
    expect(zero).toBeCloseTo(pedalEffort({ ...truck, controlForce: 1e-3 }).effortMultiplier, 12);
    expect(zero).toBeLessThan(1);
  });
});
