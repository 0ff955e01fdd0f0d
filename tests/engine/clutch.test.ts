import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { clutchAt, clutchPadTravel, clutchWindow } from '../../src/engine/clutch.ts';
import type { ClutchLine } from '../../src/engine/clutch.ts';
import { isImpossible } from '../../src/engine/outcome.ts';
import type { Impossible } from '../../src/engine/outcome.ts';

function possible<T>(x: T | Impossible): T {
  if (isImpossible(x)) throw new Error(`expected a result, found ${x.impossible}`);
  return x;
}
// Evenly spread: fc.double would spend most of its trials within a hair of 0.
const range = (min: number, max: number) =>
  fc.integer({ min: 0, max: 1_000_000 }).map((k) => min + ((max - min) * k) / 1_000_000);
const line: ClutchLine = {
  pedalRatio: 6, freePlay: 0.012, masterBore: 0.01905, portStroke: 0, volumetricEfficiency: 0.93, slaveOuter: 0.0206, slaveInner: 0, forkRatio: 1.5, forkPlay: 0,
};
const push = { padTravel: 0.13, bearingForce: 1500, linkageEfficiency: 0.85 };
const limits = { neededTravel: 0.009, allowedTravel: 0.0105, reserve: 0.12, masterTravel: 0.03, padToFloor: 0.15 };
const anyLine: fc.Arbitrary<ClutchLine> = fc.record({
  pedalRatio: range(4, 8), freePlay: range(0, 0.02), masterBore: range(0.0155, 0.0255), portStroke: range(0, 0.002), volumetricEfficiency: range(0.8, 1),
  slaveOuter: range(0.017, 0.05), slaveInner: range(0, 0.016), forkRatio: range(1, 2.5), forkPlay: range(0, 0.003),
});

