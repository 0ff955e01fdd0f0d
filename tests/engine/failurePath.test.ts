import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { failurePath } from '../../src/engine/failurePath.ts';
import type { FailedPedal, FailureCorner } from '../../src/engine/failurePath.ts';
import { isImpossible } from '../../src/engine/outcome.ts';

const deg = Math.PI / 180;
const referencePedal: Omit<FailedPedal, 'dead'> = {
  pedalRatio: 6.2, efficiency: 0.85, barSpacing: 0.0635, barOffset: 0.00762, stopAngle: 12 * deg,
  frontBore: 0.01778, rearBore: 0.01778, frontStroke: 0.028, rearStroke: 0.028,
  frontTakeUpVolume: 1.874e-6, rearTakeUpVolume: 0.884e-6, frontCompliance: 0.051e-11, rearCompliance: 0.033e-11,
  frontPortStroke: 0.001, rearPortStroke: 0.001, floorTravel: 0.3,
};
// Evenly spread: fc.double would spend most of its trials within a hair of 0.
const range = (min: number, max: number) =>
  fc.integer({ min: 0, max: 1_000_000 }).map((k) => min + ((max - min) * k) / 1_000_000);
const anyPedal: fc.Arbitrary<FailedPedal> = fc.record({
  dead: fc.constantFrom('front' as const, 'rear' as const),
  pedalRatio: range(4, 8), efficiency: range(0.6, 1), barSpacing: range(0.05, 0.08), barOffset: range(-0.015, 0.015),
  stopAngle: fc.oneof(fc.constant(undefined), fc.constant(0), range(0, 40 * deg)),
  frontBore: range(0.0155, 0.0255), rearBore: range(0.0155, 0.0255), frontStroke: range(0.015, 0.036), rearStroke: range(0.015, 0.036),
  frontTakeUpVolume: range(0, 5e-6), rearTakeUpVolume: range(0, 5e-6), frontCompliance: range(1e-13, 1e-12), rearCompliance: range(1e-13, 1e-12),
  frontPortStroke: range(0, 0.002), rearPortStroke: range(0, 0.002), floorTravel: range(0.02, 0.3),
});
function pathOf(p: FailedPedal): readonly FailureCorner[] {
  const path = failurePath(p);
  if (isImpossible(path)) throw new Error(`expected a path, found ${path.impossible}`);
  return path;
}
const kinds = (p: FailedPedal) => pathOf(p).map((c) => c.kind);

