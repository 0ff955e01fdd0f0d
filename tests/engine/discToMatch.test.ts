import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { discAxle } from '../../src/engine/disc.ts';
import { discToMatch } from '../../src/engine/discToMatch.ts';
import { drumAxle } from '../../src/engine/drum.ts';
import { isImpossible } from '../../src/engine/outcome.ts';
import type { Impossible } from '../../src/engine/outcome.ts';

function possible<T>(x: T | Impossible): T {
  if (isImpossible(x)) throw new Error(`expected a result, found ${x.impossible}`);
  return x;
}
// Evenly spread: fc.double would spend most of its trials within a hair of 0.
const range = (min: number, max: number) =>
  fc.integer({ min: 0, max: 1_000_000 }).map((k) => min + ((max - min) * k) / 1_000_000);
const drum = {
  applyArm: 0.2, normalArm: 0.1, frictionArm: 0.1, friction: 0.38, cylinderDiameter: 0.01905, drumRadius: 0.115, efficiency: 0.96,
  loadedRadius: 0.3, pushOut: 5e5, pressure: 40e5,
};
const disc = {
  axleForce: 1304.4, pressure: 40e5, loadedRadius: 0.3, friction: 0.38, effectiveRadius: 0.112, efficiency: 0.98, pushOut: 0, pistonsPerSide: 1,
  padGap: 1.5e-4, cylinderDiameter: 0.01905, shoeTravel: 1e-3,
};

describe('discToMatch', () => {
  test('a disc built to the answer brakes with the force asked for', () => {
    fc.assert(
      fc.property(range(100, 6000), range(10e5, 90e5), range(0, 0.7e5), range(0.28, 0.48), fc.integer({ min: 1, max: 3 }), (axleForce, pressure, pushOut, friction, pistonsPerSide) => {
        const m = possible(discToMatch({ ...disc, axleForce, pressure, pushOut, friction, pistonsPerSide }));
        const built = possible(discAxle({
          pistonDiameter: m.pistonDiameter, pistonsPerSide, type: 'floating', friction, outer: 0.13, inner: 0.094, law: 'worn-in',
          efficiency: 0.98, loadedRadius: 0.3, pushOut, pressure,
        }));
        expect(Math.abs(built.axleForce / axleForce - 1)).toBeLessThan(1e-9);
        expect(Math.abs(built.volumeArea * disc.padGap - m.discVolume)).toBeLessThan(1e-15);
        expect(m.product).toBeCloseTo(friction * m.clampArea * 0.112, 15);
      }),
    );
  });

  test('a plain leading-trailing drum on 19 mm cylinders is matched by a 27 mm piston; the same shoes as a duo-servo ask for 41 mm', () => {
    const of = (type: 'leading-trailing' | 'duo-servo') =>
      possible(discToMatch({ ...disc, axleForce: possible(drumAxle({ ...drum, type })).axleForce })).pistonDiameter;
    expect(of('leading-trailing') * 1e3).toBeCloseTo(27.3, 1);
    expect(of('duo-servo') * 1e3).toBeCloseTo(40.8, 1);
  });

  test('it is a match at one pressure: below it the disc brakes more, above it less, for the drum has more springs to overcome', () => {
    const { pistonDiameter } = possible(discToMatch({ ...disc, axleForce: possible(drumAxle({ ...drum, type: 'leading-trailing' })).axleForce }));
    const more = (pressure: number) => {
      const d = possible(discAxle({
        pistonDiameter, pistonsPerSide: 1, type: 'floating', friction: 0.38, outer: 0.13, inner: 0.094, law: 'worn-in', efficiency: 0.98,
        loadedRadius: 0.3, pushOut: 0, pressure,
      }));
      return d.axleForce - possible(drumAxle({ ...drum, type: 'leading-trailing', pressure })).axleForce;
    };
    expect(Math.abs(more(40e5))).toBeLessThan(1e-9);
    expect(more(10e5)).toBeGreaterThan(100);
    expect(more(80e5)).toBeLessThan(-100);
  });

  test('volumes counted piston by piston: two wheel cylinder pistons, and two pads whatever the caliper', () => {
    const m = possible(discToMatch(disc));
    expect(m.drumVolume).toBeCloseTo(2 * (Math.PI / 4) * 0.01905 ** 2 * 1e-3, 15);
    expect(m.discVolume).toBeCloseTo(2 * (Math.PI / 4) * m.pistonDiameter ** 2 * 1.5e-4, 15);
    expect(m.volumeRatio).toBeCloseTo(m.discVolume / m.drumVolume, 12);
    expect(possible(discToMatch({ ...disc, shoeTravel: 0 })).volumeRatio).toBeUndefined();
  });

  test('less friction asks for more piston in the same proportion, and for that much more fluid', () => {
    const [a, b] = [0.4, 0.2].map((friction) => possible(discToMatch({ ...disc, friction })));
    expect(b!.clampArea / a!.clampArea).toBeCloseTo(2, 12);
    expect((b!.volumeRatio as number) / (a!.volumeRatio as number)).toBeCloseTo(2, 12);
    expect(b!.product).toBe(a!.product);
  });

  test('at a pressure below its own push-out no disc matches anything', () => {
    const m = discToMatch({ ...disc, pressure: 4e4, pushOut: 5e4 });
    expect(isImpossible(m) && m.impossible).toBe('below-push-out');
    expect(isImpossible(m) && m.by).toBeCloseTo(1e4, 9);
    expect(isImpossible(discToMatch({ ...disc, pressure: 0 }))).toBe(true);
    expect(() => discToMatch({ ...disc, pistonsPerSide: 0 })).toThrow(/pistonsPerSide/);
    expect(() => discToMatch({ ...disc, efficiency: 1.01 })).toThrow(/efficiency/);
  });
});
