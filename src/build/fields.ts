import { demoText } from './demo.ts';
import { entryOf, evaluate, hardProblem } from '../calculators/evaluate.ts';
import { inputKeys } from '../calculators/record.ts';
import type { Alarm, Feed, Say, Value, Values } from '../calculators/record.ts';
import type { Quantity, Rows } from '../calculators/vocabulary/index.ts';
import { isChoice, isRows } from '../calculators/vocabulary/index.ts';
import { dimensions, echo, editText, formatIn, formatQuantity, parseQuantity, fromSi, toSi, unitFor, unitOf } from '../units/index.ts';
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
  /** The calculator a computed value comes from. */
  readonly from?: Feed;
  /** The calculator whose value a typed one replaces. */
  readonly instead?: Feed;
  readonly problem?: string;
  /** Of a computed value's problem: where it began, however many calculators away. */
  readonly cause?: Cause;
  /** Dangers and warnings of the calculators a computed value comes from, worst first. */
  readonly alarms?: readonly Warned[];
  readonly note?: string;
  readonly echo?: string;
}

/** Why a calculator has no result: one of its fields, or, without a key, its numbers together. */
export interface Cause {
  readonly in: Feed;
  readonly key?: string;
  readonly problem: string;
}

export interface Warned extends Pick<Alarm<never>, 'caution' | 'level' | 'first'> {
  readonly in: Feed;
}

export type Reading =
  | { readonly state: 'ok'; readonly fields: readonly Field[]; readonly values: Values; readonly alarms: readonly Warned[] }
  | { readonly state: 'blank'; readonly fields: readonly Field[]; readonly reason: string; readonly causes: readonly Cause[] };

/** Prints SI values in one unit system. */
export function sayIn(system: System): Say {
  return (si, dimension, digits = 3) => formatQuantity(si, dimension, system, digits);
}

/** Reads every field of a record and, when all can be read, computes it. Never throws on what a reader typed. */
export function readRecord(record: Feed, lookup: Lookup, system: System, shownIn: ShownIn = () => undefined): Reading {
  return read(record, { lookup, system, shownIn, fed: new Map() });
}

/** What one reading goes by, and the feeding calculators it has read already. */
interface Source {
  readonly lookup: Lookup;
  readonly system: System;
  readonly shownIn: ShownIn;
  readonly fed: Map<Feed, Reading>;
}

function read(record: Feed, source: Source): Reading {
  const { system } = source;
  const fields = inputKeys(record).map((key) => readField(record, key, source));
  const broken = fields.filter((field) => field.problem !== undefined);
  if (broken.length > 0) {
    // What a reader typed wrong comes before what only waits for it.
    const own = broken.filter((field) => field.origin === 'typed');
    const causes = onceEach((own.length > 0 ? own : broken).map(({ cause, key, problem = '' }) => cause ?? { in: record, key, problem }));
    return { state: 'blank', fields, reason: noResult(record, causes), causes };
  }
  const inputs: Record<string, Value> = {};
  for (const field of fields) inputs[field.key] = field.value as Value;
  const evaluation = evaluate(record, inputs);
  if (!evaluation.ok) {
    const reason = evaluation.refusal.refused(sayIn(system));
    return { state: 'blank', fields, reason, causes: [{ in: record, problem: reason }] };
  }
  return { state: 'ok', fields, values: evaluation.values, alarms: worstFirst(fields.flatMap((field) => field.alarms ?? [])) };
}

/** Each once. */
function worstFirst(alarms: readonly Warned[]): Warned[] {
  const each = alarms.filter((alarm, k) => alarms.findIndex((other) => other.in.id === alarm.in.id && other.caution === alarm.caution) === k);
  return [...each.filter(({ level }) => level === 'danger'), ...each.filter(({ level }) => level === 'warning')];
}

/** One truck: a wrong value that two calculators stumble over is one. */
function onceEach(causes: readonly Cause[]): Cause[] {
  return causes.filter((cause, k) => causes.findIndex((other) => (other.key ?? other.in) === (cause.key ?? cause.in)) === k);
}

/** Names where it began, as the reader of `record` has to look for it. */
function noResult(record: Feed, causes: readonly Cause[]): string {
  const [first] = causes as [Cause];
  if (first.key === undefined) return becauseOf(first);
  const names = causes.flatMap((cause) => (cause.key === undefined ? [] : [cause.in === record ? sentenceName(cause.key) : nameIn(cause)]));
  const reason = `No result until ${listInWords(names)} ${names.length === 1 ? 'is' : 'are'} put right`;
  return names.length === 1 && first.in !== record ? stop(`${reason}: ${first.problem}`) : `${reason}.`;
}

const nameIn = (cause: Cause): string => `${sentenceName(cause.key as string)} in “${cause.in.title}”`;

function becauseOf(cause: Cause): string {
  return stop(cause.key === undefined ? `“${cause.in.title}” has no result: ${cause.problem}` : `No value until ${nameIn(cause)} is put right: ${cause.problem}`);
}

/** With a full stop, unless a mark stands there. */
const stop = (text: string): string => (/[.?!]$/.test(text) ? text : `${text}.`);

function readField(record: Feed, key: string, source: Source): Field {
  const { lookup, system, shownIn } = source;
  const entry = entryOf(key);
  const typed = lookup(key);
  if (isRows(entry)) return readList(key, entry, lookup, system);
  if (typed) return isChoice(entry) ? readChoice(key, typed) : { ...readNumber(key, typed, system), instead: feedOf(record, key) };
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
  return readComputed(record, key, entry, unit, source);
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

/** What computes a value that nobody typed and the demo truck does not have. */
function feedOf(record: Feed, key: string): Feed | undefined {
  return demoText(key) === undefined ? record.feeds?.find((candidate) => (candidate.outputs as readonly string[]).includes(key)) : undefined;
}

function readComputed(record: Feed, key: string, entry: Quantity, unit: string, source: Source): Field {
  const feed = feedOf(record, key);
  if (!feed) throw new RangeError(`${record.id}, ${key}: expected a demo value or a feeding calculator, found neither`);
  const reading = source.fed.get(feed) ?? read(feed, { ...source, shownIn: () => undefined });
  source.fed.set(feed, reading);
  if (reading.state === 'blank') {
    const [cause] = reading.causes as [Cause];
    return { key, text: '', unit, origin: 'computed', from: feed, problem: becauseOf(cause), cause };
  }
  const value = reading.values[key] as number;
  const hard = hardProblem(key, value);
  const own = (feed.alarms ?? []).filter((alarm) => alarm.when(reading.values as never)).map(({ caution, level, first }) => ({ caution, level, first, in: feed }));
  const alarms = worstFirst([...reading.alarms, ...own]);
  return { key, unit, value, origin: 'computed', from: feed, alarms, problem: hard && `${formatIn(value, entry.dimension, unit)}: ${hard}`, ...shown(entry, value, unit, 4) };
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

/** A link that was cut leaves thirty fields empty: three are named, or the line would fill a phone. Names have commas of their own. */
function listInWords(names: readonly string[]): string {
  const told = names.length > 4 ? [...names.slice(0, 3), `${names.length - 3} more fields`] : names;
  const between = told.some((name) => name.includes(',')) ? '; ' : ', ';
  return told.length < 2 ? told.join('') : `${told.slice(0, -1).join(between)}${between === '; ' ? ';' : ''} and ${told[told.length - 1]}`;
}
