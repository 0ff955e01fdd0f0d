import { describe, expect, test } from 'vitest';
import { dimensions, parseQuantity } from '../../src/units/index.ts';
import type { Dimension, Parsed, Trouble } from '../../src/units/index.ts';

const inches = (text: string): Parsed => parseQuantity(text, 'length', 'in');
const plain = (text: string): Parsed => parseQuantity(text, 'ratio', '');

describe('a number alone', () => {
  test.each([
    // text, value, tidied
    ['7/8', 0.875, '7/8'], ['13/16', 0.8125, '13/16'], ['9/8', 1.125, '9/8'], ['0/4', 0, '0/4'], ['7 / 8', 0.875, '7/8'], ['7⁄8', 0.875, '7/8'],
    ['1-1/4', 1.25, '1-1/4'], ['1 1/4', 1.25, '1-1/4'], ['1  1/4', 1.25, '1-1/4'], ['1–1/4', 1.25, '1-1/4'], ['1 1 / 4', 1.25, '1-1/4'],
    ['-3/8', -0.375, '-3/8'], ['−3/8', -0.375, '-3/8'], ['-1-1/4', -1.25, '-1-1/4'], ['-1 1/4', -1.25, '-1-1/4'], ['- 5', -5, '-5'], ['+5', 5, '5'], ['+1/2', 0.5, '1/2'],
    ['½', 0.5, '1/2'], ['⅞', 0.875, '7/8'], ['1½', 1.5, '1-1/2'], ['1 ½', 1.5, '1-1/2'], ['1-½', 1.5, '1-1/2'], ['-½', -0.5, '-1/2'], ['-2¾', -2.75, '-2-3/4'], ['12⅓', 12 + 1 / 3, '12-1/3'],
    ['.5', 0.5, '0.5'], ['5.', 5, '5'], ['-.5', -0.5, '-0.5'], ['0.70', 0.7, '0.70'], ['22.2', 22.2, '22.2'], ['0', 0, '0'], ['-0', 0, '0'], ['0.0', 0, '0.0'],
    ['1.5e3', 1500, '1.5e3'], ['1.5E3', 1500, '1.5E3'], ['2e-3', 0.002, '2e-3'], ['2e−3', 0.002, '2e-3'], ['2e+3', 2000, '2e+3'], ['0e5', 0, '0e5'],
    ['１２．５', 12.5, '12.5'], ['７／８', 0.875, '7/8'], ['\u00a05\u00a0', 5, '5'], ['\u200e5', 5, '5'], ['1\u00a01/4', 1.25, '1-1/4'], ['1\u20091/4', 1.25, '1-1/4'],
    // comma and point
    ['0,875', 0.875, '0.875'], ['12,5', 12.5, '12.5'], [',5', 0.5, '0.5'], ['0,5000', 0.5, '0.5000'], ['1234,567', 1234.567, '1234.567'], ['12,3456', 12.3456, '12.3456'],
    ['1.234,5', 1234.5, '1234.5'], ['1,234.5', 1234.5, '1234.5'], ['1,234,567', 1234567, '1234567'], ['1.234.567', 1234567, '1234567'], ['1,234,567.25', 1234567.25, '1234567.25'],
    ['12.345.678,9', 12345678.9, '12345678.9'], ['1.234,567', 1234.567, '1234.567'], ['3.000', 3, '3.000'], ['-0,875', -0.875, '-0.875'], ['1,5e3', 1500, '1.5e3'],
    // this site's own output
    ['12\u202f345', 12345, '12345'], ['−12\u202f345.6', -12345.6, '-12345.6'], ['1\u202f234\u202f567', 1234567, '1234567'], ['1\u202f125/500', 1.25, '1-125/500'], ['1.23e−5', 1.23e-5, '1.23e-5'],
  ])('%j is %d', (text, value, number) => {
    const read = plain(text);
    expect(read).toEqual({ ok: true, si: expect.closeTo(value, 12), unit: '', typedUnit: false, number });
    expect(read.ok && Object.is(read.si, -0)).toBe(false);
  });

  test.each<[string, Trouble]>([
    ['', 'empty'], ['   ', 'empty'], ['\u00a0', 'empty'], ['\u200b', 'empty'],
    ['7/', 'halfTyped'], ['1-', 'halfTyped'], ['1 7/', 'halfTyped'], ['1-7/', 'halfTyped'], ['-', 'halfTyped'], ['+', 'halfTyped'], ['−', 'halfTyped'], ['.', 'halfTyped'], [',', 'halfTyped'],
    ['-.', 'halfTyped'], ['5,', 'halfTyped'], ['1,234,', 'halfTyped'], ['1.5e', 'halfTyped'], ['1.5e-', 'halfTyped'], ['-1-', 'halfTyped'],
    ['7/0', 'zeroDivide'], ['0/0', 'zeroDivide'], ['1 1/0', 'zeroDivide'], ['7/00', 'zeroDivide'],
    ['3,000', 'ambiguous'], ['12,345', 'ambiguous'], ['123,456', 'ambiguous'], ['-3,000', 'ambiguous'], ['3,000e2', 'ambiguous'],
    ['1-4', 'unreadable'], ['1 7', 'unreadable'], ['1 125', 'unreadable'], ['3/4/5', 'unreadable'], ['--1', 'unreadable'], ['+-1', 'unreadable'], ['1--1/4', 'unreadable'], ['1 - 1/4', 'unreadable'],
    ['0x10', 'unreadable'], ['Infinity', 'unreadable'], ['-Infinity', 'unreadable'], ['NaN', 'unreadable'], ['∞', 'unreadable'], ['1e999', 'unreadable'], ['-1e999', 'unreadable'], ['1e-999', 'unreadable'],
    ['1e16', 'unreadable'], ['1/99999999999999999999', 'unreadable'], ['1-5/4', 'unreadable'], ['1 4/4', 'unreadable'], ['1.5/2', 'unreadable'], ['7/8.5', 'unreadable'], ['7/0.5', 'unreadable'], ['1 5/4,5', 'unreadable'], ['7/8,5', 'unreadable'],
    ['1.5 1/2', 'unreadable'], ['1..5', 'unreadable'], ['1.2.3', 'unreadable'], ['1,2,3', 'unreadable'], ['12,34.5', 'unreadable'], ['1.23,4', 'unreadable'], ['0,123,456', 'unreadable'], ['1,234.5,6', 'unreadable'],
    ['½½', 'unreadable'], ['½5', 'unreadable'], ['.½', 'unreadable'], ['7/½', 'unreadable'], ['½/2', 'unreadable'], ['10²', 'unreadable'], ['1①', 'unreadable'], ['٣', 'unreadable'],
    ["1'234", 'unreadable'], ['12:30', 'unreadable'], ['(5)', 'unreadable'], ['~5', 'unreadable'], ['5..', 'unreadable'], ['5 /', 'halfTyped'], ['5+3', 'unreadable'], ['2*3', 'unreadable'], ['1e2e3', 'unreadable'], ['12 345 6/7', 'unreadable'],
    ['1'.repeat(41), 'tooLong'], ['5'.padEnd(60, '5'), 'tooLong'],
  ])('%j is refused as %s', (text, code) => {
    const read = plain(text);
    expect(read).toMatchObject({ ok: false, code });
    if (!read.ok && code !== 'ambiguous') expect(read.problem).toMatch(/type a ratio such as 6\.2$/);
  });

  test('spaces around a number do not count toward its length', () => {
    expect(plain(`${' '.repeat(500)}6.2${' '.repeat(500)}`)).toMatchObject({ ok: true, si: 6.2 });
    expect(plain('1'.repeat(15))).toMatchObject({ ok: true });
  });

  test('a comma that can mean two things is asked about, with both readings written out', () => {
    expect(plain('3,000')).toEqual({ ok: false, code: 'ambiguous', problem: '3,000 can mean 3000 or 3.000; type one of these' });
    expect(plain('3000')).toMatchObject({ si: 3000 });
    expect(plain('3.000')).toMatchObject({ si: 3 });
  });
});

