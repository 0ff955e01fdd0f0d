import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chanceOf, drawChance } from '../../src/calculators/chance.ts';
import { mixer, normalAt, normalPart, sfc32, shapeIn, shapeOf } from '../../src/calculators/draws.ts';
import { calculatorById, calculators, entryOf, evaluate, inputKeys } from '../../src/calculators/index.ts';
import type { Values } from '../../src/calculators/index.ts';
import { numbersIn } from '../../src/calculators/numbers.ts';
import { defineFeed } from '../../src/calculators/record.ts';
import { turnRound } from '../../src/calculators/turn-round.ts';
import { isChoice } from '../../src/calculators/vocabulary/index.ts';
import { anywhere, demoInputs, near, randomFrom } from '../sweep/sample.ts';
import { firstOrder } from './first-order.ts';

/** An invented record whose answers are known without drawing: the sum of two numbers, and their difference. */
const sum = defineFeed({
  id: 'sum', title: 'Sum of two axle loads',
  inputs: [{ title: 'Loads', of: ['frontAxleLoad', 'rearAxleLoad'] }],
  outputs: ['mass', 'rearLoadFraction'],
  compute: (v) => ({ mass: v.frontAxleLoad + v.rearAxleLoad, rearLoadFraction: v.frontAxleLoad - v.rearAxleLoad }),
});
const loads = { frontAxleLoad: 800, rearAxleLoad: 500 };
const threeFour = { frontAxleLoad: { absolute: 3 }, rearAxleLoad: { absolute: 4 } };
const half = 1.6448536269514722; // of a normal distribution 90 % lies within this many sigmas

/** Of n draws a p5 or p95 is off by √(0.05 × 0.95/n)/φ(1.645) = 2.11/√n sigmas; four of those. */
const scatter = (sigma: number, draws = 10_000) => (4 * 2.12 * sigma) / Math.sqrt(draws);

describe('random numbers', () => {
  test('are those of sfc32 done with whole numbers of any length', () => {
    const word = (x: bigint) => x & 0xffffffffn;
    let [a, b, c, n] = [0n, 12345n, 0n, 1n];
    const next = () => {
      const out = word(a + b + n);
      n = word(n + 1n);
      a = b ^ (b >> 9n);
      b = word(c + word(c << 3n));
      c = word(word((c << 21n) | (c >> 11n)) + out);
      return (Number(out) + 0.5) / 2 ** 32;
    };
    for (let k = 0; k < 12; k++) next();
    const random = sfc32(12345);
    for (let k = 0; k < 1000; k++) expect(random()).toBe(next());
  });

  test.each([1, 2, 3, 2 ** 31, 2 ** 40])('of seed %d are even, and each is independent of the one before', (seed) => {
    const random = sfc32(seed);
    const [n, side] = [65_536, 16];
    const cells = new Array<number>(side * side).fill(0);
    for (let k = 0; k < n; k++) cells[Math.floor(random() * side) * side + Math.floor(random() * side)]! += 1;
    const each = n / cells.length;
    const chiSquare = cells.reduce((s, count) => s + (count - each) ** 2 / each, 0);
    // 255 degrees of freedom: mean 255, sigma 22.6.
    expect(chiSquare).toBeGreaterThan(255 - 5 * 22.6);
    expect(chiSquare).toBeLessThan(255 + 5 * 22.6);
  });

  test('of two seeds differ from the first one on', () => {
    expect(new Set([0, 1, 2, 3, 4, 5, 2 ** 32, 2 ** 33].map((seed) => sfc32(seed)())).size).toBe(8);
  });
});

