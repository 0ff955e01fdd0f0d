import { isChoice, isNumberColumn } from '../calculators/vocabulary/index.ts';
import type { Column, Rows } from '../calculators/vocabulary/index.ts';
import { fromSi, parseQuantity, unitFor, unitOf } from '../units/index.ts';
import type { System } from '../units/index.ts';
import { spelled } from '../units/dimensions.ts';
import { encodeRows, readRows } from './rows.ts';
import type { CellReading, RowReading } from './rows.ts';

/**
 * A list as CSV (RFC 4180): a line of column names with units, then a line for each row, comma between cells, decimal
 * point. Numbers are decimals in the unit of their column, since a spreadsheet takes 1-1/4 for a date.
 */
export function rowsToCsv(entry: Rows, rows: readonly RowReading[], system: System): string {
  const columns = Object.values(entry.columns);
  const head = columns.map((column) => {
    const unit = isNumberColumn(column) ? unitFor(column.dimension, system) : '';
    return unit === '' ? column.name : `${column.name} (${unit})`;
  });
  const lines = rows.filter((row) => !row.empty).map(({ cells }) => cells.map((cell, k) => cellToCsv(columns[k] as Column, cell, system)));
  return [head, ...lines].map((line) => `${line.map(quoted).join(',')}\r\n`).join('');
}

function cellToCsv(column: Column, { text, value }: CellReading, system: System): string {
  if (isNumberColumn(column) && typeof value === 'number') {
    return String(Number(fromSi(value, unitOf(column.dimension, unitFor(column.dimension, system))).toPrecision(10)));
  }
  const words = isChoice(column) && typeof value === 'string' ? (column.options[value] as string) : text.trim();
  // A spreadsheet runs what begins like a formula, and a label may have come in a stranger's link.
  return /^[=+\-@\t\r]/.test(words) && !isNumberColumn(column) ? `'${words}` : words;
}

const quoted = (cell: string): string => (/[",;\t\r\n]|^\s|\s$/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell);

export interface CsvRead {
  /** The list, when the text could be taken as one; its cells may still have problems, which then stand at the cells too. */
  readonly text?: string;
  readonly count: number;
  /** What is wrong or was assumed, with line and column. */
  readonly notes: readonly string[];
}

interface Line {
  /** Where it begins in the text, from 1. */
  readonly number: number;
  readonly cells: readonly string[];
}

/** Reads CSV with commas, with semicolons and decimal commas, or with tabs as a spreadsheet copies it. */
export function csvToRows(entry: Rows, source: string, system: System): CsvRead {
  const text = source.replace(/^\ufeff/, '');
  const separator = separatorOf(text);
  const split = linesOf(text, separator);
  if ('problem' in split) return { count: 0, notes: [split.problem] };
  const lines = split.lines.filter(({ cells }) => cells.some((cell) => cell.trim() !== ''));
  const first = lines[0];
  if (!first) return { count: 0, notes: ['There are no rows in it.'] };
  const columns = Object.entries(entry.columns);
  const notes: string[] = [];
  const named = first.cells.map((cell) => headOf(columns, cell));
  const hasHead = named.some((head) => head !== undefined);
  if (!hasHead && first.cells.length > columns.length) return { count: 0, notes: [`Line ${first.number} names none of the columns ${columns.map(([, { name }]) => name).join('; ')}, and it has ${first.cells.length} cells where ${columns.length} are expected.`] };
  const heads: (Head | undefined)[] = hasHead ? named : columns.map(([key, column]) => ({ key, column, unit: '' }));
  if (!hasHead) notes.push(`No line of column names: read in the order ${columns.map(([, { name }]) => name).join('; ')}. Numbers without a unit are taken in ${system === 'us' ? 'US' : 'SI'} units.`);
  const troubles = heads.flatMap((head, k) => (head?.trouble === undefined ? [] : [`Line ${first.number}, column ${k + 1}: ${head.trouble}`]));
  heads.forEach((head, k) => { if (head && heads.findIndex((other) => other?.key === head.key) < k) troubles.push(`Line ${first.number}, column ${k + 1}: ${head.column.name} is there twice.`); });
  for (const [key, column] of columns) if (!column.optional && !heads.some((head) => head?.key === key)) troubles.push(`Line ${first.number}: the column ${column.name} is missing.`);
  if (troubles.length > 0) return { count: 0, notes: troubles };
  if (hasHead) named.forEach((head, k) => { if (!head && first.cells[k]?.trim()) notes.push(`Line ${first.number}, column ${k + 1}: ${short(first.cells[k] as string)} is no column here and was left out.`); });

  const body = hasHead ? lines.slice(1) : lines;
  // Before any cell is read: thousands of them would hold up a phone for seconds, and no list has room for them.
  if (body.length > entry.most) return { count: 0, notes: [`There are ${body.length} rows in it, and ${entry.name} can be ${entry.most} at most: none was read. Leave out ${body.length - entry.most}.`] };
  if (body.length === 0 && entry.least > 0) return { count: 0, notes: ['There are no rows under the names of the columns.'] };
  const comma = separator !== ',' && decimalCommas(body.flatMap(({ cells }) => cells.filter((_, k) => heads[k] && isNumberColumn((heads[k] as Head).column))));
  const rows = body.map(({ cells }) => columns.map(([key, column]) => {
    const k = heads.findIndex((head) => head?.key === key);
    const head = heads[k];
    return head ? taken(column, cells[k] ?? '', head.unit, comma, system) : '';
  }));
  for (const line of body) if (line.cells.slice(heads.length).some((cell) => cell.trim() !== '')) notes.push(`Line ${line.number} has ${line.cells.length} cells, and the first line ${heads.length}. What is beyond was left out.`);
  const reading = readRows(entry, encodeRows(rows), system, system);
  reading.rows.forEach(({ cells, lacks }, k) => {
    const { number } = body[k] as Line;
    for (const { column, problem } of cells) {
      const of = entry.columns[column] as Column;
      if (problem !== undefined && !('labelIn' in of)) notes.push(`Line ${number}, column ${heads.findIndex((head) => head?.key === column) + 1} (${of.name}): ${problem}.`);
    }
    if (lacks !== undefined) notes.push(`Line ${number} ${lacks}.`);
  });
  return { text: encodeRows(rows), count: rows.length, notes };
}

interface Head {
  readonly key: string;
  readonly column: Column;
  /** '' where none is named. */
  readonly unit: string;
  readonly trouble?: string;
}

function headOf(columns: readonly (readonly [string, Column])[], cell: string): Head | undefined {
  const [, name = '', unit = ''] = /^\s*(.*?)\s*(?:[([]([^)\]]*)[)\]])?\s*$/s.exec(cell) ?? [];
  const found = columns.find(([key, column]) => key.toLowerCase() === name.toLowerCase() || plainName(column.name) === plainName(name));
  if (!found) return undefined;
  const [key, column] = found;
  if (unit.trim() === '') return { key, column, unit: '' };
  const known = isNumberColumn(column) ? spelled(column.dimension, unit) : undefined;
  return known ? { key, column, unit: known.id } : { key, column, unit: '', trouble: `${short(unit)} is no unit of ${column.name}.` };
}

