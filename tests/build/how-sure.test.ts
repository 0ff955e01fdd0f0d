import { describe, expect, test } from 'vitest';
import { demoSure } from '../../src/build/demo-sure.ts';
import { readRecord, sayIn } from '../../src/build/fields.ts';
import { drawSure, padsOfOneCompound } from '../../src/build/how-sure.ts';
import { barName, computedKeys, plainName, sureOf, sureWords, usualDraws } from '../../src/build/sure-words.ts';
import type { Sure } from '../../src/build/sure-words.ts';
import { chanceOf } from '../../src/calculators/chance.ts';
import { calculatorById, calculators, entryOf, evaluate, inputKeys } from '../../src/calculators/index.ts';
import type { AnyCalculator, Values } from '../../src/calculators/index.ts';
import { isQuantity, vocabulary } from '../../src/calculators/vocabulary/index.ts';
import { allOf, demoInputs } from '../sweep/sample.ts';

const say = sayIn('us');
const nineInTen = 2 * 1.6448536269514722;

function valuesOf(record: AnyCalculator, change: Record<string, number | string> = {}): Values {
  const e = evaluate(record, { ...demoInputs(record), ...change });
  if (!e.ok) throw new RangeError(`${record.id}: expected an answer`);
  return e.values;
}

function sure(id: string, change: Record<string, number | string> = {}, samePads = false): Sure {
  const record = calculatorById(id);
  const found = allOf(drawSure(record, valuesOf(record, change), samePads));
  if (!found) throw new RangeError(`${id}: expected an answer`);
  return found;
}
const width = ({ low, high }: { low: number; high: number }) => high - low;

/** Scatter of a p95 − p5 among n draws, as a part of it; four times. */
const scatter = (draws: number) => (4 * 2.6) / nineInTen / Math.sqrt(draws);

describe('an error that the reader types', () => {
  test('is the error of the scales: the height spreads as its own formula says, tape errors apart', () => {
    const record = calculatorById('cg-by-axle-lift');
    for (const scaleError of [1, 3, 8]) {
      const values = valuesOf(record, { scaleError });
      const s = sure('cg-by-axle-lift', { scaleError });
      // The formula leaves out the tape: its 3 mm on lifts and wheelbase add less than 3 %.
      expect(width(s) / (nineInTen * (values['cgSpread'] as number))).toBeGreaterThan(1 - scatter(4000));
      expect(width(s) / (nineInTen * (values['cgSpread'] as number))).toBeLessThan(1.03 + scatter(4000));
    }
  });

  test('of nothing leaves a gap as uncertain as the two radii', () => {
    const s = sure('clearance', { positionError: 0 });
    const radius = (entryOf('firstRadius') as { tolerance: { absolute: number } }).tolerance.absolute;
    expect(s.bars.map((bar) => bar.key).sort()).toEqual(['firstRadius', 'secondRadius']);
    expect(Math.abs(width(s) / (nineInTen * Math.SQRT2 * radius) - 1)).toBeLessThan(scatter(4000));
  });

  test('of tape and marks, column by column of a list, blurs a pad’s place as its own lens says', () => {
    for (const change of [{ tapeError: 0.003, markError: 0 }, { tapeError: 0, markError: 0.002 }, { tapeError: 0.002, markError: 0.004 }]) {
      const values = valuesOf(calculatorById('pad-place'), change);
      const s = sure('pad-place', change);
      expect(Math.abs(width(s) / (nineInTen * (values['padErrorZ'] as number)) - 1)).toBeLessThan(scatter(1000));
      for (const bar of s.bars) expect(bar.cell?.column === 'distance').toBe(change.markError === 0 || (change.tapeError > 0 && bar.cell?.column === 'distance'));
    }
  });

  test('of the tape spreads a gap as the record’s own formula says', () => {
    const record = calculatorById('clearance');
    const positionError = 0.004;
    const values = valuesOf(record, { positionError });
    const radius = (entryOf('firstRadius') as { tolerance: { absolute: number } }).tolerance.absolute;
    const sigma = Math.hypot(values['gapError'] as number, Math.SQRT2 * radius);
    expect(Math.abs(width(sure('clearance', { positionError })) / (nineInTen * sigma) - 1)).toBeLessThan(scatter(4000) + 0.01);
  });
});

describe('a balance bar', () => {
  test('without friction is as sure as its two measures', () => {
    const s = sure('balance-bar', { barFriction: 0 });
    expect(s.bars[0]!.key).toBe('barOffset');
    expect(s.bars.map((bar) => bar.key)).not.toContain('frictionBand');
  });

  test('with a dry bearing may stand anywhere within its friction band, and that is the widest bar', () => {
    const greased = sure('balance-bar', { barFriction: 0.05 });
    const dry = sure('balance-bar', { barFriction: 0.2 });
    expect(dry.bars[0]!.key).toBe('frictionBand');
    expect(width(dry)).toBeGreaterThan(width(greased));
    const band = valuesOf(calculatorById('balance-bar'), { barFriction: 0.2 })['frictionBand'] as number;
    expect(width(dry)).toBeGreaterThan(2 * 0.9 * band * (1 - scatter(4000)));
  });
});

