import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { readRecord } from '../../src/build/fields.ts';
import { linkName, linkQuery, readLink } from '../../src/build/links.ts';
import { calculatorById, calculators, inputKeys } from '../../src/calculators/index.ts';
import type { AnyCalculator } from '../../src/calculators/index.ts';

const demo = (record: AnyCalculator) => readRecord(record, () => undefined, 'us');
const opened = (record: AnyCalculator, query: string) => {
  const link = readLink(record, query);
  return readRecord(record, (key) => link?.values.get(key), 'us');
};

describe.each(calculators.map((c) => [c.id, c] as const))('a link to %s', (_id, record) => {
  const query = linkQuery(record, demo(record).fields);

  test('carries the version and every input, with its unit', () => {
    const params = new URLSearchParams(query);
    expect([...params.keys()]).toEqual(['v', ...inputKeys(record).map(linkName)]);
    for (const field of demo(record).fields) expect(params.get(linkName(field.key))).toContain(field.unit);
  });

  test('computes the sender’s numbers when opened', () => {
    const sent = demo(record);
    const got = opened(record, query);
    expect(got.state).toBe('ok');
    if (got.state !== 'ok' || sent.state !== 'ok') return;
    for (const key of record.outputs as readonly string[]) {
      const [a, b] = [sent.values[key], got.values[key]];
      if (typeof a !== 'number' || typeof b !== 'number') expect(b).toBe(a);
      else expect(Math.abs(a - b)).toBeLessThanOrEqual(1e-4 * Math.max(Math.abs(a), 1e-9));
    }
  });

  test('ignores what it does not know and keeps it in the address', () => {
    const current = `${query}&theme=x&utm=1`;
    expect(opened(record, current).state).toBe('ok');
    expect(linkQuery(record, demo(record).fields, current)).toMatch(/&theme=x&utm=1$/);
  });

  test('with a value missing shows the error at its field and no number', () => {
    const params = new URLSearchParams(query);
    const key = inputKeys(record)[1] as string;
    params.delete(linkName(key));
    const got = opened(record, `?${params}`);
    expect(got.state).toBe('blank');
    expect(got.fields.find((field) => field.key === key)?.problem).toMatch(/does not carry/);
  });

  test('with two values for one input asks which', () => {
    const key = inputKeys(record)[0] as string;
    const got = opened(record, `${query}&${linkName(key)}=77`);
    expect(got.state).toBe('blank');
    expect(got.fields.find((field) => field.key === key)?.problem).toMatch(/twice/);
  });

  test('with hostile values neither throws nor computes', () => {
    const key = inputKeys(record)[0] as string;
    for (const text of ['<script>alert(1)</script>', 'x'.repeat(10_000), '%00', '\u202e12', 'javascript:1', '{"a":1}']) {
      const params = new URLSearchParams(query);
      params.set(linkName(key), text);
      const got = opened(record, `?${params}`);
      expect(got.state).toBe('blank');
      expect(got.fields.find((field) => field.key === key)?.text).toBe(text);
    }
  });
});

test('a query that says nothing of a calculator is no link to it', () => {
  expect(readLink(calculatorById('line-pressure'), '?utm=1&v=1')).toBeUndefined();
  expect(readLink(calculatorById('line-pressure'), '?__proto__=1&constructor=2')).toBeUndefined();
});

test('a link of a newer version says so', () => {
  const record = calculatorById('line-pressure');
  const query = linkQuery(record, demo(record).fields).replace('v=1', 'v=99');
  expect(readLink(record, query)?.newer).toBe(true);
});

test.each(['-1e12', '-Infinity', '-1e300', '0', '1.5', 'x', ''])('a link of version %s is read as the first, and at once', (version) => {
  const record = calculatorById('line-pressure');
  const query = linkQuery(record, demo(record).fields).replace('v=1&', `v=${version}&`);
  expect(readLink(record, query)?.newer).toBe(false);
  expect(opened(record, query).state).toBe('ok');
});

test('a value without a unit means the same to every reader', () => {
  const record = calculatorById('line-pressure');
  const link = readLink(record, linkQuery(record, demo(record).fields).replace('90lbf', '90'));
  const [us, si] = (['us', 'si'] as const).map((system) => readRecord(record, (key) => link?.values.get(key), system).fields.find((f) => f.key === 'controlForce'));
  expect(us?.value).toBeCloseTo(400.34, 2);
  expect(si?.value).toBe(us?.value);
});

test('no link carries a number that its reader would be asked about', () => {
  const record = calculatorById('line-pressure');
  // From half a percent to 50 %, and a bore in steps finer than a sixteenth.
  for (let n = 1; n <= 100; n++) {
    const reading = readRecord(record, (key) => (key === 'frontMasterBore' ? { text: `${0.5 + n / 160} in`, unit: 'in', system: 'us' } : key === 'frontShare' ? { text: `${n / 2} %`, unit: '%', system: 'us' } : undefined), 'us');
    for (const key of ['frontMasterBore', 'frontShare']) {
      const got = opened(record, linkQuery(record, reading.fields)).fields.find((field) => field.key === key);
      expect(got?.problem).toBe(reading.fields.find((field) => field.key === key)?.problem);
      expect(got?.value).toBe(reading.fields.find((field) => field.key === key)?.value);
    }
  }
});

test('a fraction stays readable in a link', () => {
  const record = calculatorById('line-pressure');
  const reading = readRecord(record, (key) => (key === 'frontMasterBore' ? { text: '13/16', unit: 'in', system: 'us' } : undefined), 'us');
  expect(linkQuery(record, reading.fields)).toContain('&front-master-bore=13/16in&');
});

test.each([['0.62 fraction', 0.62], ['62', 0.62], ['62 %', 0.62], ['0.5 %', 0.005]])('a share typed as %s arrives as typed', (text, value) => {
  const record = calculatorById('line-pressure');
  const sent = readRecord(record, (key) => (key === 'linkageEfficiency' ? { text, unit: '%', system: 'us' } : undefined), 'us');
  const link = readLink(record, linkQuery(record, sent.fields));
  const got = readRecord(record, (key) => link?.values.get(key), 'us');
  const field = got.fields.find((f) => f.key === 'linkageEfficiency');
  // 0.5 % is below the possible range, and must be refused as 0.5 %, not read as a half.
  if (value > 0.2) expect(field?.value).toBeCloseTo(value, 12);
  else expect(field?.problem).toMatch(/0\.5\s%/);
});

interface Golden {
  readonly calculator: string;
  readonly query: string;
  readonly results: Readonly<Record<string, number>>;
}
const golden = JSON.parse(readFileSync(new URL('../golden/links.json', import.meta.url), 'utf8')) as Golden[];

describe('a link once published', () => {
  test.each(golden.map((entry, k) => [`${k + 1}, ${entry.calculator}`, entry] as const))('still gives its numbers: %s', (_name, { calculator, query, results }) => {
    const record = calculatorById(calculator);
    const got = opened(record, query);
    expect(got.state).toBe('ok');
    if (got.state !== 'ok') return;
    expect(Object.keys(results).length).toBeGreaterThan(0);
    for (const [key, value] of Object.entries(results)) expect(Math.abs((got.values[key] as number) - value)).toBeLessThanOrEqual(1e-9 * Math.max(1e-12, Math.abs(value)));
  });

  test('covers every calculator', () => {
    expect([...new Set(golden.map((entry) => entry.calculator))].sort()).toEqual(calculators.map((c) => c.id).sort());
  });
});
