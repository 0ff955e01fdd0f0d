import { describe, expect, test } from 'vitest';
import { isImpossible } from '../../src/engine/outcome.ts';
import { shaftAxis } from '../../src/engine/shaftAxis.ts';
import { bestBearing } from '../../src/engine/shaftBearing.ts';
import type { BearingRegion, BestBearing } from '../../src/engine/shaftBearing.ts';
import { shaftLine } from '../../src/engine/shaftLine.ts';
import { angleBetween } from '../../src/engine/vector.ts';
import { randomFrom } from '../sweep/sample.ts';

const deg = Math.PI / 180;
const axis = (fall: number, plan: number) => shaftAxis({ reading: 'along', fall: fall * deg, plan: plan * deg }).axis;
const origin = { x: 0, y: 0, z: 0 };

function found(region: BearingRegion): BestBearing {
  const r = bestBearing(region);
  if (isImpossible(r)) throw new Error(r.impossible);
  return r;
}

describe('bestBearing', () => {
  test('a bend that curves on is shared equally: 70° in all is 23.3° at each joint, and no place could do better', () => {
    const r = found({ column: { at: origin, axis: axis(0, 0) }, box: { at: { x: 0.4, y: 0, z: -0.3 }, axis: axis(70, 0) }, jointLength: 0.07, low: { x: 0, y: -0.2, z: -0.35 }, high: { x: 0.4, y: 0.2, z: 0.1 } });
    expect(r.largest / deg).toBeCloseTo(70 / 3, 3);
    for (const angle of [r.line.upperAngle, r.line.middleAngle, r.line.lowerAngle]) expect(angle / deg).toBeCloseTo(70 / 3, 3);
    expect(r.largest).toBeGreaterThanOrEqual(angleBetween(axis(0, 0), axis(70, 0)) / 3 - 1e-9);
  });

  test('no random place in the box does better, on 12 random trucks', () => {
    const random = randomFrom(11);
    const spread = (from: number, to: number) => from + (to - from) * random();
    const [low, high] = [{ x: -0.4, y: 0.3, z: 0.25 }, { x: -0.1, y: 0.6, z: 0.5 }];
    for (let k = 0; k < 12; k += 1) {
      const column = { at: { x: spread(-0.6, -0.5), y: 0.36, z: spread(0.5, 0.6) }, axis: axis(spread(10, 40), spread(-10, 10)) };
      const box = { at: { x: 0.05, y: spread(0.42, 0.62), z: 0.23 }, axis: axis(spread(0, 30), spread(-15, 15)) };
      const best = found({ column, box, jointLength: 0.07, low, high });
      for (const a of ['x', 'y', 'z'] as const) {
        expect(best.at[a]).toBeGreaterThanOrEqual(low[a]);
        expect(best.at[a]).toBeLessThanOrEqual(high[a]);
      }
      for (let j = 0; j < 1500; j += 1) {
        // Half anywhere, half close to the place found.
        const near = j % 2 ? 10 ** spread(-4, -1) : 1;
        const inside = (a: 'x' | 'y' | 'z') => (near === 1 ? spread(low[a], high[a]) : Math.min(high[a], Math.max(low[a], best.at[a] + near * spread(-0.5, 0.5))));
        const line = shaftLine({ column, box, joints: 3, middle: { x: inside('x'), y: inside('y'), z: inside('z') }, jointLength: 0.07 });
        if (!isImpossible(line)) expect(Math.max(line.upperAngle, line.middleAngle, line.lowerAngle)).toBeGreaterThan(best.largest - 5e-6);
      }
    }
  });

  test('a smaller box never does better, and a box of one point gives that point', () => {
    const region = { column: { at: origin, axis: axis(10, 0) }, box: { at: { x: 0.6, y: 0.06, z: -0.3 }, axis: axis(5, 8) }, jointLength: 0.07 };
    const wide = found({ ...region, low: { x: 0.1, y: -0.1, z: -0.3 }, high: { x: 0.5, y: 0.2, z: 0 } });
    const narrow = found({ ...region, low: { x: 0.2, y: 0.1, z: -0.1 }, high: { x: 0.3, y: 0.2, z: 0 } });
    expect(narrow.largest).toBeGreaterThanOrEqual(wide.largest - 1e-9);
    const point = { x: 0.25, y: 0.02, z: -0.1 };
    expect(found({ ...region, low: point, high: point }).at).toEqual(point);
  });

  test('a box so near the column that no shaft fits is impossible by what is missing', () => {
    const corner = { x: 0.01, y: 0, z: 0 };
    expect(bestBearing({ column: { at: origin, axis: axis(0, 0) }, box: { at: { x: 0.6, y: 0, z: 0 }, axis: axis(0, 0) }, jointLength: 0.07, low: corner, high: { ...corner, x: 0.05 } })).toEqual({ impossible: 'no-place', by: expect.closeTo(0.02, 4) as number });
  });

  test('a box turned inside out is a programmer’s error', () => {
    expect(() => bestBearing({ column: { at: origin, axis: axis(0, 0) }, box: { at: { x: 0.6, y: 0, z: 0 }, axis: axis(0, 0) }, jointLength: 0.07, low: { x: 1, y: 0, z: 0 }, high: { x: 0, y: 0, z: 0 } })).toThrow(/low: expected x/);
  });
});
