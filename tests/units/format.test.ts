import { describe, expect, test } from 'vitest';
import { dimensions, echo, editText, exactText, formatIn, formatNumber, formatQuantity, parseQuantity, toSi, unitOf } from '../../src/units/index.ts';
import type { Dimension } from '../../src/units/index.ts';

const inch = 0.0254;
const said = (text: string, dimension: Dimension, unit = dimensions[dimension].us): string =>
  echo(parseQuantity(text, dimension, unit), dimension).replaceAll('\u00a0', ' ');

describe('formatNumber', () => {
  test.each([
    [20.6375, '20.6'], [1234, '1230'], [0.0254, '0.0254'], [6.2, '6.2'], [6.2049, '6.2'], [100, '100'], [99.96, '100'], [0.8, '0.8'], [-3.14159, '−3.14'],
    [0, '0'], [-0, '0'], [9994, '9990'], [9996, '10\u202f000'], [12560, '12\u202f600'], [-12560, '−12\u202f600'], [1234567, '1\u202f230\u202f000'], [9999999, '10\u202f000\u202f000'], [1e7, '10\u202f000\u202f000'],
    [1e-4, '0.0001'], [1.2345e-4, '0.000123'], [9.9e-5, '9.9e−5'], [-1.2345e-7, '−1.23e−7'], [12345678, '1.23e7'], [5e-324, '5e−324'], [1.7e308, '1.7e308'],
  ])('%d is written %j', (x, text) => expect(formatNumber(x)).toBe(text));

  test.each([[20.6375, 4, '20.64'], [20.6375, 1, '20'], [12345.678, 7, '12\u202f345.68'], [1234.5678, 6, '1234.57'], [2 / 3, 5, '0.66667']])('%d to %i digits is %j', (x, digits, text) =>
    expect(formatNumber(x, digits)).toBe(text));

  test('a value that is not finite is the caller’s error and is never printed', () => {
    for (const x of [NaN, Infinity, -Infinity]) {
      expect(() => formatNumber(x)).toThrow(/expected a finite number, found/);
      expect(() => formatIn(x, 'length', 'mm')).toThrow(RangeError);
      expect(() => editText(x, 'length', 'in')).toThrow(RangeError);
    }
  });
});

describe('formatIn and formatQuantity', () => {
  test.each<[number, Dimension, string, string]>([
    [0.0206375, 'length', 'mm', '20.6\u00a0mm'], [0.0206375, 'length', 'in', '0.813\u00a0in'], [5e6, 'pressure', 'bar', '50\u00a0bar'], [0.62, 'share', '%', '62\u00a0%'], [0.62, 'share', 'fraction', '0.62'], [Math.PI / 15, 'angle', 'deg', '12°'],
    [1e-11, 'compliance', 'cm3/bar', '1\u00a0cm³/bar'], [423.15, 'temperature', 'degC', '150\u00a0°C'], [423.15, 'temperature', 'degF', '302\u00a0°F'], [6.2, 'ratio', '', '6.2'], [100, 'torque', 'N.m', '100\u00a0N·m'], [0.2, 'grade', 'deg', '11.3°'], [-0.01, 'length', 'mm', '−10\u00a0mm'],
  ])('%d as %s in %s is %j', (si, dimension, unit, text) => expect(formatIn(si, dimension, unit)).toBe(text));

  test('the system chooses the unit', () => {
    expect(formatQuantity(0.0206375, 'length', 'us')).toBe('0.813\u00a0in');
    expect(formatQuantity(0.0206375, 'length', 'si', 4)).toBe('20.64\u00a0mm');
    expect(formatQuantity(0.8, 'brakingRate', 'us')).toBe(formatQuantity(0.8, 'brakingRate', 'si'));
  });
});

