import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { standardGravity } from '../../src/engine/constants.ts';
import { bisect } from '../../src/engine/roots.ts';
import { brakesPerRodForce, kneeForMargin, valveOutlet } from '../../src/engine/valve.ts';

const range = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const bar = { frontShare: 0.62, frontBore: 0.01778, rearBore: 0.01778, frontGain: 122.84e-5, rearGain: 63.4e-5 };
const truckA = { ...bar, slope: 0.43, mass: 1340, rearFraction: 0.42, heightRatio: 0.58 / 2.743 };

describe('valveOutlet', () => {
  test('60 in, knee 40, slope 0.43 gives 48.6 out, as printed', () => {
    expect(valveOutlet({ inlet: 60, knee: 40, slope: 0.43 }).outlet).toBeCloseTo(48.6, 12);
  });

  test('nothing is taken off below the knee, and the curve does not jump at it', () => {
    expect(valveOutlet({ inlet: 3e6, knee: 4e6, slope: 0.4 })).toEqual({ outlet: 3e6, reducing: false });
    expect(valveOutlet({ inlet: 4e6, knee: 4e6, slope: 0.4 }).outlet).toBe(4e6);
    expect(valveOutlet({ inlet: 4e6 + 1, knee: 4e6, slope: 0.4 }).outlet).toBeCloseTo(4e6 + 0.4, 6);
  });

  test('more in never gives less out, the outlet never exceeds the inlet, and the rise above the knee is the slope', () => {
    fc.assert(
      fc.property(range(0, 2e7), range(0, 1e6), range(0, 1e7), range(0, 1), (inlet, more, knee, slope) => {
        const one = valveOutlet({ inlet, knee, slope }).outlet;
        const two = valveOutlet({ inlet: inlet + more, knee, slope }).outlet;
        expect(one).toBeLessThanOrEqual(inlet * (1 + 1e-12));
        expect(two).toBeGreaterThanOrEqual(one - 1e-6);
        if (inlet > knee) expect(two - one).toBeCloseTo(slope * more, 4);
      }),
    );
  });

  test('slope 1 is no valve and slope 0 holds the outlet at the knee', () => {
    expect(valveOutlet({ inlet: 9e6, knee: 1e6, slope: 1 }).outlet).toBe(9e6);
    expect(valveOutlet({ inlet: 9e6, knee: 1e6, slope: 0 }).outlet).toBe(1e6);
  });

  test('a slope outside 0 to 1 is a programmer error', () => {
    expect(() => valveOutlet({ inlet: 1, knee: 1, slope: 1.1 })).toThrow(/slope/);
  });
});

describe('brakesPerRodForce', () => {
  test('reference truck A has a rear brake fraction of 0.240, as printed', () => {
    expect(brakesPerRodForce(bar).rearBrakeFraction).toBeCloseTo(0.24, 3);
  });

  test('like brakes, like bores and a centered bar split half and half', () => {
    expect(brakesPerRodForce({ ...bar, frontShare: 0.5, rearGain: bar.frontGain }).rearBrakeFraction).toBeCloseTo(0.5, 12);
  });

  test('scaling both bores scales pressures but not the split', () => {
    const one = brakesPerRodForce(bar);
    const two = brakesPerRodForce({ ...bar, frontBore: 2 * bar.frontBore, rearBore: 2 * bar.rearBore });
    expect(two.rearBrakeFraction).toBeCloseTo(one.rearBrakeFraction, 12);
    expect(two.frontPressure).toBeCloseTo(one.frontPressure / 4, 9);
  });
});

