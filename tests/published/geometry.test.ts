import fc from 'fast-check';
import { lusolve, matrix, multiply } from 'mathjs';
import { describe, expect, test } from 'vitest';
import { movePoint } from '../../src/engine/bodyDrop.ts';
import { segmentDistance } from '../../src/engine/capsule.ts';
import type { Point } from '../../src/engine/capsule.ts';
import { cgByAxleLift } from '../../src/engine/cgHeight.ts';
import { isImpossible } from '../../src/engine/outcome.ts';
import type { Impossible } from '../../src/engine/outcome.ts';

// three ships no types; only what is used here is described.
interface Vector {
  distanceTo: (other: Vector) => number;
}
interface Line {
  distanceSqToLine3: (other: Line) => number;
}
const three = (await import('three' as string)) as {
  Vector3: new (x: number, y: number, z: number) => Vector;
  Line3: new (start: Vector, end: Vector) => Line;
};

function possible<T>(x: T | Impossible): T {
  if (isImpossible(x)) throw new Error(`expected a result, found ${x.impossible}`);
  return x;
}
const range = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const point = (x: number, y: number, z: number): Point => ({ x, y, z });
const sample = {
  a1: point(27.83, 31.74, -26.6), a2: point(13.43, 21.77, 46.81), b1: point(77.54, 7.53, 6.22), b2: point(26.99, 12.39, 11.18),
};
const minus = (p: Point, q: Point) => point(p.x - q.x, p.y - q.y, p.z - q.z);
const dot = (p: Point, q: Point) => p.x * q.x + p.y * q.y + p.z * q.z;
const cross = (p: Point, q: Point) => point(p.y * q.z - p.z * q.y, p.z * q.x - p.x * q.z, p.x * q.y - p.y * q.x);

function byThree(p: { a1: Point; a2: Point; b1: Point; b2: Point }): number {
  const vector = ({ x, y, z }: Point) => new three.Vector3(x, y, z);
  const line = (start: Point, end: Point) => new three.Line3(vector(start), vector(end));
  return Math.sqrt(line(p.a1, p.a2).distanceSqToLine3(line(p.b1, p.b2)));
}

/** Where the two infinite lines come nearest, by solving the two conditions of a right angle. */
function lineParameters(p: { a1: Point; a2: Point; b1: Point; b2: Point }): { s: number; t: number } {
  const u = minus(p.a2, p.a1);
  const v = minus(p.b2, p.b1);
  const w = minus(p.b1, p.a1);
  const [s, t] = lusolve([[dot(u, u), -dot(u, v)], [dot(u, v), -dot(v, v)]], [dot(u, w), dot(v, w)]) as number[][];
  return { s: s?.[0] as number, t: t?.[0] as number };
}

describe('segment distance against the npm library three and a much-copied sample', () => {
  test('the sample pair is 15.651394495590 apart, by the engine and by three (Line3.distanceSqToLine3)', () => {
    expect(segmentDistance(sample).distance).toBeCloseTo(15.65139449559, 12);
    expect(byThree(sample)).toBeCloseTo(15.65139449559, 12);
  });

  test('the same two as infinite lines are 13.2407097 apart, so the ends matter here', () => {
    const normal = cross(minus(sample.a2, sample.a1), minus(sample.b2, sample.b1));
    expect(Math.abs(dot(normal, minus(sample.b1, sample.a1))) / Math.sqrt(dot(normal, normal))).toBeCloseTo(13.2407097, 7);
    const { t } = lineParameters(sample);
    expect(t).toBeGreaterThan(1);
  });

  test('the copied answer 15.826771 is what clamping both line parameters one by one gives: too far, the unsafe side', () => {
    const { s, t } = lineParameters(sample);
    const clamp = (k: number) => Math.min(1, Math.max(0, k));
    const on = (p: Point, q: Point, k: number) => point(p.x + k * (q.x - p.x), p.y + k * (q.y - p.y), p.z + k * (q.z - p.z));
    const gap = minus(on(sample.a1, sample.a2, clamp(s)), on(sample.b1, sample.b2, clamp(t)));
    const copied = Math.hypot(gap.x, gap.y, gap.z);
    expect(copied).toBeCloseTo(15.826771, 6);
    expect(segmentDistance(sample).distance).toBeLessThan(copied);
  });

  test('three agrees on random pairs, and the engine is never the longer one', () => {
    const anyPoint = fc.record({ x: range(-1, 1), y: range(-1, 1), z: range(-1, 1) });
    fc.assert(
      fc.property(fc.record({ a1: anyPoint, a2: anyPoint, b1: anyPoint, b2: anyPoint }), (p) => {
        const ours = segmentDistance(p).distance;
        const theirs = byThree(p);
        expect(ours).toBeLessThanOrEqual(theirs + 1e-12);
        expect(theirs - ours).toBeLessThan(1e-6);
      }),
      { numRuns: 2000 },
    );
  });
});

