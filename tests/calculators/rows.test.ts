import { describe, expect, test } from 'vitest';
import { chanceOf } from '../../src/calculators/chance.ts';
import { calculatorById, evaluate, hardProblem } from '../../src/calculators/index.ts';
import type { Values } from '../../src/calculators/index.ts';
import { numbersIn, placeName, withNumber } from '../../src/calculators/numbers.ts';
import { firstOrder } from './first-order.ts';
import { inch, mm } from '../../src/units/si.ts';
import { demoInputs } from '../sweep/sample.ts';

const record = calculatorById('drop-points');
const upright: Values = {
  ...demoInputs(record), bodyDropFront: 2 * inch, bodyDropRear: 2 * inch,
  truckPoints: [{ name: 'low', on: 'frame', x: 0, y: 0, z: 0 }, { name: 'high', on: 'body', x: 0, y: 0, z: 20 * inch }],
  pointPairs: [{ from: 'low', to: 'high', kind: 'gap' }],
};
const still = Object.fromEntries(Object.keys(upright).filter((key) => key !== 'truckPoints').map((key) => [key, {}]));

describe('every numeric cell of a list', () => {
  test('is a number of its own, and an empty one is none', () => {
    const cells = numbersIn(record, upright).filter(({ cell }) => cell);
    expect(cells.map(({ key, cell }) => `${key} ${cell?.row} ${cell?.column}`)).toEqual(['truckPoints 0 x', 'truckPoints 0 y', 'truckPoints 0 z', 'truckPoints 1 x', 'truckPoints 1 y', 'truckPoints 1 z']);
    expect(placeName({ key: 'truckPoints', cell: { row: 1, column: 'z' } })).toBe('points of the truck, row 2, z, up');
  });

  test('can be changed without touching the list it came from', () => {
    const place = numbersIn(record, upright).find(({ cell }) => cell?.row === 1 && cell.column === 'z')!;
    const changed = withNumber(upright, place, 1) as unknown as { truckPoints: { z: number }[] };
    expect(changed.truckPoints[1]?.z).toBe(1);
    expect((upright as unknown as { truckPoints: { z: number }[] }).truckPoints[1]?.z).toBe(20 * inch);
  });

  test('errs by itself: two heights of 3 mm each leave their difference off by √2 times 3 mm', () => {
    const before = JSON.stringify(upright);
    const chance = chanceOf(record, upright, { of: 'worstBefore', tolerance: still, draws: 20_000 })!;
    expect((chance.p95 - chance.p5) / (2 * 1.6449 * Math.SQRT2 * 3 * mm)).toBeCloseTo(1, 1);
    const [first, second] = chance.tornado;
    expect([first?.cell?.column, second?.cell?.column]).toEqual(['z', 'z']);
    expect(chance.tornado).toHaveLength(6);
    expect(JSON.stringify(upright), 'the caller’s list is left alone').toBe(before);
  });

  test('counts in the spread as it does in many draws', () => {
    const slanted: Values = { ...upright, bodyDropFront: 6 * inch, bodyDropRear: 6 * inch, truckPoints: [{ name: 'low', on: 'frame', x: 0, y: 0, z: 0 }, { name: 'high', on: 'body', x: 6 * inch, y: 0, z: 8 * inch }], pointPairs: [{ from: 'low', to: 'high', kind: 'shaft' }] };
    const result = evaluate(record, slanted);
    const spread = result.ok ? firstOrder(record, result.values) : undefined;
    const chance = chanceOf(record, slanted)!;
    expect((spread!.high - spread!.low) / (chance.p95 - chance.p5)).toBeCloseTo(1, 1);
    expect(spread!.causes.some(({ cell }) => cell !== undefined)).toBe(true);
  });
});

describe('a list of SI values', () => {
  test('is impossible with too few rows, too many, a cell out of range or one that is missing', () => {
    expect(hardProblem('truckPoints', upright.truckPoints!)).toBeUndefined();
    expect(hardProblem('truckPoints', [])).toMatch(/At least 2/);
    expect(hardProblem('truckPoints', Array.from({ length: 41 }, (_, k) => ({ name: `p${k}`, on: 'body', x: 0, y: 0, z: 0 })))).toMatch(/at most 40/);
    expect(hardProblem('truckPoints', [{ name: 'a', on: 'body', x: 99, y: 0, z: 0 }, { name: 'b', on: 'body', x: 0, y: 0 }])).toMatch(/^row 1, x, forward: the point lies within/);
    expect(hardProblem('truckPoints', [{ name: 'a', on: 'roof', x: 0, y: 0, z: 0 }, { name: 'b', on: 'body', x: 0, y: 0, z: 0 }])).toMatch(/^row 1, rides with: choose one of/);
  });

  test('with a pair that names no point is refused in words', () => {
    const result = evaluate(record, { ...upright, pointPairs: [{ from: 'low', to: 'nowhere', kind: 'gap' }] });
    expect(result.ok || result.refusal.refused(String)).toMatch(/“nowhere”/);
  });
});
