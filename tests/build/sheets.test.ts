import { readFileSync, readdirSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { calculatorById, inputKeys, vocabulary } from '../../src/calculators/index.ts';
import { computedOn, sheetGroups, sheetIn } from '../../src/build/sheets.ts';

const guides = new URL('../../content/guides/', import.meta.url);
const bodies = readdirSync(guides).map((name) => [name, readFileSync(new URL(name, guides), 'utf8')] as const);
const withSheet = bodies.flatMap(([name, body]) => {
  const sheet = sheetIn(body);
  return sheet ? [[name, sheet] as const] : [];
});
const keysOn = (ids: readonly string[]): string[] => sheetGroups(ids).flatMap((group) => group.lines.map((line) => line.key));

describe('a measuring sheet', () => {
  test('is read from the guide’s text', () => {
    expect(sheetIn(`a\n<Sheet calculators={['shaft-line', 'clearance']} title="Sheet" />\nb`)).toEqual({ title: 'Sheet', calculators: ['shaft-line', 'clearance'] });
    expect(sheetIn('no sheet here')).toBeUndefined();
    expect(sheetIn(undefined)).toBeUndefined();
  });

  test('that cannot be read, or is the second in a guide, stops the build', () => {
    expect(() => sheetIn('<Sheet title="Sheet" />')).toThrow(/expected calculators/);
    expect(() => sheetIn(`<Sheet calculators={['clearance']} title="a" /><Sheet calculators={['clearance']} title="b" />`)).toThrow(/expected one/);
    expect(() => sheetGroups(['no-such-thing'])).toThrow(/calculator/);
  });

  test('has the inputs in the calculator’s own order', () => {
    expect(keysOn(['clearance'])).toEqual(inputKeys(calculatorById('clearance')));
  });

  test('names an input that two calculators share once, and leaves out what a calculator computes', () => {
    const keys = keysOn(['shaft-line', 'shaft-ripple']);
    expect(new Set(keys).size).toBe(keys.length);
    expect(keys.filter((key) => key === 'shaftJoints')).toHaveLength(1);
    expect(keys).not.toContain('upperJointAngle');
    expect(keys).toContain('upperClocking');
    expect(computedOn(['shaft-line', 'shaft-ripple'])).toContain(vocabulary.upperJointAngle.name);
  });

  test('gives both units where they differ, one where they do not, and words to tick for a choice', () => {
    const line = (key: string) => sheetGroups(['shaft-line']).flatMap((group) => group.lines).find((one) => one.key === key);
    expect(line('slipIn')?.units).toEqual(['in', 'mm']);
    expect(line('columnFall')?.units).toEqual(['°']);
    expect(line('shaftJoints')?.options).toHaveLength(3);
  });
});

test.each(withSheet)('every line on the sheet of %s says how to measure it', (_name, sheet) => {
  const lines = sheetGroups(sheet.calculators).flatMap((group) => group.lines);
  expect(lines.length).toBeGreaterThan(0);
  for (const line of lines) expect(line.how.length, line.key).toBeGreaterThan(10);
});
