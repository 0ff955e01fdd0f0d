import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chainRipple, leastRipple } from '../../src/engine/clocking.ts';
import { isImpossible } from '../../src/engine/outcome.ts';
import { shaftLine } from '../../src/engine/shaftLine.ts';
import { cross, mix, dot } from '../../src/engine/vector.ts';
import { jointRatio, sweepChain, turned } from './joint-chain.ts';

const deg = Math.PI / 180;
const within = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const fromAngles = (fall: number, plan: number) => ({ x: Math.cos(fall) * Math.cos(plan), y: Math.cos(fall) * Math.sin(plan), z: -Math.sin(fall) });
const bend = within(0, 45 * deg);
const turn = within(-Math.PI, Math.PI);

describe('chainRipple', () => {
  test('one joint is itself', () => {
    fc.assert(fc.property(bend, turn, (b, pins) => {
      const r = chainRipple({ bends: [b], errors: [] });
      const one = jointRatio({ bend: b, turn: pins });
      expect(r.highest).toBeCloseTo(1 / Math.cos(b), 12);
      expect(r.lowest).toBeCloseTo(Math.cos(b), 12);
      expect(r.ratioAt(pins)).toBeCloseTo(one, 12);
    }));
  });

  test('straight joints do nothing however they are clocked', () => {
    const r = chainRipple({ bends: [0, 0, 0], errors: [0.4, -1] });
    expect(r.ripple).toBeCloseTo(0, 15);
    expect(r.equivalent).toBeLessThan(1e-7);
  });

  test('follows the cross products through a real shaft in space, three joints, step by step', () => {
    fc.assert(fc.property(within(-0.4, 0.4), within(-0.4, 0.4), within(-0.15, 0.15), within(-0.15, 0.15), turn, turn, (fall, plan, y, z, c1, c2) => {
      const line = shaftLine({
        column: { at: { x: -0.5, y: 0.36, z: 0.53 }, axis: fromAngles(fall, plan) }, box: { at: { x: 0.05, y: 0.42, z: 0.23 }, axis: fromAngles(0.1, 0.15) }, joints: 3,
        middle: { x: -0.2, y: 0.4 + y, z: 0.38 + z }, jointLength: 0.05,
      });
      if (isImpossible(line)) throw new Error(line.impossible);
      const chain = chainRipple({ bends: [line.upperAngle, line.middleAngle, line.lowerAngle], errors: [c1 - line.upperTwist, c2 - line.lowerTwist] });
      const [column, first] = line.axes as [typeof line.axes[0], typeof line.axes[0]];
      const firstPins = mix(1, first, -dot(first, column), column); // in the plane of the first bend
      fc.pre(line.upperAngle > 0.001);
      for (const { rim, ratio } of sweepChain({ axes: line.axes, clockings: [c1, c2], firstPins, steps: 36 })) expect(ratio).toBeCloseTo(chain.ratioAt(rim), 9);
    }), { numRuns: 100, endOnFailure: true });
  });

  test('the extremes are those of a fine sweep, and lie where it says', () => {
    fc.assert(fc.property(bend, bend, bend, turn, turn, (a, b, c, e1, e2) => {
      const r = chainRipple({ bends: [a, b, c], errors: [e1, e2] });
      const ratios = Array.from({ length: 3600 }, (_, k) => r.ratioAt((k * Math.PI) / 3600));
      expect(Math.max(...ratios) / r.highest).toBeCloseTo(1, 5);
      expect(Math.min(...ratios) / r.lowest).toBeCloseTo(1, 5);
      expect(r.ratioAt(r.quickest)).toBeCloseTo(r.highest, 9);
      expect(r.ratioAt(r.quickest + Math.PI / 2)).toBeCloseTo(r.lowest, 9);
    }), { numRuns: 60, endOnFailure: true });
  });

  test('any chain is one joint: highest times lowest is 1, and its whole curve is that of its equivalent angle', () => {
    fc.assert(fc.property(fc.array(bend, { minLength: 1, maxLength: 5 }), fc.array(turn, { minLength: 4, maxLength: 4 }), turn, (bends, errors, pins) => {
      const r = chainRipple({ bends, errors: errors.slice(0, bends.length - 1) });
      expect(r.highest * r.lowest).toBeCloseTo(1, 12);
      const one = jointRatio({ bend: r.equivalent, turn: pins - r.quickest });
      expect(r.ratioAt(pins) / one).toBeCloseTo(1, 7);
    }), { numRuns: 150, endOnFailure: true });
  });

  test('the mean over a turn is 1', () => {
    const r = chainRipple({ bends: [0.5, 0.3, 0.6], errors: [0.7, 0.2] });
    const mean = Array.from({ length: 720 }, (_, k) => r.ratioAt((k * Math.PI) / 360)).reduce((sum, x) => sum + x, 0) / 720;
    expect(mean).toBeCloseTo(1, 12);
  });

  test('half a turn more on the clocking changes nothing: pins have no front and back', () => {
    const [a, b] = [0.2, 0.2 + Math.PI].map((e) => chainRipple({ bends: [0.3, 0.5], errors: [e] }).ripple) as [number, number];
    expect(a).toBeCloseTo(b, 14);
  });

  test('a chain with the wrong number of errors or a bend of 90° is a programmer’s error', () => {
    expect(() => chainRipple({ bends: [0.1], errors: [0] })).toThrow(/errors: expected 0/);
    expect(() => chainRipple({ bends: [Math.PI / 2], errors: [] })).toThrow(/bend/);
    expect(() => chainRipple({ bends: [0.1, 0.1], errors: [Number.NaN] })).toThrow(/error/);
  });
});

