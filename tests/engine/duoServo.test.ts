import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { brakeFactor } from '../../src/engine/drum.ts';
import { duoServoFactor } from '../../src/engine/duoServo.ts';
import { isImpossible } from '../../src/engine/outcome.ts';
import type { Impossible } from '../../src/engine/outcome.ts';
import { bisect } from '../../src/engine/roots.ts';

function possible<T>(x: T | Impossible): T {
  if (isImpossible(x)) throw new Error(`expected a result, found ${x.impossible}`);
  return x;
}
const deg = Math.PI / 180;
const range = (min: number, max: number) => fc.integer({ min: 0, max: 1_000_000 }).map((k) => min + ((max - min) * k) / 1_000_000);
const drum = { drumRadius: 0.1143, hingeRadius: 0.09144, applyArm: 0.1778, anchorOffset: 0.01524, startAngle: 35 * deg, endAngle: 145 * deg, friction: 0.3 };
const anyDrum = fc
  .record({ hingeRadius: range(0.07, 0.105), up: range(0.06, 0.085), anchorOffset: range(0, 0.025), startAngle: range(10 * deg, 50 * deg), more: range(60 * deg, 110 * deg), part: range(0.05, 0.9) })
  .map(({ up, more, part, ...d }) => {
    const shape = { drumRadius: 0.1143, ...d, applyArm: d.hingeRadius + up, endAngle: d.startAngle + more };
    const { lockFriction } = possible(duoServoFactor({ ...shape, friction: 1e-6 }));
    return { ...shape, friction: part * lockFriction };
  });

/** What the drum does to one shoe on the right of the center, in coordinates: y up, the drum dragging it down or up. */
function strips({ start, end, radius, friction, down }: { readonly start: number; readonly end: number; readonly radius: number; readonly friction: number; readonly down: boolean }) {
  const n = 4000;
  const sum = { rubbing: 0, across: 0, about: (_y: number): number => 0 };
  const forces: [number, number, number, number][] = [];
  for (let i = 0; i < n; i += 1) {
    const t = start + ((i + 0.5) * (end - start)) / n; // from the line straight down
    const p = (Math.sin(t) * (end - start)) / n;
    const along = down ? -1 : 1;
    const fx = -p * Math.sin(t) + along * friction * p * Math.cos(t);
    const fy = p * Math.cos(t) + along * friction * p * Math.sin(t);
    forces.push([radius * Math.sin(t), -radius * Math.cos(t), fx, fy]);
    sum.rubbing += friction * p;
    sum.across += fx;
  }
  sum.about = (y: number) => forces.reduce((total, [x, py, fx, fy]) => total + x * fy - (py - y) * fx, 0);
  return sum;
}

describe('duoServoFactor', () => {
  test('with both shoe ends equally far from the center and the lining in the middle it is the closed form 2μha/(a − μc)²', () => {
    fc.assert(
      fc.property(range(0.07, 0.1), range(20 * deg, 60 * deg), range(0.05, 0.95), (d, half, part) => {
        const s = (half + Math.sin(2 * half) / 2) / (2 * Math.sin(half));
        const friction = (part * d * s) / 0.1143;
        const own = possible(duoServoFactor({ drumRadius: 0.1143, hingeRadius: d, applyArm: 2 * d, anchorOffset: 0, startAngle: 90 * deg - half, endAngle: 90 * deg + half, friction }));
        const simple = possible(brakeFactor({ type: 'duo-servo', applyArm: 2 * d, normalArm: d * s, frictionArm: 0.1143, friction }));
        for (const key of ['brakeFactor', 'firstFactor', 'secondFactor', 'sensitivity', 'lockFriction'] as const) expect(Math.abs(own[key] / simple[key] - 1)).toBeLessThan(1e-9);
      }),
    );
  });

  test('two free bodies cut in strips, solved by their moments in coordinates, give the same factor', () => {
    fc.assert(
      fc.property(anyDrum, (p) => {
        const [link, tip] = [-p.hingeRadius, p.applyArm - p.hingeRadius];
        const lining = { start: p.startAngle, end: p.endAngle, radius: p.drumRadius, friction: p.friction };
        // Primary, scaled so that its cylinder pushes outward with 1: a push outward at height y has the moment −(y − link) about the link.
        const primary = strips({ ...lining, down: true });
        const k1 = (tip - link) / primary.about(link);
        const push = -(k1 * primary.about(tip)) / (tip - link);
        expect(Math.abs(1 + push + k1 * primary.across)).toBeLessThan(1e-6); // across the shoe the forces cancel
        const anchor = tip + p.anchorOffset;
        const secondary = strips({ ...lining, down: false });
        // About the anchor: the link pushes outward far below, the cylinder a little below.
        const k2 = -(push * (anchor - link) + p.anchorOffset) / secondary.about(anchor);
        const factor = k1 * primary.rubbing + k2 * secondary.rubbing;
        expect(Math.abs(factor / possible(duoServoFactor(p)).brakeFactor - 1)).toBeLessThan(1e-5);
      }),
      { numRuns: 60 },
    );
  });

  test('sensitivity is the slope d ln BF/d ln μ, and it is above that of a disc', () => {
    fc.assert(
      fc.property(anyDrum, (p) => {
        const of = (friction: number) => possible(duoServoFactor({ ...p, friction }));
        const slope = Math.log(of(p.friction * (1 + 1e-5)).brakeFactor / of(p.friction * (1 - 1e-5)).brakeFactor) / 2e-5;
        expect(Math.abs(slope / of(p.friction).sensitivity - 1)).toBeLessThan(1e-4);
        expect(of(p.friction).sensitivity).toBeGreaterThan(1);
      }),
    );
  });

  test('an anchor pin farther out holds the secondary back: 15 mm take a tenth of the factor', () => {
    const at = (anchorOffset: number) => possible(duoServoFactor({ ...drum, anchorOffset })).brakeFactor;
    expect(at(0)).toBeCloseTo(4.3, 2);
    expect(at(0.01524)).toBeCloseTo(3.82, 2);
  });

  test('numbers that cannot be are returned: cylinder below the center, anchor outside the drum, a shoe that locks', () => {
    const low = duoServoFactor({ ...drum, applyArm: 0.08 });
    expect(isImpossible(low) && low.impossible).toBe('cylinder-below-center');
    expect(isImpossible(low) && low.by).toBeCloseTo(0.01144, 9);
    const out = duoServoFactor({ ...drum, anchorOffset: 0.04 });
    expect(isImpossible(out) && out.impossible).toBe('anchor-outside-drum');
    const { lockFriction } = possible(duoServoFactor(drum));
    const locks = duoServoFactor({ ...drum, friction: lockFriction + 0.03 });
    expect(isImpossible(locks) && locks.impossible).toBe('self-locks');
    expect(isImpossible(locks) && locks.by).toBeCloseTo(0.03, 12);
    expect(isImpossible(duoServoFactor({ ...drum, friction: lockFriction }))).toBe(true);
    expect(isImpossible(duoServoFactor({ ...drum, endAngle: 0.1 }))).toBe(true);
    expect(() => duoServoFactor({ ...drum, anchorOffset: -0.01 })).toThrow(/anchorOffset/);
  });
});