describe('lengths', () => {
  test.each([
    ['7/8', 0.022225], ['7/8 in', 0.022225], ['7/8in', 0.022225], ['7/8"', 0.022225], ['7/8 ″', 0.022225], ['7/8”', 0.022225], ["7/8''", 0.022225], ['7/8′′', 0.022225], ['7/8 in.', 0.022225], ['7/8 inch', 0.022225], ['7/8 Inches', 0.022225],
    ['1-1/4"', 0.03175], ['1¼"', 0.03175], ['½in', 0.0127], ['22.2 mm', 0.0222], ['22.2MM', 0.0222], ['22,2mm', 0.0222], ['2.22 cm', 0.0222], ['1.2 m', 1.2], ['.5 IN', 0.0127], ['-3/8 in', -0.009525], ['１２ｍｍ', 0.012],
    ["9'", 2.7432], ['9 ft', 2.7432], ['9 feet', 2.7432], ['9½ ft', 2.8956], ["9.5'", 2.8956], ['9 ft.', 2.7432],
    [`9'2"`, 2.794], [`9' 2"`, 2.794], [`9′2″`, 2.794], [`9’2”`, 2.794], [`9'-2"`, 2.794], [`9' - 2"`, 2.794], [`9'2`, 2.794], ['9 ft 2 in', 2.794], ['9ft2in', 2.794], ['9 ft 2', 2.794], ['9 FT. 2 IN.', 2.794], ['9 foot 2 inches', 2.794],
    ['9 ft 2 1/2 in', 2.8067], [`9'-2 1/2"`, 2.8067], [`9'2½"`, 2.8067], [`9'2-1/2`, 2.8067], [`9' 0"`, 2.7432], [`0'11.5"`, 0.2921], [`-9'2"`, -2.794], [`−1' 6"`, -0.4572], [`1' .5"`, 0.3175], [`9'½"`, 2.7559], [`9 ft 2,5 in`, 2.8067],
  ])('%j is %d m', (text, metres) => {
    const read = inches(text);
    expect(read.ok ? Math.abs(read.si - metres) : read.problem).toBeLessThan(1e-15 + 1e-14 * Math.abs(metres));
  });

  test('22.2 mm is 0.0222 m to the last bit, and 7/8 in 0.022225', () => {
    expect(inches('22.2 mm')).toMatchObject({ si: 0.0222, unit: 'mm', typedUnit: true, number: '22.2' });
    expect(inches('7/8')).toMatchObject({ si: 0.022225, unit: 'in', typedUnit: false, number: '7/8' });
  });

  test.each([['9 ft', 'ft', '9'], [`9'2"`, 'in', '9 ft 2'], ['9 ft 2½', 'in', '9 ft 2-1/2'], ['-9 ft 2 in', 'in', '-9 ft 2'], ['0,875 in', 'in', '0.875']])('%j is kept as %s: %s', (text, unit, number) => {
    expect(inches(text)).toMatchObject({ unit, number, typedUnit: true });
  });

  test('the field’s own unit is used only when none is typed', () => {
    expect(parseQuantity('22.2', 'length', 'mm')).toMatchObject({ si: 0.0222, unit: 'mm', typedUnit: false });
    expect(parseQuantity('7/8 in', 'length', 'mm')).toMatchObject({ si: 0.022225, unit: 'in', typedUnit: true });
  });

  test.each<[string, Trouble, RegExp]>([
    [`9'12"`, 'unreadable', /is not feet and inches/], [`9'14`, 'unreadable', /is not feet and inches/], [`1'234`, 'unreadable', /is not feet and inches/], ['9 ft 2 mm', 'unreadable', /is not feet and inches/],
    [`9'2'`, 'unreadable', /is not feet and inches/], [`9'2'3"`, 'unreadable', /cannot be read/], [`0'0'5"`, 'unreadable', /cannot be read/], ['5 ft2', 'unreadable', /is not feet and inches/], ['5ft3', 'unreadable', /is not feet and inches/],
    [`9'2 1/`, 'halfTyped', /2 1\/ is not finished/], [`9'1/0"`, 'zeroDivide', /1\/0 divides by zero/], [`9'1-5/4"`, 'unreadable', /not less than 1/], [`9.5'2"`, 'unreadable', /cannot be read/], [`9'-`, 'unreadable', /cannot be read/], ['5 mm-', 'unknownUnit', /mm- is not/], ['5 -mm', 'unknownUnit', /-mm is not/],
    ['5 ft-lb', 'wrongUnit', /^ft-lb is a torque/], ['5 ft.lbf', 'wrongUnit', /^ft\.lbf is a torque/], ['5 ft/s', 'wrongUnit', /^ft\/s is a speed/], ['5 in²', 'wrongUnit', /^in² is an area/], ['5 in^3', 'wrongUnit', /is a volume/], ['5 psi', 'wrongUnit', /psi is a pressure/],
    ['5 furlongs', 'unknownUnit', /^furlongs is not a unit known here; type a length such as 7\/8\u00a0in or 22\.2\u00a0mm$/], ['5 e', 'unknownUnit', /known here/], ['5 i', 'unknownUnit', /known here/],
    ['. in', 'unreadable', /cannot be read/], ['in', 'unreadable', /cannot be read/], ['"', 'unreadable', /cannot be read/], ['5 .mm', 'unknownUnit', /known here/], ['5 mm 3', 'unreadable', /cannot be read/], ['7/8 7/8', 'unreadable', /cannot be read/], ['5 .', 'unreadable', /cannot be read/],
    ['3,000 mm', 'ambiguous', /^3,000 can mean 3000 or 3\.000/], ['7/8 in 5', 'unreadable', /cannot be read/], ['5 in5', 'unreadable', /cannot be read/],
  ])('%j is refused as %s, saying why', (text, code, words) => {
    const read = inches(text);
    expect(read).toMatchObject({ ok: false, code });
    expect(!read.ok && read.problem).toMatch(words);
  });

  test('a wrong unit is named for what it is, with what to type instead', () => {
    expect(inches('300 psi')).toEqual({ ok: false, code: 'wrongUnit', problem: 'psi is a pressure; type a length such as 7/8\u00a0in or 22.2\u00a0mm' });
    expect(inches('')).toEqual({ ok: false, code: 'empty', problem: 'type a length such as 7/8\u00a0in or 22.2\u00a0mm' });
  });
});

