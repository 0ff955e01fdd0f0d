import { readRecord } from '../../src/build/fields.ts';
import { entryOf, inputKeys } from '../../src/calculators/index.ts';
import type { AnyCalculator, Values } from '../../src/calculators/index.ts';
import type { Value } from '../../src/calculators/record.ts';
import { isChoice, isNumberColumn, isRows } from '../../src/calculators/vocabulary/index.ts';
import type { NumberColumn, Rows, RowValues } from '../../src/calculators/vocabulary/index.ts';

/** Repeatable numbers between 0 and 1 (mulberry32). */
export function randomFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** The demo truck's values for every input, computed ones included. */
export function demoInputs(record: AnyCalculator): Record<string, Value> {
  const reading = readRecord(record, () => undefined, 'us');
  return Object.fromEntries(reading.fields.map((field) => {
    if (field.value === undefined) throw new RangeError(`${record.id}, ${field.key}: expected a demo value, found ${field.problem}`);
    return [field.key, field.value];
  }));
}

/** Inputs spread around the demo truck's, inside the usual and the hard range; choices at random; of lists, now and then a row is missing. */
export function near(record: AnyCalculator, random: () => number, width = 0.35): Values {
  const demo = demoInputs(record);
  const about = (entry: NumberColumn, at: number): number => {
    const { min, max } = entry.hard ?? { min: -Infinity, max: Infinity };
    if (entry.dimension === 'count') return Math.min(max, Math.max(min, at + Math.floor(random() * 3) - 1));
    const reach = entry.usual ? entry.usual.max - entry.usual.min : Math.abs(at);
    return Math.min(max, Math.max(min, at + width * (random() - 0.5) * (at === 0 ? reach : Math.abs(at))));
  };
  return Object.fromEntries(inputKeys(record).map((key): [string, Value] => {
    const entry = entryOf(key);
    if (isChoice(entry)) return [key, pick(Object.keys(entry.options), random)];
    if (!isRows(entry)) return [key, about(entry, demo[key] as number)];
    const rows = (demo[key] as RowValues).map((row) => Object.fromEntries(Object.entries(row).map(([name, cell]) => {
      const column = entry.columns[name];
      return [name, column && isNumberColumn(column) ? about(column, cell as number) : cell];
    })));
    // Rows that others refer to by a label stay.
    const labeled = Object.values(entry.columns).some((column) => 'letters' in column && column.unique);
    const out = labeled || rows.length <= entry.least || random() < 0.7 ? -1 : Math.floor(random() * rows.length);
    return [key, rows.filter((_, k) => k !== out)];
  }));
}

/** Anything inside the hard ranges, their ends more often than chance; lists from the fewest rows to the most, at times all rows alike. */
export function anywhere(record: AnyCalculator, random: () => number): Values {
  const any = (entry: NumberColumn): number => {
    const { min, max } = entry.hard ?? { min: -1e3, max: 1e3 };
    const dice = random();
    const x = dice < 0.1 ? min : dice < 0.2 ? max : dice < 0.3 && min <= 0 && max >= 0 ? 0 : dice < 0.6 ? min + random() ** 3 * (max - min) : min + random() * (max - min);
    return entry.dimension === 'count' ? Math.round(x) : x;
  };
  const labels = new Map<string, string[]>();
  const keys = inputKeys(record);
  // Lists that others refer to come first.
  const refers = (key: string): number => Number(isRows(entryOf(key)) && Object.values((entryOf(key) as Rows).columns).some((column) => 'labelIn' in column));
  return Object.fromEntries([...keys].sort((a, b) => refers(a) - refers(b)).map((key): [string, Value] => {
    const entry = entryOf(key);
    if (isChoice(entry)) return [key, pick(Object.keys(entry.options), random)];
    if (!isRows(entry)) return [key, any(entry)];
    const dice = random();
    const count = dice < 0.2 ? entry.least : dice < 0.3 ? entry.most : entry.least + Math.floor(random() * Math.min(8, entry.most - entry.least + 1));
    const alike = random() < 0.15;
    // A list may refer to itself.
    if (Object.values(entry.columns).some((column) => 'letters' in column)) labels.set(key, Array.from({ length: count }, (_, k) => `p${k}`));
    const row = (k: number): RowValues[number] => Object.fromEntries(Object.entries(entry.columns).flatMap(([name, column]): [string, number | string][] => {
      if (column.optional && random() < 0.4) return [];
      if (isNumberColumn(column)) return [[name, any(column)]];
      if (isChoice(column)) return [[name, pick(Object.keys(column.options), random)]];
      return [[name, 'letters' in column ? `p${k}` : pick(labels.get(column.labelIn) ?? [], random)]];
    }));
    const first = row(0);
    const rows = Array.from({ length: count }, (_, k): RowValues[number] => (alike ? { ...first, ...Object.fromEntries(Object.entries(entry.columns).flatMap(([name, column]) => ('letters' in column && column.unique ? [[name, `p${k}`]] : []))) } : row(k)));
    for (const [name, column] of Object.entries(entry.columns)) if ('letters' in column) labels.set(key, rows.map((of) => of[name] as string));
    return [key, rows];
  }));
}

/** What a generator returns once all its steps are done. */
export function allOf<T>(steps: Generator<void, T>): T {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

function pick<T>(list: readonly T[], random: () => number): T {
  return list[Math.floor(random() * list.length)] as T;
}

