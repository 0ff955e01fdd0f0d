import { describe, expect, test } from 'vitest';
import { firingCautions } from '../../src/build/cautions.ts';
import { sayIn } from '../../src/build/fields.ts';
import { calculatorById, calculators, entryOf, evaluate, inputKeys } from '../../src/calculators/index.ts';
import type { Values } from '../../src/calculators/index.ts';
import { demoInputs } from '../sweep/sample.ts';

const record = calculatorById('gauge-fit');
const lbf = 4.4482216152605;
const area = (Math.PI / 4) * 0.01778 ** 2;

/** A truck's gauges, statics written anew: efficiency without friction, friction before the bar, share each way. */
function readings({ eta = 0.95, friction = 0.02, share = [0.6, 0.6] as const, ways = ['down', 'up'] as const, ratio = 6.2, noise = 0 }: {
  eta?: number; friction?: number; share?: readonly [down: number, up: number]; ways?: readonly ('down' | 'up')[]; ratio?: number; noise?: number;
} = {}) {
  return ways.flatMap((foot) => [20, 35, 50, 65, 80, 95, 110].map((pounds, k) => {
    const push = pounds * lbf * ratio * eta * (foot === 'down' ? 1 - friction : 1 + friction);
    const s = share[foot === 'down' ? 0 : 1];
    return { foot, force: pounds * lbf, front: ((s * push) / area) * (1 + noise * Math.sin(7 * k)), rear: (((1 - s) * push) / area) * (1 + noise * Math.cos(5 * k)) };
  }));
}
const run = (over: Values) => evaluate(record, { ...demoInputs(record), barOffset: 0.1 * 0.0635, linkageEfficiency: 0.93, ...over });
function values(over: Values): Record<string, number | string> {
  const result = run(over);
  if (!result.ok) throw new Error(result.refusal.refused(sayIn('us')));
  return result.values as Record<string, number | string>;
}
const fired = (over: Values): string[] => {
  const v = values(over);
  return record.cautions.filter((caution) => caution.when?.(v as never)).map(({ id }) => id);
};

describe('does the bar swing free', () => {
  test('friction before the bar holds both circuits up: that is drag', () => {
    expect(values({ gaugeReadings: readings({ friction: 0.08 }) })['barFreedom']).toBe('drag');
  });
  test('a bar that moves push to the front on the way back is a bar that sticks', () => {
    expect(values({ gaugeReadings: readings({ friction: 0, share: [0.57, 0.63] }) })['barFreedom']).toBe('bar');
  });
  test('none of both is free; only with readings both ways, and on both sides of 50 lbf', () => {
    expect(values({ gaugeReadings: readings() })['barFreedom']).toBe('free');
    expect(values({ gaugeReadings: readings({ ways: ['down'] }) })['barFreedom']).toBe('unread');
    expect(values({ gaugeReadings: readings().filter((r) => r.foot === 'down' || r.force > 51 * lbf).concat(readings().filter((r) => r.foot === 'up' && r.force > 51 * lbf)) })['barFreedom']).toBe('bracket');
  });
  test('readings that scatter by a tenth prove nothing', () => {
    expect(values({ gaugeReadings: readings({ noise: 0.1 }) })['barFreedom']).toBe('noisy');
  });
});

describe('friction against efficiency', () => {
  test('a loss that is all friction comes back up as much as it went down: nothing to explain', () => {
    expect(fired({ gaugeReadings: readings({ eta: 1, friction: 0.15 }), linkageEfficiency: 0.85 })).not.toContain('loss-not-friction');
  });
  test('the same loss without a loop is a wrong number, and a ratio typed too high makes one', () => {
    expect(fired({ gaugeReadings: readings({ eta: 0.85, friction: 0 }), linkageEfficiency: 0.85 })).toContain('loss-not-friction');
    expect(fired({ gaugeReadings: readings({ eta: 0.97, ratio: 5.4 }), linkageEfficiency: 0.83 })).toContain('loss-not-friction');
  });
});