describe('the normal distribution', () => {
  test.each([[0, 0.5], [1, 0.8413447460685429], [1.2815515655446004, 0.9], [half, 0.95], [1.959963984540054, 0.975], [-3, 0.0013498980316300933], [4, 0.9999683287581669]])('has below %d sigmas the part %d printed in tables', (z, part) => {
    expect(normalPart(z)).toBeCloseTo(part, 14);
    expect(normalAt(part)).toBeCloseTo(z, 7);
  });

  test('turned round and back is the same part, out to the last draw of 4 billion', () => {
    fc.assert(fc.property(fc.double({ min: 1e-10, max: 1 - 1e-10, noNaN: true }), (u) => {
      const z = normalAt(u);
      // The inverse's 2e-9 of z, seen through the slope of Φ, and the rounding of Φ.
      expect(Math.abs(normalPart(z) - u)).toBeLessThan((2e-9 * Math.abs(z) * Math.exp((-z * z) / 2)) / Math.sqrt(2 * Math.PI) + 2e-15);
    }), { numRuns: 2000 });
    expect(normalPart(-9)).toBe(0);
    expect(normalPart(9)).toBe(1);
    expect(Math.abs(normalAt(0))).toBeLessThan(8.5);
    expect(normalAt(1)).toBeLessThan(8.5);
  });
});

describe('the worked value: two masses off by 3 and 4 kg', () => {
  test('put the sum within 1.645 times 5 kg, 9 times in 10', () => {
    const c = chanceOf(sum, loads, { tolerance: threeFour })!;
    expect(Math.abs(c.p5 - (1300 - half * 5))).toBeLessThan(scatter(5));
    expect(Math.abs(c.p95 - (1300 + half * 5))).toBeLessThan(scatter(5));
    expect(Math.abs(c.p50 - 1300)).toBeLessThan((4 * 1.2533 * 5) / 100);
    expect(c.refused).toBe(0);
  });

  test.each([-1, -0.6, 0, 0.5, 1])('with a correlation of %d their sum spreads by √(25 + 24ρ) and their difference by √(25 − 24ρ) kg', (rho) => {
    for (const [of, sign] of [['mass', 1], ['rearLoadFraction', -1]] as const) {
      const c = chanceOf(sum, loads, { of, tolerance: threeFour, correlated: [['rearAxleLoad', 'frontAxleLoad', rho]] })!;
      const sigma = Math.sqrt(25 + sign * 24 * rho);
      expect(Math.abs((c.p95 - c.p5) / 2 - half * sigma)).toBeLessThan(scatter(sigma));
    }
  });

  test('each alone swings the sum by twice 1.645 sigmas to the sixth decimal, the larger first', () => {
    const { tornado } = chanceOf(sum, loads, { tolerance: threeFour, draws: 50 })!;
    expect(tornado.map((t) => t.key)).toEqual(['rearAxleLoad', 'frontAxleLoad']);
    expect(tornado[0]!.swing).toBeCloseTo(2 * half * 4, 6);
    expect(tornado[1]!.low).toBeCloseTo(1300 - half * 3, 6);
    expect(tornado[1]!.high).toBeCloseTo(1300 + half * 3, 6);
  });

  test('the smaller of two equal loads, which bends where they meet, spreads as 1 − (1 − Φ)² says', () => {
    const smaller = { ...sum, compute: (v: { frontAxleLoad: number; rearAxleLoad: number }) => ({ mass: Math.min(v.frontAxleLoad, v.rearAxleLoad), rearLoadFraction: 0 }) };
    const five = { absolute: 5 };
    const c = chanceOf(smaller, { frontAxleLoad: 600, rearAxleLoad: 600 }, { draws: 40_000, tolerance: { frontAxleLoad: five, rearAxleLoad: five } })!;
    for (const [part, x] of [[0.05, c.p5], [0.5, c.p50], [0.95, c.p95]] as const) {
      const below = 1 - (1 - normalPart((x - 600) / 5)) ** 2;
      expect(Math.abs(below - part)).toBeLessThan(4 * Math.sqrt((part * (1 - part)) / 40_000));
    }
  });

  test('a chance of 1 in 6 is found, with the error that many seeds show', () => {
    const limit = 1300 + 5 * normalAt(5 / 6);
    const runs = Array.from({ length: 300 }, (_, seed) => chanceOf(sum, loads, { seed, draws: 400, tolerance: threeFour, happens: (v) => v.mass > limit })!.happens!);
    const mean = runs.reduce((s, r) => s + r.probability, 0) / runs.length;
    const seen = Math.sqrt(runs.reduce((s, r) => s + (r.probability - mean) ** 2, 0) / (runs.length - 1));
    const said = runs.reduce((s, r) => s + r.standardError, 0) / runs.length;
    expect(Math.abs(mean - 1 / 6)).toBeLessThan((4 * said) / Math.sqrt(300));
    expect(seen / said).toBeGreaterThan(0.85);
    expect(seen / said).toBeLessThan(1.15);
  });

  test('what never happens is not called impossible', () => {
    const { happens } = chanceOf(sum, loads, { happens: () => false })!;
    expect(happens!.probability).toBe(0);
    expect(happens!.standardError).toBeGreaterThan(0);
    expect(happens!.standardError).toBeLessThan(3e-4);
  });
});