describe('kneeForMargin', () => {
  /** The rear share at a braking rate, found by pushing until the total is there: no formula of the engine's. */
  function rearShareAt(p: typeof truckA & { knee: number }, rate: number): number {
    const area = (d: number) => (Math.PI * d * d) / 4;
    const forces = (push: number) => {
      const inlet = ((1 - p.frontShare) * push) / area(p.rearBore);
      const outlet = inlet < p.knee ? inlet : p.knee + p.slope * (inlet - p.knee);
      return { front: (p.frontGain * p.frontShare * push) / area(p.frontBore), rear: p.rearGain * outlet };
    };
    const total = rate * p.mass * standardGravity;
    const push = bisect((t) => forces(t).front + forces(t).rear - total, 0, 1e6);
    return forces(push).rear / total;
  }
  const spare = (p: typeof truckA & { knee: number }, rate: number) =>
    p.rearFraction - p.heightRatio * rate - rearShareAt(p, rate);

  test('agrees with walking up the rates and halving the knee until the margin just holds', () => {
    const steps = [...Array.from({ length: 40 }, (_, i) => (i + 1) / 40), 0.01, 1e-3, 1e-4];
    fc.assert(
      fc.property(range(0.45, 0.65), range(0, 0.06), range(0.6, 1.1), range(0.1, 0.6), (frontShare, margin, rateLimit, slope) => {
        const p = { ...truckA, frontShare, slope };
        const found = kneeForMargin({ ...p, margin, rateLimit });
        const worst = (knee: number) => Math.min(...steps.map((step) => spare({ ...p, knee }, rateLimit * step))) - margin;
        if (found.need === 'none needed') expect(worst(1e9)).toBeGreaterThanOrEqual(-1e-9);
        else if (found.need === 'none helps') for (const knee of [1e4, 1e5, 1e6]) expect(worst(knee)).toBeLessThan(1e-9);
        else {
          const knee = found.knee as number;
          expect(worst(knee)).toBeGreaterThan(-1e-9);
          // The margin is used up at the end of the range, or just at the knee where the walk may step over it.
          const tight = Math.min(worst(knee), spare({ ...p, knee }, found.kneeRate as number) - margin);
          expect(Math.abs(tight)).toBeLessThan(1e-9);
        }
      }),
      { numRuns: 60, endOnFailure: true },
    );
  });

  test('a knee one percent higher breaks the margin somewhere', () => {
    const { knee, need } = kneeForMargin({ ...truckA, margin: 0.04, rateLimit: 1 });
    expect(need).toBe('set');
    expect(spare({ ...truckA, knee: knee as number }, 1)).toBeCloseTo(0.04, 9);
    expect(spare({ ...truckA, knee: 1.01 * (knee as number) }, 1)).toBeLessThan(0.04);
  });

  test('a wider margin, a higher rate and a steeper slope each ask for a lower knee', () => {
    const at = (change: object) => kneeForMargin({ ...truckA, margin: 0.03, rateLimit: 1, ...change }).knee as number;
    expect(at({ margin: 0.04 })).toBeLessThan(at({}));
    expect(at({ rateLimit: 1.05 })).toBeLessThan(at({}));
    expect(at({ slope: 0.5 })).toBeLessThan(at({}));
  });

  test('a bar set far to the front needs no valve, one set far to the rear is not helped by any', () => {
    expect(kneeForMargin({ ...truckA, frontShare: 0.8, margin: 0.04, rateLimit: 0.8 }).need).toBe('none needed');
    expect(kneeForMargin({ ...truckA, frontShare: 0.3, margin: 0.04, rateLimit: 0.8 })).toEqual({
      need: 'none helps', knee: undefined, kneeRate: undefined, limitedBy: undefined,
    });
  });

  test('a flat valve is held by the knee itself, and then bends exactly where the margin is used up', () => {
    const p = { ...truckA, frontShare: 0.5, slope: 0 };
    const found = kneeForMargin({ ...p, margin: 0.02, rateLimit: 0.6 });
    expect(found.limitedBy).toBe('knee');
    expect(spare({ ...p, knee: found.knee as number }, found.kneeRate as number)).toBeCloseTo(0.02, 9);
  });

  test('slope 1 is refused: it is no valve', () => {
    expect(() => kneeForMargin({ ...truckA, slope: 1, margin: 0.04, rateLimit: 1 })).toThrow(/slope/);
  });
});
