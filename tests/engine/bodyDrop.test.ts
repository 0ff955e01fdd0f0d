import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { driverHeights, dropPitch, movePoint, pairChange, rides, ridesWith } from '../../src/engine/bodyDrop.ts';
import type { Attached, BodyPoint, DropMotion, PartKind } from '../../src/engine/bodyDrop.ts';
import { isImpossible } from '../../src/engine/outcome.ts';
import type { Impossible } from '../../src/engine/outcome.ts';

function possible<T>(x: T | Impossible): T {
  if (isImpossible(x)) throw new Error(`expected a result, found ${x.impossible}`);
  return x;
}
const range = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const level: DropMotion = {
  type: 'channeled', dropFront: 0.075, dropRear: 0.075, xFront: -0.3, xRear: -1.8,
  suspensionFront: 0.1, suspensionRear: 0.1, xFrontAxle: 0, xRearAxle: -2.743,
};
const at = (x: number, z: number, attached: Attached): BodyPoint => ({ x, y: 0.3, z, attached });
const moved = (point: BodyPoint, change: Partial<DropMotion> = {}) => possible(movePoint({ ...level, ...change, point }));
const anyMotion = fc.record({
  type: fc.constantFrom('channeled' as const, 'stock-floor' as const), dropFront: range(-0.1, 0.15), dropRear: range(-0.1, 0.15),
  zMount: range(-0.2, 0.3), suspensionFront: range(-0.1, 0.2), suspensionRear: range(-0.1, 0.2),
});
const anyPlace = fc.record({ x: range(-3, 1), y: range(-1, 1), z: range(-0.3, 1.5) });

