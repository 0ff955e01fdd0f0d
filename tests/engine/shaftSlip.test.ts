import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isImpossible } from '../../src/engine/outcome.ts';
import { slipLeft } from '../../src/engine/shaftSlip.ts';

const within = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const base = { lengthBefore: 0.679, lengthAfter: 0.64, collapseBefore: 0.08, overlapBefore: 0.075, mountMovement: 0.01 };

describe('slipLeft', () => {
  test('the worked value: 39 mm shorter eats 39 of 80 mm and adds them to the overlap', () => {
    const r = slipLeft(base);
    if (isImpossible(r)) throw new Error(r.impossible);
    expect(r.shortening).toBeCloseTo(0.039, 12);
    expect(r.collapse).toBeCloseTo(0.041, 12);
    expect(r.overlap).toBeCloseTo(0.114, 12);
    expect((r.bendMore * 180) / Math.PI).toBeCloseTo(0.895, 3);
  });

  test('what one half gives the other takes: collapse and overlap together never change', () => {
    fc.assert(fc.property(within(0.3, 0.9), within(0.3, 0.9), (lengthBefore, lengthAfter) => {
      const r = slipLeft({ ...base, lengthBefore, lengthAfter, collapseBefore: 1, overlapBefore: 1 });
      if (!isImpossible(r)) expect(r.collapse + r.overlap).toBeCloseTo(2, 12);
    }));
  });

  test('mounts: no place inside the ball makes the shaft shorter, longer or more bent than said', () => {
    const r = slipLeft(base);
    if (isImpossible(r)) throw new Error(r.impossible);
    fc.assert(fc.property(within(0, Math.PI), within(0, 2 * Math.PI), within(0, 0.01), (a, b, m) => {
      const end = [0.64 + m * Math.cos(a), m * Math.sin(a) * Math.cos(b), m * Math.sin(a) * Math.sin(b)] as const;
      const far = Math.hypot(...end);
      expect(far).toBeGreaterThanOrEqual(0.63 - 1e-12);
      expect(far).toBeLessThanOrEqual(0.65 + 1e-12);
      expect(Math.acos(end[0] / far)).toBeLessThanOrEqual(r.bendMore + 1e-9);
    }));
  });

  test('a shaft driven past its end is impossible by what is missing, one pulled apart by the gap', () => {
    expect(slipLeft({ ...base, collapseBefore: 0.03 })).toEqual({ impossible: 'slip-bottoms', by: expect.closeTo(0.009, 12) as number });
    expect(slipLeft({ ...base, lengthAfter: 0.76 })).toEqual({ impossible: 'slip-parts', by: expect.closeTo(0.006, 12) as number });
    expect(slipLeft({ ...base, mountMovement: 0.7 })).toMatchObject({ impossible: 'mount-exceeds-shaft' });
  });

  test('a length of nothing is a programmer’s error', () => {
    expect(() => slipLeft({ ...base, lengthAfter: 0 })).toThrow(/lengthAfter/);
    expect(() => slipLeft({ ...base, mountMovement: -1 })).toThrow(/mountMovement/);
  });
});
