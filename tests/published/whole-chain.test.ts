import { describe, expect, test } from 'vitest';
import { calculatorById, evaluate } from '../../src/calculators/index.ts';
import type { Values } from '../../src/calculators/index.ts';
import { bar, deg, inch, lbf, mm } from '../../src/units/si.ts';
import { demoInputs } from '../sweep/sample.ts';

/** Results of a calculator for the demo truck with some values changed, its feeds' results changed with them. */
function run(id: string, over: Values = {}): Record<string, number> {
  const record = calculatorById(id);
  const inputs: Record<string, Values[string]> = { ...demoInputs(record), ...over };
  for (const feed of record.feeds ?? []) {
    const fed = run(feed.id, over);
    for (const key of feed.outputs as readonly string[]) if (key in inputs && !(key in over)) inputs[key] = fed[key] as number;
  }
  const result = evaluate(record, inputs);
  if (!result.ok) throw new Error(`${id}: expected a result, found: ${result.refusal.refused((x) => String(x))}`);
  return result.values as Record<string, number>;
}
const near = (a: number | undefined, b: number | undefined, within = 1e-9): void => expect(Math.abs((a as number) - (b as number)) / Math.abs(b as number)).toBeLessThan(within);
const g = 9.80665;

describe('the demo truck from foot to road', () => {
  const pressure = run('line-pressure');
  const road = run('braking-rate');
  const weight = ((road.frontAxleLoad as number) + (road.rearAxleLoad as number)) * g;

  test('has the same pressures on every page', () => {
    near(road.frontPressure, pressure.frontPressure);
    near(road.rearPressure, pressure.rearPressure);
    near(run('disc-torque').frontPressure, pressure.frontPressure);
  });

  test('shares the rod force between the masters without losing any', () => {
    near((pressure.frontPressure as number) * (pressure.frontMasterArea as number) + (pressure.rearPressure as number) * (pressure.rearMasterArea as number), pressure.rodForce);
  });

  test('slows by the sum of its brake forces over its weight', () => {
    near(road.brakingRateReached, ((road.frontBrakeForce as number) + (road.rearBrakeForce as number)) / weight);
    near(road.rearBrakeFraction, (road.rearBrakeForce as number) / ((road.frontBrakeForce as number) + (road.rearBrakeForce as number)));
  });

  test('puts no more work into the fluid than the foot gives', () => {
    const fluid = (k: 'front' | 'rear'): number => (road[`${k}Pressure`] as number) * (road[`${k}MasterArea`] as number) * (road[`${k}Stroke`] as number);
    const foot = (road.controlForce as number) * (road.padTravelNormal as number);
    expect(fluid('front') + fluid('rear')).toBeLessThan(foot);
    // All of it but the linkage's loss and the free play, were the pressure there from the start.
    near(fluid('front') + fluid('rear'), (foot - (road.controlForce as number) * (road.pedalRatio as number) * (road.pushrodFreePlay as number)) * (road.linkageEfficiency as number), 1e-6);
  });

  test('tilts its bar by the same strokes on both pages', () => {
    const bar = run('balance-bar');
    near(road.barTilt, bar.barTilt, 1e-6);
    near(bar.frontStroke, road.frontStroke, 1e-6);
  });

  test('meets its ideal split where the lock order changes hands', () => {
    const lock = run('lock-order');
    const at = lock.criticalRate as number;
    near(run('ideal-distribution', { brakingRate: at, rearBrakeFraction: lock.rearBrakeFraction as number }).idealRearShare, lock.rearBrakeFraction, 1e-9);
    const used = run('adhesion', { brakingRate: at, rearBrakeFraction: lock.rearBrakeFraction as number });
    near(used.frontAdhesion, used.rearAdhesion, 1e-9);
    near(used.frontAdhesion, at, 1e-9);
  });

  test('keeps its weight while load moves forward', () => {
    const load = run('load-transfer');
    near((load.frontDynamicLoad as number) + (load.rearDynamicLoad as number), weight);
  });

  test('brakes worse with either circuit dead than with both, and worst on its rears', () => {
    const dead = run('circuit-failure');
    expect(dead.rateFrontDead).toBeLessThan(dead.rateRearDead as number);
    expect(dead.rateRearDead).toBeLessThan(road.brakingRateReached as number);
    expect(dead.travelFrontDead).toBeGreaterThan(road.padTravelNormal as number);
    expect(dead.travelRearDead).toBeGreaterThan(road.padTravelNormal as number);
  });

  test('stops in the distance its braking rate allows', () => {
    const stop = run('stopping-distance', { brakingRate: road.brakingRateReached as number, buildUpTime: 0, reactionTime: 0, grade: 0 });
    near(stop.stoppingDistance, (stop.speed as number) ** 2 / (2 * g * (road.brakingRateReached as number)));
  });

  test('with both bores doubled in area needs twice the foot for the same pressure and has less pad travel', () => {
    const wide = { frontMasterBore: 0.7 * inch * Math.SQRT2, rearMasterBore: 0.7 * inch * Math.SQRT2 };
    const double = run('braking-rate', { ...wide, controlForce: 2 * (road.controlForce as number) });
    near(double.frontPressure, road.frontPressure);
    expect(double.padTravelNormal).toBeLessThan(road.padTravelNormal as number);
  });

  test('is short of volume before it is short of force: pad and bar are nearly used up within a leg’s force', () => {
    const hard = run('braking-rate', { controlForce: 112 * lbf });
    expect(hard.brakingRateReached).toBeGreaterThan(0.8);
    expect(hard.padTravelUsed).toBeGreaterThan(0.75);
    expect(hard.tiltOfStop).toBeGreaterThan(0.85);
  });
});