describe('brake pads of one compound', () => {
  test('leave the lock order surer and the braking rate less sure: balance is a quotient, stopping a sum', () => {
    expect(width(sure('lock-order', {}, true))).toBeLessThan(0.8 * width(sure('lock-order')));
    expect(width(sure('braking-rate', {}, true))).toBeGreaterThan(1.02 * width(sure('braking-rate')));
  });
});

describe('the chance that the rear locks first', () => {
  test('is of the road asked about: grip is given, not measured', () => {
    const chances = [0.5, 0.7, 0.9, 1.1].map((grip) => sure('lock-order', { grip }));
    chances.slice(1).forEach((s, k) => expect(s.happens).toBeGreaterThan(chances[k]!.happens!));
    for (const s of chances) {
      expect(s.bars.map((bar) => bar.key)).not.toContain('grip');
      expect(s.low).toBe(chances[0]!.low);
    }
  });

  test('is one half, within its counting error, where the critical rate equals the grip', () => {
    const record = calculatorById('lock-order');
    // The median of the critical rate: each gain and load may be off either way as likely.
    let [low, high] = [0.5, 0.8];
    for (let k = 0; k < 30; k++) {
      const frontShare = (low + high) / 2;
      if ((valuesOf(record, { frontShare })['criticalRate'] as number) < 0.9) low = frontShare;
      else high = frontShare;
    }
    const s = sure('lock-order', { frontShare: low });
    // A quotient of two normal errors has its median off by less than 2 parts in 100.
    expect(Math.abs(s.happens! - 0.5)).toBeLessThan(0.02 + 4 * s.error!);
  });

  test('rises with the knee of the rear valve', () => {
    const chances = [0.5e6, 1.5e6, 3e6, 5e6].map((kneePressure) => sure('rear-valve', { kneePressure }).happens!);
    chances.slice(1).forEach((p, k) => expect(p).toBeGreaterThanOrEqual(chances[k]!));
    expect(chances[3]).toBeGreaterThan(chances[0]! + 0.2);
  });
});

test('the own tolerance of every computed input covers the errors of what it is computed from', () => {
  let covered = 0;
  for (const record of calculators) for (const feed of record.feeds ?? []) for (const key of inputKeys(record)) {
    if (!(feed.outputs as readonly string[]).includes(key)) continue;
    const entry = entryOf(key);
    if (!isQuantity(entry)) continue;
    const demo = demoInputs(feed as AnyCalculator);
    const c = chanceOf(feed, demo, { of: key, draws: 1000 })!;
    const { relative = 0, absolute = 0 } = entry.computedTolerance ?? entry.tolerance ?? {};
    const own = Math.hypot(relative * Math.abs(c.p50), absolute);
    // A tenth over for the scatter of 1000 draws.
    expect((c.p95 - c.p5) / nineInTen, `${record.id}: ${key}`).toBeLessThan(1.1 * own);
    covered++;
  }
  expect(covered).toBeGreaterThan(5);
});

test('a travel measured when the pedal was right is surer than the sum of the parts', () => {
  const record = calculatorById('air-from-travel');
  const [measured, summed] = [[], ['firmTravelExpected']].map((computed) => allOf(drawSure(record, valuesOf(record), false, computed))!);
  expect(width(summed!)).toBeGreaterThan(2 * width(measured!));
});

