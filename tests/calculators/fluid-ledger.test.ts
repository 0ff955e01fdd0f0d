import { describe, expect, test } from 'vitest';
import { readRecord } from '../../src/build/fields.ts';
import type { Typed } from '../../src/build/fields.ts';
import { calculatorById } from '../../src/calculators/index.ts';
import { formatIn } from '../../src/units/index.ts';

/** A record's values with some inputs typed as text in SI-like units. */
function values(id: string, typed: Readonly<Record<string, string>> = {}): Record<string, number> {
  const lookup = (key: string): Typed | undefined => (typed[key] === undefined ? undefined : { text: typed[key], unit: typed[key].replace(/^[-\d./e]+ ?/, ''), system: 'us' });
  const reading = readRecord(calculatorById(id), lookup, 'us');
  if (reading.state !== 'ok') throw new Error(reading.reason);
  return reading.values as Record<string, number>;
}
const items = ['Gap', 'KnockBack', 'Hose', 'Caliper', 'Pad', 'Fluid', 'Air'].flatMap((item) => [`front${item}Travel`, `rear${item}Travel`]);

describe('take-up and swell computed from the parts', () => {
  test('keep the demo truck where its own figures once had it, to their rounding', () => {
    const v = values('circuit-volume');
    expect(formatIn(v['frontTakeUp']!, 'volume', 'in3')).toMatch(/^0\.114/);
    expect(formatIn(v['rearTakeUp']!, 'volume', 'in3')).toMatch(/^0\.0541/);
    expect(formatIn(v['frontCompliance']!, 'compliance', 'in3/1000psi')).toMatch(/^0\.215/);
    expect(formatIn(v['rearCompliance']!, 'compliance', 'in3/1000psi')).toMatch(/^0\.139/);
  });

  test('a larger front caliper now lengthens the front stroke and tilts the bar, which a typed take-up alone would hide', () => {
    const [small, large] = [values('balance-bar'), values('balance-bar', { frontPistonDiameter: '60 mm' })];
    expect(large['frontStroke']).toBeGreaterThan(small['frontStroke']! * 1.1);
    expect(large['barTilt']).toBeGreaterThan(small['barTilt']!);
    expect(large['rearStroke']).toBe(small['rearStroke']);
    const typed = { frontTakeUp: '0.114 in3', frontCompliance: '0.215 in3/1000psi' };
    expect(values('balance-bar', { ...typed, frontPistonDiameter: '60 mm' })['frontStroke']).toBe(values('balance-bar', typed)['frontStroke']);
  });

  test('four opposed pistons of 1-1/2 in take what two floating ones of the same clamp do', () => {
    const floating = values('circuit-volume', { frontPistonDiameter: '1.5 in', frontPistons: '2', frontCaliperType: 'floating' });
    const opposed = values('circuit-volume', { frontPistonDiameter: '1.5 in', frontPistons: '2', frontCaliperType: 'opposed' });
    expect(opposed['frontTakeUp']).toBeCloseTo(floating['frontTakeUp']!, 15);
    expect(opposed['frontClampArea']).toBe(floating['frontClampArea']);
    expect(opposed['frontMovingArea']).toBeCloseTo(2 * floating['frontMovingArea']!, 15);
  });
});

describe('the ledger', () => {
  test('is a sum: its lines make up the travel, with air and a valve too', () => {
    const trucks: Record<string, string>[] = [{}, { frontAir: '0.05 in3', rearAir: '0.02 in3' }, { rearValve: 'fitted', kneePressure: '200 psi' }];
    for (const typed of trucks) {
      const v = values('fluid-ledger', typed);
      const sum = [...items, 'freePlayAtPad', 'portTravel', 'flexTravel'].reduce((total, key) => total + v[key]!, 0);
      expect(sum).toBeCloseTo(v['padTravelNormal']!, 12);
    }
  });

  test('differs from the braking rate’s travel by the give of the mounting alone', () => {
    const [ledger, rate] = [values('fluid-ledger'), values('braking-rate')];
    expect(ledger['padTravelNormal']! - ledger['flexTravel']!).toBeCloseTo(rate['padTravelNormal']!, 12);
    expect(ledger['frontStroke']).toBeCloseTo(rate['frontStroke']!, 12);
  });

  test('a rear valve takes off rear swell, and nothing in front', () => {
    const [open, held] = [values('fluid-ledger'), values('fluid-ledger', { rearValve: 'fitted', kneePressure: '200 psi' })];
    expect(held['rearHoseTravel']).toBeLessThan(open['rearHoseTravel']!);
    expect(held['rearGapTravel']).toBe(open['rearGapTravel']);
    expect(held['frontHoseTravel']).toBe(open['frontHoseTravel']);
  });
});

describe('a long pedal, explained', () => {
  const travel = (controlForce: string, air: string): string => `${values('fluid-ledger', { controlForce, frontAir: air })['padTravelNormal']! * 1000} mm`;

  test('1 cm³ of air put into the front of the ledger is found again, and reads as dead travel', () => {
    const typed = { lightTravel: travel('10 lbf', '1 cm3'), firmTravel: travel('90 lbf', '1 cm3'), lightTravelExpected: travel('10 lbf', '0 cm3'), firmTravelExpected: travel('90 lbf', '0 cm3') };
    const v = values('air-from-travel', typed);
    expect(v['frontAirFound']! * 1e6).toBeCloseTo(1, 6);
    expect(v['frontAirLow']).toBeLessThan(v['frontAirFound']!);
    expect(v['frontAirHigh']).toBeGreaterThan(v['frontAirFound']!);
    expect(v['travelReading']).toBe('dead');
  });

  test('hoses that swell twice as much read as softness', () => {
    const at = (controlForce: string): string => `${values('fluid-ledger', { controlForce, frontHoseSwell: '0.094 in3' })['padTravelNormal']! * 1000} mm`;
    expect(values('air-from-travel', { lightTravel: at('10 lbf'), firmTravel: at('90 lbf') })['travelReading']).toBe('soft');
  });

  test('the ledger’s own travel leaves nothing to explain', () => {
    const v = values('air-from-travel', { lightTravel: travel('10 lbf', '0 cm3'), firmTravel: travel('90 lbf', '0 cm3') });
    expect(Math.abs(v['firmExcess']!)).toBeLessThan(1e-12);
    expect(v['travelReading']).toBe('none');
    expect(v['frontAirFound']).toBeLessThan(1e-12);
  });
});
