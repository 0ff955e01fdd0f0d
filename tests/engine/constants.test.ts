import { describe, expect, test } from 'vitest';
import { atmosphere, constants, standardGravity } from '../../src/engine/constants.ts';

describe('constants', () => {
  test('standard gravity is 9.80665 m/s² exactly (NIST SP 811)', () => {
    expect(standardGravity).toBe(9.80665);
  });

  test('a standard atmosphere carries 760 mm of mercury at 13 595.1 kg/m³, to the millimeter’s own rounding', () => {
    expect(Math.abs(13595.1 * standardGravity * 0.76 - atmosphere)).toBeLessThan(1);
  });

  test('every constant says its unit, its kind and where it comes from, and cannot be changed', () => {
    for (const c of Object.values(constants)) {
      expect(c.unit).not.toBe('');
      expect(c.source.length).toBeGreaterThan(10);
      expect(['defined', 'measured', 'published', 'common practice', 'derived']).toContain(c.kind);
      expect(Object.isFrozen(c)).toBe(true);
    }
  });
});