describe('the shape of an error', () => {
  test('that is uniform reaches its half-width and no farther, each part as likely as another', () => {
    const c = chanceOf(sum, loads, { tolerance: { frontAxleLoad: { uniform: 10 }, rearAxleLoad: {} }, happens: (v) => v.mass > 1305 && v.mass < 1310 })!;
    expect(c.p5).toBeCloseTo(1291, 0);
    expect(c.p95).toBeCloseTo(1309, 0);
    expect(Math.abs(c.happens!.probability - 0.25)).toBeLessThan(4 * c.happens!.standardError);
    expect(c.tornado).toHaveLength(1);
    expect(c.tornado[0]!.low).toBeCloseTo(1291, 9);
    expect(c.tornado[0]!.high).toBeCloseTo(1309, 9);
  });

  test('that is normal ends at the hard range: a push-out pressure of nothing can only be more', () => {
    const { at } = shapeOf('pushOutPressure', 0);
    const sigma = (entryOf('pushOutPressure') as { tolerance: { absolute: number } }).tolerance.absolute;
    expect(at!(1e-12)).toBeGreaterThanOrEqual(0);
    expect(at!(0.5) / sigma).toBeCloseTo(0.6744897501960817, 7); // median of half a normal distribution
    expect(at!(0.95) / sigma).toBeCloseTo(1.959963984540054, 7);
  });

  test('that is both relative and absolute adds the two as squares', () => {
    const { at } = shapeOf('frontAxleLoad', 800, { relative: 3 / 800, absolute: 4 });
    expect(at!(0.95) - 800).toBeCloseTo(half * 5, 6);
  });

  test('never leaves the hard range, and grows with its level', () => {
    const random = randomFrom(5);
    for (const record of calculators) for (let k = 0; k < 20; k++) {
      const values = anywhere(record, random);
      for (const { key, entry, x } of numbersIn(record, values)) {
        const { at } = shapeIn(key, entry, x, random() < 0.3 ? { uniform: 0.1 } : undefined);
        if (!at) continue;
        const line = [1e-12, 0.01, 0.3, 0.5, 0.7, 0.99, 1 - 1e-12].map(at);
        line.forEach((x, i) => expect(x).toBeGreaterThanOrEqual(i === 0 ? entry.hard!.min : line[i - 1]!));
        expect(line[6]).toBeLessThanOrEqual(entry.hard!.max);
      }
    }
  });

  test('stays its own when errors are mixed, and the mix has the correlations asked for', () => {
    const mix = mixer(['a', 'b', 'c', 'd'], [['d', 'b', 0.8], ['b', 'c', -0.3]]);
    const random = sfc32(4);
    const n = 20_000;
    const u = new Float64Array(4);
    const bins = Array.from({ length: 4 }, () => new Array<number>(10).fill(0));
    const cross = { bd: 0, bc: 0, cd: 0, ab: 0 };
    for (let k = 0; k < n; k++) {
      for (let i = 0; i < 4; i++) u[i] = random();
      mix(u);
      const z = [...u].map(normalAt) as [number, number, number, number];
      u.forEach((x, i) => { bins[i]![Math.floor(x * 10)]! += 1; });
      cross.bd += (z[1] * z[3]) / n;
      cross.bc += (z[1] * z[2]) / n;
      cross.cd += (z[2] * z[3]) / n;
      cross.ab += (z[0] * z[1]) / n;
    }
    // 9 degrees of freedom: mean 9, sigma 4.24.
    for (const bin of bins) expect(bin.reduce((s, count) => s + (count - n / 10) ** 2 / (n / 10), 0)).toBeLessThan(9 + 5 * 4.24);
    for (const [key, rho] of [['bd', 0.8], ['bc', -0.3], ['cd', 0], ['ab', 0]] as const) expect(Math.abs(cross[key] - rho)).toBeLessThan(5 * Math.sqrt((1 + rho ** 2) / n));
  });
});

