import fc from 'fast-check';
import { lusolve } from 'mathjs';
import { describe, expect, test } from 'vitest';
import { balanceBar } from '../../src/engine/balanceBar.ts';
import type { BalanceBar } from '../../src/engine/balanceBar.ts';
import { isImpossible } from '../../src/engine/outcome.ts';
import type { Impossible } from '../../src/engine/outcome.ts';

function possible<T>(x: T | Impossible): T {
  if (isImpossible(x)) throw new Error(`expected a result, found ${x.impossible}`);
  return x;
}
const range = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const deg = Math.PI / 180;
const square: BalanceBar = {
  barSpacing: 0.0635, barOffset: 0, frontStroke: 0.01, rearStroke: 0.01, pinOffset: 0, bearingRadius: 0.0095, bearingFriction: 0.15,
  stopAngle: 12 * deg, threadPitch: 0.00125, rodLength: 0.12, masterSpacing: 0.0635,
};
const bar = (change: Partial<BalanceBar>) => possible(balanceBar({ ...square, ...change }));
const anyBar = fc.record({
  barSpacing: range(0.055, 0.07), barOffset: range(-0.012, 0.012), frontStroke: range(0, 0.012), rearStroke: range(0, 0.012),
  pinOffset: range(-0.006, 0.006), masterSpacing: range(0.055, 0.07), rodLength: range(0.08, 0.16), clevisesStay: fc.boolean(),
});

/**
 * Rod forces along the bores by plain statics: places of pins and ball seats by turning the bar, then three equations
 * of equilibrium (sideways, forward, moment about the middle between the bores) for both rods and the sideways hold.
 */
function shareByStatics(p: BalanceBar): number {
  const { barSpacing: l, barOffset: u, pinOffset: d, rodLength, masterSpacing } = p;
  const angle = Math.asin((p.frontStroke - p.rearStroke) / l);
  const bearing = { t: p.clevisesStay === true ? u : 0, f: 0 };
  const place = (along: number, ahead: number) => ({
    t: bearing.t + along * Math.cos(angle) - ahead * Math.sin(angle),
    f: bearing.f + along * Math.sin(angle) + ahead * Math.cos(angle),
  });
  const front = place(l / 2 - u, d);
  const rear = place(-l / 2 - u, d);
  const seat = (pin: { t: number; f: number }, bore: number) => ({ t: bore, f: pin.f + Math.sqrt(rodLength ** 2 - (pin.t - bore) ** 2) });
  const frontSeat = seat(front, masterSpacing / 2);
  const rearSeat = seat(rear, -masterSpacing / 2);
  const unit = (pin: { t: number; f: number }, from: { t: number; f: number }) => ({ t: (pin.t - from.t) / rodLength, f: (pin.f - from.f) / rodLength });
  const a = unit(front, frontSeat);
  const b = unit(rear, rearSeat);
  const moment = (pin: { t: number; f: number }, dir: { t: number; f: number }) => pin.t * dir.f - pin.f * dir.t;
  const solved = lusolve(
    [[a.t, b.t, 1], [a.f, b.f, 0], [moment(front, a), moment(rear, b), -bearing.f]],
    [0, -1000, -bearing.t * 1000],
  ) as number[][];
  const axialFront = -(solved[0]?.[0] as number) * a.f;
  const axialRear = -(solved[1]?.[0] as number) * b.f;
  return axialFront / (axialFront + axialRear);
}

