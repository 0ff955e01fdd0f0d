import { expect, test } from 'vitest';
import { readRecord, sayIn } from '../../src/build/fields.ts';
import { firingCautions } from '../../src/build/cautions.ts';
import { readLink } from '../../src/build/links.ts';
import { calculatorById, evaluate } from '../../src/calculators/index.ts';
import type { Values } from '../../src/calculators/index.ts';
import { anywhere, demoInputs, randomFrom } from '../sweep/sample.ts';

const say = sayIn('us');
const inch = 0.0254;

function words(id: string, over: Values = {}) {
  const record = calculatorById(id);
  const result = evaluate(record, { ...demoInputs(record), ...over });
  if (!result.ok) throw new Error(`${id}: expected an answer, found: ${result.refusal.refused(say)}`);
  const v = result.values;
  return {
    v, summary: record.summary(v as never, say), cautions: new Map(firingCautions(record, v, say).map((caution) => [caution.id, caution.words])),
    charts: (record.charts ?? []).map((chart) => chart.describe(v as never, say)), picture: record.picture?.describe(v as never, say, record.picture.motion?.start(v as never) ?? 0) ?? '',
  };
}

test('a master that bottoms before the pressure is there leaves no travel above the carpet to boast of', () => {
  const short = words('fluid-ledger', { rearMasterStroke: 0.3 * inch });
  expect(short.v['padReserve']).toBeGreaterThan(0);
  expect(short.summary).not.toMatch(/leaves/);
  expect(short.summary).toMatch(/rear master bottoms 0\.0498\sin before that, so it cannot be reached/);
  expect(short.cautions.get('on-carpet')).toMatch(/0\.0498\sin more stroke than the rear master has/);
  expect(words('fluid-ledger').summary).toMatch(/leaves/);
});

test('of two masters that bottom, the one that lacks more is named with what it lacks', () => {
  // Front: 0.762 in of 0.6, so 1.27 times its stroke; rear: 0.35 in of 0.25, so 1.4 times, but less in inches.
  const both = words('fluid-ledger', { frontMasterStroke: 0.6 * inch, rearMasterStroke: 0.25 * inch });
  expect(both.v['rearStrokeUsed']).toBeGreaterThan(both.v['frontStrokeUsed'] as number);
  expect(both.cautions.get('on-carpet')).toMatch(/0\.162\sin more stroke than the front master has/);
});

test('a reservoir below one axle’s brakes on the level is not said to stand above them', () => {
  const low = words('fluid-head', { frontBleederHeight: 24 * inch, reservoirHeight: 22 * inch });
  expect([low.v['frontHeadAdvice'], low.v['rearHeadAdvice']]).toEqual(['level', 'slope']);
  expect(low.cautions.get('below-level')).toMatch(/below the front brakes/);
  expect(low.cautions.get('below-on-slope')).toMatch(/^Level, the reservoir is above the rear brakes\. [A-Z].* below the rear ones/);
});

test('the leg in the picture has the angles of the result', () => {
  for (const travel of [3.95, 3.1, 1.7]) {
    const leg = words('leg-angles', { padTravelNormal: travel * inch });
    expect(leg.picture).toContain(`The knee is at ${say(leg.v['kneeAtHard'] as number, 'angle')}, the ankle at ${say(leg.v['ankleAtHard'] as number, 'angle')}`);
    expect(leg.picture).toContain(`${say(Math.abs(leg.v['pushOffHard'] as number), 'angle')} off the way of the pad`);
  }
});

test('a disc that begins later than the drums brakes less in gentle stops', () => {
  expect(words('disc-to-match').charts[0]).toMatch(/more in gentle stops and less in harder/);
  expect(words('disc-to-match', { drumPushOut: 0 }).charts[0]).toMatch(/less in gentle stops and more in harder/);
});

test('a truck that would tip before it slides, nose up, is not said to slide there', () => {
  const high = words('parking-brake', { cgHeight: 1.6, wheelbase: 1.8, grip: 1.2 });
  expect(high.v['tiresUp']).toBeGreaterThan(0);
  expect(high.summary).toMatch(/its front wheels leave the road at .* nose up/);
});