describe('a band of friction', () => {
  const stuck = { ...sum, compute: (v: { frontAxleLoad: number; rearAxleLoad: number }) => ({ mass: v.frontAxleLoad + v.rearAxleLoad, rearLoadFraction: 20 }) };

  test('alone leaves the result anywhere within its half-width, each place as likely as another', () => {
    const c = chanceOf(stuck, loads, { tolerance: { frontAxleLoad: {}, rearAxleLoad: {} }, band: 'rearLoadFraction' })!;
    // 4 errors of a 5 % place among 10,000 even ones: √(0.05 × 0.95/10,000) of the whole width.
    expect(Math.abs(c.p5 - 1282)).toBeLessThan(4 * 0.00218 * 40);
    expect(Math.abs(c.p95 - 1318)).toBeLessThan(4 * 0.00218 * 40);
    expect(c.tornado.map((t) => t.key)).toEqual(['rearLoadFraction']);
    expect(c.tornado[0]!.low).toBeCloseTo(1282, 9);
    expect(c.tornado[0]!.swing).toBeCloseTo(36, 9);
  });

  test('is drawn beside the measuring errors: 5 in 100 lie above where the two, folded together, say so', () => {
    const c = chanceOf(stuck, loads, { tolerance: threeFour, band: 'rearLoadFraction', draws: 40_000 })!;
    // The part above x of a normal error of 5 plus an even one of ±20: mean over the even one of 1 − Φ.
    const above = (x: number) => Array.from({ length: 4000 }, (_, k) => 1 - normalPart((x - (-20 + (40 * (k + 0.5)) / 4000)) / 5)).reduce((a, b) => a + b, 0) / 4000;
    for (const [x, part] of [[c.p95 - 1300, 0.05], [c.p5 - 1300, 0.95], [c.p50 - 1300, 0.5]] as const) expect(Math.abs(above(x) - part)).toBeLessThan(4 * Math.sqrt((part * (1 - part)) / 40_000));
  });

  test('has to be a result of the record', () => expect(() => chanceOf(sum, loads, { band: 'grip' })).toThrow(/result of sum, found grip/));
});

test.each([[200, 1], [1000, 1], [1001, 2], [10_000, 10]])('drawing %d trucks steps after %d of them at most, so that a page can stop soon', (draws, most) => {
  let looks = 0;
  const watched = { ...sum, compute: (v: Parameters<typeof sum.compute>[0]) => { looks++; return sum.compute(v); } };
  const drawing = drawChance(watched, loads, { draws, tolerance: threeFour });
  for (let before = 0; !drawing.next().done; before = looks) expect(looks - before).toBeLessThanOrEqual(most);
  // Fifty levels of each of two inputs, then the trucks.
  expect(looks).toBe(2 * 50 + draws);
});