describe('spellings of units', () => {
  const lbf = 0.45359237 * 9.80665;
  const psi = lbf / 0.0254 ** 2;
  test.each<[string, Dimension, number]>([
    ['100 lb', 'force', 100 * lbf], ['100 lbs', 'force', 100 * lbf], ['100 lbf', 'force', 100 * lbf], ['100 pounds', 'force', 100 * lbf], ['445 N', 'force', 445], ['445 n', 'force', 445], ['0.445 kN', 'force', 445], ['45 kg', 'force', 45 * 9.80665], ['45 kgf', 'force', 45 * 9.80665],
    ['2950 lb', 'mass', 2950 * 0.45359237], ['2950 LBS', 'mass', 2950 * 0.45359237], ['1340 kg', 'mass', 1340], ['300 g', 'mass', 0.3],
    ['800 psi', 'pressure', 800 * psi], ['800 PSI', 'pressure', 800 * psi], ['55 bar', 'pressure', 5.5e6], ['5500 kPa', 'pressure', 5.5e6], ['5.5 MPa', 'pressure', 5.5e6], ['5.5 mpa', 'pressure', 5.5e6], ['5.5 MPA', 'pressure', 5.5e6], ['10 Pa', 'pressure', 10],
    ['18 inHg', 'vacuum', 18 * 3386.388640341], ['18 in Hg', 'vacuum', 18 * 3386.388640341], ['18 in. Hg', 'vacuum', 18 * 3386.388640341], ['18" Hg', 'vacuum', 18 * 3386.388640341], ['500 mmHg', 'vacuum', 500 * 133.322387415], ['0.6 bar', 'vacuum', 6e4], ['8 psi', 'vacuum', 8 * psi], ['61 kPa', 'vacuum', 61e3],
    ['12 deg', 'angle', (12 * Math.PI) / 180], ['12°', 'angle', (12 * Math.PI) / 180], ['12º', 'angle', (12 * Math.PI) / 180], ['12 degrees', 'angle', (12 * Math.PI) / 180], ['0.2 rad', 'angle', 0.2],
    ['60 mph', 'speed', 26.8224], ['60 mi/h', 'speed', 26.8224], ['100 km/h', 'speed', 100 / 3.6], ['100 kmh', 'speed', 100 / 3.6], ['100 kph', 'speed', 100 / 3.6], ['88 ft/s', 'speed', 26.8224], ['88 fps', 'speed', 26.8224], ['10 m/s', 'speed', 10],
    ['0.8 g', 'brakingRate', 0.8], ['0.8', 'brakingRate', 0.8], ['7.84532 m/s²', 'brakingRate', 0.8], ['7.84532 m/s2', 'brakingRate', 0.8], ['7.84532 m/s^2', 'brakingRate', 0.8], ['7.84532 m/s/s', 'brakingRate', 0.8], ['80 %', 'brakingRate', 0.8], ['16 ft/s²', 'brakingRate', (16 * 0.3048) / 9.80665],
    ['90 lbf·ft', 'torque', 90 * lbf * 0.3048], ['90 ft-lb', 'torque', 90 * lbf * 0.3048], ['90 ft·lbf', 'torque', 90 * lbf * 0.3048], ['90 lb-ft', 'torque', 90 * lbf * 0.3048], ['90 ft lbs', 'torque', 90 * lbf * 0.3048], ['90 lbs-ft', 'torque', 90 * lbf * 0.3048], ['90 foot-pounds', 'torque', 90 * lbf * 0.3048], ['120 in-lb', 'torque', 120 * lbf * 0.0254], ['120 lbf·in', 'torque', 120 * lbf * 0.0254], ['120 inch-pounds', 'torque', 120 * lbf * 0.0254], ['122 N·m', 'torque', 122], ['122 Nm', 'torque', 122], ['122 N*m', 'torque', 122],
    ['300 ft-lb', 'energy', 300 * lbf * 0.3048], ['300 ft·lbf', 'energy', 300 * lbf * 0.3048], ['300 lbf ft', 'energy', 300 * lbf * 0.3048], ['4 kJ', 'energy', 4000], ['4 J', 'energy', 4],
    ['5 in²', 'area', 5 * 0.0254 ** 2], ['5 in2', 'area', 5 * 0.0254 ** 2], ['5 in^2', 'area', 5 * 0.0254 ** 2], ['5 sq in', 'area', 5 * 0.0254 ** 2], ['5 sq. in.', 'area', 5 * 0.0254 ** 2], ['5 cm²', 'area', 5e-4], ['5 mm²', 'area', 5e-6],
    ['5 in³', 'volume', 5 * 0.0254 ** 3], ['5 cu in', 'volume', 5 * 0.0254 ** 3], ['5 cu. in.', 'volume', 5 * 0.0254 ** 3], ['5 cm³', 'volume', 5e-6], ['5 cc', 'volume', 5e-6], ['5 ml', 'volume', 5e-6], ['5 mL', 'volume', 5e-6], ['5 cm3', 'volume', 5e-6], ['2 fl oz', 'volume', 2 * 29.5735295625e-6], ['2 fl. oz.', 'volume', 2 * 29.5735295625e-6], ['1.5 L', 'volume', 1.5e-3], ['1.5 liters', 'volume', 1.5e-3],
    ['1.9 lbf/psi', 'brakeGain', 1.9 * 0.0254 ** 2], ['1.9 lb/psi', 'brakeGain', 1.9 * 0.0254 ** 2], ['1.9 lbs / psi', 'brakeGain', 1.9 * 0.0254 ** 2], ['122.8 N/bar', 'brakeGain', 122.8e-5], ['122.8 N per bar', 'brakeGain', 122.8e-5],
    ['0.2 in³/1000 psi', 'compliance', (0.2 * 0.0254 ** 3) / (1000 * psi)], ['0.2 in3/1000psi', 'compliance', (0.2 * 0.0254 ** 3) / (1000 * psi)], ['0.2 in³ per 1000 psi', 'compliance', (0.2 * 0.0254 ** 3) / (1000 * psi)], ['0.2 cu in/1000 psi', 'compliance', (0.2 * 0.0254 ** 3) / (1000 * psi)], ['0.05 cm³/bar', 'compliance', 5e-13], ['0.05 cc/bar', 'compliance', 5e-13], ['0.05 cm3/bar', 'compliance', 5e-13],
    ['300 °F', 'temperature', (300 + 459.67) / 1.8], ['300 F', 'temperature', (300 + 459.67) / 1.8], ['300 degF', 'temperature', (300 + 459.67) / 1.8], ['300 deg F', 'temperature', (300 + 459.67) / 1.8], ['150 °C', 'temperature', 423.15], ['150c', 'temperature', 423.15], ['-40 °C', 'temperature', 233.15], ['400 K', 'temperature', 400],
    ['1.5 s', 'time', 1.5], ['1.5 sec', 'time', 1.5], ['300 ms', 'time', 0.3], ['5 min', 'time', 300],
    ['6.2:1', 'ratio', 6.2], ['6.2 : 1', 'ratio', 6.2], ['6.2 to 1', 'ratio', 6.2], ['.38', 'friction', 0.38], ['4', 'count', 4],
  ])('%j as a %s', (text, dimension, expected) => {
    const read = parseQuantity(text, dimension, dimensions[dimension].us);
    expect(read.ok ? Math.abs(read.si / expected - 1) : read.problem).toBeLessThan(1e-12);
  });

  test.each<[string, Dimension, RegExp]>([
    ['5 lb', 'pressure', /^lb is a mass/], ['5 lbf', 'mass', /^lbf is a force/], ['5 N', 'mass', /^N is a force/], ['5 kgf', 'mass', /^kgf is a force/], ['5 bar', 'length', /^bar is a pressure/], ['200 deg', 'temperature', /^deg is an angle/],
    ['5 inHg', 'pressure', /^inHg is a vacuum/], ['5 %', 'ratio', /^% is a share/], ["5'", 'pressure', /^' is a length/], ['5"', 'vacuum', /^" is a length/], ['5 g', 'length', /^g is a braking rate/], ['5 cc', 'length', /^cc is a volume/], ['5 s', 'length', /^s is a time/], ['5 MS', 'length', /is a time/], ['5 m·m', 'length', /is an area/], ['5 m*m', 'length', /is an area/], ['5 m m', 'length', /is an area/],
  ])('%j is refused as a %s', (text, dimension, words) => {
    const read = parseQuantity(text, dimension, dimensions[dimension].us);
    expect(read).toMatchObject({ ok: false, code: 'wrongUnit' });
    expect(!read.ok && read.problem).toMatch(words);
  });

  test.each<[string, Dimension]>([['5 m"', 'time'], ['5"-2', 'area'], ['5" 3', 'volume'], ["5'/s", 'speed'], ['5 in"', 'length']])('%j as a %s is no unit at all', (text, dimension) => {
    const read = parseQuantity(text, dimension, dimensions[dimension].us);
    expect(!read.ok && read.code).toMatch(/unreadable|unknownUnit/);
  });

  test('mPa is a billion times less than MPa, so it is asked about', () => {
    expect(parseQuantity('5 mPa', 'pressure', 'bar')).toMatchObject({ ok: false, code: 'ambiguous', problem: expect.stringMatching(/type MPa or Pa/) });
  });
});

