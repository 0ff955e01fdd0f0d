import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isImpossible } from '../../src/engine/outcome.ts';
import type { Impossible } from '../../src/engine/outcome.ts';
import { pedalAt, pedalStroke } from '../../src/engine/pedal.ts';

const deg = Math.PI / 180;
const pedal = { padArm: 0.31, clevisArm: 0.05, boreOffset: 0.049, rodLength: 0.12, footAngle: 0 };
// Evenly spread: fc.double would spend most of its trials within a hair of 0.
const range = (min: number, max: number) =>
  fc.integer({ min: 0, max: 1_000_000 }).map((k) => min + ((max - min) * k) / 1_000_000);
const anyPedal = fc.record({
  padArm: range(0.25, 0.38), clevisArm: range(0.04, 0.075), boreOffset: range(0.035, 0.08), rodLength: range(0.08, 0.16), footAngle: range(0, 20 * deg),
});
function possible<T>(x: T | Impossible): T {
  if (isImpossible(x)) throw new Error(`expected a result, found ${x.impossible}`);
  return x;
}

describe('pedalAt', () => {
  // Printed to 0.001 of ratio and 0.01 degree.
  test.each([
    [-10, 6.298, 0.11],
    [0, 6.2, 0.48],
    [15, 6.429, -0.34],
  ])('at %i degrees the pedal of the derived vector has its ratio and rod angle', (angle, ratio, rod) => {
    const s = possible(pedalAt({ ...pedal, armAngle: angle * deg }));
    expect(Math.abs(s.ratio - ratio)).toBeLessThanOrEqual(0.0005);
    expect(Math.abs(s.rodAngle / deg - rod)).toBeLessThanOrEqual(0.005);
  });

  test('from −10 to +15 degrees the rod of the derived vector moves 21.62 mm', () => {
    const x = (a: number) => possible(pedalAt({ ...pedal, armAngle: a * deg })).rodPosition;
    expect(Math.abs((x(15) - x(-10)) * 1e3 - 21.62)).toBeLessThanOrEqual(0.005);
  });

  test('the rod closes the triangle: clevis pin to ball seat is always its length, and the seat is on the bore axis', () => {
    fc.assert(
      fc.property(anyPedal, range(-35 * deg, 35 * deg), (p, armAngle) => {
        const s = possible(pedalAt({ ...p, armAngle }));
        const pin = { x: p.clevisArm * Math.sin(armAngle), down: p.clevisArm * Math.cos(armAngle) };
        expect(Math.hypot(s.rodPosition - pin.x, pin.down - p.boreOffset)).toBeCloseTo(p.rodLength, 14);
        expect(Math.atan2(pin.down - p.boreOffset, s.rodPosition - pin.x)).toBeCloseTo(s.rodAngle, 13);
      }),
    );
  });

  test('the ratio is foot travel over piston travel, taken as a small difference', () => {
    fc.assert(
      fc.property(anyPedal, range(-34 * deg, 34 * deg), (p, armAngle) => {
        const h = 1e-5;
        const x = (a: number) => possible(pedalAt({ ...p, armAngle: a })).rodPosition;
        const byMotion = (p.padArm * Math.cos(p.footAngle) * 2 * h) / (x(armAngle + h) - x(armAngle - h));
        expect(Math.abs(possible(pedalAt({ ...p, armAngle })).ratio / byMotion - 1)).toBeLessThan(1e-7);
      }),
    );
  });

  test('moments about the pivot balance: foot × pad arm = rod thrust × its perpendicular distance', () => {
    fc.assert(
      fc.property(anyPedal, range(-35 * deg, 35 * deg), (p, armAngle) => {
        const s = possible(pedalAt({ ...p, armAngle }));
        const thrust = s.ratio / Math.cos(s.rodAngle); // along the rod, for 1 N of foot
        const pin = { x: p.clevisArm * Math.sin(armAngle), down: p.clevisArm * Math.cos(armAngle) };
        const along = { x: Math.cos(s.rodAngle), down: -Math.sin(s.rodAngle) };
        const moment = thrust * (pin.down * along.x - pin.x * along.down);
        expect(moment).toBeCloseTo(p.padArm * Math.cos(p.footAngle), 12);
      }),
    );
  });

  test('where the arm is square to a level rod the ratio is the plain lever ratio', () => {
    expect(possible(pedalAt({ ...pedal, boreOffset: 0.05, armAngle: 0 })).ratio).toBeCloseTo(6.2, 14);
  });

  test('with a rod of endless length the ratio is R_p/(R_c cos φ)', () => {
    expect(possible(pedalAt({ ...pedal, rodLength: 1e6, armAngle: 20 * deg })).ratio).toBeCloseTo(6.2 / Math.cos(20 * deg), 6);
  });

  test('a foot that pushes off the tangent loses cos δ', () => {
    const straight = possible(pedalAt({ ...pedal, armAngle: 0.1 })).ratio;
    expect(possible(pedalAt({ ...pedal, footAngle: 20 * deg, armAngle: 0.1 })).ratio).toBeCloseTo(straight * Math.cos(20 * deg), 13);
  });

  test('a rod too short to reach the bore axis says by how much', () => {
    const s = pedalAt({ ...pedal, boreOffset: 0.2, armAngle: 0 });
    expect(isImpossible(s) && s.impossible).toBe('rod-too-short');
    expect(isImpossible(s) && s.by).toBeCloseTo(0.15 - 0.12, 14);
  });

  test('an arm beyond 35 degrees, on its dead point, or pushed end-on is refused with its amount', () => {
    const beyond = pedalAt({ ...pedal, armAngle: -36 * deg });
    expect(isImpossible(beyond) && beyond.impossible).toBe('arm-beyond-35-degrees');
    expect(isImpossible(beyond) && beyond.by).toBeCloseTo(1 * deg, 12);
    expect(isImpossible(pedalAt({ ...pedal, armAngle: 35 * deg }))).toBe(false);

    const dead = pedalAt({ ...pedal, boreOffset: 0.138, rodLength: 0.1, armAngle: 34 * deg });
    expect(isImpossible(dead) && dead.impossible).toBe('rod-past-dead-point');
    const foot = pedalAt({ ...pedal, footAngle: 95 * deg, armAngle: 0 });
    expect(isImpossible(foot) && foot.impossible).toBe('foot-pulls-off-arm');
  });

  test('a length of nothing is a mistake of the caller', () => {
    expect(() => pedalAt({ ...pedal, clevisArm: 0, armAngle: 0 })).toThrow(/clevisArm/);
    expect(() => pedalAt({ ...pedal, armAngle: NaN })).toThrow(/armAngle/);
  });
});

