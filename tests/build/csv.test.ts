import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { csvToRows, rowsToCsv } from '../../src/build/csv.ts';
import { demoText } from '../../src/build/demo.ts';
import type { System } from '../../src/build/fields.ts';
import { decodeRows, encodeRows, readRows } from '../../src/build/rows.ts';
import { entryOf } from '../../src/calculators/index.ts';
import type { Rows } from '../../src/calculators/vocabulary/index.ts';

const points = entryOf('truckPoints') as Rows;
const pairs = entryOf('pointPairs') as Rows;
const read = (source: string, system: System = 'us') => csvToRows(points, source, system);
const cells = (source: string, system: System = 'us') => decodeRows(read(source, system).text ?? '');

describe('a list as CSV', () => {
  test('begins with the names and units of its columns and has decimal points', () => {
    const lines = rowsToCsv(points, readRows(points, demoText('truckPoints') ?? '', 'us', 'us').rows, 'us').split('\r\n');
    expect(lines[0]).toBe('name,rides with,"x, forward (in)","y, left (in)","z, up (in)"');
    expect(lines[10]).toBe('engine top,frame,-4,2,27.5');
    expect(lines.at(-1)).toBe('');
  });
  test.each(['us', 'si'] as const)('comes back as the same numbers, in %s units', (system) => {
    const reading = readRows(points, demoText('truckPoints') ?? '', 'us', system);
    const found = read(rowsToCsv(points, reading.rows, system), system);
    expect(found.notes).toEqual([]);
    const again = readRows(points, found.text ?? '', system, system).value ?? [];
    reading.value?.forEach((row, k) => { for (const [key, value] of Object.entries(row)) typeof value === 'number' ? expect(again[k]?.[key]).toBeCloseTo(value, 9) : expect(again[k]?.[key]).toBe(value); });
  });
  test('keeps any label, with quotes, separators and what looks like a formula', () => {
    fc.assert(fc.property(fc.array(fc.oneof(fc.string({ minLength: 1, maxLength: 12 }), fc.constantFrom('a,b', 'say "x"', '=1+1', '+x', 'a;b', '@x', "it's")), { minLength: 1, maxLength: 5 }), (labels) => {
      const clean = labels.map((label) => label.replace(/\s+/g, ' ').trim()).filter((label) => label !== '' && !label.startsWith("'"));
      const text = encodeRows(clean.map((label) => [label, 'body', '1', '2', '3']));
      const csv = rowsToCsv(points, readRows(points, text, 'us', 'us').rows, 'us');
      expect(decodeRows(read(csv).text ?? '').map((row) => row[0])).toEqual(clean);
    }), { numRuns: 400 });
    expect(rowsToCsv(points, readRows(points, '=cmd()_body_1_2_3', 'us', 'us').rows, 'us')).toContain("'=cmd()");
  });
});

describe('CSV is read', () => {
  const head = 'name,rides with,"x, forward (mm)",y,z';
  test('with the units of its head, columns in any order and by their keys', () => {
    expect(cells(`${head}\na,body,508,1,2\n`)).toEqual([['a', 'body', '508 mm', '1', '2']]);
    expect(cells('z;y;x;on;name\n1;2;3;frame;b')).toEqual([['b', 'frame', '3', '2', '1']]);
    expect(cells('name\trides with\tx (in)\ty\tz\na\tbody\t1-1/4\t2 mm\t3')).toEqual([['a', 'body', '1-1/4', '2 mm', '3']]);
  });
  test('with semicolons and decimal commas, where a comma can only be that', () => {
    expect(cells('name;on;x;y;z\na;body;12,5;22,225;0,125\nb;frame;1.234,5;-3,000;4')).toEqual([['a', 'body', '12.5', '22.225', '0.125'], ['b', 'frame', '1234.5', '-3.000', '4']]);
    // Nothing says whether this is three or three thousand: the cell asks.
    expect(cells('name;on;x;y;z\na;body;3,000;1;2')[0]?.[2]).toBe('3,000');
    expect(read('name;on;x;y;z\na;body;3,000;1;2').notes[0]).toMatch(/^Line 2, column 3 \(x, forward\): 3,000 can mean 3000 or 3/);
  });
  test('without a head, and says what it took for granted', () => {
    const found = read('a,body,1,2,3\nb,frame,4,5,6');
    expect(found.count).toBe(2);
    expect(found.notes[0]).toMatch(/No line of column names.*US units/);
  });
  test.each([
    ['', /no rows/], [head, /no rows under the names/], ['name,on,x,y\na,body,1,2', /^Line 1: the column z, up is missing/], ['name,on,x (psi),y,z\na,body,1,2,3', /^Line 1, column 3: psi is no unit of x, forward/],
    ['name,on,x,x,y,z\na,body,1,2,3,4', /^Line 1, column 4: x, forward is there twice/], [`${head}\na,"body,1,2,3`, /^Line 2, column 2: the quote that opens here never closes/], ['p,q,r,s,t,u,v\n1,2', /names none of the columns/],
  ])('but not from %s: nothing changes, and it says why', (source, words) => {
    const found = read(source);
    expect(found.text).toBeUndefined();
    expect(found.notes[0]).toMatch(words);
  });
  test.each([
    ['a,roof,1,2,3', /^Line 2, column 2 \(rides with\): roof is none of: body/], ['a,body,1,,3', /^Line 2 still lacks y, left/], ['\n\na,body,1,2,3,9', /^Line 4 has 6 cells/], ['"a\nb",body,1,2,3\nc,frame,7/,2,3', /^Line 4, column 3/],
  ])('with %s in it: kept as it is, and line and column are named', (row, words) => {
    const found = read(`name,on,x,y,z\n${row}`);
    expect(found.text).toBeDefined();
    expect(found.notes[0]).toMatch(words);
  });
  test('a small share under a percent head stays small', () => {
    const entry = { ...points, columns: { part: { name: 'share', dimension: 'share' } } } as const satisfies Rows;
    const found = csvToRows(entry, 'share (%)\n0.5\n62', 'us');
    expect(readRows({ ...entry, least: 1 }, found.text ?? '', 'us', 'us').value?.map((row) => row.part)).toEqual([0.005, 0.62]);
  });
  test('never throws, whatever is pasted, and what it gives can be read', () => {
    fc.assert(fc.property(fc.oneof(fc.string({ maxLength: 200 }), fc.array(fc.constantFrom('"', ',', ';', '\t', '\n', '\r', 'name', 'x', '1', '(mm)', '3,000', '_', '~'), { maxLength: 40 }).map((parts) => parts.join(''))), fc.constantFrom(points, pairs), (source, entry) => {
      const found = csvToRows(entry, source, 'us');
      if (found.text === undefined) expect(found.notes.length).toBeGreaterThan(0);
      else readRows(entry, found.text, 'us', 'us');
      for (const note of found.notes) expect(note.replaceAll(source, '')).not.toMatch(/NaN|undefined|\[object/);
    }), { numRuns: 1500 });
  });
});

test('far more rows than a list has room for are refused at once and in words, before any cell is read', () => {
  const many = (count: number): string => ['name,on,x,y,z', ...Array.from({ length: count }, (_, k) => `p${k},body,3;000,1,2`)].join('\n');
  const found = read(many(2000));
  expect(found.text).toBeUndefined();
  expect(found.notes).toEqual(['There are 2000 rows in it, and points of the truck can be 40 at most: none was read. Leave out 1960.']);
  expect(read(many(41)).notes[0]).toMatch(/Leave out 1\.$/);
  expect(read(many(40)).count).toBe(40);
});
