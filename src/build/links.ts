import { entryOf } from '../calculators/evaluate.ts';
import { inputKeys } from '../calculators/record.ts';
import type { AnyCalculator } from '../calculators/record.ts';
import { isQuantity, isRows } from '../calculators/vocabulary/index.ts';
import { editText, parseQuantity, unitFor } from '../units/index.ts';
import type { Field, System, Typed } from './fields.ts';
import { linkRows, rowsFromLink } from './rows.ts';

/** 'frontMasterBore' stands in a link as 'front-master-bore'. */
export function linkName(key: string): string {
  return key.replace(/[A-Z0-9]+/g, (run) => `-${run.toLowerCase()}`);
}

/** Names that a link may carry: this record's inputs and the version. All others are somebody else's. */
function ownNames(record: AnyCalculator): Set<string> {
  return new Set(['v', ...inputKeys(record).map(linkName)]);
}

/** Percent-encodes for a query, leaving the slash of a fraction and the comma between rows readable. */
function encode(text: string): string {
  return encodeURIComponent(text).replaceAll('%2F', '/').replaceAll('%2C', ',').replaceAll('%20', '+');
}

/**
 * The query of a link that keeps its numbers for ever: every input of the record, with units.
 *
 * @param current the query the address has now; its foreign parameters are kept
 */
export function linkQuery(record: AnyCalculator, fields: readonly Field[], current = ''): string {
  const own = ownNames(record);
  const foreign = [...new URLSearchParams(current)].filter(([name]) => !own.has(name));
  const pairs: [string, string][] = [['v', String(record.version)]];
  for (const field of fields) pairs.push([linkName(field.key), linkValue(field)]);
  return `?${[...pairs, ...foreign].map(([name, value]) => `${encode(name)}=${encode(value)}`).join('&')}`;
}

/** A number with the unit it was understood in; what cannot be read goes as it was typed. */
function linkValue(field: Field): string {
  const entry = entryOf(field.key);
  if (isRows(entry)) return field.rows ? linkRows(entry, field.rows) : field.text;
  const text = isQuantity(entry) && field.origin === 'computed' && typeof field.value === 'number' ? editText(field.value, entry.dimension, field.unit) : field.text;
  const parsed = isQuantity(entry) ? parseQuantity(text, entry.dimension, field.unit) : undefined;
  return parsed?.ok ? parsed.number + parsed.unit : field.text.trim();
}

/** The query without what speaks of this record. */
export function withoutLink(record: AnyCalculator, current: string): string {
  const own = ownNames(record);
  const foreign = [...new URLSearchParams(current)].filter(([name]) => !own.has(name));
  return foreign.length === 0 ? '' : `?${foreign.map(([name, value]) => `${encode(name)}=${encode(value)}`).join('&')}`;
}

export interface ReadLink {
  readonly values: ReadonlyMap<string, Typed>;
  /** The link's version is newer than this page knows. */
  readonly newer: boolean;
}

/**
 * Reads the query of a link for one record. Unknown names are ignored; a value that is broken, missing or
 * given twice becomes a problem at its field, keeping what was there. A value without a unit means the US one, whoever
 * reads it. Undefined when the query says nothing of this record.
 */
export function readLink(record: AnyCalculator, query: string): ReadLink | undefined {
  const params = new URLSearchParams(query);
  const keys = inputKeys(record);
  if (!keys.some((key) => params.has(linkName(key)))) return undefined;
  const stated = Number(params.get('v') ?? 1);
  const version = Number.isInteger(stated) && stated >= 1 ? stated : 1;
  let texts = new Map<string, string>();
  const twice = new Set<string>();
  for (const [name, value] of params) {
    if (texts.has(name) && texts.get(name) !== value) twice.add(name);
    if (!texts.has(name)) texts.set(name, value);
  }
  for (let v = version; v < record.version; v++) {
    const upgrade = record.upgrade?.[v];
    if (upgrade) texts = upgrade(texts);
  }
  const values = new Map<string, Typed>();
  for (const key of keys) {
    const entry = entryOf(key);
    const unit = isQuantity(entry) ? unitFor(entry.dimension, 'us') : '';
    const system: System = 'us';
    const text = texts.get(linkName(key));
    if (text === undefined) values.set(key, { text: '', unit, system, problem: 'The link does not carry this value. Type it, or ask the sender.' });
    else if (twice.has(linkName(key))) values.set(key, { text, unit, system, problem: `The link gives this value twice: ${params.getAll(linkName(key)).slice(0, 2).map((t) => t.slice(0, 20)).join(' and ')}. Type the right one.` });
    else if (isRows(entry)) values.set(key, { text: rowsFromLink(entry, text, system), unit, system });
    else {
      const parsed = isQuantity(entry) ? parseQuantity(text, entry.dimension, unit) : undefined;
      values.set(key, parsed?.ok ? { text: parsed.number, unit: parsed.unit, system } : { text, unit, system });
    }
  }
  return { values, newer: version > record.version };
}
