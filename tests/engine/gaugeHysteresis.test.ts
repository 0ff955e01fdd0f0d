import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { gaugeHysteresis } from '../../src/engine/gaugeHysteresis.ts';
import type { GaugeReading, Hysteresis } from '../../src/engine/gaugeHysteresis.ts';
import { isImpossible } from '../../src/engine/outcome.ts';

const area = (bore: number): number => (Math.PI / 4) * bore ** 2;
const still = { front: 0, rear: 0 };
const sizes = { frontArea: area(0.01778), rearArea: area(0.0206375), scatterOn: still, scatterOff: still };
const forces = [110, 220, 330, 440];
// Evenly spread: fc.double would spend most of its trials within a hair of 0.
const range = (min: number, max: number) => fc.integer({ min: 0, max: 1_000_000 }).map((k) => min + ((max - min) * k) / 1_000_000);

/** Readings of a bar without springs: push per newton and share each way. */
function readings({ on, off }: Record<'on' | 'off', { push: number; share: number }>): GaugeReading[] {
  return forces.flatMap((controlForce) =>
    ([['rising', on], ['falling', off]] as const).map(([direction, { push, share }]) => ({
      controlForce, direction, frontPressure: (share * push * controlForce) / sizes.frontArea, rearPressure: ((1 - share) * push * controlForce) / sizes.rearArea,
    })));
}
function possible(x: ReturnType<typeof gaugeHysteresis>): Hysteresis {
  if (isImpossible(x)) throw new Error(`expected a result, found ${x.impossible}`);
  return x;
}

