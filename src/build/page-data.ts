import { calculatorById, entryOf, inputKeys } from '../calculators/index.ts';
import type { AnyCalculator, Feed } from '../calculators/record.ts';
import type { Column, Entry } from '../calculators/vocabulary/index.ts';
import { isRows, vocabulary } from '../calculators/vocabulary/index.ts';
import { demoSure } from './demo-sure.ts';
import { demoText } from './demo.ts';
import type { Sure } from './sure-words.ts';

/** What a calculator's script needs besides itself: the words and numbers of its record and feeds, and no more of the tables than they use. */
export interface PageData {
  readonly vocabulary: Readonly<Record<string, unknown>>;
  readonly demo: Readonly<Record<string, string | undefined>>;
  readonly records: Readonly<Record<string, unknown>>;
  readonly sure: Readonly<Record<string, Sure | undefined>>;
}

export function pageData(ids: readonly string[], all = false): PageData {
  const records = new Map<string, Feed>();
  const take = (record: Feed): void => {
    records.set(record.id, record);
    record.feeds?.forEach(take);
  };
  ids.map(calculatorById).forEach(take);
  const keys = new Set(all ? Object.keys(vocabulary) : [...records.values()].flatMap((record) => [...inputKeys(record), ...(record.outputs as readonly string[]), ...carriedTo(record)]));
  return {
    vocabulary: Object.fromEntries([...keys].map((key) => [key, withoutHelp(entryOf(key))])),
    demo: Object.fromEntries([...keys].map((key) => [key, demoText(key)])),
    sure: Object.fromEntries(ids.map((id) => [id, demoSure(id)])),
    records: Object.fromEntries([...records].map(([id, record]) => [id, plain(record)])),
  };
}

/** What its measured results may be typed into. */
const carriedTo = ({ carries = [] }: Feed & Partial<AnyCalculator>): readonly string[] => carries.map(({ to }) => to);

/** JSON keeps what is plain and drops functions; feeds are other records, paper is printed already. */
function plain({ feeds, ...record }: Feed & Partial<AnyCalculator>): unknown {
  const { paper, cautions, ...rest } = record;
  return { ...rest, cautions: cautions?.map(({ fires, silent, ...caution }) => caution) };
}

/** Help comes when a field is touched (help.json): most readers never open most of it. Why a number is refused cannot wait. */
function withoutHelp({ measure, ...entry }: Entry | Column): unknown {
  return 'columns' in entry ? { ...entry, columns: eachColumn(entry.columns, withoutHelp) } : entry;
}

function eachColumn<T>(columns: Readonly<Record<string, Column>>, of: (column: Column) => T): Record<string, T> {
  return Object.fromEntries(Object.entries(columns).map(([key, column]) => [key, of(column)]));
}

export interface Help {
  readonly measure?: string;
  readonly columns?: Readonly<Record<string, Help>>;
}

/** The help of every quantity: how to measure it. */
export function helpData(): Record<string, Help> {
  return Object.fromEntries((Object.entries(vocabulary) as [string, Entry][]).map(([key, entry]) => [
    key, isRows(entry) ? { measure: entry.measure, columns: eachColumn(entry.columns, ({ measure }) => ({ measure })) } : { measure: entry.measure },
  ]));
}