describe('clutchAt', () => {
  test('130 mm of pad at 6:1, 19.05 on 20.6 mm and a fork of 1.5 moves the slave 15.6 and the bearing 10.4 mm, for 168 N against 1500', () => {
    const c = possible(clutchAt({ ...line, ...push }));
    expect(Math.abs(c.slaveStroke * 1e3 - 15.6)).toBeLessThanOrEqual(0.05);
    expect(Math.abs(c.bearingTravel * 1e3 - 10.4)).toBeLessThanOrEqual(0.05);
    expect(Math.abs(c.controlForce - 168)).toBeLessThanOrEqual(0.5);
  });

  test('force × travel is kept: what the foot puts in past all play comes out at the bearing, less the two losses', () => {
    fc.assert(
      fc.property(anyLine, range(0.05, 0.2), range(500, 3000), range(0.7, 1), (l, padTravel, bearingForce, linkageEfficiency) => {
        const at = (travel: number) => possible(clutchAt({ ...l, padTravel: travel, bearingForce, linkageEfficiency }));
        const touch = padFor(l, 0);
        fc.pre(padTravel > touch + 1e-3);
        const c = at(padTravel);
        const put = c.controlForce * (padTravel - touch) * linkageEfficiency * l.volumetricEfficiency;
        expect(Math.abs(put / (bearingForce * c.bearingTravel) - 1)).toBeLessThan(1e-9);
      }),
    );
  });

  test('fluid is kept: master area × working stroke, less what hoses swallow, is slave area × its stroke', () => {
    fc.assert(
      fc.property(anyLine, range(0.05, 0.2), (l, padTravel) => {
        const c = possible(clutchAt({ ...l, ...push, padTravel }));
        const slave = (Math.PI / 4) * (l.slaveOuter ** 2 - l.slaveInner ** 2);
        expect(Math.abs(c.volume - (Math.PI / 4) * l.masterBore ** 2 * Math.max(0, c.masterStroke - l.portStroke))).toBeLessThan(1e-15);
        expect(Math.abs(c.slaveStroke * slave - c.volume * l.volumetricEfficiency)).toBeLessThan(1e-15);
      }),
    );
  });

  test('the bearing’s force over the slave is the line’s pressure, by hand 30.0 bar', () => {
    const c = possible(clutchAt({ ...line, ...push }));
    expect(c.pressure / 1e5).toBeCloseTo((1500 / 1.5 / ((Math.PI / 4) * 20.6 ** 2)) * 10, 9);
    expect(c.pressure / 1e5).toBeCloseTo(30.0, 1);
  });

  test('nothing moves within the free play, no fluid before the port closes, no bearing before the fork’s play is gone', () => {
    const l = { ...line, portStroke: 0.001, forkPlay: 0.002 };
    expect(possible(clutchAt({ ...l, ...push, padTravel: 0.011 })).masterStroke).toBe(0);
    const onPort = possible(clutchAt({ ...l, ...push, padTravel: 0.017 }));
    expect(onPort.masterStroke).toBeGreaterThan(0);
    expect(onPort.volume).toBe(0);
    const inPlay = possible(clutchAt({ ...l, ...push, padTravel: 0.03 }));
    expect(inPlay.slaveStroke).toBeGreaterThan(0);
    expect(inPlay.bearingTravel).toBe(0);
  });

  test('a master one step larger buys travel with effort, in the same proportion', () => {
    const [a, b] = [0.01905, 0.022225].map((masterBore) => possible(clutchAt({ ...line, ...push, masterBore })));
    const areas = (22.225 / 19.05) ** 2;
    expect(b!.bearingTravel / a!.bearingTravel).toBeCloseTo(areas, 12);
    expect(b!.controlForce / a!.controlForce).toBeCloseTo(areas, 12);
    expect(a!.totalRatio / b!.totalRatio).toBeCloseTo(areas, 12);
    expect(a!.totalRatio).toBeCloseTo(6 * 1.5 * (20.6 / 19.05) ** 2, 12);
  });

  test('a ring-shaped slave works by the area between its diameters', () => {
    const ring = { ...line, slaveOuter: 0.045, slaveInner: 0.03, forkRatio: 1 };
    const plain = { ...ring, slaveOuter: Math.sqrt(0.045 ** 2 - 0.03 ** 2), slaveInner: 0 };
    const [r, p] = [ring, plain].map((l) => possible(clutchAt({ ...l, ...push })));
    for (const key of ['bearingTravel', 'controlForce', 'pressure'] as const) expect(r![key] / p![key]).toBeCloseTo(1, 12);
  });

  test('doubling every bore moves the bearing as before and costs no more effort', () => {
    const [a, b] = [line, { ...line, masterBore: 2 * line.masterBore, slaveOuter: 2 * line.slaveOuter }].map((l) => possible(clutchAt({ ...l, ...push })));
    expect(b!.bearingTravel).toBeCloseTo(a!.bearingTravel, 15);
    expect(b!.controlForce).toBeCloseTo(a!.controlForce, 10);
    expect(b!.volume).toBeCloseTo(4 * a!.volume, 15);
  });

  test('a ring without width is returned, an efficiency above 1 thrown', () => {
    const c = clutchAt({ ...line, ...push, slaveInner: 0.0226 });
    expect(isImpossible(c) && c.impossible).toBe('inner-not-inside-outer');
    expect(isImpossible(c) && c.by).toBeCloseTo(0.002, 12);
    expect(isImpossible(clutchAt({ ...line, ...push, slaveInner: line.slaveOuter }))).toBe(true);
    expect(() => clutchAt({ ...line, ...push, volumetricEfficiency: 1.1 })).toThrow(/volumetricEfficiency/);
    expect(() => clutchAt({ ...line, ...push, linkageEfficiency: 1.1 })).toThrow(/linkageEfficiency/);
    expect(() => clutchAt({ ...line, ...push, forkPlay: -1 })).toThrow(/forkPlay/);
  });
});

/** Pad travel at a bearing travel, found by walking the chain's pieces forward from the pad. */
function padFor(l: ClutchLine, bearing: number): number {
  const slave = (Math.PI / 4) * (l.slaveOuter ** 2 - l.slaveInner ** 2);
  const volume = ((bearing * l.forkRatio + l.forkPlay) * slave) / l.volumetricEfficiency;
  return l.freePlay + l.pedalRatio * (l.portStroke + volume / ((Math.PI / 4) * l.masterBore ** 2));
}

describe('clutchPadTravel', () => {
  test('walked back to the pad and forward again, the bearing is where it was', () => {
    fc.assert(
      fc.property(anyLine, range(1e-4, 0.015), (l, bearingTravel) => {
        const { padTravel } = possible(clutchPadTravel({ ...l, bearingTravel }));
        expect(padTravel).toBeCloseTo(padFor(l, bearingTravel), 12);
        expect(possible(clutchAt({ ...l, ...push, padTravel })).bearingTravel).toBeCloseTo(bearingTravel, 12);
      }),
    );
  });

  test('at the touch only the play is used up: of the pad, of the port and of the fork', () => {
    expect(possible(clutchPadTravel({ ...line, bearingTravel: 0 })).padTravel).toBeCloseTo(0.012, 15);
    const loose = possible(clutchPadTravel({ ...line, portStroke: 0.001, forkPlay: 0.002, bearingTravel: 0 })).padTravel;
    expect(loose).toBeCloseTo(0.012 + 6 * (0.001 + (0.002 * (20.6 / 19.05) ** 2) / 0.93), 12);
    expect(() => clutchPadTravel({ ...line, bearingTravel: -1 })).toThrow(/bearingTravel/);
    expect(isImpossible(clutchPadTravel({ ...line, slaveInner: 0.03, bearingTravel: 0 }))).toBe(true);
  });
});

