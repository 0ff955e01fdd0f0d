import { scalarProblem, countProblem } from '../calculators/evaluate.ts';
import { isChoice, isNumberColumn } from '../calculators/vocabulary/index.ts';
import type { Column, LabelColumn, NumberColumn, Rows, RowValues } from '../calculators/vocabulary/index.ts';
import { echo, exactText, parseQuantity, unitFor, unitOf } from '../units/index.ts';
import type { System } from '../units/index.ts';
import { usualNote } from './usual.ts';

/**
 * A list as one text: a comma between rows, a low line between cells, `20lbf_180psi_95psi,40lbf_360psi_190psi`. So the
 * store and the links carry it as they carry a number. Where a cell itself holds such a sign it is written ~1 for _,
 * ~2 for a comma, ~0 for ~.
 */
export function encodeRows(rows: readonly (readonly string[])[]): string {
  return rows.map((cells) => cells.map((cell) => cell.replace(/[~_,]/g, (sign) => `~${'~_,'.indexOf(sign)}`)).join('_')).join(',');
}

/** The cells of each row, as many as the text has. Any text is some list; nothing in it is lost. */
export function decodeRows(text: string): string[][] {
  return text === '' ? [] : text.split(',').map((row) => row.split('_').map((cell) => cell.replace(/~([012])/g, (_, k: string) => '~_,'[Number(k)] as string)));
}

/** As many cells as the list has columns: what is too much stays in the last one, where it is seen. */
export function fitRows(entry: Rows, rows: readonly (readonly string[])[]): string[][] {
  const wide = Object.keys(entry.columns).length;
  return rows.map((cells) => Array.from({ length: wide }, (_, k) => (k === wide - 1 ? cells.slice(k).join('_') : (cells[k] ?? ''))));
}

export interface CellReading {
  readonly column: string;
  /** As typed, or in the unit of the reader's system where it was typed under the other one. */
  readonly text: string;
  readonly value?: number | string;
  readonly problem?: string;
  readonly note?: string;
  readonly echo?: string;
}

export interface RowReading {
  readonly cells: readonly CellReading[];
  /** Nothing is typed in it: it does not count. */
  readonly empty: boolean;
  /** What it still lacks, in words. */
  readonly lacks?: string;
}

export interface RowsReading {
  readonly rows: readonly RowReading[];
  /** What a cell's number without a unit means. */
  readonly system: System;
  /** For a column of references: what it can refer to. */
  readonly labels: Readonly<Record<string, readonly string[]>>;
  readonly value?: RowValues;
  /** The first thing that is wrong, with its row and column. */
  readonly problem?: string;
}

/** A list of one hostile link could fill the page: so many rows more than it may have are shown, and all are kept. */
export const shownBeyond = 10;

/** The labels that other lists may refer to. */
export type LabelsOf = (key: string) => readonly string[];

/** A name as it counts: control signs out, spaces one. */
const tidyLabel = (text: string): string => text.replace(/[\p{Cc}\u200b-\u200f\u2028-\u202e\u2060-\u2069]/gu, ' ').replace(/\s+/g, ' ').trim();
const sameLabel = (text: string): string => tidyLabel(text).toLowerCase();

/** The labels of a list's rows as typed, in order. */
export function labelsIn(entry: Rows, text: string): string[] {
  const at = Object.values(entry.columns).findIndex((column) => 'letters' in column);
  return fitRows(entry, decodeRows(text)).map((cells) => tidyLabel(cells[at] ?? '')).filter((label) => label !== '');
}

/** What was read last of each list: a list is read anew for every calculator that uses it, at every keystroke. */
const lastRead = new WeakMap<Rows, { readonly of: string; readonly reading: RowsReading }>();

/**
 * Reads every cell as a field is read. A cell without a unit is in the unit of the system it was typed under. The same
 * text gives the same object as long as no other was read between.
 */
