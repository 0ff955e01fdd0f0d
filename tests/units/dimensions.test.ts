import { evaluate } from 'mathjs';
import { describe, expect, test } from 'vitest';
import { spelled, unitKey } from '../../src/units/dimensions.ts';
import { dimensions, fromSi, otherUnit, parseQuantity, standardBores, toSi, unitFor, unitOf } from '../../src/units/index.ts';
import type { Dimension } from '../../src/units/index.ts';
import * as si from '../../src/units/si.ts';

const names = Object.keys(dimensions) as Dimension[];
const everyUnit = names.flatMap((dimension) => dimensions[dimension].units.map((unit) => ({ dimension, unit, id: unit.id })));
const relative = (found: number, expected: number): number => Math.abs(found / expected - 1);

describe('published conversions', () => {
  // NIST SP 811, appendix B; the first three are exact, the others printed to the digits given.
  test.each([
    ['length', 'in', 0.0254, 1e-15],
    ['mass', 'lb', 0.45359237, 1e-15],
    ['force', 'kgf', 9.80665, 1e-15],
    ['force', 'lbf', 4.4482216152605, 1e-14],
    ['pressure', 'psi', 6894.757293168361, 1e-14],
    ['torque', 'lbf.ft', 1.3558179483314004, 1e-14],
    ['speed', 'mph', 1609.344 / 3600, 1e-15],
    ['vacuum', 'inHg', 3386.389, 0.5e-3 / 3386],
    ['volume', 'floz', 29.57353e-6, 0.5e-5 / 29.57],
    ['power', 'hp', 745.69987, 1e-8],
    ['specificHeat', 'Btu/lb.degF', 4186.8, 1e-15],
    ['conductivity', 'Btu/h.ft.degF', 1.730735, 0.5e-6 / 1.73],
    ['density', 'lb/ft3', 16.01846, 0.5e-5 / 16],
  ] as const)('one %s %s is what NIST SP 811 prints', (dimension, id, value, within) => {
    expect(relative(toSi(1, unitOf(dimension, id)), value)).toBeLessThanOrEqual(within);
  });

  test('water freezes at 32 °F and boils at 212 °F; -40 is the same on both scales', () => {
    const [f, c, k] = [unitOf('temperature', 'degF'), unitOf('temperature', 'degC'), unitOf('temperature', 'K')];
    expect(toSi(32, f)).toBeCloseTo(273.15, 11);
    expect(toSi(212, f)).toBeCloseTo(373.15, 11);
    expect(toSi(-40, f)).toBeCloseTo(toSi(-40, c), 11);
    expect(toSi(0, k)).toBe(0);
  });

  test('a rise has no zero of its own: 180 °F from freezing to boiling water are 100 °C, and none is none', () => {
    const [f, c, k] = [unitOf('temperatureRise', 'degF'), unitOf('temperatureRise', 'degC'), unitOf('temperatureRise', 'K')];
    expect(toSi(180, f)).toBeCloseTo(100, 11);
    expect(toSi(100, c)).toBe(toSi(100, k));
    for (const unit of [f, c, k]) expect(toSi(0, unit)).toBe(0);
    const at = unitOf('temperature', 'degF');
    expect(toSi(212, at) - toSi(32, at)).toBeCloseTo(toSi(180, f), 10);
  });

  test('a 45° slope is a 100 % grade, and a gentle one is its angle in radians', () => {
    const slope = unitOf('grade', 'deg');
    expect(toSi(45, slope)).toBeCloseTo(1, 14);
    expect(fromSi(0.2, slope)).toBeCloseTo(11.309932474, 9);
    expect(toSi(0.01, slope) / ((0.01 * Math.PI) / 180)).toBeCloseTo(1, 7);
  });
});

