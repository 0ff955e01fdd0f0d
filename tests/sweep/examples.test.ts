import { describe, expect, test } from 'vitest';
import { calculators, evaluate } from '../../src/calculators/index.ts';
import type { Values } from '../../src/calculators/index.ts';
import { demoInputs } from './sample.ts';

const examples = calculators.flatMap((record) => record.paper.examples.map((example) => [record.id, example.source, record, example] as const));

describe('a worked example printed with a calculator', () => {
  test.each(examples)('%s: %s', (_id, _source, record, example) => {
    const result = evaluate(record, { ...demoInputs(record), ...(example.inputs as Values) });
    expect(result.ok).toBe(true);
    if (!result.ok) return;
    expect(Object.keys(example.results).length).toBeGreaterThan(0);
    for (const [key, { value, within }] of Object.entries(example.results)) {
      const found = result.values[key] as number;
      expect(Math.abs(found - value), `${key}: expected ${value} within ${within}, found ${found}`).toBeLessThanOrEqual(within * Math.max(Math.abs(value), 1e-12));
      expect(within).toBeLessThanOrEqual(0.05); // half a unit of a figure printed with two digits
    }
  });
});
