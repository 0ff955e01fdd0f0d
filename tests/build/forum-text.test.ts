import { expect, test } from 'vitest';
import { readRecord } from '../../src/build/fields.ts';
import { forumText } from '../../src/build/forum-text.ts';
import { calculatorById, inputKeys } from '../../src/calculators/index.ts';

const record = calculatorById('line-pressure');

test('the text for a forum carries title, every input with its unit, results, cautions and the link', () => {
  const text = forumText(record, readRecord(record, () => undefined, 'us'), 'us', 'https://example.org/calculators/line-pressure/?v=1#line-pressure');
  const lines = text.split('\n');
  expect(lines[0]).toBe(record.title);
  expect(lines.filter((line) => line.startsWith('- ')).length).toBe(inputKeys(record).length + record.outputs.length + 1);
  expect(text).toContain('- front master cylinder bore: 0.70 in = 17.78 mm');
  expect(text).toMatch(/- front line pressure: 764.psi/);
  expect(text).toMatch(/- NOTICE: /);
  expect(lines.at(-1)).toBe('https://example.org/calculators/line-pressure/?v=1#line-pressure');
});

test('with an unreadable field the text gives the reason and no number', () => {
  const reading = readRecord(record, (key) => (key === 'controlForce' ? { text: '3,000', unit: 'lbf', system: 'us' } : undefined), 'us');
  const text = forumText(record, reading, 'us', 'x');
  expect(text).toContain('No result until control force');
  expect(text).not.toMatch(/front line pressure/);
});

test('thousands keep together where a forum eats typographic spaces', () => {
  const record = calculatorById('disc-torque');
  const text = forumText(record, readRecord(record, () => undefined, 'si'), 'si', 'x');
  expect(text).toMatch(/front clamping force per caliper: 11,700 N/);
  expect(text).not.toMatch(/\d \d{3}(?!\d)/);
});
