import fc from 'fast-check';
import { Vector3 } from 'three';
import { describe, expect, test } from 'vitest';
import type { Point } from '../../src/engine/capsule.ts';
import { hoseSlack, wheelEnd } from '../../src/engine/hoseSlack.ts';
import { isImpossible } from '../../src/engine/outcome.ts';

const deg = Math.PI / 180;
const point = (x: number, y: number, z: number): Point => ({ x, y, z });
const hose = {
  frame: point(-0.1, 0.46, 0.18), wheel: point(-0.09, 0.66, 0.1), low: point(0, 0.65, -0.01), high: point(-0.01, 0.62, 0.19),
  lockLeft: 32 * deg, lockRight: 36 * deg, airedOut: -0.08, lifted: 0.08, length: 0.33,
};
const solved = (p: Partial<typeof hose> = {}) => {
  const r = hoseSlack({ ...hose, ...p });
  if (isImpossible(r)) throw new Error(`expected a result, found ${r.impossible}`);
  return r;
};
const range = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const near = fc.record({ x: range(-0.3, 0.3), y: range(0.4, 0.9), z: range(-0.2, 0.4) });

describe('a hose to a steered wheel', () => {
  test('the wheel’s end turns as three turns it about the same line, and goes down in the frame’s axes as the frame is lifted', () => {
    for (const steer of [-0.6, 0, 0.3]) {
      const on = new Vector3(hose.low.x, hose.low.y, hose.low.z);
      const axis = new Vector3(hose.high.x, hose.high.y, hose.high.z).sub(on).normalize();
      const expected = new Vector3(hose.wheel.x, hose.wheel.y, hose.wheel.z).sub(on).applyAxisAngle(axis, steer).add(on);
      const end = wheelEnd(hose, steer, 0.05);
      expect([end.x, end.y, end.z + 0.05]).toEqual([expected.x, expected.y, expected.z].map((x) => expect.closeTo(x, 12)));
    }
  });

  test('+ is a turn to the left: a point ahead of an upright kingpin goes left, whichever ball joint is called the upper one', () => {
    for (const [low, high] of [[0, 0.2], [0.2, 0]] as const) {
      const end = wheelEnd({ wheel: point(0.1, 0.6, 0.1), low: point(0, 0.6, low), high: point(0, 0.6, high) }, 90 * deg, 0);
      expect(end.y).toBeCloseTo(0.7, 12);
      expect(end.x).toBeCloseTo(0, 12);
    }
  });

  test('a hose whose frame end stands on the kingpin line keeps its length at every lock', () => {
    const { states } = solved({ frame: point(0, 0.6, 0.5), low: point(0, 0.6, 0), high: point(0, 0.6, 0.2), airedOut: 0, lifted: 0 });
    for (const { distance } of states) expect(distance).toBeCloseTo(states[0]?.distance as number, 12);
  });

  test('there are nine states, and no state on a fine grid of heights and angles is farther or nearer than the two named', () => {
    fc.assert(fc.property(near, near, near, near, range(0, 0.8), range(0, 0.8), range(-0.2, 0.05), range(0.05, 0.2), (frame, wheel, low, high, lockLeft, lockRight, airedOut, lifted) => {
      fc.pre(Math.hypot(high.x - low.x, high.y - low.y, high.z - low.z) > 0.02);
      const p = { ...hose, frame, wheel, low, high, lockLeft, lockRight, airedOut, lifted };
      const r = solved(p);
      expect(r.states.length).toBe(9);
      for (let i = 0; i <= 24; i++) for (let j = 0; j <= 24; j++) {
        const end = wheelEnd(p, -lockRight + ((lockLeft + lockRight) * i) / 24, airedOut + ((lifted - airedOut) * j) / 24);
        const d = Math.hypot(end.x - frame.x, end.y - frame.y, end.z - frame.z);
        expect(d).toBeLessThanOrEqual(r.farthest.distance + 1e-9);
        expect(d).toBeGreaterThanOrEqual(r.nearest.distance - 1e-6);
      }
    }), { numRuns: 150 });
  });

  test('slack is length less distance, and numbers that make no truck are named', () => {
    const { states, farthest } = solved();
    for (const { distance, slack } of states) expect(slack).toBeCloseTo(hose.length - distance, 12);
    expect(farthest.slack).toBe(Math.min(farthest.slack, ...states.map(({ slack }) => slack)));
    expect(hoseSlack({ ...hose, high: hose.low })).toEqual({ impossible: 'ball-joints-coincide', by: 0 });
    expect(hoseSlack({ ...hose, airedOut: 0.2 })).toMatchObject({ impossible: 'heights-crossed' });
    expect(() => hoseSlack({ ...hose, length: 0 })).toThrow(RangeError);
  });
});
