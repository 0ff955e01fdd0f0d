import { expect, test } from 'vitest';
import { mountLoads, tippingBoltTension } from '../../src/engine/mountLoads.ts';

test('the foot, the sheet and the pivot are in balance: nothing is left over', () => {
  const apart = mountLoads({ controlForce: 450, pedalRatio: 6.2, padBelow: 0.2, mounting: 'apart' });
  expect(apart.push - apart.pivotPull).toBeCloseTo(450, 9);
  expect(apart).toMatchObject({ moment: 0 });
  expect(apart.push).toBeCloseTo(2790, 9);
});

test('moments about the pivot: what the sheet gives back at the clevis undoes the foot at the pad', () => {
  const { push } = mountLoads({ controlForce: 450, pedalRatio: 0.31 / 0.05, padBelow: 0.2, mounting: 'apart' });
  expect(push * 0.05).toBeCloseTo(450 * 0.31, 9);
});

test('on one frame the pedal ratio does not matter to the firewall', () => {
  const at = (pedalRatio: number) => mountLoads({ controlForce: 450, pedalRatio, padBelow: 0.2, mounting: 'one-frame' });
  expect(at(4)).toEqual(at(7));
  expect(at(4)).toEqual({ push: 450, moment: 90, pivotPull: 0 });
});

test('bolts: the moment about the lower row is nothing', () => {
  const { tension } = tippingBoltTension({ push: 2000, moment: 400, rowSpacing: 0.08, boltsPerRow: 2 });
  expect(tension * 2 * 0.08 + 2000 * 0.04).toBeCloseTo(400, 9);
  expect(tension).toBeCloseTo(2000, 9);
});

test('a pad level with the lower row or above it pulls on no bolt', () => {
  expect(tippingBoltTension({ push: 2000, moment: 2000 * 0.04, rowSpacing: 0.08, boltsPerRow: 2 }).tension).toBe(0);
  expect(tippingBoltTension({ push: 2000, moment: 0, rowSpacing: 0.08, boltsPerRow: 2 }).tension).toBe(0);
});

test('negative loads and a ratio of nothing are the programmer’s errors', () => {
  expect(() => mountLoads({ controlForce: -1, pedalRatio: 6, padBelow: 0.2, mounting: 'apart' })).toThrow(/controlForce/);
  expect(() => mountLoads({ controlForce: 1, pedalRatio: 0, padBelow: 0.2, mounting: 'apart' })).toThrow(/pedalRatio/);
  expect(() => tippingBoltTension({ push: 1, moment: 1, rowSpacing: 0, boltsPerRow: 2 })).toThrow(/rowSpacing/);
});