describe('editText', () => {
  test.each([
    [13 / 16, '13/16'], [0.7, '0.7'], [1.25, '1-1/4'], [1, '1'], [0, '0'], [0.5, '1/2'], [1 / 16, '1/16'], [-0.375, '-3/8'], [-1.25, '-1-1/4'], [2.5, '2-1/2'], [4, '4'], [3.75, '3-3/4'],
    [4.5, '4.5'], [108.25, '108.25'], [4.375, '4-3/8'], [108.1875, '108-3/16'], [-108.5, '-108.5'], [0.812501, '0.812501'], [0.8125004, '13/16'], [1 / 32, '0.03125'], [1 / 3, '0.333333'],
  ])('%d in is put into an inch field as %j', (x, text) => expect(editText(x * inch, 'length', 'in')).toBe(text));

  test.each<[number, Dimension, string, string]>([
    [0.0206375, 'length', 'mm', '20.6375'], [0.022225, 'length', 'mm', '22.225'], [0.8125 * inch * 12, 'length', 'ft', '0.8125'], [5515805.834534689, 'pressure', 'psi', '800'], [1e7, 'pressure', 'Pa', '10000000'],
    [0.62, 'share', '%', '62'], [1, 'share', '%', '100'], [0.01, 'share', '%', '1 %'], [0.005, 'share', '%', '0.5 %'], [0, 'share', '%', '0'], [0.010000001, 'share', '%', '1 %'], [0.62, 'share', 'fraction', '0.62'], [1, 'share', 'fraction', '1'], [1.5, 'share', 'fraction', '1.5 fraction'],
    [0.002, 'grade', '%', '0.2'], [1, 'grade', 'deg', '45'], [273.15, 'temperature', 'degC', '0'], [0.4375 * inch ** 2, 'area', 'in2', '0.4375'], [1e-10, 'length', 'm', '1e-10'],
  ])('%d as %s in %s is put into a field as %j', (si, dimension, unit, text) => expect(editText(si, dimension, unit)).toBe(text));
});

describe('echo', () => {
  test.each<[string, Dimension, string]>([
    ['13/16', 'length', '13/16 in = 20.64 mm'], ['20.64 mm', 'length', '20.64 mm = 0.8126 in'], ['1½"', 'length', '1-1/2 in = 38.1 mm'], [`9'2"`, 'length', '9 ft 2 in = 2794 mm'], ['9 ft', 'length', '9 ft = 2.743 m'], ['0,875', 'length', '0.875 in = 22.23 mm'], ['-3/8', 'length', '−3/8 in = −9.525 mm'],
    ['62 %', 'share', '62 % = 0.62'], ['0.62 fraction', 'share', '0.62 = 62 %'], ['62', 'share', '62 % = 0.62'], ['1 fraction', 'share', '1 = 100 %'], ['0.5 %', 'share', '0.5 % = 0.005'], ['20', 'grade', '20 % = 11.31°'], ['45°', 'grade', '45° = 100 %'],
    ['800', 'pressure', '800 psi = 55.16 bar'], ['55 bar', 'pressure', '55 bar = 797.7 psi'], ['100', 'force', '100 lbf = 444.8 N'], ['50 kg', 'force', '50 kgf = 110.2 lbf'], ['0.8', 'brakingRate', '0.8 g = 7.845 m/s²'], ['18', 'vacuum', '18 inHg = 60.95 kPa'], ['300', 'temperature', '300 °F = 148.9 °C'],
    ['90 ft-lb', 'torque', '90 lbf·ft = 122 N·m'], ['0.2', 'compliance', '0.2 in³/1000 psi = 0.04753 cm³/bar'], ['300 ms', 'time', '300 ms = 0.3 s'], ['0.2 rad', 'angle', '0.2 rad = 11.46°'], ['100000', 'length', '100\u202f000 in = 2\u202f540\u202f000 mm'],
    ['12560', 'pressure', '12\u202f560 psi = 866 bar'], ['-12560.5', 'pressure', '−12\u202f560.5 psi = −866 bar'], ['9999', 'pressure', '9999 psi = 689.4 bar'], ['12345-1/2', 'length', '12\u202f345-1/2 in = 313\u202f600 mm'], ['120000/7', 'length', '120000/7 in = 435\u202f400 mm'],
    ['6.2', 'ratio', ''], ['12', 'angle', ''], ['4', 'count', ''], ['0.38', 'friction', ''], ['1.5', 'time', ''], ['7/', 'length', ''],
  ])('%j as %s: %j', (text, dimension, words) => expect(said(text, dimension)).toBe(words));
});

test('text that replaces what was typed reads back as the same value, there and back again', () => {
  for (const [number, dimension, there, back] of [[750, 'mass', 'kg', 'lb'], [3, 'mass', 'kg', 'lb'], [10, 'speed', 'km/h', 'mph'], [4.0625, 'length', 'mm', 'in'], [764.1, 'pressure', 'bar', 'psi']] as const) {
    const si = toSi(number, unitOf(dimension, back));
    const shown = parseQuantity(exactText(si, dimension, there), dimension, there);
    expect(shown.ok && exactText(shown.si, dimension, back).replace('4-1/16', '4.0625')).toBe(String(number));
  }
});
