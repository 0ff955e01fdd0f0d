import { expect, test } from 'vitest';
import { isImpossible } from '../../src/engine/outcome.ts';
import { locate } from '../../src/engine/placement.ts';
import { slipsThatShow } from '../../src/engine/placementCheck.ts';
import type { Row3 } from '../../src/engine/symmetric3.ts';

const point: Row3 = [0.1, 0.2, -0.4];
const around: Row3[] = [[-0.5, 0.4, 0.3], [0.6, 0.35, 0.25], [0.2, -0.5, 0.1], [0.05, 0.3, -0.9]];
const away = (a: Row3): number => Math.hypot(a[0] - point[0], a[1] - point[1], a[2] - point[2]);

test('six marks, one on either side along each axis: half of a slip is left to see', () => {
  const six = ([[1, 0, 0], [-1, 0, 0], [0, 1, 0], [0, -1, 0], [0, 0, 1], [0, 0, -1]] as const).map((d): Row3 => [point[0] + d[0], point[1] + d[1], point[2] + d[2]]);
  for (const slip of slipsThatShow({ point, marks: six, show: 0.005 }).slips) expect(slip).toBeCloseTo(0.01, 12);
});

test('three tapes check nothing: any slip goes into the place', () => {
  expect(slipsThatShow({ point, marks: around.slice(0, 3), show: 0.005 }).slips).toEqual([Infinity, Infinity, Infinity]);
});

test('agrees with a place found again from tapes of which one slipped', () => {
  const { slips } = slipsThatShow({ point, marks: around, show: 0.001 });
  around.forEach((_, k) => {
    const slip = slips[k] as number;
    expect(slip).toBeGreaterThanOrEqual(0.001);
    const small = slip / 1e3;
    const r = locate({ references: around.map((from, j) => ({ from, distance: away(from) + (j === k ? small : 0) })) });
    if (isImpossible(r)) throw new Error(r.impossible);
    expect((r.places[0]?.worst as number) / 1e-6).toBeCloseTo(1, 3);
  });
});

test('two tapes side by side check each other: a fifth mark beside the first lowers what must slip to show', () => {
  const beside: Row3 = [around[0]![0] + 0.02, around[0]![1], around[0]![2]];
  const [before] = slipsThatShow({ point, marks: around, show: 0.005 }).slips;
  const [after] = slipsThatShow({ point, marks: [...around, beside], show: 0.005 }).slips;
  expect(after).toBeLessThan(before as number);
});

test('two marks, and a mark on the point, are the programmer’s errors', () => {
  expect(() => slipsThatShow({ point, marks: around.slice(0, 2), show: 0.005 })).toThrow(/marks/);
  expect(() => slipsThatShow({ point, marks: [point, ...around], show: 0.005 })).toThrow(/marks/);
});
