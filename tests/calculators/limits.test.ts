import { expect, test } from 'vitest';
import { calculatorById, evaluate, hardProblem, vocabulary } from '../../src/calculators/index.ts';
import { isNumberColumn, isRows } from '../../src/calculators/vocabulary/index.ts';
import type { Entry, NumberColumn } from '../../src/calculators/vocabulary/index.ts';
import { scalarProblem } from '../../src/calculators/evaluate.ts';
import { dimensions, editText, exactText, parseQuantity } from '../../src/units/index.ts';
import { demoInputs } from '../sweep/sample.ts';

/** Every number that has limits, of fields and of cells. */
const limited: [string, NumberColumn][] = Object.entries(vocabulary as Readonly<Record<string, Entry>>).flatMap(([key, entry]): [string, NumberColumn][] => (
  isRows(entry) ? Object.entries(entry.columns).flatMap(([name, column]): [string, NumberColumn][] => (isNumberColumn(column) ? [[`${key}.${name}`, column]] : [])) : isNumberColumn(entry) ? [[key, entry]] : []
)).filter(([, entry]) => entry.hard);

test('every hard limit, written in any unit it may be shown in and read back, is accepted', () => {
  const refused: string[] = [];
  let looked = 0;
  for (const [key, entry] of limited) for (const limit of [entry.hard!.min, entry.hard!.max]) for (const { id } of dimensions[entry.dimension].units) {
    for (const text of [editText(limit, entry.dimension, id), exactText(limit, entry.dimension, id)]) {
      for (const typed of [text, `${text} ${id}`]) {
        const read = parseQuantity(typed, entry.dimension, id);
        // A count has no unit to write; a slope of 90° is none.
        const problem = read.ok ? scalarProblem(entry, read.si) : read.problem;
        looked++;
        if (problem !== undefined) refused.push(`${key}: ${typed} (${limit}): ${problem}`);
      }
    }
  }
  expect(refused).toEqual([]);
  expect(looked).toBeGreaterThan(2000);
});

test('what is beyond a limit by more than a rounding is refused', () => {
  const accepted = limited.filter(([, { dimension, hard }]) => dimension !== 'count' && hard).flatMap(([key, entry]) => {
    const { min, max } = entry.hard!;
    const beyond = [max + 2e-5 * Math.abs(max) + (max === 0 ? 1e-12 : 0), min - 2e-5 * Math.abs(min) - (min === 0 ? 1e-12 : 0)];
    return beyond.filter((x) => scalarProblem(entry, x) === undefined).map((x) => `${key}: ${x}`);
  });
  expect(accepted).toEqual([]);
});

test('a small least value is not swamped by a large greatest one', () => {
  const wide: NumberColumn = { name: 'x', dimension: 'pressure', hard: { min: 1, max: 1e9, reason: 'outside' } };
  expect(scalarProblem(wide, 0)).toBe('outside');
  expect(scalarProblem(wide, 0.999)).toBe('outside');
  expect(scalarProblem(wide, 1 - 5e-6)).toBeUndefined();
});

test('what came out a hair beyond a limit is put back on it before anything is computed', () => {
  const record = calculatorById('line-pressure');
  const max = 0.98;
  expect(hardProblem('frontShare', max * (1 + 4e-6))).toBeUndefined();
  const [on, beyond] = [max, max * (1 + 4e-6)].map((frontShare) => evaluate(record, { ...demoInputs(record), frontShare }));
  expect(beyond).toEqual(on);
});
