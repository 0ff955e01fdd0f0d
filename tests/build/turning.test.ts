import { describe, expect, test } from 'vitest';
import { readRecord, sayIn } from '../../src/build/fields.ts';
import type { Lookup, System, Typed } from '../../src/build/fields.ts';
import { askable, besidePresent, turning, wantable } from '../../src/build/turning.ts';
import type { Turned } from '../../src/build/turning.ts';
import { calculatorById, calculators, entryOf } from '../../src/calculators/index.ts';
import type { AnyCalculator } from '../../src/calculators/index.ts';
import { isQuantity } from '../../src/calculators/vocabulary/index.ts';
import { standardBores } from '../../src/units/index.ts';
import { allOf, randomFrom } from '../sweep/sample.ts';

interface Ask {
  readonly ask: string;
  readonly fix: string;
  readonly target: number;
}
type Reader = Readonly<Record<string, Typed>>;
const typed = (text: string, unit: string): Typed => ({ text, unit, system: 'us' });

function turn(record: AnyCalculator, question: Ask, reader: Reader = {}, system: System = 'us', late = () => false): Turned {
  const lookup: Lookup = (key) => reader[key];
  return allOf(turning(record, readRecord(record, lookup, system).fields, lookup, system, sayIn(system), question, late));
}

/** What the page gives once the answer stands in its field. */
function give(record: AnyCalculator, key: string, text: string, unit: string, fix: string, reader: Reader = {}): number {
  const reading = readRecord(record, (name) => (name === key ? typed(text, unit) : reader[name]), 'us');
  if (reading.state === 'blank') throw new RangeError(reading.reason);
  return reading.values[fix] as number;
}

function ways(turned: Turned) {
  if (!('ways' in turned)) throw new RangeError(`turned: expected answers, found ${JSON.stringify(turned)}`);
  return turned;
}

describe('typed into its field, an answer gives what was wanted', () => {
  test('also where other calculators follow the input asked for: a wider bar moves the share it is computed from', () => {
    const record = calculatorById('braking-rate');
    const before = give(record, 'grip', '0.9', '', 'brakingRateReached');
    const { kind, ways: all } = ways(turn(record, { ask: 'barSpacing', fix: 'rearBrakeFraction', target: 0.25 }));
    expect(kind).toBe('found');
    for (const way of all) {
      expect(give(record, 'barSpacing', way.text, way.unit, 'rearBrakeFraction')).toBeCloseTo(0.25, 4);
      expect(way.gives).toBe(give(record, 'barSpacing', way.text, way.unit, 'rearBrakeFraction'));
    }
    expect(before).toBeGreaterThan(0);
  });

  test('a share typed by the reader stays as typed while the bar changes', () => {
    const record = calculatorById('braking-rate');
    expect(turn(record, { ask: 'barSpacing', fix: 'rearBrakeFraction', target: 0.25 }, { frontShare: typed('62', '%') }).kind).toBe('unmoved');
  });

  test.each(calculators.filter((c) => !c.oneWay).map((c) => [c.id, c] as const))('record %s, whatever is asked', (id, record) => {
    const random = randomFrom(17);
    const reading = readRecord(record, () => undefined, 'us');
    if (reading.state === 'blank') throw new RangeError(reading.reason);
    const [asks, fixes] = [askable(record), wantable(record)];
    let answered = 0;
    for (let k = 0; k < (id === 'pedal-ratio' || id === 'circuit-failure' ? 6 : 30); k++) {
      const ask = asks[Math.floor(random() * asks.length)] as string;
      const fix = fixes[Math.floor(random() * fixes.length)] as string;
      const target = (reading.values[fix] as number) * (0.8 + 0.4 * random());
      const turned = turn(record, { ask, fix, target });
      if (turned.kind === 'refused') expect(turned.words.length).toBeGreaterThan(15);
      if (!('ways' in turned)) continue;
      for (const way of [...turned.ways, ...turned.bores]) {
        expect(way.words).not.toMatch(/NaN|undefined|Infinity/);
        if (way.gives === undefined) continue;
        answered++;
        expect(way.gives).toBe(give(record, ask, way.text, way.unit, fix));
      }
      if (turned.kind === 'found') for (const way of turned.ways) {
        // Five digits of the input; how far they carry depends on how steeply the result moves.
        const off = Math.abs(give(record, ask, way.text, way.unit, fix) - target);
        expect(off, `${ask} ${way.text} for ${fix} ${target}`).toBeLessThanOrEqual(0.02 * Math.abs(target) + 1e-9);
      }
    }
    expect(answered).toBeGreaterThan(0);
  });
});

test('which front bore gives a pressure: the bore, and the standard ones below and above it', () => {
  const record = calculatorById('line-pressure');
  const at = (bore: string) => give(record, 'frontMasterBore', bore, 'in', 'frontPressure');
  const target = 0.5 * (at('3/4') + at('13/16'));
  const { ways: all, bores } = ways(turn(record, { ask: 'frontMasterBore', fix: 'frontPressure', target }));
  expect(all).toHaveLength(1);
  expect(all[0]!.words).toMatch(/^0\.7\d+\sin \(\d+\.\d+\smm\)$/);
  expect(bores.map((way) => way.text)).toEqual(['3/4', '13/16']);
  expect(bores.map((way) => way.gives)).toEqual([at('3/4'), at('13/16')]);
  expect(bores[0]!.gives).toBeGreaterThan(target);
  expect(bores[1]!.gives).toBeLessThan(target);
});

