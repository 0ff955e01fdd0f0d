import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isImpossible } from '../../src/engine/outcome.ts';
import type { Impossible } from '../../src/engine/outcome.ts';
import { stoppingDistance } from '../../src/engine/stopping.ts';

const g = 9.80665;
const foot = 0.3048;
const sixtyMph = (60 * 1609.344) / 3600;
const flat = { speed: sixtyMph, rate: 0.8, reactionTime: 1.5, buildUpTime: 0.3, grade: 0 };
// Evenly spread: fc.double would spend most of its trials within a hair of 0.
const range = (min: number, max: number) =>
  fc.integer({ min: 0, max: 1_000_000 }).map((k) => min + ((max - min) * k) / 1_000_000);

function possible<T>(x: T | Impossible): T {
  if (isImpossible(x)) throw new Error(`expected a result, found ${x.impossible}`);
  return x;
}

/** The stop integrated in small steps (Runge–Kutta, 4th order), knowing only the deceleration at each instant. */
function integrate(p: typeof flat): { distance: number; time: number } {
  const slope = Math.atan(p.grade);
  const decel = (t: number) => p.rate * g * Math.cos(slope) * (p.buildUpTime > 0 ? Math.min(1, t / p.buildUpTime) : 1) + g * Math.sin(slope);
  const dt = 1e-4;
  let [t, v, s] = [0, p.speed, 0];
  for (;;) {
    const k1 = decel(t);
    const k2 = decel(t + dt / 2);
    const k4 = decel(t + dt);
    const next = v - (dt * (k1 + 4 * k2 + k4)) / 6;
    if (next <= 0) {
      const part = v / (v - next);
      return { distance: s + 0.5 * v * part * dt, time: t + part * dt };
    }
    s += dt * v - (dt * dt * (k1 + 2 * k2)) / 6;
    v = next;
    t += dt;
  }
}

