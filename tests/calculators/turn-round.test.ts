import { describe, expect, test } from 'vitest';
import { sayIn } from '../../src/build/fields.ts';
import { calculatorById, calculators, entryOf, evaluate, inputKeys } from '../../src/calculators/index.ts';
import type { AnyCalculator, Values } from '../../src/calculators/index.ts';
import { defineFeed, isRefusal } from '../../src/calculators/record.ts';
import type { Feed, Refusal } from '../../src/calculators/record.ts';
import { turnRound } from '../../src/calculators/turn-round.ts';
import type { TurnedRound } from '../../src/calculators/turn-round.ts';
import { isQuantity } from '../../src/calculators/vocabulary/index.ts';
import type { Quantity } from '../../src/calculators/vocabulary/index.ts';
import { lbf } from '../../src/units/si.ts';
import { anywhere, demoInputs, near, randomFrom } from '../sweep/sample.ts';

const numbers = (keys: readonly string[]): string[] => keys.filter((key) => isQuantity(entryOf(key)));
const hardOf = (key: string) => (entryOf(key) as Quantity).hard as { min: number; max: number };

/** The result at one value of one input, or undefined where the record refuses. */
function at(record: Feed, values: Values, ask: string, x: number, fix: string): number | undefined {
  const e = evaluate(record, { ...values, [ask]: x });
  return e.ok ? (e.values[fix] as number) : undefined;
}

/** Counts what it costs. */
function counted(record: Feed): { record: Feed; count: () => number } {
  let n = 0;
  return { record: { ...record, compute: (v) => { n++; return record.compute(v); } }, count: () => n };
}

/** An invented record in one variable: y of the reaction time (0 to 10 s, now 1.5 s). */
function curve(y: (t: number) => number | Refusal): (target: number, reactionTime?: number) => TurnedRound {
  const record: Feed = defineFeed({
    id: 'curve', title: 'A curve', inputs: [{ title: 'Time', of: ['reactionTime'] }], outputs: ['stoppingTime'],
    compute: ({ reactionTime }) => { const r = y(reactionTime); return typeof r === 'number' ? { stoppingTime: r } : r; },
  });
  return (target, reactionTime = 1.5) => turnRound(record, { reactionTime }, { ask: 'reactionTime', fix: 'stoppingTime', target });
}
const none: Refusal = { refused: () => 'no answer here' };

function answers(turned: TurnedRound): readonly number[] {
  if (!('all' in turned)) throw new RangeError(`turn round: expected answers, found ${JSON.stringify(turned)}`);
  expect(turned.found).toBe(turned.all[0]);
  return turned.all;
}

function expectAnswers(turned: TurnedRound, expected: readonly number[], digits = 9): void {
  const all = answers(turned);
  expect(all).toHaveLength(expected.length);
  expected.forEach((x, i) => expect(all[i]).toBeCloseTo(x, digits));
}

function expectNearest(turned: TurnedRound, x: number, gives: number, digits = 8): void {
  if (!('nearest' in turned)) throw new RangeError(`turn round: expected a nearest value, found ${JSON.stringify(turned)}`);
  expect(turned.nearest).toBeCloseTo(x, digits);
  expect(turned.gives).toBeCloseTo(gives, digits);
}

describe('line pressure turned round', () => {
  const record = calculatorById('line-pressure');
  const values = demoInputs(record);
  const pressure = (ask: string, x: number) => at(record, values, ask, x, 'frontPressure') as number;

  test('twice the pressure takes twice the foot', () => {
    const target = 2 * pressure('controlForce', values['controlForce'] as number);
    expectAnswers(turnRound(record, values, { ask: 'controlForce', fix: 'frontPressure', target }), [180 * lbf], 8);
  });

  test('the bore grows with the square root of what the pressure falls', () => {
    const bore = values['frontMasterBore'] as number;
    expectAnswers(turnRound(record, values, { ask: 'frontMasterBore', fix: 'frontPressure', target: 0.7 * pressure('frontMasterBore', bore) }), [bore / Math.sqrt(0.7)], 12);
  });

  test('more than the foot can give has a nearest: the hardest push', () => {
    const most = hardOf('controlForce').max;
    const gives = pressure('controlForce', most);
    expect(turnRound(record, values, { ask: 'controlForce', fix: 'frontPressure', target: gives * 1.001 })).toEqual({ nearest: most, gives });
    expect(turnRound(record, values, { ask: 'controlForce', fix: 'frontPressure', target: gives })).toEqual({ found: most, all: [most] });
  });
});