describe('the paper', () => {
  test('takes its share from the turns: a measured share in use changes nothing here', () => {
    const before = values({ gaugeReadings: readings({ share: [0.65, 0.65] }) });
    expect(before['shareOff']).toBeCloseTo(0.05, 9);
    expect(values({ gaugeReadings: readings({ share: [0.65, 0.65] }), frontShare: 0.65 })['shareOff']).toBeCloseTo(0.05, 9);
  });
  test('a share that is far from the turns, or an efficiency no linkage has, is not offered for use', () => {
    const share = record.carries?.find(({ to }) => to === 'frontShare');
    const refused = (over: Values) => share?.refuses?.(values(over) as never);
    expect(refused({ gaugeReadings: readings() })).toBeUndefined();
    expect(refused({ gaugeReadings: readings({ share: [0.65, 0.65] }) })).toMatch(/turns/);
    expect(refused({ gaugeReadings: readings({ eta: 1.1 }) })).toMatch(/measurement/);
  });
  test('every carried result has the dimension of the field it goes into, which some other calculator asks for', () => {
    for (const { to, from } of record.carries ?? []) {
      expect(record.outputs).toContain(from);
      expect((entryOf(to) as { dimension?: string }).dimension).toBe((entryOf(from) as { dimension?: string }).dimension);
      expect(calculators.some((other) => other !== record && inputKeys(other).includes(to))).toBe(true);
    }
  });
});

test('with a valve eight readings going down are asked for, and it says how many are missing', () => {
  const result = run({ rearValve: 'fitted', gaugeReadings: readings() });
  expect(result.ok).toBe(false);
  if (!result.ok) expect(result.refusal.refused(sayIn('us'))).toMatch(/here are 7\. Add 1,/);
});

test('the pressure of one line alone is all of the hardest push on the smaller master', () => {
  const v = values({ gaugeReadings: readings({ friction: 0 }) });
  expect(v['oneLinePressure']).toBeCloseTo((110 * lbf * 6.2 * 0.95) / area, 0);
});

describe('what the readings cannot be taken for', () => {
  const rising = readings({ ways: ['down'] });
  const firing = (over: Values) => new Map(firingCautions(record, values(over) as never, sayIn('us')).map(({ id, words }) => [id, words]));

  test('a rear that rises faster above a bend is a bar on its stop: its share is not offered', () => {
    const at = 80 * lbf;
    const stopped = readings({ ways: ['down'] }).map((r) => ({ ...r, rear: r.rear + (r.force > at ? ((r.force - at) * 2) / area : 0) }));
    expect(firing({ gaugeReadings: stopped }).get('steepens')).toMatch(/met its stop/);
    expect(firing({ gaugeReadings: stopped }).get('differs')).toMatch(/Every page/);
    expect(values({ gaugeReadings: stopped })['measuredShare']).toBeCloseTo(0.6, 9);
    expect(record.carries?.find(({ to }) => to === 'frontShare')?.refuses?.(values({ gaugeReadings: stopped }) as never)).toMatch(/bend/);
    expect(firing({ gaugeReadings: rising }).has('steepens')).toBe(false);
  });

  test('a dial that is off by the same pressure everywhere differs from the paper and leaves share and efficiency', () => {
    const off = rising.map((r) => ({ ...r, rear: r.rear + 60 * 6894.757 }));
    const sound = values({ gaugeReadings: rising });
    const v = values({ gaugeReadings: off });
    expect(v['measuredShare']).toBeCloseTo(sound['measuredShare'] as number, 9);
    expect(v['measuredEfficiency']).toBeCloseTo(sound['measuredEfficiency'] as number, 9);
    expect(firing({ gaugeReadings: off }).get('differs')).toMatch(/not at zero/);
    expect(firing({ gaugeReadings: off, linkageEfficiency: 0.7 }).get('differs')).toMatch(/Every page/);
  });

  test('a gauge that holds the hardest reading on one line, but not half as much again, is too small for the failure test', () => {
    const one = values({ gaugeReadings: rising })['oneLinePressure'] as number;
    expect(firing({ gaugeReadings: rising, gaugeRange: 1.4 * one }).has('gauge-small')).toBe(true);
    expect(firing({ gaugeReadings: rising, gaugeRange: 1.6 * one }).has('gauge-small')).toBe(false);
  });

  test('lines that come back lower than they went are two ways exchanged, and no pedal that drags', () => {
    const exchanged = readings({ friction: 0.08 }).map((r) => ({ ...r, foot: r.foot === 'down' ? 'up' as const : 'down' as const }));
    expect(firing({ gaugeReadings: exchanged }).has('backwards')).toBe(true);
    expect(values({ gaugeReadings: exchanged })['barFreedom']).toBe('both');
    expect(firing({ gaugeReadings: readings({ friction: 0.08 }) }).has('backwards')).toBe(false);
  });
});