describe('gaugeHysteresis', () => {
  test('29.2 and 17.9 bar pressed on, 31.0 and 19.0 let off: 0.030 in each circuit and of the whole push', () => {
    const pair = (direction: 'rising' | 'falling', front: number, rear: number): GaugeReading => ({ controlForce: 222, direction, frontPressure: front * 1e5, rearPressure: rear * 1e5 });
    const h = possible(gaugeHysteresis({ ...sizes, rearArea: sizes.frontArea, readings: [pair('rising', 29.2, 17.9), pair('falling', 31, 19)], force: 222 }));
    expect(h.front).toBeCloseTo(0.03, 3);
    expect(h.rear).toBeCloseTo(0.03, 3);
    expect(h.drag).toBeCloseTo((50 - 47.1) / (50 + 47.1), 12);
  });

  test('friction of the linkage shows as drag alone, friction of the bar as share alone', () => {
    fc.assert(
      fc.property(range(4, 6), range(0.45, 0.7), range(0, 0.1), range(-0.04, 0.04), range(110, 440), (push, share, drag, band, force) => {
        const linkage = possible(gaugeHysteresis({ ...sizes, readings: readings({ on: { push: push * (1 - drag), share }, off: { push: push * (1 + drag), share } }), force }));
        for (const h of [linkage.front, linkage.rear, linkage.drag]) expect(h).toBeCloseTo(drag, 12);
        expect(linkage.share).toBeCloseTo(0, 12);
        const bar = possible(gaugeHysteresis({ ...sizes, readings: readings({ on: { push, share: share - band }, off: { push, share: share + band } }), force }));
        expect(bar.drag).toBeCloseTo(0, 12);
        expect(bar.share).toBeCloseTo(band, 12);
        expect(bar.front).toBeCloseTo(band / share, 12);
        expect(bar.rear).toBeCloseTo(-band / (1 - share), 12);
      }),
    );
  });

  test('a bar bearing that is dry takes more than 5 % of the smaller circuit, a greased one less', () => {
    // ± μ r/L of share: 0.15 and 0.05 × 9.5/63.5.
    const rear = (friction: number) => {
      const band = (friction * 9.5) / 63.5;
      return Math.abs(possible(gaugeHysteresis({ ...sizes, readings: readings({ on: { push: 5, share: 0.62 - band }, off: { push: 5, share: 0.62 + band } }), force: 222 })).rear);
    };
    expect(rear(0.15)).toBeGreaterThan(0.05);
    expect(rear(0.05)).toBeLessThan(0.05);
  });

  test('a force that was read more than once counts with its mean, and its error shrinks', () => {
    const base = readings({ on: { push: 5, share: 0.6 }, off: { push: 5.2, share: 0.6 } });
    const scatter = { scatterOn: { front: 5e4, rear: 4e4 }, scatterOff: { front: 5e4, rear: 4e4 } };
    const jitter = base.map((r) => ({ ...r, frontPressure: r.frontPressure * 1.01 })).concat(base.map((r) => ({ ...r, frontPressure: r.frontPressure * 0.99 })));
    const [once, twice] = [base, jitter].map((list) => possible(gaugeHysteresis({ ...sizes, ...scatter, readings: list, force: 220 })));
    expect(twice!.front).toBeCloseTo(once!.front, 12);
    expect(once!.frontError / twice!.frontError).toBeCloseTo(Math.SQRT2, 9);
    const between = possible(gaugeHysteresis({ ...sizes, ...scatter, readings: base, force: 275 }));
    const at275 = (5 * 275 * 0.6 + 5.2 * 275 * 0.6) / sizes.frontArea;
    expect(between.frontError).toBeCloseTo(Math.sqrt(2 * 5e4 ** 2 * 0.5) / at275, 12);
  });

  test('between two readings the pressure is on the straight line from one to the other, a quarter of the way at a quarter', () => {
    const at = (direction: 'rising' | 'falling', controlForce: number, front: number): GaugeReading => ({ controlForce, direction, frontPressure: front * 1e5, rearPressure: 2e6 });
    const list = [at('rising', 200, 20), at('rising', 240, 40), at('falling', 200, 30), at('falling', 240, 34)];
    const h = possible(gaugeHysteresis({ ...sizes, scatterOn: { front: 1e5, rear: 0 }, readings: list, force: 210 }));
    expect(h.front).toBeCloseTo((31 - 25) / (31 + 25), 12);
    expect(h.frontError).toBeCloseTo(Math.sqrt(0.75 ** 2 + 0.25 ** 2) / 56, 12);
  });

  test('behind a valve that has bent the rear, the rear’s part of the push says nothing about the bar', () => {
    const list = readings({ on: { push: 5, share: 0.6 }, off: { push: 5.2, share: 0.6 } });
    const rearAt220 = (0.4 * 5.2 * 220) / sizes.rearArea;
    expect(possible(gaugeHysteresis({ ...sizes, readings: list, force: 220, knee: rearAt220 * 1.01 })).share).toBeCloseTo(0, 12);
    expect(possible(gaugeHysteresis({ ...sizes, readings: list, force: 220, knee: rearAt220 * 0.99 })).share).toBeUndefined();
  });

  test('without readings of the foot coming up, or with none on one side of the force, there is no answer, and it says what is missing', () => {
    const list = readings({ on: { push: 5, share: 0.6 }, off: { push: 5, share: 0.6 } });
    expect(gaugeHysteresis({ ...sizes, readings: list.filter((r) => r.direction === 'rising'), force: 220 })).toEqual({ impossible: 'no-falling-readings' });
    expect(gaugeHysteresis({ ...sizes, readings: list, force: 100 })).toEqual({ impossible: 'force-not-bracketed', by: 10 });
    expect(gaugeHysteresis({ ...sizes, readings: list, force: 500 })).toEqual({ impossible: 'force-not-bracketed', by: 60 });
    expect(gaugeHysteresis({ ...sizes, readings: list.filter((r) => r.direction === 'rising' || r.controlForce > 300), force: 220 })).toEqual({ impossible: 'force-not-bracketed', by: 110 });
    expect(() => gaugeHysteresis({ ...sizes, readings: [], force: 220 })).toThrow(/rising/);
    expect(() => gaugeHysteresis({ ...sizes, readings: list, force: 0 })).toThrow(/force/);
  });
});
