import type { PageData } from '../build/page-data.ts';
import type { AnyCalculator } from '../calculators/record.ts';

const none: PageData = { vocabulary: {}, demo: {}, records: {} };

/** What the page was built with, see src/build/page-data.ts. */
export const data: PageData = JSON.parse(document.getElementById('page-data')?.textContent ?? 'null') ?? none;

type Tree = { [key: string]: unknown };

/** Puts a record's words and numbers back beside its functions, its feeds' too. */
export function completed(record: AnyCalculator): AnyCalculator {
  if (record.title === undefined) join(record as unknown as Tree, data.records[record.id] as Tree);
  record.feeds?.forEach(completed);
  return record;
}

function join(into: Tree, from: Tree): void {
  for (const [key, value] of Object.entries(from)) {
    if (typeof into[key] === 'object' && into[key] !== null) join(into[key] as Tree, value as Tree);
    else if (into[key] === undefined) into[key] = value;
  }
}