export function readRows(entry: Rows, text: string, typedIn: System, system: System, labelsOf: LabelsOf = () => []): RowsReading {
  const columns = Object.entries(entry.columns);
  const labels = Object.fromEntries(columns.flatMap(([key, column]) => ('labelIn' in column ? [[key, labelsOf(column.labelIn)]] : [])));
  const of = JSON.stringify([text, typedIn, system, labels]);
  const known = lastRead.get(entry);
  if (known?.of === of) return known.reading;
  const about: About = { typedIn, system, own: labelsIn(entry, text).slice(0, entry.most + shownBeyond).map(sameLabel) };
  const all = fitRows(entry, decodeRows(text));
  const blank = (cells: readonly string[]): boolean => cells.every((cell) => cell.trim() === '');
  const count = all.filter((cells) => !blank(cells)).length;
  // Of a list with far too many rows the rest is kept, but not read: it would hold up every keystroke.
  const read = count > entry.most ? entry.most + shownBeyond : all.length;
  const rows = all.map((cells, row): RowReading => {
    if (row >= read || blank(cells)) return { empty: blank(cells), cells: columns.map(([column], k) => ({ column, text: cells[k] as string })) };
    const lacking = columns.filter(([, column], k) => !column.optional && (cells[k] as string).trim() === '').map(([, column]) => column.name);
    return {
      empty: false,
      lacks: lacking.length > 0 ? `still lacks ${lacking.join('; ')}` : undefined,
      cells: columns.map(([key, column], k) => ({ column: key, ...readCell(column, cells[k] as string, about, labels[key] ?? []) })),
    };
  });
  const full = rows.filter((row) => !row.empty);
  const problem = countProblem(entry, count) ?? firstProblem(entry, rows);
  const value = full.map(({ cells }) => Object.fromEntries(cells.flatMap((cell) => (cell.value === undefined ? [] : [[cell.column, cell.value]]))));
  const reading: RowsReading = { rows, system, labels, ...(problem === undefined ? { value } : { problem }) };
  lastRead.set(entry, { of, reading });
  return reading;
}

function firstProblem(entry: Rows, rows: readonly RowReading[]): string | undefined {
  for (const [k, { cells, lacks }] of rows.entries()) {
    const wrong = cells.find((cell) => cell.problem !== undefined);
    if (wrong) return `Row ${k + 1}, ${(entry.columns[wrong.column] as Column).name}: ${wrong.problem}.`;
    if (lacks !== undefined) return `Row ${k + 1} ${lacks}.`;
  }
  return undefined;
}

interface About {
  readonly typedIn: System;
  readonly system: System;
  /** The labels of this list, for one that must not come twice. */
  readonly own: readonly string[];
}

function readCell(column: Column, text: string, about: About, labels: readonly string[]): Omit<CellReading, 'column'> {
  if (text.trim() === '') return { text };
  if (isNumberColumn(column)) return readNumber(column, text, about);
  if (isChoice(column)) return readOption(column.options, text);
  return 'letters' in column ? readLabel(column, text, about) : readReference(text, labels);
}

function readNumber(column: NumberColumn, text: string, { typedIn, system }: About): Omit<CellReading, 'column'> {
  const { dimension } = column;
  const parsed = parseQuantity(text, dimension, unitFor(dimension, typedIn));
  if (!parsed.ok) return { text, problem: parsed.problem };
  const other = typedIn !== system && !parsed.typedUnit && unitFor(dimension, system) !== parsed.unit;
  const shown = other ? exactText(parsed.si, dimension, unitFor(dimension, system)) : text;
  const again = other ? parseQuantity(shown, dimension, unitFor(dimension, system)) : parsed;
  const hard = scalarProblem(column, parsed.si);
  if (hard !== undefined) return { text: shown, problem: `${echo(again, dimension) || shown}: ${hard}` };
  return { text: shown, value: parsed.si, echo: echo(again, dimension), note: usualNote(column, parsed.si, again.ok ? again.unit : parsed.unit) };
}

function readOption(options: Readonly<Record<string, string>>, text: string): Omit<CellReading, 'column'> {
  const typed = sameLabel(text);
  const value = Object.keys(options).find((key) => key.toLowerCase() === typed) ?? Object.keys(options).find((key) => sameLabel(options[key] as string) === typed);
  return value === undefined ? { text, problem: `${short(text)} is none of: ${Object.values(options).join('; ')}` } : { text: value, value };
}

