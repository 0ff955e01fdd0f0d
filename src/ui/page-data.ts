import type { PageData } from '../build/page-data.ts';
import type { AnyCalculator, Feed } from '../calculators/record.ts';
import { demo } from './page-demo.ts';
import { sures } from './page-sure.ts';
import { vocabulary } from './page-vocabulary.ts';

/** Fetches the words and numbers of a record, see src/build/page-data.ts; 'all' is the whole vocabulary. */
export async function fetchData(id: string): Promise<PageData> {
  const response = await fetch(`/calculators/${id}.json`);
  const data = (await response.json()) as PageData;
  for (const [key, entry] of Object.entries(data.vocabulary)) vocabulary[key] ??= entry as (typeof vocabulary)[string];
  Object.assign(demo, data.demo);
  Object.assign(sures, data.sure);
  return data;
}

/** A record with its words and numbers back beside its functions, its feeds' too. */
export async function complete(coming: Promise<AnyCalculator>, id: string): Promise<AnyCalculator> {
  const [record, data] = await Promise.all([coming, fetchData(id)]);
  fill(record, data);
  return record;
}

const filled = new WeakSet<Feed>();

function fill(record: Feed, data: PageData): void {
  if (!filled.has(record)) join(record as unknown as Tree, data.records[record.id] as Tree);
  filled.add(record);
  for (const feed of record.feeds ?? []) fill(feed, data);
}

type Tree = { [key: string]: unknown };

function join(into: Tree, from: Tree): void {
  for (const [key, value] of Object.entries(from)) {
    if (typeof into[key] === 'object' && into[key] !== null) join(into[key] as Tree, value as Tree);
    else if (into[key] === undefined) into[key] = value;
  }
}
