import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { DropMotion } from '../../src/engine/bodyDrop.ts';
import { kneeAfterDrop, kneeAtHeight } from '../../src/engine/loadSensingValve.ts';
import { isImpossible } from '../../src/engine/outcome.ts';
import type { Impossible } from '../../src/engine/outcome.ts';

function possible<T>(x: T | Impossible): T {
  if (isImpossible(x)) throw new Error(`expected a result, found ${x.impossible}`);
  return x;
}
// Evenly spread: fc.double would spend most of its trials within a hair of 0.
const range = (min: number, max: number) =>
  fc.integer({ min: 0, max: 1_000_000 }).map((k) => min + ((max - min) * k) / 1_000_000);
const valve = { emptyHeight: 0.22, ladenHeight: 0.16, emptyKnee: 20e5, ladenKnee: 60e5 };
const still: DropMotion = {
  type: 'channeled', dropFront: 0, dropRear: 0, xFront: -0.5, xRear: -2, suspensionFront: 0, suspensionRear: 0, xFrontAxle: 0, xRearAxle: -2.743,
};
const anyType = fc.constantFrom('channeled' as const, 'stock-floor' as const);

describe('kneeAtHeight', () => {
  test('at the two heights of the setting it is what the gauges showed, and halfway between it is the mean', () => {
    const knee = (height: number) => possible(kneeAtHeight({ ...valve, height })).knee;
    expect(knee(0.22)).toBe(20e5);
    expect(knee(0.16)).toBe(60e5);
    expect(knee(0.19)).toBeCloseTo(40e5, 6);
  });

  test('a lower frame never lowers the knee', () => {
    fc.assert(
      fc.property(range(0, 0.4), range(0, 0.2), (height, lower) => {
        const [high, low] = [height, height - lower].map((h) => possible(kneeAtHeight({ ...valve, height: h })));
        expect(low!.knee).toBeGreaterThanOrEqual(high!.knee);
        expect(low!.believedLoad).toBeGreaterThanOrEqual(high!.believedLoad);
      }),
    );
  });

  test('outside the two heights the knee is held, and the answer says on which side nobody has measured', () => {
    expect(possible(kneeAtHeight({ ...valve, height: 0.1 }))).toMatchObject({ knee: 60e5, standing: 'below-laden-height' });
    expect(possible(kneeAtHeight({ ...valve, height: 0.3 }))).toMatchObject({ knee: 20e5, standing: 'above-empty-height' });
    expect(possible(kneeAtHeight({ ...valve, height: 0.1 })).believedLoad).toBeCloseTo(2, 12);
  });

  test('a setting with the heights or the knees the wrong way round is returned, with how much', () => {
    const heights = kneeAtHeight({ ...valve, ladenHeight: 0.25, height: 0.2 });
    expect(isImpossible(heights) && heights.impossible).toBe('laden-height-above-empty');
    expect(isImpossible(heights) && heights.by).toBeCloseTo(0.03, 12);
    const knees = kneeAtHeight({ ...valve, ladenKnee: 15e5, height: 0.2 });
    expect(isImpossible(knees) && [knees.impossible, knees.by]).toEqual(['laden-knee-below-empty', 5e5]);
    expect(isImpossible(kneeAtHeight({ ...valve, ladenHeight: 0.22, height: 0.2 }))).toBe(true);
    expect(() => kneeAtHeight({ ...valve, emptyKnee: -1, height: 0.2 })).toThrow(/emptyKnee/);
    expect(() => kneeAtHeight({ ...valve, height: NaN })).toThrow(/height/);
  });
});

describe('kneeAfterDrop', () => {
  test('a body drop of any size, even or uneven, channeled or not, does nothing to the knee', () => {
    fc.assert(
      fc.property(anyType, range(0, 0.12), range(0, 0.12), range(0.12, 0.26), (type, dropFront, dropRear, height) => {
        const d = possible(kneeAfterDrop({ ...valve, ...still, type, dropFront, dropRear, height }));
        expect(d.heightAfter).toBe(height);
        expect(d.kneeRise).toBe(0);
        expect(d.linkCorrection).toBe(0);
      }),
    );
  });

  test('a suspension drop takes itself off the height, whatever the body does on top', () => {
    fc.assert(
      fc.property(anyType, range(-0.05, 0.1), range(0, 0.1), range(0.15, 0.3), (type, suspensionRear, drop, height) => {
        const d = possible(kneeAfterDrop({ ...valve, ...still, type, suspensionRear, dropFront: drop, dropRear: drop, height }));
        expect(d.heightAfter).toBeCloseTo(height - suspensionRear, 14);
        expect(d.after.believedLoad - d.before.believedLoad).toBeCloseTo(suspensionRear / 0.06, 10);
        expect(d.linkCorrection).toBeCloseTo(suspensionRear, 14);
      }),
    );
  });

  test('lowering only the front leaves it alone: the link is at the rear axle', () => {
    expect(possible(kneeAfterDrop({ ...valve, ...still, suspensionFront: 0.1, height: 0.2 })).kneeRise).toBe(0);
  });

  test('1 in off the springs of the empty truck is 42 % of a load to this valve, and 17 bar of knee; 5 in is more than a full bed', () => {
    const by = (inches: number) => possible(kneeAfterDrop({ ...valve, ...still, suspensionFront: inches * 0.0254, suspensionRear: inches * 0.0254, height: 0.22 }));
    expect(by(1).after.believedLoad).toBeCloseTo(25.4 / 60, 12);
    expect(by(1).kneeRise / 1e5).toBeCloseTo((40 * 25.4) / 60, 9);
    expect(by(5)).toMatchObject({ kneeRise: 40e5, after: { standing: 'below-laden-height' } });
    expect(by(5).after.believedLoad).toBeCloseTo(2.117, 3);
  });

  test('a link shorter by the correction gives the old knee back at the new height: the lever sees frame height less link', () => {
    const [link, height] = [0.15, 0.21];
    const d = possible(kneeAfterDrop({ ...valve, ...still, suspensionRear: 0.04, height }));
    const underFrame = (frame: number, length: number) => frame - length; // where the lever's end stands
    expect(underFrame(d.heightAfter, link - d.linkCorrection)).toBeCloseTo(underFrame(height, link), 12);
    expect(d.linkCorrection).toBeCloseTo(0.04, 12);
    expect(d.after.knee).toBeGreaterThan(d.before.knee);
  });

  test('a drop larger than the height puts the frame on the axle, and says by how much', () => {
    const d = kneeAfterDrop({ ...valve, ...still, suspensionRear: 0.25, height: 0.2 });
    expect(isImpossible(d) && d.impossible).toBe('frame-on-axle');
    expect(isImpossible(d) && d.by).toBeCloseTo(0.05, 12);
    expect(isImpossible(kneeAfterDrop({ ...valve, ...still, suspensionRear: 0.2, height: 0.2 }))).toBe(true);
    const span = kneeAfterDrop({ ...valve, ...still, dropRear: 2, height: 0.2 });
    expect(isImpossible(span) && span.impossible).toBe('drop-exceeds-span');
    expect(() => kneeAfterDrop({ ...valve, ...still, height: 0 })).toThrow(/height/);
  });
});
