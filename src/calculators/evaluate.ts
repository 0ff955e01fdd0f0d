import type { Feed, Refusal, Value, Values } from './record.ts';
import { inputKeys, isRefusal } from './record.ts';
import { isChoice, isNumberColumn, isRows, vocabulary } from './vocabulary/index.ts';
import type { Choice, Column, Entry, NumberColumn, QuantityKey, Rows, RowValues } from './vocabulary/index.ts';

export type Evaluation =
  | { readonly ok: true; readonly values: Values }
  | { readonly ok: false; readonly refusal: Refusal };

/**
 * Runs a record on SI values and joins inputs and results. A number that is not finite never leaves
 * here: it becomes a refusal that names the result.
 */
export function evaluate(record: Feed, typed: Values): Evaluation {
  const inputs: Record<string, Value> = {};
  for (const key of inputKeys(record)) inputs[key] = inside(key, typed[key] as Value);
  const results = record.compute(inputs as never);
  if (isRefusal(results)) return { ok: false, refusal: results };
  for (const key of Object.keys(results)) {
    const value = (results as Values)[key];
    if (typeof value === 'number' && !Number.isFinite(value)) {
      return { ok: false, refusal: { refused: () => `These numbers together leave no finite ${entryOf(key).name}.` } };
    }
  }
  return { ok: true, values: { ...inputs, ...results } };
}

export function entryOf(key: string): Entry {
  const entry = Object.hasOwn(vocabulary, key) ? vocabulary[key as QuantityKey] : undefined;
  if (!entry) throw new RangeError(`quantity: expected a key of the vocabulary, found ${key}`);
  return entry;
}

/** Why one input is impossible on its own, or undefined when it can stand. */
export function hardProblem(key: string, value: Value): string | undefined {
  const entry = entryOf(key);
  return isRows(entry) ? rowsProblem(entry, value as RowValues) : scalarProblem(entry, value as number | string);
}

/**
 * A limit written in another unit has six digits or so (editText in units/format.ts is off by 5e-6 at most), and comes back
 * that much off it: 1 m is 39.3701 in, which is half a micrometer more.
 */
const rounding = 1e-5;

/** The same for a single number or choice, in a field or in a cell. */
export function scalarProblem(entry: Choice | NumberColumn, value: number | string): string | undefined {
  if (isChoice(entry)) return typeof value === 'string' && Object.hasOwn(entry.options, value) ? undefined : `choose one of: ${Object.values(entry.options).join('; ')}`;
  const x = value as number;
  if (entry.dimension === 'count' && !Number.isInteger(x)) return 'type a whole number';
  const hard = entry.hard;
  return hard && !(x >= hard.min - rounding * Math.abs(hard.min) && x <= hard.max + rounding * Math.abs(hard.max)) ? hard.reason : undefined;
}

/** Too few rows or too many, in words. */
export function countProblem({ name, row, least, most }: Rows, count: number): string | undefined {
  if (count > most) return `These are ${count} ${name}, and at most ${most} are possible. Remove ${count - most}.`;
  return count < least ? `At least ${least} ${least === 1 ? `${row} is` : `${name} are`} needed here. Add ${count === 0 ? 'a' : 'another'} ${row}.` : undefined;
}

function rowsProblem(entry: Rows, rows: RowValues): string | undefined {
  const cells = rows.flatMap((row, k) => Object.entries(entry.columns).map(([key, column]) => {
    const problem = cellProblem(column, row[key]);
    return problem && `row ${k + 1}, ${column.name}: ${problem}`;
  }));
  return countProblem(entry, rows.length) ?? cells.find((problem) => problem !== undefined);
}

function cellProblem(column: Column, value: number | string | undefined): string | undefined {
  if (value === undefined) return column.optional ? undefined : 'is missing';
  if (isChoice(column) || isNumberColumn(column)) return scalarProblem(column, value);
  return typeof value === 'string' && value !== '' ? undefined : 'is missing';
}

/** A limit typed in other units may come out a hair beyond it: it is put back on the limit. */
function inside(key: string, value: Value): Value {
  const entry = entryOf(key);
  if (isRows(entry)) return (value as RowValues).map((row) => {
    let kept = row;
    for (const name of Object.keys(row)) {
      const cell = clamped(entry.columns[name] as Column, row[name]);
      if (cell !== row[name]) kept = { ...kept, [name]: cell };
    }
    return kept;
  });
  return clamped(entry, value as number | string) as Value;
}

function clamped(entry: Column, value: number | string | undefined): number | string | undefined {
  return isNumberColumn(entry) && entry.hard && value !== undefined ? Math.min(entry.hard.max, Math.max(entry.hard.min, value as number)) : value;
}
