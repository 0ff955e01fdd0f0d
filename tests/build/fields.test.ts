import { describe, expect, test } from 'vitest';
import { readRecord } from '../../src/build/fields.ts';
import type { Typed } from '../../src/build/fields.ts';
import { calculators, entryOf, inputKeys } from '../../src/calculators/index.ts';
import type { Feed } from '../../src/calculators/record.ts';
import { unitFor } from '../../src/units/index.ts';

function upstream(record: Feed): Feed[] {
  return (record.feeds ?? []).flatMap((feed) => [feed, ...upstream(feed)]);
}

function parsecs(key: string): Typed {
  const entry = entryOf(key);
  if (!('dimension' in entry)) throw new RangeError(`${key}: expected a number`);
  return { text: '12 parsecs', unit: unitFor(entry.dimension, 'us'), system: 'us' };
}

/** Each calculator with each input that only reaches it through others. */
const far = calculators.flatMap((record) => {
  const own = new Set<string>(inputKeys(record));
  const keys = new Set(upstream(record).flatMap((feed) => inputKeys(feed) as string[]).filter((key) => !own.has(key) && 'dimension' in entryOf(key)));
  return [...keys].map((key) => [record.id, key, record] as const);
});

describe('a wrong number in another calculator', () => {
  test('there are chains to test', () => expect(far.length).toBeGreaterThan(20));

  test.each(far)('%s names %s once, where it stands and what is wrong, in one sentence', (_id, key, record) => {
    const entry = entryOf(key);
    const reading = readRecord(record, (k) => (k === key ? parsecs(key) : undefined), 'us');
    if (reading.state === 'ok') throw new Error('expected no result');
    expect(reading.causes).toHaveLength(1);
    const [cause] = reading.causes;
    expect(cause?.key).toBe(key);
    expect(inputKeys(cause!.in)).toContain(key);
    const waiting = reading.fields.filter((field) => field.problem !== undefined);
    expect(waiting.length).toBeGreaterThan(0);
    for (const [text, where] of [[reading.reason, cause], ...waiting.map((field) => [field.problem, field.cause] as const)] as const) {
      expect(text?.split(`${entry.name} in “${where?.in.title}”`)).toHaveLength(2);
      expect(text?.split('parsecs is not a unit')).toHaveLength(2);
      expect(text).not.toMatch(/has no result|comes from/);
      expect(text?.match(/[.?!](\s|$)/g)).toHaveLength(1);
    }
  });

  test('numbers that together rule a result out are named with the calculator that says so', () => {
    const refused: Feed = { id: 'refused', title: 'Refused', inputs: [], outputs: ['frontBrakeGain'], compute: () => ({ refused: () => 'Nothing is left.' }) } as unknown as Feed;
    const middle: Feed = { id: 'middle', title: 'Middle', inputs: [{ title: '', of: ['frontBrakeGain'] }], outputs: ['rearBrakeGain'], feeds: [refused], compute: () => ({}) } as unknown as Feed;
    const last: Feed = { id: 'last', title: 'Last', inputs: [{ title: '', of: ['rearBrakeGain'] }], outputs: [], feeds: [middle], compute: () => ({}) } as unknown as Feed;
    const reading = readRecord(last, () => undefined, 'us');
    expect(reading.state === 'blank' && reading.reason).toBe('“Refused” has no result: Nothing is left.');
  });
});
