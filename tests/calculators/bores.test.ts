import { describe, expect, test } from 'vitest';
import { sayIn } from '../../src/build/fields.ts';
import { calculatorById, evaluate } from '../../src/calculators/index.ts';
import type { Values } from '../../src/calculators/index.ts';
import { foundFor } from '../../src/calculators/helpers/bore-search.ts';
import { missSentence } from '../../src/calculators/helpers/bore-words.ts';
import { demoInputs } from '../sweep/sample.ts';

const say = sayIn('us');
const finder = calculatorById('bore-finder');
const window = calculatorById('bore-window');
const demo = demoInputs(finder);
const mm = 1e-3;
const opened = { floorTravel: 0.1778, frontTakeUp: 1.39e-6, frontCompliance: 3.8e-13, barStopAngle: 0.2793, frontBrakeGain: (demo['frontBrakeGain'] as number) * (120 / 108) };

function answer(id: string, over: Values = {}): Values {
  const record = calculatorById(id);
  const result = evaluate(record, { ...demoInputs(record), ...over });
  if (!result.ok) throw new Error(`${id}: expected an answer, found: ${result.refusal.refused(say)}`);
  return result.values;
}
function refusal(over: Values): string {
  const result = evaluate(finder, { ...demo, ...over });
  return result.ok ? `expected a refusal, found ${String(result.values['bestFrontBore'])}` : result.refusal.refused(say);
}

describe('the set found first', () => {
  test('brakes at the target rate, with the same pressures and strokes, when the whole chain from foot to road is asked', () => {
    const v = answer('bore-finder', opened);
    const chain = answer('braking-rate', {
      ...opened, controlForce: v['bestEffort']!, pedalRatio: v['bestPedalRatio']!, frontShare: v['bestFrontShare']!, frontMasterBore: v['bestFrontBore']!, rearMasterBore: v['bestRearBore']!,
    });
    expect(chain['brakingRateReached']).toBeCloseTo(0.8, 9);
    for (const key of ['frontPressure', 'rearPressure', 'frontStroke', 'rearStroke'] as const) expect((chain[key] as number) / (v[key] as number)).toBeCloseTo(1, 9);
    expect(chain['padTravelNormal']).toBeCloseTo(v['bestPadTravel'] as number, 9);
  });

  test('has the critical rates of the lock order, and the failures of one circuit dead', () => {
    const v = answer('bore-finder', opened);
    const set = { ...opened, pedalRatio: v['bestPedalRatio']!, frontShare: v['bestFrontShare']!, frontMasterBore: v['bestFrontBore']!, rearMasterBore: v['bestRearBore']! };
    const lock = answer('lock-order', set);
    expect(lock['criticalRate']).toBeCloseTo(v['criticalRate'] as number, 9);
    expect(lock['ladenCriticalRate']).toBeCloseTo(v['ladenCriticalRate'] as number, 9);
    const dead = answer('circuit-failure', { ...set, controlForce: demo['driverForce']!, barOffset: ((v['bestFrontShare'] as number) - 0.5) * (demo['barSpacing'] as number) });
    for (const key of ['rateFrontDead', 'rateRearDead', 'travelFrontDead', 'travelRearDead'] as const) expect(dead[key] as number, key).toBeCloseTo(v[key] as number, 9);
  });

  test('asks loaded for what the chain asks of the loaded weights at the same rate', () => {
    const v = answer('bore-finder', { ...opened, payloadAhead: 0 });
    const chain = answer('braking-rate', {
      ...opened, controlForce: v['ladenEffort']!, pedalRatio: v['bestPedalRatio']!, frontShare: v['bestFrontShare']!, frontMasterBore: v['bestFrontBore']!, rearMasterBore: v['bestRearBore']!,
      rearAxleLoad: (demo['rearAxleLoad'] as number) + (demo['payload'] as number), frontMasterStroke: 50 * mm, rearMasterStroke: 50 * mm, floorTravel: 0.4,
    });
    expect(chain['brakingRateReached']).toBeCloseTo(0.8, 9);
  });

  test('has the window that the bore window gives for its split and its bar', () => {
    const v = answer('bore-finder');
    // No push-out pressure, so that the split at 0.8 g is the split.
    const bare = answer('bore-finder', { pushOutPressure: 0 });
    const w = answer('bore-window', { pushOutPressure: 0, rearShareTarget: bare['rearBrakeFraction']!, frontShare: bare['bestFrontShare']!, pedalRatio: bare['bestPedalRatio']! });
    for (const key of ['frontBoreLow', 'frontBoreHigh', 'rearBoreLow', 'rearBoreHigh'] as const) expect((w[key] as number) / (bare[key] as number), key).toBeCloseTo(1, 9);
    expect(v['bestFrontBore']).toBeCloseTo(19.05 * mm, 9);
  });

  test('on the demo truck keeps its effort and lacks way: volume is short, not force', () => {
    const v = answer('bore-finder');
    expect(v['pairsPassing']).toBe(0);
    expect(v['bestEffort']).toBeLessThan(demo['driverForce'] as number);
    const missed = foundFor(v as never).pairs[0]!.judgements.filter((j) => !j.met).map((j) => j.criterion);
    expect(missed).toContain('pad-travel');
    expect(missed).not.toContain('effort');
  });

  test('meets every limit once floor, rotor, fluid and bar have made room, with bores that were on the shelf before', () => {
    const v = answer('bore-finder', opened);
    expect(v['pairsPassing']).toBeGreaterThan(0);
    expect(v['limitsMet']).toBe(12);
    expect(v['bestFrontBore']).toBeCloseTo(0.7 * 25.4 * mm, 9);
  });
});