describe('share and grade', () => {
  test.each([
    ['62', 0.62, '%', false], ['62 %', 0.62, '%', true], ['62%', 0.62, '%', true], ['62 percent', 0.62, '%', true], ['0.62 fraction', 0.62, 'fraction', true], ['1 %', 0.01, '%', true],
    ['0.5 %', 0.005, '%', true], ['1/2 %', 0.005, '%', true], ['1.5', 0.015, '%', false], ['62-1/2', 0.625, '%', false], ['100', 1, '%', false], ['0', 0, '%', false], ['-10', -0.1, '%', false],
  ])('a share typed %j is %d', (text, si, unit, typedUnit) => {
    expect(parseQuantity(text, 'share', '%')).toMatchObject({ ok: true, si: expect.closeTo(si, 14), unit, typedUnit });
  });

  test.each([
    ['0.5', '0.5 % or 50 %? Type 0.5 % or 50 %.'], ['1', '1 % or 100 %? Type 1 % or 100 %.'], ['0,62', '0.62 % or 62 %? Type 0.62 % or 62 %.'], ['-0.1', '-0.1 % or -10 %? Type -0.1 % or -10 %.'],
    ['5/8', '0.625 % or 62.5 %? Type 0.625 % or 62.5 %.'], ['3/2', '1.5 % or 150 %? Type 1.5 % or 150 %.'],
    ['60/40', '60 % or 40 %? Type 60 % or 40 %.'], ['40/60', '40 % or 60 %? Type 40 % or 60 %.'], ['60/40 %', '60 % or 40 %? Type 60 % or 40 %.'],
  ])('%j in a field of percent is asked about', (text, problem) => {
    expect(parseQuantity(text, 'share', '%')).toEqual({ ok: false, code: 'ambiguous', problem });
  });

  test('where the field counts in fractions, 0.62 is one', () => {
    expect(parseQuantity('0.62', 'share', 'fraction')).toMatchObject({ ok: true, si: 0.62, unit: 'fraction', number: '0.62' });
  });

  test.each([['20', 0.2], ['20 %', 0.2], ['0.2', 0.002], ['1', 0.01], ['45 deg', 1], ['45°', 1], ['-45 deg', -1]])('a grade typed %j is %d', (text, si) => {
    expect(parseQuantity(text, 'grade', '%')).toMatchObject({ ok: true, si: expect.closeTo(si, 14) });
  });

  test('a slope of 90° or more is not a grade', () => {
    for (const text of ['90 deg', '135 deg', '-90°', '1e9 deg']) expect(parseQuantity(text, 'grade', '%')).toMatchObject({ ok: false, code: 'unreadable', problem: expect.stringMatching(/is not a grade/) });
    expect(parseQuantity('89.9 deg', 'grade', '%')).toMatchObject({ ok: true });
  });
});

