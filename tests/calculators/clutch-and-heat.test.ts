import { describe, expect, test } from 'vitest';
import { firingCautions } from '../../src/build/cautions.ts';
import { sayIn } from '../../src/build/fields.ts';
import { calculatorById, evaluate } from '../../src/calculators/index.ts';
import type { Values } from '../../src/calculators/index.ts';
import { demoInputs } from '../sweep/sample.ts';

function run(id: string, over: Values = {}): Record<string, number> {
  const record = calculatorById(id);
  const result = evaluate(record, { ...demoInputs(record), ...over });
  if (!result.ok) throw new Error(`${id}: expected a result, found ${result.refusal.refused(String)}`);
  return result.values as unknown as Record<string, number>;
}

describe('clutch-travel', () => {
  test('a pedal pushed to the stop the page gives puts the bearing at what is needed plus the reserve, or at the limit', () => {
    const trucks: readonly Values[] = [{ clutchMasterBore: 0.0206375 }, { clutchMasterBore: 0.0222 }, { slaveType: 'ring', clutchMasterBore: 0.0254 }, { stopReserve: 0.6, clutchMasterBore: 0.0222 }];
    for (const over of trucks) {
      const { clutchStopTravel } = run('clutch-travel', over);
      const v = run('clutch-travel', { ...over, clutchPadTravel: clutchStopTravel as number });
      expect(v['bearingTravel']).toBeCloseTo(Math.min(v['bearingTravelNeeded']! * (1 + v['stopReserve']!), v['bearingLimit']!), 12);
    }
  });

  test('a pedal that cannot reach release gets no stop beyond what it can reach, and the page still says by how much it falls short', () => {
    const v = run('clutch-travel', { clutchMasterBore: 0.0158 });
    expect(v['clutchStopTravel']).toBeCloseTo(v['clutchFloorTravel']!, 12);
    expect(v['releaseAboveFloor']).toBeLessThan(0);
    expect(v['bearingTravel']).toBeLessThan(v['bearingTravelNeeded']!);
  });

  test('a ring of the area of a slave times its fork moves the bearing alike, for the same effort', () => {
    const fork = run('clutch-travel', { slavePlay: 0 });
    const inner = fork['ringInner']!;
    const ringOuter = Math.sqrt((4 / Math.PI) * fork['slaveArea']! * fork['forkRatio']! + inner ** 2);
    const ring = run('clutch-travel', { slavePlay: 0, slaveType: 'ring', ringOuter });
    for (const key of ['bearingTravel', 'clutchControlForce', 'releaseTravel']) expect(ring[key]! / fork[key]!).toBeCloseTo(1, 12);
    expect(ring['clutchPressure']! / fork['clutchPressure']!).toBeCloseTo(1, 12);
  });

  test('carpet, stop or the end of the bore: the pedal goes no farther than the nearest', () => {
    expect(run('clutch-travel', { clutchPadTravel: 0.3 })['clutchTravelUsed']).toBeCloseTo(run('clutch-travel')['clutchFloorTravel']!, 12);
    const short = run('clutch-travel', { clutchMasterStroke: 0.01 });
    expect(short['clutchTravelUsed']).toBeCloseTo(short['clutchFreePlay']! + short['clutchPedalRatio']! * 0.01, 12);
  });
});

describe('grade-heat', () => {
  test('weight times the height lost is what tires, air, engine and brakes took', () => {
    for (const descentGrade of [0.05, 0.07, 0.12]) {
      const v = run('grade-heat', { descentGrade });
      const spent = (v['rollingPower']! + v['airPower']! + v['gearPower']! + v['brakePower']!) * v['descentTime']!;
      expect(spent / (v['ladenMass']! * 9.80665 * v['descentDrop']!)).toBeCloseTo(1, 10);
    }
  });

  test('the engine braking asked for brings the fronts to rest just at fade', () => {
    const over = { descentGrade: 0.1 };
    const { gearForceNeeded, padFadeTemperature } = run('grade-heat', over);
    expect(gearForceNeeded).toBeGreaterThan(0);
    expect(run('grade-heat', { ...over, gearForce: gearForceNeeded as number })['frontSettledTemperature']).toBeCloseTo(padFadeTemperature as number, 8);
  });

  test('a hill without end and one that ends agree when it is long', () => {
    const v = run('grade-heat', { descentDrop: 6000 });
    expect(v['frontBottomTemperature']! / v['frontSettledTemperature']!).toBeCloseTo(1, 2);
    expect(v['frontBottomTemperature']).toBeLessThan(v['frontSettledTemperature']!);
  });
});

