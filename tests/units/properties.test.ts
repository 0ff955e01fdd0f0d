import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dimensions, echo, editText, formatNumber, fromSi, parseQuantity, toSi, unitFor } from '../../src/units/index.ts';
import type { Dimension, Parsed } from '../../src/units/index.ts';

const names = Object.keys(dimensions) as Dimension[];
const everyUnit = names.flatMap((dimension) => dimensions[dimension].units.map((unit) => ({ dimension, unit })));
const anyUnit = fc.constantFrom(...everyUnit);
const ids = everyUnit.flatMap(({ unit }) => [unit.id, unit.label, ...unit.aliases]);

/** Text close to what is legal, so that the deep branches are reached; text that is mostly legal; and text of any kind. */
const nearText = fc.array(fc.constantFrom(...'0123456789', '1', '.', ',', '/', '-', '+', ' ', 'e', "'", '"', '½', '⅞', '−', '″', '′', '\u202f', '1/4', '7/8', '12', '000', 'ft', 'in', ...ids), { maxLength: 9 }).map((parts) => parts.join(''));
const digits = fc.stringMatching(/^[-+−]?(\d{1,4}|\d{0,2}\.\d{1,4}|\d{1,3},\d{1,2}|(\d{1,2}[ -])?\d{1,2}\/\d{1,2}|\d?[½⅞¾]|\d{1,2}'\d|\de-?\d)$/);
const legalCase = fc.tuple(digits, anyUnit, fc.constantFrom('', ' ', '\u00a0'), fc.constantFrom('', 'id', 'label', 'alias'), fc.nat()).map(([number, at, gap, how, n]) => {
  const { unit } = at;
  const end = how === 'id' ? unit.id : how === 'label' ? unit.label : how === 'alias' ? unit.aliases[n % unit.aliases.length] : '';
  return { text: `${number}${gap}${end}`, ...at };
});
const anyText = fc.oneof({ weight: 2, arbitrary: nearText }, fc.string({ unit: 'binary', maxLength: 45 }), fc.string({ unit: 'grapheme', maxLength: 45 }), fc.double().map(String));
const anyCase = fc.oneof(legalCase, fc.tuple(anyText, anyUnit).map(([text, at]) => ({ text, ...at })));
const read = (text: string, dimension: Dimension, unit: string): Parsed => parseQuantity(text, dimension, unit);
const close = (a: number, b: number, within: number): boolean => Math.abs(a - b) <= within * Math.abs(b);

describe('for any text whatever', () => {
  test('a reading is finite and not −0, or a problem in words; nothing throws', () => {
    let understood = 0;
    fc.assert(fc.property(anyCase, ({ text, dimension, unit }) => {
      const parsed = read(text, dimension, unit.id);
      if (!parsed.ok) return parsed.problem.length > 10 && !/NaN|undefined|null|Infinity (in|is)/.test(parsed.problem.replace(text, '')) && echo(parsed, dimension) === '';
      understood++;
      return Number.isFinite(parsed.si) && !Object.is(parsed.si, -0) && dimensions[dimension].units.some((u) => u.id === parsed.unit);
    }), { numRuns: 5000 });
    expect(understood).toBeGreaterThan(1000); // else the text above would prove little
  });

  test('the tidied number reads back to the same value: with its unit anywhere, and alone in a field of that unit', () => {
    fc.assert(fc.property(legalCase, ({ text, dimension, unit }) => {
      const parsed = read(text, dimension, unit.id);
      fc.pre(parsed.ok);
      const { us, si } = dimensions[dimension];
      expect(parsed.number).toMatch(/^[\x20-\x7e]+$/);
      expect(read(parsed.number, dimension, parsed.unit)).toMatchObject({ ok: true, si: parsed.si });
      for (const field of [us, si, unit.id]) expect(read(parsed.number + parsed.unit, dimension, field)).toMatchObject({ ok: true, si: parsed.si });
    }), { numRuns: 2000 });
  });

  test('the two halves of an echo are the same quantity, to the four digits shown', () => {
    fc.assert(fc.property(legalCase, ({ text, dimension, unit }) => {
      const parsed = read(text, dimension, unit.id);
      fc.pre(parsed.ok && parsed.number.length < 20);
      const [left, right] = echo(parsed, dimension).split(' = ');
      fc.pre(left !== undefined && right !== undefined);
      // A share shown as a bare number may leave the range in which a bare number is a fraction.
      fc.pre(dimension !== 'share' || Math.abs(parsed.si) <= 1);
      expect(read(left as string, dimension, parsed.unit)).toMatchObject({ ok: true, si: parsed.si });
      // What is shown without a unit is in the field's.
      const back = read(right as string, dimension, dimension === 'share' ? dimensions.share.units.find((u) => u.id === parsed.unit)!.twin : unitFor(dimension, 'us'));
      // What half a unit of the fourth digit shown is worth in SI: of the value, of a temperature counted from 0 °F, of an angle's tangent.
      const size = Math.abs(parsed.si);
      fc.pre(dimension !== 'grade' || size < 10);
      const shown = dimension === 'temperature' ? size + 459.67 : dimension === 'grade' ? (1 + size ** 2) * Math.atan(size) : size;
      if (back.ok) expect(Math.abs(back.si - parsed.si)).toBeLessThanOrEqual(5.1e-4 * shown);
      else expect(back.problem).toMatch(/too large or too small/);
    }), { numRuns: 2000 });
  });

  test('one comma before exactly three digits is never taken silently', () => {
    fc.assert(fc.property(fc.integer({ min: 1, max: 999 }), fc.integer({ min: 0, max: 999 }), anyUnit, (a, b, { dimension, unit }) => {
      expect(read(`${a},${String(b).padStart(3, '0')}`, dimension, unit.id)).toMatchObject({ ok: false, code: 'ambiguous' });
    }), { numRuns: 300 });
  });
});

describe('every way of writing a number means that number', () => {
  const whole = fc.integer({ min: 0, max: 9999 });
  const spaces = fc.constantFrom('', ' ', '\u00a0', '  ');
  const signs = fc.constantFrom(['', 1], ['+', 1], ['-', -1], ['−', -1]) as fc.Arbitrary<[string, number]>;

  test('mixed numbers, with any dash or space between', () => {
    fc.assert(fc.property(signs, whole, fc.integer({ min: 2, max: 64 }), fc.nat(), fc.constantFrom(' ', '-', '\u00a0', '–', '‑', '  '), spaces, ([sign, times], w, below, n, between, gap) => {
      const above = n % below;
      const parsed = read(`${sign}${w}${between}${above}${gap}/${gap}${below}${gap}in`, 'length', 'mm');
      const expected = times * (w + above / below) * 0.0254;
      expect(parsed.ok && Math.abs(parsed.si - expected)).toBeLessThanOrEqual(1e-14 * Math.abs(expected));
    }), { numRuns: 1000 });
  });

  test('feet and inches', () => {
    fc.assert(fc.property(signs, whole, fc.integer({ min: 0, max: 191 }), fc.constantFrom("'", '′', '’', ' ft ', 'ft', ' feet '), spaces, fc.constantFrom('"', '″', '”', "''", ' in', 'in.'), ([sign, times], feet, sixteenths, mark, gap, end) => {
      const inches = `${Math.floor(sixteenths / 16)} ${sixteenths % 16}/16`;
      const parsed = read(`${sign}${feet}${mark}${gap}${inches}${end}`, 'length', 'mm');
      const expected = times * (feet * 12 + sixteenths / 16) * 0.0254;
      expect(parsed.ok ? Math.abs(parsed.si - expected) : parsed.problem).toBeLessThanOrEqual(1e-14 * Math.abs(expected));
    }), { numRuns: 1000 });
  });

  test('decimals agree with the language’s own reading of them', () => {
    const decimal = fc.stringMatching(/^(\d{1,7}(\.\d{0,6})?|\.\d{1,6})(e[+-]?[0-5])?$/);
    fc.assert(fc.property(signs, decimal, ([sign, times], text) => {
      const size = Number(text);
      fc.pre(size === 0 || size > 1e-15);
      expect(read(sign + text, 'ratio', '')).toMatchObject({ ok: true, si: size === 0 ? 0 : times * Number(size.toPrecision(15)) });
    }), { numRuns: 1000 });
  });

  test('grouped thousands with decimals, the US and the European way', () => {
    fc.assert(fc.property(fc.integer({ min: 1000, max: 99_999_999 }), fc.integer({ min: 1, max: 9999 }), (n, d) => {
      const decimals = `${d}`;
      const groups = n.toLocaleString('en-US');
      const expected = Number(`${n}.${decimals}`);
      expect(read(`${groups}.${decimals}`, 'ratio', '')).toMatchObject({ ok: true, si: expected });
      expect(read(`${groups.replaceAll(',', '.')},${decimals}`, 'ratio', '')).toMatchObject({ ok: true, si: expected });
      expect(read(`${groups.replaceAll(',', '\u202f')}.${decimals}`, 'ratio', '')).toMatchObject({ ok: true, si: n < 1000 ? expect.anything() : expected });
    }), { numRuns: 500 });
  });
});

describe('out and in again', () => {
  const size = fc.double({ min: -9, max: 9, noNaN: true }).map((e) => 10 ** e);
  const value = fc.tuple(size, fc.boolean()).map(([x, negative]) => (negative ? -x : x));

  test('what is put into a field reads back within 5e-6', () => {
    fc.assert(fc.property(value, anyUnit, (x, { dimension, unit }) => {
      fc.pre(!unit.tangent || Math.abs(x) < 89.99);
      const si = toSi(x, unit);
      const text = editText(si, dimension, unit.id);
      expect(text).toMatch(/^[\x20-\x7e]+$/);
      const parsed = read(text, dimension, unit.id);
      expect(parsed.ok ? Math.abs(parsed.si - si) : parsed.problem).toBeLessThanOrEqual(5e-6 * Math.abs(si));
    }), { numRuns: 4000 });
  });

  test('every sixteenth up to 200 in comes back exactly, as a fraction or a short decimal', () => {
    for (let n = -3200; n <= 3200; n++) {
      const si = toSi(n / 16, { ...everyUnit.find(({ unit }) => unit.id === 'in')!.unit });
      const text = editText(si, 'length', 'in');
      expect(read(text, 'length', 'in')).toMatchObject({ ok: true, si });
      expect(text).toMatch(/^-?(\d+|(\d+-)?\d+\/(2|4|8|16)|\d+\.\d{1,2})$/);
    }
  });

  test('switching a field between its unit and the twin and back settles after the first switch', () => {
    fc.assert(fc.property(fc.double({ min: 0.01, max: 5000, noNaN: true }), anyUnit, (x, { dimension, unit }) => {
      fc.pre(unit.twin !== '' && (dimension !== 'grade' || x < 45));
      const through = (text: string, from: string, to: string): string => {
        const parsed = read(text, dimension, from);
        if (!parsed.ok) throw new Error(parsed.problem);
        return editText(parsed.si, dimension, to);
      };
      let text = editText(toSi(x, unit), dimension, unit.id);
      const twin = dimensions[dimension].units.find((u) => u.id === unit.twin)!;
      const [first, start] = [read(text, dimension, unit.id), toSi(x, unit)];
      for (let k = 0; k < 6; k++) text = through(through(text, unit.id, twin.id), twin.id, unit.id);
      const last = read(text, dimension, unit.id);
      expect(first.ok && last.ok && close(last.si, start, 2.5e-5)).toBe(true);
    }), { numRuns: 1000 });
  });

  test('conversion is undone by its inverse', () => {
    fc.assert(fc.property(value, anyUnit, (x, { unit }) => {
      fc.pre(!unit.tangent || Math.abs(x) < 89);
      const back = fromSi(toSi(x, unit), unit);
      return Math.abs(back - x) <= 1e-12 * (Math.abs(x) + unit.offset);
    }), { numRuns: 2000 });
  });

  test('a displayed number is within half a unit of its last digit, has no power of ten between 1e-4 and 1e7, and can be pasted back', () => {
    fc.assert(fc.property(value, fc.integer({ min: 1, max: 8 }), (x, digits) => {
      const text = formatNumber(x, digits);
      if (Math.abs(x) >= 1e-4 && Math.abs(x) <= 1e7) expect(text).not.toContain('e');
      expect(text).toMatch(/^−?[\d.\u202fe−]+$/);
      const parsed = read(text, 'ratio', '');
      expect(parsed.ok ? Math.abs(parsed.si - x) : parsed.problem).toBeLessThanOrEqual(Math.abs(x) * 5.0000001 * 10 ** -digits);
    }), { numRuns: 2000 });
  });
});

describe('time', () => {
  const seeds = ['1', ' ', '\u00a0', '½', '1 ', '1/', '1,', '1.', '1,000', '-', "1'", '1e', '0 ½', 'in', '\u202f000', '"', "'", '1\u202f', '́'];

  test('ten thousand characters are refused at once', () => {
    for (const seed of seeds) {
      const text = `5${seed.repeat(Math.ceil(10_000 / seed.length))}x`;
      const start = performance.now();
      for (let k = 0; k < 20; k++) expect(read(text, 'length', 'in')).toMatchObject({ ok: false, code: 'tooLong' });
      expect((performance.now() - start) / 20).toBeLessThan(100); // a reading that backtracks would take seconds
    }
  });

  test('the longest text that is read, of the worst kind, does not hang the page', () => {
    for (const seed of seeds) {
      for (const end of ['', 'x', '/', ',', '"']) {
        const text = `${'5'}${seed.repeat(40)}`.slice(0, 39) + end;
        const start = performance.now();
        for (let k = 0; k < 20; k++) read(text, 'length', 'in');
        expect((performance.now() - start) / 20).toBeLessThan(100);
      }
    }
  });
});
