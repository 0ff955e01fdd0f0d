import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { strokeForPressure } from '../../src/engine/fluid.ts';
import { linePressure } from '../../src/engine/pressure.ts';

const truck = { pedalRatio: 6.2, efficiency: 0.85, frontShare: 0.62, frontBore: 0.01778, rearBore: 0.01778, springForce: 0 };
// Evenly spread: fc.double would spend most of its trials within a hair of 0.
const range = (min: number, max: number) =>
  fc.integer({ min: 0, max: 1_000_000 }).map((k) => min + ((max - min) * k) / 1_000_000);
const anyPedal = fc.record({
  controlForce: range(0, 2000), pedalRatio: range(3, 8), efficiency: range(0.5, 1), frontShare: range(0, 1),
  frontBore: range(0.012, 0.03), rearBore: range(0.012, 0.03), springForce: range(0, 40),
});

describe('linePressure', () => {
  // Reference truck A, pressures printed to 0.1 bar.
  test.each([
    [222, 29.2, 17.9],
    [400, 52.6, 32.3],
    [500, 65.8, 40.3],
  ])('the reference truck at %i N reads the pressures of its table', (controlForce, pf, pr) => {
    const p = linePressure({ ...truck, controlForce });
    expect(Math.abs(p.frontPressure / 1e5 - pf)).toBeLessThanOrEqual(0.05);
    expect(Math.abs(p.rearPressure / 1e5 - pr)).toBeLessThanOrEqual(0.05);
  });

  test('with no foot on the pedal there is no pressure, springs or not', () => {
    const p = linePressure({ ...truck, springForce: 30, controlForce: 0 });
    expect([p.rodForce, p.frontPressure, p.rearPressure]).toEqual([0, 0, 0]);
  });

  test('equal bores and a centered pivot give equal pressures', () => {
    const p = linePressure({ ...truck, frontShare: 0.5, springForce: 20, controlForce: 300 });
    expect(p.frontPressure).toBe(p.rearPressure);
  });

  test('with the pivot on the front clevis the front master gets all and the rear none', () => {
    const p = linePressure({ ...truck, frontShare: 1, controlForce: 300 });
    expect(p.frontPressure * p.frontArea).toBeCloseTo(300 * 6.2 * 0.85, 9);
    expect(p.rearPressure).toBe(0);
  });

  test('piston forces and springs add up to the rod force, and balance in moment about either clevis', () => {
    fc.assert(
      fc.property(anyPedal, (pedal) => {
        const p = linePressure(pedal);
        const s = pedal.frontShare;
        // A master whose spring is stronger than its push stands on its clip; the balance below is for moving ones.
        fc.pre(s * p.rodForce > pedal.springForce && (1 - s) * p.rodForce > pedal.springForce);
        const front = p.frontPressure * p.frontArea + pedal.springForce;
        const rear = p.rearPressure * p.rearArea + pedal.springForce;
        expect(front + rear).toBeCloseTo(pedal.controlForce * pedal.pedalRatio * pedal.efficiency, 6);
        const bar = 0.0635;
        const toRear = s * bar; // the pivot stands nearer the clevis that gets more
        expect(p.rodForce * toRear).toBeCloseTo(front * bar, 8);
        expect(p.rodForce * (bar - toRear)).toBeCloseTo(rear * bar, 8);
      }),
    );
  });

  test('foot force × pad travel × efficiency is pressure × volume moved, summed over the circuits', () => {
    const p = linePressure({ ...truck, controlForce: 400 });
    const give = (compliance: number, area: number, pressure: number) =>
      strokeForPressure({ takeUpVolume: 0, portStroke: 0, compliance, bore: Math.sqrt((4 * area) / Math.PI), pressure }).stroke;
    const xf = give(5.1e-13, p.frontArea, p.frontPressure);
    const xr = give(3.3e-13, p.rearArea, p.rearPressure);
    const padTravel = 6.2 * (0.62 * xf + 0.38 * xr);
    const work = p.frontPressure * p.frontArea * xf + p.rearPressure * p.rearArea * xr;
    expect(400 * padTravel * 0.85).toBeCloseTo(work, 9);
  });

  test('a spring takes its own force ÷ area off the pressure: 10–40 N on 0.70 in is 0.4–1.6 bar', () => {
    const without = linePressure({ ...truck, controlForce: 300 });
    for (const springForce of [10, 40]) {
      const p = linePressure({ ...truck, springForce, controlForce: 300 });
      expect(without.frontPressure - p.frontPressure).toBeCloseTo(springForce / 2.48287e-4, -1);
    }
  });

  test('pressure is never negative, and pushing harder never lowers it', () => {
    fc.assert(
      fc.property(anyPedal, range(1, 3), (pedal, more) => {
        const p = linePressure(pedal);
        const q = linePressure({ ...pedal, controlForce: pedal.controlForce * more });
        expect(Math.min(p.frontPressure, p.rearPressure)).toBeGreaterThanOrEqual(0);
        expect(q.frontPressure).toBeGreaterThanOrEqual(p.frontPressure);
        expect(q.rearPressure).toBeGreaterThanOrEqual(p.rearPressure);
      }),
    );
  });

  test('one bore step of 1/16 in below 3/4 in raises the pressure by 19 %, one above lowers it by 15 %', () => {
    const at = (inches: number) => linePressure({ ...truck, frontBore: inches * 0.0254, controlForce: 400 }).frontPressure;
    expect(at(11 / 16) / at(3 / 4)).toBeCloseTo((12 / 11) ** 2, 12);
    expect(at(13 / 16) / at(3 / 4)).toBeCloseTo((12 / 13) ** 2, 12);
  });

  test('a share or an efficiency above 1 is a mistake of the caller', () => {
    expect(() => linePressure({ ...truck, frontShare: 1.01, controlForce: 1 })).toThrow(/frontShare: expected at most 1/);
    expect(() => linePressure({ ...truck, efficiency: 1.01, controlForce: 1 })).toThrow(/efficiency/);
    expect(() => linePressure({ ...truck, controlForce: -1 })).toThrow(/controlForce/);
  });
});
