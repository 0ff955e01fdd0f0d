import { describe, expect, test } from 'vitest';
import { footToRoad, footWhere } from '../../src/engine/footToRoad.ts';
import type { FootState, Pedal } from '../../src/engine/footToRoad.ts';

const truckA: Pedal = {
  pedalRatio: 6.2, efficiency: 0.85, frontShare: 0.62, springForce: 0, frontBore: 0.01778, rearBore: 0.01778, portStroke: 0.001, freePlay: 0,
  frontTakeUpVolume: 1.874e-6, rearTakeUpVolume: 0.884e-6, frontCompliance: 0.051e-11, rearCompliance: 0.033e-11,
  frontGain: 122.84e-5, rearGain: 63.4e-5, pushOut: 0, mass: 1340,
};
// Everything that can bend a line, each at a foot force of its own.
const bent: Pedal = { ...truckA, springForce: 40, pushOut: 3e5, freePlay: 0.0008, valve: { knee: 20e5, slope: 0.4 }, rearBore: 0.0206, frontShare: 0.57 };

describe('footToRoad', () => {
  // Reference truck A: rate printed to 0.001, strokes to 0.1 mm, pad travel to 1 mm.
  test.each([
    [222, 0.359, 14.5, 6.9, 72],
    [500, 0.810, 22.1, 9.9, 108],
  ])('the reference truck at %i N reaches the rate, strokes and pad travel of its table', (controlForce, rate, front, rear, pad) => {
    const s = footToRoad({ ...truckA, controlForce });
    expect(Math.abs(s.rate - rate)).toBeLessThanOrEqual(0.0006);
    expect(Math.abs(s.frontStroke * 1e3 - front)).toBeLessThanOrEqual(0.05);
    expect(Math.abs(s.rearStroke * 1e3 - rear)).toBeLessThanOrEqual(0.05);
    expect(Math.abs(s.padTravel * 1e3 - pad)).toBeLessThanOrEqual(0.5);
    expect(s.rearFraction).toBeCloseTo(0.24, 3);
  });

  test('with a lossless linkage the foot’s extra work is the extra work of pressure on fluid', () => {
    // Bar, lever and pistons only pass work on: F dT = p_f dV_f + p_r dV_r at every foot force.
    const p = { ...bent, efficiency: 1, springForce: 0, valve: undefined };
    for (const controlForce of [50, 150, 320, 700]) {
      const [a, b] = [controlForce - 0.5, controlForce + 0.5].map((f) => footToRoad({ ...p, controlForce: f })) as [FootState, FootState];
      const m = footToRoad({ ...p, controlForce });
      const fluid = m.frontPressure * m.frontArea * (b.frontStroke - a.frontStroke) + m.rearPressure * m.rearArea * (b.rearStroke - a.rearStroke);
      expect(controlForce * (b.padTravel - a.padTravel)).toBeCloseTo(fluid, 9);
    }
  });

  test('doubling both bore areas halves the pressures and never lengthens a stroke', () => {
    const [small, large] = [truckA, { ...truckA, frontBore: 0.01778 * Math.SQRT2, rearBore: 0.01778 * Math.SQRT2 }].map((p) => footToRoad({ ...p, controlForce: 400 })) as [FootState, FootState];
    expect(large.frontPressure / small.frontPressure).toBeCloseTo(0.5, 12);
    expect(large.rate / small.rate).toBeCloseTo(0.5, 12);
    expect(large.padTravel).toBeLessThan(small.padTravel);
  });

  test('a push that only moves springs and pistons brakes nothing and leaves the rear share undefined', () => {
    const s = footToRoad({ ...bent, controlForce: 5 });
    expect(s.rate).toBe(0);
    expect(s.rearFraction).toBeUndefined();
  });

  test('a valve takes pressure, force and swell from the rear and leaves the front alone', () => {
    const open = footToRoad({ ...bent, valve: undefined, controlForce: 450 });
    const s = footToRoad({ ...bent, controlForce: 450 });
    expect(s.frontForce).toBe(open.frontForce);
    expect(s.rearOutlet).toBeLessThan(open.rearOutlet);
    expect(s.rearStroke).toBeLessThan(open.rearStroke);
    expect(s.rearPressure).toBe(open.rearPressure);
  });

  test('free play at the rod comes to the pad multiplied by the ratio', () => {
    const travel = (freePlay: number) => footToRoad({ ...truckA, freePlay, controlForce: 300 }).padTravel;
    expect(travel(0.001) - travel(0)).toBeCloseTo(0.0062, 12);
  });

  test.each([['freePlay', -1e-9], ['pushOut', Number.NaN], ['mass', 0]])('it refuses %s = %d by name', (name, value) => {
    expect(() => footToRoad({ ...truckA, controlForce: 100, [name]: value })).toThrow(name);
  });
});

describe('footWhere', () => {
  const excesses: readonly [string, (s: FootState) => number][] = [
    ['the front stroke', (s) => s.frontStroke - 0.02],
    ['the rear stroke', (s) => s.rearStroke - 0.007],
    ['the pad travel', (s) => s.padTravel - 0.1],
    ['the rate', (s) => s.rate - 0.7],
    ['the bar’s tilt', (s) => s.frontStroke - s.rearStroke - 0.011],
    ['the rear brake force', (s) => s.rearForce - 500],
  ];
  test.each(excesses)('at the force it names, %s stands exactly at its limit, and just below it has not', (_name, excess) => {
    for (const pedal of [truckA, bent]) {
      const found = footWhere({ pedal, excess }) as number;
      expect(found).toBeGreaterThan(0);
      expect(excess(footToRoad({ ...pedal, controlForce: found }))).toBeCloseTo(0, 9);
      expect(excess(footToRoad({ ...pedal, controlForce: found * 0.999 }))).toBeLessThan(0);
    }
  });

  test('the rear bites late behind a valve that bends below the push-out pressure, and never behind one that passes nothing more', () => {
    const pedal = { ...bent, valve: { knee: 1e5, slope: 0.5 } };
    const bites = footWhere({ pedal, excess: (s) => s.rearForce - 1 }) as number;
    expect(footToRoad({ ...pedal, controlForce: bites }).rearForce).toBeCloseTo(1, 9);
    expect(footWhere({ pedal: { ...pedal, valve: { knee: 1e5, slope: 0 } }, excess: (s) => s.rearForce - 1 })).toBeUndefined();
  });

  test('a limit passed at rest is met at no force, one that is never met at none', () => {
    expect(footWhere({ pedal: truckA, excess: (s) => s.frontStroke - 0.001 })).toBe(0);
    expect(footWhere({ pedal: { ...truckA, frontCompliance: 0 }, excess: (s) => s.frontStroke - 0.02 })).toBeUndefined();
  });

  test('the reference truck bottoms its front master where the stroke of its volume model says', () => {
    const found = footWhere({ pedal: truckA, excess: (s) => s.frontStroke - 0.028 }) as number;
    const { frontArea } = footToRoad({ ...truckA, controlForce: 0 });
    const pressure = ((0.028 - 0.001) * frontArea - 1.874e-6) / 0.051e-11;
    expect(found).toBeCloseTo((pressure * frontArea) / (0.62 * 6.2 * 0.85), 6);
  });
});