describe('every unit against an independent library', () => {
  /** The unit in mathjs, and the SI unit to count it in. */
  const asMath: Record<string, Record<string, [number | string, string]>> = {
    ratio: { '': ['1 m/m', ''] }, count: { '': ['1 m/m', ''] }, friction: { '': ['1 N/N', ''] },
    share: { '%': ['1 cm/m', ''], fraction: ['1 m/m', ''] },
    brakingRate: { g: ['9.80665 m/s^2 / gravity', ''], 'm/s2': ['1 m/s^2 / gravity', ''], 'ft/s2': ['1 ft/s^2 / gravity', ''], '%': ['1 cm/m', ''] },
    length: { in: ['1 inch', 'm'], ft: ['1 foot', 'm'], mm: ['1 mm', 'm'], cm: ['1 cm', 'm'], m: ['1 m', 'm'] },
    distance: { ft: ['1 foot', 'm'], m: ['1 m', 'm'] },
    area: { in2: ['1 sqin', 'm^2'], ft2: ['1 foot^2', 'm^2'], m2: ['1 m^2', 'm^2'], cm2: ['1 cm^2', 'm^2'], mm2: ['1 mm^2', 'm^2'] },
    volume: { in3: ['1 cuin', 'm^3'], cm3: ['1 cm^3', 'm^3'], floz: ['1 gallon / 128', 'm^3'], L: ['1 liter', 'm^3'] },
    mass: { lb: ['1 lbm', 'kg'], kg: ['1 kg', 'kg'], g: ['1 gram', 'kg'] },
    force: { lbf: ['1 lbf', 'N'], N: ['1 N', 'N'], kN: ['1 kN', 'N'], kgf: ['1 kg * gravity', 'N'] },
    pressure: { psi: ['1 lbf/inch^2', 'Pa'], bar: ['1 bar', 'Pa'], kPa: ['1 kPa', 'Pa'], MPa: ['1 MPa', 'Pa'], Pa: ['1 Pa', 'Pa'] },
    vacuum: { inHg: ['13595.1 kg/m^3 * gravity * 1 inch', 'Pa'], psi: ['1 psi', 'Pa'], kPa: ['1 kPa', 'Pa'], bar: ['1 bar', 'Pa'], mmHg: ['13595.1 kg/m^3 * gravity * 1 mm', 'Pa'] },
    angle: { deg: ['1 deg', 'rad'], rad: ['1 rad', 'rad'] },
    speed: { mph: ['1 mile/hour', 'm/s'], 'ft/s': ['1 foot/s', 'm/s'], 'km/h': ['1 km/hour', 'm/s'], 'm/s': ['1 m/s', 'm/s'] },
    time: { s: ['1 s', 's'], ms: ['1 ms', 's'], min: ['1 minute', 's'] },
    torque: { 'lbf.ft': ['1 lbf foot', 'N m'], 'lbf.in': ['1 lbf inch', 'N m'], 'N.m': ['1 N m', 'N m'] },
    grade: { '%': ['1 cm/m', ''], deg: ['tan(1 deg)', ''] },
    brakeGain: { 'lbf/psi': ['1 lbf/psi', 'm^2'], 'N/bar': ['1 N/bar', 'm^2'] },
    compliance: { 'in3/1000psi': ['1 cuin / (1000 psi)', 'm^3/Pa'], 'cm3/bar': ['1 cm^3/bar', 'm^3/Pa'] },
    stress: { ksi: ['1000 psi', 'Pa'], MPa: ['1 MPa', 'Pa'], GPa: ['1 GPa', 'Pa'], psi: ['1 psi', 'Pa'] },
    energy: { 'ft.lbf': ['1 foot lbf', 'J'], kJ: ['1 kJ', 'J'], J: ['1 J', 'J'] },
    current: { A: ['1 A', 'A'] }, voltage: { V: ['1 V', 'V'] }, resistivity: { 'ohm.mm2/m': ['1 ohm mm^2/m', 'ohm m'] },
    power: { hp: ['1 hp', 'W'], kW: ['1 kW', 'W'], W: ['1 W', 'W'] },
    // a lone degF has its zero in mathjs, and so has a difference of two: counted in kelvin, then subtracted
    temperatureRise: { degF: ['(number(212 degF, K) - number(32 degF, K)) / 180 * 1 K', 'K'], degC: ['(number(100 degC, K) - number(0 degC, K)) / 100 * 1 K', 'K'], K: ['1 K', 'K'] },
    specificHeat: { 'Btu/lb.degF': ['1 BTU / (1 lbm * 5/9 K)', 'J/(kg K)'], 'J/kg.K': ['1 J/(kg K)', 'J/(kg K)'], 'kJ/kg.K': ['1 kJ/(kg K)', 'J/(kg K)'] },
    conductivity: { 'Btu/h.ft.degF': ['1 BTU / (1 hour * 1 foot * 5/9 K)', 'W/(m K)'], 'W/m.K': ['1 W/(m K)', 'W/(m K)'] },
    density: { 'lb/ft3': ['1 lbm/foot^3', 'kg/m^3'], 'kg/m3': ['1 kg/m^3', 'kg/m^3'], 'g/cm3': ['1 gram/cm^3', 'kg/m^3'] },
    temperature: { degF: ['1 degF', 'K'], degC: ['1 degC', 'K'], K: ['1 K', 'K'] },
  };

  // 1e-8: mathjs carries some customary units (psi, cuin, gallon) to nine or ten digits only.
  test.each(everyUnit)('$dimension $id', ({ dimension, unit }) => {
    const [expression, base] = asMath[dimension]?.[unit.id] as [string, string];
    const value = evaluate(expression);
    const expected = typeof value === 'number' ? value : base === '' ? value.toNumber() : value.toNumber(base);
    expect(relative(toSi(1, unit), expected)).toBeLessThan(1e-8);
  });
});

