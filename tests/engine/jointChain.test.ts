import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Vector3 } from 'three';
import { chainRipple } from '../../src/engine/clocking.ts';
import { jointRatio, sweepChain } from './joint-chain.ts';

const deg = Math.PI / 180;
const within = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const v = (p: { x: number; y: number; z: number }) => new Vector3(p.x, p.y, p.z);
const fromAngles = (fall: number, plan: number) => ({ x: Math.cos(fall) * Math.cos(plan), y: Math.cos(fall) * Math.sin(plan), z: -Math.sin(fall) });
const anyAxis = fc.tuple(within(-0.35, 0.35), within(-0.35, 0.35)).map(([fall, plan]) => fromAngles(fall, plan));

/** A mechanism that knows no formula: forks are pairs of pins, and the last shaft is turned until the pins of each cross stand square. */
function blindChain(axes: readonly Vector3[], clockings: readonly number[], firstPins: Vector3): Vector3 {
  let pins = firstPins;
  for (let k = 1; k < axes.length; k += 1) {
    const [into, out] = [axes[k - 1] as Vector3, axes[k] as Vector3];
    if (k > 1) pins = pins.clone().applyAxisAngle(into, clockings[k - 2] as number);
    const zero = new Vector3(0, 0, 1).cross(out).normalize();
    const square = (angle: number): number => zero.clone().applyAxisAngle(out, angle).dot(pins);
    let [lo, hi] = [0, Math.PI]; // half a turn swaps the ends of the pins, so the sign changes once
    const first = square(lo);
    for (let i = 0; i < 60; i += 1) {
      const mid = (lo + hi) / 2;
      if (square(mid) > 0 === first > 0) lo = mid;
      else hi = mid;
    }
    pins = zero.applyAxisAngle(out, lo);
  }
  return pins;
}

/** One joint as the calculators have it. */
const joint = (bend: number) => chainRipple({ bends: [bend], errors: [] });

describe('one joint', () => {
  test('a straight joint passes the speed on unchanged at every turn', () => {
    for (const turn of [0, 0.4, 1, 2, 3]) expect(joint(0).ratioAt(turn)).toBe(1);
  });

  test('published: 1000 rpm through 20° runs between 111.4 and 98.4 rad/s (Bevan, chapter 4, example 1; read in a worked-solution companion)', () => {
    const input = (1000 * 2 * Math.PI) / 60;
    const { highest, lowest } = joint(20 * deg);
    expect(input * highest).toBeCloseTo(111.4, 1);
    expect(input * lowest).toBeCloseTo(98.4, 1);
  });

  test('published: greatest acceleration 1370 rad/s² at 41.43° (the same example)', () => {
    const input = (1000 * 2 * Math.PI) / 60;
    // That text counts the angle from where the ratio is highest.
    const { ratioAt } = joint(20 * deg);
    const speed = (turn: number): number => input * ratioAt(turn);
    let best = { at: 0, size: 0 };
    for (let turn = 0; turn < 90 * deg; turn += 0.005 * deg) {
      const size = Math.abs((speed(turn + 1e-5) - speed(turn - 1e-5)) / 2e-5) * input;
      if (size > best.size) best = { at: turn, size };
    }
    expect(best.size).toBeGreaterThan(1365);
    expect(best.size).toBeLessThan(1375);
    expect(Math.min(best.at / deg, 90 - best.at / deg)).toBeCloseTo(41.43, 0);
  });

  test('published: a total fluctuation of 0.12 needs 19.64° (Khurmi and Gupta, example 9.4; read in a worked-solution companion)', () => {
    const { highest, lowest } = joint(19.64 * deg);
    expect(highest - lowest).toBeCloseTo(0.12, 3);
  });

  test('published: 1200 rpm ± 100 in all needs 16.4°, and runs between 1251 and 1151 rpm (the same, example 9.5)', () => {
    const { highest, lowest } = joint(16.4 * deg);
    expect(Math.round(1200 * highest)).toBe(1251);
    expect(Math.round(1200 * lowest)).toBe(1151);
  });

  test.each([[10, 1.54, 1.52], [15, 3.53, 3.41], [20, 6.42, 6.03], [25, 10.34, 9.37], [30, 15.47, 13.4], [35, 22.08, 18.08]])('at %s° it gains %s %% and loses %s %%', (bend, gain, loss) => {
    const r = joint(bend * deg);
    expect((r.highest - 1) * 100).toBeCloseTo(gain, 1);
    expect((1 - r.lowest) * 100).toBeCloseTo(loss, 1);
  });

  test('45° gains 41 % and loses 29 %, not 50', () => {
    const r = joint(45 * deg);
    expect(r.highest).toBeCloseTo(Math.SQRT2, 12);
    expect(r.lowest).toBeCloseTo(Math.SQRT1_2, 12);
  });

  test('a bend of 90° turns nothing and is refused', () => {
    expect(() => joint(Math.PI / 2)).toThrow(/bend/);
    expect(() => joint(-0.1)).toThrow(/bend/);
  });
});