describe('clutchWindow', () => {
  test('by hand: 9 mm is released at 113.8 mm of pad, 10.5 mm overbent at 130.8, and the stop belongs at 126.1', () => {
    const w = possible(clutchWindow({ ...line, ...limits }));
    expect(w.from * 1e3).toBeCloseTo(113.85, 2);
    expect(w.to * 1e3).toBeCloseTo(130.82, 2);
    expect(w.stopTravel * 1e3).toBeCloseTo(126.07, 2);
    expect(w.bearingTravelAtStop).toBeCloseTo(0.009 * 1.12, 12);
    expect(w).toMatchObject({ limitedBy: 'diaphragm', stopNeeded: true });
  });

  test('walking the pedal to the ends of the window puts the bearing at the travel needed and the one allowed', () => {
    fc.assert(
      fc.property(anyLine, (l) => {
        const w = clutchWindow({ ...l, ...limits, masterTravel: 10, padToFloor: 100 }); // nothing else in the way
        const { from, to, stopTravel, bearingTravelAtStop } = possible(w);
        const bearing = (padTravel: number) => possible(clutchAt({ ...l, ...push, padTravel })).bearingTravel;
        expect(bearing(from)).toBeCloseTo(limits.neededTravel, 12);
        expect(bearing(to)).toBeCloseTo(limits.allowedTravel, 12);
        expect(bearing(stopTravel)).toBeCloseTo(bearingTravelAtStop, 12);
        expect(bearing((from + to) / 2)).toBeGreaterThan(limits.neededTravel);
      }),
    );
  });

  test('a floor or a master’s bottom before the diaphragm’s limit ends the window, and then no foot can overbend it', () => {
    expect(possible(clutchWindow({ ...line, ...limits, padToFloor: 0.12 }))).toMatchObject({ to: 0.12, limitedBy: 'floor', stopNeeded: false });
    const { to } = possible(clutchWindow({ ...line, ...limits }));
    expect(possible(clutchWindow({ ...line, ...limits, padToFloor: to }))).toMatchObject({ to, limitedBy: 'floor', stopNeeded: false });
    const short = possible(clutchWindow({ ...line, ...limits, masterTravel: 0.018 }));
    expect(short).toMatchObject({ limitedBy: 'master', stopNeeded: false });
    expect(short.to).toBeCloseTo(0.012 + 6 * 0.018, 12);
  });

  test('a stop never stands past the window, however much reserve is asked for', () => {
    const w = possible(clutchWindow({ ...line, ...limits, reserve: 0.5 }));
    expect(w.stopTravel).toBe(w.to);
    expect(w.bearingTravelAtStop).toBeCloseTo(limits.allowedTravel, 12);
  });

  test('more free play moves the whole window toward the floor by as much', () => {
    const [a, b] = [0.012, 0.02].map((freePlay) => possible(clutchWindow({ ...line, ...limits, freePlay })));
    for (const key of ['from', 'to', 'stopTravel'] as const) expect(b![key] - a![key]).toBeCloseTo(0.008, 12);
  });

  test('a clutch that never releases is returned: master too short, floor too near, each by the pad travel that is missing', () => {
    const master = clutchWindow({ ...line, ...limits, masterTravel: 0.015 });
    expect(isImpossible(master) && master.impossible).toBe('master-too-short');
    expect(isImpossible(master) && (master.by as number) * 1e3).toBeCloseTo(113.85 - 102, 2);
    const floor = clutchWindow({ ...line, ...limits, padToFloor: 0.1 });
    expect(isImpossible(floor) && floor.impossible).toBe('releases-under-floor');
    expect(isImpossible(floor) && (floor.by as number) * 1e3).toBeCloseTo(13.85, 2);
    const order = clutchWindow({ ...line, ...limits, allowedTravel: 0.008 });
    expect(isImpossible(order) && order.impossible).toBe('allowed-below-needed');
    expect(isImpossible(order) && order.by).toBeCloseTo(0.001, 12);
    expect(isImpossible(clutchWindow({ ...line, ...limits, slaveInner: 0.03 }))).toBe(true);
    expect(() => clutchWindow({ ...line, ...limits, reserve: -0.1 })).toThrow(/reserve/);
  });
});