describe('the table', () => {
  test.each(everyUnit)('$dimension: the id and the label $id are read as that unit', ({ dimension, unit }) => {
    for (const text of [unit.id, unit.label].filter(Boolean)) {
      expect(spelled(dimension, text)?.id).toBe(unit.id);
      expect(parseQuantity(`2 ${text}`, dimension, unitFor(dimension, 'us'))).toMatchObject({ ok: true, unit: unit.id, typedUnit: true });
    }
  });

  test.each(names)('%s: no spelling means two units, and each alias is in the form the reader’s spelling is brought to', (dimension) => {
    const aliases = dimensions[dimension].units.flatMap((u) => u.aliases);
    expect(new Set(aliases).size).toBe(aliases.length);
    for (const alias of aliases) expect(unitKey(alias)).toBe(alias);
  });

  test.each(names)('%s: twins exist, are another unit, and a toggle leads to the other system and back', (dimension) => {
    const { us, si: metric, units } = dimensions[dimension];
    for (const u of units) if (u.twin) expect(unitOf(dimension, u.twin).id).not.toBe(u.id);
    expect(otherUnit(dimension, us)).toBe(metric);
    expect(otherUnit(dimension, metric)).toBe(us);
    for (const u of units) expect(otherUnit(dimension, otherUnit(dimension, u.id))).toBeDefined();
    expect([unitFor(dimension, 'us'), unitFor(dimension, 'si')]).toEqual([us, metric]);
  });

  test.each(everyUnit.filter(({ unit, dimension }) => unit.twin && dimensions[dimension].us !== dimensions[dimension].si))(
    '$dimension $id shows beside a unit of the other system',
    ({ dimension, unit }) => {
      const customary = /^(in|ft|lb|psi|ksi|mph|floz|degF|hp|Btu)/;
      expect(customary.test(unit.id)).not.toBe(customary.test(unit.twin));
      expect(spelled(dimension, unit.twin)).toBeDefined();
    },
  );

  test('an unknown unit id is the caller’s error, naming element, expected and found', () => {
    expect(() => unitOf('length', 'psi')).toThrow(/unit of length: expected one of in,ft,mm,cm,m, found psi/);
    expect(() => parseQuantity('1', 'length', 'psi')).toThrow(RangeError);
    expect(() => otherUnit('length', 'psi')).toThrow(RangeError);
  });

  test('NaN passes a conversion as NaN, so that a curve can have a gap', () => {
    expect(fromSi(NaN, unitOf('length', 'in'))).toBeNaN();
    expect(toSi(NaN, unitOf('length', 'in'))).toBeNaN();
  });

  test('the plain factors and the table agree', () => {
    const pairs = [
      ['length', 'in', si.inch], ['length', 'mm', si.mm], ['length', 'ft', si.foot], ['mass', 'lb', si.lb], ['force', 'lbf', si.lbf], ['pressure', 'psi', si.psi],
      ['pressure', 'bar', si.bar], ['pressure', 'kPa', si.kPa], ['volume', 'cm3', si.cm3], ['angle', 'deg', si.deg], ['speed', 'mph', si.mph], ['share', '%', si.percent],
    ] as const;
    for (const [dimension, id, factor] of pairs) expect(relative(toSi(1, unitOf(dimension, id)), factor)).toBeLessThan(1e-15);
    expect(relative(si.mph, (5280 * si.foot) / 3600)).toBeLessThan(1e-15);
  });
});

test('the standard bores are 15.875 to 25.4 mm, rising, and read back from their labels', () => {
  const inMm = [15.875, 17.78, 19.05, 20.6375, 22.225, 23.8125, 25.4];
  expect(standardBores.map((bore) => bore.si * 1000)).toEqual(inMm.map((mm) => expect.closeTo(mm, 10)));
  for (const bore of standardBores) expect(parseQuantity(bore.label, 'length', 'in')).toMatchObject({ ok: true, si: bore.si });
});
