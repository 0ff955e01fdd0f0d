import type { Feed, Refusal, Values } from './record.ts';
import { inputKeys, isRefusal } from './record.ts';
import { isChoice, vocabulary } from './vocabulary/index.ts';
import type { Entry, QuantityKey } from './vocabulary/index.ts';

export type Evaluation =
  | { readonly ok: true; readonly values: Values }
  | { readonly ok: false; readonly refusal: Refusal };

/**
 * Runs a record on SI values and joins inputs and results. A number that is not finite never leaves
 * here: it becomes a refusal that names the result.
 */
export function evaluate(record: Feed, typed: Values): Evaluation {
  const inputs: Record<string, number | string> = {};
  for (const key of inputKeys(record)) inputs[key] = inside(key, typed[key] as number | string);
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
export function hardProblem(key: string, value: number | string): string | undefined {
  const entry = entryOf(key);
  if (isChoice(entry)) return typeof value === 'string' && Object.hasOwn(entry.options, value) ? undefined : `choose one of: ${Object.values(entry.options).join('; ')}`;
  const x = value as number;
  if (entry.dimension === 'count' && !Number.isInteger(x)) return 'type a whole number';
  const hard = entry.hard;
  const slack = hard ? 1e-9 * Math.max(Math.abs(hard.min), Math.abs(hard.max)) : 0;
  return hard && !(x >= hard.min - slack && x <= hard.max + slack) ? hard.reason : undefined;
}

/** A limit typed in other units may come out a hair beyond it: it is put back on the limit. */
function inside(key: string, value: number | string): number | string {
  const entry = entryOf(key);
  return isChoice(entry) || !entry.hard ? value : Math.min(entry.hard.max, Math.max(entry.hard.min, value as number));
}

