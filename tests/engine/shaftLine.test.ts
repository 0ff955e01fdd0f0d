import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Plane, Vector3 } from 'three';
import { isImpossible } from '../../src/engine/outcome.ts';
import { shaftAxis } from '../../src/engine/shaftAxis.ts';
import { shaftLine } from '../../src/engine/shaftLine.ts';
import type { ShaftEnds, ShaftLine } from '../../src/engine/shaftLine.ts';
import { angleBetween } from '../../src/engine/vector.ts';

const deg = Math.PI / 180;
const level = { x: 1, y: 0, z: 0 };
const at = (x: number, y: number, z: number) => ({ x, y, z });
const within = (min: number, max: number) => fc.double({ min, max, noNaN: true });

function line(ends: Partial<ShaftEnds>): ShaftLine {
  const r = shaftLine({ column: { at: at(0, 0, 0), axis: level }, box: { at: at(0.4, 0, -0.3), axis: level }, joints: 2, jointLength: 0.07, ...ends });
  if (isImpossible(r)) throw new Error(r.impossible);
  return r;
}
const anyEnds = fc.record({ fall: within(-0.6, 0.6), plan: within(-0.5, 0.5), boxFall: within(-0.6, 0.6), boxPlan: within(-0.5, 0.5), x: within(0.3, 0.6), y: within(-0.2, 0.2), z: within(-0.4, 0.1) });

describe('shaftLine', () => {
  test('bends both joints by the slope of the shaft where column and box are level: 3-4-5', () => {
    const r = line({});
    expect(r.upperAngle / deg).toBeCloseTo(36.8699, 4);
    expect(r.lowerAngle).toBeCloseTo(r.upperAngle, 12);
    expect(r.upperLength).toBeCloseTo(0.5, 12);
    expect(r.upperTwist).toBe(0);
  });

  test('a straight line has no bend, no twist and no miss', () => {
    const axis = shaftAxis({ reading: 'along', fall: 30 * deg, plan: 10 * deg }).axis;
    const r = line({ column: { at: at(0, 0, 0), axis }, box: { at: at(axis.x / 2, axis.y / 2, axis.z / 2), axis } });
    for (const x of [r.upperAngle, r.lowerAngle, r.upperTwist, r.miss]) expect(Math.abs(x)).toBeLessThan(1e-12);
  });

  test('one joint takes the whole angle between column and box', () => {
    const axis = shaftAxis({ reading: 'along', fall: 25 * deg, plan: 0 }).axis;
    const r = line({ joints: 1, box: { at: at(0.5, 0, 0), axis } });
    expect(r.lowerAngle / deg).toBeCloseTo(25, 10);
    expect(r.upperAngle).toBe(0);
    expect(r.miss).toBe(0);
    expect(line({ joints: 1 }).miss).toBeCloseTo(0.3, 12);
  });

  test('angles agree with `three`, and no chain bends less in all than its ends ask for', () => {
    fc.assert(fc.property(anyEnds, (p) => {
      const column = { at: at(0, 0, 0), axis: shaftAxis({ reading: 'along', fall: p.fall, plan: p.plan }).axis };
      const box = { at: at(p.x, p.y, p.z), axis: shaftAxis({ reading: 'along', fall: p.boxFall, plan: p.boxPlan }).axis };
      const r = line({ column, box });
      const [c, b] = [column.axis, box.axis].map((v) => new Vector3(v.x, v.y, v.z)) as [Vector3, Vector3];
      const s = new Vector3(p.x, p.y, p.z);
      // Seven digits: `three` takes an arc cosine, which loses the other half near 0.
      expect(r.upperAngle).toBeCloseTo(c.angleTo(s), 7);
      expect(r.lowerAngle).toBeCloseTo(s.angleTo(b), 7);
      expect(r.upperAngle + r.lowerAngle).toBeGreaterThanOrEqual(angleBetween(column.axis, box.axis) - 1e-12);
    }), { numRuns: 100 });
  });

  test('the twist is the angle between the two planes of bend, as `three` measures their normals', () => {
    fc.assert(fc.property(anyEnds, (p) => {
      const column = { at: at(0, 0, 0), axis: shaftAxis({ reading: 'along', fall: p.fall, plan: p.plan }).axis };
      const box = { at: at(p.x, p.y, p.z), axis: shaftAxis({ reading: 'along', fall: p.boxFall, plan: p.boxPlan }).axis };
      const r = line({ column, box });
      fc.pre(r.upperAngle > 0.01 && r.lowerAngle > 0.01);
      const v = (q: { x: number; y: number; z: number }) => new Vector3(q.x, q.y, q.z);
      const [o, s] = [new Vector3(), v(box.at)];
      const first = new Plane().setFromCoplanarPoints(o, v(column.axis), s).normal;
      const second = new Plane().setFromCoplanarPoints(o, s, v(box.axis)).normal;
      expect(Math.abs(Math.cos(r.upperTwist))).toBeCloseTo(Math.abs(first.dot(second)), 9);
      expect(Math.abs(r.upperTwist)).toBeLessThanOrEqual(Math.PI / 2 + 1e-12);
      // Turning the first normal about the shaft by the twist lays it on the second, back or front.
      const turnedNormal = first.clone().applyAxisAngle(s.clone().normalize(), r.upperTwist);
      expect(turnedNormal.cross(second).length()).toBeLessThan(1e-9);
    }), { numRuns: 100 });
  });

  test('a twist to the right is positive for who looks down the shaft', () => {
    // First bend straight down, second to the right (y is left): seen from the rim, down to right is counterclockwise.
    const right = shaftAxis({ reading: 'along', fall: 30 * deg, plan: -60 * deg }).axis;
    const shaft = shaftAxis({ reading: 'along', fall: 30 * deg, plan: 0 }).axis;
    expect(line({ box: { at: at(shaft.x / 2, 0, shaft.z / 2), axis: right } }).upperTwist).toBeLessThan(-0.5);
  });

  test('three joints: the lengths are those of the two pieces, and a middle on the straight line adds no bend', () => {
    const r = line({ joints: 3, middle: at(0.2, 0, -0.15) });
    expect(r.upperLength).toBeCloseTo(0.25, 12);
    expect(r.lowerLength).toBeCloseTo(0.25, 12);
    expect(r.middleAngle).toBeCloseTo(0, 12);
    expect(r.lowerTwist).toBe(0);
  });

  test('points too close for a joint are impossible by what is missing', () => {
    expect(shaftLine({ column: { at: at(0, 0, 0), axis: level }, box: { at: at(0.05, 0, 0), axis: level }, joints: 2, jointLength: 0.07 })).toEqual({ impossible: 'upper-shaft-too-short', by: expect.closeTo(0.02, 12) as number });
    expect(shaftLine({ column: { at: at(0, 0, 0), axis: level }, box: { at: at(0, 0, 0), axis: level }, joints: 2, jointLength: 0.07 })).toEqual({ impossible: 'upper-shaft-too-short', by: 0.07 });
    expect(shaftLine({ column: { at: at(0, 0, 0), axis: level }, box: { at: at(0.4, 0, 0), axis: level }, joints: 3, middle: at(0.39, 0, 0), jointLength: 0.07 })).toMatchObject({ impossible: 'lower-shaft-too-short' });
  });

  test('a caller that forgets the middle or the joint is told so', () => {
    expect(() => line({ joints: 3 })).toThrow(/middle: expected a point/);
    expect(() => line({ jointLength: 0 })).toThrow(/jointLength/);
  });
});