/*
 * Shoes that creep. A flat anchor block or an adjuster slot cannot push along the shoe, so the shoe slides until what the
 * drum does to it along that line is nothing: pressure sin θ + β cos θ, and none where that would pull.
 */
describe('a shoe that slides along its end instead of turning on it', () => {
  const [r, d, h, e] = [0.1143, 0.09144, 0.1778, 0.01524];
  function creeping({ from, to, friction, sense, still }: { readonly from: number; readonly to: number; readonly friction: number; readonly sense: 1 | -1; readonly still: boolean }) {
    const means = (beta: number) => {
      const n = 2000;
      let [sum, sine, cosine] = [0, 0, 0];
      for (let i = 0; i < n; i += 1) {
        const t = from + ((i + 0.5) * (to - from)) / n;
        const p = Math.max(0, Math.sin(t) + beta * Math.cos(t));
        sum += p;
        sine += p * Math.sin(t);
        cosine += p * Math.cos(t);
      }
      return { s: sine / sum, m: cosine / sum };
    };
    if (still) return means(0);
    return means(bisect((beta) => { const { s, m } = means(beta); return m - sense * friction * s; }, -12, 12, { tolerance: 1e-9 }));
  }
  const plain = (from: number, to: number, friction: number, still: boolean) => ([1, -1] as const).reduce((total, sense) => {
    const { s, m } = creeping({ from, to, friction, sense, still });
    return total + (friction * h) / (d * s - sense * friction * (r - d * m));
  }, 0);
  const servo = (from: number, to: number, friction: number, still: boolean) => {
    const [u, q] = [h - d, h - d + e];
    const one = creeping({ from, to, friction, sense: 1, still });
    const two = creeping({ from, to, friction, sense: 1, still: true }); // the anchor pin holds the secondary
    const n1 = h / (d * one.s - friction * (r - d * one.m));
    const push = (n1 * (u * one.s + friction * (r + u * one.m))) / h;
    return friction * (n1 + (push * (d + q) + e) / (q * two.s - friction * (r + q * two.m)));
  };

  test.each([
    [0.3, [8, 11.3], [5.5, 9.5]],
    [0.4, [16.7, 21.9], [14, 20.2]],
  ])('at friction %f a leading-trailing drum gives %s %% less, a duo-servo %s %%, for linings of 110 degrees', (friction, plainLoss, servoLoss) => {
    const linings = [[30, 140], [35, 145]] as const;
    linings.forEach(([from, to], k) => {
      const loss = (f: typeof plain) => 100 * (1 - f(from * deg, to * deg, friction, false) / f(from * deg, to * deg, friction, true));
      expect(Math.abs(loss(plain) - (plainLoss[k] as number))).toBeLessThan(0.5);
      expect(Math.abs(loss(servo) - (servoLoss[k] as number))).toBeLessThan(0.5);
      const own = possible(duoServoFactor({ drumRadius: r, hingeRadius: d, applyArm: h, anchorOffset: e, startAngle: from * deg, endAngle: to * deg, friction }));
      expect(Math.abs(servo(from * deg, to * deg, friction, true) / own.brakeFactor - 1)).toBeLessThan(1e-5);
    });
  });
});