describe('pedalStroke', () => {
  const swing = { ...pedal, restAngle: -10 * deg, stroke: 0.02162, freePlay: 0 };

  test('21.62 mm of stroke from −10 degrees brings the arm to +15 (derived vector, stroke printed to 0.01 mm)', () => {
    const s = possible(pedalStroke(swing));
    expect(Math.abs(s.fullAngle / deg - 15)).toBeLessThan(0.006); // 0.005 mm over 48 mm per radian
    expect(Math.abs(s.ratioAtRest - 6.298)).toBeLessThanOrEqual(0.0005);
    expect(Math.abs(s.ratioFull - 6.429)).toBeLessThanOrEqual(0.0005);
    expect(s.padTravel).toBeCloseTo(0.31 * (s.fullAngle + 10 * deg), 15);
  });

  test('what the foot puts in, the piston gets out: ∫ i dx over the swing is R_p cos δ × its angle', () => {
    fc.assert(
      fc.property(anyPedal, range(-25 * deg, -5 * deg), range(0.01, 0.025), (p, restAngle, stroke) => {
        const swung = pedalStroke({ ...p, restAngle, stroke, freePlay: 0.001 });
        fc.pre(!isImpossible(swung));
        const s = possible(swung);
        const n = 400;
        let work = 0;
        const at = (k: number) => possible(pedalAt({ ...p, armAngle: restAngle + (k * (s.fullAngle - restAngle)) / n }));
        for (let k = 0; k < n; k += 1) {
          work += 0.5 * (at(k).ratio + at(k + 1).ratio) * (at(k + 1).rodPosition - at(k).rodPosition);
        }
        expect(Math.abs(work / (s.padTravel * Math.cos(p.footAngle)) - 1)).toBeLessThan(1e-5);
        const advanced = at(n).rodPosition - at(0).rodPosition;
        expect(advanced).toBeCloseTo(stroke + 0.001, 12);
      }),
      { numRuns: 40 },
    );
  });

  test('no free play is no free play at the pad; a small one shows there about i times as large', () => {
    expect(possible(pedalStroke(swing)).freePlayAtPad).toBe(0);
    const s = possible(pedalStroke({ ...swing, freePlay: 0.001 }));
    expect(s.freePlayAtPad).toBeGreaterThan(0.0062);
    expect(s.freePlayAtPad).toBeLessThan(s.ratioAtRest * 0.001);
  });

  test('free play comes before the stroke and adds its own swing to it', () => {
    const without = possible(pedalStroke({ ...swing, stroke: 0.02 }));
    const whole = possible(pedalStroke({ ...swing, stroke: 0.018, freePlay: 0.002 }));
    expect(whole.fullAngle).toBeCloseTo(without.fullAngle, 12);
    expect(whole.padTravel).toBeCloseTo(without.padTravel, 12);
  });

  test('no stroke and no free play is a pedal at rest', () => {
    const s = possible(pedalStroke({ ...swing, stroke: 0 }));
    expect(s.padTravel).toBe(0);
    expect(s.ratioFull).toBe(s.ratioAtRest);
    expect(s.ratioFall).toBe(0);
  });

  test('rod angles and the fall of the ratio are the extremes a fine sweep finds', () => {
    fc.assert(
      fc.property(anyPedal, range(-30 * deg, 5 * deg), range(0.005, 0.03), (p, restAngle, stroke) => {
        const s = pedalStroke({ ...p, restAngle, stroke, freePlay: 0.001 });
        fc.pre(!isImpossible(s));
        const r = possible(s);
        const start = possible(pedalAt({ ...p, armAngle: restAngle })).rodPosition;
        const n = 3000;
        let [lo, hi, mid, least] = [Infinity, -Infinity, NaN, Infinity];
        for (let k = 0; k <= n; k += 1) {
          const a = possible(pedalAt({ ...p, armAngle: restAngle + (k * (r.fullAngle - restAngle)) / n }));
          lo = Math.min(lo, a.rodAngle);
          hi = Math.max(hi, a.rodAngle);
          if (a.rodPosition - start >= 0.001 + stroke / 2) {
            if (Number.isNaN(mid)) mid = a.ratio;
            least = Math.min(least, a.ratio);
          }
        }
        expect(r.rodAngleMin).toBeCloseTo(lo, 6);
        expect(r.rodAngleMax).toBeCloseTo(hi, 6);
        expect(r.rodAngleWorst).toBe(Math.max(Math.abs(r.rodAngleMin), Math.abs(r.rodAngleMax)));
        expect(Math.abs(r.ratioMid - mid)).toBeLessThan(0.005);
        expect(Math.abs(r.ratioFall - (1 - least / r.ratioMid))).toBeLessThan(1e-3);
        expect(r.ratioFall).toBeGreaterThanOrEqual(0);
      }),
      { numRuns: 40 },
    );
  });

  test('a pedal that starts well behind square loses ratio where the effort is needed; one past square gains', () => {
    expect(possible(pedalStroke({ ...swing, restAngle: -34 * deg, stroke: 0.025 })).ratioFall).toBeGreaterThan(0.03);
    expect(possible(pedalStroke({ ...swing, restAngle: 2 * deg })).ratioFall).toBe(0);
  });

  test('more stroke takes more pad travel', () => {
    fc.assert(
      fc.property(anyPedal, range(0.005, 0.015), range(1e-4, 0.005), (p, stroke, more) => {
        const at = (x: number) => possible(pedalStroke({ ...p, restAngle: -12 * deg, stroke: x, freePlay: 0.001 })).padTravel;
        expect(at(stroke + more)).toBeGreaterThan(at(stroke));
      }),
      { numRuns: 40 },
    );
  });

  test('a stroke the swing cannot give says how much rod travel is missing', () => {
    const s = pedalStroke({ ...swing, stroke: 0.06, freePlay: 0.001 });
    const end = possible(pedalAt({ ...pedal, armAngle: 35 * deg })).rodPosition;
    const start = possible(pedalAt({ ...pedal, armAngle: -10 * deg })).rodPosition;
    expect(isImpossible(s) && s.impossible).toBe('stroke-out-of-reach');
    expect(isImpossible(s) && s.by).toBeCloseTo(0.061 - (end - start), 12);
  });

  test('a rod that cannot reach the bore at rest is told so; one that jams on the way has a stroke out of reach', () => {
    const atRest = pedalStroke({ ...swing, boreOffset: 0.2 });
    expect(isImpossible(atRest) && atRest.impossible).toBe('rod-too-short');
    // At −30° the pin is 47.6 mm down and the 5 mm rod reaches; at square it is 55 mm down and would not. Before that
    // the arm comes in line with the rod, and the most the rod can advance is where a fine sweep has its highest x.
    const jams = { ...pedal, clevisArm: 0.055, boreOffset: 0.0485, rodLength: 0.005 };
    const onTheWay = pedalStroke({ ...jams, restAngle: -30 * deg, stroke: 0.02, freePlay: 0 });
    const start = possible(pedalAt({ ...jams, armAngle: -30 * deg })).rodPosition;
    let most = start;
    for (let a = -30; a < 0; a += 1e-4) {
      const s = pedalAt({ ...jams, armAngle: a * deg });
      if (!isImpossible(s)) most = Math.max(most, s.rodPosition);
    }
    expect(isImpossible(onTheWay) && onTheWay.impossible).toBe('stroke-out-of-reach');
    expect(isImpossible(onTheWay) && onTheWay.by).toBeCloseTo(0.02 - (most - start), 9);
    const gentle = possible(pedalStroke({ ...jams, restAngle: -30 * deg, stroke: 0.9 * (most - start), freePlay: 0 }));
    expect(gentle.fullAngle).toBeGreaterThan(-30 * deg);
  });

  test('a negative stroke is a mistake of the caller', () => {
    expect(() => pedalStroke({ ...swing, stroke: -0.001 })).toThrow(/stroke/);
  });
});