describe('the reference truck worked by hand: pressure, rate, strokes, pad travel and tilt at three feet', () => {
  const truck: Values = {
    frontAxleLoad: 0.58 * 1340, rearAxleLoad: 0.42 * 1340, wheelbase: 2.743, cgHeight: 0.58, loadedRadius: 0.3, pushOutPressure: 0,
    frontPistonDiameter: 54 * mm, rearPistonDiameter: 38.1 * mm, frontTrackOuter: 130 * mm, frontTrackInner: 86 * mm, rearTrackOuter: 133 * mm, rearTrackInner: 91 * mm,
    frontPadFriction: 0.38, rearPadFriction: 0.38, caliperEfficiency: 0.98, pedalRatio: 6.2, linkageEfficiency: 0.85, frontMasterBore: 17.78 * mm, rearMasterBore: 17.78 * mm,
    frontMasterStroke: 28 * mm, rearMasterStroke: 28 * mm, barSpacing: 63.5 * mm, barOffset: 7.62 * mm, barStopAngle: 12 * deg, portStroke: 1 * mm, masterSpring: 0, pushrodFreePlay: 0, floorTravel: 0.16,
    frontTakeUp: 1.874e-6, rearTakeUp: 0.884e-6, frontCompliance: 0.051e-11, rearCompliance: 0.033e-11,
  };
  // Half a unit of the last printed figure.
  test.each([
    [222, { frontPressure: [29.2 * bar, 0.05 * bar], rearPressure: [17.9 * bar, 0.05 * bar], brakingRateReached: [0.359, 0.0005], frontStroke: [14.5 * mm, 0.05 * mm], rearStroke: [6.9 * mm, 0.05 * mm], padTravelNormal: [72 * mm, 0.5 * mm], barTilt: [6.9 * deg, 0.05 * deg] }],
    [400, { frontPressure: [52.6 * bar, 0.05 * bar], rearPressure: [32.3 * bar, 0.05 * bar], brakingRateReached: [0.648, 0.0005] }],
    [500, { frontPressure: [65.8 * bar, 0.05 * bar], rearPressure: [40.3 * bar, 0.05 * bar], brakingRateReached: [0.81, 0.0005], frontStroke: [22.1 * mm, 0.05 * mm], rearStroke: [9.9 * mm, 0.05 * mm], padTravelNormal: [108 * mm, 0.5 * mm], barTilt: [11 * deg, 0.06 * deg] }],
  ] as const)('%i N', (controlForce, expected) => {
    const found = run('braking-rate', { ...truck, controlForce });
    for (const [key, [value, half]] of Object.entries(expected)) expect(Math.abs((found[key] as number) - value), `${key}: ${found[key]}`).toBeLessThanOrEqual(half * 1.02);
  });

  test('gives 122.8 and 63.4 N of axle brake force per bar, a rear fraction of 0.240 and a critical rate of 0.85 g', () => {
    const disc = run('disc-torque', truck);
    expect((disc.frontBrakeGain as number) * bar).toBeCloseTo(122.8, 1);
    expect((disc.rearBrakeGain as number) * bar).toBeCloseTo(63.4, 1);
    const lock = run('lock-order', truck);
    expect(lock.rearBrakeFraction).toBeCloseTo(0.24, 3);
    expect(lock.criticalRate).toBeCloseTo(0.85, 2);
  });
});