describe('refusals', () => {
  test('are counted: brakes that hold a grade only just leave the truck rolling in half of the draws', () => {
    const record = calculatorById('stopping-distance');
    for (const spareGrade of [0, 0.005, 0.02]) {
      const values = { ...demoInputs(record), brakingRate: 0.2, grade: -0.2 + spareGrade };
      const c = chanceOf(record, values)!;
      const part = normalPart(-spareGrade / Math.hypot(0.03 * 0.2, 0.005));
      expect(Math.abs(c.refused - part)).toBeLessThan(4 * Math.sqrt((part * (1 - part)) / 10_000) + 1e-4);
      expect(Number.isFinite(c.p5) && Number.isFinite(c.p95)).toBe(true);
    }
  });

  test('everywhere leave no chance at all', () => {
    const record = calculatorById('stopping-distance');
    expect(chanceOf(record, { ...demoInputs(record), brakingRate: 0.1, grade: -0.5 })).toBeUndefined();
  });

  test('take in results that are not finite, as everywhere on the site', () => {
    const steep = { ...sum, compute: (v: { frontAxleLoad: number }) => ({ mass: v.frontAxleLoad > 800 ? Infinity : 1, rearLoadFraction: 0 }) };
    expect(Math.abs(chanceOf(steep, loads)!.refused - 0.5)).toBeLessThan(0.02);
  });
});

describe('which axle locks first', () => {
  const record = calculatorById('lock-order');
  const demo = demoInputs(record);
  const still = Object.fromEntries(inputKeys(record).map((key) => [key, {}]));
  const critical = (v: Values) => (v['criticalRate'] as number) < (v['grip'] as number);
  const rearSooner = (v: Values) => (v['rearLockRate'] as number) < (v['frontLockRate'] as number);

  test.each([0.6, 0.75, 0.8, 0.9])('on grip %d: with one gain alone in doubt the chance is what the critical gain, found by turning round, cuts off', (grip) => {
    const values = { ...demo, grip };
    const c = chanceOf(record, values, { tolerance: { ...still, rearBrakeGain: { relative: 0.09 } }, happens: critical })!;
    const turned = turnRound(record, values, { ask: 'rearBrakeGain', fix: 'criticalRate', target: grip });
    if (!('found' in turned)) throw new RangeError('critical gain: expected one');
    const gain = demo['rearBrakeGain'] as number;
    const part = 1 - normalPart((turned.found / gain - 1) / 0.09);
    expect(Math.abs(c.happens!.probability - part)).toBeLessThan(4 * c.happens!.standardError);
  });

  test('gains that err together leave the balance alone; gains that err apart upset it most', () => {
    const pads = { ...still, frontBrakeGain: { relative: 0.09 }, rearBrakeGain: { relative: 0.09 } };
    const width = (rho: number) => {
      const c = chanceOf(record, demo, { tolerance: pads, correlated: [['frontBrakeGain', 'rearBrakeGain', rho]] })!;
      return c.p95 - c.p5;
    };
    const widths = [-1, -0.5, 0, 0.5, 0.9, 1].map(width);
    widths.slice(1).forEach((w, i) => expect(w).toBeLessThan(widths[i]!));
    // At 1 the normal quantile and its inverse leave their own 1e-8.
    expect(widths[5]).toBeLessThan(1e-6 * widths[2]!);
  });

  test('without a valve the critical rate lies below the grip exactly where the rear locks sooner', () => {
    for (const frontShare of [0.5, 0.6, 0.7]) {
      let draws = 0;
      chanceOf(record, { ...demo, frontShare }, { draws: 3000, happens: (v: Values) => {
        draws++;
        expect(critical(v)).toBe(rearSooner(v));
        return true;
      } });
      expect(draws).toBe(3000);
    }
  });

  test('with a valve the critical rate is on the safe side: wherever the rear locks sooner it lies below the grip', () => {
    let [sooner, safe] = [0, 0];
    for (const kneePressure of [0.5e6, 2e6, 3e6]) for (const grip of [0.3, 0.6, 0.9]) {
      chanceOf(record, { ...demo, rearValve: 'fitted', frontShare: 0.5, kneePressure, grip }, { draws: 1000, happens: (v: Values) => {
        if (rearSooner(v)) sooner++;
        if (rearSooner(v) && critical(v)) safe++;
        return true;
      } });
    }
    expect(sooner).toBeGreaterThan(100);
    expect(safe).toBe(sooner);
  });

  test('more front share never makes a rear lock likelier', () => {
    const chances = [0.5, 0.55, 0.6, 0.65, 0.7, 0.8].map((frontShare) => chanceOf(record, { ...demo, frontShare }, { happens: critical })!.happens!.probability);
    chances.slice(1).forEach((p, i) => expect(p).toBeLessThanOrEqual(chances[i]!));
    expect(chances[0]).toBeGreaterThan(0.95);
    expect(chances[5]).toBeLessThan(0.01);
  });
});

