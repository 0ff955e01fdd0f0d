import { readFileSync, readdirSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import sources from '../../content/sources.json' with { type: 'json' };
import demo from '../../content/demo-truck.json' with { type: 'json' };
import demoRows from '../../content/demo-rows.json' with { type: 'json' };
import { demoText } from '../../src/build/demo.ts';
import { readRows } from '../../src/build/rows.ts';
import { linkName } from '../../src/build/links.ts';
import { calculators, entryOf, hardProblem, inputKeys, vocabulary } from '../../src/calculators/index.ts';
import type { Feed } from '../../src/calculators/record.ts';
import { isNumberColumn, isQuantity, isRows } from '../../src/calculators/vocabulary/index.ts';
import type { Entry } from '../../src/calculators/vocabulary/index.ts';
import { parseQuantity, unitFor } from '../../src/units/index.ts';

const root = new URL('../../', import.meta.url);
const files = (path: string): string[] => readdirSync(new URL(path, root)).map((name) => name.replace(/\.\w+$/, ''));
const guides = files('content/guides');
const inGuides = guides.flatMap((slug) => [...readFileSync(new URL(`content/guides/${slug}.mdx`, root), 'utf8').matchAll(/<Calculator\s+id="([^"]+)"/g)].map((m) => m[1]));

test('every record file is in the table of contents, under its own id', () => {
  expect(files('src/calculators/records').sort()).toEqual(calculators.map((c) => c.id).sort());
});

test('two quantities never share a name in links, nor a symbol with the same words', () => {
  const names = Object.keys(vocabulary).map(linkName);
  expect(new Set(names).size).toBe(names.length);
  for (const name of names) expect(name, name).toMatch(/^[a-z][a-z-]*(?:-\d+)?(?:-[a-z]+)*$/);
  expect(names).not.toContain('v');
  const symbols = (Object.values(vocabulary) as Entry[]).flatMap((entry) => (isQuantity(entry) ? [entry.symbol] : []));
  const twice = symbols.filter((symbol, k) => symbols.indexOf(symbol) !== k);
  expect(twice).toEqual([]);
});

describe.each(Object.entries(vocabulary) as [string, Entry][])('quantity %s', (key, entry) => {
  test('has a name that reads inside a sentence', () => {
    expect(entry.name.length).toBeGreaterThan(2);
    expect(entry.name).not.toMatch(/[.!?]$/);
  });
  if (isRows(entry)) {
    test('has columns with short permanent keys, each measurable, and room for at least one row', () => {
      for (const [name, column] of Object.entries(entry.columns)) {
        expect(name).toMatch(/^[a-zA-Z]\w{0,15}$/);
        if (isNumberColumn(column)) expect(column.hard, `${name}: hard range`).toBeTruthy();
        if (isNumberColumn(column) && column.usual) expect(column.usual.max).toBeGreaterThan(column.usual.min);
        if ('labelIn' in column) expect(isRows(entryOf(column.labelIn)) && Object.values((entryOf(column.labelIn) as typeof entry).columns).filter((of) => 'letters' in of && of.unique).length).toBe(1);
      }
      expect(entry.most).toBeGreaterThan(entry.least);
      expect(Object.values(entry.columns).filter((column) => 'letters' in column).length).toBeLessThanOrEqual(1);
    });
    test('has demo rows that can be read and are possible', () => {
      const labels = (other: string): string[] => (demoRows.rows as Record<string, { name?: string }[]>)[other]?.map((row) => row.name ?? '') ?? [];
      expect(readRows(entry, demoText(key) ?? '', 'us', 'us', labels).problem).toBeUndefined();
    });
  }
  if (!isQuantity(entry)) return;
  test('has its usual range inside its hard range', () => {
    if (entry.usual) expect(entry.usual.max).toBeGreaterThan(entry.usual.min);
    if (entry.hard) expect(entry.hard.max).toBeGreaterThan(entry.hard.min);
    if (entry.usual && entry.hard) {
      expect(entry.usual.min).toBeGreaterThanOrEqual(entry.hard.min);
      expect(entry.usual.max).toBeLessThanOrEqual(entry.hard.max);
    }
  });
  const text = (demo.values as Record<string, string>)[key];
  test.runIf(text !== undefined)('has a demo value that can be read and is possible', () => {
    const parsed = parseQuantity(text as string, entry.dimension, unitFor(entry.dimension, 'us'));
    expect(parsed, text).toMatchObject({ ok: true });
    if (parsed.ok) expect(hardProblem(key, parsed.si)).toBeUndefined();
  });
});

test('the demo truck has no value for a quantity that does not exist', () => {
  expect([...Object.keys(demo.values), ...Object.keys(demoRows.rows)].filter((key) => !Object.hasOwn(vocabulary, key))).toEqual([]);
});

function feedsOf(record: Feed): Feed[] {
  return (record.feeds ?? []).flatMap((feed) => [feed, ...feedsOf(feed)]);
}

describe.each(calculators.map((c) => [c.id, c] as const))('record %s', (id, record) => {
  test('has a permanent id, a version and words', () => {
    expect(id).toMatch(/^[a-z][a-z-]+[a-z]$/);
    expect(record.version).toBeGreaterThanOrEqual(1);
    for (const text of [record.title, record.purpose]) expect(text.length).toBeGreaterThan(5);
    expect(record.paper.assumptions.length).toBeGreaterThan(0);
    expect(record.paper.leftOut.length).toBeGreaterThan(0);
    expect(record.paper.sources.length).toBeGreaterThan(0);
    expect(record.cautions.length).toBeGreaterThan(0);
  });

  test('asks only for quantities that can be measured, each once, each with hard limits', () => {
    const keys = inputKeys(record);
    expect(new Set(keys).size).toBe(keys.length);
    for (const key of keys) {
      const entry = entryOf(key);
      expect(entry.measure, `${key}: how to measure`).toBeTruthy();
      if (isQuantity(entry)) expect(entry.hard, `${key}: hard range`).toBeTruthy();
      if (isRows(entry)) for (const column of Object.values(entry.columns)) if ('labelIn' in column) expect(keys, `${key}: the list it refers to`).toContain(column.labelIn);
    }
  });

  test('ends with an input that is no list, so that a link cut short never passes for a shorter list', () => {
    expect(isRows(entryOf(inputKeys(record).at(-1) as string))).toBe(false);
  });

  test('has a value for each input: the demo truck’s or a feeding record’s', () => {
    for (const key of inputKeys(record)) {
      const fed = record.feeds?.some((feed) => (feed.outputs as readonly string[]).includes(key)) ?? false;
      expect(fed || demoText(key) !== undefined, key).toBe(true);
    }
  });

  test('is not fed by itself', () => {
    expect(feedsOf(record).map((feed) => feed.id)).not.toContain(id);
  });

  test('names cautions once, and shows when each conditional one fires and is silent', () => {
    const ids = record.cautions.map((caution) => caution.id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const caution of record.cautions) {
      if (!caution.when) continue;
      expect(caution.fires, `${caution.id}: fires`).toBeDefined();
      expect(caution.silent, `${caution.id}: silent`).toBeDefined();
    }
  });

  test('cites sources and neighbors that exist', () => {
    for (const source of record.paper.sources) if (source.id) expect(Object.keys(sources)).toContain(source.id);
    for (const name of record.paper.related) expect([...guides, ...calculators.map((c) => c.id)]).toContain(name);
  });

  test('has an equation for its headline, or says how it is found', () => {
    expect([...record.equations, ...(record.methods ?? [])].map(({ result }) => result)).toContain(record.outputs[0]);
    for (const { result, words } of record.methods ?? []) {
      expect(record.outputs).toContain(result);
      expect(words).toMatch(/[.]$/);
    }
  });

  test('stands in a guide', () => {
    expect(inGuides).toContain(id);
  });
});

