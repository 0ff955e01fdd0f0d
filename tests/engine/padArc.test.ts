import fc from 'fast-check';
import { expect, test } from 'vitest';
import { isImpossible } from '../../src/engine/outcome.ts';
import { padOverFloor } from '../../src/engine/padArc.ts';
import { floorStack, pedalCut } from '../../src/engine/pedalCut.ts';

const base = { pivotHeight: 0.42, slope: 0.9, start: 0.02, padArm: 0.315, edgeArm: 0.345, restAngle: -0.2, stack: 0.02, travel: 0 };

test('a level floor right below: pivot height less the arm and the carpet', () => {
  expect(padOverFloor({ ...base, pivotHeight: 0.4, slope: 0, edgeArm: 0.36, restAngle: 0 }).clearance).toBeCloseTo(0.02, 12);
  expect(padOverFloor({ ...base, pivotHeight: 0.4, slope: 0, edgeArm: 0.36, restAngle: 0 }).toContact).toBeUndefined();
});

test('agrees with points on the arc and their distance from the plane', () => {
  fc.assert(fc.property(fc.double({ min: 0, max: 0.2, noNaN: true }), fc.double({ min: 0, max: 1.4, noNaN: true }), (travel, slope) => {
    const angle = base.restAngle + travel / base.padArm;
    const edge = { x: base.edgeArm * Math.sin(angle), z: 0.42 - base.edgeArm * Math.cos(angle) };
    const plain = (edge.x - base.start) * -Math.sin(slope) + edge.z * Math.cos(slope) - base.stack;
    expect(padOverFloor({ ...base, slope, travel }).clearance).toBeCloseTo(plain, 12);
  }));
});

test('at the travel where it meets the floor nothing is left, and before it there is', () => {
  const { toContact, clearance } = padOverFloor(base);
  expect(clearance).toBeGreaterThan(0);
  expect(padOverFloor({ ...base, travel: toContact as number }).clearance).toBeCloseTo(0, 12);
  expect(padOverFloor({ ...base, travel: (toContact as number) * 0.9 }).clearance).toBeGreaterThan(0);
  expect(padOverFloor({ ...base, stack: 0.05 }).toContact).toBeLessThan(toContact as number);
});

test('a cut arm: the foot’s work is the same, push times travel', () => {
  const r = pedalCut({ padArm: 0.31, pedalRatio: 6.2, cut: 0.05 });
  if (isImpossible(r)) throw new Error(r.impossible);
  expect(r.effort * r.travel).toBeCloseTo(1, 12);
  expect(r.ratio).toBeCloseTo(0.26 / 0.05, 12);
  expect(pedalCut({ padArm: 0.31, pedalRatio: 6.2, cut: 0 })).toMatchObject({ ratio: 6.2, effort: 1, travel: 1 });
  expect(pedalCut({ padArm: 0.31, pedalRatio: 6.2, cut: 0.35 })).toMatchObject({ impossible: 'nothing-left' });
});

test('a floor pressed is never thicker than loose', () => {
  expect(floorStack({ layers: [{ thickness: 0.002, left: 1 }, { thickness: 0.003, left: 1 }, { thickness: 0.012, left: 0.5 }] })).toEqual({ loose: 0.017, pressed: 0.011 });
  expect(floorStack({ layers: [] })).toEqual({ loose: 0, pressed: 0 });
  expect(() => floorStack({ layers: [{ thickness: 0.01, left: 1.2 }] })).toThrow(/left/);
});

test('a toe board steeper than a wall is the programmer’s error', () => {
  expect(() => padOverFloor({ ...base, slope: 2 })).toThrow(/slope/);
});