describe('in words', () => {
  const record = calculatorById('lock-order');
  const values = valuesOf(record);
  const s = demoSure('lock-order')!;
  const words = (change: Partial<Sure>) => sureWords(record, values, say, { ...s, ...change }).join(' ');

  test('the demo truck’s lock order has its range, its cause and its chance', () => {
    const text = words({});
    expect(text).toMatch(/9 of 10 trucks measured like this have their critical braking rate, empty, between 0\.6\d+\sg and 1\.0\d\sg/);
    expect(text).toMatch(/comes from front axle brake force per line pressure, then from rear/);
    expect(text).toContain(`In about ${Math.round(100 * s.happens!)} of 100 trucks measured like this (give or take 1, from counting 10,000) the rear locks first, empty, on a road with a grip of 0.9.`);
  });

  test('what was never seen is not called impossible, and what was always seen not certain', () => {
    expect(words({ happens: 0 })).toMatch(/In none of 10,000 .*rare, not impossible/);
    expect(words({ happens: 1 })).toMatch(/In all of 10,000 .*likely, not certain/);
  });

  test('rare things are counted in thousands, with their error', () => {
    expect(words({ happens: 0.0042, error: 0.00065 })).toMatch(/about 4 of 1,000 .*give or take 1/);
    expect(words({ happens: 0.0001, error: 0.0001 })).toMatch(/fewer than 1 of 1,000/);
    expect(words({ happens: 0.9999, error: 0.0001 })).toMatch(/more than 999 of 1,000/);
    expect(words({ happens: 0.3, error: 0.0145 })).toMatch(/about 30 of 100 .*give or take 3/);
  });

  test('trucks without an answer are counted and said, and none at all is said too', () => {
    expect(words({ refused: 0.12 })).toMatch(/In about 12 of 100 trucks measured like this the numbers have no answer; those are left out/);
    expect(words({ refused: 0.12 })).toMatch(/counting 8,800/);
    expect(sureWords(record, values, say, undefined).join()).toMatch(/Not one truck/);
  });

  test('a cell of a list goes by the label the reader gave its row, or by its number', () => {
    const points = valuesOf(calculatorById('drop-points'));
    expect(barName({ key: 'truckPoints', cell: { row: 0, column: 'z' } }, points)).toMatch(/^column end: /);
    expect(barName({ key: 'pointPairs', cell: { row: 1, column: 'length' } }, points)).toMatch(/ 2: /);
  });

  test('a result that nothing moves says so', () => expect(words({ bars: [] })).toMatch(/Nothing measured here moves/));

  test.each(Object.keys(vocabulary))('%s has a name without parentheses and signs', (key) => {
    expect(plainName(key)).not.toMatch(/[()−+±]|\s$|,$/);
    expect(plainName(key).length).toBeGreaterThan(2);
  });
});

describe.each(calculators.map((c) => [c.id, c] as const))('record %s', (id, record) => {
  test('says how sure the demo truck is, the same every time', () => {
    const s = demoSure(id);
    expect(s).toBeDefined();
    expect(allOf(drawSure(record, valuesOf(record), false, computedKeys(readRecord(record, () => undefined, 'us').fields)))).toEqual(s);
    expect(s!.low).toBeLessThan(s!.high);
    expect(s!.bars.length).toBeGreaterThan(0);
    const reading = readRecord(record, () => undefined, 'us');
    if (reading.state === 'ok') expect(sureWords(record, reading.values, say, s)[0]).toMatch(record.howSure?.held ? /^With .*, 9 of 10 trucks/ : /^9 of 10 trucks/);
  });

  test.runIf(record.howSure?.held)('holds what its search has found: the truck as measured has the results shown', () => {
    const values = valuesOf(record);
    const results = Object.entries(record.howSure!.held!.compute(values as never)(values as never));
    expect(results.map(([key]) => key)).toContain(sureOf(record));
    for (const [key, x] of results) expect(x, key).toBeCloseTo(values[key] as number, 9);
  });

  test('names only its own inputs and results, and enough trucks, in what it says of drawing', () => {
    const { of, band, draws = usualDraws, given = [], errorOf = {}, samePads } = record.howSure ?? {};
    for (const key of [of, band].filter((k) => k !== undefined)) expect(record.outputs).toContain(key);
    expect(isQuantity(entryOf(sureOf(record)))).toBe(true);
    const own: readonly string[] = inputKeys(record);
    for (const key of [...given, ...Object.keys(errorOf), ...Object.values(errorOf).flat().map((name) => name.replace(/\..*/, '')), ...(samePads ? padsOfOneCompound.flatMap(([a, b]) => [a, b]) : [])]) expect(own).toContain(key);
    expect(draws).toBeGreaterThanOrEqual(500);
    expect(draws).toBeLessThanOrEqual(usualDraws);
  });
});

test('the least gap of parts held where they came nearest spreads as sweeps of every truck do', () => {
  const record = calculatorById('clearance-sweep');
  const spread = (howSure: AnyCalculator['howSure']) => allOf(drawSure({ ...record, howSure } as AnyCalculator, valuesOf(record), false))!;
  const held = spread(record.howSure);
  const swept = spread({ ...record.howSure, held: undefined, draws: 150 } as AnyCalculator['howSure']);
  // One input at a time nothing is left to chance.
  expect(held.bars.map(({ key, cell }) => [key, cell])).toEqual(swept.bars.map(({ key, cell }) => [key, cell]));
  held.bars.forEach((bar, k) => {
    expect(bar.low).toBeCloseTo(swept.bars[k]!.low, 4);
    expect(bar.high).toBeCloseTo(swept.bars[k]!.high, 4);
  });
  expect((held.high - held.low) / (swept.high - swept.low)).toBeGreaterThan(0.8);
  expect((held.high - held.low) / (swept.high - swept.low)).toBeLessThan(1.25);
});

test('trucks that never get there are told of first, and what is counted among the others says so', () => {
  const record = calculatorById('bore-finder');
  const [, refused, happens] = sureWords(record, valuesOf(record), say, demoSure('bore-finder'));
  expect(refused).toMatch(/^In about \d+ of 100 trucks measured like this a master bottoms.*those are left out\.$/);
  expect(happens).toMatch(/^Of the others: in about \d+ of 100 trucks/);
});