describe('drawing', () => {
  const record = calculatorById('lock-order');
  const demo = demoInputs(record);

  test('gives the same for the same seed, and for another what counting errors allow', () => {
    const happens = (v: Values) => (v['criticalRate'] as number) < 0.8;
    const [a, again, other] = [1, 1, 2].map((seed) => chanceOf(record, demo, { seed, happens })!);
    expect(again).toEqual(a);
    expect(other!.p50).not.toBe(a!.p50);
    expect(Math.abs(other!.happens!.probability - a!.happens!.probability)).toBeLessThan(5 * a!.happens!.standardError);
    expect(Math.abs(other!.p95 - a!.p95)).toBeLessThan(0.1 * (a!.p95 - a!.p5));
  });

  test('leaves what it was given alone and hands on choices and counts unchanged', () => {
    const disc = calculatorById('disc-torque');
    const values = Object.freeze(demoInputs(disc));
    let looks = 0;
    chanceOf(disc, values, { draws: 200, happens: (v: Values) => {
      looks++;
      for (const key of ['frontPistons', 'rearPistons', 'frontCaliperType', 'padLaw']) expect(v[key]).toBe(values[key]);
      expect(v['frontPadFriction']).not.toBe(values['frontPadFriction']);
      return true;
    } });
    expect(looks).toBe(200);
  });

  test('shows each draw’s inputs and results together', () => {
    chanceOf(sum, loads, { draws: 100, happens: (v) => {
      expect(v.mass).toBe(v.frontAxleLoad + v.rearAxleLoad);
      return true;
    } });
  });

  test('with nothing in doubt gives the result itself', () => {
    const still = Object.fromEntries(inputKeys(record).map((key) => [key, {}]));
    const c = chanceOf(record, demo, { tolerance: still })!;
    const e = evaluate(record, demo);
    if (!e.ok) throw new RangeError('demo truck: expected an answer');
    for (const x of [c.p5, c.p50, c.p95]) expect(x).toBe(e.values['criticalRate']);
    expect(c.tornado).toEqual([]);
  });

  test('refuses programmers’ errors', () => {
    expect(() => chanceOf(record, demo, { draws: 10 })).toThrow(/draws/);
    expect(() => chanceOf(record, demo, { of: 'grip' })).toThrow(/result of lock-order/);
    expect(() => chanceOf(record, demo, { tolerance: { padArm: {} } })).toThrow(/input of lock-order, found padArm/);
    expect(() => chanceOf(record, demo, { tolerance: { grip: { relative: -1 } } })).toThrow(/0 or more/);
    expect(() => chanceOf(record, { ...demo, grip: NaN })).toThrow(/grip/);
    expect(() => chanceOf(record, demo, { correlated: [['grip', 'nothing', 0]] })).toThrow(/nothing/);
    expect(() => chanceOf(record, demo, { correlated: [['grip', 'cgHeight', 1.1]] })).toThrow(/correlation/);
    expect(() => chanceOf(record, demo, { correlated: [['grip', 'grip', 1]] })).toThrow(/correlation/);
    // If a follows b and b follows c, a cannot run against c.
    expect(() => chanceOf(record, demo, { correlated: [['grip', 'cgHeight', 0.9], ['cgHeight', 'wheelbase', 0.9], ['grip', 'wheelbase', -0.9]] })).toThrow(/together/);
    expect(() => chanceOf(record, demo, { correlated: [['grip', 'cgHeight', 1], ['grip', 'wheelbase', 1], ['cgHeight', 'wheelbase', 0]] })).toThrow(/together/);
    expect(chanceOf(record, demo, { draws: 50, correlated: [['grip', 'cgHeight', 1], ['grip', 'wheelbase', -1], ['cgHeight', 'wheelbase', -1]] })).toBeDefined();
  });
});

