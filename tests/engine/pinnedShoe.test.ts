import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { brakeFactor, shoeFactor } from '../../src/engine/drum.ts';
import { isImpossible } from '../../src/engine/outcome.ts';
import type { Impossible } from '../../src/engine/outcome.ts';
import { liningArms, pinnedShoe } from '../../src/engine/pinnedShoe.ts';

function possible<T>(x: T | Impossible): T {
  if (isImpossible(x)) throw new Error(`expected a result, found ${x.impossible}`);
  return x;
}
const deg = Math.PI / 180;
// Evenly spread: fc.double would spend most of its trials within a hair of 0.
const range = (min: number, max: number) =>
  fc.integer({ min: 0, max: 1_000_000 }).map((k) => min + ((max - min) * k) / 1_000_000);
const anyLining = fc
  .record({ drumRadius: range(0.08, 0.18), part: range(0.5, 0.95), startAngle: range(0, 80 * deg), more: range(10 * deg, 95 * deg) })
  .map(({ drumRadius, part, startAngle, more }) => ({ drumRadius, hingeRadius: part * drumRadius, startAngle, endAngle: startAngle + more }));
const shoe = {
  drumRadius: 0.125, hingeRadius: 0.1, startAngle: 15 * deg, endAngle: 130 * deg, liningWidth: 0.04, applyArm: 0.19, friction: 0.35,
  sense: 'leading' as const, applyForce: 1500,
};

/** Moments about the pin and about the drum's center, strip by strip in coordinates, for a peak pressure. */
function byStrips({ drumRadius: r, hingeRadius: d, startAngle, endAngle, width, friction, peak }: {
  readonly drumRadius: number; readonly hingeRadius: number; readonly startAngle: number; readonly endAngle: number;
  readonly width: number; readonly friction: number; readonly peak: number;
}) {
  const n = 4000;
  let widest = 0;
  for (let i = 0; i <= n; i += 1) widest = Math.max(widest, Math.sin(startAngle + ((endAngle - startAngle) * i) / n));
  const sums = { normalMoment: 0, frictionMoment: 0, torque: 0 };
  for (let i = 0; i < n; i += 1) {
    const angle = startAngle + ((i + 0.5) * (endAngle - startAngle)) / n;
    const force = ((peak * Math.sin(angle)) / widest) * width * r * ((endAngle - startAngle) / n);
    const [x, y] = [r * Math.cos(angle) - d, r * Math.sin(angle)]; // from the pin, which is at (d, 0)
    const [nx, ny] = [-Math.cos(angle) * force, -Math.sin(angle) * force]; // the drum presses inward
    const [fx, fy] = [Math.sin(angle) * friction * force, -Math.cos(angle) * friction * force]; // and drags toward the pin
    sums.normalMoment += Math.abs(x * ny - y * nx);
    sums.frictionMoment += y * fx - x * fy;
    sums.torque += r * friction * force;
  }
  return sums;
}