describe('rotor-heat', () => {
  test('one stop, no pause: the rotor is warmer by its rise, and all four rotors and the pads hold the energy of the stop', () => {
    const v = run('rotor-heat', { stops: 1 });
    expect(v['frontSeriesTemperature']! - v['ambient']!).toBeCloseTo(v['frontRise']!, 9);
    expect((2 * (v['frontRotorEnergy']! + v['rearRotorEnergy']!)) / v['rotorFraction']! / v['stopEnergy']!).toBeCloseTo(1, 12);
  });

  test('a wall deeper than the heat reaches has the skin of a thick one; a thin one is hotter', () => {
    const [thin, deep] = [0.005, 0.04].map((frontRotorWall) => run('rotor-heat', { frontRotorWall }));
    expect(deep!['skinRise']! / deep!['thickSkinRise']!).toBeCloseTo(1, 6);
    expect(thin!['skinRise']).toBeGreaterThan(1.1 * thin!['thickSkinRise']!);
  });

  test('the skin is at its hottest above what it is at the halt by √2 in thick iron', () => {
    const v = run('rotor-heat');
    expect(v['thickSkinRise']! / v['thickHaltRise']!).toBeCloseTo(Math.SQRT2, 12);
  });

  test('rear brakes just like the front ones, with half of the work, have the same skin', () => {
    const v = run('rotor-heat', { rearBrakeFraction: 0.5, frontRotorMass: 5, rearRotorMass: 5, frontTrackOuter: 0.13, rearTrackOuter: 0.13, frontTrackInner: 0.09, rearTrackInner: 0.09, frontRotorWall: 0.006, rearRotorWall: 0.006 });
    expect(v['rearSkinRise']).toBeCloseTo(v['skinRise']!, 9);
    expect(v['rearSkinTemperature']).toBeCloseTo(v['skinTemperature']!, 9);
    expect(v['rearSweptArea']).toBe(v['frontSweptArea']);
  });

  test('small, thin rear rotors that do most of the work have the hotter skin, and it is theirs that is spoken of', () => {
    const record = calculatorById('rotor-heat');
    const v = run('rotor-heat', { stops: 1, rearBrakeFraction: 0.6, rearRotorMass: 3, rearTrackOuter: 0.11, rearTrackInner: 0.08, rearRotorWall: 0.0035, padFadeTemperature: 550 });
    expect(v['rearSkinTemperature']).toBeGreaterThan(550);
    expect(v['skinTemperature']).toBeLessThan(550);
    const skin = firingCautions(record, v as never, sayIn('us')).find(({ id }) => id === 'skin-fades');
    expect(skin?.words).toMatch(/skin of the rear touches/);
    const hot = firingCautions(record, run('rotor-heat', { rearRotorMass: 1.5, frontRotorMass: 12, rearRotorWall: 0.003 }) as never, sayIn('us'));
    expect(hot.map(({ id }) => id)).toContain('out-of-range');
  });

  test('fluid that takes all of the excess is as hot as the rotor, and none can be hotter', () => {
    const v = run('rotor-heat', { soakFraction: 1 });
    expect(v['fluidTemperature']).toBeCloseTo(v['frontSeriesTemperature']!, 9);
    expect(v['wetMargin']).toBeLessThan(v['dryMargin']!);
  });
});

describe('tire-radius', () => {
  test('tires alike at both ends leave the share, whatever their size; smaller fronts or larger rears take it from the rear', () => {
    const old = run('tire-radius');
    const share = (frontNewRadius: number, rearNewRadius: number) => run('tire-radius', { frontNewRadius, rearNewRadius })['newRearBrakeFraction']!;
    expect(share(0.25, 0.25)).toBeCloseTo(old['rearBrakeFraction']!, 12);
    expect(share(0.28, 0.3)).toBeLessThan(old['rearBrakeFraction']!);
    expect(share(0.32, 0.3)).toBeGreaterThan(old['rearBrakeFraction']!);
  });

  test('the old tires put back change nothing', () => {
    const { loadedRadius } = run('tire-radius') as { loadedRadius: number };
    const v = run('tire-radius', { frontNewRadius: loadedRadius, rearNewRadius: loadedRadius });
    expect(v['newBrakingRate']).toBeCloseTo(v['brakingRate']!, 12);
    expect(v['newCgHeight']).toBeCloseTo(v['cgHeight']!, 12);
    expect(v['newCriticalRate']).toBeCloseTo(v['fixedShareCriticalRate']!, 12);
    expect(v['trueSpeed']).toBeCloseTo(v['indicatedSpeed']!, 12);
  });
});

describe('fluid behind a hot rotor', () => {
  test('the hotter axle boils it: with rear rotors lighter than their share of the work, the rear decides', () => {
    for (const [id, rear] of [['rotor-heat', 'rearSeriesTemperature'], ['grade-heat', 'rearBottomTemperature']] as const) {
      const v = run(id, { rearRotorMass: 1.5 });
      expect(v[rear]).toBeGreaterThan(v[rear.replace('rear', 'front')]!);
      expect(v['fluidTemperature']).toBeCloseTo(v['ambient']! + v['soakFraction']! * (v[rear]! - v['ambient']!), 9);
      const same = run(id, { rearRotorMass: 9 });
      expect(same['fluidTemperature']).toBeCloseTo(same['ambient']! + same['soakFraction']! * (same[rear.replace('rear', 'front')]! - same['ambient']!), 9);
    }
  });
});

describe('the gear that a hill without end asks for', () => {
  test('in that gear the hotter axle settles just at fade, front or rear', () => {
    for (const rearRotorMass of [1.5, 9]) {
      const { gearForceNeeded } = run('grade-heat', { rearRotorMass, descentGrade: 0.1 });
      expect(gearForceNeeded).toBeGreaterThan(0);
      const v = run('grade-heat', { rearRotorMass, descentGrade: 0.1, gearForce: gearForceNeeded! });
      expect(Math.max(v['frontSettledTemperature']!, v['rearSettledTemperature']!)).toBeCloseTo(v['padFadeTemperature']!, 6);
    }
  });
});
