import { readFileSync, readdirSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import file from '../../content/checklists.json' with { type: 'json' };
import { applies, asked, askedText, partsOf } from '../../src/build/asked.ts';
import { checklistById, checklistsIn } from '../../src/build/checklists.ts';
import { demoNumber } from '../../src/build/demo-number.ts';
import { demoText } from '../../src/build/demo.ts';
import { entryOf } from '../../src/calculators/index.ts';
import { isChoice } from '../../src/calculators/vocabulary/index.ts';

const guides = new URL('../../content/guides/', import.meta.url);
const shown = readdirSync(guides).flatMap((name) => checklistsIn(readFileSync(new URL(name, guides), 'utf8')));
const ids = Object.keys(file.lists);

test('every list stands in one guide, once, and a guide shows no list that does not exist', () => {
  expect([...shown].sort()).toEqual([...ids].sort());
});

test('a number asked for reads back from the text it is kept in', () => {
  const number = asked('braking-rate:frontPressure | controlForce = 25 lbf | pedalRatio = 6');
  expect(number).toEqual({ calculator: 'braking-rate', of: 'frontPressure', set: { controlForce: '25 lbf', pedalRatio: '6' } });
  expect(asked(askedText(number))).toEqual(number);
  expect(partsOf('a {x-y:z} b')).toEqual(['a ', { calculator: 'x-y', of: 'z', set: {} }, ' b']);
  for (const text of ['nothing', 'a:b | c', ':b', 'a:']) expect(() => asked(text)).toThrow(/expected calculator/);
});

test('an item that asks for a choice shows for that choice, typed or the demo truck’s, and hides for others', () => {
  expect(applies(undefined)).toBe(true);
  expect(applies(`rearValve=${demoText('rearValve')}`)).toBe(true);
  expect(applies('rearValve=none', () => 'fitted')).toBe(false);
  expect(applies('rearValve=none|fitted', () => 'fitted')).toBe(true);
});

describe.each(ids)('list %s', (id) => {
  const list = checklistById(id);
  const items = list.groups.flatMap((group) => group.items);

  test('says on every line what to do, the number that passes and what a fail means', () => {
    for (const { do: what, pass, fail } of items) for (const text of [what, pass, fail]) expect(text.length, what).toBeGreaterThan(2);
  });

  test('asks only for numbers that the demo truck has, and for choices that exist', () => {
    for (const { if: condition, do: what, pass, table } of items) {
      for (const part of [what, pass, ...(table?.rows.flat() ?? [])].flatMap(partsOf)) if (typeof part !== 'string') expect(demoNumber(part), askedText(part)).toMatch(/\d/);
      if (condition === undefined) continue;
      const [key, options] = condition.split('=') as [string, string];
      const entry = entryOf(key);
      expect(isChoice(entry) && options.split('|').every((option) => Object.hasOwn(entry.options, option)), condition).toBe(true);
    }
  });

  test('has as many cells in every row as its head has', () => {
    for (const { table } of items) for (const row of table?.rows ?? []) expect(row.length).toBe(table?.head.length);
  });
});

test('a list that is not there stops the build', () => {
  expect(() => checklistById('no-such-list')).toThrow(/checklist/);
});