function readLabel(column: LabelColumn, text: string, { own }: About): Omit<CellReading, 'column'> {
  const value = tidyLabel(text);
  if (value.length > column.letters) return { text, problem: `${short(value)} is longer than ${column.letters} letters` };
  const twice = column.unique && own.filter((label) => label === value.toLowerCase()).length > 1;
  return twice ? { text, problem: `${value} is there twice, and each needs a name of its own` } : { text, value };
}

function readReference(text: string, labels: readonly string[]): Omit<CellReading, 'column'> {
  const wanted = sameLabel(text);
  const value = labels.find((label) => label.toLowerCase() === wanted);
  return value === undefined ? { text, problem: `there is no ${short(text)}; ${labels.length === 0 ? 'no names are given yet' : `the names are ${labels.slice(0, 12).join(', ')}${labels.length > 12 ? ' and more' : ''}`}` } : { text, value };
}

const short = (text: string): string => (text.length > 30 ? `${text.slice(0, 30)}…` : text);

/** A cell as a link carries it: a number with the unit it was understood in, all else as it was typed. */
export function linkCell(column: Column, text: string, system: System): string {
  const parsed = isNumberColumn(column) ? parseQuantity(text, column.dimension, unitFor(column.dimension, system)) : undefined;
  return parsed?.ok ? parsed.number + parsed.unit : text.trim();
}

/** And back: the unit is left out where the reader's own system means it anyway. */
export function cellFromLink(column: Column, text: string, system: System): string {
  if (!isNumberColumn(column)) return text;
  const usual = unitFor(column.dimension, system);
  const parsed = parseQuantity(text, column.dimension, usual);
  if (!parsed.ok) return text;
  return parsed.unit === usual ? parsed.number : `${parsed.number} ${parsed.unit}`;
}

/** A list as a link carries it: rows that are empty left out. */
export function linkRows(entry: Rows, reading: RowsReading): string {
  const columns = Object.values(entry.columns);
  return encodeRows(reading.rows.filter((row) => !row.empty).map(({ cells }) => cells.map(({ text }, k) => linkCell(columns[k] as Column, text, reading.system))));
}

/** A list as it came in a link or from the demo truck's file; ragged rows stay ragged. */
export function rowsFromLink(entry: Rows, text: string, system: System): string {
  const columns = Object.values(entry.columns);
  return encodeRows(decodeRows(text).map((cells) => cells.map((cell, k) => (columns[k] ? cellFromLink(columns[k], cell, system) : cell))));
}

/** Cells as they stand in the built page, which is in US units, as the text of a list under the reader's own system. */
export function builtRows(entry: Rows, rows: readonly (readonly string[])[], system: System): string {
  const columns = Object.values(entry.columns);
  return encodeRows(rows.map((cells) => cells.map((cell, k) => (columns[k] ? cellFromLink(columns[k], linkCell(columns[k], cell, 'us'), system) : cell))));
}

/** A column's name with the unit of the reader's system. */
export function columnHead(column: Column, system: System): string {
  const label = isNumberColumn(column) ? unitOf(column.dimension, unitFor(column.dimension, system)).label : '';
  return label === '' ? column.name : `${column.name}, ${label}`;
}

/** What stands in a cell, for people: an option in words, a number as understood. */
export function cellWords(column: Column, { text, value }: CellReading, system: System): string {
  if (isChoice(column) && typeof value === 'string') return column.options[value] as string;
  if (!isNumberColumn(column)) return text.trim();
  const parsed = parseQuantity(text, column.dimension, unitFor(column.dimension, system));
  return parsed.ok ? `${parsed.number} ${unitOf(column.dimension, parsed.unit).label}`.trim() : text.trim();
}

/** A list whose references follow a label that was given another name. */
export function renamedRows(entry: Rows, text: string, list: string, from: string, to: string): string {
  const columns = Object.values(entry.columns);
  return encodeRows(decodeRows(text).map((cells) => cells.map((cell, k) => {
    const column = columns[k];
    return column && 'labelIn' in column && column.labelIn === list && sameLabel(cell) === sameLabel(from) ? to : cell;
  })));
}