test('the rear gain that makes a grip critical makes both axles lock together on it', () => {
  const record = calculatorById('lock-order');
  const values = demoInputs(record);
  const [gain] = answers(turnRound(record, values, { ask: 'rearBrakeGain', fix: 'lockMargin', target: 0 }));
  for (const rate of ['rearLockRate', 'frontLockRate']) expect(at(record, values, 'rearBrakeGain', gain as number, rate)).toBeCloseTo(values['grip'] as number, 10);
});

describe('a curve', () => {
  test('with two answers gives both, the nearer first', () => {
    const turn = curve((t) => (t - 3) ** 2);
    expectAnswers(turn(1), [2, 4]);
    expectAnswers(turn(1, 9), [4, 2]);
    expectAnswers(turn(1, 4), [4, 2]);
  });

  test('with five answers gives all five', () => {
    expectAnswers(curve((t) => Math.cos((t * Math.PI) / 2))(0, 0), [1, 3, 5, 7, 9]);
  });

  test('that swings without end still ends within 400 evaluations, with true answers', () => {
    for (const pace of [20, 300]) {
      let n = 0;
      const all = answers(curve((t) => { n++; return Math.sin(pace * t); })(0.5));
      expect(n).toBeLessThanOrEqual(400);
      expect(n).toBeGreaterThan(300);
      for (const t of all) expect(Math.sin(pace * t)).toBeCloseTo(0.5, 8);
    }
  });

  test('with two answers closer together than the places looked at gives both', () => {
    for (const gap of [0.3, 0.03, 0.003]) expectAnswers(curve((t) => (t - 7.77) ** 2)(gap ** 2 / 4), [7.77 - gap / 2, 7.77 + gap / 2], 8);
  });

  test('that only touches the target is answered where it touches', () => {
    expectAnswers(curve((t) => 5 + (t - 7.77) ** 2)(5), [7.77], 4);
  });

  test('that turns back before the target comes nearest on its hill, round or pointed', () => {
    expectNearest(curve((t) => 5 - (t - 7.77) ** 2)(6), 7.77, 5, 5);
    expectNearest(curve((t) => 5 - Math.abs(t - 7.77))(6), 7.77, 5, 6);
  });

  test('that jumps past the target is not answered in the jump', () => {
    const turn = curve((t) => (t < Math.E ? 1 : 2 + t / 100));
    expectNearest(turn(1.5), 1.5, 1);
    expectNearest(turn(2.02), Math.E, 2 + Math.E / 100);
  });

  test('that runs off to both sides of a pole is not answered in the pole', () => {
    const turn = curve((t) => 1 / (t - Math.PI));
    expectNearest(turn(0), 10, 1 / (10 - Math.PI));
    expectAnswers(turn(-2), [Math.PI - 0.5]);
  });

  test('that stays on the target gives the present value, or the end of the stretch that is nearest to it', () => {
    const flat = curve((t) => Math.min(Math.max(t, 4), 6));
    expect(curve(() => 3)(3)).toEqual({ found: 1.5, all: [1.5] });
    expect(curve(() => 3)(4)).toEqual({ nearest: 1.5, gives: 3 });
    expect(flat(4, 3)).toEqual({ found: 3, all: [3] });
    expectAnswers(flat(4, 8), [4]);
    expectAnswers(flat(6, 2.5), [6]);
  });

  test('wanted at nothing is answered as well as at any other target', () => {
    expectAnswers(curve((t) => t - 1 / 3)(0), [1 / 3], 12);
    expectAnswers(curve((t) => 1e-9 * (t - 1 / 3))(0), [1 / 3]);
    expectAnswers(curve((t) => t)(0), [0], 15);
  });
});

