import rows from '../../content/demo-rows.json' with { type: 'json' };
import demo from '../../content/demo-truck.json' with { type: 'json' };
import { vocabulary } from '../calculators/vocabulary/index.ts';
import { isRows } from '../calculators/vocabulary/index.ts';
import type { Entry } from '../calculators/vocabulary/index.ts';
import { encodeRows, rowsFromLink } from './rows.ts';

/** What the demo truck's file says of one quantity, as typed there, or undefined when it is computed. A list is one text, see rows.ts. */
export function demoText(key: string): string | undefined {
  if (Object.hasOwn(rows.rows, key)) return listText(key, (rows.rows as Readonly<Record<string, readonly Readonly<Record<string, string>>[]>>)[key] ?? []);
  return Object.hasOwn(demo.values, key) ? (demo.values as Readonly<Record<string, string>>)[key] : undefined;
}

function listText(key: string, list: readonly Readonly<Record<string, string>>[]): string {
  const entry = (vocabulary as Readonly<Record<string, Entry>>)[key];
  if (!entry || !isRows(entry)) throw new RangeError(`demo rows: expected the key of a list, found ${key}`);
  const columns = Object.keys(entry.columns);
  for (const row of list) for (const name of Object.keys(row)) if (!columns.includes(name)) throw new RangeError(`demo rows, ${key}: expected a column among ${columns.join(', ')}, found ${name}`);
  return rowsFromLink(entry, encodeRows(list.map((row) => columns.map((column) => row[column] ?? ''))), 'us');
}