describe('movePoint', () => {
  test('equal drops bring every body point straight down and leave the frame where it is', () => {
    fc.assert(
      fc.property(anyPlace, range(0, 0.15), (place, drop) => {
        const same = { dropFront: drop, dropRear: drop };
        const body = moved({ ...place, attached: 'body' }, same);
        expect(body.x).toBeCloseTo(place.x, 12);
        expect(body.dz).toBeCloseTo(-drop, 12);
        expect(body.y).toBe(place.y);
        expect(moved({ ...place, attached: 'frame' }, same)).toMatchObject({ ...place, dx: 0, dy: 0, dz: 0 });
      }),
    );
  });

  test('the two mounts come down by just what was measured there', () => {
    fc.assert(
      fc.property(anyMotion, (motion) => {
        expect(moved(at(-0.3, motion.zMount, 'body'), motion).dz).toBeCloseTo(-motion.dropFront, 12);
        expect(moved(at(-1.8, motion.zMount, 'body'), motion).dz).toBeCloseTo(-motion.dropRear, 12);
        expect(moved(at(-0.3, motion.zMount, 'body'), motion).dx).toBeCloseTo(0, 12);
      }),
    );
  });

  test('the body is rigid: any two of its points keep their distance, however unequal the drops', () => {
    fc.assert(
      fc.property(anyMotion, anyPlace, anyPlace, (motion, a, b) => {
        const s = possible(pairChange({ ...level, ...motion, a: { ...a, attached: 'body' }, b: { ...b, attached: 'body' } }));
        expect(s.change).toBeCloseTo(0, 12);
      }),
    );
  });

  test('the straight-line formula for z is met at mount height to the size of what it leaves out', () => {
    fc.assert(
      fc.property(anyMotion, range(-3, 1), (motion, x) => {
        const z = motion.zMount;
        const line = z - motion.dropFront - ((motion.dropRear - motion.dropFront) * (-0.3 - x)) / 1.5;
        expect(moved(at(x, z, 'body'), motion).z).toBeCloseTo(line, 12);
      }),
    );
  });

  test('10 mm more at the rear over 1.5 m turns the cab 0.4° nose up and carries a point 0.6 m up 4 mm backward', () => {
    const raked = { dropFront: 0.06, dropRear: 0.07 };
    const { pitch } = possible(dropPitch({ ...level, ...raked }));
    expect((pitch * 180) / Math.PI).toBeCloseTo(0.4, 1);
    expect(1000 * moved(at(-0.3, 0.6, 'body'), raked).dx).toBeCloseTo(-4, 1);
    expect(possible(dropPitch({ ...level, dropFront: 0.07, dropRear: 0.06 })).pitch).toBeCloseTo(-pitch, 15);
  });

  test('a channeled floor stays over the frame, a stock floor comes down with the body', () => {
    const floor = at(-1, 0.1, 'floor');
    expect(moved(floor, { type: 'channeled' }).dz).toBe(0);
    expect(moved(floor, { type: 'stock-floor' }).dz).toBeCloseTo(-0.075, 12);
  });

  test('over the ground: axles stay, the frame comes down by the suspension, the body by both', () => {
    expect(moved(at(0, -0.1, 'axle-front')).heightChange).toBe(0);
    expect(moved(at(-1, 0, 'frame')).heightChange).toBeCloseTo(-0.1, 12);
    expect(moved(at(-1, 0.5, 'body')).heightChange).toBeCloseTo(-0.175, 12);
    const nose = { suspensionFront: 0.05, suspensionRear: 0.12 };
    expect(moved(at(0, 0, 'frame'), nose).heightChange).toBeCloseTo(-0.05, 12);
    expect(moved(at(-2.743, 0, 'frame'), nose).heightChange).toBeCloseTo(-0.12, 12);
  });

  test('in frame axes the axles rise by what the frame came down over them, and a body drop does not move them', () => {
    const nose = { suspensionFront: 0.05, suspensionRear: 0.12 };
    expect(moved(at(0, -0.1, 'axle-front'), nose).dz).toBeCloseTo(0.05, 12);
    expect(moved(at(-2.743, -0.1, 'axle-rear'), nose).dz).toBeCloseTo(0.12, 12);
    const link = (drop: number) =>
      possible(
        pairChange({ ...level, suspensionFront: 0, suspensionRear: 0, dropFront: drop, dropRear: drop, a: at(-2.5, 0.1, 'frame'), b: at(-2.743, -0.1, 'axle-rear') }),
      ).change;
    expect(link(0.1)).toBe(0);
  });

  test('drops that differ by more than the mounts are apart are refused, stations at one place are a programmer error', () => {
    expect(movePoint({ ...level, dropRear: 2, point: at(0, 0, 'body') })).toEqual({ impossible: 'drop-exceeds-span', by: expect.closeTo(0.425, 12) });
    expect(isImpossible(movePoint({ ...level, suspensionRear: 4, point: at(0, 0, 'frame') }))).toBe(true);
    expect(() => movePoint({ ...level, xRear: -0.3, point: at(0, 0, 'body') })).toThrow(/xRear/);
    expect(() => movePoint({ ...level, point: at(Number.NaN, 0, 'body') })).toThrow(/x:/);
  });
});

describe('pairChange', () => {
  test('a line from frame to body, 0.3 m ahead and 0.4 m up, is 0.5000 m before and 0.4423 m after 75 mm of drop', () => {
    const s = possible(pairChange({ ...level, a: at(0, 0, 'frame'), b: at(0.3, 0.4, 'body') }));
    expect(s.before).toBeCloseTo(0.5, 12);
    expect(s.after).toBeCloseTo(Math.hypot(0.3, 0.325), 12);
    expect(s.dz).toBeCloseTo(-0.075, 12);
    expect(s.dx).toBeCloseTo(0, 12);
  });

  test('taken from the other end the distances are the same and the vectors turn over', () => {
    fc.assert(
      fc.property(anyMotion, anyPlace, anyPlace, fc.constantFrom<Attached>('floor', 'frame', 'axle-front', 'axle-rear'), (motion, a, b, attached) => {
        const p = { ...level, ...motion };
        const one = possible(pairChange({ ...p, a: { ...a, attached: 'body' }, b: { ...b, attached } }));
        const other = possible(pairChange({ ...p, a: { ...b, attached }, b: { ...a, attached: 'body' } }));
        expect(other.change).toBeCloseTo(one.change, 12);
        expect(other.dz).toBeCloseTo(-one.dz, 12);
        expect(other.dx).toBeCloseTo(-one.dx, 12);
      }),
    );
  });

  test('no drop and no suspension change leaves every distance alone', () => {
    const still = { dropFront: 0, dropRear: 0, suspensionFront: 0, suspensionRear: 0 };
    fc.assert(
      fc.property(anyPlace, anyPlace, fc.constantFrom<Attached>('body', 'floor', 'frame', 'axle-front', 'axle-rear'), (a, b, attached) => {
        expect(possible(pairChange({ ...level, ...still, a: { ...a, attached: 'body' }, b: { ...b, attached } })).change).toBeCloseTo(0, 12);
      }),
    );
  });

  test('no distance changes by more than the drop itself when the drop is level', () => {
    fc.assert(
      fc.property(anyPlace, anyPlace, range(0, 0.15), (a, b, drop) => {
        const s = possible(pairChange({ ...level, dropFront: drop, dropRear: drop, a: { ...a, attached: 'body' }, b: { ...b, attached: 'frame' } }));
        expect(Math.abs(s.change)).toBeLessThanOrEqual(drop + 1e-12);
      }),
    );
  });
});