describe('failurePath', () => {
  test('with a stop in reach: stop, pressure, dead master bottoms, flat spot, then the good master’s own bottom', () => {
    expect(kinds({ ...referencePedal, dead: 'rear' })).toEqual(['rest', 'bar-stop', 'first-pressure', 'dead-bottoms', 'flat-spot-ends', 'good-bottoms']);
  });

  test('without a stop, or with one beyond the stroke, the dead master bottoms first and there is no flat spot', () => {
    for (const stopAngle of [undefined, 30 * deg]) {
      expect(kinds({ ...referencePedal, dead: 'rear', stopAngle })).toEqual(['rest', 'dead-bottoms', 'first-pressure', 'good-bottoms']);
    }
  });

  test('a stop that engages just before the bottom leaves the dead master to bottom while there is still no pressure', () => {
    // S = 63.5 sin 24° = 25.8 mm, so 2.2 mm are left of 28 mm: less than the 8.5 mm the front circuit needs to take up.
    expect(kinds({ ...referencePedal, dead: 'rear', stopAngle: 24 * deg })).toEqual(['rest', 'bar-stop', 'dead-bottoms', 'first-pressure', 'good-bottoms']);
  });

  test('a short good master bottoms before the dead one can', () => {
    expect(kinds({ ...referencePedal, dead: 'rear', frontStroke: 0.012 })).toEqual(['rest', 'bar-stop', 'first-pressure', 'good-bottoms']);
  });

  test('a good master that outruns a bottomed dead one by more than the stop allows is caught by the stop the other way', () => {
    const p: FailedPedal = { ...referencePedal, dead: 'rear', rearStroke: 0.015, frontStroke: 0.036, stopAngle: 8 * deg };
    const path = pathOf(p);
    const end = path[path.length - 1] as FailureCorner;
    expect(end.kind).toBe('opposite-stop');
    expect(end.goodStroke - end.deadStroke).toBeCloseTo(0.0635 * Math.sin(8 * deg), 12);
  });

  test('the reference truck, rear dead, by hand: stop at 31 mm of pad, pressure at 84, dead master bottom at 123 mm and 143 N, flat to 231 N', () => {
    const path = pathOf({ ...referencePedal, dead: 'rear' });
    const at = (kind: string) => path.find((c) => c.kind === kind) as FailureCorner;
    expect(at('bar-stop').padTravel * 1e3).toBeCloseTo(6.2 * 13.2024 * 0.38, 2);
    expect(at('first-pressure').padTravel * 1e3).toBeCloseTo(6.2 * (8.5477 + 13.2024 * 0.38), 2);
    expect(at('dead-bottoms').padTravel * 1e3).toBeCloseTo(6.2 * (28 * 0.38 + 14.7976 * 0.62), 2);
    expect(at('dead-bottoms').pressure / 1e5).toBeCloseTo(30.43, 2);
    expect(at('dead-bottoms').controlForce).toBeCloseTo(143.35, 2);
    expect(at('flat-spot-ends').controlForce).toBeCloseTo(143.35 / 0.62, 2);
  });

  test('at every corner the bar is a straight rod: the pad stands at i times the pivot, which lies between the clevises', () => {
    fc.assert(
      fc.property(anyPedal, (p) => {
        for (const c of pathOf(p)) {
          const front = p.dead === 'front' ? c.deadStroke : c.goodStroke;
          const rear = p.dead === 'front' ? c.goodStroke : c.deadStroke;
          // The bar's front end at +L/2, its rear end at −L/2, the pivot at +u.
          const pivot = (front + rear) / 2 + ((front - rear) * p.barOffset) / p.barSpacing;
          expect(c.padTravel).toBeCloseTo(p.pedalRatio * pivot, 12);
        }
      }),
    );
  });

  test('forces, travels, strokes and pressure only rise along the path, and no piston or bar goes past its stops', () => {
    fc.assert(
      fc.property(anyPedal, (p) => {
        const path = pathOf(p);
        const spread = p.barSpacing * Math.sin(p.stopAngle ?? Math.PI / 2) + 1e-12;
        path.forEach((c, k) => {
          expect(Math.abs(c.deadStroke - c.goodStroke)).toBeLessThanOrEqual(spread);
          expect(c.padTravel).toBeLessThanOrEqual(p.floorTravel + 1e-12);
          expect(p.dead === 'front' ? c.deadStroke : c.goodStroke).toBeLessThanOrEqual(p.frontStroke + 1e-12);
          expect(p.dead === 'front' ? c.goodStroke : c.deadStroke).toBeLessThanOrEqual(p.rearStroke + 1e-12);
          const before = path[k - 1];
          if (before === undefined) return;
          for (const key of ['controlForce', 'padTravel', 'goodStroke', 'deadStroke', 'pressure'] as const) {
            expect(c[key]).toBeGreaterThanOrEqual(before[key] - 1e-9 * Math.abs(before[key]));
          }
        });
      }),
    );
  });

  test('work: foot force × travel × efficiency along the path is what the good circuit stores, ½ k p²; stops take none', () => {
    fc.assert(
      fc.property(anyPedal, (p) => {
        const path = pathOf(p);
        let foot = 0;
        for (let k = 1; k < path.length; k += 1) {
          const [a, b] = [path[k - 1] as FailureCorner, path[k] as FailureCorner];
          foot += 0.5 * (a.controlForce + b.controlForce) * (b.padTravel - a.padTravel);
        }
        const end = (path[path.length - 1] as FailureCorner).pressure;
        const stored = 0.5 * (p.dead === 'rear' ? p.frontCompliance : p.rearCompliance) * end ** 2;
        expect(Math.abs(foot * p.efficiency - stored)).toBeLessThan(1e-9 * Math.max(1, stored));
      }),
    );
  });

  test('swapping front for rear everywhere, and the side of the offset, changes no number', () => {
    fc.assert(
      fc.property(anyPedal, (p) => {
        const mirror: FailedPedal = {
          ...p, dead: p.dead === 'front' ? 'rear' : 'front', barOffset: -p.barOffset,
          frontBore: p.rearBore, rearBore: p.frontBore, frontStroke: p.rearStroke, rearStroke: p.frontStroke,
          frontTakeUpVolume: p.rearTakeUpVolume, rearTakeUpVolume: p.frontTakeUpVolume,
          frontCompliance: p.rearCompliance, rearCompliance: p.frontCompliance,
          frontPortStroke: p.rearPortStroke, rearPortStroke: p.frontPortStroke,
        };
        expect(pathOf(mirror)).toEqual(pathOf(p));
      }),
    );
  });

  test('a floor met in the free run ends the path with no pressure at all', () => {
    const path = pathOf({ ...referencePedal, dead: 'rear', floorTravel: 0.08 });
    expect(path.map((c) => c.kind)).toEqual(['rest', 'bar-stop', 'pad-on-floor']);
    expect(path[2]).toMatchObject({ regime: 'on-floor', controlForce: 0, pressure: 0 });
    expect(path[2]!.padTravel).toBeCloseTo(0.08, 14);
    // On the floor the bar is still on its stop.
    expect(path[2]!.deadStroke - path[2]!.goodStroke).toBeCloseTo(0.0635 * Math.sin(12 * deg), 12);
    expect(kinds({ ...referencePedal, dead: 'rear', floorTravel: 0.01 })).toEqual(['rest', 'pad-on-floor']);
  });

  test('the pivot on or beyond a clevis is not a balance bar, and says by how much', () => {
    const path = failurePath({ ...referencePedal, dead: 'rear', barOffset: -0.04 });
    expect(isImpossible(path) && path.impossible).toBe('pivot-outside-clevises');
    expect(isImpossible(path) && path.by).toBeCloseTo(0.04 - 0.03175, 14);
    expect(isImpossible(failurePath({ ...referencePedal, dead: 'rear', barOffset: 0.03175 }))).toBe(true);
  });

  test('a stop past 90 degrees or a master without stroke is a mistake of the caller', () => {
    expect(() => failurePath({ ...referencePedal, dead: 'rear', stopAngle: 2 })).toThrow(/stopAngle/);
    expect(() => failurePath({ ...referencePedal, dead: 'rear', rearStroke: 0 })).toThrow(/rearStroke/);
    expect(() => failurePath({ ...referencePedal, dead: 'rear', efficiency: 1.1 })).toThrow(/efficiency/);
  });
});