describe('refusals', () => {
  test('leave gaps: answers on both sides of one are found, none within', () => {
    const turn = curve((t) => (t > 3 && t < 6 ? none : Math.abs(t - 4.5)));
    expectAnswers(turn(2), [2.5, 6.5]);
    expectNearest(turn(1), 3, 1.5);
  });

  test('close to an answer do not hide it', () => {
    expectAnswers(curve((t) => (t > 7 ? none : 1 / (7.0001 - t)))(9999), [7.0001 - 1 / 9999]);
    expectAnswers(curve((t) => (t < 7 ? none : t))(7.0005), [7.0005]);
  });

  test('inside a step that passes the target lead to no false answer', () => {
    const turned = curve((t) => (Math.abs(t - 7.77) < 0.01 ? none : t - 7.77))(0);
    if (!('nearest' in turned)) throw new RangeError('turn round: expected a nearest value');
    expect(Math.abs(turned.gives)).toBeCloseTo(0.01, 8);
  });

  test('inside a step that passes the target do not hide the answer on either side of them', () => {
    for (const root of [7.7, 7.95]) expectAnswers(curve((t) => (t > 7.8 && t < 7.88 ? none : t - root))(0), [root]);
    expectAnswers(curve((t) => (t > 7.8 && t < 7.88 ? none : t < 8.1 ? t - 7.95 : 0.05))(0), [7.95]);
  });

  test('at the present value do not stop the search', () => {
    expectAnswers(curve((t) => (t < 2 ? none : t))(3), [3]);
  });

  test('everywhere come back as they are', () => {
    expect(curve(() => none)(3)).toBe(none);
    expect(curve(() => Infinity)(3)).toHaveProperty('refused');
  });

  test('on a steep grade: the braking rate for a long stop is found just above the rate that never stops', () => {
    const record = calculatorById('stopping-distance');
    const values = { ...demoInputs(record), grade: -0.3, brakingRate: 0.2 };
    expect(evaluate(record, values).ok).toBe(false);
    const all = answers(turnRound(record, values, { ask: 'brakingRate', fix: 'stoppingDistance', target: 20_000 }));
    expect(all).toHaveLength(1);
    expect(all[0]).toBeGreaterThan(0.3);
    expect(all[0]).toBeLessThan(0.303);
    expect(at(record, values, 'brakingRate', all[0] as number, 'stoppingDistance')).toBeCloseTo(20_000, 4);
  });
});

test('a count is asked whole', () => {
  const record = calculatorById('disc-torque');
  const values = demoInputs(record);
  const gives = (n: number) => at(record, values, 'frontPistons', n, 'frontClampArea') as number;
  const turn = (target: number, fix = 'frontClampArea') => turnRound(record, values, { ask: 'frontPistons', fix, target });
  expect(turn(gives(3))).toEqual({ found: 3, all: [3] });
  expect(turn(0.4 * gives(2) + 0.6 * gives(3))).toEqual({ nearest: 3, gives: gives(3) });
  expect(turn(1e3)).toEqual({ nearest: 8, gives: gives(8) });
  expect(turn(1e3, 'rearClampArea')).toMatchObject({ nearest: values['frontPistons'] });
});

test('programmers’ errors are refused', () => {
  const record = calculatorById('lock-order');
  const values = demoInputs(record);
  expect(() => turnRound(record, values, { ask: 'padArm', fix: 'criticalRate', target: 1 })).toThrow(/ask: .*padArm/);
  expect(() => turnRound(record, values, { ask: 'rearValve', fix: 'criticalRate', target: 1 })).toThrow(/ask: .*rearValve/);
  expect(() => turnRound(record, values, { ask: 'grip', fix: 'grip', target: 1 })).toThrow(/fix: .*grip/);
  expect(() => turnRound(record, values, { ask: 'grip', fix: 'criticalRate', target: NaN })).toThrow(/target/);
  const failure = calculatorById('circuit-failure');
  expect(() => turnRound(failure, demoInputs(failure), { ask: 'grip', fix: 'stateFrontDead', target: 1 })).toThrow(/fix: .*stateFrontDead/);
});

/** The pedal's swing takes some hundred times as long as the others. */
const tries = (record: AnyCalculator, usual: number): number => (record.id === 'pedal-ratio' ? Math.ceil(usual / 10) : usual);

test('a record that searches for a best place says that it cannot be asked backward', () => {
  for (const record of calculators.filter((c) => c.oneWay)) {
    const turned = turnRound(record, demoInputs(record), { ask: numbers(inputKeys(record))[0] as string, fix: record.outputs[0] as string, target: 1 });
    expect(isRefusal(turned) && turned.refused(sayIn('us'))).toMatch(/backward/);
  }
});

/** A count is tried whole. */
const whole = (key: string, x: number): number => { const entry = entryOf(key); return isQuantity(entry) && entry.dimension === 'count' ? Math.round(x) : x; };