test('a standard bore has no neighbors to offer, and beyond the last one there is one', () => {
  const record = calculatorById('line-pressure');
  const at = (bore: string) => give(record, 'frontMasterBore', bore, 'in', 'frontPressure');
  expect(ways(turn(record, { ask: 'frontMasterBore', fix: 'frontPressure', target: at('13/16') })).bores).toEqual([]);
  expect(ways(turn(record, { ask: 'frontMasterBore', fix: 'frontPressure', target: at('1.1') })).bores.map((way) => way.text)).toEqual([standardBores[standardBores.length - 1]!.label]);
  expect(ways(turn(record, { ask: 'frontMasterBore', fix: 'frontPressure', target: at('0.5') })).bores.map((way) => way.text)).toEqual([standardBores[0]!.label]);
});

test('no value that does it: the nearest, and what it gives', () => {
  const record = calculatorById('line-pressure');
  const { kind, ways: [way] } = ways(turn(record, { ask: 'controlForce', fix: 'frontPressure', target: 1e9 }));
  expect(kind).toBe('nearest');
  expect(way!.gives).toBeLessThan(1e9);
  expect(way!.note).toMatch(/Outside the usual/);
});

test('an input that moves nothing says so', () => {
  expect(turn(calculatorById('lock-order'), { ask: 'grip', fix: 'criticalRate', target: 0.9 })).toEqual({ kind: 'unmoved' });
});

test('the reader’s own value is known as his', () => {
  const record = calculatorById('line-pressure');
  const { ways: [way] } = ways(turn(record, { ask: 'controlForce', fix: 'frontPressure', target: give(record, 'controlForce', '90', 'lbf', 'frontPressure') }));
  expect(way!.present).toBe(true);
});

test('an answer that is dangerous says so: a rear gain that makes the rear lock first', () => {
  const record = calculatorById('lock-order');
  const { ways: [bad] } = ways(turn(record, { ask: 'rearBrakeGain', fix: 'criticalRate', target: 0.5 }));
  expect(bad!.caution?.level).toBe('danger');
  const { ways: [good] } = ways(turn(record, { ask: 'rearBrakeGain', fix: 'criticalRate', target: 1.1 }));
  expect(good!.caution?.level).not.toBe('danger');
});

test('the answer does not depend on how often the search is interrupted, and no evaluation is made twice', () => {
  for (const [id, ask, fix, target] of [['lock-order', 'frontShare', 'criticalRate', 1], ['circuit-failure', 'barSpacing', 'rateRearDead', 0.3], ['line-pressure', 'controlForce', 'frontPressure', 1e9]] as const) {
    const record = calculatorById(id);
    let evaluations = 0;
    const counted: AnyCalculator = { ...record, compute: (v) => { evaluations++; return record.compute(v); } };
    const whole = turn(counted, { ask, fix, target });
    const once = evaluations;
    evaluations = 0;
    let steps = 0;
    const lookup: Lookup = () => undefined;
    const work = turning(counted, readRecord(counted, lookup, 'us').fields, lookup, 'us', sayIn('us'), { ask, fix, target }, () => true);
    evaluations = 0;
    let step = work.next();
    for (; !step.done; step = work.next()) {
      steps++;
      expect(evaluations).toBeLessThanOrEqual(steps + 3); // a way is read whole, and once more where rounding led out of range
    }
    expect(step.value).toEqual(whole);
    expect(steps).toBeGreaterThan(30);
    expect(evaluations).toBeLessThanOrEqual(once);
  }
});

test('choices can neither be asked for nor wanted', () => {
  for (const record of calculators) for (const key of [...askable(record), ...wantable(record)]) expect(isQuantity(entryOf(key))).toBe(true);
});

test('a target beyond all reach is answered with the limit itself, and with what stands past it', () => {
  const most = ways(turn(calculatorById('circuit-volume'), { ask: 'frontAir', fix: 'frontTakeUp', target: 1e6 }));
  expect(most.kind).toBe('nearest');
  expect(most.ways[0]!.text).toBe('12.2047'); // 200 cm³, and not a hair less
  expect(most).not.toHaveProperty('beyond');
  const feed = ways(turn(calculatorById('pedal-cut'), { ask: 'controlForce', fix: 'cutForce', target: 1e9 }));
  expect(feed.kind).toBe('nearest');
  expect(feed).toMatchObject({ beyond: expect.stringMatching(/^\d+(\.\d)?\slbf: [^−]*\.$/) });
  const air = ways(turn(calculatorById('air-from-travel'), { ask: 'firmTravel', fix: 'firmExcess', target: -1e3 }));
  expect(air).toMatchObject({ kind: 'nearest', beyond: expect.stringMatching(/^2\.\d+\sin: The firm push went 0\.\d+\sin less far than the light one/) });
});

test('what is nothing beside the present result is shown as 0 where nothing was wanted, and only there', () => {
  expect(besidePresent(3.842e-7, 0, 0.8)).toBe(0);
  expect(besidePresent(3.842e-7, 3.8e-7, 0.8)).toBe(0);
  expect(besidePresent(3.842e-7, 0.1, 0.8)).toBe(3.842e-7); // far off the target: to be seen
  expect(besidePresent(0.01, 0, 0.8)).toBe(0.01);
  expect(besidePresent(3.842e-7, 0, 0)).toBe(3.842e-7);
});