describe('stoppingDistance', () => {
  test.each([
    [0.6, 201],
    [0.7, 172],
    [0.8, 150],
    [0.9, 134],
  ])('from 60 mph at %f g, brakes biting at once, the truck needs %i ft (derived vector, printed to 1 ft)', (rate, feet) => {
    const s = possible(stoppingDistance({ ...flat, rate, buildUpTime: 0 }));
    expect(Math.abs(s.brakingDistance / foot - feet)).toBeLessThanOrEqual(0.5);
  });

  test('1.5 s of reaction adds 132 ft and 0.3 s of rise 13 ft at 60 mph (derived vector, printed to 1 ft)', () => {
    const s = possible(stoppingDistance(flat));
    expect(Math.abs(s.reactionDistance / foot - 132)).toBeLessThanOrEqual(0.5);
    expect(Math.abs(s.buildUpDistance / foot - 13)).toBeLessThanOrEqual(0.5);
  });

  test('on the flat the whole is v t_r + v t_b/2 − z g t_b²/24 + v²/(2 z g)', () => {
    fc.assert(
      fc.property(range(5, 40), range(0.1, 1.2), range(0, 2.5), range(0, 0.4), (speed, rate, reactionTime, buildUpTime) => {
        fc.pre(speed > (rate * g * buildUpTime) / 2);
        const s = possible(stoppingDistance({ speed, rate, reactionTime, buildUpTime, grade: 0 }));
        const a = rate * g;
        expect(s.stoppingDistance).toBeCloseTo(speed * (reactionTime + buildUpTime / 2) - (a * buildUpTime ** 2) / 24 + speed ** 2 / (2 * a), 9);
        expect(s.buildUpDistance).toBeCloseTo((speed * buildUpTime) / 2 - (a * buildUpTime ** 2) / 24, 9);
        expect(s.time).toBeCloseTo(reactionTime + speed / a + buildUpTime / 2, 9);
      }),
    );
  });

  test('stepping the motion through time gives the same distance and time, on any grade, halting in the rise or after it', () => {
    fc.assert(
      fc.property(range(0.5, 30), range(0.3, 1), range(0.05, 3), range(-0.2, 0.3), (speed, rate, buildUpTime, grade) => {
        const p = { speed, rate, reactionTime: 0, buildUpTime, grade };
        const s = possible(stoppingDistance(p));
        const numeric = integrate(p);
        // Straight-line finish of the last 1e-4 s step, and one kink at the end of the rise: well under 1e-6 m.
        expect(Math.abs(s.brakingDistance - numeric.distance)).toBeLessThan(1e-6);
        expect(Math.abs(s.time - numeric.time)).toBeLessThan(1e-6);
      }),
      { numRuns: 60 },
    );
  });

  test('a truck that creeps stops inside the rise, in the distance of a cubic', () => {
    const s = possible(stoppingDistance({ ...flat, speed: 0.5, buildUpTime: 0.4 }));
    const t = Math.sqrt((2 * 0.5 * 0.4) / (0.8 * g));
    expect(t).toBeLessThan(0.4);
    expect(s.brakingDistance).toBeCloseTo((2 / 3) * 0.5 * t, 12);
    expect(s.time).toBeCloseTo(1.5 + t, 12);
  });

  test('the answer is continuous where the halt slips out of the rise', () => {
    const edge = (0.8 * g * 0.3) / 2;
    const below = possible(stoppingDistance({ ...flat, speed: edge * (1 - 1e-9) }));
    const above = possible(stoppingDistance({ ...flat, speed: edge * (1 + 1e-9) }));
    expect(above.brakingDistance - below.brakingDistance).toBeLessThan(1e-8);
    expect(above.brakingDistance).toBeGreaterThan(below.brakingDistance);
  });

  test('brakes that bite at once turn speed energy into work: ½ v² = (z g cos θ + g sin θ) s', () => {
    for (const grade of [-0.1, 0, 0.1]) {
      const s = possible(stoppingDistance({ ...flat, buildUpTime: 0, grade }));
      const slope = Math.atan(grade);
      expect((0.8 * g * Math.cos(slope) + g * Math.sin(slope)) * s.brakingDistance).toBeCloseTo(0.5 * sixtyMph ** 2, 9);
    }
  });

  test('uphill is shorter than flat and flat shorter than downhill; faster or weaker is longer', () => {
    fc.assert(
      fc.property(range(0, 30), range(0.3, 1), range(0, 1), range(-0.2, 0.2), (speed, rate, buildUpTime, grade) => {
        const at = (change: object) => possible(stoppingDistance({ speed, rate, reactionTime: 1, buildUpTime, grade, ...change })).stoppingDistance;
        const s = at({});
        const slack = 1e-9;
        expect(at({ grade: grade - 0.05 })).toBeGreaterThanOrEqual(s - slack);
        expect(at({ speed: speed + 1 })).toBeGreaterThanOrEqual(s - slack);
        expect(at({ rate: rate * 1.05 })).toBeLessThanOrEqual(s + slack);
        expect(at({ buildUpTime: buildUpTime + 0.1 })).toBeGreaterThanOrEqual(s - slack);
      }),
    );
  });

  test('a hill that pulls harder than the brakes hold is never stopped on, and says by how much', () => {
    const s = stoppingDistance({ ...flat, rate: 0.1, grade: -0.15 });
    const slope = Math.atan(0.15);
    expect(isImpossible(s) && s.impossible).toBe('never-stops');
    expect(isImpossible(s) && s.by).toBeCloseTo(g * (Math.sin(slope) - 0.1 * Math.cos(slope)), 12);
    expect(isImpossible(stoppingDistance({ ...flat, rate: 0 }))).toBe(true);
    expect(isImpossible(stoppingDistance({ ...flat, rate: 0.15, grade: -0.15 }))).toBe(true);
  });

  test('with no brakes at all a hill still stops a truck that climbs it, in v²/(2 g sin θ)', () => {
    const s = possible(stoppingDistance({ speed: 5, rate: 0, reactionTime: 0, buildUpTime: 100, grade: 0.1 }));
    expect(s.brakingDistance).toBeCloseTo(25 / (2 * g * Math.sin(Math.atan(0.1))), 9);
  });

  test('a standing truck needs no distance on the flat, and on a downhill rolls until the brakes have risen', () => {
    const still = possible(stoppingDistance({ ...flat, speed: 0 }));
    expect([still.stoppingDistance, still.buildUpDistance]).toEqual([0, 0]);
    const hill = { ...flat, speed: 0, reactionTime: 0, grade: -0.1 };
    const rolls = possible(stoppingDistance(hill));
    const nearly = possible(stoppingDistance({ ...hill, speed: 1e-9 }));
    expect(rolls.brakingDistance).toBeGreaterThan(0);
    expect(rolls.brakingDistance).toBeCloseTo(nearly.brakingDistance, 8);
  });

  test('a negative time or speed is a mistake of the caller', () => {
    expect(() => stoppingDistance({ ...flat, speed: -1 })).toThrow(/speed/);
    expect(() => stoppingDistance({ ...flat, buildUpTime: -0.1 })).toThrow(/buildUpTime/);
    expect(() => stoppingDistance({ ...flat, grade: NaN })).toThrow(/grade/);
  });
});