describe.each(calculators.map((c) => [c.id, c] as const))('record %s', (id, record) => {
  test.skipIf(record.howSure?.held)('spreads as the root sum of squares says, where the result does not bend', () => {
    const e = evaluate(record, demoInputs(record));
    if (!e.ok) throw new RangeError(`${id}: expected an answer for the demo truck`);
    const spread = firstOrder(record, e.values);
    const c = chanceOf(record, e.values, { draws: id === 'pedal-ratio' ? 400 : 2000 })!;
    expect(c.p5).toBeLessThanOrEqual(c.p50);
    expect(c.p50).toBeLessThanOrEqual(c.p95);
    expect(c.tornado.map((t) => t.swing)).toEqual(c.tornado.map((t) => t.swing).sort((a, b) => b - a));
    if (!spread) return;
    const ratio = (c.p95 - c.p5) / (spread.high - spread.low);
    // A pedal on the carpet goes no farther: what lies beyond it is in the squares only.
    if (id === 'pad-floor') return expect(c.p5).toBe(0);
    expect(ratio).toBeGreaterThan(0.9);
    // Two results stand on a bend at the demo truck (the better axle changes; a master bottoms). A slope that
    // changes sign there hides from the squares, which then are too small.
    if (['adhesion', 'circuit-failure'].includes(id)) return;
    expect(ratio).toBeLessThan(1.1);
    if (spread.causes[1] && spread.causes[0]!.part > 1.5 * spread.causes[1].part) expect(c.tornado[0]!.key).toBe(spread.causes[0]!.key);
  });

  test('has finite chances or none for anything inside the hard ranges, of any result', () => {
    const random = randomFrom(11);
    for (let k = 0; k < (['pedal-ratio', 'clearance-sweep'].includes(id) ? 3 : 25); k++) {
      const values = k % 2 ? anywhere(record, random) : near(record, random);
      const of = record.outputs[Math.floor(random() * record.outputs.length)] as string;
      const c = chanceOf(record, values, { draws: 50, of, happens: () => true });
      if (!c) continue;
      expect(isChoice(entryOf(of))).toBe(false);
      expect(c.refused).toBeGreaterThanOrEqual(0);
      expect(c.refused).toBeLessThan(1);
      expect(c.happens!.probability).toBe(1);
      for (const x of [c.p5, c.p50, c.p95, ...c.tornado.flatMap((t) => [t.low, t.high, t.swing])]) expect(Number.isFinite(x), `${of} ${JSON.stringify(values)}`).toBe(true);
      for (const t of c.tornado) expect(t.swing).toBeGreaterThanOrEqual(0);
    }
  });

  test.skipIf(!record.howSure?.quick)('finds the same quickly for the drawing of trucks as for its page, and refuses the same', () => {
    const { quick, of = record.outputs[0], band, happens } = record.howSure!;
    const random = randomFrom(17);
    let answers = 0;
    for (let k = 0; k < 300; k++) {
      const values = k === 0 ? demoInputs(record) : k % 2 ? anywhere(record, random) : near(record, random);
      const [full, found] = [record.compute(values as never) as object, quick!(values as never) as object];
      expect('refused' in found, JSON.stringify(values)).toBe('refused' in full);
      if ('refused' in found) continue;
      answers++;
      expect(found).toEqual(Object.fromEntries(Object.keys(found).map((key) => [key, (full as Values)[key]])));
      for (const key of [of, band ?? of]) expect(found).toHaveProperty([key as string]);
      if (happens) expect(happens.when({ ...values, ...found } as never)).toBe(happens.when({ ...values, ...full } as never));
    }
    expect(answers).toBeGreaterThan(50);
  });
});