describe('leastRipple', () => {
  test('two equal joints leave nothing, clocked to the twist of their planes', () => {
    const r = leastRipple({ bends: [0.4, 0.4] });
    expect(r.errors).toEqual([0]);
    expect(r.ripple).toBeCloseTo(0, 15);
  });

  test('two unequal joints leave a joint of cos β = cos β_2/cos β_1: 20° and 30° leave 22.8°', () => {
    const { errors } = leastRipple({ bends: [20 * deg, 30 * deg] });
    expect(chainRipple({ bends: [20 * deg, 30 * deg], errors }).equivalent).toBeCloseTo(Math.acos(Math.cos(30 * deg) / Math.cos(20 * deg)), 10);
  });

  test('two joints add like the sides of a hyperbolic triangle', () => {
    fc.assert(fc.property(within(0.02, 0.7), within(0.02, 0.7), turn, (a, b, e) => {
      const [u, w] = [a, b].map((x) => -Math.log(Math.cos(x))) as [number, number];
      const cosh = Math.cosh(u) * Math.cosh(w) - Math.sinh(u) * Math.sinh(w) * Math.cos(2 * e);
      expect(Math.sqrt(1 + chainRipple({ bends: [a, b], errors: [e] }).ripple ** 2)).toBeCloseTo(cosh, 10);
    }));
  });

  test('no clocking on a fine grid does better, for one, two and three joints', () => {
    fc.assert(fc.property(bend, bend, bend, (a, b, c) => {
      expect(leastRipple({ bends: [a] }).ripple).toBeCloseTo(chainRipple({ bends: [a], errors: [] }).ripple, 12);
      const [two, three] = [leastRipple({ bends: [a, b] }).ripple, leastRipple({ bends: [a, b, c] }).ripple];
      for (let i = 0; i < 36; i += 1) {
        const e1 = i * 5 * deg;
        expect(chainRipple({ bends: [a, b], errors: [e1] }).ripple).toBeGreaterThanOrEqual(two - 1e-12);
        for (let j = 0; j < 36; j += 1) expect(chainRipple({ bends: [a, b, c], errors: [e1, j * 5 * deg] }).ripple).toBeGreaterThanOrEqual(three - 1e-7);
      }
    }), { numRuns: 40, endOnFailure: true });
  });

  test('three joints leave nothing if none outweighs the other two, else what it has over them', () => {
    fc.assert(fc.property(bend, bend, bend, (a, b, c) => {
      const sides = [a, b, c].map((x) => -Math.log(Math.cos(x))) as [number, number, number];
      const left = Math.max(0, 2 * Math.max(...sides) - sides[0] - sides[1] - sides[2]);
      const best = leastRipple({ bends: [a, b, c] });
      expect(best.ripple).toBeCloseTo(Math.sinh(left), 10);
      expect(chainRipple({ bends: [a, b, c], errors: best.errors }).ripple, 'what these errors really leave').toBeCloseTo(best.ripple, 7);
    }), { numRuns: 300 });
  });

  test('a mirrored clocking of three joints is as good', () => {
    const bends = [0.3, 0.4, 0.35];
    const { errors } = leastRipple({ bends });
    expect(chainRipple({ bends, errors: errors.map((e) => -e) }).ripple).toBeCloseTo(0, 12);
  });

  test('none or four joints are a programmer’s error', () => {
    expect(() => leastRipple({ bends: [] })).toThrow(/bends/);
    expect(() => leastRipple({ bends: [0, 0, 0, 0] })).toThrow(/bends/);
  });
});

test('turning follows the right hand: x about z goes to y', () => {
  const { y } = turned({ x: 1, y: 0, z: 0 }, { x: 0, y: 0, z: 1 }, Math.PI / 2);
  expect(y).toBeCloseTo(1, 12);
  expect(cross({ x: 1, y: 0, z: 0 }, { x: 0, y: 1, z: 0 })).toEqual({ x: 0, y: 0, z: 1 });
});
