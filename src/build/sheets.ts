import { demoText } from './demo.ts';
import { calculatorById, entryOf, inputKeys } from '../calculators/index.ts';
import type { AnyCalculator } from '../calculators/index.ts';
import { isChoice, isNumberColumn, isRows } from '../calculators/vocabulary/index.ts';
import { unitFor, unitOf } from '../units/index.ts';
import type { Dimension } from '../units/index.ts';

/** What a guide's <Sheet> asks for. */
export interface SheetOf {
  readonly title: string;
  readonly calculators: readonly string[];
}

/** One blank to fill in: an input that nothing else computes. */
export interface Line {
  readonly key: string;
  readonly name: string;
  readonly how: string;
  /** The words of a choice, to tick one. */
  readonly options?: readonly string[];
  /** Customary unit and the other one, where they differ. */
  readonly units: readonly string[];
  /** A list's columns, and how many empty rows to print. */
  readonly list?: { readonly columns: readonly { readonly name: string; readonly how: string }[]; readonly blanks: number };
}

export interface SheetGroup {
  readonly title: string;
  readonly lines: readonly Line[];
}

/**
 * The sheet of a guide's text, or undefined. The page of the sheet is built from the text, so that the guide says once
 * what is on it.
 * @throws RangeError for two sheets in one guide, or one that cannot be read
 */
export function sheetIn(body: string | undefined): SheetOf | undefined {
  const found = [...(body ?? '').matchAll(/<Sheet\b([^>]*?)\/>/g)].map((match) => match[1] as string);
  if (found.length === 0) return undefined;
  if (found.length > 1) throw new RangeError(`sheet: expected one in a guide, found ${found.length}`);
  const calculators = [...(/calculators=\{\[([^\]]*)\]\}/.exec(found[0] as string)?.[1] ?? '').matchAll(/'([^']+)'/g)].map((match) => match[1] as string);
  const title = /title="([^"]+)"/.exec(found[0] as string)?.[1];
  if (calculators.length === 0 || title === undefined) throw new RangeError(`sheet: expected calculators={['…']} title="…", found ${found[0]}`);
  return { title, calculators };
}

/** The inputs of these calculators in their order, each once; those that another calculator supplies are left to it. */
export function sheetGroups(ids: readonly string[]): readonly SheetGroup[] {
  const seen = new Set<string>();
  return ids.map(calculatorById).flatMap((record) => record.inputs.map((group) => ({
    title: group.title,
    lines: (group.of as readonly string[]).filter((key) => {
      const fresh = !seen.has(key) && !isComputed(record, key);
      seen.add(key);
      return fresh;
    }).map(lineOf),
  }))).filter((group) => group.lines.length > 0);
}

/** Names of inputs that these calculators take from others: worth no blank under the truck. */
export function computedOn(ids: readonly string[]): readonly string[] {
  return [...new Set(ids.map(calculatorById).flatMap((record) => inputKeys(record).filter((key) => isComputed(record, key))))].map((key) => entryOf(key).name);
}

function isComputed(record: AnyCalculator, key: string): boolean {
  return demoText(key) === undefined && (record.feeds ?? []).some((feed) => (feed.outputs as readonly string[]).includes(key));
}

function lineOf(key: string): Line {
  const entry = entryOf(key);
  if (isChoice(entry)) return { key, name: entry.name, how: entry.measure ?? '', options: Object.values(entry.options), units: [] };
  if (isRows(entry)) {
    const columns = Object.values(entry.columns).map((column) => ({
      name: isNumberColumn(column) ? [column.name, unitsOf(column.dimension).join(' or ')].filter(Boolean).join(', ') : column.name,
      how: isChoice(column) ? Object.values(column.options).join(', ') : column.measure ?? '',
    }));
    return { key, name: entry.name, how: entry.measure, units: [], list: { columns, blanks: Math.min(entry.most, Math.max(8, entry.least)) } };
  }
  return { key, name: entry.name, how: entry.measure ?? '', units: unitsOf(entry.dimension) };
}

function unitsOf(dimension: Dimension): string[] {
  return [...new Set((['us', 'si'] as const).map((system) => unitOf(dimension, unitFor(dimension, system)).label).filter(Boolean))];
}
