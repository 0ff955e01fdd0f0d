import { demoText } from './demo.ts';
import { entryOf, evaluate, hardProblem } from '../calculators/evaluate.ts';
import { inputKeys } from '../calculators/record.ts';
import type { Feed, Say, Value, Values } from '../calculators/record.ts';
import type { Quantity, Rows } from '../calculators/vocabulary/index.ts';
import { isChoice, isRows } from '../calculators/vocabulary/index.ts';
import { dimensions, echo, editText, formatQuantity, parseQuantity, fromSi, toSi, unitFor, unitOf } from '../units/index.ts';
import { labelsIn, readRows } from './rows.ts';
import type { RowsReading } from './rows.ts';
import { usualNote } from './usual.ts';

export type System = 'us' | 'si';

/**
 * What stands in a field: the text as typed, the unit it means when none is typed with it, the system then in use. A
 * list is one text (rows.ts), its cells without a unit in the units of that system.
 */
export interface Typed {
  readonly text: string;
  readonly unit: string;
  readonly system: System;
  /** Said at the field instead of reading it: a link that lost a value, for example. */
  readonly problem?: string;
  /** The value, where `text` shows it rounded. */
  readonly si?: number;
}

export type Lookup = (key: string) => Typed | undefined;

/** The unit a reader wants to see a value in that he has not typed; it changes no value. */
export type ShownIn = (key: string) => string | undefined;

export interface Field {
  readonly key: string;
  readonly text: string;
  readonly unit: string;
  readonly value?: Value;
  /** Of a list: every row, cell by cell. */
  readonly rows?: RowsReading;
  readonly origin: 'typed' | 'demo' | 'computed';
  /** Title of the calculator a computed value comes from. */
  readonly from?: Feed;
  readonly problem?: string;
  readonly note?: string;
  readonly echo?: string;
}

export type Reading =
  | { readonly state: 'ok'; readonly fields: readonly Field[]; readonly values: Values }
  | { readonly state: 'blank'; readonly fields: readonly Field[]; readonly reason: string };

/** Prints SI values in one unit system. */
export function sayIn(system: System): Say {
  return (si, dimension, digits = 3) => formatQuantity(si, dimension, system, digits);
}

/**
 * Reads every field of a record and, when all can be read, computes it. Never throws on what a reader typed.
 * `read` keeps what has been read: several fields, of several records, may come from one calculator.
 */
export function readRecord(record: Feed, lookup: Lookup, system: System, shownIn: ShownIn = () => undefined, read = new Map<Feed, Reading>()): Reading {
  const fields = inputKeys(record).map((key) => readField(record, key, lookup, system, shownIn, read));
  const broken = fields.filter((field) => field.problem !== undefined);
  if (broken.length > 0) {
    // What a reader typed wrong comes before what only waits for it.
    const typed = broken.filter((field) => field.origin === 'typed');
    const names = (typed.length > 0 ? typed : broken).map((field) => sentenceName(field.key));
    return { state: 'blank', fields, reason: `No result until ${listInWords(names)} ${names.length === 1 ? 'is' : 'are'} put right.` };
  }
  const inputs: Record<string, Value> = {};
  for (const field of fields) inputs[field.key] = field.value as Value;
  const evaluation = evaluate(record, inputs);
  if (!evaluation.ok) return { state: 'blank', fields, reason: evaluation.refusal.refused(sayIn(system)) };
  return { state: 'ok', fields, values: evaluation.values };
}

function readField(record: Feed, key: string, lookup: Lookup, system: System, shownIn: ShownIn, read: Map<Feed, Reading>): Field {
  const entry = entryOf(key);
  const typed = lookup(key);
  if (isRows(entry)) return readList(key, entry, lookup, system);
  if (typed) return isChoice(entry) ? readChoice(key, typed) : readNumber(key, typed, system);
  const demo = demoText(key);
  if (isChoice(entry)) return { key, text: demo ?? '', unit: '', value: demo, origin: 'demo' };
  const wanted = shownIn(key);
  const unit = wanted ?? unitFor(entry.dimension, system);
  if (demo !== undefined) {
    const parsed = parseQuantity(demo, entry.dimension, unit);
    if (!parsed.ok) throw new RangeError(`demo truck, ${key}: expected ${entry.dimension}, found ${demo}`);
    // As the demo truck's file has it, unless the reader wants the other system.
    if (system === 'us' && wanted === undefined) return { key, unit: parsed.unit, value: parsed.si, origin: 'demo', text: parsed.number, echo: echo(parsed, entry.dimension), note: usualNote(entry, parsed.si, parsed.unit) };
    return { key, unit, value: parsed.si, origin: 'demo', ...shown(entry, parsed.si, unit) };
  }
  return readComputed(record, key, entry, unit, lookup, system, read);
}