describe('body drop and axle lift against independent algebra', () => {
  test('a rotation matrix (mathjs) about the front mount moves body points to the same place', () => {
    fc.assert(
      fc.property(range(-0.1, 0.15), range(-0.1, 0.15), range(-3, 1), range(-0.3, 1.5), range(-0.2, 0.3), (dropFront, dropRear, x, z, zMount) => {
        const s = possible(
          movePoint({
            type: 'stock-floor', dropFront, dropRear, xFront: -0.3, xRear: -1.8, zMount, suspensionFront: 0, suspensionRear: 0,
            xFrontAxle: 0, xRearAxle: -2.743, point: { x, y: 0, z, attached: 'body' },
          }),
        );
        const theta = Math.asin((dropRear - dropFront) / 1.5);
        const turned = multiply(
          matrix([[1, 0, -0.3], [0, 1, zMount - dropFront], [0, 0, 1]]),
          matrix([[Math.cos(theta), -Math.sin(theta), 0], [Math.sin(theta), Math.cos(theta), 0], [0, 0, 1]]),
          matrix([[1, 0, 0.3], [0, 1, -zMount], [0, 0, 1]]),
          matrix([[x], [z], [1]]),
        ) as unknown as { toArray: () => number[][] };
        const [[x1], [z1]] = turned.toArray() as [[number], [number]];
        expect(s.x).toBeCloseTo(x1, 12);
        expect(s.z).toBeCloseTo(z1, 12);
      }),
    );
  });

  test('Jazar, Vehicle Dynamics, eq. 2.30, moments with the front low: the equation as printed, solved for the load by mathjs, gives h back', () => {
    // 2F1 + 2F2 = m g and −2F1 [a1 cos φ − (h − R) sin φ] + 2F2 [a2 cos φ + (h − R) sin φ] = 0; loads in kg.
    fc.assert(
      fc.property(range(0.9, 1.6), range(0.9, 1.6), range(0.4, 0.8), range(0.25, 0.38), range(0.1, 0.4), (a1, a2, h, radius, phi) => {
        const mass = 1400;
        const arm = (h - radius) * Math.sin(phi);
        const solved = lusolve(
          [[1, 1], [-(a1 * Math.cos(phi) - arm), a2 * Math.cos(phi) + arm]],
          [mass, 0],
        ) as number[][];
        // As printed, F1 with the shorter arm is the heavier end: the front, when it is the low one.
        const s = possible(
          cgByAxleLift({
            frontLoad: (mass * a2) / (a1 + a2), rearLoad: (mass * a1) / (a1 + a2), wheelbase: a1 + a2, loadedRadius: radius,
            lifts: [{ lift: (a1 + a2) * Math.sin(phi), frontReading: solved[0]?.[0] as number }],
            scaleError: 1, angleError: 0, radiusError: 0,
          }),
        );
        expect(s.cgHeight).toBeCloseTo(h, 9);
      }),
    );
  });
});
