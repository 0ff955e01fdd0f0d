import { entryOf } from './evaluate.ts';
import type { Feed, Value, Values } from './record.ts';
import { inputKeys } from './record.ts';
import { isNumberColumn, isQuantity, isRows } from './vocabulary/index.ts';
import type { NumberColumn, RowValues } from './vocabulary/index.ts';

/** A cell of a list: rows count from 0. */
export interface Cell {
  readonly row: number;
  readonly column: string;
}

/** One number that a reader measured: an input, or a cell of a list. */
export interface Place {
  readonly key: string;
  readonly cell?: Cell;
  readonly entry: NumberColumn;
  readonly x: number;
}

/** Every number among a record's inputs; each cell of a list is a measurement of its own. Empty cells and choices are none. */
export function numbersIn(record: Pick<Feed, 'inputs'>, values: Values): Place[] {
  return inputKeys(record as Feed).flatMap((key): Place[] => {
    const entry = entryOf(key);
    if (isQuantity(entry)) return [{ key, entry, x: values[key] as number }];
    if (!isRows(entry)) return [];
    return ((values[key] ?? []) as RowValues).flatMap((cells, row) => Object.entries(entry.columns).flatMap(([column, of]): Place[] => {
      const x = cells[column];
      return isNumberColumn(of) && typeof x === 'number' ? [{ key, cell: { row, column }, entry: of, x }] : [];
    }));
  });
}

/** The values with another number at one place; nothing else is touched. */
export function withNumber(values: Values, { key, cell }: Place, x: number): Values {
  const changed: Value = cell ? (values[key] as RowValues).map((cells, row) => (row === cell.row ? { ...cells, [cell.column]: x } : cells)) : x;
  return { ...values, [key]: changed };
}

/** What a place is called in a sentence: 'pedal ratio', or 'points of the truck, row 3, z, up'. */
export function placeName({ key, cell }: Pick<Place, 'key' | 'cell'>): string {
  const entry = entryOf(key);
  return cell && isRows(entry) ? `${entry.name}, row ${cell.row + 1}, ${entry.columns[cell.column]?.name ?? cell.column}` : entry.name;
}