describe('a fraction above 1 that may have lost its space', () => {
  test.each([
    ['11/2', '11/2 can mean 1-1/2 or 5-1/2; type one of these'], ['21/2', '21/2 can mean 2-1/2 or 10-1/2; type one of these'], ['11/4', '11/4 can mean 1-1/4 or 2-3/4; type one of these'], ['13/4 in', '13/4 can mean 1-3/4 or 3-1/4; type one of these'],
    ['17/16"', '17/16 can mean 1-7/16 or 1-1/16; type one of these'], ['12/4', '12/4 can mean 1-2/4 or 3; type one of these'], ['-11/2', '-11/2 can mean 1-1/2 or 5-1/2; type one of these'],
    ['111/16', '111/16 can mean 1-11/16 or 11-1/16 or 6-15/16; type one of these'], [`9' 11/2"`, '11/2 can mean 1-1/2 or 5-1/2; type one of these'],
  ])('%j is asked about', (text, problem) => {
    expect(parseQuantity(text, 'length', 'in')).toEqual({ ok: false, code: 'ambiguous', problem });
  });

  // One digit above leaves no whole number to split off, 20/16 would split into 2 and 0/16, and no tape has fifths.
  test.each([['3/2', 1.5], ['9/8', 1.125], ['13/16', 0.8125], ['11/16', 0.6875], ['20/16', 1.25], ['1-1/2', 1.5], ['1 1/2', 1.5], ['1½', 1.5], ['12/5', 2.4]])('%j can be read in one way', (text, inches) => {
    expect(parseQuantity(text, 'length', 'in')).toMatchObject({ ok: true, si: expect.closeTo(inches * 0.0254, 14) });
  });

  test('a ratio of lever lengths is not a length: 11/2 is 5.5', () => {
    expect(parseQuantity('11/2', 'ratio', '')).toMatchObject({ ok: true, si: 5.5 });
  });
});