describe('sweepChain', () => {
  test('one joint follows the published formula at every step', () => {
    fc.assert(fc.property(within(0.02, 0.8), within(-3, 3), (bend, from) => {
      const axes = [fromAngles(0, 0), fromAngles(bend, 0)];
      // The plane of the bend is upright, so the pins' angle from it is counted from −z, clockwise along x.
      const firstPins = { x: 0, y: -Math.sin(from), z: -Math.cos(from) };
      const other = new Vector3(0, 0, -1).applyAxisAngle(new Vector3(1, 0, 0), from);
      expect(other.distanceTo(v({ ...firstPins, y: Math.sin(from) }))).toBeLessThan(1e-12);
      for (const { rim, ratio } of sweepChain({ axes, clockings: [], firstPins: { ...firstPins, y: Math.sin(from) }, steps: 36 })) {
        expect(ratio).toBeCloseTo(jointRatio({ bend, turn: rim + from }), 12);
      }
    }), { numRuns: 40 });
  });

  test('no chain gains a turn on the rim: after 360° in, 360° out, for any axes and clockings', () => {
    fc.assert(fc.property(fc.array(anyAxis, { minLength: 2, maxLength: 6 }), fc.array(within(-3, 3), { minLength: 5, maxLength: 5 }), (axes, clockings) => {
      const sweep = sweepChain({ axes, clockings: clockings.slice(0, axes.length - 2), firstPins: { x: 0.1, y: 0.2, z: 1 }, steps: 720 });
      const mean = sweep.reduce((sum, { ratio }) => sum + ratio, 0) / sweep.length;
      expect(mean).toBeCloseTo(1, 9);
      // The turn summed step by step from the pins agrees with the speed.
      const half = sweep[360] as (typeof sweep)[number];
      expect(half.out).toBeCloseTo(Math.PI, 9);
    }), { numRuns: 60, endOnFailure: true });
  });

  test('two equal joints in one plane with the forks in line turn evenly, parallel or curving on', () => {
    for (const last of [0, 0.7]) {
      const axes = [fromAngles(0, 0), fromAngles(0.35, 0), fromAngles(last, 0)];
      for (const { ratio } of sweepChain({ axes, clockings: [0], firstPins: { x: 0, y: 1, z: 2 }, steps: 72 })) expect(ratio).toBeCloseTo(1, 12);
    }
  });

  test('the same two a quarter turn out of step are as bad as one joint of acos(cos²β)', () => {
    const axes = [fromAngles(0, 0), fromAngles(0.35, 0), fromAngles(0, 0)];
    const ratios = sweepChain({ axes, clockings: [Math.PI / 2], firstPins: { x: 0, y: 0, z: 1 }, steps: 360 }).map(({ ratio }) => ratio);
    expect(Math.max(...ratios)).toBeCloseTo(1 / Math.cos(0.35) ** 2, 12);
  });

  test('agrees with a mechanism whose pins are turned until they are square', () => {
    fc.assert(fc.property(fc.array(anyAxis, { minLength: 2, maxLength: 4 }), fc.array(within(-3, 3), { minLength: 2, maxLength: 2 }), within(0.1, 6), (axes, clockings, rim) => {
      const used = clockings.slice(0, axes.length - 2);
      const three = axes.map(v);
      const column = three[0] as Vector3;
      const box = three[three.length - 1] as Vector3;
      const start = new Vector3(0, 0.3, 1).cross(column).cross(column).negate().normalize();
      const pinsAt = (turn: number) => blindChain(three, used, start.clone().applyAxisAngle(column, turn));
      const step = 1e-4;
      const [before, after] = [pinsAt(rim - step), pinsAt(rim + step)];
      // Pins have no front and back: the short way from one line to the other.
      const turn = Math.atan2(before.clone().cross(after).dot(box), before.dot(after));
      const slow = (turn - Math.PI * Math.round(turn / Math.PI)) / (2 * step);
      const sweep = sweepChain({ axes, clockings: used, firstPins: { ...start.clone().applyAxisAngle(column, rim) }, steps: 36 });
      expect(slow).toBeCloseTo((sweep[0] as { ratio: number }).ratio, 6);
    }), { numRuns: 60, endOnFailure: true });
  });

  test('a chain that does not fit its clockings, or bends by 90°, is a programmer’s error', () => {
    expect(() => sweepChain({ axes: [fromAngles(0, 0), fromAngles(0.1, 0)], clockings: [0], firstPins: { x: 0, y: 0, z: 1 }, steps: 36 })).toThrow(/clockings: expected 0/);
    expect(() => sweepChain({ axes: [fromAngles(0, 0), { x: 0, y: 0, z: 1 }], clockings: [], firstPins: { x: 0, y: 0, z: 1 }, steps: 36 })).toThrow(/axes/);
    expect(() => sweepChain({ axes: [fromAngles(0, 0), fromAngles(0.1, 0)], clockings: [], firstPins: { x: 1, y: 0, z: 0 }, steps: 36 })).toThrow(/direction/);
  });
});