describe('a near miss', () => {
  test('says which bore runs out of stroke and by how much', () => {
    const v = answer('bore-finder');
    const small = foundFor(v as never).pairs.find((p) => p.verdict === 'never' && p.ends.some((e) => e.end === 'front-bottom'))!;
    const by = small.ends.find((e) => e.end === 'front-bottom')!.by;
    expect(missSentence(small, v as never, say)).toContain(`ront 5/8\u00a0in runs out of stroke by ${say(by, 'length')}`);
  });

  test('of a bore of the reader’s own is named by its size', () => {
    const v = answer('bore-finder', { frontMasterBore: 18.5 * mm });
    expect(foundFor(v as never).pairs.some((p) => Math.abs(p.frontBore - 18.5 * mm) < 1e-9)).toBe(true);
    expect(finder.tables![0]!.rows(v as never, say).at(-1)![0]).toContain('0.728');
  });
});

describe('numbers that leave nothing to buy are refused in words, with the amount', () => {
  test.each([
    ['a circuit that does not swell', { frontCompliance: 0 }, /swell by nothing/],
    ['a stroke that the port uses up', { rearMasterStroke: 3 * mm, portStroke: 3 * mm }, /rear master.*used up 0\.0236/],
    ['ratios the wrong way round', { ratioFrom: 7, ratioTo: 5 }, /2 above the highest/],
    ['a band of share without room', { shareLow: 0.65, shareHigh: 0.5 }, /not below the highest/],
    ['a bar that cannot reach the share', { barReach: 2 * mm, shareLow: 0.6, shareHigh: 0.7 }, /cannot reach the share.*53\.1.*6\.85.*short/],
    ['a share outside 0 to 1', { barOffset: 40 * mm }, /0\.325.*outside a clevis/],
    ['a bar that cannot swing', { barStopAngle: 0 }, /stop is at 0°/],
    ['a bar on its stop at rest', { barRestLead: 20 * mm }, /beyond its stop/],
    ['free play down to the carpet', { pushrodFreePlay: 15 * mm, floorTravel: 20 * mm }, /Free play alone/],
    ['a road that gives less than the target', { grip: 0.6 }, /gives 0\.6.*0\.2.*above it/],
    ['a load that lifts the front wheels', { payload: 3000, payloadAhead: -2 }, /lifts the front wheels/],
    ['a floor that no set clears', { floorTravel: 40 * mm }, /No set tried ever reaches 0\.8.*carpet.*too early/],
  ] as const)('%s', (_name, over, words) => {
    expect(refusal(over)).toMatch(words);
  });
});

test('a larger bore asks more of the foot and less of the stroke in every row of the window’s table', () => {
  const v = answer('bore-window');
  const rows = window.tables![0]!.rows(v as never, say).map((row) => row[1] as string);
  expect(rows[0]).toMatch(/^short by/);
  expect(rows[1]).toMatch(/^fits/);
  for (const text of rows.slice(2)) expect(text).toMatch(/too hard$/);
});