describe.each(calculators.filter((c) => !c.oneWay).map((c) => [c.id, c] as const))('record %s', (_id, record) => {
  test('gives back each input of the demo truck that was changed, from any of the results', () => {
    const random = randomFrom(3);
    const demo = demoInputs(record);
    let asked = 0;
    for (const ask of numbers(inputKeys(record))) {
      const { min, max } = hardOf(ask);
      const { usual, dimension } = entryOf(ask) as Quantity;
      const now = demo[ask] as number;
      const away = now === 0 ? 0.1 * random() * (usual?.max ?? max) : 0.2 * (random() - 0.5) * now;
      const x = dimension === 'count' ? now + 1 : Math.min(max, Math.max(min, now + away));
      const fixes = numbers(record.outputs).filter((fix) => {
        const [before, after] = [at(record, demo, ask, now, fix), at(record, demo, ask, x, fix)];
        return before !== undefined && after !== undefined && Math.abs(after - before) > 1e-9 * Math.abs(after);
      });
      for (const fix of fixes.slice(0, tries(record, 12))) {
        asked++;
        const target = at(record, demo, ask, x, fix) as number;
        const where = `${ask} from ${fix}: ${x} gives ${target}`;
        const all = answers(turnRound(record, demo, { ask, fix, target }));
        for (const root of all) {
          expect(root).toBeGreaterThanOrEqual(min);
          expect(root).toBeLessThanOrEqual(max);
          expect(Math.abs((at(record, demo, ask, root, fix) as number) - target), where).toBeLessThanOrEqual(1e-8 * Math.abs(target));
        }
        const off = all.map((root) => Math.abs(root - now));
        expect(off).toEqual([...off].sort((a, b) => a - b));
        // The input itself is among the answers, unless the result stays the same all the way from an answer to it.
        const nearest = all.reduce((best, root) => (Math.abs(root - x) < Math.abs(best - x) ? root : best));
        if (Math.abs(nearest - x) > 1e-6 * Math.abs(x)) {
          for (const t of [0.2, 0.5, 0.8]) expect(Math.abs((at(record, demo, ask, nearest + t * (x - nearest), fix) as number) - target), where).toBeLessThanOrEqual(1e-12 * Math.abs(target));
        }
      }
    }
    expect(asked).toBeGreaterThan(5);
  });

  test('comes nearest where a blind search of the whole range comes no nearer', () => {
    const random = randomFrom(21);
    const demo = demoInputs(record);
    const [asks, fixes] = [numbers(inputKeys(record)), numbers(record.outputs)];
    let nearest = 0;
    for (let k = 0; k < tries(record, 40); k++) {
      const ask = asks[Math.floor(random() * asks.length)] as string;
      const fix = fixes[Math.floor(random() * fixes.length)] as string;
      const present = at(record, demo, ask, demo[ask] as number, fix) as number;
      const target = [1.3, 3, -1, 0, 1e6][k % 5]! * (present || 1);
      const turned = turnRound(record, demo, { ask, fix, target });
      if (!('nearest' in turned)) continue;
      nearest++;
      const { min, max } = hardOf(ask);
      const whole = (entryOf(ask) as Quantity).dimension === 'count';
      expect(at(record, demo, ask, turned.nearest, fix)).toBe(turned.gives);
      const miss = Math.abs(turned.gives - target);
      for (let n = 0; n < 200; n++) {
        const part = random();
        const x = n % 2 ? min + part * (max - min) : Math.min(max, Math.max(min, (demo[ask] as number) * (0.5 + part)));
        const y = at(record, demo, ask, whole ? Math.round(x) : x, fix);
        if (y !== undefined) expect(Math.abs(y - target), `${ask} for ${fix} ${target}: ${x} beats ${turned.nearest}`).toBeGreaterThanOrEqual(miss - 1e-6 * (Math.abs(present) + Math.abs(turned.gives)));
      }
    }
    expect(nearest).toBeGreaterThan(0);
  });

  test('always ends, within 400 evaluations, and holds what it says, for anything inside the hard ranges', () => {
    const random = randomFrom(31);
    const [asks, fixes] = [numbers(inputKeys(record)), numbers(record.outputs)];
    for (let k = 0; k < tries(record, 120); k++) {
      const values = k % 3 === 0 ? near(record, random) : anywhere(record, random);
      const ask = asks[Math.floor(random() * asks.length)] as string;
      const fix = fixes[Math.floor(random() * fixes.length)] as string;
      const e = evaluate(record, k % 2 ? anywhere(record, random) : near(record, random));
      const target = k % 7 === 0 ? (random() - 0.5) * 10 ** (random() * 40 - 20) : k % 11 === 0 ? 0 : k % 13 === 0 ? 1e308 : e.ok ? (e.values[fix] as number) : 1;
      const { record: watched, count } = counted(record);
      const turned = turnRound(watched, values, { ask, fix, target });
      expect(count()).toBeLessThanOrEqual(400);
      if (isRefusal(turned)) expect(turned.refused(sayIn('si')).length).toBeGreaterThan(15);
      else if ('nearest' in turned) expect(at(record, values, ask, turned.nearest, fix)).toBe(turned.gives);
      else {
        // A target of next to nothing is met as well as the result's own size over the range allows.
        const { min, max } = hardOf(ask);
        const sizes = Array.from({ length: 41 }, (_, n) => Math.abs(at(record, values, ask, whole(ask, min + ((max - min) * n) / 40), fix) ?? 0));
        for (const root of turned.all) expect(Math.abs((at(record, values, ask, root, fix) ?? NaN) - target)).toBeLessThanOrEqual(1e-8 * Math.max(Math.abs(target), ...sizes));
      }
    }
  });
});