describe('what rides with the body', () => {
  test('firewall, pedals, masters, column, hood and roof come down in either kind of drop; engine and steering box in neither', () => {
    for (const type of ['channeled', 'stock-floor'] as const) {
      for (const part of ['firewall', 'pedals', 'master cylinders', 'reservoirs', 'steering column and rim', 'hood', 'roof'] as const) {
        expect(ridesWith({ part, type }).comesDown).toBe(true);
      }
      for (const part of ['engine', 'gearbox', 'steering box', 'exhaust', 'fuel tank', 'clutch slave cylinder', 'rear calipers'] as const) {
        expect(ridesWith({ part, type }).comesDown).toBe(false);
      }
    }
  });

  test('floor, seat and tunnel are just the parts in which the two kinds of drop differ', () => {
    const differ = (Object.keys(rides) as PartKind[]).filter(
      (part) => ridesWith({ part, type: 'channeled' }).comesDown !== ridesWith({ part, type: 'stock-floor' }).comesDown,
    );
    expect(differ.sort()).toEqual(['floor', 'parking lever on the floor', 'seat', 'tunnel']);
  });

  test('the table of heights is what moving two points with those parts gives', () => {
    for (const type of ['channeled', 'stock-floor'] as const) {
      const heights = driverHeights({ type, drop: 0.075 });
      const gap = (upper: PartKind, lower: PartKind) =>
        possible(pairChange({ ...level, type, a: at(-1, 0.2, rides[lower]), b: at(-1, 0.6, rides[upper]) })).dz;
      expect(heights.padOverFloor).toBeCloseTo(gap('pedals', 'floor'), 12);
      expect(heights.hipOverPad).toBeCloseTo(gap('seat', 'pedals'), 12);
      expect(heights.rimOverSeat).toBeCloseTo(gap('steering column and rim', 'seat'), 12);
      expect(heights.tunnelOverGearbox).toBeCloseTo(gap('tunnel', 'gearbox'), 12);
      expect(heights.hoodOverEngine).toBeCloseTo(gap('hood', 'engine'), 12);
    }
  });

  test('channeled: pad height, rim over seat, headroom and shin room lose D, the hip rises D over the pads', () => {
    expect(driverHeights({ type: 'channeled', drop: 0.075 })).toMatchObject({
      padOverFloor: -0.075, rimOverSeat: -0.075, roofOverSeat: -0.075, dashOverFloor: -0.075, hipOverPad: 0.075, seatOverFloor: 0, floorOverFrame: 0,
    });
  });

  test('stock floor: nothing changes inside the cab and everything under it loses D', () => {
    expect(driverHeights({ type: 'stock-floor', drop: 0.075 })).toMatchObject({
      padOverFloor: 0, rimOverSeat: 0, roofOverSeat: 0, dashOverFloor: 0, hipOverPad: 0, seatOverFloor: 0, floorOverFrame: -0.075, tunnelOverGearbox: -0.075,
    });
  });

  test('either way the hood, the masters, the column and the filler neck lose D', () => {
    for (const type of ['channeled', 'stock-floor'] as const) {
      expect(driverHeights({ type, drop: 0.05 })).toMatchObject({
        hoodOverEngine: -0.05, mastersOverFrame: -0.05, columnOverBox: -0.05, fillerOverTank: -0.05,
      });
    }
  });
});
