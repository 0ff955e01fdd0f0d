import { describe, expect, test } from 'vitest';
import { firingCautions } from '../../src/build/cautions.ts';
import { sayIn } from '../../src/build/fields.ts';
import { calculators, evaluate, hardProblem } from '../../src/calculators/index.ts';
import type { AnyCalculator, Values } from '../../src/calculators/index.ts';
import { demoInputs } from './sample.ts';

const say = sayIn('us');

function fired(record: AnyCalculator, over: Values): string[] {
  const inputs: Values = { ...demoInputs(record), ...over };
  for (const [key, value] of Object.entries(over)) expect(hardProblem(key, value as number), key).toBeUndefined();
  const result = evaluate(record, inputs);
  if (!result.ok) throw new Error(`${record.id}: expected a result, found: ${result.refusal.refused(say)}`);
  return firingCautions(record, result.values, say).map((caution) => caution.id);
}

const conditional = calculators.flatMap((record) => record.cautions.filter((caution) => caution.when).map((caution) => [record.id, caution.id, record, caution] as const));
const standing = calculators.flatMap((record) => record.cautions.filter((caution) => !caution.when).map((caution) => [record.id, caution.id, record] as const));

describe('a conditional caution', () => {
  test.each(conditional)('%s, %s fires when it should', (_record, id, record, caution) => {
    expect(fired(record, caution.fires as Values)).toContain(id);
  });
  test.each(conditional)('%s, %s is silent when it should be', (_record, id, record, caution) => {
    expect(fired(record, caution.silent as Values)).not.toContain(id);
  });
});

test.each(standing)('a standing caution, %s, %s, stands beside the demo truck', (_record, id, record) => {
  expect(fired(record, {})).toContain(id);
});

test.each(calculators.map((c) => [c.id, c] as const))('the cautions of %s say what happens and what to do', (_id, record) => {
  for (const caution of record.cautions) {
    expect(caution.todo.length).toBeGreaterThan(10);
    expect(caution.todo).toMatch(/[.]$/);
  }
});
