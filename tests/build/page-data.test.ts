import { expect, test } from 'vitest';
import { pageData } from '../../src/build/page-data.ts';
import { calculators, entryOf, inputKeys } from '../../src/calculators/index.ts';

test.each(calculators.map((c) => [c.id, c] as const))('the data of %s carries its words and every quantity it shows, and no paper', (id, record) => {
  const data = pageData([id]);
  expect(Object.keys(data.records)).toContain(id);
  for (const feed of record.feeds ?? []) expect(Object.keys(data.records)).toContain(feed.id);
  for (const key of [...inputKeys(record), ...(record.outputs as readonly string[])]) expect(Object.keys(data.vocabulary)).toContain(key);
  const text = JSON.stringify(data);
  // Why a number is refused or unusual is said at once, not when the help has come.
  for (const key of inputKeys(record)) {
    const entry = entryOf(key);
    if (!('dimension' in entry)) continue;
    for (const words of [entry.hard?.reason, entry.usual?.source]) if (words) expect(text).toContain(JSON.stringify(words));
  }
  expect(text).toContain(JSON.stringify(record.purpose));
  for (const caution of record.cautions) expect(text).toContain(JSON.stringify(caution.todo));
  expect(text).not.toContain('"paper"');
  expect(text).not.toContain('"fires"');
  expect(text).not.toContain('"measure"');
});
