import { describe, expect, test } from 'vitest';
import { readRecord } from '../../src/build/fields.ts';
import type { Typed } from '../../src/build/fields.ts';
import { calculators, entryOf, inputKeys } from '../../src/calculators/index.ts';
import type { AnyCalculator, Values } from '../../src/calculators/index.ts';
import type { Feed } from '../../src/calculators/record.ts';
import { editText, unitFor } from '../../src/units/index.ts';

/** A feed that hands over the record's own results. One that only borrows its sums has no part of its cautions. */
const handsOver = (feed: Feed, record: AnyCalculator): boolean => feed.id === record.id && (feed.outputs as readonly string[]).some((key) => (record.outputs as readonly string[]).includes(key));
const feeding = calculators.filter((record) => calculators.some((other) => other.feeds?.some((feed) => handsOver(feed, record))));
const loud = (record: AnyCalculator) => record.cautions.filter((caution) => caution.when && (caution.level === 'danger' || caution.level === 'warning'));

describe.each(feeding.map((record) => [record.id, record] as const))('%s, which feeds others,', (id, record) => {
  test('has an alarm for every danger and warning that depends on the numbers, by the same rule', () => {
    expect(record.alarms?.map(({ caution, level, when }) => ({ id: caution, level, when }))).toEqual(loud(record).map(({ id: caution, level, when }) => ({ id: caution, level, when })));
    for (const { first } of record.alarms ?? []) expect(first).toMatch(/^[a-z][^.]{10,90}\.$/);
    for (const other of calculators) for (const feed of other.feeds ?? []) if (feed.id === id) expect(feed.alarms).toBe(record.alarms);
  });
});

/** Typed text for SI values. */
function typed(over: Values): (key: string) => Typed | undefined {
  return (key) => {
    const entry = entryOf(key);
    const value = over[key];
    if (value === undefined) return undefined;
    if (!('dimension' in entry)) return { text: String(value), unit: '', system: 'us' };
    const unit = unitFor(entry.dimension, 'us');
    return { text: editText(value as number, entry.dimension, unit), unit, system: 'us' };
  };
}

const routes = feeding.flatMap((record) => calculators.filter((other) => other.feeds?.some((feed) => feed.id === record.id)).flatMap((other) => (record.alarms ?? []).map((alarm) => [other.id, record.id, alarm.caution, other, record, alarm] as const)));

describe('an alarm upstream', () => {
  test.each(routes)('%s passes on what %s says of %s, at the field and beside the answer', (_other, id, caution, other, record, alarm) => {
    const fires = record.cautions.find((c) => c.id === caution)?.fires as Values;
    const lookup = typed(fires);
    const own = readRecord(record, lookup, 'us');
    if (own.state !== 'ok') throw new Error(own.reason);
    expect(alarm.when(own.values as never)).toBe(true);
    const reading = readRecord(other, lookup, 'us');
    if (reading.state !== 'ok') throw new Error(`${other.id}: ${reading.reason}`);
    const fed = reading.fields.filter((field) => field.from?.id === id);
    // Where the alarm's cause is itself typed over here, nothing of that calculator is in use.
    if (fed.length === 0) return expect(inputKeys(other).some((key) => fires[key] !== undefined)).toBe(true);
    for (const field of fed) expect(field.alarms?.map((a) => a.caution)).toContain(caution);
    expect(reading.alarms.some((a) => a.caution === caution && a.in.id === id)).toBe(true);
    const levels = reading.alarms.map((a) => a.level);
    expect(levels).toEqual([...levels].sort((a, b) => a.localeCompare(b)));
  });

  test('is silent when the value is typed instead of computed', () => {
    const lockOrder = calculators.find(({ id }) => id === 'lock-order') as AnyCalculator;
    const stop = typed({ barStopAngle: 0.157 });
    const on = readRecord(lockOrder, stop, 'us');
    expect(on.state === 'ok' && on.alarms.map((a) => `${a.in.title} ${a.level}`)).toContain('Balance bar danger');
    const fed = new Set(on.fields.filter((field) => field.origin === 'computed').map((field) => field.key));
    const own = typed(Object.fromEntries([...fed].map((key) => [key, on.fields.find((f) => f.key === key)?.value as number])));
    const off = readRecord(lockOrder, (key) => stop(key) ?? own(key), 'us');
    expect(off.state === 'ok' && off.alarms).toEqual([]);
  });
});
