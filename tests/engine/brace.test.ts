import { expect, test } from 'vitest';
import { braceForce, bucklingLoad, weldShear } from '../../src/engine/brace.ts';

const tube = { length: 0.4, endFactor: 1, outside: 0.01905, bore: 0.01575, modulus: 200e9, yieldStress: 250e6 };

test('the brace undoes the moment, and carries more the more it leans', () => {
  const { level, along } = braceForce({ moment: 400, height: 0.2, angle: Math.PI / 6 });
  expect(level * 0.2).toBeCloseTo(400, 9);
  expect(along * Math.cos(Math.PI / 6)).toBeCloseTo(level, 9);
  expect(braceForce({ moment: 400, height: 0.2, angle: 1.2 }).along).toBeGreaterThan(along);
});

test('a long column is Euler’s: twice the length carries a quarter', () => {
  const long = bucklingLoad({ ...tube, length: 2 });
  expect(long.slender).toBe(true);
  expect(bucklingLoad({ ...tube, length: 4 }).load * 4).toBeCloseTo(long.load, 6);
  expect(long.load).toBeCloseTo((Math.PI ** 2 * 200e9 * (Math.PI / 64) * (0.01905 ** 4 - 0.01575 ** 4)) / 4, 6);
});

test('a short one is never stronger than its metal, and approaches it', () => {
  const yielding = 250e6 * (Math.PI / 4) * (0.01905 ** 2 - 0.01575 ** 2);
  expect(bucklingLoad({ ...tube, length: 1e-4 }).load / yielding).toBeCloseTo(1, 6);
  expect(bucklingLoad(tube).load).toBeLessThan(yielding);
});

test('the two formulas meet, at half the yield stress, with one slope', () => {
  const slenderAt = (length: number) => bucklingLoad({ ...tube, length });
  const radius = Math.sqrt((0.01905 ** 2 + 0.01575 ** 2) / 16);
  const meet = Math.PI * Math.sqrt((2 * 200e9) / 250e6) * radius;
  const [a, b, c] = [slenderAt(meet * 0.9999).load, slenderAt(meet).load, slenderAt(meet * 1.0001).load];
  expect(b / (250e6 * (Math.PI / 4) * (0.01905 ** 2 - 0.01575 ** 2))).toBeCloseTo(0.5, 6);
  expect((a - b) / (b - c)).toBeCloseTo(1, 2);
});

test('held ends carry four times what pinned ends do while slender', () => {
  expect(bucklingLoad({ ...tube, length: 3, endFactor: 0.5 }).load / bucklingLoad({ ...tube, length: 3 }).load).toBeCloseTo(4, 9);
});

test('a weld’s throat times its stress is the load', () => {
  expect(weldShear({ force: 2309, leg: 0.003, length: 0.06 }).stress * 0.003 * Math.SQRT1_2 * 0.06).toBeCloseTo(2309, 6);
});

test('a bore as wide as the tube and a brace square to the push are the programmer’s errors', () => {
  expect(() => bucklingLoad({ ...tube, bore: 0.02 })).toThrow(/bore/);
  expect(() => braceForce({ moment: 1, height: 1, angle: Math.PI / 2 })).toThrow(/angle/);
  expect(() => weldShear({ force: 1, leg: 0, length: 1 })).toThrow(/leg/);
});
