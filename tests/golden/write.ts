/**
 * Adds links for what is new; never changes or drops one that stands. Run it by name, `npm run golden`, and read the
 * diff: a link once in a build thread must give the same numbers for ever.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { readRecord } from '../../src/build/fields.ts';
import { linkQuery, readLink } from '../../src/build/links.ts';
import { calculators } from '../../src/calculators/index.ts';

const place = new URL('links.json', import.meta.url);
let standing: { calculator: string; query: string; results: Record<string, number> }[] = [];
try {
  standing = JSON.parse(readFileSync(place, 'utf8'));
} catch {
  // the first run starts the file
}
for (const record of calculators) {
  const reading = readRecord(record, () => undefined, 'us');
  if (reading.state !== 'ok') throw new Error(`${record.id}: expected a result, found: ${reading.reason}`);
  const query = linkQuery(record, reading.fields);
  if (standing.some((entry) => entry.calculator === record.id && entry.query.startsWith(`?v=${record.version}&`))) continue;
  const link = readLink(record, query);
  const again = readRecord(record, (key) => link?.values.get(key), 'us');
  if (again.state !== 'ok') throw new Error(`${record.id}: expected a result from its own link, found: ${again.reason}`);
  const results = Object.fromEntries((record.outputs as readonly string[]).flatMap((key) => (typeof again.values[key] === 'number' ? [[key, again.values[key] as number]] : [])));
  standing.push({ calculator: record.id, query, results });
  process.stdout.write(`added ${record.id}\n`);
}
writeFileSync(place, `${JSON.stringify(standing, null, 1)}\n`);
