import { entryOf } from '../calculators/evaluate.ts';
import type { AnyCalculator, Say, Values } from '../calculators/record.ts';
import type { Cell } from '../calculators/numbers.ts';
import type { Field } from './fields.ts';
import { isQuantity, isRows } from '../calculators/vocabulary/index.ts';
import type { RowValues } from '../calculators/vocabulary/index.ts';

/** How sure a result is, as it travels with the page: found by src/build/how-sure.ts. SI. */
export interface Sure {
  /** 9 of 10 trucks lie between these. */
  readonly low: number;
  readonly high: number;
  /** Part of the trucks drawn that have no answer. */
  readonly refused: number;
  /** Part of the others in which the record's `happens` does, and the error of counting it. */
  readonly happens?: number;
  readonly error?: number;
  /** The result when one input alone is off, the widest first. */
  readonly bars: readonly Bar[];
  /** How many more inputs move it, less. */
  readonly others: number;
}

export interface Bar {
  readonly key: string;
  readonly cell?: Cell;
  readonly low: number;
  readonly high: number;
}

export const usualDraws = 10_000;

/** The inputs that other calculators give. */
export function computedKeys(fields: readonly Field[]): string[] {
  return fields.filter((field) => field.origin === 'computed').map((field) => field.key);
}

/** The result looked at. */
export function sureOf(record: AnyCalculator): string {
  return (record.howSure?.of ?? record.outputs[0]) as string;
}

/** A quantity's name without what it says in parentheses or of signs, for use inside a sentence. */
export function plainName(key: string): string {
  return plain(entryOf(key).name);
}

const plain = (name: string): string => name.replace(/ \([^)]*\)/g, '').replace(/, [+−±].*$/, '');

/** The same of an input or a cell of a list, by the label the reader gave the row if he gave one: 'column end: z, up'. */
export function barName({ key, cell }: Pick<Bar, 'key' | 'cell'>, values: Values): string {
  const entry = entryOf(key);
  if (!cell || !isRows(entry)) return plainName(key);
  const label = Object.keys(entry.columns).find((name) => 'letters' in (entry.columns[name] as object));
  const row = label && (values[key] as RowValues)[cell.row]?.[label];
  return `${row ?? `${entry.row} ${cell.row + 1}`}: ${plain(entry.columns[cell.column]?.name ?? cell.column)}`;
}

/** How sure, in paragraphs: the spread and what it comes from, the chance of what the record asks about, what was left out. */
export function sureWords(record: AnyCalculator, values: Values, say: Say, sure: Sure | undefined): string[] {
  if (!sure) return ['Not one truck drawn about these numbers has an answer: they stand on the edge of what is possible.'];
  const entry = entryOf(sureOf(record));
  if (!isQuantity(entry)) return [];
  const { draws = usualDraws, happens, held } = record.howSure ?? {};
  const answered = Math.round(draws * (1 - sure.refused));
  const [first, next] = sure.bars;
  const second = first && next && width(next) > width(first) / 2 ? next : undefined;
  const name = plainName(sureOf(record));
  if (!first) return [`Nothing measured here moves the ${name}.`];
  return [
    `${held ? `${held.words}, ` : ''}9 of 10 trucks measured like this have their ${name}${name.includes(',') ? ',' : ''} between ${say(sure.low, entry.dimension)} and ${say(sure.high, entry.dimension)}. The largest part of that comes from ${quoted(first, values)}${second ? `, then from ${quoted(second, values)}: those are the ones` : ': that is the one'} to know better.`,
    ...(sure.refused > 0 ? [`${often(sure.refused, 0, draws)} ${held?.refused?.(values as never, say) ?? 'the numbers have no answer'}; those are left out.`] : []),
    ...(happens && sure.happens !== undefined ? [`${sure.refused > 0 ? 'Of the others: i' : 'I'}${often(sure.happens, sure.error ?? 0, answered).slice(1)} ${happens.words(values as never, say)}.`] : []),
  ];
}

/** A name with commas or a colon in it would run into the sentence. */
function quoted(bar: Bar, values: Values): string {
  const name = barName(bar, values);
  return /[,:]/.test(name) ? `“${name}”` : name;
}

const width = ({ low, high }: Bar): number => high - low;

/** 'In about 66 of 100 trucks measured like this (give or take 1, from counting 10,000)'. Twice the counting error holds 19 times in 20. */
function often(part: number, error: number, of: number): string {
  const counted = of.toLocaleString('en-US');
  if (part === 0 || part === 1) return `In ${part === 0 ? 'none' : 'all'} of ${counted} trucks drawn like this, which makes ${part === 0 ? 'it rare, not impossible:' : 'it likely, not certain:'}`;
  const base = part < 0.015 || part > 0.985 ? 1000 : 100;
  const give = error > 0 ? ` (give or take ${Math.max(1, Math.round(2 * error * base))}, from counting ${counted})` : '';
  const n = Math.round(part * base);
  return `In ${n === 0 ? 'fewer than 1' : n === base ? `more than ${base - 1}` : `about ${n}`} of ${base.toLocaleString('en-US')} trucks measured like this${give}`;
}