/** A typed number, of an input or a result, shown in one unit system. */
export function readNumber(key: string, typed: Typed, system: System): Field {
  const entry = entryOf(key) as Quantity;
  return readTyped(key, entry, inSystem(entry, typed, system));
}

/** As typed, or the demo truck's: what a list's text is and under which system it was written. */
function listText(key: string, lookup: Lookup): Typed {
  return lookup(key) ?? { text: demoText(key) ?? '', unit: '', system: 'us' };
}

function readList(key: string, entry: Rows, lookup: Lookup, system: System): Field {
  const typed = listText(key, lookup);
  const rows = readRows(entry, typed.text, typed.system, system, (other) => {
    const of = entryOf(other);
    return isRows(of) ? labelsIn(of, listText(other, lookup).text) : [];
  });
  const problem = typed.problem ?? rows.problem;
  return { key, text: typed.text, unit: '', rows, origin: lookup(key) ? 'typed' : 'demo', problem, value: problem === undefined ? rows.value : undefined };
}

/** 'pedal ratio', but 'the list of pairs of points'. */
function sentenceName(key: string): string {
  const entry = entryOf(key);
  return isRows(entry) ? `the list of ${entry.name}` : entry.name;
}

function readComputed(record: Feed, key: string, entry: Quantity, unit: string, lookup: Lookup, system: System, read: Map<Feed, Reading>): Field {
  const feed = record.feeds?.find((candidate) => (candidate.outputs as readonly string[]).includes(key));
  if (!feed) throw new RangeError(`${record.id}, ${key}: expected a demo value or a feeding calculator, found neither`);
  const reading = read.get(feed) ?? readRecord(feed, lookup, system, undefined, read);
  read.set(feed, reading);
  if (reading.state === 'blank') {
    return { key, text: '', unit, origin: 'computed', from: feed, problem: `This comes from “${feed.title}”, which has no result: ${reading.reason} Put that right or type a value here.` };
  }
  const value = reading.values[key] as number;
  return { key, unit, value, origin: 'computed', from: feed, problem: hardProblem(key, value), ...shown(entry, value, unit, 4) };
}

/** What a field shows of a value nobody typed, to so many digits if it was computed; its value stays exact. */
function shown(entry: Quantity, si: number, unit: string, digits?: number): { text: string; echo: string; note?: string } {
  const own = unitOf(entry.dimension, unit);
  const text = editText(digits === undefined ? si : toSi(Number(fromSi(si, own).toPrecision(digits)), own), entry.dimension, unit);
  const parsed = parseQuantity(text, entry.dimension, unit);
  return { text, echo: parsed.ok ? echo(parsed, entry.dimension) : '', note: usualNote(entry, si, unit) };
}

function readTyped(key: string, entry: Quantity, typed: Typed): Field {
  const base = { key, text: typed.text, unit: typed.unit, origin: 'typed' as const };
  if (typed.problem !== undefined) return { ...base, problem: typed.problem };
  const parsed = parseQuantity(typed.text, entry.dimension, typed.unit);
  if (!parsed.ok) return { ...base, problem: parsed.problem };
  const si = typed.si ?? parsed.si;
  const hard = hardProblem(key, si);
  if (hard !== undefined) return { ...base, problem: `${echo(parsed, entry.dimension) || typed.text}: ${hard}` };
  return { ...base, value: si, echo: echo(parsed, entry.dimension), note: usualNote(entry, si, parsed.unit) };
}

export function knowsUnit(entry: Quantity, unit: string): boolean {
  return dimensions[entry.dimension].units.some(({ id }) => id === unit);
}

/** A value typed under the other system shows in this one's unit. What cannot be read stays as typed. */
function inSystem(entry: Quantity, typed: Typed, system: System): Typed {
  const own = unitFor(entry.dimension, system);
  const { unit } = typed;
  if (!knowsUnit(entry, unit)) return { ...typed, unit: own, problem: `This was saved with the unit “${unit.slice(0, 20)}”, which does not belong here. Type the value again.` };
  if (typed.problem !== undefined || typed.system === system || unit === own) return typed;
  const parsed = parseQuantity(typed.text, entry.dimension, unit);
  return parsed.ok ? { text: editText(parsed.si, entry.dimension, own), unit: own, system, si: parsed.si } : typed;
}

function readChoice(key: string, typed: Typed): Field {
  const problem = typed.problem ?? hardProblem(key, typed.text);
  return { key, text: typed.text, unit: '', value: problem === undefined ? typed.text : undefined, origin: 'typed', problem };
}

function listInWords(names: readonly string[]): string {
  return names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names[names.length - 1]}`;
}