describe('liningArms and pinnedShoe', () => {
  test('cutting the lining in strips gives the same moments and torque as the closed integrals', () => {
    fc.assert(
      fc.property(anyLining, (lining) => {
        const arms = possible(liningArms(lining));
        const friction = 0.6 * Math.min(1, arms.normalArm / arms.frictionArm);
        const s = possible(pinnedShoe({ ...shoe, ...lining, friction }));
        const strips = byStrips({ ...lining, width: shoe.liningWidth, friction, peak: s.peakPressure });
        expect(Math.abs(s.normalMoment / strips.normalMoment - 1)).toBeLessThan(1e-6);
        expect(Math.abs(s.frictionMoment / strips.frictionMoment - 1)).toBeLessThan(1e-6);
        expect(Math.abs(s.torque / strips.torque - 1)).toBeLessThan(1e-6);
      }),
      { numRuns: 60 },
    );
  });

  test('moments about the pin balance: F h = M_N − M_f leading, M_N + M_f trailing', () => {
    for (const [sense, sign] of [['leading', -1], ['trailing', 1]] as const) {
      const s = possible(pinnedShoe({ ...shoe, sense }));
      expect(s.normalMoment + sign * s.frictionMoment).toBeCloseTo(shoe.applyForce * shoe.applyArm, 9);
    }
  });

  test('torque over force and drum radius is the factor, and it is the one of the simple shoe with these arms', () => {
    for (const sense of ['leading', 'trailing'] as const) {
      const s = possible(pinnedShoe({ ...shoe, sense }));
      expect(s.factor).toBeCloseTo(s.torque / (shoe.applyForce * shoe.drumRadius), 12);
      expect(s.factor).toBeCloseTo(possible(shoeFactor({ ...shoe, normalArm: s.normalArm, frictionArm: s.frictionArm, sense })).factor, 12);
    }
    const s = possible(pinnedShoe(shoe));
    const both = possible(brakeFactor({ ...shoe, normalArm: s.normalArm, frictionArm: s.frictionArm, type: 'leading-trailing' }));
    expect(both.brakeFactor).toBeCloseTo(s.factor + possible(pinnedShoe({ ...shoe, sense: 'trailing' })).factor, 12);
  });

  test('a narrow lining straight across from its pin is the textbook short shoe: a is the pin distance, c the drum’s radius', () => {
    const arms = possible(liningArms({ ...shoe, startAngle: 89.99 * deg, endAngle: 90.01 * deg }));
    expect(arms.normalArm).toBeCloseTo(0.1, 8);
    expect(arms.frictionArm).toBeCloseTo(0.125, 8);
  });

  test('the tape from pin to center is too long for a, and by no more than 15 % on linings of 110° or less about the middle', () => {
    for (const half of [20, 35, 45, 55]) {
      const { normalArm } = possible(liningArms({ ...shoe, startAngle: (90 - half) * deg, endAngle: (90 + half) * deg }));
      const over = shoe.hingeRadius / normalArm - 1;
      expect(over).toBeGreaterThan(0);
      expect(over).toBeLessThan(0.15);
    }
  });

  test('pressure is highest across from the pin, or at the end of the lining nearest to there', () => {
    const at = (start: number, end: number) => possible(liningArms({ ...shoe, startAngle: start * deg, endAngle: end * deg })).peakAngle / deg;
    expect(at(10, 130)).toBeCloseTo(90, 10);
    expect(at(10, 70)).toBeCloseTo(70, 10);
    expect(at(100, 150)).toBeCloseTo(100, 10);
  });

  test('the leading shoe is pressed harder than the trailing one by the same force, in the ratio of their torques', () => {
    const [lead, trail] = (['leading', 'trailing'] as const).map((sense) => possible(pinnedShoe({ ...shoe, sense })));
    expect(lead!.peakPressure).toBeGreaterThan(trail!.peakPressure);
    expect(lead!.peakPressure / trail!.peakPressure).toBeCloseTo(lead!.torque / trail!.torque, 12);
  });

  test('a wider lining halves the pressure and leaves the torque alone', () => {
    const [one, two] = [0.04, 0.08].map((liningWidth) => possible(pinnedShoe({ ...shoe, liningWidth })));
    expect(two!.torque).toBe(one!.torque);
    expect(two!.peakPressure).toBeCloseTo(one!.peakPressure / 2, 6);
  });

  test('numbers that cannot be are returned: lining ends before it starts, pin outside the drum, a shoe that locks', () => {
    const ends = pinnedShoe({ ...shoe, endAngle: 10 * deg });
    expect(isImpossible(ends) && [ends.impossible, ends.by]).toEqual(['lining-ends-before-it-starts', 15 * deg - 10 * deg]);
    const pin = pinnedShoe({ ...shoe, hingeRadius: 0.13 });
    expect(isImpossible(pin) && pin.impossible).toBe('hinge-outside-drum');
    expect(isImpossible(pin) && pin.by).toBeCloseTo(0.005, 12);
    expect(isImpossible(pinnedShoe({ ...shoe, endAngle: shoe.startAngle }))).toBe(true);
    expect(isImpossible(pinnedShoe({ ...shoe, hingeRadius: shoe.drumRadius }))).toBe(true);
    const { normalArm, frictionArm } = possible(liningArms(shoe));
    const locks = pinnedShoe({ ...shoe, friction: normalArm / frictionArm + 0.02 });
    expect(isImpossible(locks) && locks.impossible).toBe('self-locks');
    expect(isImpossible(locks) && locks.by).toBeCloseTo(0.02, 12);
    expect(() => pinnedShoe({ ...shoe, endAngle: 3.2 })).toThrow(/lining/);
    expect(() => pinnedShoe({ ...shoe, applyForce: -1 })).toThrow(/applyForce/);
  });
});
