import { readFileSync, readdirSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { areFinite, areNonNegative, arePositive, requireFinite, requireNonNegative, requirePositive } from '../../src/engine/require.ts';

const guards = [['positive', arePositive, requirePositive], ['not negative', areNonNegative, requireNonNegative], ['finite', areFinite, requireFinite]] as const;
const numbers = fc.array(fc.oneof(fc.double(), fc.constantFrom(0, -0, 1, -1, NaN, Infinity, -Infinity, Number.MAX_VALUE, -Number.MAX_VALUE, Number.MIN_VALUE)), { minLength: 1, maxLength: 5 });

describe.each(guards)('whether numbers are %s', (_, are, require) => {
  test('is the same asked without names as with them', () => {
    fc.assert(fc.property(numbers, (list) => {
      const named = Object.fromEntries(list.map((x, k) => [`x${k}`, x]));
      const guarded = (): void => { if (!are(...(list as [number]))) require(named); };
      expect(are(...(list as [number]))).toBe(list.every((x) => are(x)));
      if (are(...(list as [number]))) expect(() => require(named)).not.toThrow();
      else expect(guarded).toThrow(RangeError);
    }));
  });

  test('names the number that is not', () => {
    expect(() => require({ grip: 1, mass: NaN })).toThrow(/^mass: expected a finite number.*found NaN$/);
    expect(() => require({ grip: Infinity, mass: 1 })).toThrow(/^grip: .*found Infinity$/);
  });
});

test('a formula that asks without names first asks about the very numbers that it then names, in the same way', () => {
  const folder = new URL('../../src/engine/', import.meta.url);
  let guarded = 0;
  for (const file of readdirSync(folder)) {
    for (const line of readFileSync(new URL(file, folder), 'utf8').split('\n')) {
      if (!/^\s*if \(!.*are(Positive|NonNegative|Finite)\(/.test(line)) continue;
      const parts = /^\s*if \(!\(?(are\w+\(.*?\))\)?\) (require\w+)\(\{ (.*) \}\);$/.exec(line);
      expect(parts, `${file}: ${line}`).not.toBeNull();
      const asked = [...parts![1]!.matchAll(/(are\w+)\(([^)]*)\)/g)];
      for (const [, name] of asked) expect(name!.replace('are', 'require'), line).toBe(parts![2]);
      expect(asked.flatMap(([, , list]) => list!.split(', ')), line).toEqual(parts![3]!.split(', ').map((entry) => entry.split(': ').at(-1)));
      guarded++;
    }
  }
  expect(guarded).toBeGreaterThan(40);
});