test('a link that was cut short is told in one line, not in thirty names', () => {
  const record = calculatorById('stop-lamp');
  const link = readLink(record, '?v=1&pedal-ratio=6in');
  const reading = readRecord(record, (key) => link?.values.get(key), 'us');
  if (reading.state !== 'blank') throw new Error('expected no result');
  expect(reading.reason).toMatch(/and \d+ more fields are put right\.$/);
  expect(reading.reason.length).toBeLessThan(200);
});

test('a list with nothing in it asks for a row in whole words', () => {
  const record = calculatorById('drop-points');
  const empty = { text: '', unit: '', system: 'us' } as const;
  const problem = (key: string) => readRecord(record, (name) => (name === key ? empty : undefined), 'us').fields.find((field) => field.key === key)?.problem;
  expect(problem('truckPoints')).toBe('At least 2 points of the truck are needed here. Add a point.');
  expect(problem('pointPairs')).toBe('At least 1 pair is needed here. Add a pair.');
});

test('parts that overlap are said to by what the headline says too', () => {
  const record = calculatorById('clearance-sweep');
  const demo = demoInputs(record);
  const fat = (demo['sweepParts'] as readonly Record<string, number | string>[]).map((part) => ({ ...part, radius: (part['radius'] as number) + 1.5 * inch }));
  const met = words('clearance-sweep', { sweepParts: fat as never });
  expect(met.v['sweepGap']).toBeLessThan(0);
  expect(met.summary).toContain(`and by ${say(-(met.v['sweepLeast'] as number), 'length')} with twice the measuring error`);
});

test('a brake just as high over the throttle as the trade’s rule lets it be is not told that it is higher', () => {
  expect(words('pedal-spacing', { brakeOverThrottle: inch }).cautions.has('step-up')).toBe(false);
  expect(words('pedal-spacing', { brakeOverThrottle: 1.01 * inch }).cautions.get('step-up')).toMatch(/1\.01\sin above/);
});

test('a shaft with enough collapse at rest is warned of where soft mounts take it below what a crash is left', () => {
  const stiff = words('shaft-line', { slipIn: 3.8 * inch, mountMovement: 0.2 * inch });
  expect(stiff.v['collapseAfter']).toBeGreaterThan(0.05);
  expect(stiff.cautions.has('collapse-near')).toBe(false);
  const soft = words('shaft-line', { slipIn: 3.8 * inch, mountMovement: 0.9 * inch });
  expect(soft.v['collapseAfter']).toBe(stiff.v['collapseAfter']);
  expect(soft.v['collapseLeast']).toBeLessThan(0.04);
  expect(soft.cautions.get('collapse-near')).toMatch(/takes up to 0\.9\sin of it/);
  expect(soft.cautions.get('collapse-near')).not.toMatch(/to aim for/);
  expect(words('shaft-line', { mountMovement: 0 }).cautions.get('collapse-near')).toMatch(/typed as not moving/);
});

test('the tube is dangerous where its whole wall would yield, not where its bore does', () => {
  const demo = words('line-strength');
  expect(demo.v['yieldFactorWorst']).toBeLessThan(1);
  expect(demo.cautions.has('tube-yields')).toBe(false);
  expect(demo.cautions.get('bore-yields')).toMatch(/just begins to yield/);
  const harder = words('line-strength', { panicForce: 520 * 4.4482216 });
  expect(harder.cautions.get('bore-yields')).toMatch(/deep from the bore/);
  const most = words('line-strength', { panicForce: 900 * 4.4482216 });
  expect(most.v['yieldedPart']).toBeCloseTo(1, 12);
  expect(most.cautions.has('bore-yields')).toBe(false);
  expect(most.cautions.get('tube-yields')).toMatch(/143\s%/);
  expect(most.charts[0]).toMatch(/all of it yields/);
});

test('friction of the linkage does not lower the bound on line pressure', () => {
  const [loose, tight] = [0.95, 0.6].map((linkageEfficiency) => words('line-strength', { linkageEfficiency }).v);
  expect(tight!['worstPressure']).toBe(loose!['worstPressure']);
  expect(tight!['hardStopPressure']).toBeLessThan(loose!['hardStopPressure'] as number);
});

