import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { discAxle, effectiveRadius } from '../../src/engine/disc.ts';
import type { DiscAxle } from '../../src/engine/disc.ts';
import { isImpossible } from '../../src/engine/outcome.ts';
import type { Impossible } from '../../src/engine/outcome.ts';

function possible<T>(x: T | Impossible): T {
  if (isImpossible(x)) throw new Error(`expected a result, found ${x.impossible}`);
  return x;
}
const front: DiscAxle = {
  pistonDiameter: 0.054, pistonsPerSide: 1, type: 'floating', friction: 0.38, outer: 0.13, inner: 0.086, law: 'worn-in',
  efficiency: 0.98, loadedRadius: 0.3, pushOut: 0, pressure: 1e5,
};
// Evenly spread: fc.double would spend most of its trials within a hair of 0.
const range = (min: number, max: number) =>
  fc.integer({ min: 0, max: 1_000_000 }).map((k) => min + ((max - min) * k) / 1_000_000);
const track = fc.tuple(range(0.02, 0.2), range(0.05, 1)).map(([inner, more]) => ({ inner, outer: inner * (1 + more) }));

/** Integral of r × friction over rings, over the integral of friction: what an effective radius is. */
function radiusByRings(outer: number, inner: number, pressureAt: (r: number) => number): number {
  const n = 4000;
  let torque = 0;
  let force = 0;
  for (let i = 0; i < n; i += 1) {
    const r = inner + ((i + 0.5) * (outer - inner)) / n;
    torque += pressureAt(r) * r * r;
    force += pressureAt(r) * r;
  }
  return torque / force;
}

describe('effectiveRadius', () => {
  test('summing the friction of thin rings gives both formulas', () => {
    fc.assert(
      fc.property(track, ({ outer, inner }) => {
        const worn = possible(effectiveRadius({ outer, inner, law: 'worn-in' })).radius;
        const even = possible(effectiveRadius({ outer, inner, law: 'uniform-pressure' })).radius;
        expect(Math.abs(worn / radiusByRings(outer, inner, (r) => 1 / r) - 1)).toBeLessThan(1e-7);
        expect(Math.abs(even / radiusByRings(outer, inner, () => 1) - 1)).toBeLessThan(1e-7);
        expect(even).toBeGreaterThan(worn);
        expect(even).toBeLessThan(outer);
      }),
      { numRuns: 40 },
    );
  });

  test('on a track of almost no width both laws give its radius', () => {
    for (const law of ['worn-in', 'uniform-pressure'] as const) {
      expect(possible(effectiveRadius({ outer: 0.1 + 1e-12, inner: 0.1, law })).radius).toBeCloseTo(0.1, 11);
    }
  });

  test('a full disc of even pressure acts at two thirds of its radius', () => {
    expect(possible(effectiveRadius({ outer: 0.15, inner: 0, law: 'uniform-pressure' })).radius).toBeCloseTo(0.1, 15);
  });

  test('a track whose inner edge is outside its outer one has no answer, and says by how much', () => {
    const r = effectiveRadius({ outer: 0.1, inner: 0.12, law: 'worn-in' });
    expect(isImpossible(r) && r.impossible).toBe('inner-not-inside-outer');
    expect(isImpossible(r) && r.by).toBeCloseTo(0.02, 15);
    expect(() => effectiveRadius({ outer: -1, inner: 0, law: 'worn-in' })).toThrow(/outer/);
  });
});

describe('discAxle', () => {
  test('the reference truck makes 122.8 N per bar in front and 63.4 behind (printed to 0.1 N)', () => {
    expect(Math.abs(possible(discAxle(front)).axleForce - 122.8)).toBeLessThanOrEqual(0.05);
    const rear = possible(discAxle({ ...front, pistonDiameter: 0.0381, outer: 0.13, inner: 0.094 }));
    expect(Math.abs(rear.axleForce - 63.4)).toBeLessThanOrEqual(0.05);
  });

  test('a four-piston opposed caliper of 38.1 mm clamps like one 54 mm floating piston: 2280 against 2290 mm²', () => {
    const opposed = possible(discAxle({ ...front, type: 'opposed', pistonDiameter: 0.0381, pistonsPerSide: 2 }));
    const floating = possible(discAxle(front));
    expect(Math.abs(opposed.clampArea * 1e6 - 2280)).toBeLessThanOrEqual(0.5);
    expect(Math.abs(floating.clampArea * 1e6 - 2290)).toBeLessThanOrEqual(0.5);
    expect(opposed.pistonsPerCaliper).toBe(4);
    expect(floating.pistonsPerCaliper).toBe(1);
  });

  test('fluid for a gap g at each pad: piston area × piston movement, counted piston by piston, for either type', () => {
    const g = 0.15e-3;
    const one = (Math.PI / 4) * 0.04 ** 2;
    for (const n of [1, 2, 3]) {
      const base = { ...front, pistonDiameter: 0.04, pistonsPerSide: n };
      const movedByFloating = n * one * (2 * g); // the housing slides, so each piston closes both gaps
      const movedByOpposed = 2 * n * one * g; // each piston closes its own
      expect(possible(discAxle({ ...base, type: 'floating' })).volumeArea * g).toBeCloseTo(movedByFloating, 18);
      expect(possible(discAxle({ ...base, type: 'opposed' })).volumeArea * g).toBeCloseTo(movedByOpposed, 18);
    }
  });

  test('work of the fluid is work of the pads: p × volume = clamp × gap × 2 pads, with no losses', () => {
    fc.assert(
      fc.property(range(0.02, 0.07), fc.integer({ min: 1, max: 4 }), fc.constantFrom('floating' as const, 'opposed' as const), (pistonDiameter, pistonsPerSide, type) => {
        const a = possible(discAxle({ ...front, pistonDiameter, pistonsPerSide, type, efficiency: 1, pressure: 3e6 }));
        const gap = 1e-4;
        expect(3e6 * a.volumeArea * gap).toBeCloseTo(a.clampForce * gap * 2, 9);
      }),
    );
  });

  test('each wheel has two rubbing faces and each axle two wheels', () => {
    const a = possible(discAxle({ ...front, pressure: 5e6 }));
    expect(a.torquePerWheel).toBeCloseTo(2 * 0.38 * a.clampForce * 0.108, 9);
    expect(a.axleForce * 0.3).toBeCloseTo(2 * a.torquePerWheel, 9);
  });

  test('below push-out there is no clamp; above it the force rises with the gain', () => {
    const at = (pressure: number) => possible(discAxle({ ...front, pushOut: 5e4, pressure }));
    expect(at(0).axleForce).toBe(0);
    expect(at(4.9e4).clampForce).toBe(0);
    expect(at(5e6).axleForce).toBeCloseTo(at(0).gain * (5e6 - 5e4), 9);
  });

  test('brake force falls as 1/R with a taller tire, and rises in step with friction', () => {
    const a = possible(discAxle(front)).axleForce;
    expect(possible(discAxle({ ...front, loadedRadius: 0.33 })).axleForce).toBeCloseTo(a / 1.1, 10);
    expect(possible(discAxle({ ...front, friction: 0.342 })).axleForce).toBeCloseTo(a * 0.9, 10);
  });

  test('half a piston, or an efficiency above 1, is a mistake of the caller', () => {
    expect(() => discAxle({ ...front, pistonsPerSide: 1.5 })).toThrow(/pistonsPerSide/);
    expect(() => discAxle({ ...front, efficiency: 1.2 })).toThrow(/efficiency/);
    expect(isImpossible(discAxle({ ...front, inner: 0.14 }))).toBe(true);
  });
});