const plainName = (name: string): string => name.toLowerCase().replace(/[^\p{L}\d]+/gu, ' ').trim();
const short = (text: string): string => (text.length > 30 ? `${text.slice(0, 30)}…` : text);

/** A cell as it would be typed: with the unit of its column's head where that is not the usual one. */
function taken(column: Column, cell: string, unit: string, comma: boolean, system: System): string {
  const text = cell.replace(/\s+/g, ' ').trim();
  if (!isNumberColumn(column)) return text.replace(/^'(?=[=+\-@])/, '');
  const number = comma ? text.replace(/^([-+]?[\d.]*),(?=\d)/, (_, whole: string) => `${whole.replaceAll('.', '')}.`) : text;
  const usual = unitFor(column.dimension, system);
  if (unit === '') return number;
  const parsed = parseQuantity(number, column.dimension, unit);
  if (parsed.ok && (parsed.typedUnit || (unit === usual && parsed.unit === unit))) return number;
  // A bare share up to 1 would be asked about; here the head has answered.
  const named = `${number} ${unit}`;
  return parseQuantity(named, column.dimension, unit).ok ? named : number;
}

/** The one that comes most often in the first line that is not empty, outside of quotes; a comma in doubt. */
function separatorOf(text: string): string {
  const line = text.replace(/"[^"]*"/g, '').split(/\r\n|\r|\n/).find((candidate) => candidate.trim() !== '') ?? '';
  const count = (sign: string): number => line.split(sign).length - 1;
  return count('\t') > 0 ? '\t' : count(';') > 0 ? ';' : ',';
}

/** Some number has a comma that can only be the decimal one, and none has a point: then every comma is. */
function decimalCommas(cells: readonly string[]): boolean {
  const sure = /^\s*[-+]?(0?,\d+|\d+,(\d{1,2}|\d{4,})|\d{1,3}(\.\d{3})+,\d+)(\D|$)/;
  return cells.some((cell) => sure.test(cell)) && !cells.some((cell) => /^\s*[-+]?\d*\.(?!\d{3}(\D|$))\d/.test(cell));
}

/** RFC 4180: quotes around a cell, doubled inside; a cell may hold line ends. */
function linesOf(text: string, separator: string): { readonly lines: readonly Line[] } | { readonly problem: string } {
  const lines: Line[] = [];
  let [number, began, cells, at] = [1, 1, [] as string[], 0];
  const end = (): void => {
    lines.push({ number: began, cells });
    [cells, began] = [[], number];
  };
  while (at <= text.length) {
    let cell = '';
    if (text[at] === '"') {
      const opened = number;
      for (at += 1; ; at += 1) {
        if (at >= text.length) return { problem: `Line ${opened}, column ${cells.length + 1}: the quote that opens here never closes.` };
        if (text[at] === '"' && text[++at] !== '"') break;
        if (text[at] === '\n') number += 1;
        cell += text[at];
      }
    }
    for (; at < text.length && text[at] !== separator && text[at] !== '\n' && text[at] !== '\r'; at += 1) cell += text[at];
    cells.push(cell);
    if (text[at] === '\r' && text[at + 1] === '\n') at += 1;
    if (text[at] !== separator) {
      number += 1;
      end();
      if (at >= text.length) break;
    }
    at += 1;
  }
  return { lines };
}