function refusal(id: string, over: Values): string {
  const record = calculatorById(id);
  const result = evaluate(record, { ...demoInputs(record), ...over });
  if (result.ok) throw new Error(`${id}: expected a refusal, found ${record.summary(result.values as never, say)}`);
  return result.refusal.refused(say).replace(/\s/g, ' ');
}

test('air that nothing squeezes cannot be found, and the circuit without pressure is named with what its spring takes', () => {
  // 10 lbf × 6.2 × 0.85 is less than two springs of 112 lbf.
  expect(refusal('air-from-travel', { lightForce: 10, controlForce: 40, masterSpring: 500, pedalRatio: 5 })).toMatch(/^At a firm push of 8\.99 lbf there is no pressure in the front circuit: its master gets [\d.]+ lbf of rod force and its spring takes 112 lbf\./);
  expect(refusal('air-from-travel', { rearValve: 'fitted', kneePressure: 0, valveSlope: 0 })).toMatch(/no pressure in the rear circuit: its valve lets none through/);
  // Only the front's master overcomes its spring: half an answer is none.
  expect(refusal('air-from-travel', { frontShare: 0.98, masterSpring: 60 })).toMatch(/no pressure in the rear circuit: its master gets/);
});

test('a rear that leads from the gentlest braking has a critical rate of 0 g, not one below nothing, and is told what is too much', () => {
  const heavy = { frontAxleLoad: 900, rearAxleLoad: 400, frontShare: 0.35, cgHeight: 1.4 };
  const bad = words('lock-order', heavy);
  expect(bad.v['rearBrakeFraction']).toBeGreaterThan(bad.v['rearLoadFraction'] as number);
  expect(bad.v['criticalRate']).toBe(0);
  expect(bad.v['lockMargin']).toBe(-(bad.v['grip'] as number));
  expect(bad.summary).toMatch(/the rear leads on every road, however gently you brake/);
  const over = (bad.v['rearBrakeFraction'] as number) - (bad.v['rearLoadFraction'] as number);
  expect(bad.cautions.get('rear-first')).toContain(`at least ${say(over, 'share', 2)} too much`);
  expect(words('lock-order').cautions.get('rear-first')).not.toMatch(/too much/);
});

test('no calculator shows a critical rate below 0 g, whatever truck is typed', () => {
  for (const id of ['lock-order', 'tire-radius', 'bore-finder'] as const) {
    const record = calculatorById(id);
    const random = randomFrom(11);
    const rates = (record.outputs as readonly string[]).filter((key) => /CriticalRate|^criticalRate/.test(key));
    let [zero, above] = [0, 0];
    for (let k = 0; k < (id === 'bore-finder' ? 60 : 600); k++) {
      const result = evaluate(record, anywhere(record, random));
      for (const rate of result.ok ? rates.map((key) => result.values[key] as number) : []) {
        expect(rate).toBeGreaterThanOrEqual(0);
        if (rate === 0) zero++;
        else above++;
      }
    }
    if (id !== 'bore-finder') expect(Math.min(zero, above)).toBeGreaterThan(0);
  }
});

test('a caliper farther from its axle than a wheel is large is refused with the amount', () => {
  expect(refusal('fluid-head', { rearBleederStation: -3.5, wheelbase: 2.743 })).toMatch(/^The rear caliper at −138 in stands 29\.8 in behind the rear axle, which is at −108 in\. .*: 13\.8 in too far\./);
  expect(refusal('fluid-head', { frontBleederStation: -1 })).toMatch(/^The front caliper at −39\.4 in stands 39\.4 in behind the front axle\./);
  // The sign forgotten: a rear caliper ahead of the nose.
  expect(refusal('fluid-head', { rearBleederStation: 2.7, wheelbase: 2.743 })).toMatch(/ahead of the rear axle/);
  // Behind the axle line, within the wheel, is where many calipers sit.
  expect(words('fluid-head', { rearBleederStation: -2.743 - 0.2, wheelbase: 2.743 }).summary).toMatch(/^Reservoir/);
});
