import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readRecord } from '../../src/build/fields.ts';
import type { System } from '../../src/build/fields.ts';
import { forumText } from '../../src/build/forum-text.ts';
import { linkQuery, readLink } from '../../src/build/links.ts';
import { builtRows, decodeRows, encodeRows, fitRows, linkRows, readRows, renamedRows, rowsFromLink } from '../../src/build/rows.ts';
import { Build, readSaved } from '../../src/build/store.ts';
import { calculatorById, entryOf } from '../../src/calculators/index.ts';
import { commonPractice, isRows } from '../../src/calculators/vocabulary/index.ts';
import type { Rows } from '../../src/calculators/vocabulary/index.ts';
import { lbf, psi } from '../../src/units/si.ts';
import { Session } from '../../src/ui/session.ts';

/** Gauge readings: an invented list of numbers alone, with a share to be careful with. */
const readings = {
  name: 'gauge readings', row: 'reading', least: 2, most: 6, measure: 'Gauges and a scale.',
  columns: {
    force: { name: 'foot force', dimension: 'force', hard: { min: 0, max: 2000, reason: 'a foot pushes 0 to 450 lbf' }, tolerance: { relative: 0.02 } },
    front: { name: 'front pressure', dimension: 'pressure', hard: { min: 0, max: 2e7, reason: 'a line holds 0 to 2900 psi' }, usual: { min: 0, max: 1e7, source: commonPractice } },
    part: { name: 'share', dimension: 'share', optional: true, hard: { min: 0, max: 1, reason: 'a share lies between 0 and 100 %' } },
  },
} as const satisfies Rows;
const read = (text: string, typedIn: System = 'us', system: System = typedIn) => readRows(readings, text, typedIn, system);
const bad = /NaN|Infinity|undefined|\[object/;

describe('the text of a list', () => {
  const anything = fc.array(fc.array(fc.oneof(fc.string({ maxLength: 12 }), fc.constantFrom('_', ',', '~', '~1', '7/8', '1-1/4"', 'é', '')), { minLength: 1, maxLength: 5 }), { maxLength: 6 });
  test('gives back every cell, whatever is in it', () => {
    fc.assert(fc.property(anything, (rows) => {
      if (rows.length === 1 && rows[0]?.length === 1 && rows[0][0] === '') return; // no list and a list of nothing are one
      expect(decodeRows(encodeRows(rows))).toEqual(rows);
    }), { numRuns: 500 });
  });
  test('loses nothing that was typed when there are too many cells in a row, or too few', () => {
    expect(fitRows(readings, [['a'], ['a', 'b', 'c', 'd', 'e'], ['a', 'b', 'c']])).toEqual([['a', '', ''], ['a', 'b', 'c_d_e'], ['a', 'b', 'c']]);
  });
});

describe('a list is read', () => {
  test('once: the same text is the same reading, and another text, system or name to refer to is another', () => {
    const first = read('20_180_50,40_360_');
    expect(read('20_180_50,40_360_')).toBe(first);
    expect(read('20_180_50,40_361_').value?.[1]?.front).toBeCloseTo(361 * psi, 6);
    expect(read('20_180_50,40_360_', 'si').rows[0]?.cells[0]?.value).toBe(20);
    expect(read('20_180_50,40_360_').value).toEqual(first.value);
    const pairs = { ...readings, columns: { from: { name: 'from', labelIn: 'points' } } } as unknown as Rows;
    expect(readRows(pairs, 'A,B', 'us', 'us', () => ['A', 'B']).problem).toBeUndefined();
    expect(readRows(pairs, 'A,B', 'us', 'us', () => ['A']).problem).toMatch(/B/);
  });
  test('cell by cell, each as a field is', () => {
    expect(read('20_180_,40_25 bar_0.5 fraction').value).toEqual([{ force: 20 * lbf, front: 180 * psi }, { force: 40 * lbf, front: 2.5e6, part: 0.5 }].map((row) => ({ ...row, force: expect.closeTo(row.force, 9), front: expect.closeTo(row.front, 3) })));
  });
  test('without what is wholly empty', () => {
    expect(read('20_180_,__, _ _ ,40_360_').value).toHaveLength(2);
  });
  test.each([
    ['20_180_,40__', /^Row 2 still lacks front pressure\.$/], ['20_180_,40_3,000_', /Row 3 still lacks/], ['20_180_,40_12 in_', /^Row 2, front pressure: in is a length/],
    ['20_180_,40_9000_', /Row 2, front pressure: .*a line holds/], ['20_180_,40_~2_', /Row 2, front pressure/], ['20_180_', /^At least 2 gauge readings are needed/], ['', /At least 2/],
    ['20_180_,'.repeat(7), /These are 7 gauge readings, and at most 6 are possible. Remove 1/], ['20_180_7_7,40_360_', /Row 1, share/], ['20_3~2000_,40_360_', /3,000 can mean 3000 or 3/],
  ])('and says of %s where it is wrong', (text, words) => {
    const found = read(text);
    expect(found.value).toBeUndefined();
    expect(found.problem).toMatch(words);
  });
  test('with a note outside the usual range, and a value all the same', () => {
    const found = read('20_180_,40_1800_');
    expect(found.value).toHaveLength(2);
    expect(found.rows[1]?.cells[1]?.note).toMatch(/Outside the usual/);
  });
  test('under either system as the same numbers, and shown in the units of the reader’s', () => {
    const us = read('20_180_,40_360_');
    const si = read('20_180_,40_360_', 'us', 'si');
    expect(si.value).toEqual(us.value);
    expect(si.rows[0]?.cells[0]?.text).toMatch(/^88\.96/);
    // Typed on under the other system and back, they are what they were.
    const back = read(encodeRows(si.rows.map(({ cells }) => cells.map(({ text }) => text))), 'si', 'us');
    expect(back.rows.map(({ cells }) => cells.map(({ text }) => text))).toEqual([['20', '180', ''], ['40', '360', '']]);
  });
  test('and never throws, computes nothing from nonsense, and says so in words', () => {
    fc.assert(fc.property(fc.string({ maxLength: 60 }), fc.constantFrom<System>('us', 'si'), fc.constantFrom<System>('us', 'si'), (text, a, b) => {
      const found = read(text, a, b);
      expect(found.value === undefined).toBe(found.problem !== undefined);
      expect(found.problem?.replaceAll(text, '') ?? '').not.toMatch(bad);
      for (const row of found.value ?? []) for (const cell of Object.values(row)) expect(Number.isFinite(cell)).toBe(true);
    }), { numRuns: 1000 });
  });
});

describe('a list in a link', () => {
  const inLink = (text: string, system: System = 'us') => linkRows(readings, read(text, system));
  test('carries each number with its unit, fractions as fractions', () => {
    expect(inLink('20_180_,40 N_25 bar_0.5 fraction')).toBe('20lbf_180psi_,40N_25bar_0.5fraction');
    expect(inLink('20_10_50', 'si')).toBe('20N_10bar_50%');
  });
  test('comes back as the same numbers to any reader', () => {
    fc.assert(fc.property(fc.array(fc.tuple(fc.integer({ min: 0, max: 400 }), fc.integer({ min: 0, max: 200 }), fc.integer({ min: 0, max: 100 })), { minLength: 2, maxLength: 6 }), fc.constantFrom<System>('us', 'si'), (rows, system) => {
      const text = encodeRows(rows.map(([force, front, part]) => [String(force), `${front}/2`, `${part}%`]));
      const sent = read(text, system);
      const got = read(rowsFromLink(readings, linkRows(readings, sent), 'us'), 'us', system === 'us' ? 'si' : 'us');
      expect(got.value).toEqual(sent.value);
    }), { numRuns: 200 });
  });
  test('a small share keeps its percent', () => {
    expect(read(rowsFromLink(readings, inLink('20_180_0.5 %,40_360_'), 'us')).value?.[0]?.part).toBeCloseTo(0.005, 12);
  });
  test('cells of the built page, which is in US units, mean the same to a reader of SI', () => {
    const text = builtRows(readings, [['20', '180', ''], ['40', '25 bar', '62']], 'si');
    expect(read(text, 'si').value).toEqual(read('20_180_,40_25 bar_62').value);
  });
});

describe('the lists of points and pairs', () => {
  const record = calculatorById('drop-points');
  const demo = readRecord(record, () => undefined, 'us');
  const typed = (key: string, text: string, system: System = 'us') => readRecord(record, (name) => (name === key ? { text, unit: '', system } : undefined), system);
  const points = (reading = demo) => reading.fields.find(({ key }) => key === 'truckPoints');
  const pairs = (reading = demo) => reading.fields.find(({ key }) => key === 'pointPairs');
  const query = linkQuery(record, demo.fields);

  test('a pair that names no point says so at its cell, and which points there are', () => {
    const found = typed('pointPairs', 'colum end_steering box_shaft__');
    expect(found.state).toBe('blank');
    expect(pairs(found)?.rows?.rows[0]?.cells[0]?.problem).toMatch(/^there is no colum end; the names are column end, steering box/);
    expect(found.state === 'blank' && found.reason).toBe('No result until the list of pairs of points is put right.');
  });
  test('names count without regard to spaces and capitals', () => {
    expect(typed('pointPairs', ' Column  END_steering box_Shaft__').state).toBe('ok');
  });
  test('two points of one name are a problem at both', () => {
    const found = typed('truckPoints', `${points()?.text},Hood_body_1_2_3`);
    expect(points(found)?.rows?.rows.filter(({ cells }) => cells[0]?.problem !== undefined).length).toBe(2);
  });
  test('a name that is too long, or turns the text around, does not get far', () => {
    expect(typed('truckPoints', `${'x'.repeat(25)}_body_1_2_3,b_frame_1_2_3`).fields.find(({ key }) => key === 'truckPoints')?.problem).toMatch(/longer than 24/);
    const found = typed('truckPoints', `${points()?.text},\u202eeman_body_1_2_3`);
    expect(found.state === 'ok' && (found.values.truckPoints as readonly { name: string }[]).at(-1)?.name).toBe('eman');
  });
  test('in a link are readable, complete and within the signs that no forum changes', () => {
    expect(query).toContain('&truck-points=column+end_body_-20in_14in_24in,steering+box_frame_2in_17in_9in,');
    expect(query).toMatch(/^[?=&\w+\-.,/~]+$/);
  });
  test('survive every hostile change of the link: no exception, no number, and the words kept', () => {
    fc.assert(fc.property(fc.oneof(fc.string({ maxLength: 40 }), fc.constantFrom('_'.repeat(10_000), ','.repeat(10_000), 'x'.repeat(10_000), '~'.repeat(99), 'a_b,'.repeat(2500), '__proto__', 'constructor_toString,valueOf', '%00', '\u202e12')), (text) => {
      const params = new URLSearchParams(query);
      params.set('truck-points', text);
      const link = readLink(record, `?${params}`);
      const found = readRecord(record, (key) => link?.values.get(key), 'us');
      expect(found.state).toBe('blank');
      expect(decodeRows(link?.values.get('truckPoints')?.text ?? '').join()).toBe(decodeRows(text).join());
      expect(linkQuery(record, found.fields).length).toBeGreaterThan(100);
    }), { numRuns: 60 });
  });
  test('cut short in a link lose only what was cut, and say so', () => {
    for (let at = query.indexOf('truck-points=') + 13; at < query.indexOf('&point-pairs'); at += 7) {
      const link = readLink(record, query.slice(0, at));
      const found = readRecord(record, (key) => link?.values.get(key), 'us');
      expect(found.state).toBe('blank');
    }
  });
  test('given twice in a link ask which', () => {
    const link = readLink(record, `${query}&truck-points=a_body_1in_1in_1in`);
    expect(link?.values.get('truckPoints')?.problem).toMatch(/twice/);
  });
  test('stand in the text for a forum, a line for each row', () => {
    const text = forumText(record, demo, 'us', 'x');
    expect(text).toContain('- points of the truck: name | rides with | x, forward | y, left | z, up\n  1. column end | body | -20 in | 14 in | 24 in\n');
    expect(text).toContain('  2. front master port | front line clip | brake or fuel line | 30 in | 3/16 in');
  });
  test('are saved with the truck, go to a file and back, and a page that knows no lists keeps them', () => {
    const kept: Record<string, string> = {};
    const storage = { getItem: (name: string) => kept[name] ?? null, setItem: (name: string, value: string) => { kept[name] = value; } };
    const build = new Build(storage);
    build.set('truckPoints', { text: 'a b_body_1_2_3', unit: '', system: 'us' });
    expect(new Build(storage).get('truckPoints')?.text).toBe('a b_body_1_2_3');
    expect(readSaved(JSON.stringify(build.save()))).toEqual(build.save());
    // Another page writes a number: the list is no more to it than a text under a key.
    new Build(storage).set('controlForce', { text: '70', unit: 'lbf', system: 'us' });
    expect(new Build(storage).get('truckPoints')?.text).toBe('a b_body_1_2_3');
  });
  test('a point given another name takes its pairs along', () => {
    const session = new Session(new Build());
    const entry = entryOf('pointPairs');
    expect(isRows(entry) && renamedRows(entry, 'hood_engine top_gap__,Hood_x_gap__', 'truckPoints', 'hood', 'lid')).toBe('lid_engine top_gap__,lid_x_gap__');
    session.type(record, 'truckPoints', points()?.text.replace('hood_', 'lid_') ?? '');
    expect(readRecord(record, session.lookup(record), 'us').state).toBe('blank');
    session.rename(record, 'truckPoints', 'hood', 'lid');
    expect(readRecord(record, session.lookup(record), 'us').state).toBe('ok');
  });
});

test('of a list with far too many rows the first are read, the rest are kept as they stand', () => {
  const text = Array.from({ length: 3000 }, (_, k) => `${k}_`).join(',');
  const reading = read(text);
  expect(reading.rows).toHaveLength(3000);
  expect(reading.problem).toMatch(/at most 6 are possible/);
  expect(reading.value).toBeUndefined();
  expect(reading.rows[5]?.cells[0]?.value).toBeDefined();
  expect(reading.rows[2999]?.cells[0]).toEqual({ column: reading.rows[0]?.cells[0]?.column, text: '2999' });
  // Empty rows do not count, so none behind them is left unread.
  const spaced = read(`${','.repeat(40)}20_180_,40_360_`);
  expect(spaced.value).toHaveLength(2);
});
