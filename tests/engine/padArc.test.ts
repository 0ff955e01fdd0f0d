import fc from 'fast-check';
import { expect, test } from 'vitest';
import { isImpossible } from '../../src/engine/outcome.ts';
import { padOverFloor } from '../../src/engine/padArc.ts';
import { floorStack, pedalCut } from '../../src/engine/pedalCut.ts';

const inch = 0.0254;
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

test('a pad that hangs forward of straight down already swings away from a level floor and never meets it', () => {
  const forward = { ...base, pivotHeight: 0.345 * Math.cos(0.35) + 0.03, slope: 0, restAngle: 0.35 };
  const { clearance, toContact } = padOverFloor(forward);
  expect(clearance).toBeCloseTo(0.01, 12);
  expect(forward.pivotHeight - base.stack).toBeLessThan(base.edgeArm);
  expect(toContact).toBeUndefined();
  expect(padOverFloor({ ...forward, travel: 0.05 }).clearance).toBeGreaterThan(clearance);
});

test('the smallest clearance on the way is that of the lowest point, once the pad is past it', () => {
  const level = { ...base, pivotHeight: 0.37, slope: 0, stack: 0.02 };
  const past = padOverFloor({ ...level, travel: 0.15 });
  expect(past.least).toBeCloseTo(0.005, 12);
  expect(past.clearance).toBeGreaterThan(past.least);
  fc.assert(fc.property(fc.double({ min: 0, max: 0.3, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true }), fc.double({ min: 0, max: 1.4, noNaN: true }), (travel, part, slope) => {
    expect(padOverFloor({ ...base, slope, travel }).least).toBeLessThanOrEqual(padOverFloor({ ...base, slope, travel: travel * part }).clearance + 1e-12);
  }));
});

test('factory pad 7 in over the bare floor (common practice, no source), then liner, deadener and carpet (invented thicknesses): 6.575 in over the heel, 6.3125 in over loose carpet', () => {
  const layers = [{ thickness: inch / 16, left: 1 }, { thickness: inch / 8, left: 0.9 }, { thickness: inch / 2, left: 0.5 }];
  const { loose, pressed } = floorStack({ layers });
  expect((7 * inch - pressed) / inch).toBeCloseTo(6.575, 12);
  const arm = 0.3;
  const center = padOverFloor({ pivotHeight: 7 * inch + arm, slope: 0, start: 0, padArm: arm, edgeArm: arm, restAngle: 0, stack: loose, travel: 0 });
  expect(center.clearance / inch).toBeCloseTo(6.3125, 12);
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