describe('balanceBar', () => {
  test('a centered, square bar shares half and half', () => {
    expect(bar({})).toMatchObject({ frontShare: 0.5, shareTilted: 0.5, shareWithSplay: 0.5, tilt: 0, frontSplay: 0, rearSplay: 0 });
  });

  test('the pivot nearer the front clevis gives the front more: 7.62 mm on 63.5 mm is 0.62', () => {
    expect(bar({ barOffset: 0.00762 }).frontShare).toBeCloseTo(0.62, 12);
    expect(bar({ barOffset: -0.00762 }).frontShare).toBeCloseTo(0.38, 12);
  });

  test('moments of the two rods about the bearing balance, pins off the bearing line and rods splayed or not', () => {
    fc.assert(
      fc.property(anyBar, (p) => {
        const s = balanceBar({ ...square, ...p });
        fc.pre(!isImpossible(s));
        expect(possible(s).shareWithSplay).toBeCloseTo(shareByStatics({ ...square, ...p }), 9);
      }),
    );
  });

  test('with parallel rods the tilted share is 1/2 + u/L + (d/L) tan α', () => {
    fc.assert(
      fc.property(anyBar, (p) => {
        const s = possible(balanceBar({ ...square, ...p, rodLength: 1e9 }));
        const expected = 0.5 + p.barOffset / p.barSpacing + (p.pinOffset / p.barSpacing) * Math.tan(s.tilt);
        expect(s.shareTilted).toBeCloseTo(expected, 12);
        expect(s.shareWithSplay).toBeCloseTo(expected, 9);
      }),
    );
  });

  test('with the pins in line with the bearing, tilt does not change the share while the rods stay parallel', () => {
    for (const frontStroke of [0, 0.005, 0.015, 0.021]) {
      expect(bar({ frontStroke, barOffset: 0.005 }).shareTilted).toBeCloseTo(bar({ barOffset: 0.005 }).frontShare, 12);
    }
  });

  test('pins ahead of the bearing feed the side that has run ahead, pins behind it hold that side back', () => {
    const ahead = { frontStroke: 0.02, rearStroke: 0.01 };
    expect(bar({ ...ahead, pinOffset: 0.003 }).shareTilted).toBeGreaterThan(0.5);
    expect(bar({ ...ahead, pinOffset: -0.003 }).shareTilted).toBeLessThan(0.5);
    expect(bar({ pinOffset: 0.003 }).shareTilted).toBe(0.5);
  });

  test('a 9.5 mm bearing at friction 0.15 on 63.5 mm makes a band of ± 0.022, as printed', () => {
    const s = bar({});
    expect(s.frictionBand).toBeCloseTo(0.022, 3);
    expect(s.frontShareHigh - s.shareTilted).toBeCloseTo((0.15 * 9.5) / 63.5, 12);
    expect(s.shareTilted - s.frontShareLow).toBeCloseTo((0.15 * 9.5) / 63.5, 12);
  });

  test('at either end of the band the friction torque of the bearing closes the moment balance', () => {
    fc.assert(
      fc.property(range(-0.012, 0.012), range(0, 0.012), range(0, 0.25), (barOffset, frontStroke, bearingFriction) => {
        const s = bar({ barOffset, frontStroke, rearStroke: 0, bearingFriction });
        const torque = bearingFriction * 0.0095 * 1000;
        for (const [share, sign] of [[s.frontShareHigh, 1], [s.frontShareLow, -1]] as const) {
          const moment = 1000 * Math.cos(s.tilt) * (share * (0.03175 - barOffset) - (1 - share) * (0.03175 + barOffset));
          expect(moment).toBeCloseTo(sign * torque, 9);
        }
      }),
    );
  });

  test('grease halves the band that a dry bearing has at twice the friction, and no friction leaves none', () => {
    expect(bar({ bearingFriction: 0.2 }).frictionBand).toBeCloseTo(2 * bar({ bearingFriction: 0.1 }).frictionBand, 12);
    expect(bar({ bearingFriction: 0 })).toMatchObject({ frontShareLow: 0.5, frontShareHigh: 0.5 });
  });

  test('no rod pulls: the band is held between all and nothing', () => {
    const s = bar({ barOffset: 0.0312, bearingFriction: 0.5 });
    expect(s.frontShareHigh).toBe(1);
    expect(s.frontShareLow).toBeGreaterThan(0);
  });

  test('one turn of a 1.25 or 1.5 mm thread moves 2.0 or 2.4 points of share, as printed', () => {
    expect(100 * bar({ threadPitch: 0.00125 }).sharePerTurn).toBeCloseTo(2.0, 1);
    expect(100 * bar({ threadPitch: 0.0015 }).sharePerTurn).toBeCloseTo(2.4, 1);
    const turned = bar({ barOffset: 0.00125 }).frontShare - bar({}).frontShare;
    expect(turned).toBeCloseTo(bar({}).sharePerTurn, 12);
  });

  test('reference truck A tilts 6.9° at 29.2 and 17.9 bar and 11.0° at 65.8 and 40.3 bar, as printed', () => {
    // Strokes from the printed volume models (cm³, bar), 17.78 mm bores and 1.0 mm take-up.
    const stroke = (volume: number) => 0.001 + (volume * 1e-6) / ((Math.PI * 0.01778 ** 2) / 4);
    const tilt = (front: number, rear: number) =>
      bar({ barOffset: 0.00762, frontStroke: stroke(1.874 + 0.051 * front), rearStroke: stroke(0.884 + 0.033 * rear) });
    expect(tilt(29.2, 17.9).tilt / deg).toBeCloseTo(6.9, 1);
    expect(tilt(65.8, 40.3).tilt / deg).toBeCloseTo(11.0, 1);
    expect(tilt(65.8, 40.3).tiltShareOfStop).toBeCloseTo(11 / 12, 2);
  });

  test('a bar preset by as much as the strokes will differ stands square at the end', () => {
    const preset = Math.asin(-0.012 / 0.0635);
    expect(bar({ restTilt: preset, frontStroke: 0.022, rearStroke: 0.01 }).tilt).toBeCloseTo(0, 12);
    expect(bar({ restTilt: preset, frontStroke: 0.01, rearStroke: 0.01 }).tilt).toBeCloseTo(preset, 12);
  });

  test('5 mm sideways on a 120 mm rod is 2.4°, as printed, and the side force is its sine', () => {
    const s = bar({ barOffset: 0.005 });
    expect(-s.frontSplay / deg).toBeCloseTo(2.4, 1);
    expect(s.rearSplay / deg).toBeCloseTo(2.4, 1);
    expect(s.sideForceFraction).toBeCloseTo(Math.sin(s.rearSplay), 12);
  });

  test('clevises that keep station do not splay the rods when the pivot is moved', () => {
    const s = bar({ barOffset: 0.005, clevisesStay: true });
    expect(s.frontSplay).toBeCloseTo(0, 12);
    expect(s.rearSplay).toBeCloseTo(0, 12);
    expect(s.frontShare).toBeCloseTo(bar({ barOffset: 0.005 }).frontShare, 12);
  });

  test('masters set wider than the bar splay both rods alike, clevises inboard, and a square centered bar stays half and half', () => {
    const s = bar({ masterSpacing: 0.0735 });
    expect(s.frontSplay).toBeCloseTo(Math.asin(-0.005 / 0.12), 12);
    expect(s.rearSplay).toBeCloseTo(s.frontSplay, 12);
    expect(s.shareWithSplay).toBeCloseTo(0.5, 12);
  });

  test('swapping front and rear swaps the shares and turns the tilt over', () => {
    fc.assert(
      fc.property(anyBar, (p) => {
        const s = balanceBar({ ...square, ...p });
        fc.pre(!isImpossible(s));
        const one = possible(s);
        const other = bar({ ...p, barOffset: -p.barOffset, frontStroke: p.rearStroke, rearStroke: p.frontStroke });
        expect(other.tilt).toBeCloseTo(-one.tilt, 12);
        expect(other.shareTilted).toBeCloseTo(1 - one.shareTilted, 12);
        expect(other.shareWithSplay).toBeCloseTo(1 - one.shareWithSplay, 12);
        expect(other.frontSplay).toBeCloseTo(one.rearSplay, 12);
        expect(other.frontShareHigh).toBeCloseTo(1 - one.frontShareLow, 12);
      }),
    );
  });

  test('strokes that the stop would not allow are reported as more than all of the stop, not hidden', () => {
    expect(bar({ frontStroke: 0.03, rearStroke: 0 }).tiltShareOfStop).toBeGreaterThan(1);
  });

  test('numbers that cannot be together are refused with a reason', () => {
    expect(balanceBar({ ...square, barOffset: 0.04 })).toEqual({ impossible: 'pivot-outside-clevises', by: expect.closeTo(0.00825, 12) });
    expect(balanceBar({ ...square, frontStroke: 0.08 })).toEqual({ impossible: 'strokes-exceed-bar', by: expect.closeTo(0.0065, 12) });
    expect(balanceBar({ ...square, rodLength: 0.01, masterSpacing: 0.2 })).toMatchObject({ impossible: 'rod-cannot-reach' });
    expect(balanceBar({ ...square, frontStroke: 0.06, rearStroke: 0, pinOffset: 0.03 })).toMatchObject({ impossible: 'pivot-outside-rods' });
    expect(() => balanceBar({ ...square, barSpacing: 0 })).toThrow(/barSpacing/);
    expect(() => balanceBar({ ...square, bearingFriction: -0.1 })).toThrow(/bearingFriction/);
  });
});
